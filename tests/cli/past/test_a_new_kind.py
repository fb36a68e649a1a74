"""A kind of entry that no code knows is written, read, amended and told once it is declared.

What a new kind needs: its declaration, a migration, and its wording.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from datetime import datetime
from pathlib import Path
from typing import Annotated, Any

import pytest
from msgspec import Meta
from msgspec.structs import replace
from run import NOW, Finishlog, furnished
from sqlalchemy import create_engine
from sqlalchemy.exc import IntegrityError

from finishlog.asks.look import entry_words
from finishlog.core.log.entries import Entry
from finishlog.core.log.fields import Field
from finishlog.core.log.kinds import KINDS, OF_THE_WORK
from finishlog.core.log.when import at
from finishlog.store.database import open_database
from finishlog.store.log.read_log import read_log
from finishlog.store.schema.columns import metadata
from finishlog.store.schema.entries import add_tables

TABLES = ("weighed", "weighed_beside")
MOMENT = datetime.fromisoformat(NOW)


class Weighed(Entry, frozen=True, kw_only=True, tag="weighed"):
    """A piece put on the scale: an invented kind."""

    mass_kg: Annotated[float, Field(unit="kg"), Meta(gt=0)]
    room: Annotated[int | None, Field(of="room")] = None
    beside: Annotated[frozenset[int], Field(of="piece")] = frozenset()
    scale: str = ""
    note: Annotated[str, Field(amend="text")] = ""


@pytest.fixture(scope="module")
def undeclared(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """A shop from before there was the kind."""
    return furnished(tmp_path_factory.mktemp("before")).database.read_bytes()


@pytest.fixture(scope="module")
def declared(undeclared: bytes) -> Iterator[bytes]:
    with pytest.MonkeyPatch.context() as patch:
        for kinds in (OF_THE_WORK, KINDS):
            patch.setitem(kinds, "weighed", Weighed)
        wording = ("weighed: {mass_kg:_ kg}", "{scale:on _}", "{room:in _}", "{note}")
        patch.setitem(entry_words.WORDINGS, Weighed, wording)
        add_tables(Weighed)
        yield undeclared
        for name in TABLES:
            metadata.remove(metadata.tables[name])


@pytest.fixture
def shop(tmp_path: Path, declared: bytes) -> Finishlog:
    program = Finishlog(tmp_path)
    program.database.write_bytes(declared)
    _migrate(program.database)
    return program


def _migrate(path: Path) -> None:
    """Do what the kind's migration would: make its table, and let the log hold the kind."""
    engine = create_engine(f"sqlite:///{path}")
    metadata.create_all(engine, [metadata.tables[name] for name in TABLES])
    engine.dispose()
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute("PRAGMA writable_schema = ON")
        connection.execute(
            "UPDATE sqlite_master SET sql = replace(sql, '''photo''', '''photo'', ''weighed''')"
            " WHERE name = 'entry'"
        )


def _weigh(shop: Finishlog, **said: object) -> tuple[int, Weighed]:
    """Record it as an act would, on what the last entry reached; return the act and what it put."""
    with open_database(shop.database, MOMENT).writing("weigh", "weigh", MOMENT, "UTC") as ledger:
        targets = read_log(ledger.connection).entries[-1].targets
        put = Weighed(when=at(MOMENT), targets=targets, **said)
        number = ledger.record(put)
    return ledger.act_id, replace(put, id=number, act=ledger.act_id, typed_at=MOMENT)


def _entries(shop: Finishlog) -> tuple[Entry, ...]:
    with open_database(shop.database, MOMENT).reading() as connection:
        return read_log(connection).entries


def _last_line(shop: Finishlog) -> dict[str, Any]:
    return shop.did("history", "case", "--json").document["answer"][-1]


def test_it_is_written_and_read(shop: Finishlog):
    _, put = _weigh(shop, mass_kg=4.25, room=1, scale="the bench scale", note="with its hinges")
    assert _entries(shop)[-1] == put


def test_it_is_held_to_its_bounds_and_names_only_what_there_is(shop: Finishlog):
    for wrong in ({"mass_kg": 0.0}, {"mass_kg": 4.0, "room": 99}):
        with pytest.raises(IntegrityError):
            _weigh(shop, **wrong)


def test_it_is_told_in_the_history_and_in_its_json(shop: Finishlog):
    act, _ = _weigh(shop, mass_kg=4.25, room=1, scale="the bench scale")
    said = "weighed: 4.25 kg, on the bench scale, in finishing"
    assert said in shop.did("history", "case").out.splitlines()[-1]
    line = _last_line(shop)
    assert (line["act"], line["kind"], line["said"]) == (act, "weighed", said)
    assert line["parts"] == ["cabinet/case"]


def test_it_is_found_by_the_pieces_that_it_names(shop: Finishlog):
    act, put = _weigh(shop, mass_kg=4.25, beside=frozenset({2, 3}))
    assert _entries(shop)[-1] == put
    doors = shop.did("history", "doors", "--json").document["answer"]
    assert [line["act"] for line in doors if line["kind"] == "weighed"] == [act]


def test_it_is_amended_by_the_words_that_its_fields_name(shop: Finishlog):
    act, put = _weigh(shop, mass_kg=4.25)
    shop.did("amend", str(act), "--note", "without its hinges", "--at", "21:00")
    found = _entries(shop)[-1]
    assert isinstance(found, Weighed)
    assert (found.mass_kg, found.note) == (4.25, "without its hinges")
    assert found.when == at(MOMENT.replace(hour=21, minute=0))
    assert _last_line(shop)["amends"] == act
    assert "this entry has no glue to amend" in shop("amend", str(act), "--glue", "pva").err
    assert put not in _entries(shop)


def test_it_is_taken_back(shop: Finishlog):
    act, put = _weigh(shop, mass_kg=4.25)
    shop.did("undo", str(act))
    assert put not in _entries(shop)
