"""An upgrade that is killed leaves the shop as it was, and no backup that is none."""

from __future__ import annotations

import os
import signal
import sqlite3
import time
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from random import Random

import pytest
from conftest import NOW, Bench

from finishlog.store import backup_sqlite
from finishlog.store.upgrade import HEAD, Scripts, bring_up, migrations_folder

NEXT = f"""
from alembic import op

revision = "next"
down_revision = "{HEAD}"


def upgrade():
    op.execute("ALTER TABLE project ADD COLUMN client TEXT NOT NULL DEFAULT ''")
"""
BACKUPS = f"shop-at-{HEAD}-*.db"


@pytest.fixture
def scripts(tmp_path: Path) -> Scripts:
    """Our migrations, and one revision more."""
    import shutil

    folder = Path(shutil.copytree(migrations_folder(), tmp_path / "next"))
    (folder / "versions" / "next.py").write_text(NEXT)
    return Scripts(folder, "next")


def rows(path: Path) -> list[str]:
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        return list(connection.iterdump())


def in_a_child(do: Callable[[], object], kill_after_s: float | None = None) -> None:
    """Run it in a process of its own, killed after a while, or by itself."""
    child = os.fork()
    if child == 0:
        try:
            do()
        finally:
            os._exit(0)
    if kill_after_s is not None:
        time.sleep(kill_after_s)
        os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)


def dies(*_: object) -> None:
    os.kill(os.getpid(), signal.SIGKILL)


@pytest.mark.parametrize("during", ["_make_anew", "_copy", "_sync"])
def test_whatever_bears_a_backups_name_is_a_whole_copy(
    bench: Bench, scripts: Scripts, monkeypatch: pytest.MonkeyPatch, during: str
):
    bench.coat()
    path = bench.db.path
    before = rows(path)
    with monkeypatch.context() as patch:
        patch.setattr(backup_sqlite, during, dies)
        in_a_child(lambda: bring_up(path, NOW, 1.0, scripts))
    assert list(path.parent.glob(BACKUPS)) == []
    assert rows(path) == before
    done = bring_up(path, NOW, 1.0, scripts)
    assert done is not None
    assert rows(done.backup_path) == before
    assert list(path.parent.glob("*.unfinished")) == []


def test_killed_at_any_moment_it_leaves_the_old_shop_or_the_new_one(bench: Bench, scripts: Scripts):
    """And every file under a backup's final name holds what was there."""
    bench.coat()
    path, moments = bench.db.path, Random(20261124)
    before = rows(path)
    for _ in range(12):
        in_a_child(lambda: bring_up(path, NOW, 1.0, scripts), moments.uniform(0, 0.2))
        for backup in path.parent.glob(BACKUPS):
            assert rows(backup) == before
    bring_up(path, NOW, 1.0, scripts)
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("SELECT version_num FROM alembic_version").fetchone() == ("next",)
    assert list(path.parent.glob(BACKUPS)) != []
