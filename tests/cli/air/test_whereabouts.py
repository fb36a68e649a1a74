"""Carried to another room, set aside, taken up again, away: recorded, shown, taken back, amended.

The shop is invented. What a move does to the drying clock is the clock's own affair (tests/core).
"""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog, furnished


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path).played("room new house --night 18C")


def standing(shop: Finishlog, part: str, now: str | None = None) -> dict[str, object]:
    return shop.did("when", part, "--json", now=now or shop.now).document["answer"]["lines"][0][
        "standing"
    ]


def test_a_coat_dries_sooner_where_it_is_warm(shop: Finishlog):
    """The old answer to a cold shop: carry the part into the house."""
    cold = standing(shop, "case")["high"]
    shop.did("air", "21C", "50%", "--room", "house")
    answer = shop.did("move", "case", "house")
    assert "case: moved to house" in answer.out
    warm = standing(shop, "case")["high"]
    assert isinstance(cold, str)
    assert isinstance(warm, str)
    assert warm < cold


def test_a_room_nobody_read_lately_is_asked_about(shop: Finishlog):
    assert "finishlog air 17C 58% --room house" in shop.did("move", "seat", "house").out


def test_a_move_typed_late_lands_where_it_belongs(shop: Finishlog):
    shop.did("air", "21C", "50%", "--room", "house", "--at", "18:30")
    now = standing(shop, "case")["high"]
    shop.did("move", "case", "house", "--at", "18:30")
    early = standing(shop, "case")["high"]
    shop.did("undo")
    assert standing(shop, "case")["high"] == now
    shop.did("move", "case", "house", "--at", "20:55")
    late = standing(shop, "case")["high"]
    assert str(early) < str(late) <= str(now)


def test_a_move_is_amended_to_another_room(shop: Finishlog):
    shop.did("room", "new", "attic")
    act = shop.did("move", "case", "house", "--json").document["answer"]["act"]
    shop.did("amend", str(act), "--room", "attic")
    assert "attic" in shop.did("part", "show", "case").out + shop.did("history", "case").out
    assert shop("amend", str(act), "--room", "nowhere").code == 3


def test_a_face_does_not_move_by_itself(shop: Finishlog):
    answer = shop("move", "doors@back", "house")
    assert answer.code == 2
    assert "name the part" in answer.err


def test_set_aside_raises_no_alarm_and_keeps_what_was_meant(shop: Finishlog):
    shop.did("aside", "case", "--next", "level the runs, then wax")
    ready = shop.did("ready").out
    assert "SET ASIDE\n  cabinet/case  when it is taken up: " in ready
    assert "next time: level the runs, then wax" in ready
    assert "topcoat 2 of 3" not in ready
    later = shop.did("resume", "case", now="2027-01-10T19:00:00+00:00")
    assert "next time: level the runs, then wax" in later.out
    assert "scuff" in later.out, "the window closed weeks ago: it needs a scuff, it is not lost"


def test_setting_aside_twice_is_recorded_and_said(shop: Finishlog):
    shop.did("aside", "case")
    assert "was set aside already" in shop.did("aside", "case").out
    shop.did("undo")
    shop.did("undo")
    assert "SET ASIDE" not in shop.did("ready").out


def test_away_shuts_the_shop_and_says_what_closes_meanwhile(shop: Finishlog):
    shop.did("shop", "hours", "mon-sun 9:00-23:00")
    answer = shop.did("away", "tomorrow", "Sun 29 Nov", "--note", "a fair")
    assert answer.out.splitlines()[0] == "away Wed 25 Nov to the end of Sun 29 Nov (a fair)"
    assert "cabinet/case: topcoat closes" in answer.out
    assert "later" in answer.out or "after that it needs a scuff" in answer.out
    shut = shop.did("ready", now="2026-11-26T12:00:00+00:00").out
    assert "the shop is shut; it opens Mon 09:00" in shut
    shop.did("undo")
    assert "the shop is shut" not in shop.did("ready", now="2026-11-26T12:00:00+00:00").out


def test_times_away_are_listed_with_the_act_that_takes_them_back(shop: Finishlog):
    assert "no time away" in shop.did("away").out
    act = shop.did("away", "Sat 28 Nov", "--json").document["answer"]["act"]
    assert f"act {act}" in shop.did("away").out
    shop.did("undo", str(act))
    assert "no time away" in shop.did("away").out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["away", "Sun 29 Nov", "Sat 28 Nov"], "over before it begins"),
        (["away", "Sat 28 Nov 18:00"], "until when?"),
        (["away", "10/11"], "10 Nov"),
        (["away", "yesterday", "today 12:00"], "over before it begins"),
        (["move", "case"], "needs parts and a room"),
        (["move", "case", "cellar"], "no room is called 'cellar'"),
    ],
)
def test_what_cannot_be_is_refused_with_what_to_type(shop: Finishlog, words: list[str], said: str):
    answer = shop(*words)
    assert answer.code in {2, 3}
    assert said in answer.err
    assert len(answer.err.splitlines()) == 1


def test_passes_of_one_sitting_are_one_act_and_several_coats(shop: Finishlog):
    """`--passes 4 --every 30min`: the last is now, the first an hour and a half before."""
    answer = shop.did("log", "leg:1-3", "oil", "--passes", "4", "--every", "30min")
    assert "19:35 to 21:05  leg:1-3: coats 1-4, oil, 4 passes" in answer.out
    assert "passes 30 min apart" in answer.out
    coats = shop.did("on", "leg:1-3", "--json").document["answer"][0]["coats"]
    assert [c["put_on"][11:16] for c in coats] == ["19:35", "20:05", "20:35", "21:05"]
    shop.did("undo")
    assert shop.did("on", "leg", "--json").document["answer"][0]["coats"] == []


def test_passes_that_began_at_a_time_count_from_it(shop: Finishlog):
    shop.did("log", "leg", "oil", "--passes", "3", "--every", "20min", "--at", "20:00")
    coats = shop.did("on", "leg", "--json").document["answer"][0]["coats"]
    assert [c["put_on"][11:16] for c in coats] == ["20:00", "20:20", "20:40"]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--passes", "4"], "--every 30min"),
        (["--every", "30min"], "1 passes"),
        (["--passes", "400", "--every", "30min"], "400 passes"),
        (["--passes", "4", "--every", "30m"], "minutes or months"),
        (["--passes", "4", "--every", "30min", "--at", "20:50"], "after now"),
    ],
)
def test_passes_that_cannot_be(shop: Finishlog, words: list[str], said: str):
    answer = shop("log", "leg", "oil", *words)
    assert answer.code == 2
    assert said in answer.err
