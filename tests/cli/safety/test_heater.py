"""A heater on record in the room of a coat whose vapour burns: seen before the act and with it.

NIOSH pocket guide: solvent vapour runs to a flame or a motor. Rooms, hours and products are
invented.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
room new shed --night 15C
air 20C 50%
product new varnish --class alkyd-varnish
product new linseed --class boiled-linseed-oil
product new acrylic --class waterborne-clear
steps new v varnish*2
part new desk/top --room shed --steps v --species maple
part new desk/leg --room shed --species maple
"""


def at(clock: str, day: int = 3) -> str:
    return f"2026-11-{day:02}T{clock}:00+00:00"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now=at("12:00")).played(SHOP)


def heated(shop: Finishlog, hours: str = "20 till 23", day: str = "tonight") -> str:
    return shop.did("heat", day, *hours.split(), "18C", "--room", "shed", now=at("12:30")).out


@pytest.mark.parametrize(
    ("kind", "what"),
    [("gas", "flame"), ("wood stove", "flame"), ("flame", "flame"), ("infrared", "glowing wire")],
)
def test_what_burns_or_glows_holds_the_coat_and_stops_the_act(
    shop: Finishlog, kind: str, what: str
):
    shop.did("room", "edit", "shed", "--heater", kind)
    heated(shop)
    ready = shop.did("ready", now=at("19:00")).out
    assert what in ready
    assert "23:00" in ready
    said = shop.did("log", "top", "varnish", now=at("19:00")).out
    (line,) = [line for line in said.splitlines() if line.startswith("stop: ") and what in line]
    assert "put it out and air the room" in line


def test_a_hot_coil_with_a_fan_is_a_caution(shop: Finishlog):
    shop.did("room", "edit", "shed", "--heater", "fan")
    heated(shop)
    said = shop.did("log", "top", "varnish", now=at("19:00")).out
    assert "caution: top: a hot coil with a fan heats shed" in said
    assert "stop:" not in said


def test_of_a_kind_that_was_not_told_is_asked_once_an_evening(shop: Finishlog):
    assert "finishlog room edit shed --heater" in heated(shop)
    said = shop.did("log", "top", "varnish", now=at("19:00")).out
    assert "not of what kind" in said
    assert "stop:" not in said
    assert "not of what kind" not in shop.did("log", "leg", "varnish", now=at("19:10")).out


def test_heating_as_usual_is_seen_like_heating_for_once(shop: Finishlog):
    shop.did("room", "edit", "shed", "--heater", "stove")
    shop.did("room", "heating", "shed", "18-23", "18C")
    assert "stop: " in shop.did("log", "top", "varnish", now=at("19:00")).out


def test_a_heater_that_comes_on_over_a_wet_film_is_stopped_as_it_is_put_on_record(
    shop: Finishlog,
):
    shop.did("room", "edit", "shed", "--heater", "propane")
    shop.did("log", "top", "varnish", now=at("12:10"))
    assert "stop: " in heated(shop, "13 till 17")


def test_every_wet_film_in_the_room_is_named(shop: Finishlog):
    """Lacquer burns before varnish does: the first part of the list is not the only one."""
    shop.did("product", "new", "lacquer", "--class", "lacquer-brushed")
    shop.did("log", "top", "varnish", now=at("12:10"))
    shop.did("log", "leg", "lacquer", now=at("12:28"))
    (said,) = [line for line in heated(shop, "13 till 17").splitlines() if "vapour that" in line]
    assert said.startswith("caution: top and leg: ")
    assert "alkyd varnish and nitrocellulose lacquer, brushed give off vapour" in said


def test_no_air_is_fine_beside_a_flame(shop: Finishlog):
    """The first line of `ready` and the line of the part say the same of the same heater."""
    shop.did("room", "edit", "shed", "--heater", "gas")
    heated(shop)
    ready = shop.did("ready", now=at("19:00")).out
    assert "brush varnish: a flame or pilot light heats shed" in ready
    assert "fine" not in ready
    shop.did("air", "20C", "50%", "--room", "shed", now=at("23:04"))
    assert "brush varnish: fine" in shop.did("ready", now=at("23:05")).out


class TestQuiet:
    @pytest.mark.parametrize("kind", ["sealed", "oil-filled", "underfloor"])
    def test_of_a_sealed_heater_nothing_is_said(self, shop: Finishlog, kind: str):
        shop.did("room", "edit", "shed", "--heater", kind)
        assert "--heater" not in heated(shop)
        assert "heats shed" not in shop.did("log", "top", "varnish", now=at("19:00")).out

    @pytest.mark.parametrize("product", ["linseed", "acrylic"])
    def test_over_what_gives_off_no_vapour_that_burns(self, shop: Finishlog, product: str):
        shop.did("room", "edit", "shed", "--heater", "gas")
        heated(shop)
        assert "heats shed" not in shop.did("log", "leg", product, now=at("19:00")).out

    def test_warmed_first_and_put_out_before_the_coat(self, shop: Finishlog):
        shop.did("room", "edit", "shed", "--heater", "gas")
        heated(shop, "14 till 18")
        assert "heats shed" not in shop.did("ready", now=at("19:00")).out
        assert "heats shed" not in shop.did("log", "top", "varnish", now=at("19:00")).out

    def test_on_again_when_the_film_is_long_dry(self, shop: Finishlog):
        shop.did("room", "edit", "shed", "--heater", "gas")
        shop.did("log", "top", "varnish", now=at("12:10"))
        shop.did("heat", "8 Nov", "16", "till", "23", "18C", "--room", "shed", now=at("12:30"))
        assert "heats shed" not in shop.did("ready", now=at("12:40")).out

    def test_in_another_room(self, shop: Finishlog):
        shop.did("room", "new", "kitchen")
        shop.did("room", "edit", "kitchen", "--heater", "gas")
        shop.did("heat", "tonight", "16", "till", "23", "18C", "--room", "kitchen")
        assert "heats" not in shop.did("log", "top", "varnish", now=at("19:00")).out


def test_a_kind_that_nobody_knows_is_refused_with_the_kinds(shop: Finishlog):
    answer = shop("room", "edit", "shed", "--heater", "dragon")
    assert answer.code == 2
    assert "flame: gas" in answer.err
    assert shop("room", "edit", "shed").code == 2


class TestByHand:
    """A cloth and a stripper bring vapour too (NIOSH pocket guide: flash points under 60 °C)."""

    STOP = "stop: {}: a flame or pilot light heats shed while {} gives off vapour that burns"

    @pytest.fixture
    def gas(self, shop: Finishlog) -> Finishlog:
        shop.did("room", "edit", "shed", "--heater", "gas")
        heated(shop)
        return shop

    def test_what_is_wiped_with(self, gas: Finishlog):
        said = gas.did("log", "top", "solvent-wipe", now=at("20:30")).out
        assert self.STOP.format("top", "the solvent") in said
        said = gas.did("log", "leg", "wipe", "--note", "with white spirit", now=at("20:30")).out
        assert self.STOP.format("leg", "petroleum") in said

    def test_also_while_a_surplus_has_to_come_off(self, gas: Finishlog):
        gas.did("log", "leg", "linseed", now=at("20:20"))
        said = gas.did("log", "leg", "wipe", "--note", "with turps", now=at("20:30")).out
        assert self.STOP.format("leg", "turpentine") in said

    def test_what_a_film_is_taken_off_with(self, gas: Finishlog):
        gas.did("log", "top", "acrylic", now=at("12:40"))
        said = gas.did("off", "top", "--to", "bare", now=at("20:30")).out
        assert "heats shed while the stripper gives off vapour that burns" in said

    @pytest.mark.parametrize("words", [("wipe",), ("rinse",), ("wipe", "--note", "with water")])
    def test_water_and_a_dry_cloth_bring_none(self, gas: Finishlog, words: tuple[str, ...]):
        assert "heats shed" not in gas.did("log", "top", *words, now=at("20:30")).out

    def test_a_scraper_brings_none(self, gas: Finishlog):
        gas.did("log", "top", "acrylic", now=at("12:40"))
        said = gas.did("off", "top", "--to", "bare", "--scraped", now=at("20:30")).out
        assert "heats shed" not in said
