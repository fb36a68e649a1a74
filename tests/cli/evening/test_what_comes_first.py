"""The evening's screen: danger before all else, and no word about rooms that nobody uses."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

EVENING = "2026-11-24T20:00:00+00:00"
NIGHT = "2026-11-24T21:00:00+00:00"
NEXT_NIGHT = "2026-11-25T21:00:00+00:00"

SETUP = """
room new finishing
room new shed
product new oil --class danish-oil
product new varnish --class oil-varnish
steps new twice varnish*2
part new desk/top --species oak --steps twice --room finishing
"""


@pytest.fixture
def desk(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now=NIGHT).played(SETUP, now=EVENING)


def lines(program: Finishlog, *words: str, now: str | None = None) -> list[str]:
    return program.did("ready", *words, now=now).out.splitlines()


def test_a_heap_of_rags_comes_before_the_air_and_the_hours(desk: Finishlog):
    desk.did("shop", "hours", "mon-fri 18:00-20:30")
    desk.did("air", "18C", "55%", "--room", "finishing", now=EVENING)
    desk.did("log", "top", "oil", now=EVENING)
    first, second, *rest = lines(desk)
    assert first == "OPEN RAGS"
    assert "oil" in second
    assert any("18 °C" in line for line in rest)


def test_of_several_heaps_the_dangerous_one_comes_first(desk: Finishlog):
    desk.did("log", "top", "oil", now=EVENING)
    desk.did("rags", "spread", now=EVENING)
    desk.did("part", "new", "desk/leg")
    desk.did("log", "leg", "oil", now=NEXT_NIGHT)
    page = lines(desk, now=NEXT_NIGHT)
    assert page[0] == "OPEN RAGS"
    assert "open since" in page[1]
    assert "spread since" in page[2]


def test_rags_that_are_kept_as_they_should_be_do_not_push_the_air_down(desk: Finishlog):
    desk.did("log", "top", "oil", now=EVENING)
    desk.did("rags", "spread", now=EVENING)
    page = lines(desk)
    assert page[0].startswith("Tue 24 Nov")
    assert "OPEN RAGS" in page


def test_under_water_they_are_silent_until_the_week_is_over(desk: Finishlog):
    desk.did("log", "top", "oil", now=EVENING)
    desk.did("rags", "water", now=EVENING)
    assert "OPEN RAGS" not in lines(desk)
    page = lines(desk, now="2026-12-02T21:00:00+00:00")
    assert page[0].startswith("Wed 2 Dec")
    assert any("are they still covered, the lid on, and when do they go?" in x for x in page)


def test_a_room_where_nothing_stands_is_not_nagged_about(desk: Finishlog):
    page = "\n".join(lines(desk))
    assert "finishing: air not read today" in page
    assert "shed" not in page


def test_it_is_spoken_of_again_as_soon_as_something_stands_there(desk: Finishlog):
    desk.did("move", "top", "shed")
    page = "\n".join(lines(desk))
    assert "shed: air not read today" in page
    assert "finishing" not in page


@pytest.mark.parametrize(
    "then", [["aside", "top"], ["handover", "top"], ["part", "archive", "top"]], ids=str
)
def test_what_is_set_aside_or_gone_asks_for_no_air(desk: Finishlog, then: list[str]):
    assert "air not read" in "\n".join(lines(desk))
    desk.did(*then)
    assert "air not read" not in "\n".join(lines(desk))


def test_an_idle_room_that_was_read_is_shown(desk: Finishlog):
    """Somebody who reads a room's air means to do something there."""
    desk.did("air", "12C", "80%", "--room", "shed")
    assert any("shed 12 °C, 80 %" in line for line in lines(desk))


def test_how_fit_the_air_is_names_the_room_where_there_are_two(desk: Finishlog):
    desk.did("air", "20C", "50%", "--room", "finishing")
    assert "brush varnish: fine" in lines(desk)
    desk.did("part", "new", "desk/leg", "--steps", "twice", "--room", "shed")
    desk.did("air", "2C", "50%", "--room", "shed")
    page = lines(desk)
    assert "finishing, brush varnish: fine" in page
    assert any(line.startswith("shed, brush varnish: 2 °C is below") for line in page)


def test_a_caution_of_the_air_names_its_room_where_there_are_two(desk: Finishlog):
    desk.did("air", "2C", "50%", "--room", "finishing")
    assert "stop: top: 2 °C is below" in desk.did("log", "top").out
    desk.did("undo")
    desk.did("part", "new", "desk/leg", "--steps", "twice", "--room", "shed")
    assert "stop: top: finishing: 2 °C is below" in desk.did("log", "top").out


def test_the_command_that_is_offered_is_in_the_units_of_the_shop(desk: Finishlog):
    desk.did("settings", "temperature", "F")
    page = "\n".join(lines(desk))
    assert "finishlog air 63F 58% --room finishing" in page
    assert "17C" not in page


def test_of_an_idle_room_no_nights_are_asked_for(desk: Finishlog):
    desk.did("product", "new", "clear", "--class", "waterborne-clear")
    desk.did("steps", "new", "water", "clear")
    desk.did("part", "steps", "top", "--as", "water")
    for room in ("finishing", "shed"):
        desk.did("air", "20C", "50%", "--room", room)
    page = "\n".join(lines(desk))
    assert "finishlog room night finishing" in page
    assert "finishlog room night shed" not in page


def test_standard_air_is_fine_for_sprayed_lacquer_and_damp_air_is_not(tmp_path: Path):
    """Standard air, 23 °C and 50 % (ASTM D3924), is 11 °C over its dew point. common practice"""
    shop = Finishlog(tmp_path)
    shop.did("room", "new", "shop", "--night", "18C")
    shop.did("product", "new", "lacquer", "--class", "lacquer-sprayed")
    shop.did("steps", "new", "clear", "lacquer*3")
    shop.did("part", "new", "box/lid", "--steps", "clear")
    shop.did("air", "23C", "50%")
    assert "spray lacquer: fine" in shop.did("ready").out
    shop.did("air", "23C", "72%")
    assert "spray lacquer: fine" not in shop.did("ready").out
    assert "spray lacquer: " in shop.did("ready").out


@pytest.mark.parametrize(("air", "in_vain"), [("13.5C", True), ("22C", False)])
def test_a_window_that_closes_while_the_film_still_dries_asks_for_a_scuff_then(
    desk: Finishlog, air: str, in_vain: bool
):
    """Waterborne in a cold room: its window is shut before it may be coated again."""
    for line in (
        "product new wb --class waterborne-clear",
        "steps new clear wb*2",
        "part steps desk/top --as clear",
        "room usual finishing 0:13.5C" if in_vain else "room usual finishing 0:22C",
        f"air {air} 60% --room finishing",
        "log desk/top wb",
    ):
        desk.did(*line.split())
    (row,) = [line for line in lines(desk) if "desk/top" in line]
    assert "recoat after" in row
    assert "; closes " in row
    assert row.endswith("before that: scuff it then") == in_vain
