"""What an evening's coats come to in a room is summed as they are logged; the shop is invented.

The arithmetic is held to its sources in `tests/core/safety`; here is when it is said, and when not.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
room new shed --night 17C --size 6x4x2.5m --exhaust 300m3/h --has none
room new loft --night 17C --has none
shop hours 'mon-sun 17:00-22:00'
air 20C 50% --room shed
air 20C 50% --room loft
product new clear --class waterborne-clear
product new varnish --class alkyd-varnish
steps new three varnish scuff varnish scuff varnish
part new job/slats --count 6 --species beech --room shed --steps three
part new job/rail --species beech --room shed
part new job/lid --species beech --room loft
part new job/box --species beech --room loft
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now="2026-06-01T17:00:00+00:00").played(SHOP)


def reads(shop: Finishlog, line: str, hour: str = "01T18:00") -> str:
    said = shop.did(*line.split(), now=f"2026-06-{hour}:00+00:00").out
    return re.sub(r"\s+", " ", said)


def test_it_speaks_when_the_sum_passes_a_limit_and_not_before_or_again(shop: Finishlog):
    assert "this evening" not in reads(shop, "log slats:1-2 varnish --amount 40ml")
    assert "this evening" not in reads(shop, "log rail clear --amount 900ml")
    over = reads(shop, "log slats:3-6 varnish --amount 400ml", "01T18:30")
    assert "shed 60 m³, exhaust 300 m³/h, mixing 10, none told: 440 ml of varnish" in over
    assert "NOT ENOUGH AIR, over the limit of 15 minutes and the day's limit" in over
    assert "outdoors, fewer parts:" in over
    assert "in water: clear" in over
    assert "this evening" not in reads(shop, "log rail varnish --amount 5ml", "01T18:40")


def test_another_room_and_another_evening_begin_again(shop: Finishlog):
    reads(shop, "log slats varnish --amount 440ml")
    assert "440" not in reads(shop, "log lid varnish --amount 200ml")
    assert "this evening" not in reads(shop, "log slats varnish --amount 40ml", "03T18:00")


def test_a_room_of_no_known_size_is_told_of_once(shop: Finishlog):
    first = reads(shop, "log lid varnish --amount 200ml")
    assert "note: how big loft is was not told: what its air comes to is unknown" in first
    assert "finishlog room edit loft --size SIZE" in first
    assert "how big" not in reads(shop, "log box varnish --amount 200ml")
    assert "how big" not in reads(shop, "log rail varnish --amount 20ml")


def test_what_gives_off_nothing_or_was_not_measured_is_silent(shop: Finishlog):
    for line in ("log lid clear --amount 900ml", "log box varnish", "log slats varnish"):
        said = reads(shop, line)
        assert "this evening" not in said
        assert "how big" not in said


def test_it_is_said_in_the_units_of_the_person(shop: Finishlog):
    reads(shop, "settings volume qt")
    said = reads(shop, "log slats varnish --amount 1qt")
    assert "1 qt of varnish this evening" in said


def test_sprayed_no_figure_of_air_is_given(shop: Finishlog):
    said = reads(shop, "log slats varnish --method spray --amount 900ml")
    assert "m³/h" not in said
    assert "this evening" not in said


def test_an_amount_is_amended_and_the_plan_counts_on_it(shop: Finishlog):
    reads(shop, "log slats --amount 44ml")
    assert "if it takes what it took" not in reads(shop, "plan", "03T17:00")
    act = shop.did("log", "rail", "varnish", "--json", now="2026-06-01T18:05:00+00:00")
    reads(shop, f"amend {act.document['answer']['act'] - 1} --amount 440ml", "01T18:10")
    assert "coat varnish, 440 ml of it" in reads(shop, "history slats", "01T18:20")
    plan = reads(shop, "plan", "03T17:00")
    assert plan.count("if it takes what it took: shed 60 m³") == 1
    assert "440 ml of varnish this evening" in plan


def test_only_a_coat_takes_an_amount(shop: Finishlog):
    refused = shop("log", "slats", "sand", "--amount", "40ml")
    assert refused.code == 2
    assert "sand takes no amount" in refused.err
    assert "has no unit" not in refused.err
