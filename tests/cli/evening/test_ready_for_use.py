"""Dry to the touch, may be tested, may be packed, hard: words that must not be mixed up."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

START = "2026-03-02T09:00:00+00:00"
SHOP = """
room new shop --night 23C
air 23C 50%
product new water --class waterborne-clear --recoat 3h
part new table/top
log top water
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now=START).played(SHOP)


def test_felt_hard_is_no_test(shop: Finishlog):
    """Common practice: a film that feels hard after two days still takes a mug ring."""
    for word in ("hard", "felt hard", "cured"):
        refused = shop("check", "top", word)
        assert refused.code == 2
        assert "smell it: no-smell or smells; press a thumbnail" in refused.err


def test_between_the_early_and_the_promised_time_a_test_is_named(shop: Finishlog):
    """Waterborne light use 3 to 7 days, common practice: on day five nobody promises."""
    page = shop.did("when", "top", now="2026-03-07T09:00:00+00:00").out
    assert "light use   test first (smell, thumbnail); promised after" in page
    assert "light use   reached" in shop.did("when", "top", now="2026-03-12T09:00:00+00:00").out


def test_normal_use_is_when_it_may_be_hard_and_passes_the_tests(shop: Finishlog):
    """Waterborne is fully hard after 21 to 30 days at the figures' air, common practice."""
    card = shop.did("handover", "table", "--card").out
    assert "normal use          Tue 24 Mar 2026, if it passes the tests below; else as" in card
    assert "waxing, fully hard  Thu 2 Apr 2026" in card


def test_what_a_sheet_says_of_stacking_and_packing_counts(shop: Finishlog):
    """Sheets of production coatings print 4 to 24 h before stacking, with separators."""
    made = shop.did("product", "new", "sheet", "--class", "lacquer-precatalysed", "--stack", "24h",
                    "--pack", "48h", "--clamp", "12h")  # fmt: skip
    assert "clamp 12 h, stack 24 h, pack 48 h" in made.out
    shop.did("part", "new", "table/leg")
    shop.did("log", "leg", "sheet")
    (line,) = shop.did("when", "leg", "--json").document["answer"]["lines"]
    at = {each["stage"]: each["high"][:16] for each in line["stages"]}
    assert (at["clamp"], at["stack"], at["pack"]) == (
        "2026-03-02T21:00",
        "2026-03-03T09:00",
        "2026-03-04T09:00",
    )


def test_packed_too_early_is_told_what_presses_into_it(shop: Finishlog):
    """Finishing-education page: plain paper or foam, and not before the date."""
    said = shop.did("log", "top", "pack", now="2026-03-02T20:00:00+00:00").out
    assert "stop: top: drying: pack not reached (label " in said
    assert " done); nothing but air may touch it: foam" in said


def test_a_coat_that_bars_the_coats_to_come_is_warned_of(shop: Finishlog):
    """Nothing sticks to wax: wax before the last varnish is an end nobody meant."""
    shop.did("product", "new", "wax", "--class", "paste-wax")
    shop.did("steps", "new", "waxed", "water*2", "wax")
    shop.did("part", "new", "table/lid", "--steps", "waxed")
    shop.did("log", "lid", "water")
    early = shop.did("log", "lid", "wax", now="2026-04-20T09:00:00+00:00").out
    assert "caution: lid: water is still to come: Nothing sticks to wax" in early
    shop.did("undo")
    shop.did("log", "lid", "water", now="2026-04-20T09:00:00+00:00")
    in_turn = shop.did("log", "lid", "wax", now="2026-06-20T09:00:00+00:00").out
    assert "still to come" not in in_turn
