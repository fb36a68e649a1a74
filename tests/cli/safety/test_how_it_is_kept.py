"""How much of what burns is kept: 29 CFR 1910.106 (read); the finishes are invented."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

KEPT = "HOW IT IS KEPT"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    lines = "product new quick --class lacquer-sprayed\nproduct new block --class mineral-oil\n"
    return Finishlog(tmp_path).played(lines + "product new clear --class waterborne-clear")


def test_of_what_burns_it_is_told_last_and_leaves_the_word_to_the_code(shop: Finishlog):
    page = shop.did("safety", "quick").out
    assert page.index("FLAMMABLE") < page.index("GENERAL") < page.index(KEPT)
    told = page[page.index(KEPT) :]
    assert "about -20 °C, by acetone in it: its sheet has its own" in told
    assert "at most 454 L at a US workplace" in told
    assert "at most 227 L at a US workplace" in told
    assert "your fire code says how much" in told


def test_in_the_units_of_the_shop(shop: Finishlog):
    shop.did("settings", "volume", "gal")
    shop.did("settings", "temperature", "F")
    page = shop.did("safety", "alkyd varnish").out
    assert "about 102 °F, by mineral spirits in it" in page
    assert "at most 120 gal at a US workplace" in page
    assert "at most 60 gal at a US workplace" in page


@pytest.mark.parametrize("about", ["block", "clear", "oak", "rags"])
def test_of_what_holds_no_solvent_nothing_is_told(shop: Finishlog, about: str):
    assert KEPT not in shop.did("safety", about).out


def test_what_it_rests_on_is_listed(shop: Finishlog):
    page = shop.did("safety", "--sources").out
    assert "in one cabinet: category 1, 2, 3" in page
    assert "29 CFR 1910.106(d)(3)(i)" in page
