"""The tables of a kind of entry, derived from its declaration in the core."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from enum import StrEnum
from typing import Any

from msgspec import Meta
from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Float,
    ForeignKey,
    Index,
    Integer,
    Table,
    Text,
)
from sqlalchemy.sql.schema import SchemaItem
from sqlalchemy.types import TypeEngine

from finishlog.core.air.psychrometrics import Air
from finishlog.core.log.entries import Entry, PieceReading, Stripped
from finishlog.core.log.fields import Declared, fields_of
from finishlog.core.log.kinds import KINDS, kind_of
from finishlog.store.schema.columns import metadata, one_of, refers_to


class DownTo(StrEnum):
    """What is left when a film has come off."""

    BARE = "bare"
    COAT = "coat"


# What is kept of a kind, or held to, and none of its fields says alone.
_ALSO: dict[type[Entry], Callable[[], tuple[SchemaItem, ...]]] = {
    Stripped: lambda: (Column("down_to", Text, nullable=False), one_of("down_to", DownTo)),
    PieceReading: lambda: (
        CheckConstraint(
            "temperature_c IS NOT NULL OR moisture_pct IS NOT NULL OR weight_g IS NOT NULL",
            name="something",
        ),
    ),
}

_SQL: dict[type, type[TypeEngine[Any]]] = {str: Text, float: Float, int: Integer, bool: Boolean}


def add_tables(kind: type[Entry]) -> None:
    """Declare the tables of a kind: one for its own fields, one for each set of pieces."""
    fields = fields_of(kind)
    columns = (item for field in fields for item in _columns(field))
    _keyed_by_entry(_name(kind), *columns, *_ALSO.get(kind, tuple)())
    for field in fields:
        if field.type is frozenset:
            to = ForeignKey(f"{field.means.of}.id")
            each: Column[int] = Column(f"{field.means.of}_id", to, primary_key=True, index=True)
            _keyed_by_entry(_list_name(kind, field), each)


def table_of(kind: type[Entry]) -> Table:
    """Return the table of what only one kind of entry has."""
    return metadata.tables[_name(kind)]


def list_of(kind: type[Entry], field: Declared) -> Table:
    """Return the table of a set of things that entries of a kind name."""
    return metadata.tables[_list_name(kind, field)]


AIR = ("temperature_c", "humidity_pct")


def naming(of: str) -> Iterator[tuple[Column[int], Column[int]]]:
    """Yield the columns in which kinds of entries name a sort of thing: the entry, the thing."""
    for kind in KINDS.values():
        for field in fields_of(kind):
            if field.means.of == of:
                is_list = field.type is frozenset
                columns = (list_of(kind, field) if is_list else table_of(kind)).c
                yield columns.entry_id, columns[f"{of}_id" if is_list else field.column]


def air_columns() -> tuple[SchemaItem, ...]:
    """Build the columns of an air."""
    return (
        *(Column(name, Float, nullable=False) for name in AIR),
        CheckConstraint("humidity_pct BETWEEN 0 AND 100", name="humidity"),
    )


def _name(kind: type[Entry]) -> str:
    return kind.table or kind_of(kind).replace("-", "_")


def _list_name(kind: type[Entry], field: Declared) -> str:
    return f"{_name(kind)}_{field.name.removesuffix('s')}"


def _keyed_by_entry(name: str, *columns: SchemaItem) -> None:
    key: Column[int] = Column("entry_id", ForeignKey("entry.id"), primary_key=True)
    Table(name, metadata, key, *columns)


def _columns(field: Declared) -> Iterator[SchemaItem]:
    """Derive the columns of a field and what they are held to; none of a set, or of a name."""
    column, optional = field.column, field.optional
    if field.means.name_of or field.type is frozenset:
        return
    if field.type is Air:
        yield from air_columns()
    elif field.means.of:
        yield refers_to(field.means.of, column, optional=optional)
    elif issubclass(field.type, StrEnum):
        yield Column(column, Text, nullable=optional)
        yield one_of(column, field.type)
    else:
        default = "" if field.default == "" else None
        yield Column(column, _SQL[field.type], nullable=optional, server_default=default)
    if field.bounds is not None:
        name = column.removesuffix(f"_{field.means.unit}")
        yield CheckConstraint(_within(column, field.bounds), name=name)
    if field.means.indexed:
        yield Index(None, column)


def _within(column: str, bounds: Meta) -> str:
    if bounds.ge is not None and bounds.le is not None:
        return f"{column} BETWEEN {bounds.ge} AND {bounds.le}"
    return f"{column} > {bounds.gt}" if bounds.gt is not None else f"{column} >= {bounds.ge}"
