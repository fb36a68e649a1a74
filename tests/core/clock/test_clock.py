"""The drying clock: how equivalent hours add up, worked by hand.

Adding up is tested apart from the chemistry: a case brings the rate law that it was worked with.
Steady air is exact; where it changes the clock comes to one minute of what was worked out by hand.
"""

from __future__ import annotations

from math import exp, log, log2

import pytest

from finishlog.core.air.course import Hours
from finishlog.core.air.met import AirMet, Leg, Stay, air_met
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.span import Known
from finishlog.core.clock.counting import SLOWEST, Clock, Counting
from finishlog.core.clock.reach import gained, reach
from finishlog.core.finish.classes import Limit, Limits, Mechanism
from tests.air_of import LAWS, ONE_MINUTE_H, OwnLaw, drawn, law, read_room, span, standing
from tests.shop_of import at, hours_until

ROOM = Air(20.0, 50.0)


def doubling(t: float, _rh: float) -> float:
    """Twice the pace for each 10 °C, from 20 °C."""
    return float(2 ** ((t - 20) / 10))


def doubling_in_damp(t: float, rh: float) -> float:
    """The same, and slower in damp: (1 - H) / (1 - 50 %)."""
    return doubling(t, rh) * (1 - rh / 100) / 0.5


def arrhenius(kelvin: float):
    """Return the law of ASTM C1074, exp(-Q (1/Ta - 1/Ts)), from 20 °C; Q in kelvin."""
    return lambda t, _rh: exp(-kelvin * (1 / (t + 273.15) - 1 / 293.15))


FROM_20 = OwnLaw(doubling)
IN_DAMP = OwnLaw(doubling_in_damp)
WAIT = Counting(FROM_20, Clock.WAIT)
WINDOW = Counting(FROM_20, Clock.WINDOW)


def wait_h(label_h: float, met: AirMet, counting: Counting = WAIT) -> float:
    return hours_until(reach(label_h, met, counting).moment)


# --- cases worked by hand: a doubling for 10 °C from 20 °C, 50 % ------------------------------


def test_case_a_at_the_labels_air_4_h_are_4_h():
    assert wait_h(4, drawn(span(0, None, ROOM))) == 4.0


def test_case_b_at_10_c_4_h_take_8():
    assert wait_h(4, drawn(span(0, None, Air(10, 50)))) == 8.0


def test_case_c_two_hours_at_20_and_the_rest_at_10():
    """2 + 2 / 0.5 = 6 h."""
    assert wait_h(4, drawn(span(0, 2, ROOM), span(2, None, Air(10, 50)))) == 6.0


def test_case_d_a_room_that_cools_from_20_to_10_in_8_h():
    """E(8) = 8 (0.5 - 1) / ln 0.5 = 4 / ln 2 = 5.7708 h, where the mean of both ends says 6.0;
    E = 4 at -8 log2(1 - 0.5 ln 2) = 4.9112 h."""
    met = drawn(span(0, 8, ROOM, ends=[Air(10, 50)]), span(8, None, Air(10, 50)))
    assert gained(met, WAIT, at(8)) == pytest.approx(4 / log(2), abs=ONE_MINUTE_H)
    assert wait_h(4, met) == pytest.approx(-8 * log2(1 - 0.5 * log(2)), abs=ONE_MINUTE_H)


def test_case_d_read_every_hour_by_a_logger():
    met = standing(read_room(*((hour, 20 - 1.25 * hour, 50) for hour in range(9))))
    assert gained(met, WAIT, at(8)) == pytest.approx(4 / log(2), abs=ONE_MINUTE_H)
    assert wait_h(4, met) == pytest.approx(4.9112, abs=ONE_MINUTE_H)


@pytest.mark.parametrize("of", [IN_DAMP, law(Mechanism.WATER, ROOM)])
def test_case_e_waterborne_in_damp_air(of):
    """20 °C and 70 %: (1 - 0.7) / (1 - 0.5) = 0.6, so 2 h take 3.3333 h."""
    damp = Counting(of, Clock.WAIT)
    assert wait_h(2, drawn(span(0, None, Air(20, 70))), damp) == pytest.approx(10 / 3)


@pytest.mark.parametrize("of", [FROM_20, law(Mechanism.OXIDATION, ROOM)])
def test_case_f_a_night_below_the_limit_stops_the_clock(of):
    """Coat at 20:00; 2 h at 15, 8 h at 4 °C (limit 5 °C), then 15 °C: dry at 09:39:25."""
    met = drawn(span(2, 4, Air(15, 50)), span(4, 12, Air(4, 50)), span(12, None, Air(15, 50)))
    counting = Counting(of, Clock.WAIT, Limits(min_c=Limit(5.0, "")))
    dry = wait_h(4, met, counting)
    assert dry == pytest.approx(15 + 39 / 60 + 25 / 3600, abs=1 / 3600)


def test_case_g_cooler_and_damper_at_once():
    """20 to 12 °C and 50 to 80 % in 6 h, waterborne: E(6) = 3.35099 h, where the mean of both
    ends says 3.689; E = 3 at 4.75566 h."""
    met = drawn(span(0, 6, ROOM, ends=[Air(12, 80)]), span(6, None, Air(12, 80)))
    counting = Counting(IN_DAMP, Clock.WAIT)
    assert gained(met, counting, at(6)) == pytest.approx(3.35099, abs=ONE_MINUTE_H)
    assert wait_h(3, met, counting) == pytest.approx(4.75566, abs=ONE_MINUTE_H)


def test_case_h_by_the_law_of_maturity():
    """ASTM C1074 with Q = 5000 K at 10 °C: 4 / 0.547512 = 7.3058 h."""
    counting = Counting(OwnLaw(arrhenius(5000)), Clock.WAIT)
    assert wait_h(4, drawn(span(0, None, Air(10, 50))), counting) == pytest.approx(7.3058, abs=5e-5)


# --- the maturity of concrete, through the same adding up -------------------------------------


def scaled(rate, by: float) -> OwnLaw:
    """Scale a law so that it stays between the slowest pace and 1: uncapped on a wait's clock."""
    return OwnLaw(lambda t, rh: rate(t, rh) / by)


def nurse_saul(datum_c: float):
    """Return the temperature above a datum, °C."""
    return lambda t, _rh: t - datum_c


@pytest.mark.parametrize(
    "month",
    [
        drawn(span(0, None, Air(15, 50))),
        # The law is linear: a month that warms evenly from 10 to 20 °C gives the same.
        drawn(span(0, 28 * 24, Air(10, 50), ends=[Air(20, 50)]), span(28 * 24, None, ROOM)),
    ],
)
def test_nurse_saul_maturity_of_28_days_at_15_c_is_728_degree_days(month):
    """Textbook example: 28 d (15 + 11) = 728 °C d, datum -11 °C. Counted in hundreds of °C h."""
    counting = Counting(scaled(nurse_saul(-11), 100), Clock.WAIT)
    assert gained(month, counting, at(28 * 24)) * 100 / 24 == pytest.approx(728, abs=1e-6)


# Our three-segment case: 4 h at 15, 8 h at 20, then 25 °C; reference 20 °C.
THREE = drawn(span(0, 4, Air(15, 50)), span(4, 12, Air(20, 50)), span(12, None, Air(25, 50)))


@pytest.mark.parametrize(
    ("rate", "equivalent_h"),
    [
        (doubling, 19.314),
        (arrhenius(5000), 18.962),
        (arrhenius(41_500 / 8.314462618), 18.960),
        (lambda t, _rh: (t + 10) / 30, 18.333),
        (lambda t, _rh: t / 20, 18.5),
    ],
)
def test_three_stretches_uncapped_by_five_laws_of_maturity(rate, equivalent_h):
    """Computed apart; by a doubling 4 x 0.7071 + 8 x 1 + 6 x 1.4142 = 19.314 h in 18."""
    counting = Counting(scaled(rate, 2), Clock.WAIT)
    assert 2 * gained(THREE, counting, at(18)) == pytest.approx(equivalent_h, abs=6e-4)
    reached = reach(gained(THREE, counting, at(18)), THREE, counting)
    assert hours_until(reached.moment) == pytest.approx(18.0, abs=1e-6)


def test_three_stretches_as_a_wait_are_never_shortened_by_the_warm_one():
    """By hand: 4 x 0.70711 + 8 + 6 x 1 = 16.82843 h at 18 h; 18 h are reached at 19.17157 h."""
    assert gained(THREE, WAIT, at(18)) == pytest.approx(16.82843, abs=1e-5)
    assert wait_h(18.0, THREE) == pytest.approx(19.17157, abs=1e-5)


def test_three_stretches_as_a_window_are_never_lengthened_by_the_cold_one():
    """By hand: 4 x 1 + 8 + 6 x 1.41421 = 20.48528 h at 18 h; 18 h are gone at 16.24264 h."""
    assert gained(THREE, WINDOW, at(18)) == pytest.approx(20.48528, abs=1e-5)
    assert wait_h(18.0, THREE, WINDOW) == pytest.approx(16.24264, abs=1e-5)


# --- caps, limits, what is not known ----------------------------------------------------------


def test_a_cap_is_met_in_the_middle_of_a_ramp():
    """By hand, 10 to 30 °C in 8 h: below 20 °C 2 / ln 2, above it 4 h as a wait; a window 4 h
    and 4 / ln 2."""
    met = drawn(span(0, 8, Air(10, 50), ends=[Air(30, 50)]), span(8, None, Air(30, 50)))
    assert gained(met, WAIT, at(8)) == pytest.approx(2 / log(2) + 4, abs=ONE_MINUTE_H)
    assert gained(met, WINDOW, at(8)) == pytest.approx(4 + 4 / log(2), abs=ONE_MINUTE_H)


def test_steady_air_is_one_step_and_air_that_changes_goes_by_quarter_hours():
    """Each counts by its middle; where it runs more than half a degree in one, by half degrees."""
    pieces = WAIT.pieces()
    assert pieces(span(0, 200, ROOM)) == [(at(0), 1.0)]
    hour = pieces(span(0, 1, Air(10, 50), ends=[Air(12, 50)]))
    assert [moment for moment, _ in hour] == [at(n / 4) for n in range(4)]
    assert [k for _, k in hour] == pytest.approx([doubling(10.25 + n / 2, 50) for n in range(4)])
    assert len(pieces(span(0, 1, Air(-10, 50), ends=[Air(10, 50)]))) == 40


def test_what_a_logger_reads_within_a_quarter_hour_counts():
    """Three minutes at 2 °C between readings at 20 °C: below the limit it stands still."""
    rows = [(0, 20, 50), (0.05, 2, 50), (0.1, 2, 50), (0.15, 20, 50), (0.25, 20, 50)]
    counting = Counting(OwnLaw(lambda _t, _rh: 1.0), Clock.WAIT, Limits(min_c=Limit(11.0, "")))
    # Half of the way down, half of the way up, and all between them.
    assert gained(standing(read_room(*rows)), counting, at(0.25)) == pytest.approx(0.15)


def test_a_limit_is_crossed_in_the_middle_of_a_ramp():
    """By hand, 20 to 0 °C in 8 h with a limit of 10 °C: the first 4 h count, 2 / ln 2."""
    met = drawn(span(0, 8, ROOM, ends=[Air(0, 50)]), span(8, None, ROOM))
    counting = Counting(FROM_20, Clock.WAIT, Limits(min_c=Limit(10.0, "")))
    assert gained(met, counting, at(8)) == pytest.approx(2 / log(2), abs=ONE_MINUTE_H)


def test_dew_on_the_work_stops_a_wait_though_no_humidity_is_forbidden():
    """A gauge that runs from 90 to 110 % in 4 h: after 2 h the air is saturated."""
    met = drawn(span(0, 4, Air(20, 90), ends=[Air(20, 110)]), span(4, None, ROOM))
    counting = Counting(FROM_20, Clock.WAIT, Limits())
    assert gained(met, counting, at(4)) == pytest.approx(2.0, abs=1e-9)


def test_air_that_never_lets_it_dry_has_no_date():
    counting = Counting(FROM_20, Clock.WAIT, Limits(min_c=Limit(5.0, "")))
    reached = reach(4.0, drawn(span(0, 3, ROOM), span(3, None, Air(4, 50))), counting)
    assert reached.moment is None
    assert reached.hours == Hours(measured=3.0)


def test_in_saturated_air_the_slowest_pace_keeps_dates_finite():
    """Our own assumption: nothing dries slower than a twentieth of the label's pace."""
    wet = Counting(law(Mechanism.WATER, ROOM), Clock.WAIT)
    assert wait_h(1.0, drawn(span(0, None, Air(20, 100))), wet) == pytest.approx(1 / SLOWEST)


def test_real_hours_are_counted_apart_by_how_their_air_is_known():
    met = drawn(
        span(0, 3, ROOM),
        span(3, 5, ROOM, known=Known.USUAL),
        span(5, 6, ROOM, known=Known.UNKNOWN),
        span(6, None, known=Known.UNKNOWN),
    )
    hours = reach(8.0, met, WAIT).hours
    assert hours == Hours(measured=3.0, usual=2.0, unknown=3.0, unread=2.0)


def test_the_last_stay_must_have_no_end():
    with pytest.raises(ValueError, match="no end"):
        reach(4.0, AirMet((Leg(read_room((0, 20, 50)), at(0), at(2)),)), WAIT)


@pytest.mark.parametrize("clock", Clock)
def test_a_room_never_read_counts_label_time(clock):
    nothing_known = span(0, None, known=Known.UNKNOWN)
    for of in LAWS:
        assert Counting(of, clock).pace(nothing_known) == 1.0
        assert wait_h(7.5, drawn(nothing_known), Counting(of, clock)) == 7.5


def test_between_two_readings_a_wait_takes_the_slower_and_a_window_the_faster():
    of, either = law(Mechanism.OXIDATION), span(0, None, Air(13, 50), Air(33, 50))
    assert Counting(of, Clock.WAIT).pace(either) == pytest.approx(0.5)
    assert Counting(of, Clock.WINDOW).pace(either) == pytest.approx(2.0)


def test_where_two_airs_change_places_the_slower_goes_on_counting():
    """By hand: one air from 20 to 10 °C, one from 10 to 20 °C in 8 h: the colder of them goes
    from 10 to 15 and back to 10 °C, 2 x 4 x (0.70711 - 0.5) / ln(0.70711 / 0.5) = 4.78062 h."""
    cold, met = Air(10, 50), 8 * (2**-0.5 - 0.5) / log(2**0.5)
    crossing = drawn(span(0, 8, ROOM, cold, ends=[cold, ROOM]), span(8, None, ROOM))
    assert gained(crossing, WAIT, at(8)) == pytest.approx(met, abs=ONE_MINUTE_H)


def test_carried_from_room_to_room_each_counts_while_it_stands_there():
    """2 h at 20 °C and 2 h at 10 °C are 3 h; the rest of 4 h at 20 °C again: 5 h."""
    shop, shed = read_room((-1, 20, 50)), read_room((-1, 10, 50))
    met = air_met([Stay(at(-9), shop), Stay(at(2), shed), Stay(at(4), shop)], at(0))
    assert gained(met, WAIT, at(4)) == pytest.approx(3.0)
    assert wait_h(4, met) == pytest.approx(5.0)


def test_counted_from_a_later_moment_the_hours_on_the_way_are_all_of_it():
    reached = reach(2.0, drawn(span(0, None, ROOM)), WAIT, since=at(3))
    assert hours_until(reached.moment) == 5.0
    assert reached.hours == Hours(measured=5.0)


def test_films_of_one_room_and_law_share_their_sums():
    """A film that is older than all that were asked about before counts the same."""
    rows = [(hour, 12 + hour % 5, 50) for hour in range(48)]
    shared, of = read_room(*rows), law(Mechanism.OXIDATION)
    counting = Counting(of, Clock.WAIT)
    for start in (30.0, 7.5, 20.25, 0.0):
        late = standing(shared, hour=start)
        alone = standing(read_room(*rows), hour=start)
        assert gained(late, counting, at(start + 15)) == pytest.approx(
            gained(alone, counting, at(start + 15)), abs=1e-10
        )
        assert hours_until(reach(6.0, late, counting).moment) == pytest.approx(
            hours_until(reach(6.0, alone, counting).moment), abs=1e-8
        )
