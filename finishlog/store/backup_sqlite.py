"""A whole copy of the database beside it, checked before anything relies on it."""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

from finishlog.errors import DatabaseFault


def back_up(path: Path, label: str, now: datetime) -> Path:
    """Copy the database to a new file beside it and return that file.

    Uses SQLite's own backup: a plain copy can miss what a journal holds. An existing file is
    never overwritten. DatabaseFault when the copy is not whole.
    """
    copy = _new_file(path, f"{label}-{now.astimezone(UTC):%Y%m%dT%H%M%SZ}")
    try:
        _copy(path, copy)
    except BaseException:
        copy.unlink(missing_ok=True)
        raise
    return copy


def _new_file(path: Path, stamp: str) -> Path:
    for number in range(1, 1000):
        again = "" if number == 1 else f"-{number}"
        copy = path.with_name(f"{path.stem}-{stamp}{again}{path.suffix}")
        try:
            os.close(os.open(copy, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
        except FileExistsError:
            continue
        except OSError as error:
            raise DatabaseFault(f"no backup can be made: {error.strerror}: {copy}") from error
        return copy
    raise DatabaseFault(f"{path.parent} holds too many backups of {path.name}", "move some away")


def _copy(path: Path, copy: Path) -> None:
    with closing(sqlite3.connect(path)) as source, closing(sqlite3.connect(copy)) as target:
        source.backup(target)
        found = [str(row[0]) for row in target.execute("PRAGMA integrity_check")]
    if found != ["ok"]:
        raise DatabaseFault(
            f"{path} is damaged: {found[0]}", "put back a backup; keep the damaged file until then"
        )
