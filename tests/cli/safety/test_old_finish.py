"""A piece that came in finished: the old finish is a layer of unknown age. All invented.

What sanding and stripping it must say is from 40 CFR 745 (lead in old paint; in the United States
homes built before 1978, elsewhere other dates): no open flame, no machine without HEPA exhaust,
people kept away, tested first. That nothing bonds over wax is common practice.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
room new shop --night 16C
product new sealer --class shellac-2lb
product new clear --class waterborne-clear --recoat 3h
steps new s sand sealer scuff clear
part new chair/frame --species oak --old-finish varnish --steps s
part new chair/seat -n 2 --species rosewood --old-finish wax --face front --face tenon:joint
part new chair/back --species oak --steps s
air 20C 50%
"""
TEN = "2026-11-20T10:00:00+00:00"
ELEVEN = "2026-11-20T11:00:00+00:00"
FOUR = "2026-11-20T16:00:00+00:00"
LEAD = "may hold lead"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now=TEN).played(SHOP)


def test_the_wood_is_not_in_the_white(shop: Finishlog):
    page = shop.did("on", "frame").out
    assert "an old varnish, age not known" in page
    assert "in the white" not in page
    assert "in the white" in shop.did("on", "back").out


def test_it_opens_no_rags_and_has_no_dates(shop: Finishlog):
    assert shop.did("rags", "--json").document["answer"] == []
    assert shop.did("when", "frame", "--json").document["answer"]["lines"][0]["stages"] == []
    for question in ("when", "why"):
        assert "an old varnish, age not known" in shop.did(question, "frame").out
        assert "in the white" not in shop.did(question, "frame").out


def test_sanding_it_says_what_it_must_and_bare_wood_is_left_alone(shop: Finishlog):
    page = shop.did("log", "frame", "sand", now=ELEVEN).out
    for words in ("test first", "no dry or power sanding", "no torch", "wet", "HEPA"):
        assert words in page, words
    assert "children and pregnant people away" in page
    assert "Local codes" in page
    assert LEAD not in shop.did("log", "back", "sand", now=ELEVEN).out


def test_ready_asks_for_the_test_before_the_sanding(shop: Finishlog):
    (line,) = [x for x in shop.did("ready").out.splitlines() if "chair/frame" in x]
    assert line.split()[:2] == ["test,", "sand"]
    assert LEAD in line


def test_stripping_it_says_what_it_must_and_leaves_bare_wood(shop: Finishlog):
    page = shop.did("off", "frame", "--to", "bare", now=ELEVEN).out
    assert "an old varnish off, bare wood" in page
    assert "Old finish may hold lead: test first" in page
    assert "no film is on record" not in page
    assert "in the white" in shop.did("on", "frame", now=ELEVEN).out
    assert LEAD not in shop.did("log", "frame", "sand", now=FOUR).out
    assert "underneath" not in shop.did("log", "frame", "sealer", now=FOUR).out


def test_taking_the_stripping_back_brings_the_old_finish_back(shop: Finishlog):
    shop.did("off", "frame", "--to", "bare", now=ELEVEN)
    shop.did("undo", now=ELEVEN)
    assert "an old varnish" in shop.did("on", "frame", now=ELEVEN).out


def test_a_coat_over_it_asks_for_a_test_until_a_scratch_holds(shop: Finishlog):
    first = shop.did("log", "frame", "sealer", now=ELEVEN).out
    assert "caution: frame: an old varnish of unknown age is underneath" in first
    shop.did("check", "frame", "holds", now="2026-11-20T14:00:00+00:00")
    shop.did("air", "20C", "50%", now=FOUR)
    assert "underneath" not in shop.did("log", "frame", "clear", "--scuffed", now=FOUR).out


def test_over_wax_only_a_coat_that_holds_is_an_answer(shop: Finishlog):
    shop.did("check", "seat", "holds", now=TEN)
    page = shop.did("log", "seat", "sealer", now=ELEVEN).out
    assert "nothing bonds over wax" in page
    assert "--washed" in page
    shop.did("check", "seat", "holds", now="2026-11-20T14:00:00+00:00")
    assert "nothing bonds" not in shop.did("log", "seat", "clear", "--scuffed", now=FOUR).out


def test_the_rules_of_the_wood_are_silent_while_it_is_covered(shop: Finishlog):
    """Rosewood is oily: bare it wants a solvent wipe, under an old finish it does not."""
    assert "solvent" not in shop.did("log", "seat", "clear", now=ELEVEN).out
    shop.did("part", "new", "chair/arm", "--species", "rosewood")
    assert "solvent" in shop.did("log", "arm", "clear", now=ELEVEN).out


def test_a_glue_face_has_none_of_it(shop: Finishlog):
    assert "old wax" not in shop.did("on", "seat@tenon").out


def test_it_is_on_the_care_card(shop: Finishlog):
    shop.did("log", "frame", "sealer", now=ELEVEN)
    page = " ".join(shop.did("handover", "chair", now=FOUR).out.split())
    assert "over an old varnish of unknown age (it may hold lead)" in page
    assert "seat ×2 (rosewood): an old wax of unknown age" in page


def test_it_can_be_told_later_and_taken_back(shop: Finishlog):
    shop.did("part", "edit", "back", "--old-finish", "paint")
    assert "an old paint" in shop.did("part", "show", "back").out
    shop.did("part", "edit", "back", "--old-finish", "none")
    assert "old paint" not in shop.did("part", "show", "back").out


@pytest.mark.parametrize("word", ["lacquer?", "", "old"])
def test_another_word_is_refused_with_those_there_are(shop: Finishlog, word: str):
    answer = shop("part", "new", "chair/arm", "--old-finish", word)
    assert answer.code == 2
    assert "varnish, paint, wax, unknown" in answer.err


def test_it_comes_in_with_a_project_file_and_a_difference_is_shown(shop: Finishlog):
    file = shop.folder / "desk.toml"
    file.write_text('project = "desk"\n[parts.top]\nold_finish = "unknown"\n')
    shop.did("project", "load", str(file))
    assert "an old finish" in shop.did("part", "show", "desk/top").out
    file.write_text('project = "desk"\n[parts.top]\nold_finish = "paint"\n')
    assert "--old-finish paint" in shop.did("project", "load", str(file)).out
