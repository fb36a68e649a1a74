"""What a person's process does once and a test run would do thousands of times.

Compiling SQL: a process opens one database, a test run thousands, each with a dialect of its own by
which SQLAlchemy keeps what it compiled; half of the time of a command went into that. Making the
schema by the migrations: the same empty file each time. And the bytecode of a program that is
started.
"""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from functools import cache, lru_cache
from pathlib import Path
from typing import Any
from unittest import mock

from msgspec.structs import astuple
from sqlalchemy import URL, Engine, create_engine

from finishlog.core.air import room
from finishlog.core.air.course import Course
from finishlog.core.clock import counting, pace_posterior
from finishlog.store import database, engine_sqlite
from finishlog.store.database import open_database
from finishlog.store.upgrade import Upgraded, bring_up
from tests.kept_open import creator


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
    """Build an engine of its own in all but the compiler, and the connection of its finisher."""
    path = address.database or ":memory:"
    opens = creator(os.path.abspath(path), **more["connect_args"]) if path != ":memory:" else None
    engine = create_engine(address, **more, **({"creator": opens} if opens else {}))
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


def _course_once(draw: Callable[[room.RoomAir], Course]) -> Callable[[room.RoomAir], Course]:
    """Draw a course once for all rooms whose air is told in the same words."""

    @lru_cache(128)
    def drawn(told: _Told) -> Course:
        return draw(told.room)

    return lambda of: drawn(_Told(of))


assert "synchronous = EXTRA" in engine_sqlite._PRAGMAS, "what was acknowledged survives"
_NOT_WAITING_FOR_THE_DISK = tuple(
    pragma.replace("synchronous = EXTRA", "synchronous = OFF") for pragma in engine_sqlite._PRAGMAS
)


class _Told:
    """A room by what is said of its air: it equals another of which the same is said."""

    def __init__(self, of: room.RoomAir) -> None:
        self.room = of
        self._said = astuple(of)

    def __hash__(self) -> int:
        return hash(self._said)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Told) and self._said == other._said


@contextmanager
def built_once() -> Iterator[None]:
    """Let engines share what others compiled, and shops the sums over their air."""
    with (
        mock.patch.object(engine_sqlite, "create_engine", _engine),
        # What is on disk when the power goes no test can see; a process that dies loses nothing.
        mock.patch.object(engine_sqlite, "_PRAGMAS", _NOT_WAITING_FOR_THE_DISK),
        # Sums over air belong to a look; the shops of a test run meet the same air again and again.
        mock.patch.object(room, "course_of", _course_once(room.course_of)),
        mock.patch.object(counting, "pieces_of", lru_cache(256)(counting.pieces_of)),
        mock.patch.object(pace_posterior, "_posterior", lru_cache(64)(pace_posterior._posterior)),
    ):
        yield
