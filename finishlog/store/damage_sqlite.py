"""What is wrong with a database file: looked for only where a command could not go on."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

from sqlalchemy import select
from sqlalchemy.dialects.sqlite import dialect

from finishlog.store.schema.whole import metadata


def damage(path: Path) -> str:
    """Say in a few words what is damaged in a file; empty: nothing was found."""
    try:
        # "rw", though nothing is written: a file opened to be read has its checks ignored.
        address = f"{path.absolute().as_uri()}?mode=rw"
        with closing(sqlite3.connect(address, uri=True)) as connection:
            return next(_found(connection), "")
    except (sqlite3.Error, ValueError) as fault:
        return str(fault)


def _found(connection: sqlite3.Connection) -> Iterator[str]:
    for (said,) in connection.execute("PRAGMA integrity_check"):
        if said != "ok":
            yield said
    for row in connection.execute("PRAGMA foreign_key_check"):
        yield f"a row of {row[0]} points to nothing in {row[2]}"
    there = {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}
    yield from (f"the table {name} is missing" for name in metadata.tables.keys() - there)
    yield from _unreadable(connection)


def _unreadable(connection: sqlite3.Connection) -> Iterator[str]:
    """Find cells that hold what their column cannot: read each as the program does."""
    read_by = dialect()
    for table in metadata.sorted_tables:
        readers = [c.type.dialect_impl(read_by).result_processor(read_by, None) for c in table.c]
        query = str(select(table).compile(dialect=read_by))
        for row in connection.execute(query):
            for column, reader, value in zip(table.c, readers, row, strict=True):
                if not _reads(column.type.python_type, reader, value):
                    yield f"{value!r} cannot stand in {table.name}, {column.name}"


def _reads(kind: type, reader: object, value: object) -> bool:
    if value is None:
        return True
    if kind in {int, float} and not isinstance(value, int | float):
        return False
    try:
        if callable(reader):
            reader(value)
    except (ValueError, TypeError, AttributeError):
        return False
    return True
