"""A check, a fault and its mending at a place of a face: said, kept, shown, put right."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog
from test_refusals import refused

from finishlog import errors

# An invented chest.
SHOP = """
room new shop --night 18C
product new varnish --class alkyd-varnish
part new chest/lid -n 2 --species oak --face front
log lid varnish
"""
MORNING, NEXT, LATER = (f"2026-11-{day}T08:00+00:00" for day in (20, 22, 23))


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP, now=MORNING)


def tacky(shop: Finishlog, where: str = "left edge") -> int:
    said = shop.did("check", "lid:1", "tacky", "--where", where, "--json", now=NEXT)
    act: int = said.document["answer"]["act"]
    return act


@pytest.mark.parametrize("question", ["ready", "when", "why", "on", "history"])
def test_every_screen_names_the_place(shop: Finishlog, question: str):
    tacky(shop)
    parts = () if question == "ready" else ("lid:1",)
    assert "tacky (left edge)" in shop.did(question, *parts, now=LATER).out


def test_a_pass_elsewhere_is_kept_and_what_stands_is_said(shop: Finishlog):
    tacky(shop)
    said = shop.did("check", "lid:1", "dry", "--where", "middle", now=LATER).out
    assert "dry (middle)" in said
    assert "still stands elsewhere: tacky (left edge)" in said
    assert "proves touch, dust-free, no more" in said
    assert "check again" in said


def test_one_spot_does_not_answer_what_was_found_all_over(shop: Finishlog):
    tacky(shop, "")
    said = shop.did("check", "lid:1", "dry", "--where", "middle", now=LATER).out
    assert "still stands elsewhere: tacky (all over)" in said
    assert "tacky" not in shop.did("check", "lid:1", "dry", now=LATER).out


@pytest.mark.parametrize("where", [["--where", "The left-edge"], []])
def test_there_or_all_over_it_is_answered(shop: Finishlog, where: list[str]):
    tacky(shop)
    said = shop.did("check", "lid:1", "dry", *where, now=LATER).out
    assert "elsewhere" not in said
    assert "tacky" not in shop.did("on", "lid:1", now=LATER).out


def test_the_place_is_put_right(shop: Finishlog):
    act = tacky(shop)
    shop.did("amend", str(act), "--where", "  right edge ")
    said = shop.did("on", "lid", now=LATER).out
    assert "tacky (right edge)" in said
    assert "left edge" not in said
    shop.did("amend", str(act), "--where", "")
    assert "tacky (" not in shop.did("on", "lid", now=LATER).out


def test_the_place_of_a_fault_is_put_right(shop: Finishlog):
    shop.did("fault", "lid", "dent", "--where", "front", now=NEXT)
    act = shop.did("on", "lid:1", "--json").document["answer"][0]["standing"]["faults"][0]["act"]
    shop.did("amend", str(act), "--where", "by the hinge")
    assert "dent (by the hinge)" in shop.did("on", "lid").out


@pytest.mark.parametrize("work", ["sand", "wipe"])
def test_work_that_is_no_mending_has_no_place(shop: Finishlog, work: str):
    act = shop.did("log", "lid", work, "--json", now=NEXT).document["answer"]["act"]
    refused(shop("amend", str(act), "--where", "left edge"), errors.USAGE, "no where to amend")


def test_two_of_a_kind_are_two_and_one_is_mended(shop: Finishlog):
    for corner in ("near corner", "far corner"):
        shop.did("fault", "lid:2", "dent", "--where", corner, now=NEXT)
    said = shop.did("fault", "lid:2", "mended", "--where", "far corner", now=LATER).out
    assert "mended, dent (far corner)" in said
    assert "still stands elsewhere: dent (near corner)" in said
    assert "until a check answers" not in said
    history = shop.did("history", "lid").out
    assert "mend (far corner)" in history
    assert "dent (near corner), dent (far corner)" not in shop.did("ready", now=LATER).out
    said = shop.did("fault", "lid:2", "mended", now=LATER).out
    assert "mended, dent (near corner)" in said


def test_a_place_where_nothing_stands_names_those_that_do(shop: Finishlog):
    shop.did("fault", "lid:2", "dent", "--where", "far corner", now=NEXT)
    wrong = shop("fault", "lid:2", "mended", "--where", "for corner", now=LATER)
    refused(wrong, errors.NO_SUCH_THING, "dent (far corner)")


def test_past_tells_and_finds_it_by_its_place(shop: Finishlog):
    tacky(shop, "under the batten")
    assert "tacky (under the batten)" in shop.did("past", "oak", now=LATER).out
    assert "chest" in shop.did("past", "batten", now=LATER).out


def test_it_goes_out_of_the_door_with_its_place(shop: Finishlog):
    tacky(shop)
    assert "tacky (left edge)" in shop.did("handover", "chest", now=LATER).out
