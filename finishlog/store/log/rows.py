"""Entries to rows and back, as their kinds are declared: a query a kind, one a set of pieces."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from enum import StrEnum
from functools import cache
from typing import Any

from sqlalchemy import Connection, Select, Table, select

from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import FigureSet
from finishlog.core.log.entries import AnyEntry, Entry, Stripped, Target
from finishlog.core.log.fields import Declared, fields_of
from finishlog.core.log.kinds import OF_THE_WORK, kind_of
from finishlog.store.log import kept
from finishlog.store.log.figures import keep_figures, read_figures
from finishlog.store.log.heads import Head
from finishlog.store.schema.asked import Question
from finishlog.store.schema.columns import metadata
from finishlog.store.schema.entries import AIR, DownTo, list_of, table_of
from finishlog.store.schema.rows import into, rows_of

# Which entries to ask for; None: a table is read whole.
Ids = Collection[int] | None
_Row = dict[str, Any]


def put_entry(connection: Connection, number: int, entry: Entry) -> None:
    """Write what an entry has of its own kind."""
    kind = type(entry)
    row: _Row = {"entry_id": number}
    if isinstance(entry, Stripped):
        row["down_to"] = DownTo.BARE if entry.survives is None else DownTo.COAT
    lists: list[tuple[Table, Collection[int]]] = []
    for field in fields_of(kind):
        value = getattr(entry, field.name)
        if field.type is frozenset:
            lists.append((list_of(kind, field), value))
        elif field.type is Air:
            row |= {name: getattr(value, name) for name in AIR}
        elif field.type is FigureSet:
            row[field.column] = keep_figures(connection, value)
        elif not field.means.name_of:
            row[field.column] = value
    connection.execute(into(table_of(kind)), row)
    for table, things in lists:
        _, of = table.columns.keys()
        if things:
            rows = [{"entry_id": number, of: thing} for thing in sorted(things)]
            connection.execute(into(table), rows)


def read_entries(
    connection: Connection,
    heads: Iterable[Head],
    targets: Mapping[int, frozenset[Target]],
    whole: bool = False,
) -> Iterator[AnyEntry]:
    """Read entries of the work whole, from what each has as every entry has it."""
    if whole:
        yield from (record for _, record in _records(connection, heads, targets, whole=True))
        return
    of = {head.id: head for head in heads}
    yield from kept.by_id(
        connection,
        "records",
        of,
        lambda missing: _records(connection, (of[id_] for id_ in missing), targets, whole=False),
    ).values()


def _records(
    connection: Connection,
    heads: Iterable[Head],
    targets: Mapping[int, frozenset[Target]],
    *,
    whole: bool,
) -> Iterator[tuple[int, AnyEntry]]:
    of_kind: dict[str, dict[int, _Row]] = defaultdict(dict)
    for head in heads:
        of_kind[head.kind][head.id] = {
            "id": head.id,
            "act": head.act,
            "when": head.when,
            "typed_at": head.typed_at,
            "targets": targets.get(head.id, frozenset()),
        }
    for kind, of in of_kind.items():
        for record in _of_kind(connection, OF_THE_WORK[kind], of, None if whole else of):
            yield record.id, record


def _of_kind(
    connection: Connection, kind: type[AnyEntry], of: Mapping[int, _Row], ids: Ids
) -> Iterator[AnyEntry]:
    names, question = asked_of(kind)
    rows = {
        number: dict(zip(names, values, strict=True))
        for number, *values in rows_of(connection, question, ids)
        if number in of
    }
    for field in fields_of(kind):
        _fill(connection, kind, field, rows, ids)
    return (kind(**of[number], **row) for number, row in rows.items())


@cache
def asked_of(kind: type[Entry]) -> tuple[Sequence[str], Question]:
    """Ask for what stands in the rows of a kind, and name it."""
    names: list[str] = []
    for field in fields_of(kind):
        if field.type is not frozenset:
            names += AIR if field.type is Air else (field.name,)

    def build() -> Select[Any]:
        table = table_of(kind)
        query = select(table.c.entry_id).select_from(table)
        for field in fields_of(kind):
            if field.type is Air:
                query = query.add_columns(*(table.c[name] for name in AIR))
            elif field.means.name_of:
                thing = metadata.tables[field.means.name_of]
                query = query.join(thing).add_columns(thing.c.name)
            elif field.type is not frozenset:
                query = query.add_columns(table.c[field.column])
        return query

    return names, Question(f"rows of {kind_of(kind)}", build, by=lambda: table_of(kind).c.entry_id)


@cache
def listed_of(kind: type[Entry], field: Declared) -> Question:
    """Ask for the sets of things that entries of a kind name."""
    return Question(
        f"{field.name} of {kind_of(kind)}",
        lambda: select(list_of(kind, field)),
        by=lambda: list_of(kind, field).c.entry_id,
    )


def _fill(
    connection: Connection, kind: type[Entry], field: Declared, rows: dict[int, _Row], ids: Ids
) -> None:
    """Make of what stands in the rows the values of a field, where that is not the same."""
    name, of = field.name, field.type
    if of is frozenset:
        listed = _listed(connection, listed_of(kind, field), ids)
        for number, row in rows.items():
            row[name] = frozenset(listed[number])
    elif of is FigureSet:
        sets = read_figures(connection, {row[name] for row in rows.values()})
        for row in rows.values():
            row[name] = sets[row[name]]
    elif of is Air:
        for row in rows.values():
            row[name] = Air(*(row.pop(each) for each in AIR))
    elif issubclass(of, StrEnum):
        for row in rows.values():
            row[name] = None if row[name] is None else of(row[name])


def _listed(connection: Connection, of: Question, ids: Ids) -> dict[int, list[int]]:
    found: dict[int, list[int]] = defaultdict(list)
    for number, thing in rows_of(connection, of, ids):
        found[number].append(thing)
    return found
