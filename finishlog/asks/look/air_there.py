"""What the air of a room takes of a finish: of one that is named, or of what is due there."""

from __future__ import annotations

from collections.abc import Iterable

from finishlog.asks.look.look import Look
from finishlog.core.finish.classes import Method
from finishlog.core.log.words import Operation
from finishlog.core.mixing.containers import Container, ContainerKind
from finishlog.core.safety.room_takes import Brought, RoomTakes, room_takes
from finishlog.core.shop.things import Product, Room
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT


def air_of(
    seen: Look,
    room: Room,
    product: Product,
    container: int | None = None,
    method: Method | None = None,
    brought: Brought | None = None,
) -> RoomTakes | None:
    """Return what a room takes of a finish; None: nothing leaves it.

    Where no container is named it is the mix of the product that stands ready, if there is one.
    """
    of = seen.shop.containers.get(container) if container is not None else _mixed(seen, product)
    return room_takes(room, product, of, seen.shop, seen.facts, method, brought)


def _mixed(seen: Look, product: Product) -> Container | None:
    """Return the newest mix of a product that is not used up."""
    mixes = [
        state
        for state in seen.bench.cans.states.values()
        if state.container.product == product.id
        and state.container.kind is ContainerKind.MIX
        and state.was_made
        and state.ended is None
    ]
    newest = max(mixes, key=lambda state: state.container.id, default=None)
    return newest.container if newest is not None else None


def due_air(
    seen: Look, rooms: Iterable[int] = (), zones: Iterable[ZoneState] | None = None
) -> tuple[RoomTakes, ...]:
    """Return what the rooms take of the coats that are due in them, each product once a room.

    `rooms`: only these, and there whatever is still to go on; else what may go on now.
    """
    only = frozenset(rooms)
    found: dict[tuple[int, int], None] = {}
    for zone in zones if zones is not None else seen.bench.in_the_shop:
        step = zone.progress.next_coat if only else zone.progress.next
        if step is None or step.operation is not Operation.COAT or step.product is None:
            continue
        here = zone.room.id
        if here is None or here not in seen.shop.rooms or (only and here not in only):
            continue
        if only or zone.verdict.answer in MAY_ACT:
            found[here, step.product] = None
    lines = (air_of(seen, seen.shop.rooms[r], seen.shop.products[p]) for r, p in found)
    return tuple(line for line in lines if line is not None)
