"""An oil that was flooded on is wiped off, looked at again, and asked after; a thin one is not."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

# Invented.
SHOP = """
2026-11-24T17:00 room new shop --night 20C
2026-11-24T17:00 product new oil --class oil-varnish-blend
2026-11-24T17:00 steps new oiled oil*3
2026-11-24T17:00 part new bench/top --species ash --steps oiled --room shop
2026-11-24T17:00 part new bench/leg --species maple --steps oiled --room shop
2026-11-24T18:00 air 22C 50%
2026-11-24T19:00 log top leg oil --flooded
2026-11-24T19:20 log top leg wipe
"""


def at(clock: str) -> str:
    return f"2026-11-24T{clock}+00:00"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP, now="{}:00+00:00")


def test_open_pores_are_looked_at_three_times_and_closed_ones_are_not(shop: Finishlog):
    ready = shop.did("ready", now=at("19:25")).out
    assert "look 30 min after the wipe, and wipe again before 20:20" in ready
    assert ready.count("look 30 min") == 1
    assert "wipe off  bench/top" in ready
    second = shop.did("log", "top", "wipe", now=at("19:50")).out
    assert "look 1 h after the wipe, and wipe again before 20:50" in second
    third = shop.did("log", "top", "wipe", now=at("20:15")).out
    assert "look 2 h after the wipe, and wipe again before 21:50" in third
    assert "look" not in shop.did("log", "top", "wipe", now=at("21:20")).out


def test_how_it_went_on_is_put_right_and_the_dates_move(shop: Finishlog):
    was = shop.did("when", "leg", now=at("21:00")).out
    shop.did("undo", "8", now=at("21:00"))
    assert "flooded on, and no wipe is on record" in shop.did("why", "leg", now=at("21:00")).out
    assert "flooded on, not wiped off: 4.00 × the label's hours" in (
        shop.did("why", "leg", now=at("21:00")).out
    )
    assert shop.did("when", "leg", now=at("21:00")).out != was
    shop.did("amend", "7", "--thin", now=at("21:00"))
    assert "coat oil, thin" in shop.did("history", now=at("21:00")).out
    thin = shop.did("why", "leg", now=at("21:00")).out
    assert "flooded" not in thin
    assert "note: was the surplus oil wiped off in time?" in thin


def test_what_was_flooded_and_left_is_tested_first_whatever_time_has_passed(tmp_path: Path):
    left = SHOP.replace("2026-11-24T19:20 log top leg wipe\n", "")
    shop = Finishlog(tmp_path).played(left, now="{}:00+00:00")
    long_after = "2027-02-20T19:00+00:00"
    lines = shop.did("ready", "--json", now=long_after).document["answer"]["bench"]
    assert {line["answer"] for line in lines} == {"test first"}
    shop.did("check", "top", "leg", "dry", now=long_after)
    why = shop.did("why", "leg", now="2027-02-20T19:10+00:00").out
    assert "no wipe is on record" not in why
