"""A can that settles, a gun with something in it: typed, asked, answered.

That flatting agent and pigment settle, that a can poured off unstirred is another mix, and what a
gun had in it last does to the next finish is common practice.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
01T08:00 product new satin --class waterborne-clear --sheen satin
01T08:00 product new oil --class oil-varnish-blend
01T08:00 product new nitro --class lacquer-sprayed
01T08:00 part new kitchen/doors --count 3 --species maple
01T08:00 part new desk/leg --species maple
01T08:00 part new desk/rail --species maple
01T08:00 can new tin --product satin --opened now
01T08:00 air 23C 50%
01T08:00 room night shop 18C
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now="2026-05-01T10:00+00:00").played(SHOP, now="2026-05-{}+00:00")


def test_stirring_is_asked_once_an_evening_and_answered(shop: Finishlog):
    asked = "was satin stirred?"
    assert asked in shop.did("log", "doors:1", "satin", "--from", "tin").out
    assert asked not in shop.did("log", "doors:2", "satin", "--from", "tin").out
    assert asked not in shop.did("log", "doors:3", "oil").out
    later = "2026-05-03T10:00+00:00"
    shop.did("can", "stirred", "tin", now=later)
    assert asked not in shop.did("log", "doors:1", "satin", "--from", "tin", now=later).out


def test_a_can_poured_from_unstirred_is_tried_on_a_card_and_lists_its_coats(shop: Finishlog):
    coat = shop.did("log", "doors:1", "satin", "--from", "tin", "--not-stirred").out
    assert "not stirred: its flatting agent settles" in coat
    left = "mixed otherwise than its label says"
    assert left in shop.did("log", "doors:2", "satin", "--from", "tin", "--stirred").out
    shown = shop.did("can", "show", "tin").out
    assert "kitchen/doors:1, 11:00, NOT STIRRED" in shown
    assert "kitchen/doors:2, 11:00, stirred" in shown
    assert "not stirred" in shop.did("why", "doors:1").out
    assert "not stirred" not in shop.did("why", "doors:2").out
    shop.did("can", "tested", "tin")
    assert left not in shop.did("can", "list").out


def test_what_a_gun_had_in_it_is_told_until_it_was_cleaned(shop: Finishlog):
    assert "in it last" not in shop.did("log", "leg", "oil", "--with", "gun1").out
    told = shop.did("log", "doors:1", "satin", "--with", "the Gun1, air line").out
    assert "Gun1 had oil in it last" in told
    assert "crater" in told
    shop.did("undo")
    shop.did("clean", "gun1")
    assert "in it last" not in shop.did("log", "doors:1", "satin", "--with", "gun1").out
    # Alike goes after alike, and another brush has had nothing in it.
    assert "in it last" not in shop.did("log", "doors:2", "satin", "--with", "gun1").out
    assert "in it last" not in shop.did("log", "rail", "nitro", "--with", "brush").out


def test_what_left_the_shop_is_still_in_the_gun(shop: Finishlog):
    shop.did("log", "leg", "oil", "--with", "gun1")
    shop.did("rags", "gone")
    shop.did("project", "archive", "desk")
    assert "gun1 had oil in it last" in shop.did("log", "doors:1", "satin", "--with", "gun1").out


def test_silicone_and_fisheyes_stay_in_a_gun_whatever_went_through_it_since(shop: Finishlog):
    shop.did("log", "leg", "nitro", "--with", "gun1", "--note", "with fisheye eliminator")
    shop.did("log", "rail", "nitro", "--with", "gun1")
    assert "silicone" in shop.did("log", "doors:1", "nitro", "--with", "gun1").out
    shop.did("clean", "gun1")
    shop.did("log", "doors:2", "nitro", "--with", "gun1")
    shop.did("fault", "doors:2", "fisheye")
    assert "made the fisheyes" in shop.did("log", "doors:3", "nitro", "--with", "gun1").out
