"""What is published of the generic kinds of finish."""

from __future__ import annotations

from dataclasses import dataclass

from finishlog.core.finishes import FinishClass
from finishlog.errors import NotFound
from finishlog.facts.load import Facts


@dataclass(frozen=True, slots=True)
class ClassLine:
    """One class by its names."""

    key: str
    name: str
    family: str
    self_heating: bool


def classes(facts: Facts) -> tuple[ClassLine, ...]:
    """List the classes."""
    return tuple(ClassLine(c.key, c.name, c.family, c.self_heating) for c in facts.classes())


def class_key(facts: Facts, typed: str) -> str:
    """Find a class by key, name or alias; NotFound names the ones that come near."""
    found = facts.find_class(typed)
    if len(found) == 1:
        return found[0]
    if found:
        raise NotFound(f"{typed!r} fits several classes", "choose: " + ", ".join(found))
    near = _near(facts, typed)
    hint = "did you mean: " + ", ".join(near) if near else "finishlog class list shows them"
    raise NotFound(f"no class is called {typed!r}", hint)


def _near(facts: Facts, typed: str) -> list[str]:
    """Return the keys of the classes that are called nearly so."""
    from difflib import get_close_matches

    called = {
        name.casefold(): of.key
        for of in facts.class_names()
        for name in (of.key, of.name, *of.aliases)
    }
    return list(dict.fromkeys(called[x] for x in get_close_matches(typed.casefold(), called)))


def one_class(facts: Facts, typed: str) -> FinishClass:
    """Show one class."""
    return facts.finish_class(class_key(facts, typed))
