"""Handed over: off the evening's screens, with a card; what was open is said, nothing refused.

The piece is invented: a cot of beech, rails varnished on Tuesday, feet on Wednesday evening.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from run import Answer, Finishlog

from tests.finisher import Finisher

COT = """
09-01T18:00 room new shop
09-01T18:00 product new varnish --class oil-polyurethane
09-01T18:00 steps new twice varnish*2
09-01T18:00 project new cot --for child
09-01T18:00 part new cot/rails -n 3 --species beech --steps twice
09-01T18:00 part new cot/feet -n 4 --species beech
09-01T18:05 air 21C 50%
09-01T18:10 log rails varnish
09-01T18:15 rags gone
09-02T18:05 air 21C 50%
09-02T19:00 log feet varnish
09-02T19:05 rags gone
"""
LEFT = "2026-10-20T18:00:00+00:00"


@pytest.fixture
def cot(tmp_path: Path) -> Finishlog:
    read = "\n".join(f"09-{day:02}T18:00 air 21C 50%" for day in range(3, 31))
    return Finishlog(tmp_path, now=LEFT).played(COT + read, now="2026-{}:00+00:00")


def section(page: str, title: str) -> str:
    _, _, rest = page.partition(f"{title}\n")
    lines = []
    for line in rest.splitlines():
        if not line.startswith("  "):
            break
        lines.append(line.strip())
    return "\n".join(lines)


def acts(answer: Answer) -> Any:
    return answer.document["answer"]


def test_a_project_leaves_the_day_and_stays_in_the_record(cot: Finishlog):
    cot.did("handover", "cot", "--note", "collected")
    assert "cot" not in cot.did("ready").out
    assert "cot" not in cot.did("leave").out
    assert "handed over" in cot.did("on", "rails").out
    assert "fully hard" in cot.did("when", "rails").out
    assert "varnish" in cot.did("why", "rails").out
    assert "handed over" in cot.did("past", "beech").out
    assert "handed over, collected" in cot.did("history", "rails").out


def test_what_is_open_is_said_and_recorded_all_the_same(cot: Finishlog):
    cot.did("log", "feet", "varnish")
    cot.did("check", "rails", "prints")
    cot.did("log", "rails", "mask")
    page = cot.did("handover", "cot").out
    assert "stop: oily rags of varnish are open" in page
    assert "the last thumbnail check found that it prints" in page
    assert "rails ×3: still to come: varnish" in page
    assert "tape is still on" in page
    assert "feet ×4: not to be packed before" in page
    assert "nothing of cot is left in the shop" in page


def test_a_piece_is_packed_when_the_slowest_of_its_films_is(cot: Finishlog):
    """Two films on one board, two dates: one line, with that of a panel that has the slower."""
    cot.did("part", "new", "cot/board", "--face", "front", "--face", "back")
    cot.did("part", "new", "cot/panel")
    cot.did("product", "new", "cut", "--class", "shellac-2lb")
    cot.did("log", "board@front", "cut")
    cot.did("log", "board@back", "panel", "varnish")
    page = cot.did("handover", "cot").out
    (both,) = [line for line in page.splitlines() if "board" in line and "to be packed" in line]
    assert both.startswith("caution: board, panel: not to be packed before")


@pytest.mark.parametrize(
    ("kind", "said"),
    [
        ("conversion-varnish", "caution: mix-1 still stands open; empty it, do not close it tight"),
        ("bleach-two-part", "caution: mix-1 still stands open; empty it, never close it"),
    ],
)
def test_a_mix_that_reacts_is_not_told_to_be_shut(cot: Finishlog, kind: str, said: str):
    """What hardens may grow hot, and bleach bursts a closed can (`leave` says the same)."""
    cot.did("part", "new", "cot/board")
    cot.did("product", "new", "two", "--class", kind)
    cot.did("mix", "two", "a:100ml", "b:100ml")
    cot.did("log", "board", "two")
    page = cot.did("handover", "cot").out
    assert said in page
    assert "keep it shut" not in page


def test_its_rags_stay_on_the_screen_until_they_are_dealt_with(cot: Finishlog):
    cot.did("log", "feet", "varnish")
    cot.did("handover", "cot")
    assert "OPEN RAGS" in cot.did("ready").out
    cot.did("rags", "gone")
    assert "OPEN RAGS" not in cot.did("ready").out


def test_when_all_is_behind_and_dry_nothing_is_said_against_it(cot: Finishlog):
    assert acts(cot.did("handover", "feet", "--json"))["warnings"] == []


def test_twice_handed_over_is_said(cot: Finishlog):
    cot.did("handover", "cot")
    assert "handed over already" in cot.did("handover", "cot").out


def test_some_pieces_may_go_alone(cot: Finishlog):
    cot.did("handover", "rails:1-2")
    assert "cot/rails:3" in cot.did("ready").out
    assert "rails:1" not in cot.did("ready").out


def test_it_is_taken_back_like_any_act(cot: Finishlog):
    before = cot.did("ready").out
    cot.did("handover", "cot")
    cot.did("undo")
    assert cot.did("ready").out == before


def test_a_repair_brings_the_whole_piece_back_until_it_goes_again(cot: Finishlog):
    cot.did("handover", "cot")
    cot.did("log", "rails:1", "scuff")
    assert "cot/rails:1" in cot.did("ready").out
    cot.did("handover", "rails:1")
    assert "cot" not in cot.did("ready").out.replace("varnish (dust and sander bag): cot", "")


@pytest.mark.parametrize(
    "words", [["review", "rails", "good"], ["photo", "rails", "x.jpg"], ["check", "rails", "dry"]]
)
def test_words_about_it_leave_it_where_it_is(cot: Finishlog, words: list[str]):
    cot.did("handover", "cot")
    cot.did(*words)
    assert "cot" not in cot.did("ready").out


def test_a_project_archived_with_it_is_offered(cot: Finishlog):
    assert "finishlog project archive cot" in cot.did("handover", "cot").out
    cot.did("project", "archive", "cot")
    assert cot.did("review", "cot/rails", "fair", "-t", "a ring", now="2027-10-20T18:00:00+00:00")
    assert "a ring" in cot.did("past", "beech").out


def test_the_card_fits_on_paper(cot: Finishlog):
    for line in cot.did("handover", "cot", "--card", "-v").out.splitlines():
        assert len(line) <= 80, line


def test_the_card_alone_records_nothing(cot: Finishlog):
    before = cot.database.read_bytes()
    cot.did("handover", "cot", "--card")
    assert cot.database.read_bytes() == before


def test_every_date_is_a_date_with_its_year(cot: Finishlog):
    """A card is read weeks later: no `now`, no `tomorrow`."""
    dates = section(cot.did("handover", "feet", "--card").out, "NOT BEFORE")
    assert "fully hard" in dates
    assert all(line.endswith("2026") for line in dates.splitlines())


def test_the_last_part_governs_the_whole_piece(cot: Finishlog):
    """By the LAST coated part, not the average and not the first."""
    card = acts(cot.did("handover", "cot", "--card", "--json"))
    hard = {p["label"]: p["dates"][-1]["high"] for p in card["parts"]}
    assert card["dates"][-1]["high"] == max(hard.values()) == hard["feet ×4"]
    assert card["last_coat"] == "2026-09-02T19:00:00Z"


def test_what_is_on_it_stands_in_plain_words_layer_by_layer(cot: Finishlog):
    on_it = section(cot.did("handover", "rails", "--card").out, "ON IT")
    assert on_it == "rails ×3 (beech): oil polyurethane\nlast coat Tue 1 Sep 2026"
    told = section(cot.did("handover", "rails", "--card", "-v").out, "ON IT")
    assert "oil polyurethane (varnish)" in told


def test_a_child_gets_the_conservative_end_and_a_nose(cot: Finishlog):
    """Forum advice runs from 24 h to 30 days; full hardness of the last part is later still."""
    page = section(cot.did("handover", "cot", "--card").out, "FOR CHILD")
    assert "and not while it smells of anything" in page
    assert "advice runs from 1 to 30 days" in page
    assert "not smelt since the last coat" in page
    use = acts(cot.did("handover", "cot", "--card", "--json"))["for_whom"][0]
    assert use["not_before"] >= "2026-10-02T19:00:00Z"
    cot.did("check", "rails", "no-smell")
    cot.did("check", "feet", "no-smell")
    assert "no smell was found" in cot.did("handover", "cot", "--card").out


def test_nothing_on_the_card_is_called_safe(cot: Finishlog):
    page = cot.did("handover", "cot", "--card").out
    assert "safe from" not in page
    assert "safety data sheet" in page
    assert "doctor" in page


def test_never_and_not_before_are_two_lists(cot: Finishlog):
    page = cot.did("handover", "cot", "--card").out
    never = section(page, "NEVER, HOWEVER OLD IT IS")
    assert "rubber" in never
    assert "2026" not in never


def test_felt_hard_is_no_test(cot: Finishlog):
    page = " ".join(section(cot.did("handover", "cot", "--card").out, "IS IT HARD?").split())
    assert "felt hard is no test" in page
    assert "no smell" in page
    assert "Thumbnail" in page


def test_a_failed_check_takes_every_date_back(cot: Finishlog):
    cot.did("check", "feet", "prints")
    dates = section(cot.did("handover", "feet", "--card").out, "NOT BEFORE")
    assert "no date: still prints when by its class it might be fully hard" in " ".join(
        dates.split()
    )
    assert "2026" not in dates


def test_air_that_was_not_read_is_said_on_the_card(tmp_path: Path):
    program = Finishlog(tmp_path)
    program.did("product", "new", "oil", "--class", "hardwax-oil")
    program.did("part", "new", "tray/tray")
    program.did("log", "tray/tray", "oil")
    assert "by label time only" in program.did("handover", "tray/tray", "--card").out


def test_whom_it_is_for_can_be_changed(cot: Finishlog):
    cot.did("project", "edit", "cot", "--for", "anyone")
    assert "FOR CHILD" not in cot.did("handover", "cot", "--card").out
    cot.did("project", "edit", "cot", "--for", "food")
    assert "FOR FOOD" in cot.did("handover", "cot", "--card").out
    assert "for: food, was anyone" in cot.did("history", "rails").out


def test_a_hand_over_may_be_amended(cot: Finishlog):
    act = acts(cot.did("handover", "cot", "--json"))["act"]
    cot.did("amend", str(act), "--at", "yesterday 12:00", "--note", "by cart")
    assert "by cart" in cot.did("on", "rails").out


def test_a_part_of_the_projects_name_goes_first(cot: Finishlog):
    cot.did("part", "new", "bed/cot")
    assert acts(cot.did("handover", "cot", "--card", "--json"))["parts"][0]["label"] == "cot"


@pytest.fixture
def with_board(cot: Finishlog) -> Finishlog:
    """The cot with a sample board: one coat, no steps, so the same coat again is always due."""
    cot.did("part", "new", "cot/sample", "--board", "--species", "beech")
    cot.did("log", "cot/sample", "varnish", "--at", "2026-09-02 19:30")
    assert "cot/sample" in cot.did("ready").out
    return cot


def test_a_board_whose_piece_left_asks_for_nothing_and_is_still_found(with_board: Finishlog):
    assert "cot/sample stays in the shop" in with_board.did("handover", "cot").out
    for question in (["ready"], ["ready", "-v"], ["leave"], ["plan"]):
        assert "sample" not in with_board.did(*question).out
    for later in ("2027-01-20T18:00:00+00:00", "2027-10-20T18:00:00+00:00"):
        assert "sample" not in with_board.did("ready", now=later).out
    assert "cot/sample" in with_board.did("part", "list").out
    assert "kept in the shop" in with_board.did("on", "cot/sample").out


def test_a_board_stays_on_the_screen_while_any_of_its_piece_is_here(with_board: Finishlog):
    with_board.did("handover", "rails")
    assert "cot/sample" in with_board.did("ready").out


def test_a_board_with_work_due_stays_on_the_screen(with_board: Finishlog):
    with_board.did("part", "steps", "cot/sample", "--as", "twice")
    with_board.did("handover", "cot")
    assert "cot/sample" in with_board.did("ready").out


def test_a_new_coat_on_a_kept_board_brings_it_back(with_board: Finishlog):
    with_board.did("handover", "cot")
    with_board.did("log", "cot/sample", "varnish", now="2026-10-21T18:00:00+00:00")
    assert "cot/sample" in with_board.did("ready", now="2026-10-21T19:00:00+00:00").out


def test_the_piece_coming_back_brings_its_board_back(with_board: Finishlog):
    with_board.did("handover", "cot")
    with_board.did("log", "rails:1", "scuff", now="2026-10-21T18:00:00+00:00")
    assert "cot/sample" in with_board.did("ready", now="2026-10-21T19:00:00+00:00").out


SIDEBOARD = """
10-01T18:00 product new topcoat --class waterborne-clear
10-01T18:00 product new sealer --class shellac-2lb
10-01T18:00 product new oil --class hardwax-oil
10-01T18:00 product new varnish --class oil-polyurethane
10-01T18:00 product new wax --class paste-wax
10-01T18:00 part new {name}/top --species ash
10-01T18:00 part new {name}/legs -n 4 --species ash
10-01T18:00 part new {name}/doors -n 2 --species cherry
10-01T18:00 part new {name}/shelves -n 3 --species cherry
10-01T18:00 air 21C 50%
10-01T18:00 log {name}/top sealer
10-01T18:00 log {name}/legs oil
10-02T18:00 log {name}/top topcoat
10-02T18:00 log {name}/doors {name}/shelves varnish
10-03T18:00 log {name}/top topcoat
10-03T18:10 log {name}/shelves wax
"""
LONG = "sideboard-for-the-long-hall-of-the-old-house-behind-the-mill"


def sideboard(folder: Path, name: str, until: int = 30) -> Finishlog:
    """An invented piece of four parts with four finishes, for a child: the longest card."""
    program = Finishlog(folder)
    program.did("project", "new", name, "--for", "child", now="2026-10-01T17:00:00+00:00")
    for line in SIDEBOARD.strip().splitlines():
        when, *words = line.split()
        program.did(*(w.replace("{name}", name) for w in words), now=f"2026-{when}:00+00:00")
    for day in range(4, until + 1):
        program.did("air", "21C", "50%", now=f"2026-10-{day:02}T18:00:00+00:00")
    return program


@pytest.mark.parametrize("days", [4, 14, 30])
def test_the_card_of_four_parts_with_four_finishes_is_one_page(tmp_path: Path, days: int):
    """One sheet, 60 lines of 80 signs and 400 words: whoever gets the piece reads it all."""
    program = sideboard(tmp_path, "hall", until=days)
    program.did("handover", "hall", now=f"2026-10-{days:02}T18:00:00+00:00")
    card = program.did("handover", "hall", "--card", now=f"2026-10-{days:02}T18:00:00+00:00").out
    assert len(card.splitlines()) <= 60
    assert max(map(len, card.splitlines())) <= 80
    assert len(card.split()) <= 400
    for part in ("top (ash)", "legs ×4 (ash)", "doors ×2 (cherry)", "shelves ×3 (cherry)"):
        assert part in card


def test_a_long_name_is_wrapped_not_cut(tmp_path: Path):
    card = sideboard(tmp_path, LONG).did(
        "handover", f"{LONG}/top", f"{LONG}/legs", "--card", now="2026-10-14T18:00:00+00:00"
    )
    title = f"CARE CARD: {LONG}/top, {LONG}/legs ×4 ON IT"
    assert " ".join(card.out.split()).startswith(title)
    assert max(map(len, card.out.splitlines())) <= 80


def test_a_date_that_is_past_is_told_as_reached(tmp_path: Path):
    program = sideboard(tmp_path, "hall")

    def dates(day: str) -> str:
        page = program.did("handover", "hall", "--card", now=f"{day}T18:00:00+00:00").out
        return section(page, "NOT BEFORE")

    assert "reached" not in dates("2026-10-04")
    mid = dates("2026-10-20").splitlines()
    assert mid[0].startswith("packing ")
    assert "reached Sun 11 Oct 2026" in mid[0]
    (later,) = mid[1:]
    assert later.startswith("light use, normal use, fully hard"), "a child waits for the hard film"
    assert "reached" not in later
    (all_of_it,) = dates("2027-01-20").splitlines()
    assert all_of_it.startswith("packing, light use, normal use, fully hard")
    assert "reached" in all_of_it


def test_what_holds_on_the_same_parts_stands_in_one_block(tmp_path: Path):
    page = sideboard(tmp_path, "hall").did(
        "handover", "hall", "--card", now="2026-10-14T18:00:00+00:00"
    )
    never = section(page.out, "NEVER, HOWEVER OLD IT IS")
    assert never.count("on top, doors, shelves:") == 1
    block = never.partition("on top, doors, shelves:")[2].partition("\non ")[0]
    for what in ("soft plastic", "oven", "oily polish", "scouring"):
        assert what in block


def test_v_tells_the_dates_of_each_part_and_the_sources(tmp_path: Path):
    page = sideboard(tmp_path, "hall").did(
        "handover", "hall", "--card", "-v", now="2026-10-14T18:00:00+00:00"
    )
    for part in ("top", "legs ×4", "doors ×2", "shelves ×3"):
        assert f"NOT BEFORE: {part}\n" in page.out
    assert "[common practice]" in " ".join(page.out.split())


def test_what_food_or_a_child_touches_stays_until_it_is_fully_hard(finisher: Finisher):
    """Advice before food differs from a day to 30 (facts: care); the film has its own hours."""
    finisher.types(
        "2026-03-02 08:00",
        "room new shop --night 20C",
        "air 23C 50%",
        "product new tung --class tung-oil",
        "project new ladles --for food",
        "part new ladles/ladle --species maple",
        "part new desk/leg --species maple",
        "log ladle leg tung",
    )
    finisher.types("2026-03-02 08:20", "log ladle leg wipe")
    finisher.types("2026-03-20 08:00", "air 23C 50%")
    said = finisher.types("2026-03-20 08:00", "handover ladle leg")
    (stop,) = [line for line in said.splitlines() if "fully hard" in line and "stop: " in line]
    assert stop.startswith("stop: ladle: not before ")
    assert "it is for food: tung has to be fully hard" in stop


def test_fully_hard_it_goes_without_a_word(finisher: Finisher):
    finisher.types(
        "2026-03-02 08:00",
        "room new shop --night 20C",
        "air 23C 50%",
        "product new tung --class tung-oil",
        "project new cots --for child",
        "part new cots/rail --species maple",
        "log rail tung",
    )
    finisher.types("2026-03-02 08:20", "log rail wipe")
    assert "has to be fully hard" not in finisher.types("2026-08-20 08:00", "handover rail")
