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
from finishlog.store.schema.log import logged_air

# From when to when; None: from the beginning, for good.
Stretch = tuple[datetime | None, datetime | None]

# Read as text: a typed column costs as much again on ten thousand rows.
_POINTS = select(
    type_coerce(logged_air.c.at, String), logged_air.c.temperature_c, logged_air.c.humidity_pct
).order_by(logged_air.c.at)


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
    query = _POINTS.where(logged_air.c.entry_id == of.id)
    if since is not None:
        query = query.where(logged_air.c.at >= since)
    if until is not None:
        query = query.where(logged_air.c.at <= until)
    act, read = of.act, datetime.fromisoformat
    return [AirPoint(read(at), t, rh, act) for at, t, rh in connection.execute(query).all()]


def _in_order(files: Sequence[Sequence[AirPoint]]) -> Sequence[AirPoint]:
    """Merge files; where two speak of one instant, the one taken in later holds."""
    if len(files) == 1:
        return files[0]
    by_moment = {point.at: point for point in chain.from_iterable(files)}
    return sorted(by_moment.values(), key=attrgetter("at"))
