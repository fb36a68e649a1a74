"""A clock that was set back: nothing lands in 1970 unasked, and no heap of rags falls asleep."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.run import Finishlog
from tests.cli.terminal_session import TerminalSession

RIGHT = "2026-11-24T19:00:00+00:00"
WRONG = "1970-01-02T00:00:00+00:00"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    desk = "product new oil --class hardwax-oil\npart new desk/top\nlog top oil"
    return Finishlog(tmp_path, now=WRONG).played(desk, now=RIGHT)


def coats(program: Finishlog) -> list[str]:
    history = program.did("history", "--json").document["answer"]
    return [x["happened"]["earliest"][:16] for x in history if x["kind"] == "coat"]


@pytest.mark.parametrize("question", ["ready", "leave", "rags", "when top", "history", "plan"])
def test_every_screen_says_that_the_clock_lies_behind_what_is_on_record(shop, question: str):
    said = shop.did(*question.split()).err
    assert "the clock says 1970-01-02" in said
    assert "and act 3 on record is of 2026-11-24" in said
    assert shop.did(*question.split(), "--json").err == said


def test_a_few_minutes_are_no_matter(shop: Finishlog):
    """Two machines differ by so much."""
    assert shop.did("ready", now="2026-11-24T18:56:00+00:00").err == ""
    shop.did("log", "top", "wipe", now="2026-11-24T18:56:00+00:00")
    assert "the clock says" in shop.did("ready", now="2026-11-24T18:40:00+00:00").err


@pytest.mark.parametrize("act", ["log top wipe", "check top dry", "air 17C 58%", "rags water"])
def test_a_script_has_to_say_when(shop: Finishlog, act: str):
    refused = shop(*act.split())
    assert refused.code == 2
    assert "when was it done?" in refused.err
    assert "--at" in refused.err
    assert "finishlog undo 3" in refused.err
    assert len(refused.err.splitlines()) == 1


def test_a_whole_date_is_taken_and_words_that_need_a_right_clock_are_not(shop: Finishlog):
    for words in ("1h ago", "today", "19:30", "yesterday evening"):
        assert shop("log", "top", "oil", "--at", words).code == 2
    shop.did("log", "top", "oil", "--at", "2026-11-25 19:30")
    assert coats(shop) == ["2026-11-24T19:00", "2026-11-25T19:30"]


def test_at_a_terminal_it_is_asked_and_no_records_nothing(shop: Finishlog):
    with TerminalSession(shop, "log", "top", "oil") as session:
        session.answer("Is the clock right?", "n")
    assert session.code == 2
    assert coats(shop) == ["2026-11-24T19:00"]


def test_where_the_other_act_was_the_wrong_one_undoing_it_is_enough(shop: Finishlog):
    shop.did("log", "top", "oil", now="2036-01-01T00:00:00+00:00")
    assert "finishlog undo 4" in shop("log", "top", "wipe", now=RIGHT).err
    shop.did("undo", "4", "--never-happened", now=RIGHT)
    assert shop.did("log", "top", "wipe", now=RIGHT).err == ""


def test_rags_do_not_fall_asleep(shop: Finishlog):
    (item,) = shop.did("rags", "--json").document["answer"]
    assert (item["overdue"], item["severity"]) == (True, "danger")
    assert shop("leave", "--exit-code").code == 1
