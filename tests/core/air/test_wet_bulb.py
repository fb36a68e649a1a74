"""Humidity from a dry and a wet bulb, against a general-purpose library and a printed example.

The frozen points stand in wet_bulb.csv beside this file, with their source.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.psychrometrics import Air, dew_point_c, humidity_from_wet_bulb
from tests.rows import every_row

TEXT = (Path(__file__).parent / "wet_bulb.csv").read_text("utf-8")
POINTS = list(csv.DictReader(x for x in TEXT.splitlines() if not x.startswith("#")))


@every_row("row", POINTS, ids=lambda row: f"{row['dry_c']}/{row['wet_c']}")
def test_humidity_and_dew_point_agree_with_the_library(row):
    dry, wet = float(row["dry_c"]), float(row["wet_c"])
    humidity = humidity_from_wet_bulb(dry, wet)
    assert humidity == pytest.approx(float(row["rh_pct"]), abs=0.01)
    assert dew_point_c(Air(dry, humidity)) == pytest.approx(float(row["dew_c"]), abs=0.02)


def test_the_worked_example_of_a_field_guide_for_coatings():
    """Dry 21 °C, wet 17 °C: the guide's table prints a dew point of 15 °C, in whole degrees."""
    assert round(dew_point_c(Air(21, humidity_from_wet_bulb(21, 17)))) == 15


def test_both_bulbs_alike_is_saturated_air():
    """A wet bulb equals the dry one in saturated air (ASHRAE Fundamentals 2017, chapter 1)."""
    for both in (-8.0, 0.0, 4.0, 17.0, 38.0):
        assert humidity_from_wet_bulb(both, both) == pytest.approx(100, abs=1e-6)


@given(st.floats(0, 45), st.floats(0, 1), st.floats(0, 1))
def test_a_colder_wet_bulb_means_drier_air(dry, one, other):
    # No further than half way to where no air is: the wet bulb of dry air at 45 °C is about 15 °C.
    colder, warmer = sorted(dry - 0.25 * dry * share for share in (one, other))
    assert humidity_from_wet_bulb(dry, colder) <= humidity_from_wet_bulb(dry, warmer) + 1e-9


@pytest.mark.parametrize(("dry", "wet"), [(17, 21), (20, 20.1), (30, 2), (5, -9)])
def test_bulbs_that_no_air_gives_are_refused(dry, wet):
    with pytest.raises(ValueError, match="wet bulb"):
        humidity_from_wet_bulb(dry, wet)
