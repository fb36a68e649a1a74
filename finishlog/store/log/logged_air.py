"""What loggers' files that stand hold of a room already."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import UTC, datetime

from sqlalchemy import Connection, String, select, type_coerce

from finishlog.core.air.psychrometrics import Air
from finishlog.store.log.heads import read_withdrawals
from finishlog.store.log.in_force import withdrawn_acts
from finishlog.store.schema.log import air_import, entry, logged_air


def known_air(
    connection: Connection, room: int, first: datetime, last: datetime
) -> Mapping[datetime, Air]:
    """Return the readings of a room between two instants that imports in force hold.

    Where two imports speak of one instant, the later one's.
    """
    withdrawn = withdrawn_acts(read_withdrawals(connection))
    files = select(air_import.c.entry_id, entry.c.act_id).join(entry)
    files = files.where(air_import.c.room_id == room, entry.c.latest_at >= first)
    found: dict[datetime, Air] = {}
    for file, act in connection.execute(files.order_by(air_import.c.entry_id)).all():
        if act in withdrawn:
            continue
        of = logged_air.c
        # Read as text: a typed column costs as much again on ten thousand rows.
        points = select(type_coerce(of.at, String), of.temperature_c, of.humidity_pct)
        points = points.where(of.entry_id == file, of.at >= first, of.at <= last)
        for at, warm, damp in connection.execute(points).all():
            found[datetime.fromisoformat(at).astimezone(UTC)] = Air(warm, damp)
    return found
