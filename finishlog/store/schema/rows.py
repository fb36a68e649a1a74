"""Add one row; select rows by many ids in few queries."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from functools import cache, lru_cache
from itertools import islice
from typing import Any

from sqlalchemy import ColumnElement, Connection, Select, Table, bindparam, insert, select

# Older SQLite builds take 999 parameters in one statement.
_AT_ONCE = 900


def add_row(connection: Connection, table: Table, **values: object) -> int:
    """Insert one row and return its id."""
    key = connection.execute(insert(table).values(**values)).inserted_primary_key
    assert key is not None
    return int(key.id)


def rows_of(
    connection: Connection,
    statement: Select[Any],
    column: ColumnElement[Any],
    ids: Collection[int] | None,
    **given: object,
) -> Iterator[Any]:
    """Yield the rows of `statement` whose `column` is one of `ids`; None: all rows.

    `given`: what else the statement has to be told.

    Rows come in the statement's order only within each share of the ids. Where there are many,
    unpack them: getting at a row's columns by name takes three times as long.
    """
    if ids is None:
        yield from connection.execute(statement).all()
        return
    left = iter(sorted(ids))
    while share := list(islice(left, _AT_ONCE)):
        of_share = _of_some(statement, column)
        yield from connection.execute(of_share, {"ids": share, **given}).all()


@cache
def whole(table: Table) -> Select[Any]:
    """Select all that stands in a table."""
    return select(table)


@cache
def in_use(table: Table) -> Select[Any]:
    """Select what was not put away."""
    return select(table).where(table.c.archived_at.is_(None))


@lru_cache
def _of_some(statement: Select[Any], column: ColumnElement[Any]) -> Select[Any]:
    """Narrow a statement to some ids; one that stands at a module's head is built once."""
    return statement.where(column.in_(bindparam("ids", expanding=True)))
