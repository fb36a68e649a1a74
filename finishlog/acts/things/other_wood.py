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
    """Say that a schedule never was on this wood, on which it was last, and what differs.

    `parts`: the wood of each part that it is given to, by id. Empty: the same wood, or not told.
    """
    before = _woods(ledger, context.clock, schedule, frozenset(parts)) if schedule else ()
    woods = dict.fromkeys(wood for wood in parts.values() if wood)
    known = {context.facts.wood_key(wood) for wood in before}
    strange = [wood for wood in woods if context.facts.wood_key(wood) not in known]
    return ", ".join(_compared(context.facts, wood, before[-1]) for wood in strange if before)


def _compared(facts: Facts, wood: str, before: str) -> str:
    mine, theirs = facts.species_named(wood), facts.species_named(before)
    differs = what_differs(mine, theirs) if mine and theirs else ()
    how = f" {wood} {' and '.join(differs)}:" if differs else ""
    return f"these steps were last on {before};{how} try them on a sample board of {wood}"


def _woods(ledger: Ledger, clock: Clock, schedule: str, but: frozenset[int]) -> tuple[str, ...]:
    """Return what the steps were taken from, then the woods of the parts that have them."""
    shop = read_shop(ledger.connection, clock.now, include_archived=True)
    used = [p for p in shop.parts if p.steps_name == schedule and p.species and p.id not in but]
    of = {s.id for s in read_schedules(ledger.connection) if s.name == schedule}
    taken = read_changes(ledger.connection, ThingKind.STEPS, of) if of else ()
    first = [c.becomes for c in taken if c.what == TAKEN_FROM]
    return (*first, *(p.species for p in sorted(used, key=lambda p: p.id) if p.species))
