"""An older database is backed up and upgraded, a newer or foreign one is refused untouched."""

from __future__ import annotations

import os
import shutil
import sqlite3
import subprocess
import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from pathlib import Path

import pytest
from conftest import NOW, Bench, fill, hours_ago

from finishlog.core.air.psychrometrics import Air
from finishlog.core.log.entries import Reading
from finishlog.errors import DatabaseFault
from finishlog.store.database import open_database
from finishlog.store.log.read_history import read_history
from finishlog.store.log.read_log import read_log
from finishlog.store.upgrade import HEAD, Scripts, Upgraded, bring_up, migrations_folder

ROOT = Path(__file__).parents[2]

# A small invented shop, as the first revision wrote it.
FIRST = Path(__file__).with_name("revision_0001.sql")

# Alters a parent table the way SQLite has to: copy, drop, rename.
NEXT = """
import sqlalchemy as sa
from alembic import op

revision = "{revision}"
down_revision = "{after}"


def upgrade():
    with op.batch_alter_table("project") as batch:
        batch.add_column(sa.Column("client", sa.Text(), nullable=False, server_default="{client}"))
        batch.alter_column("note", new_column_name="remark")
    {more}
"""


@pytest.fixture
def next_scripts(tmp_path: Path) -> Callable[..., Scripts]:
    """Make a folder of migrations with one revision more than ours."""

    def make(more: str = "pass") -> Scripts:
        folder = Path(shutil.copytree(migrations_folder(), tmp_path / "next"))
        text = NEXT.format(revision="next", after=HEAD, client="nobody", more=more)
        (folder / "versions" / "next.py").write_text(text)
        return Scripts(folder, "next")

    return make


def ask(path: Path, sql: str) -> list[tuple[object, ...]]:
    with closing(sqlite3.connect(path)) as connection:
        return connection.execute(sql).fetchall()


def everything(path: Path) -> list[str]:
    with closing(sqlite3.connect(path)) as connection:
        return list(connection.iterdump())


def test_a_new_database_is_made_with_its_folder_and_needs_no_upgrade(tmp_path: Path):
    path = tmp_path / "new folder" / "100 % & #1?.db"
    assert open_database(path, NOW).upgraded is None
    assert open_database(path, NOW).upgraded is None
    assert ask(path, "SELECT version_num FROM alembic_version") == [(HEAD,)]
    assert [file.name for file in path.parent.iterdir()] == [path.name]


def test_an_empty_file_becomes_a_database(tmp_path: Path):
    path = tmp_path / "shop.db"
    path.touch()
    open_database(path, NOW)
    assert ask(path, "SELECT version_num FROM alembic_version") == [(HEAD,)]


def test_an_older_database_is_backed_up_and_upgraded(bench: Bench, next_scripts):
    bench.coat()
    path, before = bench.db.path, everything(bench.db.path)
    done = bring_up(path, NOW, 1.0, next_scripts())
    assert done == Upgraded(HEAD, "next", path.with_name(f"shop-at-{HEAD}-20261124T210500Z.db"))
    assert everything(done.backup_path) == before
    assert ask(path, "SELECT name, client, remark FROM project") == [("cabinet", "nobody", "")]
    assert ask(path, "PRAGMA foreign_key_check") == []
    # The parts that point to the copied table are still there.
    assert ask(path, "SELECT count(*) FROM part") == [(3,)]


def test_an_upgrade_happens_once(bench: Bench, next_scripts):
    scripts = next_scripts()
    assert bring_up(bench.db.path, NOW, 1.0, scripts) is not None
    assert bring_up(bench.db.path, NOW, 1.0, scripts) is None


def test_a_backup_never_takes_the_place_of_a_file(bench: Bench, next_scripts):
    taken = bench.db.path.with_name(f"shop-at-{HEAD}-20261124T210500Z.db")
    taken.write_text("last year's backup")
    done = bring_up(bench.db.path, NOW, 1.0, next_scripts())
    assert done is not None
    assert done.backup_path.name == f"shop-at-{HEAD}-20261124T210500Z-2.db"
    assert taken.read_text() == "last year's backup"


def test_an_upgrade_that_fails_changes_nothing(bench: Bench, next_scripts):
    before = everything(bench.db.path)
    with pytest.raises(ZeroDivisionError):
        bring_up(bench.db.path, NOW, 1.0, next_scripts("1 / 0"))
    assert everything(bench.db.path) == before


def test_an_upgrade_that_would_leave_orphans_changes_nothing(bench: Bench, next_scripts):
    before = everything(bench.db.path)
    with pytest.raises(DatabaseFault, match="points to nothing in project"):
        bring_up(bench.db.path, NOW, 1.0, next_scripts('op.execute("DELETE FROM project")'))
    assert everything(bench.db.path) == before


def refused(path: Path, said: str) -> DatabaseFault:
    before = path.read_bytes()
    with pytest.raises(DatabaseFault, match=said) as caught:
        open_database(path, NOW, patience_s=0.2)
    assert path.read_bytes() == before
    assert caught.value.hint
    return caught.value


def test_a_newer_database_is_refused_untouched(bench: Bench, next_scripts):
    bring_up(bench.db.path, NOW, 1.0, next_scripts())
    refused(bench.db.path, "newer finishlog")


@pytest.mark.parametrize("content", ["a shopping list", "varnish\n" * 2000])
def test_what_is_no_database_is_refused_untouched(content: str, tmp_path: Path):
    path = tmp_path / "notes.txt"
    path.write_text(content)
    refused(path, "is not a finishlog database")
    assert list(tmp_path.iterdir()) == [path]


def test_the_database_of_another_program_is_refused_untouched(tmp_path: Path):
    path = tmp_path / "other.db"
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute("CREATE TABLE alembic_version (version_num TEXT)")
        connection.execute("INSERT INTO alembic_version VALUES (?)", (HEAD,))
    refused(path, "another program")


def test_a_folder_is_no_database(tmp_path: Path):
    with pytest.raises(DatabaseFault, match="is no file"):
        open_database(tmp_path, NOW)


def test_a_folder_that_cannot_be_made_is_said(tmp_path: Path):
    (tmp_path / "file").touch()
    with pytest.raises(DatabaseFault, match="is no folder"):
        open_database(tmp_path / "file" / "shop.db", NOW)


def test_a_damaged_database_is_said_to_be_damaged(bench: Bench):
    bench.coat()
    content = bytearray(bench.db.path.read_bytes())
    content[4096:] = b"\xff" * (len(content) - 4096)
    bench.db.path.write_bytes(content)
    with pytest.raises(DatabaseFault, match="is damaged"):
        coats_in(bench.db.path)


def test_a_damaged_database_is_not_upgraded(bench: Bench, next_scripts):
    """Damage that only a full check finds: a row is missing from an index."""
    with closing(sqlite3.connect(bench.db.path)) as connection, connection:
        connection.execute("PRAGMA writable_schema = ON")
        connection.execute(
            "UPDATE sqlite_master SET sql = replace(sql, '(archived_at)', '(archived_at, name)')"
            " WHERE name = 'ix_project_archived_at'"
        )
    with pytest.raises(DatabaseFault, match="is damaged"):
        bring_up(bench.db.path, NOW, 1.0, next_scripts())
    assert [file.name for file in bench.db.path.parent.glob("*.db")] == ["shop.db"]


def coats_in(path: Path) -> int:
    with open_database(path, NOW).reading() as connection:
        return len(read_log(connection).entries)


def test_while_another_one_writes_a_second_is_told_to_wait(bench: Bench):
    other = open_database(bench.db.path, NOW, patience_s=0.1)

    def write_too():
        with other.writing("log", "", NOW, "UTC") as second:
            second.record(Reading(when=hours_ago(0), room=bench.room, air=Air(17, 58)))

    with bench.db.writing("log", "", NOW, "UTC") as ledger:
        with pytest.raises(DatabaseFault, match="in use by another finishlog") as caught:
            write_too()
        # Reading is not held up by a writer that has not committed.
        assert coats_in(bench.db.path) == 0
        bench.coat_in(ledger)
    assert "try again" in caught.value.hint
    write_too()
    assert coats_in(bench.db.path) == 2


WITHOUT_ALEMBIC = """
import sys
from datetime import datetime, UTC
from pathlib import Path
from finishlog.store.database import open_database
open_database(Path(sys.argv[1]), datetime(2026, 11, 24, tzinfo=UTC))
heavy = {"alembic", "mako", "sqlalchemy.orm"}
print(sorted(heavy & set(sys.modules)))
"""


def run(code: str, *arguments: object) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-c", code, *map(str, arguments)],
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


def test_a_current_database_opens_without_alembic(blank: Path):
    said, complaint = run(WITHOUT_ALEMBIC, blank).communicate()
    assert (said, complaint) == ("[]\n", "")


CREATES_AND_WRITES = """
import sys
from datetime import datetime, UTC
from pathlib import Path
from finishlog.store.database import open_database
now = datetime(2026, 11, 24, tzinfo=UTC)
sys.stdin.readline()
with open_database(Path(sys.argv[1]), now).writing("note", sys.argv[2], now, "UTC"):
    pass
"""


@pytest.mark.thorough
def test_two_that_create_the_database_at_once_both_succeed(tmp_path: Path):
    path = tmp_path / "shop.db"
    both = [run(CREATES_AND_WRITES, path, name) for name in ("one", "other")]
    for each in both:
        assert each.stdin is not None
        each.stdin.write("\n")
        each.stdin.flush()
    assert [each.communicate() for each in both] == [("", ""), ("", "")]
    with open_database(path, NOW).reading() as connection:
        assert {row.words for row in read_history(connection)} == {"one", "other"}


def test_making_a_database_says_nothing(tmp_path: Path, capfd):
    database = open_database(tmp_path / "shop.db", NOW)
    with database.writing("project new", "", NOW, "UTC") as ledger:
        fill(database, ledger)
    assert capfd.readouterr() == ("", "")


def test_two_that_upgrade_at_once_make_one_backup(bench: Bench, next_scripts):
    scripts = next_scripts()
    with ThreadPoolExecutor(2) as both:
        done = [both.submit(bring_up, bench.db.path, NOW, 5.0, scripts) for _ in range(2)]
    upgraded = [each.result() for each in done if each.result() is not None]
    assert len(upgraded) == 1
    assert len(list(bench.db.path.parent.glob("shop-at-*.db"))) == 1


def rows(path: Path) -> dict[str, list[tuple[object, ...]]]:
    """Read what the first revision's columns hold, table by table."""
    with closing(sqlite3.connect(":memory:")) as first:
        first.executescript(FIRST.read_text())
        tables = [
            row[0] for row in first.execute("SELECT name FROM sqlite_master WHERE type = 'table'")
        ]
        columns = {t: [r[1] for r in first.execute(f"PRAGMA table_info({t})")] for t in tables}
    del columns["alembic_version"]
    return {t: ask(path, f"SELECT {', '.join(names)} FROM {t}") for t, names in columns.items()}


@pytest.fixture
def first_revision(tmp_path: Path) -> Path:
    path = tmp_path / "first.db"
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(FIRST.read_text())
    return path


def test_a_shop_of_the_first_revision_loses_nothing(first_revision: Path):
    before = rows(first_revision)
    upgraded = open_database(first_revision, NOW).upgraded
    assert upgraded is not None
    assert upgraded.from_ == "0001"
    assert rows(first_revision) == before
    assert ask(first_revision, "PRAGMA foreign_key_check") == []


def test_an_upgraded_database_is_made_like_a_new_one(first_revision: Path, fresh):
    """The same columns, rules, indexes and triggers, whatever way it came there."""
    open_database(first_revision, NOW)
    schema = "SELECT type, name, sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY type, name"

    def plain(path: Path) -> list[tuple[str, ...]]:
        return [tuple("".join(str(c).split()) for c in row) for row in ask(path, schema)]

    assert plain(first_revision) == plain(fresh("new.db"))


@pytest.mark.parametrize("table", ["entry", "work", "film_check", "coat"])
def test_the_log_of_an_upgraded_database_is_still_only_added_to(table: str, first_revision: Path):
    open_database(first_revision, NOW)
    assert ask(first_revision, f"SELECT count(*) FROM {table}") != [(0,)]
    with (
        closing(sqlite3.connect(first_revision)) as connection,
        pytest.raises(sqlite3.IntegrityError, match="only added to"),
    ):
        connection.execute(f"DELETE FROM {table}")


def test_labels_and_figures_of_the_fifth_revision_have_no_gap_and_nothing_said(
    first_revision: Path,
):
    """What is known of a window stays; what nobody could say before is not said."""
    bring_up(first_revision, NOW, 1.0, Scripts(migrations_folder(), "0005"))
    with closing(sqlite3.connect(first_revision)) as connection, connection:
        connection.execute(
            "INSERT INTO product_window (product_id, window_kind, closes_low_h, closes_typical_h,"
            " closes_high_h, valid_from) VALUES ((SELECT min(id) FROM product),"
            " 'closes at a time', 24, 24, 24, '2026-11-24T08:00:00.000000Z')"
        )
    before = ask(first_revision, "SELECT * FROM figure_set")
    windows = ask(first_revision, "SELECT * FROM product_window")
    upgraded = open_database(first_revision, NOW).upgraded
    assert upgraded is not None
    assert (upgraded.from_, upgraded.to) == ("0005", HEAD)
    for table, was in (("figure_set", before), ("product_window", windows)):
        assert was, table
        assert ask(first_revision, f"SELECT * FROM {table}") == [
            (*row, None, None, None) for row in was
        ]
    assert ask(first_revision, "SELECT * FROM product_says") == []


def test_coats_and_checks_of_the_sixth_revision_stay_and_may_be_said_otherwise(
    first_revision: Path,
):
    """Every coat so far was finished; what a check may find from then on has more words."""
    bring_up(first_revision, NOW, 1.0, Scripts(migrations_folder(), "0006"))
    coats = ask(first_revision, "SELECT * FROM coat")
    checks = ask(first_revision, "SELECT entry_id, test, found, note FROM film_check")
    assert coats
    assert checks
    open_database(first_revision, NOW)
    assert ask(first_revision, "SELECT DISTINCT stopped, flooded FROM coat") == [(None, None)]
    assert len(ask(first_revision, "SELECT * FROM coat")) == len(coats)
    for table in ("film_check", "work"):
        assert ask(first_revision, f"SELECT DISTINCT place FROM {table}") == [("",)]
    assert ask(first_revision, "SELECT * FROM zone_was") == []
    assert ask(first_revision, "SELECT entry_id, test, found, note FROM film_check") == checks
    with closing(sqlite3.connect(first_revision)) as connection, connection:
        connection.execute(
            "INSERT INTO film_check (entry_id, test, found) VALUES"
            " ((SELECT max(id) FROM entry), 'solvent-rub', 'resists')"
        )
        with pytest.raises(sqlite3.IntegrityError, match="ck_film_check_found"):
            connection.execute(
                "INSERT INTO film_check (entry_id, test, found) VALUES"
                " ((SELECT min(id) FROM entry), 'straightedge', 'crooked')"
            )
