"""Read what loggers read: many points, few queries, no entry for each."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import UTC, datetime
from itertools import chain
from operator import attrgetter
from typing import Any

from sqlalchemy import Connection, Select, String, bindparam, select, type_coerce

from finishlog.core.air.span import AirPoint
from finishlog.core.log.entries import AirImported, AnyEntry
from finishlog.store.schema import tables
from finishlog.store.schema.asked import among, ask, question
from finishlog.store.schema.columns import UtcDateTime

# From when to when; None: from the beginning, for good.
Stretch = tuple[datetime | None, datetime | None]
_FIRST, _LAST = datetime.min.replace(tzinfo=UTC), datetime.max.replace(tzinfo=UTC)


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


@question()
def _read_of() -> Select[Any]:
    of = tables.logged_air.c
    # Read as text: a typed column costs as much again on ten thousand rows.
    at = type_coerce(of.at, String)
    start, end = (bindparam(name, type_=UtcDateTime()) for name in ("start", "end"))
    told = select(at, of.temperature_c, of.humidity_pct).order_by(of.at)
    return told.where(among(of.entry_id, "ids"), of.at.between(start, end))


def _points(
    connection: Connection, of: AirImported, since: datetime | None, until: datetime | None
) -> list[AirPoint]:
    rows = ask(connection, _read_of, ids={of.id}, start=since or _FIRST, end=until or _LAST)
    act, read = of.act, datetime.fromisoformat
    return [AirPoint(read(at), t, rh, act) for at, t, rh in rows]


def _in_order(files: Sequence[Sequence[AirPoint]]) -> Sequence[AirPoint]:
    """Merge files; where two speak of one instant, the one taken in later holds."""
    if len(files) == 1:
        return files[0]
    by_moment = {point.at: point for point in chain.from_iterable(files)}
    return sorted(by_moment.values(), key=attrgetter("at"))
