"""Dew point, saturation pressure and vapour deficit against two general-purpose libraries.

Frozen points stand in psychrometrics.csv and saturation_pressure.csv beside this file, with their
source. The two libraries differ from each other by up to 0.33 % in saturation pressure and 0.07 °C
in dew point, so the tolerances are 0.5 % and 0.1 °C against either.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.psychrometrics import (
    STANDARD_AIR,
    Air,
    dew_point_c,
    saturation_pa,
    vapour_deficit_pa,
)
from tests.rows import every_row

HERE = Path(__file__).parent
DEW_TOLERANCE_C = 0.1
PRESSURE_TOLERANCE = 0.005


def rows(name: str) -> list[dict[str, float]]:
    """Read a frozen table; its first lines say where it comes from."""
    lines = [x for x in (HERE / name).read_text("utf-8").splitlines() if not x.startswith("#")]
    return [{key: float(value) for key, value in row.items()} for row in csv.DictReader(lines)]


def fahrenheit(celsius: float) -> float:
    return celsius * 9 / 5 + 32


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32) * 5 / 9


@every_row("library", ["psychrolib", "metpy"])
@every_row("row", rows("psychrometrics.csv"), ids=lambda r: f"{r['t_c']:g}C")
def test_dew_point_and_deficit_agree_with(library, row):
    air = Air(row["t_c"], row["rh_pct"])
    assert dew_point_c(air) == pytest.approx(row[f"dew_c_{library}"], abs=DEW_TOLERANCE_C)
    deficit_kpa = vapour_deficit_pa(air) / 1000
    assert deficit_kpa == pytest.approx(row[f"vpd_kpa_{library}"], rel=PRESSURE_TOLERANCE)


@every_row("library", ["psychrolib", "metpy"])
@every_row("row", rows("saturation_pressure.csv"), ids=lambda r: f"{r['t_c']:g}C")
def test_saturation_pressure_agrees_with(library, row):
    expected = row[f"pws_pa_{library}"]
    assert saturation_pa(row["t_c"]) == pytest.approx(expected, rel=PRESSURE_TOLERANCE)


@every_row(
    ("air_f", "rh_pct", "computed_f", "charted_f"),
    [
        # Coating dew-point chart (a field chart for painters): (air °F, % RH) -> °F as printed;
        # beside it the value that psychrolib 2.5.0 gives. The chart truncates, 0 to 1.1 °F low.
        (70, 65, 57.7, 57),
        (70, 50, 50.5, 50),
        (60, 60, 46.1, 45),
        (50, 80, 44.1, 44),
        (90, 70, 78.9, 78),
        (70, 90, 66.9, 67),
        (80, 80, 73.3, 73),
        (60, 40, 35.6, 35),
        (50, 50, 32.1, 31),
        # Inspection guide for coatings, dew-point table: 80 °F and 50 % print 59 °F.
        (80, 50, 59.7, 59),
    ],
)
def test_dew_point_of_the_painters_charts(air_f, rh_pct, computed_f, charted_f):
    dew_f = fahrenheit(dew_point_c(Air(celsius(air_f), rh_pct)))
    assert dew_f == pytest.approx(computed_f, abs=0.1)
    assert -0.15 <= dew_f - charted_f <= 1.2, "the charts truncate: never far below, never above"


@pytest.mark.parametrize(
    ("air", "dew_printed_c", "surface_c", "accepted"),
    [
        # Paint application guide, worked examples: 16 °C and 71 % -> 11 °C, a surface of 13 °C is
        # rejected; 21 °C dry bulb and 17 °C wet bulb (67 %) -> 15 °C, 19 °C is accepted.
        (Air(16, 71), 11, 13, False),
        (Air(21, 67), 15, 19, True),
    ],
)
def test_worked_examples_of_the_paint_application_guide(air, dew_printed_c, surface_c, accepted):
    dew = dew_point_c(air)
    assert round(dew) == dew_printed_c
    assert (surface_c - dew >= 3.0) is accepted  # MIL-HDBK-1110: 3 °C (5 °F) above the dew point


def test_standard_air_is_23_c_and_50_percent():
    """ASTM D3924: 23 ± 2 °C, 50 ± 5 % RH."""
    assert Air(23.0, 50.0) == STANDARD_AIR


def test_air_without_vapour_has_no_dew_point():
    with pytest.raises(ValueError, match="no dew point"):
        dew_point_c(Air(20.0, 0.0))


temperatures = st.floats(-20, 50)
humidities = st.floats(1, 100)


@given(temperatures, humidities)
def test_dew_is_never_warmer_than_the_air(t, rh):
    assert dew_point_c(Air(t, rh)) <= t + 1e-6


@given(temperatures)
def test_saturated_air_is_at_its_dew_point(t):
    assert dew_point_c(Air(t, 100)) == pytest.approx(t, abs=2e-3)


@given(temperatures, humidities, humidities)
def test_damper_air_has_a_higher_dew_point_and_takes_less_water(t, one, other):
    drier, damper = sorted((one, other))
    assert dew_point_c(Air(t, drier)) <= dew_point_c(Air(t, damper)) + 1e-9
    assert vapour_deficit_pa(Air(t, drier)) >= vapour_deficit_pa(Air(t, damper))


@given(temperatures, temperatures)
def test_warmer_air_can_hold_more_water(one, other):
    colder, warmer = sorted((one, other))
    # At the ice point the two equations of ASHRAE meet to within a few ten-thousandths.
    assert saturation_pa(colder) <= saturation_pa(warmer) * 1.0005
