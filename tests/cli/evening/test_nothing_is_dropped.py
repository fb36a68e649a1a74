"""What was typed is recorded whole or refused: nothing is left out in silence."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog, furnished


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["log", "doors", "topcoat", "--face", "front", "--face", "back"], "doors@front,back"),
        (["log", "doors@back", "topcoat", "--face", "front"], "doors@back,front"),
        (["log", "case", ""], "one of the words is empty"),
        (["check", "", "dry"], "one of the words is empty"),
        (["log", "case", "topcaot"], "did you mean topcoat?"),
    ],
)
def test_half_of_it_is_never_recorded(shop: Finishlog, words: list[str], said: str):
    before = shop.database.read_bytes()
    answer = shop(*words)
    assert answer.code in {2, 3}
    assert said in answer.err
    assert shop.database.read_bytes() == before


def test_both_faces_named_on_the_part_are_both_recorded(shop: Finishlog):
    shop.did("log", "doors@front,back", "sealer")
    lines = shop.did("on", "doors", "--json").document["answer"]
    assert [len(line["coats"]) for line in lines] == [1] * len(lines)


def test_an_amended_clock_time_is_of_the_day_that_the_entry_stands_on(shop: Finishlog):
    """Saturday's coat was at 9:40, not at 9:30: nobody types the day again."""
    line = next(
        h
        for h in shop.did("history", "case", "--json").document["answer"]
        if "sealer" in h["words"] and h["kind"] == "coat"
    )
    assert line["happened"]["latest"] == "2026-11-21T09:30:00Z"
    shop.did("amend", str(line["act"]), "--at", "9:40")
    coats = shop.did("on", "case", "--json").document["answer"][0]["coats"]
    assert coats[0]["put_on"] == "2026-11-21T09:40:00Z"


def test_a_scuff_that_is_due_and_was_passed_over_is_said(shop: Finishlog):
    shop.did("log", "doors@back", "sand", now="2026-11-25T10:00:00+00:00")
    shop.did("air", "20C", "50%", now="2026-11-25T10:00:00+00:00")
    shop.did("log", "doors@back", "sealer", now="2026-11-25T10:05:00+00:00")
    shop.did("air", "20C", "50%", now="2026-11-26T10:00:00+00:00")
    page = shop.did("log", "doors@back", "topcoat", now="2026-11-26T10:05:00+00:00").out
    assert "the step that is due is scuff, and no scuffing is on record" in page
    shop.did("undo", "--never-happened", now="2026-11-26T10:06:00+00:00")
    page = shop.did(
        "log", "doors@back", "topcoat", "--scuffed", now="2026-11-26T10:07:00+00:00"
    ).out
    assert "step that is due" not in page


def test_a_two_part_finish_without_its_hardener_is_asked_about(shop: Finishlog):
    shop.did("product", "new", "twopart", "--class", "waterborne-two-part")
    assert "nothing that hardens twopart" in shop.did("mix", "twopart", "base:500ml").out
    assert (
        "nothing that hardens"
        not in shop.did("mix", "twopart", "base:500ml", "hardener:50ml", "--name", "second").out
    )


def test_oak_is_white_oak_too(shop: Finishlog):
    shop.did("part", "new", "chest/lid", "--species", "white oak")
    shop.did("log", "lid", "oil")
    assert "chest/lid" in shop.did("past", "oak").out


def test_a_room_that_was_not_read_is_named_in_the_command(shop: Finishlog):
    shop.did("room", "new", "spray booth")
    shop.did("move", "case", "spray booth")
    assert "finishlog air 17C 58% --room 'spray booth'" in shop.did("ready").out


def test_a_project_file_says_whom_it_is_for(shop: Finishlog, tmp_path: Path):
    file = tmp_path / "cot.toml"
    file.write_text('project = "cot"\nfor = "child"\n\n[parts.side]\ncount = 2\n')
    shop.did("project", "load", str(file))
    assert "nothing" in shop.did("project", "load", str(file)).out
    file.write_text('project = "cot"\nfor = "cats"\n')
    refused = shop("project", "load", str(file))
    assert refused.code == 4
    assert "write one of: food, child" in refused.err
