"""What there is may be changed; what happened stays as it was judged."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog
from test_refusals import refused

from finishlog import errors

MORNING = "2026-11-24T09:00+00:00"

# An invented shop.
SHOP = """
room new finishing --night 13C
room new attic
product new sealer --class shellac-2lb
product new topcoat --class waterborne-clear --recoat 3h
steps new clear sealer topcoat*2
project new cabinet
part new cabinet/doors -n 2 --species ash --face front --face back:hidden --steps clear --room attic
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP, now=MORNING)


def part(shop: Finishlog, name: str) -> dict:
    return shop.did("part", "show", name, "--json").document["answer"][0]


def test_a_part_like_another_has_its_wood_faces_steps_and_room(shop: Finishlog):
    shop.did("part", "new", "cabinet/door-3", "--like", "cabinet/doors")
    old, new = part(shop, "cabinet/doors"), part(shop, "cabinet/door-3")
    same = ("species", "faces", "steps", "steps_name", "room")
    assert [new[key] for key in same] == [old[key] for key in same]
    assert (new["pieces"], old["pieces"]) == (1, 2)


def test_what_is_typed_beside_it_wins(shop: Finishlog):
    shop.did("part", "new", "cabinet/side", "--like", "doors", "--species", "oak", "-n", "4",
             "--face", "all round", "--room", "finishing")  # fmt: skip
    new = part(shop, "side")
    assert (new["species"], new["pieces"], new["faces"], new["room"]) == (
        "oak", 4, ["all round"], "finishing"
    )  # fmt: skip
    assert new["steps"] == ["sealer", "topcoat", "topcoat"]


def test_zones_are_taken_over_too(shop: Finishlog):
    shop.did("part", "new", "table/top", "--face", "top=field,inlay:walnut")
    shop.did("part", "new", "table/leaf", "--like", "top")
    assert part(shop, "leaf")["faces"] == ["top=field,inlay:walnut"]


def test_a_part_like_nothing_there_is_is_refused(shop: Finishlog):
    refused(shop("part", "new", "cabinet/x", "--like", "drawer"), errors.NO_SUCH_THING, "drawer")
    shop.did("part", "new", "cabinet/shelf")
    refused(shop("part", "new", "cabinet/x", "--like", "cabinet/*"), errors.USAGE, "more than one")


def test_a_part_that_comes_late_begins_in_the_white_and_the_others_go_on(shop: Finishlog):
    shop.did("log", "doors", "sealer", "--at", "2026-11-22 10:00")
    shop.did("part", "new", "cabinet/door-3", "--like", "doors")
    due = {
        s["standing"]["part"]: s["to_come"]
        for s in shop.did("on", "cabinet/*", "--json").document["answer"]
    }
    assert due == {
        "cabinet/doors": ["topcoat", "topcoat"],
        "cabinet/door-3": ["sealer", "topcoat", "topcoat"],
    }


def test_a_piece_that_comes_late_is_shown_apart(shop: Finishlog):
    shop.did("log", "doors", "sealer", "--at", "2026-11-22 10:00")
    assert "×3; doors:3 in the white" in shop.did("part", "edit", "doors", "--count", "3").out
    groups = shop.did("on", "doors", "--json").document["answer"]
    assert [(g["standing"]["pieces"], len(g["coats"])) for g in groups] == [([1, 2], 1), ([3], 0)]


def test_pieces_that_were_never_there_can_be_taken_off_again(shop: Finishlog):
    shop.did("part", "edit", "doors", "-n", "12")
    shop.did("part", "edit", "doors", "-n", "2")
    assert part(shop, "doors")["pieces"] == 2
    shop.did("log", "doors:2", "sealer")
    refused(
        shop("part", "edit", "doors", "-n", "1"),
        errors.USAGE,
        "logged on doors:2;",
        "stays on record",
    )


def test_the_wood_may_be_corrected_and_history_says_what_it_was(shop: Finishlog):
    assert "oak, was ash" in shop.did("part", "edit", "doors", "--species", "oak").out
    assert part(shop, "doors")["species"] == "oak"
    assert "species: oak, was ash" in shop.did("history", "doors").out


def test_a_wood_without_rules_is_said_to_be_so(shop: Finishlog):
    near = shop.did("part", "edit", "doors", "--species", "aash").out
    assert "no rules are known for 'aash'; did you mean ash?" in near
    far = shop.did("part", "edit", "doors", "--species", "xylofolia").out
    assert "look at the spelling" in far


def test_a_face_may_be_added_and_said_to_be_hidden(shop: Finishlog):
    said = shop.did("part", "edit", "doors", "--face", "edges:edge", "--face", "front:hidden").out
    assert "face edges added, in the white" in said
    assert "front: hidden, was show" in said
    assert part(shop, "doors")["faces"] == ["front:hidden", "back:hidden", "edges:edge"]


def test_a_bare_face_may_be_divided_into_zones(shop: Finishlog):
    shop.did("part", "edit", "doors", "--face", "front=field,inlay:walnut")
    shop.did("log", "doors@inlay", "sealer")
    assert part(shop, "doors")["faces"][0] == "front=field,inlay:walnut"


def test_a_zone_beside_coated_ones_would_seem_to_be_in_the_white(shop: Finishlog):
    shop.did("part", "edit", "doors", "--face", "front=field,inlay")
    shop.did("log", "doors", "sealer")
    refused(
        shop("part", "edit", "doors", "--face", "front=field,inlay,rim"),
        errors.USAGE,
        "seem to be in the white",
        "--face front/field=field,rim",
    )


@pytest.mark.parametrize("typed", ["topcoat*2@back", "topcoat@back*2"])
def test_so_many_coats_on_one_face(shop: Finishlog, typed: str):
    shop.did("steps", "new", "twice", typed)
    said = shop.did("steps", "show", "twice").out
    assert said.splitlines()[1:] == ["  1  topcoat@back", "  2  topcoat@back"]


def test_a_coat_keeps_what_it_was_when_the_steps_change(shop: Finishlog):
    shop.did("log", "doors", "sealer")
    said = shop.did("steps", "edit", "clear", "sealer", "topcoat*3").out
    assert "cabinet/doors: the steps they have stay" in said
    assert "finishlog part steps cabinet/doors --as clear" in said
    assert len(part(shop, "doors")["steps"]) == 3
    shop.did("part", "steps", "doors", "--as", "clear")
    assert len(part(shop, "doors")["steps"]) == 4
    said = shop.did("history").out
    assert "steps: sealer, topcoat, topcoat, topcoat, was sealer, topcoat, topcoat" in said


def test_a_project_gets_another_date_or_none(shop: Finishlog):
    assert "packed by Sat 5 Dec" in shop.did("project", "edit", "cabinet", "--due", "Sat 5 Dec").out
    assert "packed by no date, was Sat 5 Dec" in shop.did("project", "edit", "cab", "--no-due").out
    shop.did("project", "edit", "cabinet", "--note", "for the hall", "--name", "wall")
    answer = shop.did("project", "show", "wall", "--json").document["answer"]
    assert (answer["note"], answer["old_names"], answer["due"]) == (
        "for the hall", ["cabinet"], None
    )  # fmt: skip


def test_a_class_changes_only_while_no_coat_was_judged_by_it(shop: Finishlog):
    shop.did("product", "edit", "topcoat", "--class", "shellac-2lb")
    shop.did("product", "edit", "topcoat", "--class", "waterborne-clear", "--note", "satin")
    answer = shop.did("product", "show", "topcoat", "--json").document["answer"]
    assert (answer["class_key"], answer["note"]) == ("waterborne-clear", "satin")
    shop.did("log", "doors", "topcoat")
    refused(
        shop("product", "edit", "topcoat", "--class", "shellac-2lb"),
        errors.USAGE,
        "judged as waterborne-clear",
        "finishlog product new NAME --class shellac-2lb",
    )


NOTHING = [
    (["part", "edit", "doors"], "--species"),
    (["project", "edit", "cabinet"], "--due"),
    (["product", "edit", "topcoat"], "--class"),
    (["room", "edit", "attic"], "--note"),
    (["steps", "edit", "clear"], "STEP"),
    (["part", "edit", "doors", "-n", "0"], "--count 12"),
]


@pytest.mark.parametrize(("words", "hint"), NOTHING)
def test_an_edit_of_nothing_says_what_may_be_changed(shop: Finishlog, words: list[str], hint: str):
    refused(shop(*words), errors.USAGE, hint)


def test_settings_show_what_holds_and_take_what_is_meant(shop: Finishlog):
    assert "temperature  C" in shop.did("settings").out
    shop.did("settings", "temperature", "°F")
    shop.did("settings", "film", "mil")
    by_name = {s["name"]: s for s in shop.did("settings", "--json").document["answer"]}
    assert (by_name["temperature"]["value"], by_name["temperature"]["by_hand"]) == ("F", True)
    assert (by_name["film"]["value"], by_name["area"]["by_hand"]) == ("mil", False)
    refused(shop("settings", "colour", "red"), errors.NO_SUCH_THING, "temperature, area")


def test_the_zone_that_was_set_is_the_shops_unless_the_environment_names_one(shop: Finishlog):
    shop.environment = {"FINISHLOG_ZONE": ""}
    shop.did("settings", "zone", "Australia/Adelaide")
    assert "Wed 25 Nov, 07:35" in shop.did("ready").out, "21:05 UTC is 07:35 in Adelaide"
    shop.environment = {"FINISHLOG_ZONE": "Europe/London"}
    assert "Tue 24 Nov, 21:05" in shop.did("ready").out
