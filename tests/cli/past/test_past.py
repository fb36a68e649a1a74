"""Next year: what was really done, how it came out, and how to do it again.

The shop is invented: cherry tables, one good and one that was taken off; a conversion varnish that
wrinkles now and then.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from run import Finishlog

YEARS = """
2025-09-30T18:00 room new shop
2025-09-30T18:00 room new loft
2025-09-30T18:00 product new wiping --class wiping-varnish
2025-09-30T18:00 product new tung --class tung-oil
2025-09-30T18:00 product new stain --class wiping-stain
2025-09-30T18:00 product new hard --class conversion-varnish --recoat 6h --window 24h
2025-09-30T18:00 steps new twice sand wiping*2
2025-09-30T18:00 part new tables/one --species cherry --steps twice --room shop
2025-09-30T18:00 part new tables/two --species cherry --room shop
2025-09-30T18:00 part new tables/three --species cherry --steps twice --room shop
2025-09-30T18:00 part new doors/door -n 2 --species maple --room shop
2025-09-30T18:00 part new boards/try --board --species cherry --face front=left,right
2025-10-01T18:00 air 20C 50% --room shop
2025-10-01T18:00 log tables/one sand --grit P220
2025-10-01T18:10 log tables/one wiping --method wipe
2025-10-01T18:25 log tables/one wipe
2025-10-01T18:30 log tables/two tung --method wipe
2025-10-01T18:30 rags gone
2025-10-02T12:00 air 19C 55% --room shop
2025-10-02T12:10 log tables/one wiping --method wipe --scuffed
2025-10-02T12:15 rags gone
2025-10-05T12:00 check tables/two tacky
2025-10-06T12:00 off tables/two --strip --note 'chalky and soft'
2025-10-06T13:00 log tables/two wiping
2025-10-06T13:05 rags gone
2025-10-07T12:00 log tables/three sand --grit P180
2025-10-07T13:00 log boards/try@front/left wiping
2025-10-07T13:05 log boards/try@front/right tung
2025-10-07T13:10 rags gone
2025-10-08T12:00 air 24C 40% --room loft
2025-10-08T12:00 log doors/door stain
2025-10-08T12:10 log doors/door wipe
2025-10-08T12:12 rags gone
2025-10-09T12:00 log doors/door hard --method spray
2025-10-09T14:00 log doors/door:1 hard --method spray --film 100um
2025-10-09T16:00 fault doors/door:1 wrinkle --where 'left edge'
2025-10-10T12:00 move doors/door:2 loft
2025-10-10T12:00 air 24C 40% --room loft
2025-10-10T13:00 log doors/door:2 hard --method spray --scuffed
2025-10-12T12:00 check doors/door:2 powder
2026-10-01T12:00 review tables/one good -t 'two thin coats, even after a year'
2026-10-01T12:00 review tables/two failed -t 'dull again'
2026-10-01T12:05 photo tables/one one.jpg -t 'in daylight'
2026-10-02T12:00 note tables/one -t 'like the hall table'
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(YEARS, now="{}:00+00:00")


def past(shop: Finishlog, *words: str) -> Any:
    return shop.did("past", *words, "--json").document["answer"]


def labels(shop: Finishlog, *words: str) -> list[str]:
    return [finish["label"] for finish in past(shop, *words)["finishes"]]


def test_what_worked_comes_first_and_the_failure_is_kept(shop: Finishlog):
    assert labels(shop, "cherry")[:2] == ["tables/one", "tables/two"]
    assert "tables/two" in labels(shop, "cherry")


def test_the_counts_are_honest(shop: Finishlog):
    """One good, one failed, the boards not said; the tung oil that came off is an attempt."""
    counts = past(shop, "cherry")["counts"]
    assert (counts["good"], counts["failed"], counts["not_said"]) == (1, 1, 2)
    assert counts["taken_off"] == 1
    assert counts["finishes"] == 4
    page = shop.did("past", "cherry").out
    assert "4 finishes: 1 came out good, 1 failed, 2 not said; 1 attempt taken off" in page


def test_a_recipe_is_what_was_done_not_what_was_planned(shop: Finishlog):
    (one,) = past(shop, "tables/one")["finishes"]
    (attempt,) = one["attempts"]
    assert [deed["said"] for deed in attempt["prepared"]] == ["sand, P220"]
    first, second = attempt["coats"]
    assert (first["product"], first["class_name"]) == ("wiping", "wiping varnish")
    assert first["method"] == "wipe"
    assert first["air"] == {"temperature_c": 20.0, "humidity_pct": 50.0}
    assert second["hours_since_last"] == 18.0
    assert second["scuffed_before"] is True


def test_minutes_on_the_wood_are_kept(shop: Finishlog):
    """A stain matched years later stands or falls with them (a shop's cut-offs with dates)."""
    (one,) = past(shop, "tables/one")["finishes"]
    assert one["attempts"][0]["coats"][0]["wiped_after_min"] == 15.0
    assert "wiped after 15 min" in shop.did("past", "tables/one").out


def test_an_attempt_that_came_off_says_after_how_long_and_why(shop: Finishlog):
    page = shop.did("past", "tables/two").out
    assert "attempt 1  " in page
    assert "TAKEN OFF after 5 d, stripped to bare wood, Mon 6 Oct 2025 13:00" in page
    assert "tacky, chalky and soft" in page
    assert page.index("attempt 1") < page.index("tung") < page.index("attempt 2")


def test_a_review_speaks_of_what_is_on_it_now(shop: Finishlog):
    (two,) = past(shop, "tables/two")["finishes"]
    assert two["outcome"] == "failed"
    assert [a["off"] is None for a in two["attempts"]] == [False, True]


@pytest.mark.parametrize(
    ("words", "found"),
    [
        (["tung"], {"tables/two", "boards/try"}),
        (["wiping-varnish"], {"tables/one", "tables/two", "boards/try"}),
        (["twice"], {"tables/one"}),
        (["chalky"], {"tables/two"}),
        (["daylight"], {"tables/one"}),
        (["wrinkle"], {"doors/door:1"}),
        (["tables"], {"tables/one", "tables/two"}),
        (["maple", "wrinkle"], {"doors/door:1"}),
        (["cherry", "hall table"], {"tables/one"}),
        (["CHERRY"], {"tables/one", "tables/two", "boards/try"}),
    ],
    ids=lambda each: " ".join(sorted(each)),
)
def test_it_is_found_by_wood_class_product_steps_piece_or_words(
    shop: Finishlog, words: list[str], found: set[str]
):
    assert set(labels(shop, *words)) == found


def test_a_wood_is_only_a_wood(shop: Finishlog):
    """`ash` must not find every washcoat."""
    assert past(shop, "maple")["sought"] == [["maple", ["wood"]]]


def test_without_a_word_it_is_everything(shop: Finishlog):
    assert len(past(shop)["finishes"]) == 6


def test_the_same_can_on_another_wood_is_warned_about(shop: Finishlog):
    """Common practice: the same can on another species is another colour, always test."""
    assert "another wood" in shop.did("past", "wiping").out
    assert "another wood" not in shop.did("past", "cherry").out


def test_a_sample_board_shows_its_zones(shop: Finishlog):
    boards = [f for f in past(shop, "cherry")["finishes"] if f["is_board"]]
    assert sorted(f["faces"] for f in boards) == [["front/left"], ["front/right"]]


def test_the_air_is_that_of_the_room_it_stood_in(shop: Finishlog):
    (door,) = [f for f in past(shop, "maple")["finishes"] if f["label"] == "doors/door:2"]
    assert door["attempts"][0]["coats"][-1]["air"]["temperature_c"] == 24.0


def test_pictures_and_reviews_have_their_day(shop: Finishlog):
    page = shop.did("past", "tables/one").out
    assert "came out  good, two thin coats, even after a year, Thu 1 Oct 13:00" in page
    assert "one.jpg, in daylight" in page


def test_good_days_and_bad_days_stand_side_by_side(shop: Finishlog):
    """Conversion varnish that wrinkles only sometimes: interval, air, film, the stain below."""
    bad, good = sorted(past(shop, "--pairs", "hard", "hard"), key=lambda p: p["hours_between"])
    assert (bad["parts"], bad["hours_between"]) == (["doors/door:1"], 2.0)
    assert bad["wrong"] == ["wrinkle (left edge)"]
    assert bad["wet_film_um"] == 100.0
    assert (good["parts"], good["hours_between"]) == (["doors/door:2"], 25.0)
    assert (good["wrong"], good["checks"]) == ([], ["sand: powder"])
    assert good["scuffed"] is True
    assert good["air"]["temperature_c"] == 24.0
    for pair in (bad, good):
        assert (pair["colour"], pair["colour_wait_h"]) == ("stain", 24.0)
        assert (pair["label_low_h"], pair["label_closes_h"]) == (6.0, 24.0)


def test_too_soon_and_too_late_are_said_in_words(shop: Finishlog):
    page = shop.did("past", "--pairs", "hard").out
    assert "after 2 h (label 6 h, SOONER)" in page
    assert "after 25 h (label 6 h, window of 24 h had closed)" in page
    assert "1 went wrong" in page


def test_what_was_done_becomes_the_steps_of_the_next_one(shop: Finishlog):
    shop.did("steps", "new", "table-one", "--like", "tables/one")
    steps = shop.did("steps", "show", "table-one", "--json").document["answer"]["steps"]
    assert steps == ["sand (P220)", "wiping", "wipe (after 15 min)", "scuff", "wiping"]
    shop.did("part", "new", "tables/four", "--species", "cherry", "--steps", "table-one")
    assert "sand" in shop.did("on", "tables/four").out


def test_what_came_off_is_not_done_again(shop: Finishlog):
    shop.did("steps", "new", "two", "--like", "tables/two")
    steps = shop.did("steps", "show", "two", "--json").document["answer"]["steps"]
    assert steps == ["wiping"]


def test_one_zone_of_a_board_makes_steps(shop: Finishlog):
    shop.did("steps", "new", "left", "--like", "boards/try@front/left")
    steps = shop.did("steps", "show", "left", "--json").document["answer"]["steps"]
    assert steps == ["wiping"]


def test_a_part_that_was_put_away_is_reviewed_and_repeated(shop: Finishlog):
    shop.did("part", "archive", "tables/one")
    shop.did("review", "tables/one", "fair", "-t", "a ring", now="2027-10-01T12:00:00+00:00")
    shop.did("steps", "new", "again", "--like", "tables/one")
    (one,) = past(shop, "tables/one")["finishes"]
    assert (one["outcome"], len(one["reviews"])) == ("fair", 2)


def test_a_review_may_be_amended_and_undone(shop: Finishlog):
    act = shop.did("review", "tables/one", "bad", "--json").document["answer"]["act"]
    shop.did("amend", str(act), "--outcome", "fair", "--note", "on second thoughts")
    assert past(shop, "tables/one")["finishes"][0]["outcome"] == "fair"
    shop.did("undo", str(act))
    assert past(shop, "tables/one")["finishes"][0]["outcome"] == "good"


def test_a_picture_is_kept_by_its_whole_path(shop: Finishlog, tmp_path: Path):
    answer = shop.apart("photo", "tables/one", "here.jpg", "--json")
    assert answer.document["answer"]["path"] == str(tmp_path / "here.jpg")
    assert answer.document["answer"]["is_there"] is False
    (tmp_path / "here.jpg").write_bytes(b"")
    assert shop.apart("photo", "tables/one", "here.jpg", "--json").document["answer"]["is_there"]
