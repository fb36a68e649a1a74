"""What stands ready before a can is opened is said where it is chosen and where it is planned.

Once an evening, the most dangerous first, three things at most; again in another room, or sprayed.
Shops are invented. What they rest on: 29 CFR 1910.107 and NFPA's tip sheet on rags, the NIOSH
Pocket Guide (vapour), NIOSH alerts 96-111 and 2006-149 (isocyanate).
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
room new shed --night 17C
room new loft --night 17C
shop hours 'mon-sun 17:00-22:00'
air 20C 50% --room shed
air 20C 50% --room loft
product new clear --class waterborne-clear
product new varnish --class alkyd-varnish
product new shel --class shellac-2lb
product new duo --class waterborne-two-part
part new job/tray --species beech --room shed
part new job/lid --species beech --room loft
"""
RAGS = "a lidded metal can with water in it stands there for the rags"
FLAME = "pilots, heaters, smoking and motors out"
LUNGS = "gloves, sleeves, goggles; never sprayed without supplied air"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now="2026-06-01T17:00:00+00:00").played(SHOP)


def reads(shop: Finishlog, *line: str, day: int = 1) -> str:
    said = shop.did(*line, now=f"2026-06-{day:02}T18:00:00+00:00").out
    return re.sub(r"\s+", " ", said)


def test_steps_that_are_chosen_say_it_and_the_worst_stands_first(shop: Finishlog):
    said = reads(shop, "steps", "new", "hard", "sand", "duo", "varnish")
    assert "before you open it: duo: caution: gloves" in said
    assert said.index(LUNGS) < said.index(RAGS) < said.index(FLAME)
    assert said.count(FLAME) == 1


def test_the_same_evening_says_only_what_is_new_and_the_next_says_it_again(shop: Finishlog):
    assert FLAME in reads(shop, "steps", "new", "sealed", "shel")
    again = reads(shop, "steps", "new", "varnished", "shel", "varnish")
    assert RAGS in again
    assert FLAME not in again
    assert "before you open it" not in reads(shop, "steps", "new", "more", "varnish")
    assert FLAME in reads(shop, "steps", "new", "other", "shel", day=2)


def test_water_asks_nothing_and_what_was_met_this_month_is_silent(shop: Finishlog):
    assert "before you open it" not in reads(shop, "steps", "new", "wet", "sand", "clear")
    reads(shop, "log", "tray", "varnish")
    assert "before you open it" not in reads(shop, "steps", "new", "v", "varnish", day=9)
    assert "BEFORE" not in reads(shop, "steps", "check", "v", day=9)


def test_a_check_of_steps_and_the_plan_say_it_once(shop: Finishlog):
    reads(shop, "steps", "new", "two", "varnish", "scuff", "varnish")
    assert f"BEFORE YOU OPEN IT varnish {RAGS}; {FLAME}" in reads(shop, "steps", "check", "two")
    reads(shop, "part", "steps", "tray", "--as", "two")
    plan = reads(shop, "plan")
    assert plan.count(RAGS) == 1
    assert f"before varnish {RAGS}" in plan
    assert [line["hazard"] for line in shop.did("plan", "--json").document["answer"]["before"]] == [
        "self-heating",
        "flammable",
    ]


def test_a_plan_of_what_was_met_lately_is_silent(shop: Finishlog):
    reads(shop, "steps", "new", "two", "varnish", "scuff", "varnish")
    reads(shop, "part", "steps", "tray", "--as", "two")
    reads(shop, "log", "tray")
    assert " before varnish" not in reads(shop, "plan", day=3)


def test_another_room_and_a_gun_say_it_again(shop: Finishlog):
    reads(shop, "steps", "new", "one", "varnish", "scuff", "varnish")
    reads(shop, "part", "steps", "tray", "lid", "--as", "one")
    reads(shop, "log", "tray")
    loft = reads(shop, "ready", day=1)
    assert f"BEFORE YOU OPEN IT varnish {RAGS}" in loft
    reads(shop, "log", "lid")
    assert "BEFORE" not in reads(shop, "ready", day=1)
    reads(shop, "product", "new", "lac", "--class", "lacquer-sprayed")
    gun = reads(shop, "steps", "new", "gun", "lac", day=2)
    assert FLAME in gun


def test_a_project_in_a_file_says_it_once_of_all_that_it_brings(shop: Finishlog, tmp_path: Path):
    file = tmp_path / "chest.toml"
    file.write_text(
        'project = "chest"\n[products.polish]\nclass = "shellac-2lb"\n'
        '[steps]\nhard = ["sand", "varnish"]\nsealed = ["polish"]\n'
        '[parts.lid]\nspecies = "beech"\nsteps = "hard"\n',
        encoding="utf-8",
    )
    said = reads(shop, "project", "load", str(file))
    assert said.count("before you open it") == 1
    assert RAGS in said
    assert said.count(FLAME) == 1
    assert "before you open it" not in reads(shop, "project", "load", str(file))


def test_what_hurts_the_lung_is_a_caution_by_hand_too_until_it_was_met_or_a_mask_is_there(
    shop: Finishlog,
):
    """NIOSH alerts on isocyanate; acid-cured emissions. Said before the work, once a month."""
    shop.did("product", "new", "conv", "--class", "conversion-varnish")
    assert "conv: caution: exhaust outdoors" in reads(shop, "steps", "new", "cv", "conv")
    shop.did("respirator", "hood", "opened", "--for", "supplied-air")
    masked = reads(shop, "steps", "new", "masked", "duo", "conv", day=2)
    assert "duo: gloves" in masked
    assert "caution" not in masked
    reads(shop, "respirator", "hood", "gone", day=3)
    reads(shop, "log", "tray", "duo", "--method", "brush", day=3)
    assert "duo" not in reads(shop, "steps", "new", "again", "duo", day=4).split("before")[-1]
