"""An amendment says which dates it moved, and what it makes of the coats that came after."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

SUNDAY = "2026-05-03T09:00+00:00"
KITCHEN = """
01T18:00 product new poly --class oil-polyurethane --recoat 12h
01T18:00 part new kitchen/doors --count 2
01T18:00 air 23C 50%
01T18:00 log doors poly
02T20:00 air 23C 50%
02T20:00 log doors:1 poly --scuffed
"""


@pytest.fixture
def doors(tmp_path: Path) -> Finishlog:
    """Two doors with one coat; on the first of them a second, in good time."""
    return Finishlog(tmp_path).played(KITCHEN, now="2026-05-{}+00:00")


def test_a_coat_that_turns_out_later_makes_the_next_one_too_early(doors: Finishlog):
    answer = doors.did("amend", "4", "--at", "Sat 15:00", "--json", now=SUNDAY).document["answer"]
    (warning,) = (w for w in answer["warnings"] if w["level"] == "stop")
    assert warning["sentence"].startswith("act 6, poly: drying")


def test_what_was_said_at_the_time_is_not_said_again(doors: Finishlog):
    doors.did("log", "doors:2", "poly", now="2026-05-02T21:00+00:00")
    answer = doors.did("amend", "7", "--note", "thin", "--json", now=SUNDAY).document["answer"]
    assert answer["warnings"] == []
    assert answer["moved"] == []


def test_a_reading_that_was_colder_moves_the_dates_of_all_that_dries_in_it(doors: Finishlog):
    said = doors.did("amend", "5", "--air", "14C 50%", now="2026-05-02T22:00+00:00").out
    assert "moved    kitchen/doors:1: after" in said
    assert ", was after Sun" in said


def test_an_undo_is_not_amended(doors: Finishlog):
    doors.did("undo", "6", "--never-happened", now=SUNDAY)
    refused = doors("amend", "7", "--at", "Sat 15:00", now=SUNDAY)
    assert refused.code == 2
    assert "act 7 is an undo" in refused.err
    assert "finishlog undo 7" in refused.err


def test_a_date_that_was_over_was_ready(doors: Finishlog):
    said = doors.did("amend", "4", "--at", "Sun 2:00", now=SUNDAY).out
    (moved,) = (line for line in said.splitlines() if line.startswith("moved    kitchen/doors:2"))
    assert "doors:2: after " in moved
    assert moved.endswith("was ready")
