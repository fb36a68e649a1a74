"""Temperatures, humidities and waits as they are typed at the bench."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.cli.measures import (
    Hours,
    air,
    hours,
    humidity,
    show_air,
    show_hours,
    show_humidity,
    show_temperature,
    temperature,
)
from finishlog.core.air import Air
from finishlog.core.units import Temperature
from finishlog.errors import UsageFault

C, F = Temperature.CELSIUS, Temperature.FAHRENHEIT


@pytest.mark.parametrize(
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
    assert fault.value.hint == "if you meant °F type 63F"


@pytest.mark.parametrize("typed", ["200F", "-30C", "50.1C", "-20.1", "abc", "", "58%", "17.2K"])
def test_no_temperature_of_a_shop_is_refused(typed):
    with pytest.raises(UsageFault) as fault:
        temperature(typed, C)
    assert "17.2C" in fault.value.hint or "if you meant" in fault.value.hint
    assert "\n" not in fault.value.message + fault.value.hint


@pytest.mark.parametrize(("typed", "pct"), [("58%", 58), ("58", 58), ("58 % RH", 58), ("1", 1)])
def test_a_humidity(typed, pct):
    assert humidity(typed) == pct


@pytest.mark.parametrize("typed", ["0", "101%", "58C", "-5", "damp", ""])
def test_no_humidity_is_refused(typed):
    with pytest.raises(UsageFault, match="humidity"):
        humidity(typed)


def test_a_fraction_of_one_is_not_a_humidity_in_per_cent():
    with pytest.raises(UsageFault) as fault:
        humidity("0.58")
    assert fault.value.hint == "type 58%"


@pytest.mark.parametrize(
    "typed",
    [
        *("17.2C 58%", "58% 17.2C", "17.2 58", "17,2 58", "17.2C,58%", "17.2 °C, 58 % RH"),
        *("17.2C/58%", "58 17.2C", "17.2 58%"),
    ],
)
def test_the_air_of_a_room_in_either_order(typed):
    assert air(typed, C) == Air(17.2, 58)


@pytest.mark.parametrize("typed", ["17.2C", "17,58", "17C 18C", "58% 60%", "1 2 3", "", "warm wet"])
def test_half_an_air_is_refused(typed):
    with pytest.raises(UsageFault):
        air(typed, C)


@pytest.mark.parametrize(
    ("typed", "low", "high"),
    [
        ("4h", 4, 4),
        ("30min", 0.5, 0.5),
        ("30m", 0.5, 0.5),
        ("2d", 48, 48),
        ("1 week", 168, 168),
        ("1h30", 1.5, 1.5),
        ("1 h 30 min", 1.5, 1.5),
        ("1,5h", 1.5, 1.5),
        ("4-6h", 4, 6),
        ("4–6 h", 4, 6),
        ("4 to 6 hours", 4, 6),
        ("half an hour", 0.5, 0.5),
        ("two days", 48, 48),
        ("24h-48h", 24, 48),
        ("30min-1h", 0.5, 1),
    ],
)
def test_the_waits_of_a_label(typed, low, high):
    assert hours(typed) == Hours(low, high)


def test_thirty_m_is_echoed_as_minutes():
    assert show_hours(hours("30m")) == "30 min"
    assert show_hours(hours("4-6h")) == "4 h to 6 h"


@pytest.mark.parametrize("typed", ["4", "", "4x", "0h", "-4h", "500d", "1:30", "6-4h", "h", "4-h"])
def test_what_is_no_wait_is_refused(typed):
    with pytest.raises(UsageFault):
        hours(typed)


@pytest.mark.parametrize("typed", ["3mo", "3 months", "1 year"])
def test_months_are_refused_for_days(typed):
    with pytest.raises(UsageFault, match="no one length") as fault:
        hours(typed)
    assert fault.value.hint == "type days: 30d"


def test_what_is_shown():
    assert show_temperature(17.2, C) == "17.2 °C"
    assert show_temperature(14.0, C) == "14 °C"
    assert show_temperature(-0.01, C) == "0 °C"
    assert show_temperature(17.2222, F) == "63 °F"
    assert show_humidity(57.6) == "58 %"
    assert show_air(Air(17.2, 58), C) == "17.2 °C, 58 %"


@given(st.integers(-200, 500), st.sampled_from(Temperature))
def test_a_temperature_shown_can_be_typed_back(tenths, unit):
    shown = show_temperature(tenths / 10, unit)
    assert temperature(shown, unit) == pytest.approx(tenths / 10, abs=0.051)


@given(st.text(max_size=30))
def test_anything_typed_is_read_or_refused_in_one_line(text):
    for read in (humidity, hours, lambda t: temperature(t, C), lambda t: air(t, F)):
        try:
            read(text)
        except UsageFault as fault:
            assert fault.hint  # noqa: PT017
            assert "\n" not in fault.message + fault.hint  # noqa: PT017
