"""Which room is meant where none was named: the only one, or the only one that parts stand in."""

from __future__ import annotations

from typing import TYPE_CHECKING

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
