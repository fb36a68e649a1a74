"""Rows of what there is: made of a thing, added, selected by many ids in few queries."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from datetime import datetime
from functools import cache
from itertools import islice
from typing import Any

from msgspec import Struct
from sqlalchemy import ColumnElement, Connection, Insert, Select, Table, bindparam, insert, select

from finishlog.store.schema.asked import Question, ask
from finishlog.store.schema.columns import metadata

# Older SQLite builds take 999 parameters in one statement.
_AT_ONCE = 900


def add_row(connection: Connection, table: Table, **values: object) -> int:
    """Insert one row and return its id."""
    key = connection.execute(into(table), values).inserted_primary_key
    assert key is not None
    return int(key.id)


@cache
def into(table: Table) -> Insert:
    """Insert into a table what is given with it."""
    return insert(table)


def rows_of(
    connection: Connection,
    question: Question,
    ids: Collection[int] | None,
    **told: datetime | Collection[int],
) -> Iterator[Any]:
    """Yield the rows of a question that is narrowed to some ids; None: all rows.

    `told`: what else it has to be told.

    Rows come in the question's order only within each share of the ids. Where there are many,
    unpack them: getting at a row's columns by name takes three times as long.
    """
    if ids is None:
        yield from ask(connection, question, **told)
        return
    left = iter(sorted(ids))
    while share := list(islice(left, _AT_ONCE)):
        yield from ask(connection, question.of_some, ids=share, **told)


def whole(table: str, by: str = "") -> Question:
    """Ask for all that stands in a table, narrowed by one of its columns."""
    return Question(f"whole {table} {by}".strip(), lambda: select(_table(table)), _by(table, by))


def up_to(table: str) -> Question:
    """Ask for what stands in a table as valid up to a moment `now`, the oldest first."""

    def build() -> Select[Any]:
        of = _table(table).c
        upto = of.valid_from <= bindparam("now")
        return select(_table(table)).where(upto).order_by(of.valid_from, of.id)

    return Question(f"{table} up to now", build)


def in_use(table: str, by: str = "") -> Question:
    """Ask for what was not put away, narrowed by one of its columns."""

    def build() -> Select[Any]:
        return select(_table(table)).where(_table(table).c.archived_at.is_(None))

    return Question(f"{table} in use {by}".strip(), build, _by(table, by))


def _by(table: str, column: str) -> Callable[[], ColumnElement[Any]] | None:
    return (lambda: _table(table).c[column]) if column else None


def _table(name: str) -> Table:
    return metadata.tables[name]


def written(table: Table, thing: Struct) -> dict[str, object]:
    """Return the columns of a thing that is to be added: they follow from its fields.

    A field stands in the column of its name, an id in that of its name and `_id`; what lies in
    other tables is left out. What was not said is empty where its column holds no NULL.
    """
    values = {}
    for name in thing.__struct_fields__:
        column = _column(name, table.c.keys())
        if column is not None and column != "id":
            value = getattr(thing, name)
            values[column] = value if value is not None or table.c[column].nullable else ""
    return values


def _column(name: str, among: Collection[str]) -> str | None:
    """Name the column that a field stands in; None: in none of these."""
    return next((column for column in (name, f"{name}_id") if column in among), None)
