"""Your own pace with a product, from the checks that were logged: through real commands.

The shop and its hours are invented; the topcoat's label says tack-free after 4 h.
"""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from run import Finishlog

from finishlog.asks.look.pace import learnt, paces
from finishlog.clock import Clock
from finishlog.core.clock.pace import PaceKey
from finishlog.store.database import open_database
from finishlog.store.log.read_log import read_log
from finishlog.store.things.read_shop import read_shop
from tests.shop_on_file import context_of

NOW = datetime(2026, 11, 24, 21, 5, tzinfo=UTC)

SLOW = """
2026-11-02T08:00 room new finishing
2026-11-02T08:00 product new topcoat --class alkyd-varnish --tack-free 4h
2026-11-02T08:00 product new oil --class boiled-linseed-oil
2026-11-02T08:00 part new cabinet/case --face front
2026-11-02T08:00 part new cabinet/door -n 2 --face front
2026-11-02T08:00 air 23C 50%
2026-11-02T09:00 log case topcoat
2026-11-02T14:00 check case tacky
2026-11-02T16:00 check case dry
"""


@pytest.fixture
def finishlog(tmp_path: Path) -> Finishlog:
    program = Finishlog(tmp_path, now="2026-11-24T21:05:00+00:00")
    play(program, SLOW)
    return program


def play(program: Finishlog, story: str) -> None:
    program.played(story, now="{}:00+00:00")


def pace(program: Finishlog, name: str = "topcoat") -> list[dict]:
    return program.did("product", "show", name, "--json").document["answer"]["pace"]


def lines(program: Finishlog, name: str = "topcoat") -> list[str]:
    shown = program.did("product", "show", name).out.splitlines()
    return [line.removeprefix("your pace: ") for line in shown if line.startswith("your pace")]


def test_one_bracket_is_shown_with_its_uncertainty_and_its_coat(finishlog: Finishlog):
    """Soft at 5 h of 4, dry at 7: worked example 1 of the model."""
    (said,) = lines(finishlog)
    assert said.startswith(
        "1.36 × the label's hours (1.05–1.78), first coats on bare wood, from 1 coat: act "
    )
    (found,) = pace(finishlog)
    assert found["median"] == pytest.approx(1.3617, abs=1e-4)
    assert found["factor"] == found["median"]
    assert (found["first"], found["coats"], found["words"]) == (True, 1, said)
    history = finishlog.did("history", "case").out
    assert f"act {found['acts'][0]}" in history or str(found["acts"][0]) in history


def test_nothing_is_said_of_a_product_without_checks(finishlog: Finishlog):
    assert lines(finishlog, "oil") == []
    assert pace(finishlog, "oil") == []


def test_a_coat_of_a_part_put_away_still_teaches(finishlog: Finishlog):
    before = pace(finishlog)
    finishlog.did("rags", "gone")
    finishlog.did("part", "archive", "case", "door")
    assert pace(finishlog) == before
    finishlog.did("room", "archive", "finishing")
    assert pace(finishlog) == before


def test_an_undone_check_teaches_nothing_any_more(finishlog: Finishlog):
    # The last act is "check case dry": then it is soft after 5 h, and nobody knows until when.
    finishlog.did("undo")
    (found,) = pace(finishlog)
    assert found["high"] > 1.8
    finishlog.did("undo")
    assert pace(finishlog) == []


def test_later_coats_and_other_ways_stand_apart(finishlog: Finishlog):
    play(
        finishlog,
        """
        2026-11-04T08:00 air 23C 50%
        2026-11-04T09:00 log case topcoat --method brush
        2026-11-04T12:00 check case dry
        2026-11-05T08:00 air 23C 50%
        2026-11-05T13:00 log case topcoat --method brush
        2026-11-05T16:00 check case dry
        2026-11-06T08:00 air 23C 50%
        2026-11-06T18:00 log case topcoat --method wipe
        2026-11-06T21:00 check case dry
        """,
    )
    first, later, brushed = pace(finishlog)
    assert (first["first"], later["first"], brushed["first"]) == (True, False, False)
    assert (later["method"], later["coats"]) == (None, 3)
    assert (brushed["method"], brushed["coats"]) == ("brush", 2)
    assert later["median"] < 1 == later["factor"]
    assert "later coats, brushed, from 2 coats: acts" in brushed["words"]
    assert brushed["words"].startswith("no slower than the label's hours so far")


@pytest.mark.thorough
def test_only_the_newest_two_dozen_teach(finishlog: Finishlog):
    for day in range(25):
        moment = f"2026-11-{5 + day * 18 // 25:02d}T{day % 20:02d}"
        finishlog.did("part", "new", f"rack/part-{day}", "--face", "front")
        finishlog.did("air", "23C", "50%", now=f"{moment}:00:00+00:00")
        finishlog.did("log", f"part-{day}", "topcoat", now=f"{moment}:00:00+00:00")
        finishlog.did("check", f"part-{day}", "dry", now=f"{moment}:30:00+00:00")
    (found,) = pace(finishlog)
    assert found["coats"] == 24
    assert found["median"] < 1


def test_a_coat_taken_back_hides_no_check(finishlog: Finishlog):
    before = pace(finishlog)
    finishlog.did("log", "case", "topcoat", "--at", "2026-11-02 15:00")
    assert pace(finishlog) != before
    finishlog.did("undo", "--never-happened")
    assert pace(finishlog) == before


def test_an_amended_time_moves_what_is_learnt(finishlog: Finishlog):
    (before,) = pace(finishlog)
    act = before["acts"][0]
    finishlog.did("amend", str(act), "--at", "2026-11-02 08:30")
    (after,) = pace(finishlog)
    assert after["median"] > before["median"]


def test_the_bench_and_the_page_learn_the_same(finishlog: Finishlog):
    database = open_database(finishlog.database, NOW)
    context = context_of(database, Clock(NOW, ZoneInfo("Europe/London")))
    with database.reading() as connection:
        shop = read_shop(connection, NOW)
        (product,) = (p for p in shop.products.values() if p.name == "topcoat")
        log = read_log(connection, [p.id for part in shop.parts for p in part.pieces])
        known = paces(context, connection, shop, log)
        page = learnt(context, connection, shop, [product.id])
    (shown,) = pace(finishlog)
    key = PaceKey(product.id, first=True)
    assert known.factor(key) == page.factor(key)
    assert known.factor(key).factor == shown["factor"]


def test_nothing_is_looked_for_where_no_check_failed(finishlog: Finishlog):
    # Both checks are taken back, then it was dry at once.
    finishlog.did("undo", now="2026-11-02T16:01:00+00:00")
    finishlog.did("undo", now="2026-11-02T16:01:00+00:00")
    finishlog.did("check", "case", "dry", "--at", "2026-11-02 12:00")
    database = open_database(finishlog.database, NOW)
    with database.reading() as connection:
        shop = read_shop(connection, NOW)
        log = read_log(connection, [p.id for part in shop.parts for p in part.pieces])
        context = context_of(database, Clock(NOW, ZoneInfo("Europe/London")))
        # The failed check is taken back, yet the sieve is rough; what is learnt never lengthens.
        known = paces(context, connection, shop, log)
    assert all(each.factor == 1 for each in known.learnt.values())
