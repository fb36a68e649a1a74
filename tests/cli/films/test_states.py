"""What the shop does with a piece while nothing is coated: kept how, since when, good until when.

Moisture in air: USDA Wood Handbook equation 4-5; movement: its table 13-5. The days are common
practice (facts/data/kept.toml, preparation.toml).
"""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog
from test_refusals import refused

from finishlog import errors

# An invented table. Times as they are typed, in a shop at 21 °C and 38 %, with a dry attic.
SHOP = """
2026-10-01T09:00 room new shop --night 14C
2026-10-01T09:00 room new attic --night 14C
2026-10-01T09:00 shop hours 'mon-fri 9:00-18:00'
2026-10-01T09:00 product new varnish --class alkyd-varnish
2026-10-01T09:00 product new clear --class waterborne-clear
2026-10-01T09:00 steps new varnished 'varnish*3'
2026-10-01T09:00 steps new cleared sand 'clear*2'
2026-10-01T09:00 part new table/top --species 'red oak' --steps varnished
2026-10-01T09:00 part new table/leaf --species 'red oak' --steps cleared
2026-10-01T09:00 air 21C 38% --room shop
2026-10-01T09:00 air 21C 22% --room attic
2026-10-01T10:00 log leaf sand --grit P150
2026-10-01T11:00 log top varnish
2026-10-12T09:00 air 21C 38% --room shop
"""
NOW, LATER = "2026-10-12T10:00+01:00", "2026-10-14T10:00+01:00"
STUCK = "prints and sticks in a stack"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP, now="{}:00+01:00")


@pytest.mark.parametrize("question", [("ready",), ("on", "top"), ("why", "top")])
def test_how_it_is_kept_is_on_every_screen_and_when_to_look(
    shop: Finishlog, question: tuple[str, ...]
):
    shop.did("log", "top", "stack", now=NOW)
    assert (
        "stacked since 10:00, in shop; look at it by Tue 10:00" in shop.did(*question, now=NOW).out
    )
    assert STUCK in shop.did(*question, now=LATER).out


def test_a_look_that_found_it_sound_gives_another_day(shop: Finishlog):
    shop.did("log", "top", "stack", now=NOW)
    assert STUCK in shop.did("leave", now=LATER).out
    shop.did("check", "top", "no-print", now=LATER)
    assert STUCK not in shop.did("leave", now=LATER).out
    assert "look at it by Thu 10:00" in shop.did("on", "top", now=LATER).out


@pytest.mark.parametrize("how", ["on stickers", "hanging"])
def test_what_stands_in_moving_air_asks_for_no_look(shop: Finishlog, how: str):
    shop.did("log", "top", "store", "--kept", how, now=NOW)
    assert "look at it" not in shop.did("ready", now=LATER).out
    assert "kept" not in shop.did("leave", now=LATER).out


def test_a_varnish_that_was_shut_in_young_is_tested_before_its_next_coat(shop: Finishlog):
    shop.did("aside", "top", "--kept", "cupboard", now=NOW)
    said = shop.did("ready", now=LATER).out
    assert "stored shut in since Mon 10:00, in shop" in said
    shop.did("resume", "top", now=LATER)
    assert (
        "stored shut in for 2 d while varnish was young" in shop.did("ready", "-v", now=LATER).out
    )
    shop.did("check", "top", "no-print", now=LATER)
    assert "while varnish was young" not in shop.did("ready", "-v", now=LATER).out


def test_only_what_keeps_it_says_how(shop: Finishlog):
    refused(
        shop("log", "top", "scuff", "--kept", "flat", now=NOW),
        errors.USAGE,
        "scuff does not say how it is kept",
        "finishlog log PART store --kept flat",
    )
    refused(
        shop("log", "top", "store", "--kept", "sideways", now=NOW),
        errors.USAGE,
        "'sideways' is no way to keep it",
        "stickers",
    )


@pytest.mark.parametrize("question", ["on", "when", "why"])
def test_a_sanding_says_until_when_it_is_good(shop: Finishlog, question: str):
    at = "2026-10-03T10:00+01:00"
    assert "sanded P150 Thu 10:00: good until Wed 7 Oct" in shop.did(question, "leaf", now=at).out


def test_the_plan_says_why_it_goes_over_bare_wood_again(shop: Finishlog):
    planned = shop.did("plan", now=NOW).out
    assert "scuff     table/leaf" in planned
    assert "sanded too long ago: 11 d, it holds 7 d" in planned


STORED = """
2026-10-12T10:00 move leaf top attic
2026-11-05T09:00 air 21C 22% --room attic
2026-11-05T09:00 air 21C 38% --room shop
2026-11-05T10:00 move leaf top shop
"""
BACK = "2026-11-05T10:00+01:00"


def test_wood_that_stood_in_a_dry_attic_is_measured_before_its_coat(shop: Finishlog):
    shop.played(STORED, now="{}:00+01:00")
    said = shop.did("why", "leaf", now=BACK).out
    assert "from 7.4 to 4.8 %, 0.9 % of a flat-sawn width" in said
    assert "test first: its air took the wood from 7.4 to 4.8 %: measure it" in said
    shop.did("moisture", "leaf", "5%", now=BACK)
    assert "its air took" not in shop.did("why", "leaf", now=BACK).out


def test_under_a_film_it_is_a_caution_that_a_straightedge_answers(shop: Finishlog):
    shop.played(STORED, now="{}:00+01:00")
    shop.did("log", "top", "scuff", now=BACK)
    assert "bare tongues" in shop.did("log", "top", "varnish", now=BACK).out
    shop.did("undo", now=BACK)
    shop.did("check", "top", "flat", now=BACK)
    assert "bare tongues" not in shop.did("log", "top", "varnish", now=BACK).out


def test_a_face_finished_all_round_is_divided_late(shop: Finishlog):
    refused(
        shop("part", "edit", "top", "--face", "front=field,border", now=NOW),
        errors.USAGE,
        "finished all round, and has no front",
        "--face 'all round=field,border'",
    )
    shop.did("part", "edit", "top", "--face", "all round=field,border", now=NOW)
    shop.did("off", "top", "--face", "border", "--to", "bare", now=NOW)
    said = shop.did("on", "top", now=NOW).out
    field, border = said.split("table/top, all round/border")
    assert "coat 1   varnish" in field
    assert "in the white" in border


def test_what_was_stacked_too_young_is_looked_at_now(shop: Finishlog):
    shop.did("log", "top", "varnish", now=NOW)
    shop.did("log", "top", "stack", "--at", "5 min ago", now="2026-10-13T10:00+01:00")
    said = shop.did("leave", now="2026-10-13T10:01+01:00").out
    assert "look at it now: its film could not bear that yet" in said


@pytest.mark.parametrize(
    ("gauge", "told"),
    [
        # The gauge was read while it was sanded: no coat is on record anywhere.
        (("air 20C 38% --room shop", "air 21C 22% --room attic"), True),
        # Only the attic was ever read: what the wood held before nobody knows.
        (("air 21C 22% --room attic",), False),
    ],
)
def test_what_bare_wood_held_is_told_by_the_room_that_it_was_worked_in(
    tmp_path: Path, gauge: tuple[str, ...], told: bool
):
    lines = ["room new shop --night 14C", "room new attic --night 14C", *gauge]
    lines += ["product new clear --class waterborne-clear", "steps new c sand 'clear*2'"]
    lines += ["part new box/panel --species cherry --room shop --steps c", "log panel sand"]
    story = "\n".join(f"2026-10-01T10:00 {line}" for line in lines)
    story += "\n2026-10-01T11:00 move panel attic\n2026-10-15T10:00 air 21C 22% --room attic"
    story += "\n2026-11-10T09:00 air 21C 22% --room attic"
    bare = Finishlog(tmp_path).played(story, now="{}:00+01:00")
    ready = bare.did("ready", now="2026-11-10T10:00+01:00").out
    assert ("its air took the wood from 7.4 to 4.8 %" in ready) is told
