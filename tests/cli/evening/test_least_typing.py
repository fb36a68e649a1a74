"""Nothing entered but product names and coats: the answers are cautious, and of use.

No room, no air, no label, no wood, no steps, no hours: the class's published times are all there
is, so nothing is a plain go before a test, and every answer says what is not known.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog
from terminal_session import TerminalSession

EVENING = "2026-11-24T19:00:00+00:00"
NEXT_DAY = "2026-11-25T19:00:00+00:00"
WEEK_LATER = "2026-12-02T19:00:00+00:00"


@pytest.fixture(scope="module")
def typed(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """Type one command at a terminal, and answer what it asks with as little as it takes."""
    program = Finishlog(tmp_path_factory.mktemp("shop"), now=EVENING)
    with TerminalSession(program, "log", "stool/seat", "varnish") as session:
        session.answer("There is no part 'stool/seat'", "y")
        session.answer("Which wood?", "")
        session.answer("number:", "oil-polyurethane")
    assert session.code == 0, session.screen
    assert "seat: coat 1, varnish" in session.screen
    assert "rags 1: varnish, open since 19:00" in session.screen
    return program.database.read_bytes()


@pytest.fixture
def shop(typed: bytes, tmp_path: Path) -> Finishlog:
    program = Finishlog(tmp_path, now=EVENING)
    program.database.write_bytes(typed)
    return program


def standing(shop: Finishlog, now: str) -> dict[str, str]:
    return shop.did("when", "seat", "--json", now=now).document["answer"]["lines"][0]["standing"]


def test_the_next_coat_waits_and_then_is_tested_first_never_a_plain_go(shop: Finishlog):
    assert standing(shop, EVENING)["answer"] == "drying"
    later = standing(shop, WEEK_LATER)
    assert later["answer"] == "test first"
    assert later["scuff_first"] is True
    assert "the room's air was not read" in later["because"]


def test_the_dates_are_the_published_ones_at_their_cautious_end(shop: Finishlog):
    """Oil polyurethane recoats after 6 to 24 h, sands after 24 h: common practice."""
    assert standing(shop, EVENING)["high"] == "2026-11-25T19:00:00Z"


def test_ready_heads_with_the_rags_and_asks_for_the_air(shop: Finishlog):
    page = shop.did("ready", now=NEXT_DAY).out
    assert page.index("OPEN RAGS") < page.index("BENCH NOW")
    assert "OVERDUE" in page
    assert "test, scuff, coat  stool/seat" in page


def test_why_says_what_is_not_known(shop: Finishlog):
    page = shop.did("why", "seat", now=NEXT_DAY).out
    for unknown in ("common practice", "air", "unknown"):
        assert unknown in page


def test_when_gives_every_stage_and_says_that_it_is_label_time(shop: Finishlog):
    page = shop.did("when", "seat", now=EVENING).out
    for stage in ("recoat", "sand", "clamp", "stack", "pack", "fully hard"):
        assert stage in page
    assert "test first" in shop.did("when", "seat", now=WEEK_LATER).out


def test_leaving_the_shop_is_not_yet(shop: Finishlog):
    page = shop.did("leave", now="2026-11-24T22:00:00+00:00").out
    assert page.startswith("not yet:\nrags")
    assert "when the shop opens is not known" in page


def test_a_plan_says_what_it_needs_first_the_hours_and_then_the_steps(shop: Finishlog):
    page = shop.did("plan", now=NEXT_DAY).out
    assert page == "no plan without opening hours: finishlog shop hours 'mon-fri 18:00-21:00'\n"
    shop.did("shop", "hours", "mon-sun 18:00-22:00", now=NEXT_DAY)
    assert "it has no steps" in shop.did("plan", now=NEXT_DAY).out


def test_a_check_is_taken_without_anything_else(shop: Finishlog):
    shop.did("check", "seat", "tacky", now=NEXT_DAY)
    assert standing(shop, NEXT_DAY)["answer"] == "blocked"
    shop.did("check", "seat", "powder", now=WEEK_LATER)
    assert standing(shop, WEEK_LATER)["answer"] != "blocked"


def test_the_second_coat_needs_one_command(shop: Finishlog):
    page = shop.did("log", "seat", "varnish", now=WEEK_LATER).out
    assert "seat: coat 2, varnish" in page
    assert "no scuffing on record" in page


def test_a_scuffing_that_came_too_early_is_not_said_to_be_missing(shop: Finishlog):
    """It is on record; what is wrong with it is that the film was too young."""
    shop.did("log", "seat", "varnish", "--scuffed", now=WEEK_LATER)
    soon = "2026-12-02T20:00:00+00:00"
    shop.did("log", "seat", "scuff", now=soon)
    page = shop.did("log", "seat", "varnish", now=soon).out
    assert "caution: seat: it was scuffed too young (act 5), which gives no grip" in page
    assert "was that later: finishlog amend 5 --at TIME" in page
    assert "if you did scuff it" not in page
    assert "caution: seat: no scuffing on record" not in page, "of this coat"


def test_next_year_it_is_found_again(shop: Finishlog):
    page = shop.did("past", "varnish", now="2027-11-24T19:00:00+00:00")
    assert "varnish" in page.out
