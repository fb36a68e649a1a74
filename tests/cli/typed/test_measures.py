"""Temperatures and humidities as they are typed at the bench."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.cli.typed.figures.measures import (
    air,
    humidity,
    show_air,
    show_humidity,
    show_temperature,
    temperature,
)
from finishlog.core.air.psychrometrics import Air
from finishlog.core.measure.quantities import worded
from finishlog.core.measure.units import Temperature, Units
from finishlog.errors import UsageFault
from tests.rows import every_row

C, F = Temperature.CELSIUS, Temperature.FAHRENHEIT


@every_row(
    ("typed", "unit", "celsius"),
    [
        ("17.2C", C, 17.2),
        ("17,2 °C", C, 17.2),
        ("17.2", C, 17.2),
        ("63F", C, 17.2222),
        ("63 °f", C, 17.2222),
        ("63", F, 17.2222),
        ("17 degrees C", F, 17.0),
        ("-3c", C, -3.0),
        ("−3", C, -3.0),
    ],
)
def test_a_temperature_without_a_unit_takes_the_persons_own(typed, unit, celsius):
    assert temperature(typed, unit) == pytest.approx(celsius, abs=1e-4)


def test_fahrenheit_typed_as_celsius_is_refused_with_the_remedy():
    with pytest.raises(UsageFault) as fault:
        temperature("63", C)
    assert fault.value.message == "63 °C is no temperature of a shop"
    assert fault.value.hint == "type 63F if you meant °F, or 63C! if it is so"


def test_celsius_typed_as_fahrenheit_is_refused_with_the_remedy():
    # 17 °F is -8 °C: a shop may be that cold, but who works there types what it is.
    with pytest.raises(UsageFault) as fault:
        temperature("17", F)
    assert fault.value.message == "17 °F is no temperature of a shop"
    assert fault.value.hint == "type 17C if you meant °C, or 17F! if it is so"


@pytest.mark.parametrize(("typed", "celsius"), [("17F", -8.3333), ("17F!", -8.3333), ("-3C", -3)])
def test_a_unit_that_was_typed_is_believed_where_it_can_be(typed, celsius):
    assert temperature(typed, F) == pytest.approx(celsius, abs=1e-4)


@pytest.mark.parametrize(("typed", "celsius"), [("64C!", 64), ("64 °C !", 64), ("-30C!", -30)])
def test_what_is_unlikely_is_read_when_it_is_insisted_on(typed, celsius):
    assert temperature(typed, C) == celsius


@pytest.mark.parametrize("typed", ["300C", "300C!", "-90C!", "500F!"])
def test_what_no_shop_can_be_is_not_read_however_it_is_insisted_on(typed):
    with pytest.raises(UsageFault, match="no temperature of a shop") as fault:
        temperature(typed, C)
    assert "!" not in fault.value.hint


@every_row("typed", ["200F", "-30C", "50.1C", "-20.1", "abc", "", "58%", "17.2K"])
def test_no_temperature_of_a_shop_is_refused(typed):
    with pytest.raises(UsageFault) as fault:
        temperature(typed, C)
    assert "17.2C" in fault.value.hint or "if you meant" in fault.value.hint
    assert "\n" not in fault.value.message + fault.value.hint


@pytest.mark.parametrize(("typed", "pct"), [("58%", 58), ("58", 58), ("58 % RH", 58), ("5", 5)])
def test_a_humidity(typed, pct):
    assert humidity(typed) == pct


@pytest.mark.parametrize("typed", ["0", "0%!", "101%", "58C", "-5", "damp", ""])
def test_no_humidity_is_refused(typed):
    with pytest.raises(UsageFault, match="humidity"):
        humidity(typed)


def test_a_fraction_of_one_is_not_a_humidity_in_per_cent():
    with pytest.raises(UsageFault) as fault:
        humidity("0.58")
    assert fault.value.hint == "type 58% or 0.58%!"


def test_drier_than_a_gauge_can_tell_is_asked():
    with pytest.raises(UsageFault) as fault:
        humidity("3%")
    assert fault.value.hint == "type 3%!"
    assert humidity("3%!") == 3


@every_row(
    "typed",
    [
        *("17.2C 58%", "58% 17.2C", "17.2 58", "17,2 58", "17.2C,58%", "17.2 °C, 58 % RH"),
        *("17.2C/58%", "58 17.2C", "17.2 58%"),
    ],
)
def test_the_air_of_a_room_in_either_order(typed):
    assert air(typed, C) == Air(17.2, 58)


def test_both_halves_of_an_air_can_be_insisted_on():
    assert air("64C! 3%!", C) == Air(64, 3)
    with pytest.raises(UsageFault, match="64 °C"):
        air("64 58", C)


@pytest.mark.parametrize("typed", ["17.2C", "17,58", "17C 18C", "58% 60%", "1 2 3", "", "warm wet"])
def test_half_an_air_is_refused(typed):
    with pytest.raises(UsageFault):
        air(typed, C)


def test_what_is_shown():
    assert show_temperature(17.2, C) == "17.2 °C"
    assert show_temperature(14.0, C) == "14 °C"
    assert show_temperature(-0.01, C) == "0 °C"
    assert show_temperature(17.2222, F) == "63 °F"
    assert show_humidity(57.6) == "58 %"
    assert worded(show_air(Air(17.2, 58)), Units()) == "17.2 °C, 58 %"


@given(st.integers(-200, 500), st.sampled_from(Temperature))
def test_a_temperature_shown_can_be_typed_back(tenths, unit):
    shown = show_temperature(tenths / 10, unit)
    assert temperature(shown, unit) == pytest.approx(tenths / 10, abs=0.051)


@given(st.text(max_size=30))
def test_anything_typed_is_read_or_refused_in_one_line(text):
    for read in (humidity, lambda t: temperature(t, C), lambda t: air(t, F)):
        try:
            read(text)
        except UsageFault as fault:
            assert fault.hint  # noqa: PT017
            assert "\n" not in fault.message + fault.hint  # noqa: PT017
