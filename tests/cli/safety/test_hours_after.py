"""What is asked before the light goes out, and what is not asked any more; the shop is invented.

Filters and paper wet with an oxidising finish are seen to like oily rags the same day (29 CFR
1910.107); that a cartridge fills from the air of the shop is common practice.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
room new shed --night 20C --has none
air 21C 50%
product new spar --class spar-varnish
product new lac --class lacquer-sprayed
product new clear --class waterborne-clear
part new job/gate --species oak
part new job/flap --species oak
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now="2026-06-01T17:00:00+00:00").played(SHOP)


def reads(shop: Finishlog, line: str, at: str = "01T18:00") -> str:
    said = shop.did(*line.split(), now=f"2026-06-{at}:00+00:00").out
    return re.sub(r"\s+", " ", said)


def test_what_a_gun_left_in_filters_is_an_item_that_water_alone_holds(shop: Finishlog):
    said = reads(shop, "log gate spar --method spray")
    assert "rags 1: spar (filters, masking paper, overspray), open since 19:00: into water" in said
    assert "not yet:" in reads(shop, "leave", "01T18:30")
    assert "a heap, spread or not: into water" in reads(shop, "rags spread", "01T18:40")
    reads(shop, "rags water", "01T18:50")
    assert "not yet:" not in reads(shop, "leave", "01T19:00")
    assert "finishlog rags gone 1, or water 1" in reads(shop, "ready", "09T18:00")


def test_cloths_lie_apart_from_what_the_gun_left(shop: Finishlog):
    reads(shop, "log gate spar --method spray")
    assert "rags 2: spar, open since" in reads(shop, "log flap spar --method brush")


def test_sprayed_without_oil_no_filter_heats(shop: Finishlog):
    for product in ("lac", "clear"):
        assert "rags " not in reads(shop, f"log gate {product} --method spray")
    assert "heat like rags" not in reads(shop, "leave", "01T18:30")


def test_a_gun_that_was_cleaned_is_not_asked_for_and_another_is(shop: Finishlog):
    reads(shop, "log gate lac --with gun1")
    assert "gun, cup and needle clean?" in reads(shop, "leave", "01T18:10")
    reads(shop, "clean gun1", "01T18:20")
    assert "gun, cup and needle clean?" not in reads(shop, "leave", "01T18:30")
    reads(shop, "log flap lac --with gun1", "01T18:40")
    assert "gun, cup and needle clean?" in reads(shop, "leave", "01T18:50")
    reads(shop, "clean gun2", "01T19:00")
    assert "gun, cup and needle clean?" in reads(shop, "leave", "01T19:10")


def test_a_cartridge_goes_into_its_bag_where_there_was_vapour_for_it(shop: Finishlog):
    reads(shop, "respirator half opened --for organic-vapour")
    assert "mask" not in reads(shop, "leave", "01T18:10")
    reads(shop, "log gate lac", "01T18:20")
    assert "mask half: into a closed bag" in reads(shop, "leave", "01T18:30")
    reads(shop, "respirator half worn 1h --kept bag", "01T18:40")
    assert "mask" not in reads(shop, "leave", "01T18:50")


def test_a_filter_for_dust_and_a_coat_in_water_ask_for_no_bag(shop: Finishlog):
    reads(shop, "respirator dust opened --for particles")
    reads(shop, "log gate lac")
    assert "into a closed bag" not in reads(shop, "leave", "01T18:10")
    reads(shop, "respirator half opened --for organic-vapour", "03T18:00")
    reads(shop, "log flap clear", "03T18:10")
    assert "into a closed bag" not in reads(shop, "leave", "03T18:20")
