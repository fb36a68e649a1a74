"""What finishes that went wrong here teach about the woods in hand."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import TYPE_CHECKING

from finishlog.context import Context
from finishlog.core.film.lessons import Lessons, how_they_came_out
from finishlog.core.log.entries import AnyEntry, Check, Fault, Review, Stripped
from finishlog.core.log.words import Outcome
from finishlog.core.published.facts import Facts
from finishlog.core.published.fault_kinds import Blames
from finishlog.core.shop.things import Shop
from finishlog.store.log.finished import LOOK_BACK, Spoken, read_finished, reviewed, went_wrong

if TYPE_CHECKING:
    from sqlalchemy import Connection

# Our own bound: what went wrong before that costs every start, and the hand has changed since.
NEWEST = 36


def lessons_in_hand(context: Context, connection: Connection, shop: Shop) -> Lessons:
    """Learn about the woods of the open parts."""
    woods = (z.species or part.species for part in shop.parts for f in part.faces for z in f.zones)
    return lessons(context, connection, set(map(context.facts.wood_key, set(woods))))


def lessons(
    context: Context, connection: Connection, woods: Collection[str] | None = None
) -> Lessons:
    """Learn from the newest finishes that went wrong on some woods, by their keys; None: on any.

    How others on the same woods came out is read only where one did.
    """
    facts = context.facts
    if woods is not None and not woods:
        return Lessons.none
    blamed = [known.kind for known in facts.faults if known.blames is not Blames.NOTHING]
    wrong, all_wrong = _newest(went_wrong(connection, blamed), woods, facts)
    if not wrong:
        return Lessons.none
    zone = context.clock.zone
    told = how_they_came_out(read_finished(connection, wrong), facts, zone)
    failed = {c.pair.wood for c in told if c.outcome is Outcome.FAILED}
    if not failed:
        return Lessons.none
    others, all_others = _newest(reviewed(connection), failed, facts)
    if others - wrong:
        told += how_they_came_out(read_finished(connection, others - wrong), facts, zone)
    return Lessons.drawn_from(told, are_all=all_wrong and all_others)


def may_teach(entry: AnyEntry) -> bool:
    """Tell whether an entry may tell how a finish came out."""
    return isinstance(entry, Fault | Review | Check | Stripped)


def _newest(
    spoken: Sequence[Spoken], woods: Collection[str] | None, facts: Facts
) -> tuple[set[int], bool]:
    """Return the pieces of what was said last about some woods, and whether that is all of it."""
    mine = [each for each in spoken if woods is None or facts.wood_key(each.wood) in woods]
    newest = sorted({each.entry for each in mine}, reverse=True)
    looked_at = {each.entry for each in spoken}
    pieces = {each.piece for each in mine if each.entry in newest[:NEWEST]}
    return pieces, len(newest) <= NEWEST and len(looked_at) < LOOK_BACK
