"""Put on record that a heater runs for once, tonight or on a day to come; tell what is ahead."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.air.air import room_or_first
from finishlog.asks.bench.heaters import HeatLine, heaters
from finishlog.asks.look.look import Look, look
from finishlog.context import Context
from finishlog.core.air.supposed import Heat
from finishlog.core.findings import HEATER_UNTOLD, NO_FLAME, Finding, finding
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Heated
from finishlog.core.log.when import When
from finishlog.core.published.safety_notes import SafetyNote, notes_for
from finishlog.core.rules.hazard.breath import isocyanate_heated
from finishlog.core.safety.hazards import hazards_of
from finishlog.core.safety.ignition import lit_by, of_films
from finishlog.core.safety.whats_in import in_coat
from finishlog.core.shop.things import Room
from finishlog.core.zone.grouping import labels_of
from finishlog.core.zone.state import ZoneState
from finishlog.store.things.read_shop import read_shop

# The hazards of warming a room.
WARMING = (Hazard.HEATER, Hazard.HEAT)


class HeatLogged(Struct, frozen=True):
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
    # Of the kind of heater, and of films in the room whose vapour burns.
    warnings: tuple[Finding, ...] = ()


def heat(
    context: Context, *, span: When, temperature_c: float | None, room: str | None
) -> HeatLogged:
    """Record that a heater runs through a span, which may lie in the future (°C)."""
    with context.writing("heat") as ledger:
        shop = read_shop(ledger.connection, context.clock.now)
        known, new = room_or_first(ledger, shop, room)
        seen = look(context, ledger.connection, shop=None if new else shop)
        ledger.record(Heated(when=span, room=known.id, temperature_c=temperature_c))
        return HeatLogged(
            act=ledger.act_id,
            room=known.name,
            room_is_new=new,
            span=span,
            temperature_c=temperature_c,
            how_warm_unknown=temperature_c is None and not _usually_known(known),
            caution=NO_FLAME,
            notes=notes_for(context.facts.notes, WARMING),
            beside=() if new else tuple(_at_once(seen, known.name, span)),
            warnings=(*_driven_out(known, span, temperature_c, seen), *_lit(known, span, seen)),
        )


def _lit(room: Room, span: When, seen: Look) -> Iterator[Finding]:
    """Yield what the heater lights: the films in the room that are wet as it comes on, by name."""
    wet = [
        (state, (state.top.of, in_coat(state.top.coat, seen.shop)))
        for state in seen.bench.in_the_shop
        if state.room.id == room.id and state.top and _wet_at(state, span.earliest)
    ]
    wet = [each for each in wet if of_films((each[1],), seen.facts, span.earliest)]
    heat = Heat(span.earliest, span.latest)
    films = of_films((film for _, film in wet), seen.facts, span.earliest)
    found = lit_by(films, room.heater, heat, room.name)
    if found is not None:
        yield replace(found, on=labels_of(state for state, _ in wet))
    elif room.heater is None:
        yield finding(HEATER_UNTOLD, in_room=room.name)


def _driven_out(
    room: Room, span: When, temperature_c: float | None, seen: Look
) -> Iterator[Finding]:
    """Yield the films there that so much heat drives isocyanate out of."""
    for state in seen.bench.in_the_shop if temperature_c is not None else ():
        top = state.top
        if state.room.id != room.id or top is None or not _wet_at(state, span.earliest):
            continue
        most = top.of.limits.max_c
        holds = Hazard.ISOCYANATE in hazards_of(top.coat, seen.shop, seen.facts)
        if holds and most is not None and temperature_c is not None and temperature_c > most.value:
            there = (mask.holds for mask in seen.bench.masks)
            supplied = seen.facts.respirators.is_held(Hazard.ISOCYANATE, there)
            found = isocyanate_heated(top.coat.product_name, room.name, supplied=supplied)
            yield replace(found, on=labels_of([state]))


def _wet_at(state: ZoneState, moment: datetime) -> bool:
    """Tell whether a film is not promised tack-free by a moment, so that vapour leaves it."""
    dry = state.stages.get(Stage.TACK_FREE)
    return dry is None or dry.high is None or dry.high > moment


def _usually_known(room: Room) -> bool:
    return any(day.hours or day.heated_c is not None for day in room.usual)


def heat_ahead(context: Context) -> tuple[HeatLine, ...]:
    """Return the heaters that run or are to run, the soonest first."""
    with context.reading() as connection:
        return heaters(look(context, connection))


def _at_once(seen: Look, room: str, span: When) -> list[HeatLine]:
    """Return the heaters on record for a room that run at the same time as a new one."""
    return [
        line
        for line in heaters(seen)
        if line.room == room
        if line.span.earliest < span.latest and span.earliest < line.span.latest
    ]
