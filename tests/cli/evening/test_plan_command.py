"""`finishlog plan`: what on which evening, and do the dates hold. The shop is invented."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest
from run import Finishlog, furnished
from terminal_session import shown

HOURS = ("shop", "hours", "mon-fri 18:00-21:00", "sat 9:00-17:00")
SHOP = f"""
room new finishing
product new sealer --class shellac-2lb
product new clear --class lacquer-brushed
project new cabinet --due 2026-12-19
project new box
air 20C 50%
{shlex.join(HOURS)}
part new cabinet/doors -n 2 --species ash
steps new plain sand sealer scuff clear*2
part steps doors --as plain
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    """A small shop with its hours, read an hour ago, and a door to finish by a date."""
    return Finishlog(tmp_path).played(SHOP)


def test_a_date_that_holds_says_by_how_much_and_which_evening_stays_free(shop):
    out = shop.did("plan", "cabinet").out
    assert "cabinet  due Sat 19 Dec  holds: packed" in out
    assert "to spare" in out
    assert "is kept free for a coat that fails" in out


def test_another_date_is_tried_without_keeping_it(shop):
    late = shop.did("plan", "cabinet", "--due", "Thu 26 Nov").out
    assert "due Thu 26 Nov  late by" in late
    assert "due Sat 19 Dec" in shop.did("plan").out


def test_evenings_come_with_their_tasks_in_order(shop):
    out = shop.did("plan", "doors").out
    evening = out.index("WED 25 NOV, 18:00 to")
    words = ["sand", "vacuum", "set up", "coat", "clean up"]
    places = [out.index(f"  {word} ", evening) for word in words]
    assert places == sorted(places)
    assert "sealer 1 of 1" in out
    assert "clear 2 of 2; ready since" in out


def test_dates_of_handling_stand_in_columns(shop):
    lines = shop.did("plan").out.splitlines()
    head = next(line for line in lines if "clamped" in line)
    dates = next(line for line in lines if line.startswith("  cabinet/doors ×2"))
    assert [head.split()[n] for n in range(3)] == ["clamped", "stacked", "packed"]
    assert dates.index("Dec") > head.index("clamped")


def test_what_it_counts_on_is_said(shop):
    out = shop.did("plan").out
    assert "finishing stays as read 21:05: 20 °C, 50 %; read it again before each coat" in out
    assert "common practice" in out


def test_a_room_never_read_says_test_before_you_coat(shop):
    shop.did("room", "new", "attic")
    shop.did("part", "new", "box/lid", "--room", "attic", "--steps", "plain")
    assert "attic: air never read, label hours only: test before you coat" in shop.did("plan").out


def test_five_evenings_are_shown_and_all_with_v(shop):
    for n in range(6):
        shop.did("part", "new", f"box/panel-{n}", "-n", "6", "--steps", "plain")
    folded, whole = shop.did("plan").out, shop.did("plan", "-v").out
    assert folded.count(" to ") < whole.count(" to ")
    assert "more, the last on" in folded
    assert "more, the last on" not in whole


def test_without_hours_it_says_what_to_type(tmp_path):
    program = furnished(tmp_path)
    assert "finishlog shop hours" in program.did("plan").out
    document = program.did("plan", "--json").document
    assert document["answer"]["hours_known"] is False
    assert document["answer"]["sessions"] == []


def test_a_cold_room_puts_coats_under_other_air(shop):
    shop.did("air", "4C", "60%")
    out = shop.did("plan").out
    assert "NEEDS OTHER AIR" in out
    assert "cannot be said" in out
    assert "  sand " in out, "sanding needs no other air"


def test_one_project_is_shown_but_all_share_the_hands(shop):
    shop.did("part", "new", "box/lid", "--steps", "plain")
    both = shop.did("plan", "-v").out
    one = shop.did("plan", "box", "-v").out
    assert "cabinet/doors" not in one
    lid = [line.split() for line in one.splitlines() if "box/lid" in line]
    every = [line.split() for line in both.splitlines()]
    assert all(line in every for line in lid)
    sand = shop.did("plan", "--json").document["answer"]["sessions"][0]["tasks"][:2]
    assert [task["part"] for task in sand] == ["cabinet/doors", "box/lid"]


def test_oily_rags_end_an_evening_with_oil(shop):
    shop.did("product", "new", "oil", "--class", "boiled-linseed-oil")
    shop.did("steps", "new", "oiled", "oil")
    shop.did("part", "new", "box/lid", "--steps", "oiled")
    lines = [line for line in shop.did("plan", "lid").out.splitlines() if "clean up" in line]
    assert all("oily rags: spread flat outdoors" in line for line in lines)
    assert lines


def test_being_away_is_no_evening(shop):
    shop.did("away", "2026-11-25", "2026-11-27")
    assert "WED 25 NOV" not in shop.did("plan").out
    assert "THU 26 NOV" not in shop.did("plan").out


def test_the_same_shop_gives_the_same_bytes(shop):
    assert shop.did("plan", "-v").out == shop.did("plan", "-v").out
    assert shop.did("plan", "--json").out == shop.did("plan", "--json").out


def test_a_plan_writes_nothing(shop):
    before = shop.did("history").out
    shop.did("plan")
    assert shop.did("history").out == before


def test_it_fits_a_terminal(shop):
    screen = re.sub(r"\x1b\[[0-9;]*m", "", shown(shop, "plan", columns=80).screen)
    assert max(len(line) for line in screen.splitlines()) <= 80
