"""What usually holds in the shop from a moment on: rooms' days, opening hours; and settings."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from datetime import datetime

from sqlalchemy import Connection, insert, select, update

from finishlog.core.shop_hours import ShopHours, WeeklyHours
from finishlog.store.rows import add_row
from finishlog.store.schema_things import setting, shop_hours, shop_week, usual_day

TIME_ZONE = "time_zone"


def put_usual_day(
    connection: Connection,
    room: int,
    valid_from: datetime,
    *,
    coldest_c: float | None = None,
    temperature_c: float | None = None,
    humidity_pct: float | None = None,
) -> None:
    """Set a room's usual day (°C, % RH) from a moment on."""
    add_row(
        connection,
        usual_day,
        room_id=room,
        valid_from=valid_from,
        coldest_c=coldest_c,
        temperature_c=temperature_c,
        humidity_pct=humidity_pct,
    )


def put_shop_hours(
    connection: Connection, week: Iterable[WeeklyHours], valid_from: datetime
) -> None:
    """Set the whole week from a moment on; a week without hours: the shop is shut."""
    added = add_row(connection, shop_week, valid_from=valid_from)
    rows = [
        {
            "shop_week_id": added,
            "weekday": each.weekday,
            "opens_min": each.opens_min,
            "closes_min": each.closes_min,
        }
        for each in week
    ]
    if rows:
        connection.execute(insert(shop_hours), rows)


def put_setting(connection: Connection, key: str, value: str) -> None:
    """Set one setting, in place of what it was."""
    known = update(setting).where(setting.c.key == key).values(value=value)
    if connection.execute(known).rowcount == 0:
        connection.execute(insert(setting).values(key=key, value=value))


def read_settings(connection: Connection) -> dict[str, str]:
    """Read all settings."""
    return {row.key: row.value for row in connection.execute(select(setting))}


def read_coldest_nights(connection: Connection, now: datetime) -> Mapping[int, float | None]:
    """Read how cold (°C) the nights get in each room that has a usual day at a moment."""
    of = usual_day.c
    query = select(usual_day).where(of.valid_from <= now).order_by(of.valid_from, of.id)
    return {row.room_id: row.coldest_c for row in connection.execute(query)}


def read_shop_hours(connection: Connection, time_zone: str) -> ShopHours:
    """Read every weekly pattern with its date; the time zone is the setting, else the given."""
    zone = read_settings(connection).get(TIME_ZONE, time_zone)
    weeks = select(shop_week).order_by(shop_week.c.valid_from, shop_week.c.id)
    hours: dict[int, list[WeeklyHours]] = defaultdict(list)
    for row in connection.execute(select(shop_hours).order_by(shop_hours.c.id)):
        hours[row.shop_week_id].append(WeeklyHours(row.weekday, row.opens_min, row.closes_min))
    # Two weeks set for the same moment: the one typed last.
    patterns = {row.valid_from: tuple(hours[row.id]) for row in connection.execute(weeks)}
    return ShopHours(tuple(patterns.items()), zone)
