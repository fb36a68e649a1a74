"""The log is only added to: the database itself refuses to change or delete what happened."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from conftest import NOW, Bench
from sqlalchemy import Table
from sqlalchemy.exc import IntegrityError

from finishlog.store.database import open_database
from finishlog.store.schema.whole import APPEND_ONLY

TABLES = [pytest.param(table, id=table.name) for table in APPEND_ONLY]


@pytest.fixture
def one_row(fresh: Callable[[], Path]) -> Callable[[Table], Path]:
    """Put one row into a table, past its checks: only the triggers are asked here."""

    def put(table: Table) -> Path:
        path = fresh()
        columns = ", ".join(f'"{column.name}"' for column in table.columns)
        values = ", ".join("1" for _ in table.columns)
        with closing(sqlite3.connect(path)) as connection, connection:
            connection.execute("PRAGMA ignore_check_constraints = ON")
            connection.execute(f'INSERT INTO "{table.name}" ({columns}) VALUES ({values})')
        return path

    return put


def refused(path: Path, sql: str) -> str:
    """Run what must be refused, with only the triggers in its way, and return what was said."""
    database = open_database(path, NOW)
    with database.reading() as connection:
        connection.exec_driver_sql("PRAGMA ignore_check_constraints = ON")
        connection.exec_driver_sql("PRAGMA defer_foreign_keys = ON")
        with pytest.raises(IntegrityError) as caught:
            connection.exec_driver_sql(sql)
        table = sql.split('"')[1]
        assert connection.exec_driver_sql(f'SELECT count(*) FROM "{table}"').scalar() == 1
    return str(caught.value.orig)


@pytest.mark.parametrize("table", TABLES)
def test_nothing_that_happened_can_be_changed(table: Table, one_row: Callable[[Table], Path]):
    column = next(iter(table.columns)).name
    said = refused(one_row(table), f'UPDATE "{table.name}" SET "{column}" = "{column}"')
    assert said == f"the log is only added to: no UPDATE of {table.name}"


@pytest.mark.parametrize("table", TABLES)
def test_nothing_that_happened_can_be_deleted(table: Table, one_row: Callable[[Table], Path]):
    said = refused(one_row(table), f'DELETE FROM "{table.name}"')
    assert said == f"the log is only added to: no DELETE of {table.name}"


@pytest.mark.parametrize("table", TABLES)
def test_nothing_that_happened_can_be_replaced(table: Table, one_row: Callable[[Table], Path]):
    values = ", ".join("1" for _ in table.columns)
    said = refused(one_row(table), f'INSERT OR REPLACE INTO "{table.name}" VALUES ({values})')
    assert said == f"the log is only added to: no DELETE of {table.name}"


def test_a_product_that_a_coat_names_cannot_be_deleted(bench: Bench):
    bench.coat()
    with (
        pytest.raises(IntegrityError, match="FOREIGN KEY"),
        bench.db.writing("product", "", NOW, "UTC") as ledger,
    ):
        ledger.connection.exec_driver_sql("DELETE FROM product")
