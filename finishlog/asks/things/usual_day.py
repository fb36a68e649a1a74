"""What a room is like on a usual day, drawn hour by hour as it is reckoned with."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.look.which_room import which_room
from finishlog.context import Context
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.supposed import supposed
from finishlog.core.air.usual_day import UsualDay
from finishlog.core.shop.things import Room
from finishlog.store.things.read_shop import read_shop

_DAY = datetime(2001, 1, 1, tzinfo=UTC)


class HourOfDay(Struct, frozen=True):
    """The air to suppose at a full hour, and whether the heater runs."""

    hour: int
    air: Air
    heated: bool


class UsualLine(Struct, frozen=True):
    """The usual day of a season, as set and as drawn. `drawn` is empty without points of it.

    `damp_is_assumed`: no humidity was given.
    """

    day: UsualDay
    drawn: tuple[HourOfDay, ...]
    damp_is_assumed: bool


class RoomUsual(Struct, frozen=True):
    """A room's usual days, the season that was set last first."""

    room: str
    coldest_night_c: float | None
    days: tuple[UsualLine, ...]


def room_usual(context: Context, typed: str | None) -> RoomUsual:
    """Show a room's usual days; None: the room that is meant where none was named."""
    with context.reading() as connection:
        room = which_room(connection, read_shop(connection, context.clock.now), typed)
    return usual_of(room)


def usual_of(room: Room) -> RoomUsual:
    """Draw the usual days of a room."""
    now = (day for day in room.usual if day.replaced_at is None)
    days = tuple(_line(day) for day in now if day.hours or day.heated)
    return RoomUsual(room.name, room.coldest_night_c, days)


def _line(day: UsualDay) -> UsualLine:
    assumed = all(hour.humidity_pct is None for hour in day.hours)
    return UsualLine(day, tuple(_drawn(day)) if day.hours else (), assumed)


def _drawn(day: UsualDay) -> list[HourOfDay]:
    always = (replace(day, season=None),)
    spans = list(supposed(always, (), UTC, _DAY, _DAY + timedelta(days=1), None))
    found = []
    for hour in range(24):
        moment = _DAY + timedelta(hours=hour)
        span = next(s for s in spans if s.start <= moment and (s.end is None or moment < s.end))
        air = span.air_at(moment)
        if air is not None:
            found.append(HourOfDay(hour, air, span.heated_since is not None))
    return found
