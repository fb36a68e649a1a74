"""An entry typed late judges what came after it, and the answer says what changed."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

SATURDAY = "2026-05-09T10:00+01:00"
KITCHEN = """
06T18:00 room new shop --night 23C
06T18:00 room usual shop 0:24C/50% 12:24C/50%
06T18:00 product new poly --class oil-polyurethane --recoat 12h
06T18:00 part new kitchen/door --species ash
06T19:00 air 23C 50%
06T19:00 log door poly
08T19:00 air 23C 50%
08T19:25 log door scuff
08T19:30 log door poly
"""


@pytest.fixture
def door(tmp_path: Path) -> Finishlog:
    """A door with a coat on Wednesday evening, and one on Friday evening after a scuff."""
    return Finishlog(tmp_path).played(KITCHEN, now="2026-05-{}+01:00")


def late(door: Finishlog, when: str) -> tuple[list[str], list[str]]:
    """Log the forgotten coat on Saturday; return its warnings and the parts whose dates moved."""
    logged = door.did("log", "door", "poly", "--scuffed", "--at", when, "--json", now=SATURDAY)
    answer = logged.document["answer"]
    warned = [f"{w['level']}: {w['sentence']}" for w in answer["warnings"]]
    return warned, [moved["label"] for moved in answer["moved"]]


def test_a_coat_that_now_stands_too_near_the_later_one_says_so_of_that_one(door):
    """4.5 h apart: typed in order, the scuff and the coat after it are a stop each."""
    warned, _ = late(door, "Fri 15:00")
    of_the_later = [each for each in warned if ": act " in each]
    assert [each.split(":")[0] for each in of_the_later] == ["stop", "stop", "caution"]
    assert "scuff: drying: sand not reached" in of_the_later[0]
    assert "poly: drying" in of_the_later[1]


def test_a_coat_that_fits_between_says_nothing(door):
    """24 h after the one and 24.5 h before the other, scuffed each time."""
    warned, moved = late(door, "Thu 19:00")
    assert not [each for each in warned if ": act " in each]
    assert moved == []


def test_a_date_that_moves_is_said(door):
    """What was covered wet goes on drying below: the next coat waits for it too."""
    door.did("product", "label", "poly", "--recoat", "48h", now="2026-05-08T19:31+01:00")
    _, moved = late(door, "Fri 18:00")
    assert moved == ["kitchen/door"]
    said = door.did("undo", now=SATURDAY)
    assert said.code == 0
    page = door.did("log", "door", "poly", "--at", "Fri 18:00", now=SATURDAY).out
    assert "moved    kitchen/door: after" in page
