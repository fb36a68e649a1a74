"""Log the air of a room."""

from __future__ import annotations

from msgspec import Struct

from finishlog.asks.look.which_room import which_room
from finishlog.clock import Clock
from finishlog.context import Context
from finishlog.core.air.psychrometrics import Air, cooled, dew_point_c
from finishlog.core.log.entries import Reading
from finishlog.core.log.when import When
from finishlog.core.shop.things import Room, Shop
from finishlog.core.zone.stood_in import rooms_air
from finishlog.store.log.ledger import Ledger
from finishlog.store.log.read_log import read_log
from finishlog.store.things.add import add_room
from finishlog.store.things.read_shop import read_shop

FIRST_ROOM = "shop"


class AirLogged(Struct, frozen=True):
    """A reading as it was recorded; `wet_bulb_c` where the humidity was worked out from it.

    `humidity_supposed`: only a thermometer was read, and how much water the air holds is supposed.
    """

    act: int
    room: str
    room_is_new: bool
    air: Air
    dew_point_c: float
    at: When
    wet_bulb_c: float | None = None
    humidity_supposed: bool = False


# Our own assumption where nobody ever read how damp the room is: damp rather than dry.
_DAMP_PCT = 75.0


def log_air(
    context: Context,
    *,
    air: Air | float,
    at: When,
    room: str | None,
    wet_bulb_c: float | None = None,
) -> AirLogged:
    """Record a reading of the named room, or of the only one; the first makes a room `shop`.

    Of a temperature alone (°C) the water that the air was last known to hold is taken to stay.
    """
    with context.writing("air") as ledger:
        known, new = room_or_first(ledger, read_shop(ledger.connection, context.clock.now), room)
        supposed = not isinstance(air, Air)
        if not isinstance(air, Air):
            air = _with_its_water(ledger, context.clock, known.id, air, at)
        ledger.record(
            Reading(
                when=at,
                room=known.id,
                air=air,
                wet_bulb_c=wet_bulb_c,
                humidity_supposed=supposed or None,
            )
        )
        dew = dew_point_c(air)
        return AirLogged(ledger.act_id, known.name, new, air, dew, at, wet_bulb_c, supposed)


def _with_its_water(ledger: Ledger, clock: Clock, room: int, temperature_c: float, at: When) -> Air:
    """Suppose how damp it is: with the water of the last reading or of the usual day."""
    shop, log = read_shop(ledger.connection, clock.now), read_log(ledger.connection)
    known = rooms_air(shop, log, clock.zone)[room].expected_at(at.latest)
    return cooled(known, temperature_c) if known else Air(temperature_c, _DAMP_PCT)


def room_or_first(ledger: Ledger, shop: Shop, typed: str | None) -> tuple[Room, bool]:
    """Find the room that is meant; put the first on record. Tell whether it is new."""
    if not shop.rooms and typed is None:
        return Room(add_room(ledger.connection, FIRST_ROOM), FIRST_ROOM), True
    return which_room(ledger.connection, shop, typed), False
