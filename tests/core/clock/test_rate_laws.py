"""How air changes the pace of drying: k, equivalent hours an hour, by what makes the film dry."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from finishlog.core.air.psychrometrics import STANDARD_AIR, Air
from finishlog.core.clock.counting import Clock, Counting
from finishlog.core.finish.classes import Limit, Limits, Mechanism
from finishlog.core.finish.rate_law import RateLaw, rate
from tests.air_of import LAWS, law, span
from tests.rows import every_row

CORE = Path(__file__).parents[1]
DOUBLES = (Mechanism.OXIDATION, Mechanism.CROSS_LINKING)


def fahrenheit(degrees: float) -> float:
    return (degrees - 32) / 1.8


def rows(name: str) -> list[dict[str, float]]:
    """Read a frozen table; its first lines say where it comes from."""
    lines = [x for x in (CORE / name).read_text("utf-8").splitlines() if not x.startswith("#")]
    return [{key: float(value) for key, value in row.items()} for row in csv.DictReader(lines)]


@every_row("mechanism", DOUBLES)
@every_row("row", rows("clock/rate_factors.csv"), ids=lambda r: f"{r['ref_c']:g}-{r['t_c']:g}")
def test_pace_doubles_for_each_10_c(mechanism, row):
    """UFGS-09971 3.7.1.3: pot life halves for each 10 °C warmer, doubles for each 10 °C colder."""
    pace = rate(law(mechanism, Air(row["ref_c"], 50.0)), Air(row["t_c"], 50.0))
    assert pace == pytest.approx(row["pace"], abs=6e-5)
    assert 1 / pace == pytest.approx(row["time_multiplier"], abs=6e-5)


@every_row(
    "row",
    [
        r
        for r in rows("clock/rate_factors.csv")
        if r["t_c"] <= r["ref_c"] and r["ref_c"] - r["t_c"] <= 10
    ],
    ids=lambda r: f"{r['ref_c']:g}-{r['t_c']:g}",
)
def test_within_10_c_below_the_label_the_factor_of_two_is_near_the_other_laws(row):
    """Two Arrhenius laws of maturity (41.5 and 50 kJ/mol) lie within a tenth of ours."""
    pace = rate(law(Mechanism.OXIDATION, Air(row["ref_c"], 50.0)), Air(row["t_c"], 50.0))
    assert pace == pytest.approx(row["pace_arrhenius_41_5"], rel=0.14)
    assert pace == pytest.approx(row["pace_arrhenius_50"], rel=0.04)


def test_drying_by_oxygen_does_not_ask_for_humidity():
    """No published factor ties the drying of an oil film to humidity: it is a limit, not a rate."""
    for mechanism in DOUBLES:
        assert rate(law(mechanism), Air(18, 40)) == rate(law(mechanism), Air(18, 70))


@every_row("row", rows("air/psychrometrics.csv"), ids=lambda r: f"{r['t_c']:g}C")
def test_water_leaves_at_the_ratio_of_vapour_deficits(row):
    """Deficits of psychrolib 2.5.0 against that of 23 °C and 50 % (1.4052 kPa): an estimate."""
    pace = rate(law(Mechanism.WATER), Air(row["t_c"], row["rh_pct"]))
    assert pace == pytest.approx(row["vpd_kpa_psychrolib"] / 1.4052, rel=0.005)


def test_no_water_leaves_into_saturated_air():
    assert rate(law(Mechanism.WATER), Air(20, 100)) == 0.0
    assert rate(law(Mechanism.WATER), Air(20, 103)) == 0.0, "a hygrometer may read over 100"


@pytest.mark.parametrize(
    ("mechanism", "cold_pa", "label_pa"),
    [
        # Perry's Chemical Engineers' Handbook, 8th ed., table 2-8 (chemicals 1.5): at 15 and 23 °C.
        (Mechanism.ALCOHOL, 4338.94, 7051.36),
        (Mechanism.SOLVENT, 797.36, 1322.41),
    ],
)
def test_alcohol_and_solvent_leave_at_the_ratio_of_their_vapour_pressures(
    mechanism, cold_pa, label_pa
):
    assert rate(law(mechanism), Air(15, 50)) == pytest.approx(cold_pa / label_pa, rel=0.03)


@pytest.mark.parametrize("of", LAWS, ids=lambda x: x.mechanism.value)
def test_label_air_is_the_label_pace(of):
    assert rate(of, STANDARD_AIR) == pytest.approx(1.0)
    for clock in Clock:
        assert Counting(of, clock).pace(span(0, None, STANDARD_AIR)) == pytest.approx(1.0)


def test_a_law_is_a_value():
    """The sums of a room are kept by it: equal laws share them."""
    for of in LAWS:
        assert law(of.mechanism) == of
        assert hash(law(of.mechanism)) == hash(of)


@pytest.mark.parametrize(
    ("read", "label_c", "is_it"),
    [
        (fahrenheit(73), 23.0, True),
        (fahrenheit(72), 23.0, False),
        (21.0, fahrenheit(70), True),
        (22.0, 23.0, False),
        (22.4, 23.0, False),
    ],
)
def test_a_reading_is_the_label_s_air_as_far_as_both_were_written(read, label_c, is_it):
    """A whole degree stands for half of one on either side: 73 °F is 22.8 °C. arithmetic"""
    law = RateLaw(Mechanism.OXIDATION, Air(label_c, 50.0))
    pace = Counting(law, Clock.WAIT).pace(span(0, None, Air(read, 50.0)))
    assert (pace == 1.0) == is_it
    warm = Counting(law, Clock.WINDOW).pace(span(0, None, Air(label_c + 0.2, 50.0)))
    assert warm > 1.0, "a window is closed by the warmer air"


def test_a_limit_that_was_written_in_fahrenheit_holds_what_reads_so():
    """55 and 90 °F stand as 12.8 and 32.2 °C: nothing beyond is let in by it."""
    law, limits = RateLaw(Mechanism.WATER, STANDARD_AIR), Limits(Limit(12.8, ""), Limit(32.2, ""))
    counting = Counting(law, Clock.WAIT, limits)
    paces = [counting.pace(span(0, None, Air(fahrenheit(f), 50.0))) > 0 for f in (54, 55, 90, 91)]
    assert paces == [False, True, True, False]
