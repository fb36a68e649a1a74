"""The drying clock: how air changes the pace, and how hours add up.

The adding up is tested apart from the chemistry: a pace may be any function of a stretch of air.
"""

from __future__ import annotations

import csv
from datetime import timedelta
from functools import partial
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air import STANDARD_AIR, Air
from finishlog.core.clock import (
    SLOWEST,
    RateLaw,
    gained,
    rate,
    reach,
    wait_rate,
    window_rate,
)
from finishlog.core.finishes import Mechanism
from finishlog.core.room_air import AirSpan
from tests.shop_of import FACTS, at, hours_until, span

HERE = Path(__file__).parent
ROOM = Air(20.0, 50.0)
DOUBLES = (Mechanism.OXIDATION, Mechanism.CROSS_LINKING)


def rows(name: str) -> list[dict[str, float]]:
    """Read a frozen table; its first lines say where it comes from."""
    lines = [x for x in (HERE / name).read_text("utf-8").splitlines() if not x.startswith("#")]
    return [{key: float(value) for key, value in row.items()} for row in csv.DictReader(lines)]


def law(mechanism: Mechanism, reference: Air = STANDARD_AIR) -> RateLaw:
    carriers = {Mechanism.ALCOHOL: "ethanol", Mechanism.SOLVENT: "butyl-acetate"}
    key = carriers.get(mechanism)
    return RateLaw(mechanism, reference, 2.0, FACTS.carrier(key) if key else None)


LAWS = [law(mechanism) for mechanism in Mechanism]


def uncapped(of: RateLaw, stretch: AirSpan) -> float:
    return rate(of, stretch.airs[0])


# --- the rate laws ---------------------------------------------------------------------------


@pytest.mark.parametrize("mechanism", DOUBLES)
@pytest.mark.parametrize(
    "row", rows("rate_factors.csv"), ids=lambda r: f"{r['ref_c']:g}-{r['t_c']:g}"
)
def test_pace_doubles_for_each_10_c(mechanism, row):
    """UFGS-09971 3.7.1.3: pot life halves for each 10 °C warmer, doubles for each 10 °C colder."""
    pace = rate(law(mechanism, Air(row["ref_c"], 50.0)), Air(row["t_c"], 50.0))
    assert pace == pytest.approx(row["pace"], abs=6e-5)
    assert 1 / pace == pytest.approx(row["time_multiplier"], abs=6e-5)


@pytest.mark.parametrize(
    "row",
    [r for r in rows("rate_factors.csv") if r["t_c"] <= r["ref_c"] and r["ref_c"] - r["t_c"] <= 10],
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


@pytest.mark.parametrize("row", rows("psychrometrics.csv"), ids=lambda r: f"{r['t_c']:g}C")
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
    assert wait_rate(of, span(0, None, STANDARD_AIR)) == pytest.approx(1.0)
    assert window_rate(of, span(0, None, STANDARD_AIR)) == pytest.approx(1.0)


# --- adding up -------------------------------------------------------------------------------

# Our three-segment case, computed apart: 4 h at 15, 8 h at 20, then 25 °C; reference 20 °C.
THREE = (
    span(0, 4, Air(15, 50)),
    span(4, 12, Air(20, 50)),
    span(12, None, Air(25, 50)),
)
FROM_20 = law(Mechanism.OXIDATION, ROOM)


def test_three_stretches_uncapped_give_19_314_equivalent_hours_in_18():
    """4 x 0.7071 + 8 x 1 + 6 x 1.4142 = 19.314 h."""
    assert gained(at(18), THREE, partial(uncapped, FROM_20)) == pytest.approx(19.314, abs=5e-4)
    reached = reach(19.3137085, THREE, partial(uncapped, FROM_20))
    assert hours_until(reached.moment) == pytest.approx(18.0, abs=1e-6)


def test_three_stretches_as_a_wait_are_never_shortened_by_the_warm_one():
    """By hand: 4 x 0.70711 + 8 + 6 x 1 = 16.82843 h at 18 h; 18 h are reached at 19.17157 h."""
    pace = partial(wait_rate, FROM_20)
    assert gained(at(18), THREE, pace) == pytest.approx(16.82843, abs=1e-5)
    assert hours_until(reach(18.0, THREE, pace).moment) == pytest.approx(19.17157, abs=1e-5)


def test_three_stretches_as_a_window_are_never_lengthened_by_the_cold_one():
    """By hand: 4 x 1 + 8 + 6 x 1.41421 = 20.48528 h at 18 h; 18 h are gone at 16.24264 h."""
    pace = partial(window_rate, FROM_20)
    assert gained(at(18), THREE, pace) == pytest.approx(20.48528, abs=1e-5)
    assert hours_until(reach(18.0, THREE, pace).moment) == pytest.approx(16.24264, abs=1e-5)


@pytest.mark.parametrize(
    ("spans", "label_h", "hours"),
    [
        # Worked by hand, factor 2 per 10 °C from 20 °C; a label of 4 h.
        ((span(0, None, Air(20, 50)),), 4, 4.0),
        ((span(0, None, Air(10, 50)),), 4, 8.0),
        ((span(0, 2, Air(20, 50)), span(2, None, Air(10, 50))), 4, 6.0),
    ],
)
def test_worked_by_hand(spans, label_h, hours):
    assert hours_until(reach(label_h, spans, partial(wait_rate, FROM_20)).moment) == hours


def test_worked_by_hand_waterborne_in_damp_air():
    """20 °C and 70 %: (1 - 0.7) / (1 - 0.5) = 0.6, so 2 h take 3.3333 h."""
    pace = partial(wait_rate, law(Mechanism.WATER, ROOM))
    reached = reach(2.0, [span(0, None, Air(20, 70))], pace)
    assert hours_until(reached.moment) == pytest.approx(10 / 3)


def test_a_night_below_the_limit_stops_the_clock():
    """By hand: coat at 20:00; 2 h at 15, 8 h at 4 °C (limit 5 °C), then 15 °C -> 09:39:25."""
    spans = (span(2, 4, Air(15, 50)), span(4, 12, Air(4, 50)), span(12, None, Air(15, 50)))

    def below(stretch: AirSpan, _done_h: float) -> bool:
        return stretch.airs[0].temperature_c < 5

    reached = reach(4.0, spans, partial(wait_rate, FROM_20), below)
    assert hours_until(reached.moment) == pytest.approx(15 + 39 / 60 + 25 / 3600, abs=1 / 3600)


def test_air_that_never_lets_it_dry_has_no_date():
    reached = reach(4.0, [span(0, None, Air(4, 50))], partial(wait_rate, FROM_20), lambda *_: True)
    assert reached.moment is None


def test_real_hours_are_counted_apart_by_whether_a_reading_covers_them():
    spans = (span(0, 3, ROOM), span(3, None, ROOM, measured=False))
    reached = reach(4.0, spans, partial(wait_rate, FROM_20))
    assert (reached.measured_h, reached.unmeasured_h) == (3.0, 1.0)


def test_the_last_stretch_of_air_must_have_no_end():
    with pytest.raises(ValueError, match="no end"):
        reach(4.0, [span(0, 2, ROOM)], partial(wait_rate, FROM_20))


def test_a_room_never_read_counts_label_time():
    nothing_known = span(0, None, measured=False)
    for of in LAWS:
        assert wait_rate(of, nothing_known) == 1.0
        assert window_rate(of, nothing_known) == 1.0


def test_between_two_readings_a_wait_takes_the_slower_and_a_window_the_faster():
    either = span(0, None, Air(13, 50), Air(33, 50))
    of = law(Mechanism.OXIDATION)
    assert wait_rate(of, either) == pytest.approx(0.5)
    assert window_rate(of, either) == pytest.approx(2.0)


# --- against a published table of recoat windows ----------------------------------------------

# UFGS-09971, recoat windows of polyurethane over polyurethane: surface °C (middle of the band,
# printed as 60-70, 71-80 ... 111-120 °F), minimum and maximum hours.
BANDS = ((18.5, 8, 48), (24.5, 6, 48), (30.0, 4, 36), (35.5, 3, 24), (41.0, 2, 12), (46.5, 1, 2))


def wait_h(label_c: float, label_h: float, air_c: float) -> float:
    pace = partial(wait_rate, law(Mechanism.CROSS_LINKING, Air(label_c, 50)))
    return hours_until(reach(label_h, [span(0, None, Air(air_c, 50))], pace).moment)


def window_h(label_c: float, label_h: float, air_c: float) -> float:
    pace = partial(window_rate, law(Mechanism.CROSS_LINKING, Air(label_c, 50)))
    return hours_until(reach(label_h, [span(0, None, Air(air_c, 50))], pace).moment)


@pytest.mark.parametrize(("air_c", "printed_min_h", "_max"), BANDS)
def test_a_label_of_the_coolest_band_never_undercuts_a_printed_minimum(air_c, printed_min_h, _max):
    """Because a wait is never shortened; the uncapped factor would undercut five of the six bands:
    it predicts 5.3, 3.6, 2.5 and 1.7 h where 6, 4, 3 and 2 h are printed."""
    assert wait_h(18.5, 8, air_c) >= printed_min_h


def test_uncapped_the_factor_of_two_would_undercut_the_table():
    of = law(Mechanism.CROSS_LINKING, Air(18.5, 50))
    predicted = [8 / rate(of, Air(c, 50)) for c, _, _ in BANDS[1:5]]
    assert predicted == pytest.approx([5.28, 3.61, 2.46, 1.68], abs=0.005)
    assert all(h < printed for h, (_, printed, _) in zip(predicted, BANDS[1:5], strict=True))


def test_from_a_label_at_room_temperature_the_cold_band_is_not_undercut():
    """6 h at 24.5 °C become 9.1 h at 18.5 °C; 8 h are printed."""
    assert wait_h(24.5, 6, 18.5) == pytest.approx(9.094, abs=0.001)
    assert wait_h(24.5, 6, 18.5) >= 8


@pytest.mark.parametrize(
    ("label", "air", "short_by"),
    [
        # Only partly so: between the hot bands the table is steeper than 2 for 10 °C (up to 2.1
        # for 10 °C), so from a label hotter than any shop the wait falls short in cooler air.
        (BANDS[2], BANDS[1], 0.03),
        (BANDS[4], BANDS[3], 0.03),
        (BANDS[5], BANDS[4], 0.27),
    ],
)
def test_from_a_label_hotter_than_any_shop_the_factor_may_fall_short(label, air, short_by):
    promised = wait_h(label[0], label[1], air[0])
    assert (1 - short_by) * air[1] <= promised < air[1]


@pytest.mark.parametrize(("air_c", "_min", "printed_max_h"), BANDS[:5])
def test_a_window_of_the_coolest_band_never_outlasts_the_printed_maximum(
    air_c, _min, printed_max_h
):
    """48 h at 18.5 °C shrink to 31.7, 21.6, 14.8 and 10.1 h; 48, 36, 24 and 12 h are printed."""
    assert window_h(18.5, 48, air_c) <= printed_max_h


def test_above_44_c_the_printed_window_closes_sooner_than_the_clock_says():
    """Only partly so: at 44 to 49 °C 2 h are printed where the clock says 6.9 h. No finish of ours
    may be put on above 32.2 °C (TM 55-1500-345-23), so the clock is not asked there."""
    assert window_h(18.5, 48, 46.5) == pytest.approx(6.9, abs=0.05)
    hottest = max(of.limits.max_c.value for of in FACTS.classes() if of.limits.max_c)
    assert hottest < 44


def test_in_colder_air_than_the_label_a_window_keeps_its_printed_hours():
    assert window_h(24.5, 48, 18.5) == 48


# --- properties ------------------------------------------------------------------------------

temperature = st.floats(-5, 45)
humidity = st.floats(5, 100)
airs = st.builds(Air, temperature, humidity)
lengths = st.lists(st.floats(0.05, 72), min_size=0, max_size=5)
laws = st.sampled_from(LAWS)
label_hours = st.floats(0.1, 200)


@st.composite
def stretches(draw: st.DrawFn) -> tuple[AirSpan, ...]:
    """Consecutive air, the last for good; some of it unread, some between two readings."""
    spans, start = [], 0.0
    for length in [*draw(lengths), None]:
        near = draw(st.lists(airs, min_size=0, max_size=2))
        end = None if length is None else start + length
        spans.append(span(start, end, *near, measured=draw(st.booleans())))
        start = end or start
    return tuple(spans)


def warmer(spans: tuple[AirSpan, ...], n: int, by: float) -> tuple[AirSpan, ...]:
    """Make every reading of one stretch warmer, its humidity the same."""
    one = spans[n]
    heated = tuple(Air(a.temperature_c + by, a.humidity_pct) for a in one.airs)
    return (*spans[:n], AirSpan(one.start, one.end, heated, one.measured), *spans[n + 1 :])


@given(laws, stretches())
def test_a_wait_is_never_shortened_and_a_window_never_lengthened(of, spans):
    for stretch in spans:
        assert SLOWEST <= wait_rate(of, stretch) <= 1.0
        assert window_rate(of, stretch) >= 1.0


@given(laws, label_hours, stretches())
def test_a_wait_is_at_least_its_label_hours_and_a_window_at_most(of, hours, spans):
    wait = reach(hours, spans, partial(wait_rate, of)).moment
    window = reach(hours, spans, partial(window_rate, of)).moment
    assert hours_until(wait) >= hours - 1e-9
    assert hours_until(window) <= hours + 1e-9


@given(laws, label_hours, stretches(), st.integers(0, 5), st.floats(0.01, 20))
def test_a_colder_reading_never_makes_a_wait_shorter_nor_a_window_shorter(
    of, hours, spans, n, degrees
):
    """At the same humidity; the limits of the air, which also forbid heat, are not the clock's."""
    warm = warmer(spans, n % len(spans), degrees)
    microsecond = timedelta(microseconds=1)
    for pace in (wait_rate, window_rate):
        in_warm = reach(hours, warm, partial(pace, of)).moment
        in_cold = reach(hours, spans, partial(pace, of)).moment
        assert in_cold >= in_warm - microsecond


@given(laws, label_hours, stretches(), st.floats(0.01, 0.99), st.integers(0, 5))
def test_cutting_a_stretch_in_two_changes_nothing(of, hours, spans, where, n):
    n %= len(spans)
    one = spans[n]
    length = one.length_h if one.length_h is not None else 50.0
    middle = one.start + timedelta(hours=length * where)
    cut = (
        *spans[:n],
        AirSpan(one.start, middle, one.airs, one.measured),
        AirSpan(middle, one.end, one.airs, one.measured),
        *spans[n + 1 :],
    )
    for pace in (wait_rate, window_rate):
        whole = reach(hours, spans, partial(pace, of))
        parts = reach(hours, cut, partial(pace, of))
        # Instants are kept to the microsecond: two of them are 6e-10 h.
        assert abs(hours_until(whole.moment) - hours_until(parts.moment)) < 2e-9
        assert gained(at(30), spans, partial(pace, of)) == pytest.approx(
            gained(at(30), cut, partial(pace, of)), abs=1e-9
        )


@given(laws, label_hours, stretches())
def test_what_is_reached_was_gained(of, hours, spans):
    """`gained` is the inverse of `reach`, to the microsecond in which instants are kept."""
    for pace in (wait_rate, window_rate):
        moment = reach(hours, spans, partial(pace, of)).moment
        fastest = max(pace(of, stretch) for stretch in spans)
        assert gained(moment, spans, partial(pace, of)) == pytest.approx(
            hours, abs=1e-9 * max(1.0, fastest)
        )


@given(laws, label_hours, stretches(), st.floats(0, 100))
def test_more_hours_are_never_reached_sooner(of, hours, spans, more):
    pace = partial(wait_rate, of)
    assert reach(hours, spans, pace).moment <= reach(hours + more, spans, pace).moment


@given(laws, label_hours, stretches())
def test_real_hours_on_the_way_add_up_to_the_time_passed(of, hours, spans):
    reached = reach(hours, spans, partial(wait_rate, of))
    passed = reached.measured_h + reached.unmeasured_h
    assert passed == pytest.approx(hours_until(reached.moment), abs=1e-6)
