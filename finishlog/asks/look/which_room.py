"""Which room is meant where none was named, and what place a room is, by names."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from msgspec import Struct

from finishlog.core.air.heater import HeaterKind
from finishlog.core.air.place import Fixture, Lives, Opening, PlaceKind
from finishlog.core.commands import Do
from finishlog.core.shop.things import Room, Shop
from finishlog.core.zone.stood_in import rooms_of_pieces
from finishlog.errors import NotFound
from finishlog.picking import pick_room
from finishlog.store.log.read_log import read_log

if TYPE_CHECKING:
    from sqlalchemy import Connection


def which_room(connection: Connection, shop: Shop, typed: str | None) -> Room:
    """Find the named room, or the only one that it may be; NotFound lists those that there are."""
    if typed is not None:
        return pick_room(shop, typed)
    if not shop.rooms:
        raise NotFound("there is no room yet", Do.ROOM_NEW("NAME"))
    if len(shop.rooms) > 1:
        stood_in = rooms_of_pieces(shop, read_log(connection)).values()
        rooms = {stays[-1].air.id for stays in stood_in if stays}
        if len(rooms) == 1 and (room := shop.rooms.get(rooms.pop() or 0)) is not None:
            return room
        names = ", ".join(sorted(r.name for r in shop.rooms.values()))
        raise NotFound(
            f"which room? there are {names}", f"name it; or add {Do.AIR.option(room='NAME')}"
        )
    return next(iter(shop.rooms.values()))


class LeadsTo(Struct, frozen=True):
    """Another room, and what leads there."""

    room: str
    by: Opening


class RoomPlace(Struct, frozen=True):
    """A room as a place, as it was told. m³, m³/h (0: none measured), mixing 1 to 10.

    None: nobody told. `out`: what of `has` is out now, by the log.
    """

    kind: PlaceKind | None
    has: tuple[Fixture, ...] | None
    out: tuple[Fixture, ...]
    heater: HeaterKind | None
    volume_m3: float | None
    exhaust_m3_h: float | None
    mixing: float | None
    lives: tuple[Lives, ...]
    joined: tuple[LeadsTo, ...]


def place_of(room: Room, shop: Shop, now: datetime) -> RoomPlace:
    """Return what place a room is."""
    place = room.place
    return RoomPlace(
        place.kind,
        place.has,
        place.out_now(now),
        room.heater,
        place.volume_m3,
        place.exhaust_m3_h,
        place.mixing,
        place.lives,
        tuple(LeadsTo(shop.rooms[j.room].name, j.by) for j in place.joins if j.room in shop.rooms),
    )
