"""What is published of glues."""

from __future__ import annotations

from finishlog.core.published.facts import Facts
from finishlog.core.published.find import find_called
from finishlog.core.published.glues import Glue
from finishlog.errors import NotFound


def glues(facts: Facts) -> tuple[Glue, ...]:
    """List the glues."""
    return facts.glues


def glue_key(facts: Facts, typed: str) -> str:
    """Find a glue by key, name, alias or a beginning; NotFound names the ones there are."""
    found = find_called(typed, facts.glues)
    if len(found) == 1:
        return found[0]
    if found:
        raise NotFound(f"{typed!r} fits several glues", "choose: " + ", ".join(found))
    raise NotFound(
        f"no glue is called {typed!r}", "glues: " + ", ".join(g.key for g in facts.glues)
    )


def one_glue(facts: Facts, typed: str) -> Glue:
    """Show one glue."""
    found = facts.glue_named(glue_key(facts, typed))
    assert found is not None
    return found
