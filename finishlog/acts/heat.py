"""Put on record that a heater runs for once, tonight or on a day to come; tell what is ahead."""

from __future__ import annotations

from dataclasses import dataclass

from finishlog.acts.air import room_or_first
from finishlog.asks.heaters import HeatLine, heaters
from finishlog.asks.look import look
from finishlog.clock import Clock
from finishlog.core.findings import NO_FLAME
from finishlog.core.records import When
from finishlog.core.safety_notes import SafetyNote, notes_for
from finishlog.core.shop import Room
from finishlog.facts.load import Facts
from finishlog.store.database import Database
from finishlog.store.ledger import Ledger

# The hazards of warming a room.
WARMING = ("heater", "heat")


@dataclass(frozen=True, slots=True)
class HeatLogged:
    """A heater as it was recorded, with the cautions that always come with it.

    `how_warm_unknown`: nothing says how warm the room gets, so that it cannot be reckoned with.
    `beside`: what was on record for the same time already.
    """

    act: int
    room: str
    room_is_new: bool
    span: When
    temperature_c: float | None
    how_warm_unknown: bool
    caution: str
    notes: tuple[SafetyNote, ...]
    beside: tuple[HeatLine, ...] = ()


def heat(
    database: Database,
    facts: Facts,
    clock: Clock,
    words: str,
    *,
    span: When,
    temperature_c: float | None,
    room: str | None,
) -> HeatLogged:
    """Record that a heater runs through a span, which may lie in the future (°C)."""
    with database.writing("heat", words, clock.now, clock.zone.key) as ledger:
        known, new = room_or_first(ledger, clock, room)
        beside = () if new else tuple(_at_once(ledger, facts, clock, known.name, span))
        ledger.heated(span, room=known.id, temperature_c=temperature_c)
        return HeatLogged(
            act=ledger.act_id,
            room=known.name,
            room_is_new=new,
            span=span,
            temperature_c=temperature_c,
            how_warm_unknown=temperature_c is None and not _usually_known(known),
            caution=NO_FLAME,
            notes=notes_for(facts.notes, WARMING),
            beside=beside,
        )


def _usually_known(room: Room) -> bool:
    return any(day.hours or day.heated_c is not None for day in room.usual)


def heat_ahead(database: Database, facts: Facts, clock: Clock) -> tuple[HeatLine, ...]:
    """Return the heaters that run or are to run, the soonest first."""
    with database.reading() as connection:
        return heaters(look(connection, facts, clock), clock.now)


def _at_once(ledger: Ledger, facts: Facts, clock: Clock, room: str, span: When) -> list[HeatLine]:
    """Return the heaters on record for a room that run at the same time as a new one."""
    lines = heaters(look(ledger.connection, facts, clock), clock.now)
    return [
        line
        for line in lines
        if line.room == room
        if line.span.earliest < span.latest and span.earliest < line.span.latest
    ]
