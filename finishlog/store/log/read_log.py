"""Read the log: the entries in force, in the order of the work."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from datetime import datetime, timedelta

from msgspec.structs import replace
from sqlalchemy import Connection, bindparam, func, select, union, union_all

from finishlog.core.log.entries import (
    AirImported,
    AnyEntry,
    Away,
    Coat,
    Heated,
    RagsEvent,
    Reading,
    Stripped,
)
from finishlog.core.log.kinds import OF_THE_WORK, kind_of
from finishlog.core.shop.things import Log
from finishlog.store.log.heads import Head, read_heads, read_targets, read_withdrawals, touching
from finishlog.store.log.in_force import Fate, fates, withdrawn_acts
from finishlog.store.log.read_air import read_logged_air
from finishlog.store.log.rows import read_entries
from finishlog.store.schema.asked import ask
from finishlog.store.schema.log import coat, container_event, entry
from finishlog.store.schema.things import container

# The air before a coat says what the wood and the room were like; two days of it are enough.
BEFORE_A_COAT = timedelta(days=2)

# A can may have been opened years before its next coat.
OF_CONTAINERS_IN_USE = (
    select(container_event.c.entry_id)
    .join(container, container.c.id == container_event.c.container_id)
    .where(container.c.archived_at.is_(None))
)

# What befell a can decides about its coats also when it was put away since.
_SINCE = bindparam("since", type_=entry.c.latest_at.type)
OF_CONTAINERS_OF_COATS = (
    select(container_event.c.entry_id)
    .join(coat, coat.c.container_id == container_event.c.container_id)
    .join(entry, entry.c.id == coat.c.entry_id)
    .where(entry.c.kind == kind_of(Coat), entry.c.latest_at >= _SINCE)
)

_AIR_READ = (kind_of(Reading), kind_of(AirImported))
_LASTING = (kind_of(AirImported), kind_of(Heated))
_OF_THE_SHOP = (*_AIR_READ, kind_of(Heated), kind_of(RagsEvent), kind_of(Away))

_ALL_OF_THE_SHOP = select(entry.c.id).where(entry.c.kind.in_(_OF_THE_SHOP))
_OF_THE_SHOP_SINCE = _ALL_OF_THE_SHOP.where(entry.c.latest_at >= _SINCE)
_CONTAINERS_SINCE = union(OF_CONTAINERS_IN_USE, OF_CONTAINERS_OF_COATS)

_START = bindparam("start", type_=entry.c.latest_at.type)
_END = bindparam("end", type_=entry.c.latest_at.type)
# Two queries in one, for each goes by the index of its kinds.
_AIR_WITHIN = union_all(
    select(entry.c.id).where(
        entry.c.kind == kind_of(Reading), entry.c.latest_at.between(_START, _END)
    ),
    select(entry.c.id).where(
        entry.c.kind.in_(_LASTING), entry.c.latest_at >= _START, entry.c.earliest_at <= _END
    ),
)
_LAST_READING = select(func.max(entry.c.latest_at)).where(entry.c.kind.in_(_AIR_READ))

# From when to when.
Stretch = tuple[datetime, datetime]


def read_log(
    connection: Connection,
    pieces: Collection[int] | None = None,
    within: Collection[Stretch] | None = None,
    since: datetime | None = None,
) -> Log:
    """Read the entries in force, sorted by the time of the work.

    With `pieces`: the entries that touch one of them, and the readings and rags events since two
    days before the first of their coats, or before `since` where that is earlier (at least the last
    two days that have readings). With
    `within`: of what is of the shop only the air of those stretches, each with two days before it.
    """
    withdrawn = withdrawn_acts(read_withdrawals(connection))
    wanted = None if pieces is None else touching(connection, pieces)
    heads = read_heads(connection, wanted)
    standing = _standing(heads, withdrawn, wanted)
    stretches: Sequence[tuple[datetime | None, datetime | None]] = [(None, None)]
    if wanted is not None and within is not None:
        stretches = _joined(within)
        of_shop = _air_within(connection, stretches)
    elif wanted is not None:
        since = _air_begins(connection, standing, since)
        stretches = [(since, None)]
        of_shop = _of_the_shop_since(connection, since)
    if wanted is not None:
        standing |= _standing(read_heads(connection, of_shop), withdrawn, of_shop)
    whole = pieces is None
    targets = read_targets(connection, None if whole else standing)
    records = read_entries(connection, (head for head, _ in standing.values()), targets, whole)
    entries = _in_order(_of_amended(records, heads, withdrawn), standing)
    return Log(entries, read_logged_air(connection, entries, stretches))


def _of_amended(
    records: Iterable[AnyEntry], heads: Mapping[int, Head], withdrawn: Mapping[int, int]
) -> list[AnyEntry]:
    """Let deeds with rags, and an `off`, follow a coat that was amended since: it is the same."""
    fate = fates((head.link for head in heads.values()), withdrawn)
    now_is = {old: f.superseded_by for old, f in fate.items() if f.superseded_by is not None}
    return [_follow(record, now_is) for record in records]


def _follow(record: AnyEntry, now_is: Mapping[int, int]) -> AnyEntry:
    if isinstance(record, RagsEvent) and record.item is not None:
        return replace(record, item=now_is.get(record.item, record.item))
    if isinstance(record, Stripped) and record.survives is not None:
        return replace(record, survives=now_is.get(record.survives, record.survives))
    return record


# A head with the first entry of its chain, which keeps its place among others of the same time.
_Standing = dict[int, tuple[Head, int]]


def _standing(
    heads: Mapping[int, Head], withdrawn: Mapping[int, int], wanted: Collection[int] | None
) -> _Standing:
    """Keep what is in force; an amendment that no longer touches the pieces was not wanted."""
    fate: Mapping[int, Fate] = fates((head.link for head in heads.values()), withdrawn)
    return {
        head.id: (head, fate[head.id].first)
        for head in heads.values()
        if head.kind in OF_THE_WORK
        and fate[head.id].in_force
        and (wanted is None or head.id in wanted)
    }


def _air_begins(
    connection: Connection, standing: _Standing, since: datetime | None
) -> datetime | None:
    """Find since when readings and rags matter; None when there are neither coats nor readings."""
    ((last_reading,),) = ask(connection, _LAST_READING)
    coats = [head.when.earliest for head, _ in standing.values() if head.kind == kind_of(Coat)]
    moments = [*coats, *(moment for moment in (last_reading, since) if moment)]
    return min(moments) - BEFORE_A_COAT if moments else None


def _of_the_shop_since(connection: Connection, since: datetime | None) -> set[int]:
    if since is None:
        rows = ask(connection, _ALL_OF_THE_SHOP) + ask(connection, OF_CONTAINERS_IN_USE)
    else:
        of_shop = ask(connection, _OF_THE_SHOP_SINCE, since=since)
        rows = of_shop + ask(connection, _CONTAINERS_SINCE, since=since)
    return {row[0] for row in rows}


def _joined(within: Iterable[Stretch]) -> list[Stretch]:
    """Join stretches that meet, each with the air before it, so that none is read twice."""
    found: list[Stretch] = []
    for start, end in sorted((start - BEFORE_A_COAT, end) for start, end in within):
        if found and start <= found[-1][1]:
            found[-1] = (found[-1][0], max(end, found[-1][1]))
        else:
            found.append((start, end))
    return found


def _air_within(connection: Connection, stretches: Iterable[Stretch]) -> set[int]:
    """Find the readings, loggers' files and heating of some stretches of time."""
    return {
        row[0]
        for start, end in stretches
        for row in ask(connection, _AIR_WITHIN, start=start, end=end)
    }


def _in_order(found: Iterable[AnyEntry], standing: _Standing) -> tuple[AnyEntry, ...]:
    return tuple(sorted(found, key=lambda each: (*each.when.order, standing[each.id][1])))
