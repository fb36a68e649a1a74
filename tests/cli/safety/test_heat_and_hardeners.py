"""What hardens a film hurts as it is warmed, and in its dust. Shops and products are invented.

NIOSH alerts 96-111 and 2006-149 (isocyanate); that epoxy hardener makes allergic is from memory.
"""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
room new shed --night 15C
air 20C 50% --room shed
room edit shed --has pilot,motor --size 60m3 --kind workshop
product new pair --class waterborne-two-part
product new clear --class waterborne-clear
product new resin --class epoxy-seal
product new conv --class conversion-varnish
part new desk/rail --species ash --room shed
part new desk/leg --species ash --room shed
part new desk/top --species maple --room shed
"""
NOTE = "makes skin and lungs allergic for good"
DRIVEN = "heat sets isocyanate free"


def at(hour: str, day: int = 3) -> str:
    return f"2026-11-{day:02}T{hour}:00+00:00"


@pytest.fixture
def shed(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now=at("17:00")).played(SHOP)


def said(shop: Finishlog, typed: str, now: str) -> str:
    return shop.did(*shlex.split(typed), now=now).out


def test_a_young_film_that_was_coated_straight_names_its_hardener_in_the_dust(shed: Finishlog):
    said(shed, "log rail resin", at("18:00"))
    said(shed, "log leg clear", at("18:00"))
    said(shed, "log top conv --method brush", at("18:00"))
    assert NOTE not in said(shed, "log leg sand", at("18:00", 4))
    assert NOTE in said(shed, "log rail sand", at("18:01", 4))
    assert "ormaldehyde" in said(shed, "log top sand", at("18:02", 4))


def test_a_hard_film_names_none(shed: Finishlog):
    said(shed, "log rail resin", at("18:00"))
    assert NOTE not in said(shed, "log rail sand", "2027-03-03T18:00:00+00:00")


def test_a_heater_that_makes_it_hot_is_a_stop_while_it_is_wet(shed: Finishlog):
    said(shed, "log rail pair --method brush", at("18:00"))
    said(shed, "log leg clear", at("18:00"))
    hot = said(shed, "heat 18:30-20:00 38C", at("18:10"))
    assert DRIVEN in hot
    assert hot.index("stop: rail") < hot.index("caution")
    assert DRIVEN not in said(shed, "heat 20:10-21:00 25C", at("18:11"))
    said(shed, "respirator hood opened --for supplied-air", at("18:12"))
    assert "stop" not in said(shed, "heat 21:10-22:00 38C", at("18:13"))


def test_a_heater_is_silent_where_no_isocyanate_is_wet(shed: Finishlog):
    said(shed, "log leg clear", at("18:00"))
    assert DRIVEN not in said(shed, "heat 18:30-20:00 38C", at("18:10"))


def test_a_pilot_that_is_out_tonight_is_not_said_to_burn(shed: Finishlog):
    assert "in it a pilot light, a motor" in said(shed, "safety shed", at("18:00"))
    said(shed, "room edit shed --out pilot", at("18:01"))
    for asked in ("safety shed", "room show shed", "safety shed --of conv"):
        told = said(shed, asked, at("18:02"))
        assert "in it a motor" in told
        assert "a pilot light that is out for tonight" in told
    assert "in it a pilot light" in said(shed, "safety shed", at("18:02", 5))
