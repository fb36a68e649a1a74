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

    Uses SQLite's own backup: a plain copy can miss what a journal holds. It is written and checked
    under a name of its own, so that what bears a backup's name is one. An existing file is never
    overwritten. DatabaseFault when the copy is not whole.
    """
    copy = _new_name(path, f"{label}-{now.astimezone(UTC):%Y%m%dT%H%M%SZ}")
    unfinished = copy.with_name(f"{copy.name}.unfinished")
    try:
        _make_anew(unfinished)
        _copy(path, unfinished)
        _sync(unfinished)
        unfinished.replace(copy)
        _sync(copy.parent)
    except OSError as error:
        raise DatabaseFault(f"no backup can be made: {error.strerror}: {copy}") from error
    finally:
        unfinished.unlink(missing_ok=True)
    return copy


def _new_name(path: Path, stamp: str) -> Path:
    for number in range(1, 1000):
        again = "" if number == 1 else f"-{number}"
        copy = path.with_name(f"{path.stem}-{stamp}{again}{path.suffix}")
        if not copy.exists():
            return copy
    raise DatabaseFault(f"{path.parent} holds too many backups of {path.name}", "move some away")


def _make_anew(file: Path) -> None:
    """Make an empty file that is the person's own; one that an interrupted backup left goes."""
    file.unlink(missing_ok=True)
    os.close(os.open(file, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))


def _sync(path: Path) -> None:
    """Have a file, or the names in a folder, on disk before anything relies on it."""
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _copy(path: Path, copy: Path) -> None:
    with closing(sqlite3.connect(path)) as source, closing(sqlite3.connect(copy)) as target:
        source.backup(target)
        found = [str(row[0]) for row in target.execute("PRAGMA integrity_check")]
    if found != ["ok"]:
        raise DatabaseFault(
            f"{path} is damaged: {found[0]}", "put back a backup; keep the damaged file until then"
        )
