"""An evening's coats are summed in the air of their room; rooms, names and amounts are invented.

What they come to is checked against the worked figures of dilution ventilation, as the sources of
`test_ventilation` have them: a sum comes to what one pour of as much comes to.
"""

from __future__ import annotations

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.place import Place, PlaceKind
from finishlog.core.finish.classes import Method
from finishlog.core.mixing.containers import Container, ContainerKind, MixPart
from finishlog.core.safety.evening_air import EveningAir, OneCoat, evening_air
from finishlog.core.safety.ventilation import Weighs
from finishlog.core.shop.hours import ShopHours
from finishlog.core.shop.things import Product, Room, Shop
from tests.examples import examples
from tests.shop_of import FACTS, at

VARNISH, WATER, TUNG, OTHER = (
    Product(1, "varnish", "alkyd-varnish"),
    Product(2, "clear", "waterborne-clear"),
    Product(3, "tung", "tung-oil"),
    Product(4, "lac", "lacquer-precatalysed"),
)
SHOP = Shop((), (), {p.id: p for p in (VARNISH, WATER, TUNG, OTHER)}, {}, ShopHours((), "UTC"))
# All that leaves it is mineral spirits.
SPIRITS = Container(
    1, "thin", ContainerKind.MIX, VARNISH.id, parts=(MixPart("mineral spirits", parts=1.0),)
)
AIRED = Place(volume_m3=60.0, exhaust_m3_h=300.0)


def room(place: Place) -> Room:
    return Room(1, "shed", place=place)


def spirits(ml: float | None, hour: float = 0.0, pieces: int = 1) -> OneCoat:
    return OneCoat(VARNISH, at(hour), ml, SPIRITS, pieces=pieces)


def air(place: Place, *coats: OneCoat) -> EveningAir | None:
    return evening_air(room(place), coats, SHOP, FACTS)


def test_two_halves_come_to_what_the_whole_comes_to():
    """275 ml of mineral spirits within an hour in 60 m³ (own arithmetic of the ventilation sheet):
    about 36 L of vapour, 600 ppm shut, 470 ppm with 300 m³/h at K 10, over 306 and 59 ppm."""
    found = air(AIRED, spirits(137.5), spirits(137.5))
    assert found is not None
    assert found.air.vapour_l == pytest.approx(35.9, abs=0.1)
    assert found.air.shut_ppm == pytest.approx(598, abs=1)
    assert found.air.highest_ppm == pytest.approx(470, abs=3)
    assert (found.before, found.air.weighs) == (Weighs.OVER_DAY, Weighs.NOT_ENOUGH)
    assert found.passes
    assert found.amounts == (("varnish", 275.0),)


def test_under_the_limits_nothing_is_passed_and_what_was_over_is_not_said_again():
    small = air(AIRED, spirits(20), spirits(20))
    assert small is not None
    assert not small.passes
    over = air(AIRED, spirits(120), spirits(1))
    assert over is not None
    assert (over.before, over.passes) == (Weighs.OVER_DAY, False)


def test_what_would_do_is_worked_out_and_does():
    found = air(AIRED, spirits(60), spirits(60, 1.0, pieces=6))
    assert found is not None
    assert found.passes
    assert found.less_ml is not None
    assert found.fewer is not None
    assert found.later_h is not None
    for other in (
        air(AIRED, spirits(60), spirits(found.less_ml, 1.0)),
        air(AIRED, spirits(60), spirits(10.0 * found.fewer, 1.0)),
        air(AIRED, spirits(60), spirits(60, 1.0 + found.later_h)),
    ):
        assert other is not None
        assert not other.passes
    assert found.instead == ("clear",)


def test_without_a_measured_exhaust_no_waiting_helps_and_nothing_else_is_promised():
    found = air(Place(volume_m3=60.0), spirits(60), spirits(200, 4.0))
    assert found is not None
    assert found.later_h is None
    assert found.exhaust_m3_h is None


def test_where_there_is_no_figure_there_is_none():
    assert air(Place(), spirits(200)) is None
    assert air(Place(volume_m3=60.0, kind=PlaceKind.OUTDOORS), spirits(200)) is None
    sprayed = OneCoat(VARNISH, at(0), 200.0, method=Method.SPRAY)
    assert air(AIRED, sprayed) is None
    gives_off_formaldehyde = OneCoat(OTHER, at(0), 200.0, method=Method.BRUSH)
    assert air(AIRED, gives_off_formaldehyde, spirits(200)) is None
    assert air(AIRED, OneCoat(WATER, at(0), 500.0)) is None
    assert air(AIRED, OneCoat(TUNG, at(0), 500.0)) is None


def test_what_nobody_measured_is_named_and_the_last_has_to_be_measured():
    found = air(AIRED, spirits(None), spirits(300))
    assert found is not None
    assert found.unmeasured == ("varnish",)
    assert air(AIRED, spirits(300), spirits(None)) is None


@given(st.floats(1, 400), st.floats(1, 400), st.floats(0, 6), st.floats(0, 600))
@examples(40)
def test_more_of_it_or_less_air_never_weighs_less(ml: float, more: float, hour: float, flow: float):
    place = Place(volume_m3=60.0, exhaust_m3_h=flow)
    alone, both = air(place, spirits(ml)), air(place, spirits(ml), spirits(more, hour))
    shut = air(Place(volume_m3=60.0), spirits(ml), spirits(more, hour))
    assert alone is not None
    assert both is not None
    assert shut is not None
    for less, than in ((alone, both), (both, shut)):
        assert less.air.of_day <= than.air.of_day * (1 + 1e-9)
        assert less.air.of_lel <= than.air.of_lel * (1 + 1e-9)
    assert both.before is alone.air.weighs


def test_a_long_coat_leaves_more_slowly():
    slow = OneCoat(VARNISH, at(0), 275.0, SPIRITS, time=timedelta(hours=4))
    found, quick = air(AIRED, slow), air(AIRED, spirits(275))
    assert found is not None
    assert quick is not None
    assert found.air.highest_ppm < quick.air.highest_ppm
