"""A room's usual day: temperature and humidity through the hours, its season, its heating."""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct

EVERY_DAY = tuple(range(7))


class UsualHour(Struct, frozen=True):
    """A point of the day: minutes since midnight, °C, % RH (None: the water before it stays)."""

    minute: int
    temperature_c: float
    humidity_pct: float | None = None


class UsualDay(Struct, frozen=True):
    """What a room is like on a usual day of a season.

    `hours` are sorted by minute; empty: only the coldest night is known. `season`: months from
    first to last, may wrap the year; None: all the year. `heated`: minutes of the day between
    which a heater keeps it at `heated_c`, may wrap midnight; begun on `heated_days`, Monday 0.
    `coldest_c`: the coldest night.
    """

    hours: tuple[UsualHour, ...] = ()
    season: tuple[int, int] | None = None
    heated: tuple[int, int] | None = None
    heated_c: float | None = None
    heated_days: tuple[int, ...] = EVERY_DAY
    coldest_c: float | None = None
    valid_from: datetime | None = None
    # Since when another holds in its season: what was usual then stays so for then.
    replaced_at: datetime | None = None
