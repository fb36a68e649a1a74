"""A question to the database: put into SQL once a process, and asked of the driver itself.

Most of a command's time in the store went into what SQLAlchemy does about a statement each time.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from datetime import datetime
from functools import lru_cache
from typing import Any

from msgspec import Struct
from sqlalchemy import ColumnElement, CompoundSelect, Connection, Select, literal_column
from sqlalchemy.dialects import sqlite
from sqlalchemy.engine import IteratorResult
from sqlalchemy.engine.result import SimpleResultMetaData
from sqlalchemy.types import TypeEngine

Question = Select[Any] | CompoundSelect[Any]
# Makes of a value what the file holds, or of that the value.
_Turn = Callable[[Any], Any]

_DIALECT = sqlite.dialect(paramstyle="named")


def among(column: ColumnElement[Any], name: str) -> ColumnElement[bool]:
    """Say that a column holds one of the ids that are told under a name."""
    return column.op("IN", is_comparison=True)(literal_column(_place(name)))


def _place(name: str) -> str:
    return f"({{{name}}})"


def ask(
    connection: Connection, question: Question, **told: datetime | Collection[int]
) -> list[Any]:
    """Return all rows of a question that is built once; `told`: its moments, and sets of ids."""
    put = _put(question, tuple(told))
    text, values = put.text, {**put.values, **told}
    for name, ids in told.items():
        if isinstance(ids, Collection):
            del values[name]
            text = text.replace(_place(name), f"({','.join(map(str, sorted(ids)))})")
    for name, write in put.writes:
        values[name] = write(values[name])
    rows = connection.connection.cursor().execute(text, values)
    return [*IteratorResult(put.names, map(put.read, rows) if put.reads else rows)]


class _Put(Struct, frozen=True):
    """A question in SQL: the values that stand in it, how values are written and columns read."""

    text: str
    values: Mapping[str, object]
    writes: Collection[tuple[str, _Turn]]
    reads: Collection[tuple[int, _Turn]]
    names: SimpleResultMetaData

    def read(self, row: Iterable[Any]) -> list[Any]:
        """Read one row."""
        values = list(row)
        for column, read in self.reads:
            values[column] = read(values[column])
        return values


@lru_cache(256)
def _put(question: Question, told: tuple[str, ...]) -> _Put:
    """Put a question into SQL."""
    compiled = question.compile(dialect=_DIALECT)
    put = compiled.construct_expanded_state(dict.fromkeys(told))
    binds = {name: compiled.binds[name] for name in put.parameters.keys() & compiled.binds.keys()}
    own = {name: _kind(of.type).bind_processor(_DIALECT) for name, of in binds.items()}
    writes: Mapping[str, _Turn | None] = {**own, **put.processors}
    columns = question.selected_columns
    reads = [_kind(column.type).result_processor(_DIALECT, None) for column in columns.values()]
    return _Put(
        text=put.statement,
        values=put.parameters,
        writes=[(name, write) for name, write in writes.items() if write],
        reads=[(n, read) for n, read in enumerate(reads) if read],
        names=SimpleResultMetaData(columns.keys()),
    )


def _kind(of: TypeEngine[Any]) -> TypeEngine[Any]:
    return of.dialect_impl(_DIALECT)
