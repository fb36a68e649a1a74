"""What a person types and what is kept inside say the same amount."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.measure.quantities import at_most_millilitres, worded
from finishlog.core.measure.units import (
    Area,
    Cut,
    Film,
    Length,
    Temperature,
    Unit,
    Units,
    Volume,
    Weight,
    difference_from_base,
    from_base,
    sign,
    to_base,
)
from tests.rows import every_row

EVERY_UNIT: list[Unit] = [*Temperature, *Area, *Volume, *Weight, *Film, *Length, *Cut]


@every_row(
    ("value", "unit", "base"),
    [
        # Fixed points of the two scales: freezing and boiling water, and where they meet.
        (32, Temperature.FAHRENHEIT, 0),
        (212, Temperature.FAHRENHEIT, 100),
        (-40, Temperature.FAHRENHEIT, -40),
        # ASTM D3924 standard atmosphere: 23 °C is 73.4 °F; from memory.
        (73.4, Temperature.FAHRENHEIT, 23),
        # NIST SP 811 (2008), appendix B.8; digits from memory.
        (1, Area.SQUARE_FOOT, 0.09290304),
        (1, Volume.US_GALLON, 3.785411784),
        (1, Volume.US_QUART, 0.946352946),
        (1, Film.MIL, 25.4),
        (1, Length.INCH, 25.4),
        (1, Length.FOOT, 304.8),
        (1, Volume.US_PINT, 0.473176473),
        (1, Volume.US_FLUID_OUNCE, 0.0295735295625),
        (1, Weight.POUND, 453.59237),
        (1, Weight.OUNCE, 28.349523125),
    ],
)
def test_published_conversions(value, unit, base):
    assert to_base(value, unit) == pytest.approx(base, rel=1e-12, abs=1e-12)
    assert from_base(base, unit) == pytest.approx(value, rel=1e-12, abs=1e-12)


def test_five_point_four_fahrenheit_warmer_is_three_celsius_warmer():
    # By definition of the scales: 180 °F span 100 °C.
    assert difference_from_base(100, Temperature.FAHRENHEIT) == pytest.approx(180)
    assert difference_from_base(3, Temperature.FAHRENHEIT) == pytest.approx(5.4)


def test_a_spread_rate_in_us_units():
    # 1 US gal/ft² of wet film is 1604 mil: 231 in³ over 144 in²; arithmetic.
    litres, metres = to_base(1, Volume.US_GALLON), to_base(1, Area.SQUARE_FOOT)
    micrometres = litres / 1000 / metres * 1e6
    assert from_base(micrometres, Film.MIL) == pytest.approx(231 / 144 * 1000)


def test_a_pound_cut_is_a_pound_of_flakes_to_a_us_gallon_of_alcohol():
    # NIST SP 811: 1 lb/gal (US) = 119.8264 kg/m³ to seven digits; digits from memory.
    assert to_base(1, Cut.POUND_CUT) == pytest.approx(119.8264, abs=5e-5)
    # Three pounds to the gallon: 270 g in 3/4 of a litre; arithmetic.
    assert to_base(3, Cut.POUND_CUT) * 0.75 == pytest.approx(269.6, abs=0.05)


def test_smaller_measures_make_up_the_larger():
    # 1 gal = 4 qt = 8 pt = 128 fl oz, 1 lb = 16 oz: definitions in NIST Handbook 44, appendix C.
    gallon, pound = to_base(1, Volume.US_GALLON), to_base(1, Weight.POUND)
    for count, unit in ((4, Volume.US_QUART), (8, Volume.US_PINT), (128, Volume.US_FLUID_OUNCE)):
        assert to_base(count, unit) == pytest.approx(gallon, rel=1e-15)
    assert to_base(16, Weight.OUNCE) == pytest.approx(pound, rel=1e-15)


def test_every_unit_is_printed_in_its_own_sign():
    assert [sign(unit) for unit in EVERY_UNIT] == [
        *("°C", "°F"),
        *("m²", "ft²"),
        *("L", "ml", "qt", "pt", "gal", "fl oz"),
        *("g", "kg", "oz wt", "lb"),
        *("µm", "mil"),
        *("mm", "cm", "m", "in", "ft"),
        *("g/L", "lb cut"),
    ]


@given(st.floats(-1e6, 1e6), st.sampled_from(EVERY_UNIT))
def test_there_and_back_is_the_same_amount(value, unit):
    assert from_base(to_base(value, unit), unit) == pytest.approx(value, rel=1e-9, abs=1e-9)


@given(st.floats(-100, 100), st.floats(-100, 100))
def test_a_difference_of_two_temperatures_is_the_difference_converted(first, second):
    here = from_base(first, Temperature.FAHRENHEIT) - from_base(second, Temperature.FAHRENHEIT)
    wanted = difference_from_base(first - second, Temperature.FAHRENHEIT)
    assert here == pytest.approx(wanted, abs=1e-9)


def test_an_amount_from_which_a_limit_is_passed_is_never_rounded_up():
    for ml in (0.95, 9.99, 27.7, 134, 946.4, 1999):
        for units in (Units(), Units(volume=Volume.US_QUART), Units(volume=Volume.US_PINT)):
            figure, unit = worded(at_most_millilitres(ml), units).split(" ", 1)
            shown = 1000 * to_base(float(figure), Volume(unit))
            assert 0.89 * ml < shown <= ml * (1 + 1e-9)
    assert worded(at_most_millilitres(27.7), Units()) == "27 ml"
