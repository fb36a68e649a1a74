"""A finisher's database stays open from one command to the next, where nobody else touched it.

A process opens it once and reads its schema, which takes as long as a short command does; in the
test process a finisher types hundreds.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from pathlib import Path
from typing import Any

_Key = tuple[str, float]
_Seen = tuple[int, ...]


class KeptOpen:
    """The connections of one finisher that no command uses; closed when the finisher goes.

    One is used again where its file is as it was left. What another connection wrote meanwhile
    SQLite finds by itself, as it does between any two transactions.
    """

    def __init__(self) -> None:
        self._idle: dict[_Key, tuple[_Connection, _Seen]] = {}
        self._keeps = True

    @contextmanager
    def serves(self) -> Iterator[None]:
        """Let what is opened meanwhile be taken from here."""
        token = _SERVES.set(self)
        try:
            yield
        finally:
            _SERVES.reset(token)

    def connect(self, path: str, timeout: float) -> sqlite3.Connection:
        """Hand out a connection; it comes back when it is closed."""
        kept, then = self._idle.pop((path, timeout), (None, ()))
        if kept is not None:
            if then == _seen(path):
                return kept
            kept.close_for_good()
        # Wherever the garbage is collected it is closed, as SQLAlchemy has it too.
        fresh = sqlite3.connect(path, timeout=timeout, factory=_Connection, check_same_thread=False)
        fresh.when_closed = lambda: self._take_back((path, timeout), fresh)
        return fresh

    def _take_back(self, key: _Key, connection: _Connection) -> None:
        seen = _seen(key[0])
        if self._keeps and seen and key not in self._idle and not connection.in_transaction:
            self._idle[key] = (connection, seen)
        else:
            connection.close_for_good()

    def drop(self) -> None:
        """Close what is kept."""
        while self._idle:
            self._idle.popitem()[1][0].close_for_good()

    def close(self) -> None:
        """Close what is kept, and keep no more."""
        self._keeps = False
        self.drop()


class _Connection(sqlite3.Connection):
    when_closed: Callable[[], None] | None = None

    def __init__(self, *arguments: Any, **named: Any) -> None:
        super().__init__(*arguments, **named)
        self._functions: set[str] = set()

    def create_function(self, name: str, *arguments: Any, **named: Any) -> None:
        """Declare it once: again, and all statements would have to be prepared again."""
        if name not in self._functions:
            super().create_function(name, *arguments, **named)
            self._functions.add(name)

    def close(self) -> None:
        if self.when_closed is None:
            super().close()
        else:
            self.when_closed()

    def close_for_good(self) -> None:
        self.when_closed = None
        super().close()


def _seen(path: str) -> _Seen:
    """Return which file it is and when it was last touched; none: there is no file."""
    try:
        found = Path(path).stat()
    except OSError:
        return ()
    return (found.st_dev, found.st_ino, found.st_size, found.st_mtime_ns, found.st_ctime_ns)


_SERVES: ContextVar[KeptOpen | None] = ContextVar("kept open", default=None)


def creator(path: str, timeout: float) -> Callable[[], sqlite3.Connection] | None:
    """Return what opens a file for the command that is typed now; None: as ever."""
    of = _SERVES.get()
    return (lambda: of.connect(path, timeout)) if of else None
