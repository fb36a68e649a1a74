"""Whatever binds is said with its figure: hours done of those wanted, what was measured of what is.

Shops and hours are invented.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
2026-11-20T08:00 room new shop --night 18C
2026-11-20T08:00 room usual shop 0:21C/50%
2026-11-20T08:00 product new varnish --class alkyd-varnish
2026-11-20T08:00 product new wb --class waterborne-clear --recoat 3h --window 24h
2026-11-20T08:00 product new stain --class wiping-stain
2026-11-20T08:00 product new wax --class paste-wax
2026-11-20T08:00 steps new oily varnish*3
2026-11-20T08:00 steps new clear wb*3
2026-11-20T08:00 part new desk/top --species ash --steps oily --room shop
2026-11-20T08:00 part new desk/leg --species ash --steps clear --room shop
2026-11-23T09:00 air 21C 50%
2026-11-23T09:10 log top varnish
2026-11-23T09:20 log leg wb
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP, now="{}:00+00:00")


def head(shop: Finishlog, part: str, now: str) -> str:
    """The first line of `why`."""
    return shop.did("why", part, now=f"{now}+00:00").out.splitlines()[0]


def test_drying_counts_its_hours(shop: Finishlog):
    assert head(shop, "top", "2026-11-23T12:00").endswith("of 48 label hours done")


def test_what_the_air_halts_names_both_temperatures(tmp_path: Path):
    """A varnish stands still below 10 °C until it is tack-free (TM 55-1500-345-23, 50 °F)."""
    untold = SHOP.replace("2026-11-20T08:00 room usual shop 0:21C/50%\n", "")
    shop = Finishlog(tmp_path).played(untold, now="{}:00+00:00")
    shop.did("air", "6C", "50%", now="2026-11-23T10:00:00+00:00")
    now = "2026-11-23T12:00"
    for said in (head(shop, "top", now), shop.did("ready", "top", now=f"{now}+00:00").out):
        assert "no date in this air: this air is outside its limits, 6 °C, it needs 10 °C" in said


def test_a_closed_window_names_its_hours_where_it_is_scuffed(shop: Finishlog):
    shop.did("air", "21C", "50%", now="2026-11-26T11:00:00+00:00")
    now = "2026-11-26T12:00"
    for said in (head(shop, "leg", now), shop.did("ready", "leg", now=f"{now}+00:00").out):
        assert "the recoat window has closed (24 h)" in said


def test_air_that_was_read_long_ago_says_how_long(shop: Finishlog):
    shop.did("log", "leg", "scuff", now="2026-11-24T07:50:00+00:00")
    said = head(shop, "leg", "2026-11-24T08:00")
    assert "was not read in the last hours, but 23 h ago" in said


def test_cold_that_it_met_while_young_is_measured(shop: Finishlog):
    """A waterborne film needs 13 °C (55 °F, common practice) for its first hours."""
    shop.did("air", "3C", "50%", now="2026-11-23T10:00:00+00:00")
    now = "2026-11-23T13:00"
    for said in (head(shop, "leg", now), shop.did("ready", "leg", now=f"{now}+00:00").out):
        assert "suspect: met air too cold for it while young: 3 °C, it needs 13 °C" in said


def test_a_film_that_is_ready_says_nothing_of_hours(shop: Finishlog):
    shop.did("air", "21C", "50%", now="2026-11-23T14:00:00+00:00")
    assert "label hours" not in head(shop, "leg", "2026-11-23T14:30")
