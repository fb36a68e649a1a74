"""Column types and constraint names that every table shares."""

from __future__ import annotations

import json
from collections.abc import Iterable
from datetime import UTC, datetime

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Dialect,
    Float,
    ForeignKey,
    Integer,
    MetaData,
    String,
    Text,
)
from sqlalchemy.types import TypeDecorator

from finishlog.core.finish.classes import WindowKind

# Named from the first revision on: a batch migration cannot drop what has no name.
NAMES = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_N_name)s",
    "pk": "pk_%(table_name)s",
}

metadata = MetaData(naming_convention=NAMES)


class UtcDateTime(TypeDecorator[datetime]):
    """An instant, kept as `YYYY-MM-DDTHH:MM:SS.ffffffZ`: one width, so text order is time order.

    Takes aware datetimes of any zone (ValueError for a naive one), returns aware UTC.
    """

    impl = String(27)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> str | None:
        """Write an instant as UTC text."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError(f"{value} has no time zone: it is not an instant")
        utc = value.astimezone(UTC).replace(tzinfo=None)
        return utc.isoformat(timespec="microseconds") + "Z"

    def process_result_value(self, value: str | None, dialect: Dialect) -> datetime | None:
        """Read an instant as aware UTC."""
        return None if value is None else datetime.fromisoformat(value)


class Names(TypeDecorator[tuple[str, ...]]):
    """A short list of names, kept as JSON text."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: Iterable[str] | None, dialect: Dialect) -> str:
        """Write the names in their order."""
        return json.dumps(list(value or ()), ensure_ascii=False)

    def process_result_value(self, value: str | None, dialect: Dialect) -> tuple[str, ...]:
        """Read the names."""
        return () if value in {None, "[]"} else tuple(json.loads(value))


class Rows(TypeDecorator[tuple[tuple[float, ...], ...]]):
    """A short table of numbers, kept as JSON text."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: Iterable[Iterable[float]] | None, dialect: Dialect) -> str:
        """Write the rows in their order."""
        return json.dumps([list(row) for row in value or ()])

    def process_result_value(
        self, value: str | None, dialect: Dialect
    ) -> tuple[tuple[float, ...], ...]:
        """Read the rows."""
        return () if value in {None, "[]"} else tuple(map(tuple, json.loads(value)))


def row_id() -> Column[int]:
    """Build the primary key of a table of things."""
    return Column("id", Integer, primary_key=True)


def refers_to(table: str, name: str = "", *, optional: bool = False) -> Column[int]:
    """Build a column that holds the id of a row of another table."""
    return Column(name or f"{table}_id", ForeignKey(f"{table}.id"), nullable=optional)


def note() -> Column[str]:
    """Build a column for the person's own words."""
    return Column("note", Text, nullable=False, server_default="")


def one_of(column: str, words: Iterable[str], *, or_empty: bool = False) -> CheckConstraint:
    """Hold a column to a closed set of our own words."""
    listed = ", ".join(f"'{word}'" for word in (*[""] * or_empty, *words))
    return CheckConstraint(f"{column} IN ({listed})", name=column)


def all_or_nothing(low: str, typical: str, high: str, *, name: str) -> CheckConstraint:
    """Hold a range to its order; all three may be missing together."""
    return CheckConstraint(
        f"({low} IS NULL AND {typical} IS NULL AND {high} IS NULL)"
        f" OR ({low} IS NOT NULL AND {typical} IS NOT NULL AND {high} IS NOT NULL"
        f" AND 0 <= {low} AND {low} <= {typical} AND {typical} <= {high})",
        name=name,
    )


def colder() -> Column[tuple[tuple[float, ...], ...]]:
    """Build the column of hours to the same stage in colder air: °C, low, typical, high hours."""
    return Column("colder", Rows, nullable=False, server_default="[]")


def window_columns(*, optional: bool) -> list[Column[str] | Column[float] | Column[bool]]:
    """Build the columns of a recoat window; optional where a label may take one back."""
    return [
        Column("window_kind", Text, nullable=optional),
        Column("window_source", Text, nullable=False, server_default=""),
        Column("window_note", Text, nullable=False, server_default=""),
        Column("closes_low_h", Float),
        Column("closes_typical_h", Float),
        Column("closes_high_h", Float),
        Column("closes_source", Text, nullable=False, server_default=""),
        Column("closes_at_temperature_c", Float),
        Column("closes_at_humidity_pct", Float),
        Column("closes_note", Text, nullable=False, server_default=""),
        # After a gap it opens once more, for good where nothing closes it again.
        Column("again_opens_h", Float),
        Column("again_closes_h", Float),
        Column("again_scuffed", Boolean),
    ]


def window_checks() -> list[CheckConstraint]:
    """Build the checks that go with `window_columns`."""
    return [
        one_of("window_kind", WindowKind),
        all_or_nothing("closes_low_h", "closes_typical_h", "closes_high_h", name="closes"),
    ]
