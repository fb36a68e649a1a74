"""A coat that was broken off, as it is typed: a film with rags, and a step that stays due."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
01T08:00 product new spar --class spar-varnish
01T08:00 product new seal --class shellac-2lb
01T08:00 steps new outside spar scuff spar
01T08:00 part new gate/rail --species "white oak" --count 2 --steps outside
01T08:00 air 23C 50%
01T08:00 room night shop 17C
01T09:00 log rail spar
03T09:00 air 23C 50%
03T09:00 log rail scuff
"""


@pytest.fixture
def rails(tmp_path: Path) -> Finishlog:
    """Two rails with one coat, scuffed; the second coat is due."""
    return Finishlog(tmp_path, now="2026-05-03T10:00+00:00").played(SHOP, now="2026-05-{}+00:00")


def on(shop: Finishlog, now: str | None = None):
    return shop.did("on", "rail", "--json", now=now).document["answer"]


def test_the_step_stays_due_and_the_film_dries_and_opens_rags(rails: Finishlog):
    said = rails.did("log", "rail", "--stopped", "up to the knot")
    assert "broken off, spar on up to the knot" in said.out
    assert "do not go back into it" in said.out
    (answer,) = on(rails)
    assert [c["stopped"] for c in answer["coats"]] == [None, "up to the knot"]
    assert answer["to_come"] == ["spar"]
    standing = answer["standing"]
    assert (standing["coat"], standing["layers"]) == (2, ["spar"])
    assert standing["stopped"] == "up to the knot"
    assert standing["answer"] == "drying"
    assert "spar 2 of 2, broken off" in rails.did("ready", now="2026-05-07T10:00+00:00").out
    assert len(rails.did("rags", "--json").document["answer"]) == 2


def test_scuffed_level_and_coated_whole_it_is_the_coat_that_was_due(rails: Finishlog):
    rails.did("log", "rail", "--stopped", "half")
    later = "2026-05-06T10:00+00:00"
    rails.did("air", "23C", "50%", now=later)
    scuffed = rails.did("log", "rail", "scuff", now=later)
    assert "caution" not in scuffed.out.replace("caution: rail ×2: test first", "")
    said = rails.did("log", "rail", now="2026-05-06T10:20+00:00")
    assert "coat 2, spar" in said.out
    assert "broken off" not in said.out
    page = rails.did("on", "rail", now="2026-05-06T10:30+00:00").out
    assert [line.split("  ")[1] for line in page.splitlines()[1:4]] == [
        "coat 1",
        "in part",
        "coat 2",
    ]
    assert "every step is behind" in page


def test_it_is_said_afterwards_and_taken_back(rails: Finishlog):
    act = rails.did("log", "rail", "spar", "--json").document["answer"]["act"]
    assert on(rails)[0]["to_come"] == []
    rails.did("amend", str(act), "--stopped", "one end", "--on", "rail:1")
    assert [a["to_come"] for a in on(rails)] == [["spar"], ["spar"]]
    rails.did("amend", str(act), "--finished")
    assert [a["to_come"] for a in on(rails) if len(a["coats"]) == 2] == [[]]


def test_it_comes_off_while_it_is_wet_and_what_is_below_stays(rails: Finishlog):
    rails.did("log", "rail", "--stopped", "half")
    before = rails.did("on", "rail", "--json").document["answer"][0]["coats"][0]["act"]
    rails.did("off", "rail", "--to", str(before), "--washed")
    (answer,) = on(rails)
    assert [c["stopped"] for c in answer["coats"]] == [None]
    # Wet finish and its solvent were on what had been scuffed.
    assert answer["to_come"] == ["scuff", "spar"]


def test_history_and_past_tell_it_and_a_schedule_taken_from_it_leaves_it_out(rails: Finishlog):
    rails.did("log", "rail", "--stopped", "half", "--note", "ran out")
    assert "coat spar broken off (half), ran out" in rails.did("history").out
    assert "broken off (half)" in rails.did("past", "rail").out
    rails.did("steps", "new", "again", "--like", "rail")
    steps = rails.did("steps", "show", "again", "--json").document["answer"]
    assert steps["steps"] == ["spar", "scuff"]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("log", "rail", "scuff", "--stopped", "half"), "scuff is no coat"),
        (("log", "rail", "--stopped", " "), "it does not say what was covered"),
        (("amend", "9", "--stopped", "half"), "this entry has no stopped to amend"),
        (("amend", "7", "--stopped", "half", "--finished"), "finished or it was broken off"),
    ],
)
def test_what_cannot_be_broken_off_is_refused_in_a_line(rails: Finishlog, words, said: str):
    answer = rails(*words)
    assert answer.code != 0
    assert said in answer.err
    assert answer.err.count("\n") == 1
