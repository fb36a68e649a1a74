"""What the air of its room makes of a coat, as it is logged: once an evening, room and product."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from typing import TYPE_CHECKING

from finishlog.asks.look.look import Look
from finishlog.core.air.place import Place
from finishlog.core.film.layers import Layer
from finishlog.core.findings import PLACE_UNTOLD, Finding, finding
from finishlog.core.finish.classes import Method
from finishlog.core.finish.hazard import Hazard
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.safety.hazards import hazards_in, hazards_of
from finishlog.core.shop.things import Product
from finishlog.core.zone.state import ZoneState
from finishlog.picking import Zones

if TYPE_CHECKING:
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
            yield finding(PLACE_UNTOLD, in_room=states[0].room.name)


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
