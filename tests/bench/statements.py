"""Run one command and say on stderr how many statements SQLite ran for it."""

import sqlite3
import sys
from typing import Any

from finishlog.__main__ import run

told: list[str] = []
connect = sqlite3.connect


def overheard(*arguments: Any, **named: Any) -> sqlite3.Connection:
    connection = connect(*arguments, **named)
    connection.set_trace_callback(told.append)
    return connection


sqlite3.connect = sqlite3.dbapi2.connect = overheard  # type: ignore[assignment,attr-defined]
code = run(sys.argv[1:])
# What a trigger does is part of the statement that pulls it.
print(sum(not statement.startswith("--") for statement in told), file=sys.stderr)
sys.exit(code)
