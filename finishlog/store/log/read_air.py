"""Read what loggers read: many points, few queries, no entry for each."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from itertools import chain
from operator import attrgetter

from sqlalchemy import Connection, String, select, type_coerce

from finishlog.core.air.span import AirPoint
from finishlog.core.log.entries import AirImported, AnyEntry
from finishlog.store.schema import tables

# From when to when; None: from the beginning, for good.
Stretch = tuple[datetime | None, datetime | None]


def read_logged_air(
    connection: Connection, entries: Iterable[AnyEntry], stretches: Sequence[Stretch]
) -> Mapping[int, Sequence[AirPoint]]:
    """Return by room what the loggers' files among the entries hold of some stretches, in order.

    The point right before one is not looked for: whoever asks, asks from well before.
    """
    found: dict[int, list[list[AirPoint]]] = defaultdict(list)
    for entry in entries:
        if isinstance(entry, AirImported):
            found[entry.room] += (_points(connection, entry, *each) for each in stretches)
    return {room: _in_order(files) for room, files in found.items()}


def _points(
    connection: Connection, of: AirImported, since: datetime | None, until: datetime | None
) -> list[AirPoint]:
    column = tables.logged_air.c
    # Read as text: a typed column costs as much again on ten thousand rows.
    at = type_coerce(column.at, String)
    query = select(at, column.temperature_c, column.humidity_pct).order_by(column.at)
    query = query.where(column.entry_id == of.id)
    if since is not None:
        query = query.where(column.at >= since)
    if until is not None:
        query = query.where(column.at <= until)
    act, read = of.act, datetime.fromisoformat
    return [AirPoint(read(at), t, rh, act) for at, t, rh in connection.execute(query).all()]


def _in_order(files: Sequence[Sequence[AirPoint]]) -> Sequence[AirPoint]:
    """Merge files; where two speak of one instant, the one taken in later holds."""
    if len(files) == 1:
        return files[0]
    by_moment = {point.at: point for point in chain.from_iterable(files)}
    return sorted(by_moment.values(), key=attrgetter("at"))
