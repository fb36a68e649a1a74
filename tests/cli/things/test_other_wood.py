"""Steps that come from another wood say so: the same can takes another colour there."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

MAY = "2026-05-06T18:00+01:00"
SHOP = """
room new shop --night 20C
product new stain --class wiping-stain
product new clear --class oil-polyurethane
steps new two-tone sand stain clear
part new desk/top --species pine --steps two-tone
air 23C 50%
log desk/top sand
log desk/top stain
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP, now=MAY)


def told(shop: Finishlog, *words: str) -> str:
    return shop.did(*words, now=MAY).out


def test_a_schedule_that_was_last_on_pine_says_so_on_oak(shop):
    """Same can on another species, another colour: always test (common practice)."""
    said = told(shop, "part", "new", "desk/leg", "--species", "oak", "--steps", "two-tone")
    assert "these steps were last on pine" in said
    assert "is ring-porous and has tannin" in said
    assert "sample board of oak" in said


def test_given_later_it_says_so_too(shop):
    told(shop, "part", "new", "desk/shelf", "--species", "oak")
    assert "last on pine" in told(shop, "part", "steps", "shelf", "--as", "two-tone")


def test_taken_from_a_part_it_keeps_the_wood(shop):
    said = told(shop, "steps", "new", "again", "--like", "desk/top")
    assert "taken from pine" in said
    told(shop, "part", "new", "desk/frame", "--species", "walnut")
    assert "last on pine" in told(shop, "part", "steps", "frame", "--as", "again")


def test_a_part_like_another_but_of_another_wood_says_so(shop):
    said = told(shop, "part", "new", "desk/back", "--like", "desk/top", "--species", "maple")
    assert "last on pine" in said


def test_what_is_the_same_wood_is_silent_whatever_it_is_called(shop):
    told(shop, "part", "steps", "desk/top", "--as", "two-tone")
    for name, wood in (("a", "pine"), ("b", "Pine"), ("c", "white pine")):
        said = told(shop, "part", "new", f"desk/{name}", "--species", wood, "--steps", "two-tone")
        assert "last on" not in said, wood
    assert "last on" not in told(shop, "part", "new", "desk/d", "--steps", "two-tone")


def test_the_newest_wood_counts_and_a_wood_nobody_knows_is_compared_by_name(shop):
    told(shop, "part", "new", "desk/e", "--species", "driftwood", "--steps", "two-tone")
    said = told(shop, "part", "new", "desk/f", "--species", "teak", "--steps", "two-tone")
    assert "last on driftwood; try them on a sample board of teak" in said
    # What it was on before is no strange wood, whatever came between.
    again = told(shop, "part", "new", "desk/g", "--species", "pine", "--steps", "two-tone")
    assert "last on" not in again
