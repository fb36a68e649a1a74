"""Many parts at one look: coats by piece and face, and what the glue-up still waits for."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

NOW = "2026-03-02T10:00:00+00:00"
STOOL = """
room new shop --night 20C
air 23C 50%
product new lacquer --class lacquer-sprayed
steps new clear lacquer*2
part new stool/legs -n 3 --face round --face tenon:joint --steps clear
part new stool/seat --face top --face under:hidden
part new stool/whole --of legs:3 --of seat:1
"""


@pytest.fixture
def stool(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now=NOW).played(STOOL)


def test_pieces_stand_apart_as_soon_as_they_differ(stool: Finishlog):
    assert "legs ×3  round 0 of 2  tenon bare" in stool.did("on", "legs", "--grid").out
    stool.did("log", "legs:2", "lacquer")
    page = stool.did("on", "stool/*", "--grid").out
    assert page.startswith("stool: COATS ON EACH FACE\n")
    assert "legs:1,3  round 0 of 2  tenon bare" in page
    assert "legs:2    round 1 of 2  tenon bare" in page


def test_where_no_steps_ask_only_the_coats_are_counted(stool: Finishlog):
    stool.did("log", "seat", "lacquer", "--face", "top")
    assert "seat     top 1         under 0" in stool.did("on", "stool/*", "--grid").out


def test_a_glue_face_that_is_not_bare_is_called_so(stool: Finishlog):
    stool.did("log", "legs:1", "lacquer", "--face", "tenon")
    assert "tenon NOT BARE: 1" in stool.did("on", "legs", "--grid").out


def test_tape_that_is_on_is_shown_and_holds_up_the_glue_up(stool: Finishlog):
    stool.did("log", "seat", "mask", "--face", "under")
    page = stool.did("on", "stool/*", "--grid").out
    assert "under 0, tape on" in page
    assert "whole  waits for legs: coat still to come; seat: tape to come off" in page
    assert "seat: tape to come off" in stool.did("why", "whole").out


def test_an_assembly_that_is_not_glued_up_yet_says_what_is_missing(stool: Finishlog):
    """There is nothing on it; that is no reason to say nothing."""
    page = stool.did("on", "whole").out
    assert page == "stool/whole: glue-up\n  now  waits for legs: coat still to come\n"
    assert stool.did("on", "whole", "--grid").out.splitlines() == [
        "BEFORE THE GLUE-UP",
        "  whole  waits for legs: coat still to come",
    ]


def test_members_keep_their_coats_inside_the_assembly(stool: Finishlog):
    stool.did("log", "legs:2", "lacquer")
    stool.did("log", "whole", "glue-up")
    page = stool.did("on", "whole", "--grid").out
    assert "legs:1,3 in whole  round 0 of 2  tenon bare" in page
    assert "legs:2 in whole    round 1 of 2  tenon bare" in page
    assert "BEFORE THE GLUE-UP" not in page


def test_every_line_names_the_acts_behind_it(stool: Finishlog):
    act = stool.did("log", "legs:2", "lacquer", "--json").document["answer"]["act"]
    lines = stool.did("on", "legs", "--grid", "--json").document["answer"]["lines"]
    assert {line["label"]: act in line["acts"] for line in lines} == {
        "legs:1,3": False,
        "legs:2": True,
    }
