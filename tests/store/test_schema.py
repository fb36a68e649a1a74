"""The migrations make exactly the schema that the program reads and writes."""

from __future__ import annotations

import re
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata  # noqa: TID253
from alembic.migration import MigrationContext  # noqa: TID253
from alembic.script import ScriptDirectory  # noqa: TID253
from sqlalchemy import create_engine

from finishlog.core.log.kinds import KINDS
from finishlog.errors import DatabaseFault
from finishlog.store.database import Database
from finishlog.store.engine_sqlite import APPLICATION_ID
from finishlog.store.log import read_log
from finishlog.store.schema.asked import Built
from finishlog.store.schema.whole import APPEND_ONLY, metadata
from finishlog.store.upgrade import HEAD, migrations_folder

STATEMENTS = "SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL AND type IN ({})"


def statements(connection: sqlite3.Connection, kinds: str) -> dict[str, str]:
    rows = dict(connection.execute(STATEMENTS.format(kinds)))
    rows.pop("alembic_version", None)
    return rows


def parts_of(sql: str) -> list[str]:
    """Split CREATE TABLE at its outer commas; spaces outside of quotes do not matter."""
    inside = sql[sql.index("(") + 1 : sql.rindex(")")].replace('"', "")
    parts, depth, quoted = [""], 0, False
    for letter in inside:
        quoted ^= letter == "'"
        depth += 0 if quoted else (letter == "(") - (letter == ")")
        if letter == "," and depth == 0 and not quoted:
            parts.append("")
        else:
            parts[-1] += letter
    return sorted(_plain(part) for part in parts)


def _plain(sql: str) -> str:
    """Drop the spacing that has no meaning, and none inside quotes."""
    pieces = sql.split("'")
    pieces[::2] = [re.sub(r"\s*([(),])\s*", r"\1", re.sub(r"\s+", " ", p)) for p in pieces[::2]]
    return "'".join(pieces).strip()


def test_alembic_finds_nothing_to_change(db: Database):
    with db.reading() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, metadata) == []


def test_every_table_is_made_as_it_is_declared_checks_and_names_too(blank: Path):
    engine = create_engine("sqlite://")
    metadata.create_all(engine)
    with engine.connect() as connection, closing(sqlite3.connect(blank)) as migrated:
        declared = statements(connection.connection.driver_connection, "'table'")
        made = statements(migrated, "'table'")
        assert declared.keys() == made.keys()
        for table, sql in declared.items():
            assert parts_of(made[table]) == parts_of(sql), table
        indexes = statements(connection.connection.driver_connection, "'index'")
        assert {name: _plain(sql) for name, sql in statements(migrated, "'index'").items()} == {
            name: _plain(sql) for name, sql in indexes.items()
        }
    engine.dispose()


def test_every_constraint_has_a_name(blank: Path):
    with closing(sqlite3.connect(blank)) as connection:
        for sql in statements(connection, "'table'").values():
            rules = [part for part in parts_of(sql) if re.search("CHECK|UNIQUE|KEY", part)]
            assert all(rule.startswith("CONSTRAINT ") for rule in rules), rules


def test_there_is_one_head_and_the_program_knows_it():
    assert ScriptDirectory(str(migrations_folder())).get_heads() == [HEAD]


def test_the_file_says_whose_it_is(blank: Path):
    with closing(sqlite3.connect(blank)) as connection:
        assert connection.execute("PRAGMA application_id").fetchone() == (APPLICATION_ID,)


def test_everything_that_happened_is_append_only():
    things = {"project", "room", "usual_day", "usual_hour", "part", "piece", "face", "zone"}
    things |= {"assembly_need", "zone_was", "room_join"}
    things |= {
        "product",
        "product_figure",
        "product_window",
        "product_says",
        "steps",
        "step",
        "part_step",
    }
    things |= {"container", "mix_part", "shop_week", "shop_hours", "setting", "alias"}
    assert {table.name for table in APPEND_ONLY} == set(metadata.tables) - things


def test_every_kind_of_entry_has_a_table_of_its_own():
    keyed_by_entry = {
        table.name
        for table in APPEND_ONLY
        if [column.name for column in table.primary_key] == ["entry_id"]
    }
    assert len(keyed_by_entry) == len(KINDS)


def test_migrations_are_found_inside_an_installed_package_first(tmp_path: Path):
    package = tmp_path / "finishlog"
    beside, inside = tmp_path / "migrations", package / "_migrations"
    for folder in (beside, inside):
        folder.mkdir(parents=True)
    (beside / "env.py").touch()
    assert migrations_folder(package) == beside
    (inside / "env.py").touch()
    assert migrations_folder(package) == inside


def test_missing_migrations_are_said(tmp_path: Path):
    with pytest.raises(DatabaseFault, match="migrations are missing"):
        migrations_folder(tmp_path / "finishlog")


def plan_of(db: Database, query: Built) -> str:
    sql = str(query.compile(compile_kwargs={"literal_binds": True}))
    with db.reading() as connection:
        steps = connection.exec_driver_sql(f"EXPLAIN QUERY PLAN {sql}").all()
    return "; ".join(step[-1] for step in steps)


def test_what_every_look_asks_of_the_cans_walks_through_none_that_were_put_away(db: Database):
    found = plan_of(db, read_log.of_containers_in_use.build())
    assert "ix_container_event_container_id" in found
    assert "ix_container_archived_at" in found
    assert "SCAN" not in found


@pytest.mark.parametrize(
    "statement",
    [
        "INSERT INTO fault (entry_id, what) VALUES (1, 'gremlin')",
        "INSERT INTO room (name, heater) VALUES ('shop', 'dragon')",
    ],
)
def test_words_that_are_not_ours_are_refused(blank: Path, statement: str):
    with (
        closing(sqlite3.connect(blank)) as connection,
        pytest.raises(sqlite3.IntegrityError, match="CHECK constraint failed"),
    ):
        connection.execute(statement)
