"""The whole schema, as the migrations make it (a test compares the two)."""

from __future__ import annotations

from sqlalchemy import Table

from finishlog.store.schema import log as schema_log
from finishlog.store.schema.columns import metadata

__all__ = ["APPEND_ONLY", "metadata"]

# What triggers keep from being changed or deleted.
APPEND_ONLY: tuple[Table, ...] = tuple(
    table for table in vars(schema_log).values() if isinstance(table, Table)
)
