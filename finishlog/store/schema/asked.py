"""A question to the database: put into SQL once for all, and asked of the driver itself.

What every start asks stands in SQL in `asked.json` (a test holds it equal to the questions as they
are built here): to declare the tables and to compile would be a sixth of a start. What is not kept
there is put into SQL once a process. Most of a command's time in the store went into what
SQLAlchemy does about a statement each time.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from datetime import datetime
from functools import cache, cached_property
from pathlib import Path
from typing import Any

from msgspec import Struct
from msgspec.json import decode
from sqlalchemy import (
    Boolean,
    ColumnElement,
    CompoundSelect,
    Connection,
    Float,
    Select,
    literal_column,
)
from sqlalchemy.dialects import sqlite
from sqlalchemy.engine import IteratorResult
from sqlalchemy.engine.result import SimpleResultMetaData
from sqlalchemy.types import TypeEngine

from finishlog.store.schema.columns import Names, Rows, UtcDateTime

KEPT = Path(__file__).with_name("asked.json")

Built = Select[Any] | CompoundSelect[Any]
# Makes of a value what the file holds, or of that the value.
_Turn = Callable[[Any], Any]

_DIALECT = sqlite.dialect(paramstyle="named")


def among(column: ColumnElement[Any], name: str) -> ColumnElement[bool]:
    """Say that a column holds one of the ids that are told under a name."""
    return column.op("IN", is_comparison=True)(literal_column(_place(name)))


def _place(name: str) -> str:
    return f"({{{name}}})"


class InSql(Struct, frozen=True):
    """A question in SQL: the values that stand in it, types of what is written and read, names."""

    text: str
    values: dict[str, Any]
    writes: dict[str, str]
    reads: list[tuple[int, str]]
    names: list[str]


class Question:
    """What is asked: `build` makes it where it is not kept in SQL under its name ("": nowhere).

    `by`: the column of the ids that it can be narrowed to.
    """

    def __init__(
        self,
        name: str,
        build: Callable[[], Built],
        by: Callable[[], ColumnElement[Any]] | None = None,
    ) -> None:
        self.name = name
        self.build = build
        self._by = by

    @cached_property
    def of_some(self) -> Question:
        """The same, narrowed to some ids: LookupError where no column of them is said."""
        by = self._by
        if by is None:
            raise LookupError(f"nothing is said by which {self.name} is narrowed")

        def build() -> Built:
            whole = self.build()
            assert isinstance(whole, Select)
            return whole.where(among(by(), "ids"))

        return Question(self.name and f"{self.name}, of some", build)

    @property
    def ways(self) -> tuple[Question, ...]:
        """It, and it narrowed where it can be."""
        return (self, self.of_some) if self._by else (self,)

    def put(self) -> InSql:
        """Put it into SQL anew, from the tables as they are declared."""
        # What is built speaks of tables, which are declared when the first is asked for.
        import finishlog.store.schema.log  # noqa: F401

        question = self.build()
        compiled = question.compile(dialect=_DIALECT)
        told = [name for name, of in compiled.binds.items() if of.required]
        put = compiled.construct_expanded_state(dict.fromkeys(told))
        bound = {name: _type(of.type, "bind") for name, of in compiled.binds.items()}
        # Of a list each value has a name of its own, and the type of the list.
        types = {name: bound.get(name) or bound.get(name.rpartition("_")[0], "") for name in
                 put.parameters}  # fmt: skip
        columns = question.selected_columns
        kinds = [_type(column.type, "result") for column in columns.values()]
        return InSql(
            text=put.statement,
            values={name: v for name, v in put.parameters.items() if name not in told},
            writes={name: of for name, of in types.items() if of},
            reads=[(n, of) for n, of in enumerate(kinds) if of],
            names=list(map(str, columns.keys())),
        )

    @cached_property
    def ready(self) -> _Ready:
        """It in SQL, with what writes and reads its values."""
        sql = _kept().get(self.name) or self.put()
        return _Ready(
            text=sql.text,
            values=sql.values,
            writes=[(name, turn) for name, of in sql.writes.items() if (turn := _turns(of)[0])],
            reads=[(n, turn) for n, of in sql.reads if (turn := _turns(of)[1])],
            names=SimpleResultMetaData(sql.names),
        )


def question(
    by: Callable[[], ColumnElement[Any]] | None = None,
) -> Callable[[Callable[[], Built]], Question]:
    """Make a question of what builds it, under the name that this has in its module."""

    def made(build: Callable[[], Built]) -> Question:
        room = build.__module__.removeprefix("finishlog.store.")
        return Question(f"{room}.{build.__name__.lstrip('_')}", build, by)

    return made


def ask(connection: Connection, of: Question, **told: datetime | Collection[int]) -> list[Any]:
    """Return all rows of a question; `told`: its moments, and sets of ids."""
    put = of.ready
    text, values = put.text, {**put.values, **told}
    for name, ids in told.items():
        if isinstance(ids, Collection):
            del values[name]
            text = text.replace(_place(name), f"({','.join(map(str, sorted(ids)))})")
    for name, write in put.writes:
        values[name] = write(values[name])
    rows = connection.connection.cursor().execute(text, values)
    return [*IteratorResult(put.names, map(put.read, rows) if put.reads else rows)]


class _Ready(Struct, frozen=True):
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


@cache
def _kept() -> Mapping[str, InSql]:
    return decode(KEPT.read_bytes(), type=dict[str, InSql])


# The types whose values are not what the file holds.
_TURNED: Mapping[str, type[TypeEngine[Any]]] = {
    of.__name__: of for of in (UtcDateTime, Names, Rows, Boolean, Float)
}


@cache
def _turns(of: str) -> tuple[_Turn | None, _Turn | None]:
    """Return what writes and what reads the values of a type; None: they stand as they are."""
    kind = _TURNED[of]().dialect_impl(_DIALECT)
    return kind.bind_processor(_DIALECT), kind.result_processor(_DIALECT, None)


def _type(of: TypeEngine[Any], way: str) -> str:
    """Name a type whose values are not what the file holds; "": they are."""
    kind = of.dialect_impl(_DIALECT)
    turn = kind.bind_processor(_DIALECT) if way == "bind" else kind.result_processor(_DIALECT, None)
    return type(of).__name__ if turn else ""
