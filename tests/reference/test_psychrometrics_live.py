"""Our dew point and vapour pressures against psychrolib and MetPy, asked live over a grid.

The frozen points of tests/core are made again on the way. A missing library fails the test: what
re-proves a figure must never pass by not running.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from finishlog.core.air.psychrometrics import (
    Air,
    dew_point_c,
    humidity_from_wet_bulb,
    saturation_pa,
    vapour_deficit_pa,
)

FROZEN = Path(__file__).parents[1] / "core" / "air"
SEA_LEVEL_PA = 101_325
GRID = [
    Air(float(t), float(rh)) for t in range(-5, 38, 3) for rh in (5, 20, 35, 50, 65, 80, 90, 99)
]

pytestmark = pytest.mark.reference


def rows(name: str) -> list[dict[str, float]]:
    lines = [x for x in (FROZEN / name).read_text("utf-8").splitlines() if not x.startswith("#")]
    return [{key: float(value) for key, value in row.items()} for row in csv.DictReader(lines)]


def test_psychrolib_over_the_grid():
    """ASHRAE Handbook - Fundamentals (2017), chapter 1, as psychrolib computes it."""
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    for air in GRID:
        t, rh = air.temperature_c, air.humidity_pct / 100
        dew = psychrolib.GetTDewPointFromRelHum(t, rh)
        assert dew_point_c(air) == pytest.approx(dew, abs=0.02), air
        saturated = psychrolib.GetSatVapPres(t)
        assert saturation_pa(t) == pytest.approx(saturated, rel=1e-6), air
        deficit = saturated - psychrolib.GetVapPresFromRelHum(t, rh)
        assert vapour_deficit_pa(air) == pytest.approx(deficit, rel=1e-6), air


def test_metpy_over_the_grid():
    """A different closed form: within 0.1 °C and 0.5 %; above the ice point only."""
    from metpy.calc import dewpoint_from_relative_humidity, saturation_vapor_pressure
    from metpy.units import units

    for air in (a for a in GRID if dew_point_c(a) > 0):
        t = units.Quantity(air.temperature_c, "degC")
        dew = dewpoint_from_relative_humidity(t, air.humidity_pct / 100).to("degC").magnitude
        assert dew_point_c(air) == pytest.approx(float(dew), abs=0.1), air
        saturated = saturation_vapor_pressure(t).to("Pa").magnitude
        assert saturation_pa(air.temperature_c) == pytest.approx(float(saturated), rel=0.005), air


def test_the_frozen_points_are_what_the_libraries_give():
    import psychrolib
    from metpy.calc import dewpoint_from_relative_humidity, saturation_vapor_pressure
    from metpy.units import units

    psychrolib.SetUnitSystem(psychrolib.SI)
    for row in rows("psychrometrics.csv"):
        t, rh = row["t_c"], row["rh_pct"] / 100
        dew = psychrolib.GetTDewPointFromRelHum(t, rh)
        assert row["dew_c_psychrolib"] == pytest.approx(dew, abs=0.006), row
        assert row["pws_kpa_psychrolib"] * 1000 == pytest.approx(
            psychrolib.GetSatVapPres(t), abs=0.06
        ), row
        warm = units.Quantity(t, "degC")
        dew = float(dewpoint_from_relative_humidity(warm, rh).to("degC").magnitude)
        assert row["dew_c_metpy"] == pytest.approx(dew, abs=0.006), row
    for row in rows("saturation_pressure.csv"):
        t = row["t_c"]
        assert row["pws_pa_psychrolib"] == pytest.approx(psychrolib.GetSatVapPres(t), abs=0.06)
        live = saturation_vapor_pressure(units.Quantity(t, "degC")).to("Pa").magnitude
        assert row["pws_pa_metpy"] == pytest.approx(float(live), abs=0.06)


def test_the_frozen_wet_bulbs_are_what_the_library_gives():
    """ASHRAE Handbook - Fundamentals (2017), chapter 1, equations 33 and 35, in psychrolib."""
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    for row in rows("wet_bulb.csv"):
        rh = psychrolib.GetRelHumFromTWetBulb(row["dry_c"], row["wet_c"], SEA_LEVEL_PA)
        assert row["rh_pct"] == pytest.approx(100 * rh, abs=0.0006), row
        dew = psychrolib.GetTDewPointFromRelHum(row["dry_c"], rh)
        assert row["dew_c"] == pytest.approx(dew, abs=0.006), row


def test_psychrolib_over_dry_and_wet_bulbs():
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    for dry in range(-4, 41, 2):
        for below in range(int(min(12, max(2, dry / 3)))):
            wet = dry - below
            rh = 100 * psychrolib.GetRelHumFromTWetBulb(dry, wet, SEA_LEVEL_PA)
            assert humidity_from_wet_bulb(dry, wet) == pytest.approx(rh, abs=0.01), (dry, wet)
