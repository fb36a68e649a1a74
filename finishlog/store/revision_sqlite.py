"""Which revision a database file is at, found without Alembic."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Sequence
from contextlib import closing
from pathlib import Path
from typing import Any

from sqlalchemy import Connection

from finishlog.errors import DatabaseFault
from finishlog.store.engine_sqlite import APPLICATION_ID

# Runs a query and returns its first row.
Ask = Callable[[str], Sequence[Any]]

_WHOSE = """
SELECT application_id, (SELECT count(*) FROM sqlite_master),
    EXISTS (SELECT 1 FROM sqlite_master WHERE name = 'alembic_version')
FROM pragma_application_id
"""


def revision_of_file(path: Path, patience_s: float) -> str | None:
    """Return the revision of a file; None when there is no file or nothing in it yet.

    DatabaseFault for a file that holds something else; it is left as it was.
    """
    if not path.exists():
        return None
    # "rw", not "ro": a journal left by a crash has to be rolled back before anything is read.
    address = f"{path.absolute().as_uri()}?mode=rw"
    with closing(sqlite3.connect(address, uri=True, timeout=patience_s)) as connection:
        return _revision(path, lambda sql: connection.execute(sql).fetchone())


def revision_inside(path: Path, connection: Connection) -> str | None:
    """Return the revision as a transaction sees it; like `revision_of_file`."""
    return _revision(path, lambda sql: connection.exec_driver_sql(sql).one())


def _revision(path: Path, ask: Ask) -> str | None:
    application, tables, is_kept = ask(_WHOSE)
    if application == APPLICATION_ID:
        (revision,) = ask("SELECT max(version_num) FROM alembic_version") if is_kept else (None,)
        if revision is None:
            raise DatabaseFault(
                f"{path} is damaged: it does not say which revision it is of",
                "put back a backup; keep the damaged file until that worked",
            )
        return str(revision)
    if tables == 0:
        return None
    raise DatabaseFault(
        f"{path} is a database of another program",
        "set FINISHLOG_DB to the right file; this one was left untouched",
    )
