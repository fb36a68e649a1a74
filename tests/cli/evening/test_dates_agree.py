"""One thing has one date on every screen, and every wait shows the hours that bind.

The shop and its label are invented; a class's hours stand in the facts with their sources.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
20T17:00 shop hours 'mon-sun 18:00-21:00'
20T17:00 product new varnish --class alkyd-varnish --recoat 8h --window 24h
20T17:00 product new two-part --class waterborne-two-part --recoat 3h
20T17:00 steps new s varnish*2 rub
20T17:00 steps new t two-part
20T17:00 part new desk/top --species maple --steps s
20T17:00 part new stool/seat --species maple --steps t
20T17:00 project edit desk --due 2027-03-01
20T18:00 air 23C 50%
20T18:00 log top varnish
20T18:05 log seat two-part
21T18:00 air 23C 50%
22T00:00 air 23C 50%
"""


@pytest.fixture
def program(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP, now=at("{}"))


def at(moment: str) -> str:
    return f"2026-11-{moment}:00+00:00"


def row(page: str, name: str) -> str:
    return next(line for line in page.splitlines() if line.strip().startswith(name))


def test_when_says_the_dead_zone_and_until_when(program: Finishlog):
    """Label: recoat after 8 h, within 24 h; it sands after 48: at 30 h it is neither."""
    said = program.did("when", "top", now=at("22T00:10")).out
    assert "dead zone" in row(said, "recoat")
    assert "scuff and recoat after 18:00" in row(said, "recoat")
    assert "reached" not in row(said, "recoat")
    (line,) = program.did("when", "top", "--json", now=at("22T00:10")).document["answer"]["lines"]
    (recoat,) = (stage for stage in line["stages"] if stage["stage"] == "recoat")
    assert (recoat["dead_zone"], recoat["high"]) == (True, line["standing"]["high"])


def test_why_counts_the_hours_that_bind_and_no_others(program: Finishlog):
    """Its 8 h to recoat are over; what it waits for is 24 to 48 h to sand."""
    said = program.did("why", "top", now=at("22T00:10")).out
    assert "24 to 48 h to sand" in row(said, "label")
    assert "30.2 of 48 label hours done" in row(said, "clock")
    assert "24 to 48 label hours of varnish to sand, 30.2 done, since act 10" in said
    assert "8.0 of 8" not in said


def test_before_its_recoat_why_counts_the_hours_to_that(program: Finishlog):
    said = program.did("why", "top", now=at("20T21:00")).out
    assert "8 label hours of varnish to recoat, 3.0 done, since act 10" in said


def test_a_clock_that_is_over_says_that_it_does_not_bind(program: Finishlog):
    """It may be recoated by its hours; the air, not read since, asks for a test first."""
    said = program.did("why", "top", now=at("21T05:00")).out
    assert "test first: the room's air was not read" in row(said, "binds")
    assert "8.0 of 8 label hours done, over: another thing binds" in row(said, "clock")


def test_what_is_fully_hard_may_be_rubbed(program: Finishlog):
    """Its class is said to be hard in 7 to 14 days, and to want 21 to 30 before rubbing."""
    (line,) = program.did("when", "seat", "--json", now=at("22T00:10")).document["answer"]["lines"]
    high = {stage["stage"]: stage["high"] for stage in line["stages"]}
    assert high["cured"] == max(high.values()) >= high["rub"]


def test_the_plan_gives_one_date_to_one_thing(program: Finishlog):
    """It is packed once it is rubbed out, weeks after its film would bear packing."""
    said = program.did("plan", "desk", now=at("22T17:00")).out
    (promised,) = re.findall(r"packed (.*?),", row(said, "desk  due"))
    # clamped, stacked, packed, fully hard.
    dates = re.split(r"  +", row(said, "desk/top  ").strip())
    assert "rub" in said
    assert dates[3] == promised
