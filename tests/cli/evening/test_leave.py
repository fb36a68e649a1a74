"""Before the light goes out: rags, deadlines, mixes, heat, tape, windows that close meanwhile."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog, furnished


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path).played("shop hours 'mon-fri 18:00-23:00' 'sat 9:00-17:00'")


def leave(shop: Finishlog, now: str | None = None) -> str:
    return shop.did("leave", now=now or shop.now).out


def test_open_rags_come_first_and_nobody_may_go(shop: Finishlog):
    page = leave(shop)
    assert page.startswith("not yet:\nrags  oil: stools/seat ×4: open since 19:40: OVERDUE")
    assert shop("leave", "--exit-code").code == 1


def test_no_answer_ever_says_that_all_is_safe(shop: Finishlog):
    """Common practice: a log shows what was written down, not what lies in a corner."""
    shop.did("rags", "gone")
    page = leave(shop, "2026-11-24T22:05:00+00:00")
    assert "not yet" not in page
    assert "look  round once more: the log shows nothing open, and knows no more" in page
    assert "safe" not in page
    assert shop("leave", "--exit-code", now="2026-11-24T22:05:00+00:00").code == 0


def test_surplus_that_must_come_off_stands_in_the_way(shop: Finishlog):
    shop.did("log", "leg", "oil")
    assert "now   stools/leg ×12: wipe off the surplus oil before 21:2" in leave(shop)


def test_a_young_waterborne_film_wants_warmth_that_the_night_does_not_give(shop: Finishlog):
    """Waterborne below its minimum in its first hours stays weak (corrections to the tables)."""
    shop.did("room", "night", "finishing", "6C")
    shop.did("log", "case", "topcoat", "--scuffed")
    page = leave(shop)
    assert "heat  cabinet/case (topcoat) wants 12.8 °C until about" in page
    assert "nights in finishing go to 6 °C: the film would stay weak" in page
    assert "no flame, no glowing element" in page
    assert "heat" not in leave(shop, "2026-12-24T21:05:00+00:00"), "weeks later it is hard"


def test_where_nobody_said_how_cold_it_gets_it_is_asked(shop: Finishlog):
    shop.did("room", "new", "barn")
    shop.did("air", "17C", "55%", "--room", "barn")
    shop.did("move", "case", "barn")
    assert "how cold barn gets at night is not known: finishlog room night" in leave(shop)


def test_tape_that_is_on_is_said(shop: Finishlog):
    shop.did("log", "doors", "mask", "--at", "19:00")
    assert "tape  cabinet/doors ×2: on since 19:00" in leave(shop)
    shop.did("log", "doors", "untape")
    assert "tape" not in leave(shop)


def test_a_window_that_closes_before_the_next_visit_costs_a_scuff(shop: Finishlog):
    shop.did("away", "tomorrow", "Fri 27 Nov")
    page = leave(shop)
    assert "closes  cabinet/case: topcoat closes Wed 18:00; after that it needs a scuff" in page
    assert "next    the shop opens Sat 09:00" in page


def test_what_will_be_ready_at_the_next_visit_is_named(shop: Finishlog):
    shop.did("check", "case", "no-print")
    page = leave(shop)
    assert "cabinet/case: recoat after" in page


def test_unknown_hours_are_said_not_guessed(tmp_path: Path):
    page = leave(furnished(tmp_path))
    assert "when the shop opens is not known: finishlog shop hours" in page


def test_ready_for_forty_minutes_shows_what_fits_with_set_up_and_clean_up(shop: Finishlog):
    late = "2026-11-25T19:05:00+00:00"
    shop.did("air", "20C", "50%", now=late)
    whole = shop.did("ready", "--for", "8h", "--json", now=late).document["answer"]["fits"]
    assert whole["left_out"] == []
    assert 0 < whole["takes_min"] <= 480
    short = shop.did("ready", "--for", "15min", "--json", now=late).document["answer"]["fits"]
    assert short["takes_min"] <= 15
    assert short["left_out"]
    page = shop.did("ready", "--for", "15min", now=late).out
    assert "IN 15 min" in page
    assert "TAKES LONGER" in page


@pytest.mark.parametrize("typed", ["30m", "soon", "-5min", "0min"])
def test_a_time_that_cannot_be_read_is_refused(shop: Finishlog, typed: str):
    answer = shop("ready", "--for", typed)
    assert answer.code == 2
    assert len(answer.err.splitlines()) == 1


# What was put on by gun: whether the gun is clean and the room aired, no log can know.
GUN = """
product new spirit --class lacquer-sprayed
product new water --class waterborne-clear
part new rack/panel --species maple
"""


@pytest.fixture
def booth(shop: Finishlog) -> Finishlog:
    return shop.played("rags gone\n" + GUN)


def test_after_spraying_the_gun_its_filters_and_the_vapour_are_asked_after(booth: Finishlog):
    """Common practice: a gun left dirty is lost, dry lacquer overspray burns, vapour finds fire."""
    booth.did("log", "panel", "spirit")
    page = leave(booth)
    assert "guns  spirit sprayed tonight: gun, cup and needle clean?" in page
    assert "      overspray off the filters, walls and floor: dry lacquer burns" in page
    assert "      solvent vapour in finishing: exhaust on until" in page
    assert "beside the gun and its filters and the vapour the log shows nothing open" in page
    assert "nothing mixed is on record" not in page


def test_water_by_gun_has_filters_and_no_vapour(booth: Finishlog):
    booth.did("log", "panel", "water", "--method", "spray")
    page = leave(booth)
    assert "water sprayed tonight" in page
    assert "burns" not in page
    assert "solvent vapour" not in page
    # That is the oil of the stools, two days after it was wiped on cold.
    assert "vapour of oil until" in page


def test_water_by_brush_asks_nothing_more(booth: Finishlog):
    booth.did("log", "panel", "water", "--method", "brush")
    page = leave(booth)
    assert "sprayed" not in page
    assert "filters" not in page
    assert "the log shows nothing open, and knows no more" in page


def test_the_gun_is_asked_after_once_an_evening_only(booth: Finishlog):
    booth.did("log", "panel", "spirit")
    tomorrow = leave(booth, "2026-11-25T21:05:00+00:00")
    assert "sprayed" not in tomorrow
    assert "solvent vapour" not in tomorrow
    assert "sprayed" in leave(booth, "2026-11-25T01:05:00+00:00"), "the night is the same evening"
