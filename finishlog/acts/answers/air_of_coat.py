"""What the air of its room makes of a coat, as it is logged: once an evening, room and product."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from msgspec import Struct

from finishlog.asks.look.look import Look
from finishlog.core.air.place import Place, PlaceKind
from finishlog.core.film.layers import Layer
from finishlog.core.findings import PLACE_UNTOLD, SIZE_UNTOLD, Finding, finding
from finishlog.core.finish.classes import Method
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.when import When
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.safety.hazards import hazards_in, hazards_of
from finishlog.core.shop.things import Product
from finishlog.core.zone.state import ZoneState
from finishlog.picking import Zones

if TYPE_CHECKING:
    from finishlog.asks.bench.vapour_there import PeopleLine
    from finishlog.core.log.entries import Coat
    from finishlog.core.safety.evening_air import EveningAir, OneCoat
    from finishlog.core.safety.room_takes import RoomTakes

# What was asked or told within these hours is not said again.
EVENING = timedelta(hours=12)


def place_asked(then: Look, picked: Zones, comes: Ingredient) -> Iterator[Finding]:
    """Ask once what burns in a room: at the first coat in it that gives off vapour."""
    if Hazard.FLAMMABLE not in hazards_in(comes, then.facts):
        return
    for room, states in _rooms(then, picked).items():
        before = (z for z in then.bench.zones if z.room.id == room)
        coats = {layer.coat.id: layer.coat for z in before for layer in z.layers}
        burnt = (hazards_of(coat, then.shop, then.facts) for coat in coats.values())
        coated = any(Hazard.FLAMMABLE in each for each in burnt)
        if not coated and states[0].room.place.has is None:
            size = "" if states[0].room.place.volume_m3 is not None else "untold"
            yield finding(PLACE_UNTOLD, in_room=states[0].room.name, size=size)


def air_of_coat(
    then: Look,
    picked: Zones,
    product: Product,
    comes: Ingredient,
    container: int | None,
    method: Method | None,
) -> tuple[RoomTakes, ...]:
    """Return what the rooms take of a coat; none where nobody told of the room as a place."""
    rooms = _rooms(then, picked) if Hazard.VAPOUR in hazards_in(comes, then.facts) else {}
    told = {room: states for room, states in rooms.items() if states[0].room.place != Place()}
    new = [room for room in told if not _on_tonight(then, room, product)]
    if not new:
        return ()
    from finishlog.asks.look.air_there import air_of
    from finishlog.core.safety.ventilation import NoFigure

    lines = (air_of(then, then.shop.rooms[r], product, container, method) for r in new)
    # Of what is sprayed the notes of the act speak.
    return tuple(a for a in lines if a and a.why_no_figure is not NoFigure.SPRAYED)


class Took(Struct, frozen=True):
    """How much (ml) of a finish a coat took, from when on, within how long, and how it went on."""

    amount_ml: float | None
    began: datetime
    within: timedelta
    method: Method | None


def took(
    amount_ml: float | None,
    first: When,
    last: When,
    hands_on_min: float | None,
    method: Method | None,
) -> Took:
    """Say it of the passes of one sitting."""
    span = last.latest - first.earliest
    return Took(amount_ml, first.earliest, _within(hands_on_min, span), method)


def evening_of_coat(
    then: Look, picked: Zones, product: Product, container: int | None, took: Took
) -> tuple[EveningAir, ...]:
    """Return the rooms whose air passes a limit with a coat that was measured, as they are told.

    Each room gets the share that its zones have of the coat.
    """
    if took.amount_ml is None:
        return ()
    from finishlog.core.safety.evening_air import OneCoat, evening_air

    found = []
    for room, states in _rooms(then, picked).items():
        mine = OneCoat(
            product,
            took.began,
            took.amount_ml * len(states) / len(picked.targets),
            then.shop.containers.get(container) if container is not None else None,
            took.method,
            took.within,
            len({state.target.piece for state in states}),
        )
        before = (_one_coat(coat, share, then) for coat, share in _tonight(then, room))
        air = evening_air(then.shop.rooms[room], (*before, mine), then.shop, then.facts)
        if air is not None and air.passes:
            found.append(air)
    return tuple(found)


def _within(hands_on_min: float | None, span: timedelta) -> timedelta:
    return max(timedelta(minutes=hands_on_min or 0.0), span)


def _one_coat(coat: Coat, share: float, then: Look) -> OneCoat:
    from finishlog.core.safety.evening_air import OneCoat

    return OneCoat(
        then.shop.products[coat.product],
        coat.when.earliest,
        coat.amount_ml * share if coat.amount_ml is not None else None,
        then.shop.containers.get(coat.container) if coat.container is not None else None,
        coat.method,
        _within(coat.hands_on_min, coat.when.latest - coat.when.earliest),
    )


def _tonight(then: Look, room: int) -> list[tuple[Coat, float]]:
    """Return the coats of this evening in a room, and what share of each lies there."""
    there: dict[int, tuple[Coat, int]] = {}
    for layer in put_on_tonight(then, room):
        count = there.get(layer.coat.id, (layer.coat, 0))[1]
        there[layer.coat.id] = layer.coat, count + 1
    coats = sorted(there.values(), key=lambda found: found[0].when.order)
    return [(coat, count / len(coat.targets)) for coat, count in coats]


def people_of_coat(then: Look, after: Look, picked: Zones) -> tuple[PeopleLine, ...]:
    """Return who stays out for a coat, where that is new, or another day than it was before."""
    from finishlog.asks.bench.vapour_there import people_out

    rooms = set(_rooms(then, picked))
    zone = then.clock.zone

    def known(line: PeopleLine) -> tuple[object, ...]:
        day = line.out.look.astimezone(zone).date() if line.out.look is not None else None
        return line.room, line.out.who, day

    before = {known(line) for line in people_out(then, rooms)}
    return tuple(line for line in people_out(after, rooms) if known(line) not in before)


def size_asked(
    then: Look, picked: Zones, comes: Ingredient, took: Took, asked: Sequence[Finding]
) -> Iterator[Finding]:
    """Say of a measured coat, once a room, that how big the room is was not told."""
    if took.amount_ml is None or asked or Hazard.VAPOUR not in hazards_in(comes, then.facts):
        return
    for room, states in _rooms(then, picked).items():
        place = then.shop.rooms[room].place
        if place.volume_m3 is not None or place.kind is PlaceKind.OUTDOORS:
            continue
        layers = (layer for z in then.bench.zones if z.room.id == room for layer in z.layers)
        if all(layer.coat.amount_ml is None for layer in layers):
            yield finding(SIZE_UNTOLD, in_room=states[0].room.name)


def _rooms(then: Look, picked: Zones) -> dict[int, list[ZoneState]]:
    """Return the rooms on record that some zones stand in."""
    found: dict[int, list[ZoneState]] = {}
    for zone in then.bench.zones:
        if zone.target in picked.targets and zone.room.id in then.shop.rooms:
            assert zone.room.id is not None
            found.setdefault(zone.room.id, []).append(zone)
    return found


def _on_tonight(then: Look, room: int, product: Product) -> bool:
    return any(layer.coat.product == product.id for layer in put_on_tonight(then, room))


def put_on_tonight(then: Look, room: int | None) -> Iterator[Layer]:
    """Yield the coats that went on in a room this evening already."""
    lately = then.bench.now - EVENING
    for zone in then.bench.zones:
        if zone.room.id == room:
            yield from (layer for layer in zone.layers if layer.coat.when.latest > lately)
