"""The database of one shop: reading and writing, one transaction a command."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

from sqlalchemy import Connection

from finishlog.store.engine_sqlite import begun, faults_named, open_engine
from finishlog.store.ledger import Ledger, open_act
from finishlog.store.upgrade import Upgraded, bring_up


class Database:
    """One open database file. `upgraded` says what had to be done to open it."""

    def __init__(self, path: Path, upgraded: Upgraded | None, patience_s: float) -> None:
        self.path = path
        self.upgraded = upgraded
        self._engine = open_engine(path, patience_s)

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """Read in one transaction: everything read is of the same moment."""
        with faults_named(self.path), begun(self._engine, to_write=False) as connection:
            yield connection

    @contextmanager
    def writing(
        self, verb: str, words: str, typed_at: datetime, time_zone: str
    ) -> Iterator[Ledger]:
        """Record one command: all of it or, after any exception, nothing.

        On disk when the block is left. `words` are what the person typed, `time_zone` the name
        of the zone that it was typed in.
        """
        with faults_named(self.path), begun(self._engine, to_write=True) as connection:
            yield open_act(connection, verb, words, typed_at, time_zone)


def open_database(path: Path, now: datetime, *, patience_s: float = 2.0) -> Database:
    """Open the database, making or upgrading it first when needed.

    `now` stamps the backup that an upgrade makes; a lock is waited for `patience_s` seconds.
    DatabaseFault when the file is locked, damaged, newer than this program, or not ours.
    """
    return Database(path, bring_up(path, now, patience_s), patience_s)
