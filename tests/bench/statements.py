"""Run one command and say on stderr how many statements SQLite ran for it."""

import sqlite3
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any
from unittest import mock

from finishlog.__main__ import run


@contextmanager
def statements() -> Iterator[list[str]]:
    """Collect all that SQLite runs meanwhile, on whatever connection is opened."""
    told: list[str] = []
    connect = sqlite3.connect

    def note(statement: str) -> None:
        # What a trigger does is part of the statement that pulls it.
        if not statement.startswith("--"):
            told.append(statement)

    def overheard(*arguments: Any, **named: Any) -> sqlite3.Connection:
        connection = connect(*arguments, **named)
        connection.set_trace_callback(note)
        return connection

    with (
        mock.patch.object(sqlite3, "connect", overheard),
        mock.patch.object(sqlite3.dbapi2, "connect", overheard),
    ):
        yield told


if __name__ == "__main__":
    with statements() as told:
        code = run(sys.argv[1:])
    print(len(told), file=sys.stderr)
    sys.exit(code)
