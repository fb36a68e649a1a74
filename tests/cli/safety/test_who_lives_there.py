"""Who lives where the air of a coat comes to: told once, heard before the work and after it.

Shops are invented. For how long advice runs is common practice, its range in `facts/data/people`.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
room new bench --kind attached
room new stair
room new nursery --kind dwelling --lives child
room new yard --kind outdoors
room edit stair --joined 'bench:door,nursery:gap'
room new aviary --lives bird
shop hours 'mon-sun 17:00-22:00'
air 23C 50% --room bench
air 23C 50% --room aviary
product new conv --class conversion-varnish
product new varnish --class alkyd-varnish
product new clear --class waterborne-clear
product new board --class mineral-oil
product new 'hazelnut oil' --class tung-oil
part new job/door --species beech --room bench
part new job/seat --species beech --room yard
part new job/perch --species beech --room aviary
part new salad-bowl/inside --species beech --room yard
"""
STAYS = "a child out of the house while it goes on, sleeping elsewhere after it"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now="2026-06-01T17:00:00+00:00").played(SHOP)


def reads(shop: Finishlog, *line: str, at: str = "01T18:00") -> str:
    said = shop.did(*line, now=f"2026-06-{at}:00+00:00").out
    return re.sub(r"\s+", " ", said)


def test_two_openings_away_a_child_is_told_of_before_and_after_the_coat(shop: Finishlog):
    chosen = reads(shop, "steps", "new", "hard", "conv")
    assert f"people: bench, stair and nursery: {STAYS}; the doctor decides" in chosen
    assert "people:" not in reads(shop, "steps", "new", "again", "conv", "conv")
    coat = reads(shop, "log", "door", "conv", "--method", "brush")
    assert f"people: bench: {STAYS}: back to smell not before Mon 8 Jun 2026 19:00" in coat
    assert "everybody else out of the room: back to smell not before Thu 4 Jun 2026" in coat
    for screen in ("ready", "leave"):
        assert STAYS in reads(shop, screen, at="01T20:00")


def test_the_same_evening_says_it_once_and_another_evening_moves_it(shop: Finishlog):
    reads(shop, "log", "door", "varnish")
    assert "people:" not in reads(shop, "log", "door", "varnish", at="01T19:00")
    assert "Thu 11 Jun 2026" in reads(shop, "log", "door", "varnish", at="04T18:00")


def test_a_child_is_not_told_of_for_what_gives_off_nothing_or_stands_outdoors(shop: Finishlog):
    for line in (("log", "door", "clear"), ("log", "seat", "varnish"), ("log", "door", "board")):
        said = reads(shop, *line)
        assert "people:" not in said
        assert "a child" not in said
    assert "STAYS OUT" not in reads(shop, "ready")
    assert "people:" not in reads(shop, "steps", "new", "oiled", "board")


def test_a_bird_is_told_of_for_water_too_and_not_for_mineral_oil(shop: Finishlog):
    said = reads(shop, "log", "perch", "clear")
    assert "they leave the house" not in said
    assert "people: aviary: a bird out of the house from the first coat on, waterborne too" in said
    assert "everybody else" in said
    assert "people:" not in reads(shop, "steps", "new", "oiled", "board")


def test_nobody_told_of_is_silent_and_a_week_later_so_is_everything(shop: Finishlog):
    reads(shop, "log", "door", "varnish")
    assert "STAYS OUT" in reads(shop, "ready", at="08T12:00")
    assert "STAYS OUT" not in reads(shop, "ready", at="10T18:00")
    reads(shop, "room", "edit", "nursery", "--lives", "none", at="10T18:10")
    assert "people:" not in reads(shop, "log", "door", "varnish", at="10T18:20")


def test_cold_is_never_sooner(shop: Finishlog):
    warm = shop.did("log", "door", "varnish", "--json", now="2026-06-01T18:00:00+00:00").document
    reads(shop, "air", "12C", "60%", "--room", "bench", at="01T18:30")
    cold = shop.did("ready", "--json", now="2026-06-01T19:00:00+00:00").document
    looks = [
        {line["out"]["who"]: line["out"]["look"] for line in found["answer"]["people"]}
        for found in (warm, cold)
    ]
    assert looks[0].keys() == looks[1].keys() == {"child", None}
    assert all(looks[1][who] > looks[0][who] for who in looks[0])
    reads(shop, "air", "5C", "60%", "--room", "bench", at="01T19:10")
    assert "no day can be said in this air" in reads(shop, "ready", at="01T19:20")


def test_the_first_coat_of_what_food_touches_says_so_and_names_the_nut(shop: Finishlog):
    first = reads(shop, "log", "salad-bowl/inside", "hazelnut oil")
    assert "For food surfaces use a finish that its maker calls suitable" in first
    assert "may harm the allergic" in first
    assert first.count("safety:") == 3
    second = reads(shop, "log", "salad-bowl/inside", "hazelnut oil", at="03T18:00")
    assert "For food surfaces" not in second
    gone = reads(shop, "handover", "salad-bowl", at="04T18:00")
    assert "hazelnut oil is pressed from nuts" in gone
    assert "unsaid to whoever is allergic to nuts: oil of nuts is in it" in gone
    assert "stop: " in gone


def test_what_is_for_anybody_and_of_no_nut_says_nothing_of_use(shop: Finishlog):
    said = reads(shop, "log", "seat", "varnish") + reads(shop, "handover", "job/seat")
    assert "food" not in said
    assert "nut" not in said


def test_an_opening_that_is_left_out_is_named(shop: Finishlog):
    said = reads(shop, "room", "edit", "stair", "--joined", "nursery:door")
    assert "leads to: nursery by door; leads no more to: bench" in said
    again = reads(shop, "room", "edit", "stair", "--joined", "nursery:door,bench:door")
    assert "no more" not in again
