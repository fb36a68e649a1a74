"""What usually holds in the shop from a moment on: rooms' days, opening hours; and settings."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from typing import Any

from msgspec import Struct
from msgspec.structs import asdict, replace
from sqlalchemy import Connection, Row, Select, insert, select, update

from finishlog.core.air.usual_day import EVERY_DAY, UsualDay, UsualHour
from finishlog.core.shop.hours import ShopHours, WeeklyHours
from finishlog.store.schema import tables
from finishlog.store.schema.asked import ask, question
from finishlog.store.schema.rows import add_row, rows_of, up_to, whole

TIME_ZONE = "time_zone"

_SETTINGS = whole("setting")
_DAYS = up_to("usual_day")

# Months from first to last, which may wrap the year.
Season = tuple[int, int]
# Minutes of the day between which a heater runs, how warm (°C) it keeps the room, on which days.
Heating = tuple[int, int, float | None, tuple[int, ...]]
# Said on purpose: not heated in that season, whatever the rest of the year is.
NO_HEATING: Heating = (0, 0, None, EVERY_DAY)


def put_usual_day(
    connection: Connection,
    room: int,
    valid_from: datetime,
    *,
    coldest_c: float | None = None,
    hours: Sequence[UsualHour] | None = None,
    heated: Heating | None = None,
    season: Season | None = None,
) -> None:
    """Set a room's usual day of a season (°C) from a moment on.

    What is None stays as it was in that season. No `hours`: none are known any more.
    """
    known = _sets(connection, valid_from, room).get(room, {}).get(season)
    was = known[-1] if known else _Set()
    new = _Set(
        coldest_c=was.coldest_c if coldest_c is None else coldest_c,
        hours=was.hours if hours is None else tuple(hours),
        heated=was.heated if heated is None else heated,
    )
    first, last = season or (None, None)
    begins, ends, warm, days = new.heated or (None, None, None, EVERY_DAY)
    added = add_row(
        connection,
        tables.usual_day,
        room_id=room,
        valid_from=valid_from,
        coldest_c=new.coldest_c,
        season_from=first,
        season_until=last,
        heated_from_min=begins,
        heated_until_min=ends,
        heated_c=warm,
        heated_days=None if days == EVERY_DAY else sum(1 << day for day in days),
    )
    rows = [{"usual_day_id": added, **asdict(hour)} for hour in new.hours]
    if rows:
        connection.execute(insert(tables.usual_hour), rows)


def put_shop_hours(
    connection: Connection, week: Iterable[WeeklyHours], valid_from: datetime
) -> None:
    """Set the whole week from a moment on; a week without hours: the shop is shut."""
    added = add_row(connection, tables.shop_week, valid_from=valid_from)
    rows = [{"shop_week_id": added, **asdict(each)} for each in week]
    if rows:
        connection.execute(insert(tables.shop_hours), rows)


def put_setting(connection: Connection, key: str, value: str) -> None:
    """Set one setting, in place of what it was."""
    known = update(tables.setting).where(tables.setting.c.key == key).values(value=value)
    if connection.execute(known).rowcount == 0:
        connection.execute(insert(tables.setting).values(key=key, value=value))


def read_settings(connection: Connection) -> dict[str, str]:
    """Read all settings."""
    return {row.key: row.value for row in ask(connection, _SETTINGS)}


def read_usual_days(connection: Connection, now: datetime) -> Mapping[int, tuple[UsualDay, ...]]:
    """Read each room's usual days up to a moment: those that hold, then those they replaced.

    Of those that hold, the season that was set last comes first. What a season does not say of
    its hours or its heating is as in the rest of the year.
    """
    rooms = _sets(connection, now)
    return {
        room: tuple(
            _usual_day(season, day, days.get(None, [_Set()])[-1])
            for season, day in sorted(_each(days), key=lambda each: each[1].sorts)
        )
        for room, days in rooms.items()
    }


def _each(days: Mapping[Season | None, Sequence[_Set]]) -> Iterator[tuple[Season | None, _Set]]:
    return ((season, day) for season, sets in days.items() for day in sets)


def _usual_day(season: Season | None, day: _Set, otherwise: _Set) -> UsualDay:
    begins, ends, warm, days = day.heated or otherwise.heated or NO_HEATING
    heated = begins != ends
    return UsualDay(
        hours=day.hours or otherwise.hours,
        season=season,
        heated=(begins, ends) if heated else None,
        heated_c=warm if heated else None,
        heated_days=days,
        coldest_c=day.coldest_c,
        valid_from=day.valid_from,
        replaced_at=day.replaced_at,
    )


class _Set(Struct, frozen=True):
    """What a row says of a season; None and no hours: nothing. `order`: later rows are higher."""

    coldest_c: float | None = None
    hours: tuple[UsualHour, ...] = ()
    heated: Heating | None = None
    valid_from: datetime | None = None
    order: int = 0
    replaced_at: datetime | None = None

    @property
    def sorts(self) -> tuple[bool, int]:
        """What holds before what was replaced, and the last row first."""
        return self.replaced_at is not None, -self.order


def _sets(
    connection: Connection, now: datetime, room: int | None = None
) -> dict[int, dict[Season | None, list[_Set]]]:
    """Read, by room and season, every row up to a moment, oldest first; the last one holds.

    A row that was replaced at its own moment never held.
    """
    rows = ask(connection, _DAYS, now=now)
    if room is not None:
        rows = [row for row in rows if row.room_id == room]
    hours = _hours(connection, [row.id for row in rows])
    found: dict[int, dict[Season | None, list[_Set]]] = defaultdict(lambda: defaultdict(list))
    for n, row in enumerate(rows):
        season = None if row.season_from is None else (row.season_from, row.season_until)
        sets = found[row.room_id][season]
        if sets and sets[-1].valid_from == row.valid_from:
            sets.pop()
        if sets:
            sets[-1] = replace(sets[-1], replaced_at=row.valid_from)
        told = tuple(hours[row.id])
        sets.append(_Set(row.coldest_c, told, _heating(row), row.valid_from, n))
    return found


def _heating(row: Row[Any]) -> Heating | None:
    if row.heated_from_min is None:
        return None
    bits = row.heated_days
    days = EVERY_DAY if bits is None else tuple(day for day in EVERY_DAY if bits >> day & 1)
    return row.heated_from_min, row.heated_until_min, row.heated_c, days


def _hours(connection: Connection, days: Sequence[int]) -> dict[int, list[UsualHour]]:
    found: dict[int, list[UsualHour]] = defaultdict(list)
    for day, *hour in rows_of(connection, _hours_of_days, days):
        found[day].append(UsualHour(*hour))
    return found


@question(by=lambda: tables.usual_hour.c.usual_day_id)
def _hours_of_days() -> Select[Any]:
    return select(tables.usual_hour).order_by(tables.usual_hour.c.minute)


@question()
def _shop_hours() -> Select[Any]:
    return select(tables.shop_hours).order_by(tables.shop_hours.c.id)


@question()
def _weeks() -> Select[Any]:
    week = tables.shop_week
    return select(week).order_by(week.c.valid_from, week.c.id)


def read_shop_hours(connection: Connection) -> ShopHours:
    """Read every weekly pattern with its date; the time zone is the setting, else UTC."""
    zone = read_settings(connection).get(TIME_ZONE, "UTC")
    hours: dict[int, list[WeeklyHours]] = defaultdict(list)
    for row in ask(connection, _shop_hours):
        hours[row.shop_week_id].append(WeeklyHours(row.weekday, row.opens_min, row.closes_min))
    # Two weeks set for the same moment: the one typed last.
    patterns = {row.valid_from: tuple(hours[row.id]) for row in ask(connection, _weeks)}
    return ShopHours(tuple(patterns.items()), zone)
