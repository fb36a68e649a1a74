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
from finishlog.store.ledger import Ledger
from finishlog.store.read_shop import read_shop
from finishlog.store.things import add_room

FIRST_ROOM = "shop"


@dataclass(frozen=True, slots=True)
class AirLogged:
    """A reading as it was recorded; `wet_bulb_c` where the humidity was worked out from it."""

    act: int
    room: str
    room_is_new: bool
    air: Air
    dew_point_c: float
    at: When
    wet_bulb_c: float | None = None


def log_air(
    database: Database,
    clock: Clock,
    words: str,
    *,
    air: Air,
    at: When,
    room: str | None,
    wet_bulb_c: float | None = None,
) -> AirLogged:
    """Record a reading of the named room, or of the only one; the first makes a room `shop`."""
    with database.writing("air", words, clock.now, clock.zone.key) as ledger:
        known, new = room_or_first(ledger, clock, room)
        ledger.reading(at, room=known.id, air=air, wet_bulb_c=wet_bulb_c)
        return AirLogged(ledger.act_id, known.name, new, air, dew_point_c(air), at, wet_bulb_c)


def room_or_first(ledger: Ledger, clock: Clock, typed: str | None) -> tuple[Room, bool]:
    """Find the named room, or the only one; put the first on record. Tell whether it is new."""
    shop = read_shop(ledger.connection, clock.now)
    if not shop.rooms and typed is None:
        return Room(add_room(ledger.connection, FIRST_ROOM), FIRST_ROOM), True
    return which_room(shop, typed), False


def which_room(shop: Shop, typed: str | None) -> Room:
    """Find the named room, or the only one; NotFound lists those that there are."""
    if typed is not None:
        return pick_room(shop, typed)
    if len(shop.rooms) == 1:
        return next(iter(shop.rooms.values()))
    names = ", ".join(sorted(r.name for r in shop.rooms.values()))
    if not names:
        raise NotFound("there is no room yet", "finishlog room new NAME")
    raise NotFound(f"which room? there are {names}", "add --room NAME")
