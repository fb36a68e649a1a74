"""`off`: what came off and what stays, and everything that tells of it afterwards."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

from finishlog import errors

# An invented shop: two doors, varnished twice; the second coat wrinkled.
SHOP = """
2026-11-21T08:00 room new finishing
2026-11-21T08:00 product new varnish --class alkyd-varnish
2026-11-21T08:00 product new sealer --class shellac-2lb
2026-11-21T08:00 product new lacquer --class lacquer-sprayed
2026-11-21T08:00 steps new coats sand varnish scuff varnish
2026-11-21T08:00 project new cabinet
2026-11-21T08:00 part new cabinet/doors -n 2 --species ash --steps coats
2026-11-21T08:00 part new cabinet/panel --species ash
2026-11-21T08:30 air 21C 50%
2026-11-21T09:00 log doors sand
2026-11-21T10:00 log doors varnish
2026-11-22T08:30 air 21C 50%
2026-11-22T09:00 log doors scuff
2026-11-22T09:10 log doors varnish
2026-11-22T15:00 fault doors wrinkled --where "left edge"
2026-11-22T15:01 check doors gums
"""
FIRST, SECOND = "11", "14"
EVENING = "2026-11-22T16:00:00+00:00"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, EVENING).played(SHOP, now="{}:00+00:00")


def test_one_line_says_what_came_off_and_what_stays(shop: Finishlog):
    first, *rest = shop.did("off", "doors", "--to", FIRST, "--scraped").out.splitlines()
    assert first == (
        "16:00  doors ×2: scraped off; varnish of 09:10 (act 14) off; "
        "varnish of Sat 10:00 (act 11) stays and keeps its date"
    )
    assert any("scuff" in line for line in rest)


def test_scrapings_of_a_young_soft_film_are_open_at_once(shop: Finishlog):
    out = shop.did("off", "doors", "--to", FIRST, "--scraped").out
    assert "scrapings" in out
    assert "still soft" in out
    assert "scrapings" in shop.did("rags").out


def test_on_tells_of_the_attempt(shop: Finishlog):
    shop.did("off", "doors", "--scraped", "--note", "soft all over")
    out = shop.did("on", "doors").out
    assert "in the white" in out
    assert "varnish ×2" in out or "2 x varnish" in out
    assert "scraped off 16:00" in out
    assert "wrinkle (left edge), gums, soft all over" in out
    assert "attempt 2" in out


def test_past_keeps_the_failure(shop: Finishlog):
    shop.did("off", "doors")
    finish = shop.did("past", "ash", "--json").document["answer"]["finishes"][0]
    assert finish["off"]
    (attempt,) = finish["attempts"]
    assert [coat["product"] for coat in attempt["coats"]] == ["varnish", "varnish"]
    assert attempt["off"]["why"] == ["wrinkle (left edge)", "gums"]
    assert attempt["off"]["lasted_h"] == 30
    assert "stripped" in shop.did("past", "ash").out


def test_the_next_attempt_counts_from_one(shop: Finishlog):
    shop.did("off", "doors")
    line = shop.did("log", "doors", "varnish", now="2026-11-22T16:30:00+00:00").out
    assert "coat 1, varnish" in line
    finish = shop.did("past", "ash", "--json").document["answer"]["finishes"][0]
    (coat,) = finish["attempts"][-1]["coats"]
    assert coat["hours_since_last"] is None


def test_history_shows_it_and_undo_brings_all_back(shop: Finishlog):
    before = shop.did("on", "doors", "--json").document["answer"]
    shop.did("off", "doors", "--to", FIRST)
    assert f"off doors --to {FIRST}" in shop.did("history", "doors").out
    shop.did("undo")
    assert shop.did("on", "doors", "--json").document["answer"] == before


def test_it_can_be_amended(shop: Finishlog):
    shop.did("off", "doors", "--scraped")
    shop.did("amend", "17", "--at", "15:30", "--note", "with a card scraper")
    attempt = shop.did("on", "doors", "--json").document["answer"][0]["attempts"][0]
    assert attempt["off_at"]["latest"] == "2026-11-22T15:30:00Z"
    assert attempt["why"][-1] == "with a card scraper"


def test_the_coat_that_stays_is_still_it_after_an_amendment(shop: Finishlog):
    shop.did("off", "doors", "--to", FIRST)
    shop.did("amend", FIRST, "--at", "sat 11:00")
    coats = shop.did("on", "doors", "--json").document["answer"][0]["coats"]
    assert [coat["put_on"] for coat in coats] == ["2026-11-21T11:00:00Z"]


def test_a_coat_by_its_product_or_its_class(shop: Finishlog):
    shop.did("log", "panel", "sealer", "--at", "2026-11-22 10:00")
    shop.did("log", "panel", "lacquer", "--at", "2026-11-22 14:00")
    assert "sealer of 10:00" in shop.did("off", "panel", "--to", "seal", "--sanded").out
    shop.did("undo")
    assert "sealer of 10:00" in shop.did("off", "panel", "--to", "shellac", "--sanded").out


def test_a_film_that_nobody_logged_can_come_off(shop: Finishlog):
    out = shop.did("off", "panel").out
    assert "no film is on record there" in out
    assert "lead" in out
    assert "attempt" not in shop.did("on", "panel").out


def test_a_stripper_does_not_stop_at_a_coat(shop: Finishlog):
    out = shop.did("off", "doors", "--to", FIRST, "--strip").out
    assert "caution: a stripper or solvent seldom stops at a coat" in out


def test_pieces_go_their_own_way(shop: Finishlog):
    shop.did("off", "doors:1")
    labels = [
        each["standing"]["label"] for each in shop.did("on", "doors", "--json").document["answer"]
    ]
    assert labels == ["doors:1", "doors:2"]


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (["off", "doors", "--to", "varnish"], errors.USAGE, "--to 11 (acts 11, 14)"),
        (["off", "doors", "--to", "wax"], errors.NO_SUCH_THING, "varnish (act 14)"),
        (["off", "doors", "--to", "99"], errors.NO_SUCH_THING, "on it: varnish (act 11)"),
        (["off", "panel", "--to", "sealer"], errors.NO_SUCH_THING, "the wood is bare"),
        (["off", "doors", "--sanded", "--washed"], errors.USAGE, "say one"),
        (["off", "nothing"], errors.NO_SUCH_THING, "no part"),
    ],
    ids=str,
)
def test_what_cannot_be_read_is_refused(shop: Finishlog, words: list[str], code: int, said: str):
    before = shop.database.read_bytes()
    answer = shop(*words)
    assert answer.code == code, answer
    assert len(answer.err.splitlines()) == 1
    assert said in answer.err
    assert shop.database.read_bytes() == before


def test_undoing_an_old_coat_offers_off_with_what_lies_below(shop: Finishlog):
    err = shop("undo", SECOND).err
    assert "did the finish go on?" in err
    assert f"finishlog off cabinet/doors --to {FIRST}" in err


@pytest.mark.parametrize(
    ("over", "melts", "heats"),
    [
        ("waterborne-clear", False, False),
        ("shellac-2lb", True, False),
        ("alkyd-varnish", False, True),
        ("conversion-varnish", False, False),
    ],
)
def test_what_comes_off_shellac_is_told_by_its_own_chemistry(
    tmp_path: Path, over: str, melts: bool, heats: bool
):
    """Only what dissolves shellac made it wet again, and only dust of oil heats: common practice"""
    shop = Finishlog(tmp_path, now="2026-03-02T18:00:00+00:00")
    shop.did("product", "new", "ground", "--class", "shellac-2lb")
    shop.did("product", "new", "cover", "--class", over)
    shop.did("part", "new", "desk/top", "--species", "oak")
    shop.did("log", "top", "ground", now="2026-03-02T08:00:00+00:00")
    shop.did("log", "top", "cover", now="2026-03-02T14:00:00+00:00")
    said = shop.did("off", "top", "--to", "ground", "--sanded", now="2026-03-03T08:00:00+00:00").out
    assert ("melt into one" in said) is melts
    assert ("oil films" in said) is heats
