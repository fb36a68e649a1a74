"""What each kind of entry has of its own, read into the core's records: a query a kind."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Collection, Iterator, Mapping
from datetime import datetime
from typing import Any, TypedDict

from sqlalchemy import Connection, Row, Select, Table, select

from finishlog.core import records
from finishlog.core.air import Air
from finishlog.core.finishes import Method
from finishlog.core.records import AnyEntry, Target, When
from finishlog.store import schema_log as log
from finishlog.store.figures import read_figures
from finishlog.store.rows import rows_of
from finishlog.store.schema_log import EntryKind
from finishlog.store.schema_things import product


class Common(TypedDict):
    """The fields that every record has."""

    id: int
    act: int
    when: When
    typed_at: datetime
    targets: frozenset[Target]


# The records to fill by entry id, and which of them to ask for (None: read the table whole).
Commons = Mapping[int, Common]
Ids = Collection[int] | None
Reader = Callable[[Connection, Commons, Ids], Iterator[AnyEntry]]


def _details(
    connection: Connection, of: Commons, ids: Ids, table: Table, query: Select[Any] | None = None
) -> Iterator[tuple[Common, Row[Any]]]:
    statement = select(table) if query is None else query
    for row in rows_of(connection, statement, table.c.entry_id, ids):
        if row.entry_id in of:
            yield of[row.entry_id], row


def _pieces(connection: Connection, table: Table, ids: Ids) -> dict[int, frozenset[int]]:
    found: dict[int, set[int]] = defaultdict(set)
    for row in rows_of(connection, select(table), table.c.entry_id, ids):
        found[row.entry_id].add(row.piece_id)
    return {entry: frozenset(pieces) for entry, pieces in found.items()}


def _coats(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    query = select(log.coat, product.c.name.label("product_name")).join_from(log.coat, product)
    rows = list(_details(connection, of, ids, log.coat, query))
    sets = read_figures(connection, {row.figure_set_id for _, row in rows})
    for common, row in rows:
        yield records.Coat(
            **common,
            product=row.product_id,
            product_name=row.product_name,
            figures=sets[row.figure_set_id],
            method=Method(row.method) if row.method else None,
            scuffed_before=row.scuffed_before,
            wet_film_um=row.wet_film_um,
            note=row.note,
        )


def _work(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, row in _details(connection, of, ids, log.work):
        operation = records.Operation(row.operation)
        yield records.Work(**common, operation=operation, grit=row.grit)


def _checks(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, row in _details(connection, of, ids, log.film_check):
        test, found = records.Test(row.test), records.Found(row.found)
        yield records.Check(**common, test=test, found=found)


def _joined(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    members = _pieces(connection, log.joined_member, ids)
    for common, row in _details(connection, of, ids, log.joined):
        of_this = members.get(row.entry_id, frozenset())
        yield records.Joined(**common, into=row.into_piece_id, members=of_this)


def _moved(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    pieces = _pieces(connection, log.moved_piece, ids)
    for common, row in _details(connection, of, ids, log.moved):
        of_this = pieces.get(row.entry_id, frozenset())
        yield records.Moved(**common, pieces=of_this, room=row.room_id)


def _readings(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, row in _details(connection, of, ids, log.reading):
        air = Air(row.temperature_c, row.humidity_pct)
        yield records.Reading(**common, room=row.room_id, air=air)


def _rags(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, row in _details(connection, of, ids, log.rags_event):
        deed = records.RagsDeed(row.deed)
        yield records.RagsEvent(**common, deed=deed, item=row.item_entry_id)


def _set_aside(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, _ in _details(connection, of, ids, log.set_aside):
        yield records.SetAside(**common)


def _resumed(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, _ in _details(connection, of, ids, log.resumed):
        yield records.Resumed(**common)


def _notes(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, row in _details(connection, of, ids, log.written_note):
        yield records.Note(**common, text=row.text, outcome=row.outcome)


# The kinds that the core has a record for.
READERS: Mapping[EntryKind, Reader] = {
    EntryKind.COAT: _coats,
    EntryKind.WORK: _work,
    EntryKind.CHECK: _checks,
    EntryKind.JOINED: _joined,
    EntryKind.MOVED: _moved,
    EntryKind.READING: _readings,
    EntryKind.RAGS: _rags,
    EntryKind.SET_ASIDE: _set_aside,
    EntryKind.RESUMED: _resumed,
    EntryKind.NOTE: _notes,
}
