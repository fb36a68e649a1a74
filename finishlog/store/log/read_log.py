"""Read the log: the entries in force, in the order of the work."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from datetime import datetime, timedelta
from typing import Any

from msgspec.structs import replace
from sqlalchemy import (
    BindParameter,
    CompoundSelect,
    Connection,
    Select,
    bindparam,
    func,
    select,
    union,
    union_all,
)

from finishlog.core.log.entries import (
    AirImported,
    AnyEntry,
    Away,
    Cleaned,
    Coat,
    Heated,
    Joined,
    PieceReading,
    RagsEvent,
    Reading,
    Respirator,
    Stripped,
    Work,
)
from finishlog.core.log.kinds import OF_THE_WORK, kind_of
from finishlog.core.shop.things import Log
from finishlog.store.log.heads import Head, read_heads, read_targets, read_withdrawals, touching
from finishlog.store.log.in_force import Fate, fates, withdrawn_acts
from finishlog.store.log.read_air import read_logged_air
from finishlog.store.log.rows import read_entries
from finishlog.store.schema import tables
from finishlog.store.schema.asked import ask, question
from finishlog.store.schema.columns import UtcDateTime

# The air before a coat says what the wood and the room were like; two days of it are enough.
BEFORE_A_COAT = timedelta(days=2)


@question()
def of_containers_in_use() -> Select[Any]:
    """What befell the cans that were not put away."""
    event, container = tables.container_event, tables.container
    return (
        select(event.c.entry_id)
        .join(container, container.c.id == event.c.container_id)
        .where(container.c.archived_at.is_(None))
    )


def of_containers_of_coats() -> Select[Any]:
    """Select what befell a can that coats came from: it decides also when that was put away."""
    event, coat, entry = tables.container_event, tables.coat, tables.entry
    return (
        select(event.c.entry_id)
        .join(coat, coat.c.container_id == event.c.container_id)
        .join(entry, entry.c.id == coat.c.entry_id)
        .where(entry.c.kind == kind_of(Coat), entry.c.latest_at >= _moment("since"))
    )


_AIR_READ = (kind_of(Reading), kind_of(AirImported))
# What was done to a piece in an air that still tells: of a film, and of wood that stood since.
_IN_AN_AIR = (kind_of(Coat), kind_of(Work), kind_of(Joined), kind_of(PieceReading))
_LASTING = (kind_of(AirImported), kind_of(Heated))
_OF_THE_SHOP = (*_AIR_READ, kind_of(Heated), kind_of(RagsEvent), kind_of(Away), kind_of(Cleaned))


def _moment(name: str) -> BindParameter[datetime]:
    return bindparam(name, type_=UtcDateTime())


@question()
def _all_of_the_shop() -> Select[Any]:
    kinds = (*_OF_THE_SHOP, kind_of(Respirator))
    return select(tables.entry.c.id).where(tables.entry.c.kind.in_(kinds))


@question()
def _of_the_shop_after() -> CompoundSelect[Any]:
    """What is of the shop since then; a respirator stands open however long ago that was."""
    of = tables.entry.c
    return union_all(
        select(of.id).where(of.kind.in_(_OF_THE_SHOP), of.latest_at >= _moment("since")),
        select(of.id).where(of.kind == kind_of(Respirator)),
    )


@question()
def _containers_after() -> CompoundSelect[Any]:
    return union(of_containers_in_use.build(), of_containers_of_coats())


@question()
def _air_of() -> CompoundSelect[Any]:
    """Queries in one, for each goes by the index of its kinds; and what befell the cans in use."""
    of, start, end = tables.entry.c, _moment("start"), _moment("end")
    return union_all(
        select(of.id).where(of.kind == kind_of(Reading), of.latest_at.between(start, end)),
        select(of.id).where(of.kind.in_(_LASTING), of.latest_at >= start, of.earliest_at <= end),
        of_containers_in_use.build(),
    )


@question()
def _last_reading() -> Select[Any]:
    of = tables.entry.c
    return select(func.max(of.latest_at)).where(of.kind.in_(_AIR_READ))


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
    `within`: of what is of the shop only the air of those stretches, each with two days before it,
    and what befell the cans in use.
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
    """Find since when readings and rags matter; None when there is neither work nor a reading."""
    ((last_reading,),) = ask(connection, _last_reading)
    done = [head.when.earliest for head, _ in standing.values() if head.kind in _IN_AN_AIR]
    moments = [*done, *(moment for moment in (last_reading, since) if moment)]
    return min(moments) - BEFORE_A_COAT if moments else None


def _of_the_shop_since(connection: Connection, since: datetime | None) -> set[int]:
    if since is None:
        rows = ask(connection, _all_of_the_shop) + ask(connection, of_containers_in_use)
    else:
        of_shop = ask(connection, _of_the_shop_after, since=since)
        rows = of_shop + ask(connection, _containers_after, since=since)
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
        row[0] for start, end in stretches for row in ask(connection, _air_of, start=start, end=end)
    }


def _in_order(found: Iterable[AnyEntry], standing: _Standing) -> tuple[AnyEntry, ...]:
    return tuple(sorted(found, key=lambda each: (*each.when.order, standing[each.id][1])))
