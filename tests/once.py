"""What a person's process does once and a test run would do thousands of times.

Compiling SQL: a process opens one database, a test run thousands, each with a dialect of its own by
which SQLAlchemy keeps what it compiled; half of the time of a command went into that. Making the
schema by the migrations: the same empty file each time. And the bytecode of a program that is
started.
"""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from functools import cache, lru_cache
from pathlib import Path
from typing import Any
from unittest import mock

from sqlalchemy import URL, Engine, create_engine

from finishlog.core.clock import counting, pace_posterior
from finishlog.store import database, engine_sqlite
from finishlog.store.database import open_database
from finishlog.store.upgrade import Upgraded, bring_up


@cache
def blank() -> bytes:
    """Return an empty database as the migrations make it (nothing has it open: it is whole)."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "shop.db"
        open_database(path, datetime(2026, 1, 1, tzinfo=UTC))
        return path.read_bytes()


@contextmanager
def made_once() -> Iterator[None]:
    """Let the file that a first record makes be a copy; whatever else opening does, is done."""
    with mock.patch.object(database, "bring_up", _bring_up):
        yield


def _bring_up(path: Path, now: datetime, patience_s: float) -> Upgraded | None:
    if path.parent.is_dir() and not path.exists():
        with mock.patch.object(database, "bring_up", bring_up):
            path.write_bytes(blank())
    return bring_up(path, now, patience_s)


@cache
def _compiler() -> Engine:
    """Build the engine whose dialect compiles for all; it meets SQLite once."""
    engine = create_engine("sqlite://")
    engine.connect().close()
    return engine


def _engine(address: URL, **more: Any) -> Engine:
    """Build an engine of its own in all but the compiler."""
    engine = create_engine(address, **more)
    engine.dialect = _compiler().dialect
    engine._compiled_cache = _compiler()._compiled_cache
    return engine


@contextmanager
def compiled_once(folder: Path) -> Iterator[None]:
    """Let programs that are started keep their bytecode, as an installed one does.

    Where this process may write none beside the code, in a folder of the run.
    """
    with mock.patch.dict(os.environ):
        if os.environ.pop("PYTHONDONTWRITEBYTECODE", ""):
            os.environ["PYTHONPYCACHEPREFIX"] = str(folder / "bytecode")
        yield


@contextmanager
def built_once() -> Iterator[None]:
    """Let engines share what others compiled, and shops the sums over their air."""
    with (
        mock.patch.object(engine_sqlite, "create_engine", _engine),
        # Sums over air belong to a look; the shops of a test run meet the same air again and again.
        mock.patch.object(counting, "pieces_of", lru_cache(256)(counting.pieces_of)),
        mock.patch.object(pace_posterior, "_posterior", lru_cache(64)(pace_posterior._posterior)),
    ):
        yield
