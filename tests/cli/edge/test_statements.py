"""How many statements a command puts to the database: few, and no more for a full bench."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from run import Finishlog
from sqlalchemy import Engine, event
from the_demo import the_demo

from tests.bench import shop
from tests.once import made_once


@contextmanager
def statements() -> Iterator[list[str]]:
    """Collect what is put to any database meanwhile."""
    said: list[str] = []

    def note(connection: Any, cursor: Any, statement: str, *_: Any) -> None:
        said.append(statement)

    event.listen(Engine, "before_cursor_execute", note)
    try:
        yield said
    finally:
        event.remove(Engine, "before_cursor_execute", note)


def said_by(finishlog: Finishlog, *words: str, now: str | None = None) -> list[str]:
    with statements() as said:
        finishlog.did(*words, now=now)
    return said


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> dict[int, Path]:
    """Databases by how many parts of each project are open."""
    found = {}
    for parts in (5, 10):
        found[parts] = tmp_path_factory.mktemp("shop") / "shop.db"
        with pytest.MonkeyPatch.context() as patch, made_once():
            patch.setattr(shop, "OPEN_PARTS", parts)
            shop.build(str(found[parts]))
    return found


@pytest.fixture
def full(tmp_path: Path, built: dict[int, Path]) -> dict[int, Finishlog]:
    """Shops by how many parts of each project are open."""
    shops = {}
    for parts, database in built.items():
        folder = tmp_path / str(parts)
        folder.mkdir()
        shops[parts] = Finishlog(folder, now=shop.NOW.isoformat())
        shops[parts].database.write_bytes(database.read_bytes())
    return shops


# Our own figures, to hold; two looks at the shop were 145 and more. A mix puts a can on record
# besides, and a heater asks for its room first.
MOST, MOST_OF_A_MIX, MOST_OF_A_HEATER = 80, 86, 96


def test_a_coat_in_the_shop_of_the_demo_asks_little(tmp_path: Path, for_all_workers: Path):
    finishlog = the_demo(for_all_workers).shop(tmp_path)
    # A check there found its topcoat soft: what the shop's pace rests on is read too.
    assert finishlog("product", "show", "topcoat").out.count("your pace") == 1
    assert len(said_by(finishlog, "log", "legs:1-9", "oil")) <= MOST


def test_mixing_and_warming_in_the_shop_of_the_demo_ask_little(
    tmp_path: Path, for_all_workers: Path
):
    finishlog = the_demo(for_all_workers).shop(tmp_path)
    mixed = said_by(finishlog, "mix", "topcoat", "base:500ml", "hardener:50ml", "--name", "pot")
    assert len(mixed) <= MOST_OF_A_MIX
    assert len(said_by(finishlog, "can", "emptied", "pot")) <= MOST
    heated = said_by(finishlog, "heat", "tonight", "22", "till", "23", "18C")
    assert len(heated) <= MOST_OF_A_HEATER


def test_a_coat_among_forty_open_parts_asks_no_more(full: dict[int, Finishlog]):
    assert len(said_by(full[10], "log", "piece0/part0", "topcoat")) <= MOST


@pytest.mark.parametrize("words", [("ready",), ("leave",), ("why", "piece0/part0")])
def test_a_question_asks_no_more_of_a_full_bench(full: dict[int, Finishlog], words: Any):
    few, many = (said_by(full[parts], *words) for parts in (5, 10))
    assert len(many) <= len(few)
