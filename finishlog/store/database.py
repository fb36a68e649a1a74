"""The database of one shop: reading and writing, one transaction a command."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager
from datetime import datetime
from pathlib import Path
from weakref import finalize

from sqlalchemy import Connection

from finishlog.errors import DatabaseFault
from finishlog.store.engine_sqlite import (
    DEFERRED,
    IMMEDIATE,
    NONE,
    begun,
    empty_shop,
    faults_named,
    open_engine,
)
from finishlog.store.log.ledger import Ledger, open_act
from finishlog.store.revision_sqlite import revision_inside
from finishlog.store.upgrade import HEAD, Upgraded, bring_up


class Database:
    """One database file. `upgraded` says what had to be done to open it.

    Where there is no file, what is read is an empty shop, and the first thing that is recorded
    makes the file: a question leaves nothing behind. `was_made` and `has_recorded` say so after.
    One connection serves all; it is closed with the last of what holds this, or by `close`.
    """

    def __init__(self, path: Path, now: datetime, patience_s: float) -> None:
        self.path = path
        self.upgraded: Upgraded | None = None
        self.was_made = False
        self.has_recorded = False
        self._now = now
        self._patience_s = patience_s
        self._engine = open_engine(path, patience_s)
        self.close = finalize(self, self._engine.dispose)
        self._is_there = _is_there(path)
        if self._is_there and self._revision() != HEAD:
            self.close()
            self.upgraded = bring_up(path, now, patience_s)

    def _revision(self) -> str | None:
        with self.glancing() as connection:
            return revision_inside(self.path, connection)

    def make(self) -> None:
        """Make the file if it is not there yet."""
        if not self._is_there:
            bring_up(self.path, self._now, self._patience_s)
            self._is_there = self.was_made = True

    def reading(self) -> AbstractContextManager[Connection]:
        """Read in one transaction: everything read is of the same moment."""
        return self._begun(DEFERRED)

    def glancing(self) -> AbstractContextManager[Connection]:
        """Read without a transaction, each statement of its own moment."""
        return self._begun(NONE)

    @contextmanager
    def _begun(self, how: str) -> Iterator[Connection]:
        if not self._is_there:
            with empty_shop() as connection:
                yield connection
            return
        with faults_named(self.path), begun(self._engine, how) as connection:
            yield connection

    @contextmanager
    def writing(
        self, verb: str, words: str, typed_at: datetime, time_zone: str
    ) -> Iterator[Ledger]:
        """Record one command: all of it or, after any exception, nothing.

        On disk when the block is left. `words` are what the person typed, `time_zone` the name
        of the zone that it was typed in.
        """
        self.make()
        with self._begun(IMMEDIATE) as connection:
            yield open_act(connection, verb, words, typed_at, time_zone)
        self.has_recorded = True


def _is_there(path: Path) -> bool:
    """Tell whether there is a file; a pipe or a device would be waited for without end."""
    try:
        is_file = path.is_file()
        is_other = not is_file and path.exists()
    except OSError as error:
        raise DatabaseFault(
            f"{path} cannot be opened: {error.strerror}",
            "set FINISHLOG_DB to a file in a folder that is yours",
        ) from error
    if is_other:
        raise DatabaseFault(f"{path} is no file", "set FINISHLOG_DB to a file")
    above = next(each for each in path.absolute().parents if each.exists())
    if not above.is_dir():
        raise DatabaseFault(f"{path}: {above} is no folder", "set FINISHLOG_DB to a file in one")
    return is_file


def open_database(
    path: Path, now: datetime, *, patience_s: float = 10.0, make: bool = True
) -> Database:
    """Open the database, upgrading it when needed; without `make` only what is recorded makes it.

    `now` stamps the backup that an upgrade makes; a lock is waited for `patience_s` seconds.
    DatabaseFault when the file is locked, damaged, newer than this program, or not ours.
    """
    database = Database(path, now, patience_s)
    if make:
        database.make()
    return database
