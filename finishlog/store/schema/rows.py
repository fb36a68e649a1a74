"""Rows of what there is: made of a thing, added, selected by many ids in few queries."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from datetime import datetime
from functools import cache, lru_cache
from itertools import islice
from typing import Any

from msgspec import Struct
from sqlalchemy import (
    ColumnElement,
    Connection,
    Insert,
    Select,
    Table,
    bindparam,
    insert,
    select,
)

from finishlog.store.schema.asked import among, ask

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
    statement: Select[Any],
    column: ColumnElement[Any],
    ids: Collection[int] | None,
    **given: datetime | Collection[int],
) -> Iterator[Any]:
    """Yield the rows of `statement` whose `column` is one of `ids`; None: all rows.

    `given`: what else the statement has to be told.

    Rows come in the statement's order only within each share of the ids. Where there are many,
    unpack them: getting at a row's columns by name takes three times as long.
    """
    if ids is None:
        yield from ask(connection, statement, **given)
        return
    left = iter(sorted(ids))
    while share := list(islice(left, _AT_ONCE)):
        yield from ask(connection, _of_some(statement, column), ids=share, **given)


@cache
def whole(table: Table) -> Select[Any]:
    """Select all that stands in a table."""
    return select(table)


@cache
def up_to(table: Table) -> Select[Any]:
    """Select what stands in a table as valid up to a moment `now`, the oldest first."""
    of = table.c
    upto = of.valid_from <= bindparam("now")
    return select(table).where(upto).order_by(of.valid_from, of.id)


@cache
def in_use(table: Table) -> Select[Any]:
    """Select what was not put away."""
    return select(table).where(table.c.archived_at.is_(None))


@lru_cache
def _of_some(statement: Select[Any], column: ColumnElement[Any]) -> Select[Any]:
    """Narrow a statement to some ids; one that stands at a module's head is built once."""
    return statement.where(among(column, "ids"))


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
