"""Two woods in one part, a strip of a sample board, an edge: each is named as it is typed."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog
from test_refusals import refused

from finishlog import errors

MORNING = "2026-11-24T09:00+00:00"


# An invented shop: a sample board, a table top with an inlay, doors with edges.
SHOP = """
room new finishing --night 13C
product new sealer --class shellac-2lb
product new topcoat --class waterborne-clear --recoat 3h
product new oil --class hardwax-oil --recoat 12h
part new boards/ash-1 --board --species ash --face front=left,right:oak
part new table/top --species ash --face top=field,inlay:walnut --face underside:hidden
part new case/door -n 2 --species ash --face front --face back:hidden --face edges:edge
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP, now=MORNING)


def coats(shop: Finishlog, part: str, *faces: str) -> list[list[str]]:
    """What is on faces or zones of a part, one after the other."""
    found = []
    for face in faces:
        (group,) = shop.did("on", f"{part}@{face}", "--json").document["answer"]
        found.append([coat["product"] for coat in group["coats"]])
    return found


def test_each_strip_of_a_sample_board_gets_its_own_finish(shop: Finishlog):
    shop.did("log", "ash-1@front/left", "topcoat")
    said = shop.did("log", "ash-1", "oil", "--face", "right").out
    assert "ash-1, front/right: coat 1, oil" in said
    assert coats(shop, "ash-1", "left", "right") == [["topcoat"], ["oil"]]


def test_a_coat_on_a_face_reaches_all_its_zones(shop: Finishlog):
    shop.did("log", "table/top@top", "sealer")
    assert coats(shop, "table/top", "field", "inlay", "underside") == [["sealer"], ["sealer"], []]


def test_a_check_may_find_one_wood_tacky_and_the_other_dry(shop: Finishlog):
    """Oil varnish over an oily wood beside a tame one is tacky on the one alone."""
    shop.did("log", "table/top@top", "sealer", now="2026-11-24T10:00+00:00")
    shop.did("check", "table/top@inlay", "tacky")
    answers = {
        ", ".join(g["standing"]["faces"]): g["standing"]["answer"]
        for g in shop.did("on", "table/top", "--json").document["answer"]
    }
    assert "blocked" in answers["top/inlay"]
    assert "blocked" not in answers["top/field"]


@pytest.mark.parametrize("command", ["on", "why", "when"])
def test_a_question_about_a_zone_is_answered_for_that_zone_alone(shop: Finishlog, command: str):
    shop.did("log", "ash-1@front/left", "topcoat")
    said = shop.did(command, "ash-1@front/right").out
    assert "front/right" in said
    assert "front/left" not in said


def test_a_question_about_pieces_is_answered_for_those(shop: Finishlog):
    shop.did("log", "door:1", "sealer")
    assert "door:1" in shop.did("on", "door:1").out
    assert "door:2" not in shop.did("on", "door:1").out


def test_steps_may_differ_by_zone(shop: Finishlog):
    shop.did("steps", "new", "try", "sealer", "topcoat@front/left", "oil@front/right")
    shop.did("part", "steps", "ash-1", "--as", "try")
    left, right = (
        shop.did("on", f"ash-1@{zone}", "--json").document["answer"][0]["to_come"]
        for zone in ("left", "right")
    )
    assert left == ["sealer", "topcoat@front/left"]
    assert right == ["sealer", "oil@front/right"]


def test_steps_that_name_a_face_the_part_does_not_have_say_so(shop: Finishlog):
    shop.did("steps", "new", "try", "topcoat@bakc")
    assert "bakc, which it does not have" in shop.did("part", "steps", "door", "--as", "try").out


def test_past_finds_a_zone_by_its_own_wood(shop: Finishlog):
    shop.did("log", "table/top@top", "sealer")
    walnut = shop.did("past", "walnut", "--json").document["answer"]["finishes"]
    assert [(f["part"], f["faces"], f["species"]) for f in walnut] == [
        ("table/top", ["top/inlay"], "walnut")
    ]
    ash = shop.did("past", "ash", "--json").document["answer"]["finishes"]
    assert ["top/field"] in [f["faces"] for f in ash]


ZONES = [
    (["log", "ash-1@front/middle", "oil"], errors.NO_SUCH_THING, "ash-1@front/left"),
    (["log", "ash-1@back/left", "oil"], errors.NO_SUCH_THING, "ash-1@front"),
    (["log", "ash-1", "oil", "--face", "front/middle"], errors.NO_SUCH_THING, "front/left"),
    (["part", "new", "a/b", "--face", "top=field,"], errors.USAGE, "zones of top"),
    (["part", "new", "a/b", "--face", "top=field,Field"], errors.USAGE, "named twice"),
    (["part", "new", "a/b", "--face", "top=field:"], errors.USAGE, "zones of top"),
    (["part", "new", "a/b", "--face", "top:wet"], errors.USAGE, "no kind of face"),
]


@pytest.mark.parametrize(("words", "code", "said"), ZONES)
def test_a_zone_that_there_is_not_names_those_there_are(
    shop: Finishlog, words: list[str], code: int, said: str
):
    refused(shop(*words), code, said)


def test_a_coat_on_a_face_runs_over_the_edges_and_says_so(shop: Finishlog):
    said = shop.did("log", "door@front", "sealer").out
    assert "door ×2, front: coat 1, sealer, edges too" in said
    assert coats(shop, "door", "front", "back", "edges") == [["sealer"], [], ["sealer"]]


def test_it_may_be_kept_off_them(shop: Finishlog):
    assert "edges" not in shop.did("log", "door@front", "sealer", "--no-edges").out
    shop.did("log", "door", "sealer", "--face", "back", "--no-edges")
    assert coats(shop, "door", "front", "back", "edges") == [["sealer"], ["sealer"], []]


def test_a_coat_all_over_is_one_coat_on_the_edges(shop: Finishlog):
    shop.did("log", "door", "sealer")
    assert coats(shop, "door", "front", "back", "edges") == [["sealer"]] * 3
    shop.did("log", "door", "sealer", "--no-edges")
    assert coats(shop, "door", "edges") == [["sealer"]]


def test_edges_may_be_coated_by_name(shop: Finishlog):
    shop.did("log", "door@edges", "sealer")
    assert coats(shop, "door", "front", "back", "edges") == [[], [], ["sealer"]]


def test_the_back_too_soon_after_the_front_warns_of_the_edges(shop: Finishlog):
    shop.did("air", "21C", "50%", now="2026-11-24T17:00+00:00")
    shop.did("log", "door@front", "sealer", now="2026-11-24T18:00+00:00")
    early = shop.did("log", "door@back", "sealer", now="2026-11-24T19:45+00:00")
    assert "edges: drying" in early.out
    assert "front" not in early.out, "the front bears turning after an hour and a half"


def test_the_next_step_reaches_the_edges_with_the_faces_it_is_due_on(shop: Finishlog):
    shop.did("steps", "new", "clear", "sealer", "topcoat")
    shop.did("part", "steps", "door", "--as", "clear")
    shop.did("log", "door@front")
    shop.did("log", "door:2@back")
    edges = shop.did("on", "door@edges", "--json").document["answer"]
    by_piece = {tuple(g["standing"]["pieces"]): len(g["coats"]) for g in edges}
    assert by_piece == {(1,): 1, (2,): 2}


def test_an_edge_never_asks_for_a_coat_of_its_own(shop: Finishlog):
    shop.did("steps", "new", "clear", "sealer")
    shop.did("part", "steps", "door", "--as", "clear")
    shop.did("log", "door", now="2026-11-22T10:00+00:00")
    ready = shop.did("ready", "door", "--json").document["answer"]
    assert ready["bench"] == []
    assert [m["label"] for m in ready["milestones"]] == ["door ×2"]
