"""What is published of the generic kinds of finish."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from finishlog.core.commands import Do
from finishlog.core.finish.classes import FinishClass
from finishlog.core.finish.overcoat import (
    BARE_WOOD,
    OvercoatRule,
    rule_between,
    rule_on_bare_wood,
)
from finishlog.core.published.facts import Facts
from finishlog.core.published.find import find_called, names_of, plain, without_carrier
from finishlog.errors import NotFound


class ClassLine(Struct, frozen=True):
    """One class by its names, and the air in which it may go on: °C, % RH; None: no limit."""

    key: str
    name: str
    family: str
    self_heating: bool
    min_c: float | None
    max_c: float | None
    max_rh_pct: float | None


class Pair(Struct, frozen=True):
    """What is published of one class over another, or over bare wood.

    `answer`: `recoat` over itself, one of a published rule, else `no rule known`, and on bare wood
    `the wood decides`; the reason, what to do and the source are the rule's.
    """

    under: str
    over: str
    answer: str
    reason: str = ""
    remedy: str = ""
    source: str = ""


# A finish of unknown kind: nothing says that no drying oil is in it.
UNKNOWN = "unknown"
# More than so many that share a word say nothing.
_FEW = 5


def classes(facts: Facts) -> tuple[ClassLine, ...]:
    """List the classes."""
    return tuple(_line(of) for of in facts.classes.values())


def _line(of: FinishClass) -> ClassLine:
    limits = of.limits
    return ClassLine(
        of.key,
        of.name,
        of.family,
        of.self_heating,
        limits.min_c.value if limits.min_c else None,
        limits.max_c.value if limits.max_c else None,
        limits.max_rh_pct.value if limits.max_rh_pct else None,
    )


def class_key(facts: Facts, typed: str) -> str:
    """Find a class by key, name or alias; NotFound names the ones that come near."""
    found = facts.find_class(typed)
    if len(found) == 1:
        return found[0]
    if found:
        raise NotFound(f"{typed!r} fits several classes", "choose: " + ", ".join(found))
    near = _near(facts, typed)
    hint = f"did you mean: {', '.join(near)}" if near else f"{Do.CLASS_LIST()} shows them"
    hint = f"{hint}; where nothing on the can tells: {UNKNOWN}"
    raise NotFound(f"no class is called {typed!r}", hint)


def _near(facts: Facts, typed: str) -> list[str]:
    """Return the keys of the classes that are called nearly so, all of the carrier that is said."""
    from difflib import get_close_matches

    among = facts.carried_as_said(typed)
    rest = without_carrier(typed)
    called = {name.casefold(): of.key for of in among for name in names_of(of)}
    spelt = (called[name] for name in get_close_matches(rest, called, cutoff=0.7))
    near = dict.fromkeys((*find_called(rest, among), *spelt))
    return list(near) or _sharing_words(plain(rest), among)


def _sharing_words(typed: str, among: Iterable[FinishClass]) -> list[str]:
    """Return the keys of the classes that share the most words with what was typed."""
    said = set(typed.split())
    shared = {of.key: max(len(said & set(plain(n).split())) for n in names_of(of)) for of in among}
    most = max(shared.values(), default=0)
    alike = [key for key, words in shared.items() if words == most > 0]
    return alike if len(alike) <= _FEW else []


def one_class(facts: Facts, typed: str) -> FinishClass:
    """Show one class."""
    return facts.finish_class(class_key(facts, typed))


def pairs(facts: Facts, typed: str | None = None) -> tuple[Pair, ...]:
    """Tell of every pair of classes, and of each on bare wood, what is published.

    `typed`: only those with one class, above and below.
    """
    one = class_key(facts, typed) if typed else None
    all_of = tuple(facts.classes.values())
    bare = (_pair(BARE_WOOD, rule_on_bare_wood(facts.overcoats, of), of) for of in all_of)
    films = (
        _pair(under.key, _between(facts, under, over), over) for under in all_of for over in all_of
    )
    return tuple(p for p in (*bare, *films) if one is None or one in {p.under, p.over})


def _between(facts: Facts, under: FinishClass, over: FinishClass) -> OvercoatRule | None:
    return rule_between(facts, under, over)


def _pair(under: str, rule: OvercoatRule | None, over: FinishClass) -> Pair:
    if under == over.key:
        return Pair(under, over.key, "recoat")
    if rule is None:
        return Pair(under, over.key, "the wood decides" if under == BARE_WOOD else "no rule known")
    return Pair(under, over.key, rule.answer.value, rule.reason, rule.remedy, rule.source)
