"""The names that completion offers are the ones that the queries give, and cost nothing else."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from finishlog.core.log.words import Operation
from finishlog.core.shop.things import FaceKind, Step
from finishlog.store.database import Database, open_database
from finishlog.store.names_sqlite import Names, PartNames, read_names, read_species
from finishlog.store.things.add import (
    NewFace,
    NewPart,
    NewZone,
    add_part,
    add_product,
    add_project,
    add_room,
    add_steps,
)
from finishlog.store.things.read_shop import read_schedules, read_shop
from tests.once import blank

NOW = datetime(2026, 11, 24, 21, 5, tzinfo=UTC)
NAMES = st.text("abcdé ñ-_'\"", min_size=1, max_size=6).map(str.strip).filter(bool)
WOODS = st.none() | st.sampled_from(["ash", "cherry", "elm"])
ZONES = st.lists(st.builds(NewZone, NAMES, WOODS), max_size=2, unique_by=lambda zone: zone.name)
FACES = st.lists(
    st.builds(NewFace, NAMES, st.sampled_from(FaceKind), ZONES.map(tuple)),
    min_size=1,
    max_size=3,
    unique_by=lambda face: face.name,
).map(tuple)
PARTS = st.builds(NewPart, NAMES, st.integers(1, 12), WOODS, FACES)
PROJECTS = st.dictionaries(
    NAMES, st.lists(PARTS, max_size=3, unique_by=lambda part: part.name), max_size=3
)
SOME = st.lists(NAMES, max_size=3, unique=True)


def queried(database: Database) -> Names:
    """Put together by the queries what completion may offer."""
    with database.reading() as connection:
        shop = read_shop(connection, NOW)
        steps = tuple(schedule.name for schedule in read_schedules(connection))
    return Names(
        projects=tuple(project.name for project in shop.projects),
        parts=tuple(
            PartNames(
                part.path,
                tuple(piece.number for piece in part.pieces),
                (*(face.name for face in part.faces), *_zones(part)),
            )
            for part in shop.parts
        ),
        products=tuple(p.name for p in shop.products.values() if not p.archived),
        rooms=tuple(room.name for room in shop.rooms.values()),
        steps=steps,
    )


def woods_ever(database: Database) -> tuple[str, ...]:
    with database.reading() as connection:
        ever = read_shop(connection, NOW, include_archived=True)
    woods = [wood for part in ever.parts for wood in (part.species, *_of_zones(part))]
    return tuple(sorted({wood for wood in woods if wood}))


def _zones(part):
    return [f"{face.name}/{zone.name}" for face in part.faces for zone in face.zones if zone.name]


def _of_zones(part):
    return [zone.species for face in part.faces for zone in face.zones]


def furnish(path: Path, projects, products, rooms, steps) -> Database:
    path.write_bytes(blank())
    database = open_database(path, NOW)
    with database.writing("test", "furnish", NOW, "UTC") as ledger:
        for name, parts in projects.items():
            project = add_project(ledger.connection, name, NOW)
            for part in parts:
                add_part(ledger.connection, project, part, NOW)
        for name in products:
            add_product(ledger.connection, name, "shellac-2lb", NOW)
        for name in rooms:
            add_room(ledger.connection, name)
        for name in steps:
            add_steps(ledger.connection, name, [Step(1, Operation.SAND)])
    return database


@settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(PROJECTS, SOME, SOME, SOME)
def test_the_names_are_those_of_the_queries(tmp_path_factory, projects, products, rooms, steps):
    path = tmp_path_factory.mktemp("names") / "shop.db"
    database = furnish(path, projects, products, rooms, steps)
    read, wanted = read_names(path), queried(database)
    assert set(read.steps) == set(wanted.steps)
    assert read.projects == wanted.projects
    assert read.parts == wanted.parts
    assert (read.products, read.rooms) == (wanted.products, wanted.rooms)
    assert read_species(path) == woods_ever(database)


PUT_AWAY = ("project", "part", "product", "room", "steps")


@pytest.mark.parametrize("table", PUT_AWAY)
def test_what_was_put_away_is_not_offered(tmp_path: Path, table: str):
    path = tmp_path / "shop.db"
    parts = {"cabinet": [NewPart("case", species="ash")]}
    database = furnish(path, parts, ["sealer"], ["cellar"], ["clear"])
    full = read_names(path)
    assert full == queried(database)
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute(f"UPDATE {table} SET archived_at = '2026-11-24T21:05:00.000000Z'")
    assert read_names(path) == queried(database)
    assert read_names(path) != full
    # The wood of a part that was put away is what `past` is asked for.
    assert read_species(path) == woods_ever(database) == ("ash",)


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    path = tmp_path / "shop.db"
    furnish(path, {"cabinet": [NewPart("case")]}, ["sealer"], ["cellar"], ["clear"])
    return path


def files(folder: Path) -> dict[str, bytes]:
    return {each.name: each.read_bytes() for each in folder.iterdir()}


def test_a_missing_database_offers_nothing_and_is_not_made(tmp_path: Path):
    assert read_species(tmp_path / "none.db") == ()
    assert read_names(tmp_path / "none.db") == Names()
    assert read_names(tmp_path / "no folder" / "none.db") == Names()
    assert files(tmp_path) == {}


def test_a_locked_database_offers_nothing(shop: Path):
    with closing(sqlite3.connect(shop, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        assert read_names(shop) == Names()
        other.execute("ROLLBACK")
    assert read_names(shop).rooms == ("cellar",)


def test_an_older_database_offers_nothing_and_stays_older(shop: Path):
    with closing(sqlite3.connect(shop)) as connection, connection:
        connection.execute("ALTER TABLE room DROP COLUMN archived_at")
        connection.execute("UPDATE alembic_version SET version_num = '0001'")
    before = files(shop.parent)
    assert read_names(shop) == Names()
    assert files(shop.parent) == before


@pytest.mark.parametrize("content", [b"", b"a shopping list\n" * 500])
def test_a_file_that_is_no_database_offers_nothing_and_stays_as_it_was(shop: Path, content: bytes):
    shop.write_bytes(content)
    assert read_names(shop) == Names()
    assert shop.read_bytes() == content


def test_a_folder_and_a_damaged_file_offer_nothing(shop: Path):
    assert read_names(shop.parent) == Names()
    assert read_species(shop.parent) == ()
    shop.write_bytes(shop.read_bytes()[:9000])
    assert read_names(shop) == Names()


def test_names_are_read_without_a_trace(shop: Path):
    shop.chmod(0o444)
    before = files(shop.parent)
    assert read_names(shop).products == ("sealer",)
    assert files(shop.parent) == before


def test_what_a_crash_left_is_not_rolled_back_by_a_key_press(shop: Path):
    """A journal says that a write was cut short: the next command mends it, completion waits."""
    with closing(sqlite3.connect(shop, isolation_level=None)) as writer:
        writer.execute("PRAGMA cache_size = 1")
        writer.execute("BEGIN IMMEDIATE")
        writer.execute("UPDATE room SET name = 'attic'")
        writer.execute(
            "CREATE TABLE large AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL"
            " SELECT i + 1 FROM n WHERE i < 20000) SELECT i, randomblob(50) FROM n"
        )
        left = files(shop.parent)
        writer.execute("ROLLBACK")
    for name, content in left.items():
        (shop.parent / name).write_bytes(content)
    assert "shop.db-journal" in left
    assert read_names(shop) == Names()
    assert files(shop.parent) == left
