"""How many statements a command puts to the database: few, and no more for a full bench."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from run import Finishlog
from the_demo import the_demo

from tests.bench import shop
from tests.bench.statements import statements
from tests.once import made_once


def said_by(finishlog: Finishlog, *words: str, now: str | None = None) -> list[str]:
    # What a process asks that opens its database.
    finishlog.kept_open.drop()
    with statements() as said:
        finishlog.did(*words, now=now)
    finishlog.kept_open.drop()
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


# Our own figures, to hold: all that SQLite runs, a row written counted each. An amendment reads its
# log again.
MOST, MOST_OF_AN_AMENDMENT = 80, 92


@pytest.fixture
def demo(tmp_path: Path, for_all_workers: Path) -> Finishlog:
    finishlog = the_demo(for_all_workers, "10:52").shop(tmp_path)
    # A check there found its topcoat soft: what the shop's pace rests on is read too.
    assert finishlog("product", "show", "topcoat").out.count("your pace") == 1
    return finishlog


@pytest.mark.thorough
@pytest.mark.parametrize(
    "words",
    [
        ("log", "cabinet/drawer", "topcoat"),
        ("log", "legs:1-9", "oil"),
        ("log", "legs:1-9", "sand", "--grit", "P320"),
        ("log", "cabinet/drawer", "scuff"),
        ("log", "cabinet/drawer", "topcoat", "--at", "yesterday 20:00"),
        ("check", "cabinet/drawer", "dry"),
        ("heat", "tonight", "22", "till", "23", "18C"),
        ("air", "18C"),
        ("mix", "topcoat", "base:500ml", "hardener:50ml", "--name", "pot"),
    ],
    ids=" ".join,
)
def test_an_act_in_the_shop_of_the_demo_asks_little(demo: Finishlog, words: tuple[str, ...]):
    assert len(said_by(demo, *words)) <= MOST


@pytest.mark.thorough
def test_an_amendment_in_the_shop_of_the_demo_asks_little(demo: Finishlog):
    assert len(said_by(demo, "amend", "60", "--at", "3 days ago")) <= MOST_OF_AN_AMENDMENT


def test_a_coat_among_forty_open_parts_asks_no_more(full: dict[int, Finishlog]):
    assert len(said_by(full[10], "log", "piece0/part0", "topcoat")) <= MOST


@pytest.mark.parametrize("words", [("ready",), ("leave",), ("why", "piece0/part0")])
def test_a_question_asks_no_more_of_a_full_bench(full: dict[int, Finishlog], words: Any):
    few, many = (said_by(full[parts], *words) for parts in (5, 10))
    assert len(many) <= len(few)
