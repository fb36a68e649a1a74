"""Find the coats whose checks and sanding tell how fast they dried, also on what was put away."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, or_, select

from finishlog.core.records import Found, Operation, Target
from finishlog.store.heads import Head, read_heads, read_withdrawals
from finishlog.store.in_force import fates, withdrawn_acts
from finishlog.store.rows import rows_of
from finishlog.store.schema_log import (
    EntryKind,
    coat,
    entry,
    entry_target,
    film_check,
    joined,
    joined_member,
    work,
)
from finishlog.store.schema_things import part, piece

_FAILED = (Found.TACKY, Found.GUMS, Found.PRINTS)
_SANDED = (Operation.SAND, Operation.SCUFF)


@dataclass(frozen=True, slots=True)
class CheckedCoat:
    """A coat, zones of it that tell all its checks and sanding do, and from when to when."""

    entry: int
    product: int
    targets: frozenset[Target]
    start: datetime
    end: datetime


def failed_somewhere(connection: Connection, products: Collection[int]) -> set[int]:
    """Find those of some products that ever lay where a film was found soft: a rough sieve."""
    soft, under = entry_target.alias("soft"), entry_target.alias("under")
    query = (
        select(coat.c.product_id)
        .distinct()
        .join_from(film_check, soft, soft.c.entry_id == film_check.c.entry_id)
        .join(under, (under.c.piece_id == soft.c.piece_id) & (under.c.zone_id == soft.c.zone_id))
        .join(coat, coat.c.entry_id == under.c.entry_id)
        .where(film_check.c.found.in_(_FAILED))
    )
    return {row[0] for row in rows_of(connection, query, coat.c.product_id, products)}


def checked_coats(
    connection: Connection, products: Collection[int], newest: int
) -> tuple[CheckedCoat, ...]:
    """Find the newest coats of each product that were checked or sanded before the next coat."""
    return tuple(
        found for product in sorted(products) for found in _of(connection, product, newest)
    )


def _of(connection: Connection, product: int, newest: int) -> list[CheckedCoat]:
    query = (
        select(entry.c.id)
        .join(coat, coat.c.entry_id == entry.c.id)
        .where(entry.c.kind == EntryKind.COAT, coat.c.product_id == product)
        .order_by(entry.c.latest_at.desc(), entry.c.id.desc())
    )
    found: list[CheckedCoat] = []
    coats = list(connection.scalars(query))
    while coats and len(found) < newest:
        some, coats = coats[: 2 * newest], coats[2 * newest :]
        found += _checked(connection, product, some)
    return found[:newest]


def _checked(connection: Connection, product: int, coats: list[int]) -> Iterator[CheckedCoat]:
    """Yield those of some coats that were checked, in their order."""
    later = _later(connection, coats)
    ids = {*coats, *(e for reached in later.values() for on in reached.values() for e in on)}
    standing = _standing(connection, ids)
    for each in coats:
        if each not in standing:
            continue
        told: dict[frozenset[int], Target] = {}
        for target, entries in sorted(later[each].items()):
            told.setdefault(_until_next_coat(standing[each], entries, standing), target)
        told.pop(frozenset(), None)
        if told:
            end = max(standing[e].when.latest for events in told for e in events)
            start = standing[each].when.earliest
            yield CheckedCoat(each, product, frozenset(told.values()), start, end)


def _until_next_coat(
    on: Head, entries: Iterable[int], standing: Mapping[int, Head]
) -> frozenset[int]:
    """Return the checks and the sanding between a coat and the next one on a zone."""
    since = sorted(
        (standing[e] for e in entries if e in standing), key=lambda head: head.when.order
    )
    found = set()
    for head in since:
        if head.when.order > on.when.order:
            if head.kind is EntryKind.COAT:
                break
            found.add(head.id)
    return frozenset(found)


def _later(connection: Connection, coats: list[int]) -> dict[int, dict[Target, list[int]]]:
    """Read which coats, checks and sanding came after some coats, by coat and zone."""
    on, then, there = entry.alias("on"), entry.alias("then"), entry_target.alias("there")
    query = (
        select(on.c.id, entry_target.c.piece_id, entry_target.c.zone_id, then.c.id)
        .join_from(on, entry_target, entry_target.c.entry_id == on.c.id)
        .join(
            there,
            (there.c.piece_id == entry_target.c.piece_id)
            & (there.c.zone_id == entry_target.c.zone_id),
        )
        .join(then, then.c.id == there.c.entry_id)
        .outerjoin(work, work.c.entry_id == then.c.id)
        .where(then.c.latest_at >= on.c.latest_at, then.c.id != on.c.id)
        .where(
            or_(
                then.c.kind.in_((EntryKind.COAT, EntryKind.CHECK)),
                work.c.operation.in_(_SANDED),
            )
        )
    )
    found: dict[int, dict[Target, list[int]]] = defaultdict(lambda: defaultdict(list))
    for coat_id, piece_id, zone_id, entry_id in rows_of(connection, query, on.c.id, coats):
        found[coat_id][Target(piece_id, zone_id)].append(entry_id)
    return found


def _standing(connection: Connection, ids: Collection[int]) -> dict[int, Head]:
    """Read those of some entries that are in force."""
    heads = read_heads(connection, ids)
    withdrawn = withdrawn_acts(read_withdrawals(connection))
    fate = fates((head.link for head in heads.values()), withdrawn)
    return {id_: head for id_, head in heads.items() if id_ in ids and fate[id_].in_force}


def rooms_given(connection: Connection, pieces: Collection[int]) -> dict[int, int | None]:
    """Read in which room the parts of some pieces are said to stand, by piece."""
    query = select(piece.c.id, part.c.room_id).join_from(piece, part)
    return {row[0]: row[1] for row in rows_of(connection, query, piece.c.id, pieces)}


def with_assemblies(connection: Connection, pieces: Collection[int]) -> set[int]:
    """Add to some pieces those that they were ever glued up into, however high."""
    found: set[int] = set()
    wanted = set(pieces)
    query = select(joined.c.into_piece_id).join(
        joined_member, joined_member.c.entry_id == joined.c.entry_id
    )
    while wanted:
        found |= wanted
        rows = rows_of(connection, query, joined_member.c.piece_id, wanted)
        wanted = {row[0] for row in rows} - found
    return found
