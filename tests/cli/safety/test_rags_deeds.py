"""What is done with oily rags, as it is typed and answered.

Spread flat, under water in a lidded can, or a listed can (NFPA tip sheet, 29 CFR 1910.107); three
days until stiff may be tested (fire investigators: fires up to three days after wetting).
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.run import Finishlog
from tests.cli.terminal_session import TerminalSession

WET = "2026-11-24T19:00:00+00:00"
EVENING = "2026-11-24T20:30:00+00:00"
FRIDAY = "2026-11-27T21:00:00+00:00"
SHOP = """
product new oil --class hardwax-oil
product new stain --class wiping-stain
product new topcoat --class waterborne-clear
part new desk/top
part new desk/leg
air 21C 50%
log top oil
log leg stain
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    """Tell of two oils that went on the same evening, in a warm room."""
    return Finishlog(tmp_path, now=EVENING).played(SHOP, now=WET)


def states(program: Finishlog, now: str | None = None) -> dict[str, str]:
    answer = program.did("rags", "--json", now=now).document["answer"]
    return {item["product"]: item["state"] for item in answer}


def test_gone_without_a_name_closes_all_and_says_which_and_how_many(shop: Finishlog):
    said = shop.did("rags", "gone").out
    assert "rags of oil, stain, on 2 of 2: handed over" in said
    assert states(shop) == {}


def test_gone_before_they_can_be_stiff_is_recorded_and_asked_after(shop: Finishlog):
    said = shop.did("rags", "gone", "oil").out
    assert "how did they go (oil)? not stiff yet, they burn in any bin" in said
    assert "with gloves, pads and paper? If not: finishlog undo 9" in said
    assert states(shop) == {"stain": "open"}
    shop.did("undo", "9")
    assert states(shop) == {"oil": "open", "stain": "open"}


def test_gone_out_of_the_water_is_what_water_is_for_and_asks_nothing(shop: Finishlog):
    shop.did("rags", "water")
    assert "how did they go" not in shop.did("rags", "gone", now=FRIDAY).out


def test_water_without_a_name_takes_all_that_must_be_dealt_with(shop: Finishlog):
    assert "on 2 of 2" in shop.did("rags", "water").out
    assert set(states(shop).values()) == {"under water"}


def test_what_lies_spread_is_not_sunk_by_the_way(shop: Finishlog):
    shop.did("rags", "spread", "stain")
    assert "rags of oil, on 1 of 2: sunk" in shop.did("rags", "water").out
    assert states(shop) == {"oil": "under water", "stain": "spread flat"}


def test_stiff_too_early_is_recorded_and_stays_open_every_time(shop: Finishlog):
    shop.did("rags", "spread")
    for _ in range(2):
        said = shop.did("rags", "stiff", now="2026-11-25T18:00:00+00:00").out
        assert "caution: oil: found stiff before its time: recorded, still open" in said
    assert len(states(shop, FRIDAY)) == 2


def test_once_stiff_they_are_closed_as_self_heating_and_still_burn(shop: Finishlog):
    shop.did("rags", "spread")
    assert shop.did("rags", now=FRIDAY).out.count("stiff and crisp right through?") == 2
    said = shop.did("rags", "stiff", now=FRIDAY).out
    assert "they heat no more, and burn as paper does: to the waste as the service says" in said
    assert states(shop, FRIDAY) == {}


def test_at_a_terminal_stiff_is_asked_and_no_is_no(shop: Finishlog):
    shop.did("rags", "spread")
    shop.now = FRIDAY
    with TerminalSession(shop, "rags", "stiff") as session:
        session.answer("Stiff and crisp right through", "n")
    assert session.code == 0
    assert len(states(shop)) == 2
    with TerminalSession(shop, "rags", "stiff") as session:
        session.answer("Stiff and crisp right through", "y")
    assert states(shop) == {}


def test_a_deed_of_before_they_were_wet_says_so_and_leaves_them_open(shop: Finishlog):
    said = shop.did("rags", "spread", "--at", "18:00").out
    assert "that was before they were wet: recorded, still open" in said
    assert set(states(shop).values()) == {"open"}


def test_dust_is_not_spread_and_says_what_to_do(shop: Finishlog):
    shop.did("rags", "water")
    shop.did("log", "top", "sand", now=FRIDAY)
    said = shop.did("rags", "spread", now=FRIDAY).out
    assert "dust and scrapings are a heap, spread or not: into water" in said
    (dust,) = [x for x in shop.did("rags", "--json", now=FRIDAY).document["answer"] if x["dust"]]
    assert (dust["state"], dust["severity"]) == ("open", "danger")


def test_a_hand_scuff_is_one_line_and_no_item(shop: Finishlog):
    shop.did("rags", "gone")
    said = shop.did("log", "top", "scuff", now=FRIDAY).out
    assert said.count("dust and cloth into the water can") == 1
    assert states(shop, FRIDAY) == {}
    assert "water can" not in shop.did("log", "leg", "topcoat", now=FRIDAY).out


def test_the_answer_to_log_repeats_rags_only_when_they_are_new_or_overdue(shop: Finishlog):
    first = shop.did("log", "leg", "oil", now="2026-11-26T19:00:00+00:00").out
    assert "rags 3: oil, open since 19:00" in first
    shop.did("rags", "spread", now="2026-11-26T19:10:00+00:00")
    shop.did("log", "leg", "wipe", now="2026-11-26T19:12:00+00:00")
    again = shop.did("log", "top", "oil", now="2026-11-26T19:20:00+00:00").out
    assert "rags 1" not in again, "known, and not overdue yet"
    late = shop.did("log", "leg", "topcoat", now="2026-11-26T21:00:00+00:00").out
    assert "OVERDUE" in late


def test_in_warm_air_it_is_overdue_sooner_and_says_why(shop: Finishlog):
    hot = "2026-11-26T19:00:00+00:00"
    shop.did("rags", "gone")
    shop.did("air", "31C", "45%", now=hot)
    said = shop.did("log", "leg", "oil", now=hot).out
    assert "open since 19:00: OVERDUE in this warmth, spread flat outdoors" in said


def test_washing_is_no_way(shop: Finishlog):
    """Fire services: washing leaves oil behind, the dryer's heat starts it."""
    answer = shop("rags", "washed")
    assert answer.code == 2
    assert "washing leaves oil in them" in answer.err
    assert set(states(shop).values()) == {"open"}
    assert "washing leaves oil in them" in shop("rags", "tumble dried and folded").err
    assert "washing" not in shop("rags", "dried till stiff").err
    shop.did("rags", "gone")
    assert "washing" not in shop("rags", "laundered").err


def test_what_was_done_with_each_is_told(shop: Finishlog):
    shop.did("rags", "water", "oil")
    shop.did("rags", "lifted", "oil")
    assert "water 20:30, lifted 20:30" in shop.did("rags").out


def test_leave_is_silent_about_what_is_under_water_and_goes_on_about_a_heap(shop: Finishlog):
    assert shop.did("leave").out.startswith("not yet:")
    shop.did("rags", "water")
    page = shop.did("leave").out
    assert "not yet" not in page
    assert "under water" not in page
    assert "finishlog rags lists" in page
