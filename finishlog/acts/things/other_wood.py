"""Tell that steps come from another wood: the same can gives another colour and another bond."""

from __future__ import annotations

from collections.abc import Mapping

from finishlog.clock import Clock
from finishlog.context import Context
from finishlog.core.published.facts import Facts
from finishlog.core.published.species import what_differs
from finishlog.core.shop.things import ThingKind
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.changes import read_changes
from finishlog.store.things.read_shop import read_schedules, read_shop

# What a schedule keeps of the part that it was taken from.
TAKEN_FROM = "wood"


def other_wood(
    context: Context, ledger: Ledger, schedule: str, parts: Mapping[int, str | None]
) -> str:
    """Say that a schedule was last on another wood, or was taken from it, and what differs.

    `parts`: the wood of each part that it is given to, by id. Empty: the same wood, or not told.
    """
    before = _last_wood(ledger, context.clock, schedule, frozenset(parts)) if schedule else None
    woods = dict.fromkeys(wood for wood in parts.values() if wood)
    said = [_compared(context.facts, wood, before) for wood in woods if before]
    return ", ".join(words for words in said if words)


def _compared(facts: Facts, wood: str, before: str) -> str:
    mine, theirs = facts.species_named(wood), facts.species_named(before)
    same = mine.key == theirs.key if mine and theirs else wood.casefold() == before.casefold()
    if same:
        return ""
    differs = what_differs(mine, theirs) if mine and theirs else ()
    how = f" {wood} {' and '.join(differs)}:" if differs else ""
    return f"these steps were last on {before};{how} try them on a sample board of {wood}"


def _last_wood(ledger: Ledger, clock: Clock, schedule: str, but: frozenset[int]) -> str | None:
    """Return the wood of the newest other part with these steps, else what they were taken from."""
    shop = read_shop(ledger.connection, clock.now, include_archived=True)
    used = [p for p in shop.parts if p.steps_name == schedule and p.species and p.id not in but]
    if used:
        return max(used, key=lambda part: part.id).species
    of = {s.id for s in read_schedules(ledger.connection) if s.name == schedule}
    taken = read_changes(ledger.connection, ThingKind.STEPS, of) if of else ()
    return next((c.becomes for c in reversed(taken) if c.what == TAKEN_FROM), None)
