"""What went wrong here before is heard before the coat and where steps are chosen; else nothing is.

The shop, its products and their fate are invented.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.run import Answer, Finishlog

SHOP = """
2025-03-01T08:00 room new shop --night 18C
2025-03-01T08:00 shop hours 'mon-sun 08:00-21:00'
2025-03-01T08:00 product new dye --class alcohol-dye
2025-03-01T08:00 product new pot --class waterborne-two-part
2025-03-01T08:00 product new clear --class waterborne-clear
2025-03-01T08:00 product new clear-b --class waterborne-clear
2025-03-01T08:00 steps new way dye clear clear
2025-03-01T08:00 part new desk/top -n 2 --species 'hard maple' --steps way
2025-03-01T08:00 air 22C 50%
2025-03-01T09:00 log desk/top dye
2025-03-03T09:00 air 22C 50%
2025-03-03T09:00 log desk/top clear
2025-03-04T09:00 log desk/top clear
"""
CRAZED = SHOP + "2025-09-01T09:00 fault desk/top peel --where front\n"
AWAY = "2025-09-02T09:00 project archive desk\n"
GOOD = """
2026-06-01T08:00 part new stool/seat --species 'hard maple'
2026-06-01T09:00 log stool/seat dye
2026-06-03T09:00 log stool/seat clear
2026-09-03T09:00 review stool/seat good
"""
NEXT = """
2026-11-20T08:00 part new bed/rail --species 'sugar maple' --steps way
2026-11-20T08:00 air 22C 50%
2026-11-20T08:10 log bed/rail dye
2026-11-23T08:00 air 22C 50%
"""
NOW = "2026-11-23T08:10+00:00"
BEFORE = "went wrong before"


def played(folder: Path, story: str) -> Finishlog:
    return Finishlog(folder, now=NOW).played(story, now="{}+00:00")


def told(answer: Answer) -> list[str]:
    return [line for line in answer.out.splitlines() if BEFORE in line or "its review" in line]


@pytest.mark.parametrize(
    "asked",
    ["ready", "why bed/rail", "plan", "log bed/rail clear", "part new bed/post --like bed/rail",
     "part new bed/leg --species maple --steps way", "part steps bed/rail --as way",
     "steps new again dye clear", "steps edit way dye clear",
     "steps check way --on maple", "over dye clear --on maple"],
)  # fmt: skip
def test_a_pair_that_peeled_is_heard_wherever_it_is_chosen(tmp_path: Path, asked: str):
    (line,) = told(played(tmp_path, CRAZED + AWAY + NEXT).did(*asked.split()))
    assert "clear over dye on hard maple went wrong before: peeling" in line
    if not asked.startswith("plan"):
        assert "act 14, Sep 2025" in line
        assert "finishlog past dye clear --pairs" in line


@pytest.mark.parametrize(
    "asked",
    ["log bed/rail pot", "steps new again pot clear", "part new bed/leg --species oak --steps way",
     "part new bed/try --like bed/rail --board", "over dye clear --on oak",
     "over dye pot --on maple", "steps check way"],
)  # fmt: skip
def test_another_pair_or_wood_hears_nothing_and_nor_does_a_board(tmp_path: Path, asked: str):
    shop = played(tmp_path, CRAZED + AWAY + NEXT)
    assert told(shop.did(*asked.split())) == []


def test_a_coat_of_before_it_was_known_hears_nothing(tmp_path: Path):
    early = """
2025-08-20T08:00 part new shelf/side --species maple
2025-08-20T08:00 log shelf/side dye
"""
    shop = played(tmp_path, SHOP + early + "2025-09-01T09:00 fault desk/top peel\n")
    assert told(shop.did("log", "shelf/side", "clear", "--at", "2025-08-30 09:00")) == []
    shop.did("undo")
    assert told(shop.did("log", "shelf/side", "clear", "--at", "2025-10-30 09:00"))


@pytest.mark.parametrize(
    "after",
    ["undo 14", "check desk/top holds", "review desk/top good", "part edit desk/top --species ash"],
)
def test_what_was_taken_back_or_made_good_is_heard_no_more(tmp_path: Path, after: str):
    shop = played(tmp_path, CRAZED + NEXT)
    assert told(shop.did("why", "bed/rail"))
    shop.did(*after.split(), now="2026-11-23T08:05+00:00")
    assert told(shop.did("why", "bed/rail")) == []


def test_an_amended_review_is_heard_as_it_is_now(tmp_path: Path):
    shop = played(tmp_path, SHOP + "2025-09-01T09:00 review desk/top failed -t 'white rings'\n")
    shop.played(NEXT, now="{}+00:00")
    (line,) = told(shop.did("why", "bed/rail"))
    assert 'dye, then clear, on hard maple failed its review: "white rings" (act 14' in line
    shop.did("amend", "14", "--outcome", "fair")
    assert told(shop.did("why", "bed/rail")) == []


def test_another_product_of_its_class_is_told_so_until_it_has_a_finish_of_its_own(tmp_path: Path):
    shop = played(tmp_path, CRAZED)
    (line,) = told(shop.did("steps", "new", "b", "dye", "clear-b"))
    assert "clear over dye on hard maple, of the same class, went wrong before" in line
    shop.played(GOOD.replace("clear", "clear-b"), now="{}+00:00")
    assert told(shop.did("steps", "new", "c", "dye", "clear-b")) == []
    assert told(shop.did("steps", "new", "d", "dye", "clear"))


def test_a_good_finish_since_then_makes_a_note_of_it(tmp_path: Path):
    shop = played(tmp_path, CRAZED + GOOD + NEXT)
    (line,) = told(shop.did("why", "bed/rail"))
    assert "note: clear over dye on hard maple went wrong before: peeling" in line
    assert "1 of 2 such came out badly, a later one came out well" in line
    assert told(shop.did("ready")) == []
    assert told(shop.did("log", "bed/rail", "clear")) == []


def test_a_finding_of_this_evening_is_heard_on_the_next_piece(tmp_path: Path):
    shop = played(tmp_path, SHOP.replace(" -n 2", " -n 3"))
    shop.played(
        """
2026-11-23T08:00 part new bench/slat -n 4 --species cherry
2026-11-23T08:00 log bench/slat:1 dye
2026-11-23T08:05 fault bench/slat:1 blotch
""",
        now="{}+00:00",
    )
    (line,) = told(shop.did("log", "bench/slat:2-4", "dye"))
    assert line.startswith("caution: slat:2-4: dye on bare cherry went wrong before: blotch")
    assert told(shop.did("log", "bench/slat:1", "clear")) == []


def test_the_plan_and_a_loaded_project_tell_it_too(tmp_path: Path):
    shop = played(tmp_path, CRAZED + NEXT)
    sessions = shop.did("plan", "--json").document["answer"]["sessions"]
    lessons = [task["lesson"] for s in sessions for task in s["tasks"] if task["lesson"]]
    assert [lesson["acts"] for lesson in lessons] == [[14]]
    file = tmp_path / "crib.toml"
    file.write_text('project = "crib"\n[parts.side]\nspecies = "maple"\nsteps = "way"\n')
    answer = shop.did("project", "load", str(file), "--json").document["answer"]
    assert [each["acts"] for each in answer["warnings"]] == [[14]]


def test_ready_says_it_once_of_several_parts(tmp_path: Path):
    shop = played(tmp_path, CRAZED + NEXT)
    shop.did("part", "new", "bed/post", "--species", "maple", "--steps", "way")
    shop.did("log", "bed/post", "dye", "--at", "2026-11-20 08:20")
    assert len(told(shop.did("ready"))) == 1
    assert len(told(shop.did("ready", "-v"))) == 2
    assert len(told(shop.did("why", "bed/rail", "bed/post"))) == 2
