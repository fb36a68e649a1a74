"""Log the air of a room."""

from __future__ import annotations

from dataclasses import dataclass

from finishlog.clock import Clock
from finishlog.core.air import Air, dew_point_c
from finishlog.core.records import When
from finishlog.core.shop import Room, Shop
from finishlog.errors import NotFound
from finishlog.picking import pick_room
from finishlog.store.database import Database
from finishlog.store.read_shop import read_shop
from finishlog.store.things import add_room

FIRST_ROOM = "shop"


@dataclass(frozen=True, slots=True)
class AirLogged:
    """A reading as it was recorded."""

    act: int
    room: str
    room_is_new: bool
    air: Air
    dew_point_c: float
    at: When


def log_air(
    database: Database, clock: Clock, words: str, *, air: Air, at: When, room: str | None
) -> AirLogged:
    """Record a reading of the named room, or of the only one; the first makes a room `shop`."""
    with database.writing("air", words, clock.now, clock.zone.key) as ledger:
        shop = read_shop(ledger.connection, clock.now)
        new = not shop.rooms and room is None
        if new:
            known = Room(add_room(ledger.connection, FIRST_ROOM), FIRST_ROOM)
        else:
            known = _room(shop, room)
        ledger.reading(at, room=known.id, air=air)
        return AirLogged(ledger.act_id, known.name, new, air, dew_point_c(air), at)


def _room(shop: Shop, typed: str | None) -> Room:
    if typed is not None:
        return pick_room(shop, typed)
    if len(shop.rooms) == 1:
        return next(iter(shop.rooms.values()))
    names = ", ".join(sorted(r.name for r in shop.rooms.values()))
    raise NotFound(f"which room? there are {names}", "add --room NAME")
