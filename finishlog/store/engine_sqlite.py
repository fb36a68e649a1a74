"""The SQLite engine: how connections are opened, transactions begun, and faults named."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from sqlalchemy import URL, Connection, Engine, QueuePool, create_engine, event
from sqlalchemy.exc import DBAPIError

from finishlog.errors import DatabaseFault

if TYPE_CHECKING:
    from sqlalchemy.engine.interfaces import DBAPIConnection
    from sqlalchemy.pool import ConnectionPoolEntry

# "fnlg": the first migration writes it into the file's header.
APPLICATION_ID = 0x666E6C67

# The execution option that says how a transaction begins.
BEGIN = "begin"

# To read; to write (two that read first and write later would deadlock, so the lock is taken at
# once); and not at all: each statement is for itself.
DEFERRED, IMMEDIATE, NONE = "DEFERRED", "IMMEDIATE", ""

# The default rollback journal, on purpose: one person, short processes, perhaps a synced folder,
# where WAL's two extra files do harm. EXTRA also syncs the folder after the journal is gone, so
# that what was acknowledged survives the power going out right after. recursive_triggers lets
# INSERT OR REPLACE meet the triggers that keep the log. foreign_keys holds only when it is set
# outside a transaction, so it is set here, before any BEGIN.
_PRAGMAS = ("synchronous = EXTRA", "recursive_triggers = ON")

_SAID = {
    sqlite3.SQLITE_BUSY: "is in use by another finishlog",
    sqlite3.SQLITE_LOCKED: "is in use by another finishlog",
    sqlite3.SQLITE_NOTADB: "is not a finishlog database",
    sqlite3.SQLITE_CORRUPT: "is damaged",
    sqlite3.SQLITE_CANTOPEN: "cannot be opened",
    sqlite3.SQLITE_READONLY: "cannot be written",
    sqlite3.SQLITE_PERM: "cannot be opened",
    sqlite3.SQLITE_FULL: "cannot grow: the disk is full",
    sqlite3.SQLITE_IOERR: "cannot be read or written: the disk reports an error",
}

_HINTS = {
    sqlite3.SQLITE_BUSY: "nothing was changed; try again in a moment",
    sqlite3.SQLITE_LOCKED: "nothing was changed; try again in a moment",
    sqlite3.SQLITE_NOTADB: "set FINISHLOG_DB to the right file; this one was left untouched",
    sqlite3.SQLITE_CORRUPT: "put back a backup; keep the damaged file until that worked",
    sqlite3.SQLITE_CANTOPEN: "see whether the folder is there and may be read",
    sqlite3.SQLITE_READONLY: "see who owns the file and its folder",
    sqlite3.SQLITE_PERM: "see who owns the file and its folder",
}


def open_engine(path: Path, patience_s: float, *, foreign_keys: bool = True) -> Engine:
    """Build an engine on one file, with one connection for all that is asked in turn.

    A lock is waited for at most `patience_s` seconds. Whoever is done disposes of it: so each has
    an engine of its own, and nobody closes another's connection.
    """
    address = URL.create("sqlite", database=str(path))
    engine = create_engine(
        address,
        connect_args={"timeout": patience_s},
        poolclass=QueuePool,
        # Another one is opened only for what is asked in the middle of a transaction, beside it.
        pool_size=1,
        max_overflow=-1,
    )
    pragmas = (*_PRAGMAS, f"foreign_keys = {'ON' if foreign_keys else 'OFF'}")

    @event.listens_for(engine, "connect")
    def on_connect(connection: DBAPIConnection, record: ConnectionPoolEntry) -> None:
        # None: the driver begins nothing by itself, so that DDL too is in our transaction.
        connection.isolation_level = None
        for pragma in pragmas:
            connection.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def on_begin(connection: Connection) -> None:
        # What was kept of the log in the transaction before may have been added to since.
        connection.info.clear()
        how = connection.get_execution_options().get(BEGIN, DEFERRED)
        if how:
            connection.exec_driver_sql(f"BEGIN {how}")

    return engine


@contextmanager
def opened(path: Path, patience_s: float, *, foreign_keys: bool = True) -> Iterator[Engine]:
    """Give an engine whose connection is closed afterwards."""
    engine = open_engine(path, patience_s, foreign_keys=foreign_keys)
    try:
        yield engine
    finally:
        engine.dispose()


@contextmanager
def empty_shop() -> Iterator[Connection]:
    """Give a database with nothing in it, which is gone afterwards: no file is made."""
    from finishlog.store.schema.whole import metadata

    with opened(Path(":memory:"), 0.0) as engine, begun(engine, IMMEDIATE) as connection:
        metadata.create_all(connection)
        yield connection


@contextmanager
def begun(engine: Engine, how: str) -> Iterator[Connection]:
    """Run one transaction: committed at the end, rolled back by any exception."""
    connection = engine.connect().execution_options(**{BEGIN: how})
    with connection, connection.begin():
        yield connection


@contextmanager
def faults_named(path: Path) -> Iterator[None]:
    """Turn what SQLite says about the file into a DatabaseFault; faults of ours pass."""
    try:
        yield
    except DBAPIError as error:
        if isinstance(error.orig, sqlite3.Error):
            _name(path, error.orig, error)
        raise
    except sqlite3.Error as error:
        _name(path, error, error)
        raise


def _name(path: Path, fault: sqlite3.Error, cause: Exception) -> None:
    # The low byte is the primary code; the rest refines it.
    code = getattr(fault, "sqlite_errorcode", sqlite3.SQLITE_OK) & 0xFF
    if code in _SAID:
        raise DatabaseFault(f"{path} {_SAID[code]}", _HINTS.get(code, "")) from cause
