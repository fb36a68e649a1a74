"""The whole schema, as the migrations make it (a test compares the two)."""

from __future__ import annotations

from sqlalchemy import Table

from finishlog.store.schema import log as schema_log
from finishlog.store.schema import rooms as schema_rooms
from finishlog.store.schema import things as schema_things
from finishlog.store.schema.columns import metadata

__all__ = ["APPEND_ONLY", "metadata", "schema_log"]

_THINGS = {
    table
    for module in (schema_things, schema_rooms)
    for table in vars(module).values()
    if isinstance(table, Table)
}

# What triggers keep from being changed or deleted: everything that happened.
APPEND_ONLY: tuple[Table, ...] = tuple(
    table for table in metadata.tables.values() if table not in _THINGS
)
