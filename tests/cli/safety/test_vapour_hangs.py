"""Vapour hangs in a room until that was aired: told of as long as something there lights it.

The relation between air changes and what is left (four of them, mixed: 1.83 %) is that of a
well-mixed room, exp(-4), as the ventilation manuals have it. Rooms and hours are invented.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from math import exp, log
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from run import Finishlog

from finishlog.core.air.place import Place, PlaceKind
from finishlog.core.findings import HURTS
from finishlog.core.rules.all import RULES
from finishlog.core.safety.vapour_left import hangs_until
from tests.examples import examples

DRY = datetime(2026, 11, 3, 12, 0, tzinfo=UTC)
HANGS = "is tack-free, its vapour may hang there"


def at(clock: str, day: int = 3) -> str:
    return f"2026-11-{day:02}T{clock}:00+00:00"


def shop(tmp_path: Path, room: str, of: str = "lacquer-brushed") -> Finishlog:
    lines = f"room new shed --night 15C {room}\nair 20C 50%\nproduct new finish --class {of}"
    lines += "\npart new desk/top --species maple"
    return Finishlog(tmp_path, now=at("12:00")).played(lines)


def test_a_pilot_beside_a_film_that_is_dry_is_still_a_danger_until_it_is_out(tmp_path: Path):
    lit = shop(tmp_path, "--has pilot --exhaust none")
    told = lit.did("log", "top", "finish", now=at("12:05")).out
    stops = [line for line in told.splitlines() if line.startswith("stop")]
    assert "a pilot light in shed" in stops[0]
    for clock, day in (("12:20", 3), ("18:00", 3), ("09:00", 4)):
        first = lit.did("ready", now=at(clock, day)).out.splitlines()[0]
        assert "a pilot light in shed" in first
        assert "put it out now" in first
    assert HANGS in lit.did("ready", now=at("18:00")).out
    lit.did("room", "edit", "shed", "--out", "pilot", now=at("18:01"))
    for ask in ("ready", "leave"):
        out = lit.did(ask, now=at("18:02")).out
        assert HANGS in out
        assert "no smell is no proof" in out
        assert "put it out now" not in out
    # A day later the log says no more of it; it never said that all is clear.
    assert HANGS not in lit.did("ready", now=at("20:00", 5)).out


@pytest.mark.parametrize(
    ("room", "of"),
    [
        ("--has none", "lacquer-brushed"),
        ("--has pilot --kind outdoors", "lacquer-brushed"),
        ("--has pilot", "waterborne-clear"),
        ("--has pilot", "tung-oil"),
    ],
)
def test_where_nothing_lights_it_or_nothing_burns_a_dry_film_is_silent(
    tmp_path: Path, room: str, of: str
):
    quiet = shop(tmp_path, room, of)
    quiet.did("log", "top", "finish", now=at("12:05"))
    assert HANGS not in quiet.did("ready", now=at("20:00")).out


def test_an_exhaust_that_was_measured_ends_it_after_four_changes_of_the_air_as_it_mixes():
    aired = Place(volume_m3=50, exhaust_m3_h=500, mixing=5)
    hours = (hangs_until(DRY, aired) - DRY) / timedelta(hours=1)
    assert hours == pytest.approx(4 * 5 * 50 / 500)
    assert exp(-hours * 500 / 5 / 50) == pytest.approx(0.0183, abs=0.0001)
    assert log(1 / 0.0183) == pytest.approx(4, abs=0.01)


@examples(60)
@given(
    volume=st.floats(10, 400),
    exhaust=st.floats(20, 4000),
    mixing=st.floats(1, 9),
    worse=st.floats(0, 1),
)
def test_a_weaker_fan_worse_mixing_or_a_larger_room_never_ends_it_sooner(
    volume: float, exhaust: float, mixing: float, worse: float
):
    good = hangs_until(DRY, Place(volume_m3=volume, exhaust_m3_h=exhaust, mixing=mixing))
    assert good > DRY
    for bad in (
        Place(volume_m3=volume * (1 + worse), exhaust_m3_h=exhaust, mixing=mixing),
        Place(volume_m3=volume, exhaust_m3_h=exhaust / (1 + worse), mixing=mixing),
        Place(volume_m3=volume, exhaust_m3_h=exhaust, mixing=mixing + worse),
        Place(volume_m3=volume, exhaust_m3_h=exhaust),
    ):
        assert hangs_until(DRY, bad) >= good
    for unmeasured in (Place(), Place(volume_m3=volume), Place(volume_m3=volume, exhaust_m3_h=0)):
        assert hangs_until(DRY, unmeasured) == DRY + timedelta(hours=24)
    assert hangs_until(DRY, Place(kind=PlaceKind.OUTDOORS)) == DRY


def test_the_air_of_a_room_begins_with_what_burns_there(tmp_path: Path):
    lit = shop(tmp_path, "--has pilot --size 40m3")
    asked = ("safety", "shed", "--of", "finish", "--amount", "150ml")
    assert lit.did(*asked).out.startswith("stop: a pilot light in shed")
    lit.did("room", "edit", "shed", "--out", "pilot")
    assert "stop" not in lit.did(*asked).out
    lit.did("product", "new", "acrylic", "--class", "waterborne-clear")
    assert lit.did("safety", "shed", "--of", "acrylic").out.strip()


def test_what_hurts_people_is_named_as_such():
    of_people = {r.id for r in RULES if r.find.__module__.startswith("finishlog.core.rules.hazard")}
    assert of_people
    assert of_people <= HURTS


def test_a_pilot_is_not_lit_again_before_the_room_was_aired(tmp_path: Path):
    """`--out none`: it burns again. The film was tack-free an hour before."""
    out = shop(tmp_path, "--has pilot --exhaust none")
    out.did("room", "edit", "shed", "--out", "pilot", now=at("11:59"))
    out.did("log", "top", "finish", now=at("12:05"))
    again = out.did("room", "edit", "shed", "--out", "none", now=at("18:00")).out
    assert "stop: top: a pilot light in shed" in again
    (tmp_path / "water").mkdir()
    later = shop(tmp_path / "water", "--has none --exhaust none", "waterborne-clear")
    later.did("log", "top", "finish", now=at("12:05"))
    assert "stop" not in later.did("room", "edit", "shed", "--has", "pilot", now=at("18:00")).out


def test_a_film_that_is_found_tacky_gives_it_off_until_it_is_found_dry(tmp_path: Path):
    """A failed check beats any clock, that of its vapour too, until it is found dry."""
    lit = shop(tmp_path, "--has pilot --exhaust none", "alkyd-varnish")
    lit.did("log", "top", "finish", now=at("12:05"))
    lit.did("check", "top", "tacky", now=at("12:00", 5))
    for day in (6, 20):
        told = lit.did("ready", now=at("12:00", day)).out
        assert "a pilot light in shed" in told.splitlines()[0]
        assert "vapour of finish until it is found dry" in told
    lit.did("room", "edit", "shed", "--out", "pilot", now=at("12:01", 20))
    lit.did("check", "top", "dry", now=at("12:02", 20))
    assert "until it is found dry" not in lit.did("ready", now=at("12:03", 20)).out
