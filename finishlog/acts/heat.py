"""Put on record that a heater runs for once, tonight or on a day to come; tell what is ahead."""

from __future__ import annotations

from dataclasses import dataclass

from finishlog.acts.air import room_or_first
from finishlog.asks.look import look
from finishlog.clock import Clock
from finishlog.core.findings import NO_FLAME
from finishlog.core.records import Heated, When
from finishlog.core.safety_notes import SafetyNote, notes_for
from finishlog.core.shop import Room
from finishlog.facts.load import Facts
from finishlog.store.database import Database

# The hazards of warming a room.
WARMING = ("heater", "heat")


@dataclass(frozen=True, slots=True)
class HeatLine:
    """A heater that runs, or is to run. `temperature_c` None: as warm as the room usually gets."""

    act: int
    room: str
    span: When
    temperature_c: float | None


@dataclass(frozen=True, slots=True)
class HeatLogged:
    """A heater as it was recorded, with the cautions that always come with it.

    `how_warm_unknown`: nothing says how warm the room gets, so that it cannot be reckoned with.
    """

    act: int
    room: str
    room_is_new: bool
    span: When
    temperature_c: float | None
    how_warm_unknown: bool
    caution: str
    notes: tuple[SafetyNote, ...]


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
        )


def _usually_known(room: Room) -> bool:
    return any(day.hours or day.heated_c is not None for day in room.usual)


def heat_ahead(database: Database, facts: Facts, clock: Clock) -> tuple[HeatLine, ...]:
    """Return the heaters that run or are to run, the soonest first."""
    with database.reading() as connection:
        seen = look(connection, facts, clock)
    ahead = [e for e in seen.log.entries if isinstance(e, Heated) and e.when.latest > clock.now]
    return tuple(
        HeatLine(e.act, seen.shop.rooms[e.room].name, e.when, e.temperature_c)
        for e in sorted(ahead, key=lambda e: e.when.earliest)
        if e.room in seen.shop.rooms
    )
