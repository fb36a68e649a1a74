"""The air of a room and of a piece: readings, the hours between them, the coldest night, moves."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.met import Stay, air_met
from finishlog.core.air.psychrometrics import Air, cooled, dew_point_c
from finishlog.core.air.room import (
    JOINED_WITHIN,
    READING_HOLDS,
    READING_SPEAKS_FOR,
    READING_STAYS,
    RoomAir,
)
from finishlog.core.air.span import AirSpan, Known
from finishlog.core.air.usual_day import UsualDay, UsualHour
from tests.air_of import read_room
from tests.shop_of import at, hours_until

WARM, COLD = Air(20.0, 50.0), Air(10.0, 70.0)


def room(*readings: tuple[float, Air], coldest: float | None = None) -> RoomAir:
    rows = [(hour, air.temperature_c, air.humidity_pct) for hour, air in readings]
    return read_room(*rows, coldest=coldest)


def room_spans(of: RoomAir, hour: float) -> tuple[AirSpan, ...]:
    return tuple(of.course.between(at(hour), None))


def met_spans(stays: list[Stay], hour: float) -> tuple[AirSpan, ...]:
    return tuple(air_met(stays, at(hour)).until(None))


def covering(spans: tuple[AirSpan, ...], hour: float) -> AirSpan:
    """Return the span that holds at an hour."""
    return next(s for s in spans if s.start <= at(hour) and (s.end is None or at(hour) < s.end))


def test_a_room_that_was_never_read_has_no_air_and_is_not_measured():
    (only,) = room_spans(RoomAir(), 0)
    assert (only.start, only.end, only.airs, only.known) == (at(0), None, (), Known.UNKNOWN)


def test_a_reading_holds_for_a_day_and_no_longer():
    """Our own rule: yesterday's reading says nothing about tonight."""
    spans = room_spans(room((0, WARM)), 0)
    assert covering(spans, 23.9).measured
    assert not covering(spans, 24.1).measured
    assert covering(spans, 24.1).airs == (WARM,), "reckoned by the nearest air there is"
    assert spans[-1].end is None


def test_what_was_read_is_told_from_what_is_held_to_stay():
    spans = room_spans(room((0, WARM), (12, COLD)), 0)
    assert [covering(spans, hour).known for hour in (1, 11, 13, 35, 37)] == [
        Known.MEASURED,
        Known.MEASURED,
        Known.HELD,
        Known.HELD,
        Known.UNKNOWN,
    ]


def test_a_room_that_it_was_carried_through_in_no_time_counts_for_nothing():
    """Two moves of one minute: a slip of the tongue, and no frost."""
    stays = [Stay(at(-9), room((-9, WARM))), Stay(at(1), room((0, COLD)))]
    again = [*stays, Stay(at(1), room((0, WARM)))]
    assert all(span.airs == (WARM,) for span in met_spans(again, 0))


def test_a_reading_speaks_for_the_few_hours_before_it():
    spans = room_spans(room((10, WARM)), 0)
    assert not covering(spans, 5.9).measured
    assert covering(spans, 6.1).measured
    assert covering(spans, 6.1).airs == (WARM,)


def test_between_two_readings_both_count():
    spans = room_spans(room((0, WARM), (12, COLD)), 0)
    for hour in (1, 7, 11):
        assert set(covering(spans, hour).airs) == {WARM, COLD}
        assert covering(spans, hour).measured
    assert covering(spans, 13).airs == (COLD,)


def test_what_a_logger_reads_is_joined_by_a_straight_line():
    """Our own rule: readings at most two hours apart are taken at their word."""
    of = room((0, WARM), (2, COLD), (3, COLD))
    (first, second) = [s for s in room_spans(of, 0) if s.end and s.end <= at(3)]
    assert (first.airs, first.ends, first.measured) == ((WARM,), (COLD,), True)
    assert first.air_at(at(0.5)) == Air(17.5, 55.0)
    assert of.expected_at(at(1.5)) == Air(12.5, 65.0)
    assert (first.coldest_c, first.dampest_pct) == (10.0, 70.0)
    assert second.is_steady
    apart = room_spans(room((0, WARM), (2.01, COLD)), 0)
    assert set(covering(apart, 1).airs) == {WARM, COLD}


def test_what_a_logger_read_is_never_overruled_by_a_usual_day():
    usual = UsualDay((UsualHour(6 * 60, 8, 80), UsualHour(14 * 60, 16, 60)))
    of = read_room(*((float(hour), 18, 55) for hour in range(0, 48, 2)), usual=(usual,))
    for span in of.course.between(at(0), at(46)):
        assert span.airs == (Air(18, 55),)
        assert span.known is Known.MEASURED


def test_two_readings_of_one_moment_are_a_leap():
    """A heater switched on: read before and read after."""
    of = room((0, COLD), (1, COLD), (1, WARM), (2, WARM))
    assert covering(room_spans(of, 0), 0.99).ends == (COLD,)
    assert covering(room_spans(of, 0), 1).airs == (WARM,)


def test_the_coldest_that_a_room_may_be():
    of = room((0, WARM), (1, COLD), (30, WARM), coldest=4.0)
    assert of.coldest_between(at(0), at(0.5)) == 15.0
    assert of.coldest_between(at(0), at(7)) == 10.0
    assert of.coldest_between(at(0), at(20)) == 4.0
    assert RoomAir().coldest_between(at(0), at(20)) is None


def test_the_nearest_reading_stands_first():
    """What damages a film or forbids a coat is judged by the first: near ten, by what ten read."""
    spans = room_spans(room((0, WARM), (12, COLD)), 0)
    assert covering(spans, 1).airs[0] == WARM
    assert covering(spans, 11).airs[0] == COLD


def test_a_gap_of_days_between_readings_is_marked():
    spans = room_spans(room((0, WARM), (72, COLD)), 0)
    assert covering(spans, 20).measured
    assert not covering(spans, 30).measured
    assert not covering(spans, 67.9).measured
    assert covering(spans, 68.1).measured
    assert set(covering(spans, 30).airs) == {WARM, COLD}


def test_some_hours_after_a_reading_the_coldest_night_counts_too():
    spans = room_spans(room((0, WARM), coldest=8.0), 0)
    assert covering(spans, 5).airs == (WARM,), "this evening's reading stays true for some hours"
    night = covering(spans, 8).airs
    assert night[0] == WARM
    assert night[1].temperature_c == 8.0
    assert night[1].humidity_pct == 100.0, "9.3 °C is its dew point: it is dew by then"


def test_the_morning_reading_speaks_for_the_hours_before_it_in_place_of_the_night():
    spans = room_spans(room((0, WARM), (14, COLD), coldest=6.0), 0)
    assert any(a.temperature_c == 6.0 for a in covering(spans, 9.9).airs)
    assert set(covering(spans, 10.1).airs) == {WARM, COLD}


def test_a_room_already_colder_than_its_coldest_night_is_as_it_was_read():
    spans = room_spans(room((0, COLD), coldest=12.0), 0)
    assert covering(spans, 10).airs == (COLD,)


def test_the_reading_that_holds_now():
    seen = room((0, WARM), (12, COLD))
    assert seen.measured_at(at(11)).air == WARM
    assert seen.measured_at(at(12)).air == COLD
    assert seen.measured_at(at(-1)) is None
    assert seen.measured_at(at(36.1)) is None


def test_a_piece_meets_the_air_of_each_room_while_it_is_there():
    shop, attic = room((0, WARM)), room((0, COLD))
    spans = met_spans([Stay(at(-100), shop), Stay(at(5), attic)], 1)
    assert covering(spans, 4.9).airs == (WARM,)
    assert covering(spans, 5.1).airs == (COLD,)
    assert spans[0].start == at(1)


def test_carried_twice_before_the_coat_only_the_last_room_counts():
    shop, attic, hall = room((0, WARM)), room((0, COLD)), RoomAir()
    stays = [Stay(at(-9), shop), Stay(at(-5), attic), Stay(at(-2), hall)]
    assert all(s.airs == () and s.known is Known.UNKNOWN for s in met_spans(stays, 0))


def test_a_piece_whose_room_nobody_said_has_unknown_air():
    (only,) = met_spans([], 0)
    assert not only.measured
    late = met_spans([Stay(at(4), room((4, WARM)))], 0)
    assert covering(late, 1).airs == ()
    assert covering(late, 5).airs == (WARM,)


def test_cooling_air_keeps_its_water_down_to_the_dew_point():
    """20 °C and 50 % have their dew point at 9.27 °C (psychrolib 2.5.0)."""
    assert cooled(WARM, 9.27).humidity_pct == pytest.approx(100, abs=0.1)
    assert cooled(WARM, 15).humidity_pct < 100
    assert dew_point_c(cooled(WARM, 15)) == pytest.approx(dew_point_c(WARM), abs=0.02)
    assert cooled(WARM, 5).humidity_pct == 100.0, "the rest is dew on the work"


# --- properties ------------------------------------------------------------------------------

airs = st.builds(Air, st.floats(-5, 40), st.floats(5, 100))
hours = st.floats(-200, 200)
minutes = st.integers(-12_000, 12_000) | st.integers(0, 600)


@st.composite
def rooms(draw: st.DrawFn) -> RoomAir:
    moments = sorted(draw(st.lists(minutes, max_size=8, unique=True)))
    readings = ((minute / 60, draw(airs)) for minute in moments)
    return room(*readings, coldest=draw(st.none() | st.floats(-10, 25)))


@st.composite
def stays(draw: st.DrawFn) -> list[Stay]:
    moments = sorted(draw(st.lists(hours, max_size=4)))
    return [Stay(at(h), draw(rooms())) for h in moments]


@given(stays(), hours)
def test_spans_follow_each_other_without_a_gap_and_the_last_has_no_end(stood, start):
    spans = met_spans(stood, start)
    assert spans[0].start == at(start)
    assert spans[-1].end is None
    for one, following in pairwise(spans):
        assert one.end == following.start
        assert one.start < following.start


@given(rooms(), hours)
def test_what_no_reading_covers_is_marked(of, start):
    """A span is measured exactly where a reading lies at most a day before or 4 h after it."""
    for one in room_spans(of, start):
        assert one.known is not Known.USUAL, "nobody told of a usual day"
        middle = one.start + ((one.end or at(900)) - one.start) / 2
        near = any(
            r.at <= middle < r.at + READING_HOLDS or r.at - READING_SPEAKS_FOR <= middle < r.at
            for r in of.readings
        )
        if one.end is not None:
            assert one.measured == near
        else:
            assert not one.measured


@given(rooms(), hours)
def test_a_room_that_was_read_once_is_always_reckoned_by_some_air(of, start):
    for one in room_spans(of, start):
        assert bool(one.airs) == bool(of.readings)


@given(rooms())
def test_a_span_tells_of_the_readings_around_it_and_of_no_others(of):
    for one in of.course.spans:
        before = [r.air for r in of.readings if r.at <= one.start][-1:]
        after = [r.air for r in of.readings if r.at > one.start][:1]
        # The usual night may by chance be what was read at some other time.
        nights = {
            cooled(air, of.coldest_night_c) for air in before if of.coldest_night_c is not None
        }
        read = {a for a in one.airs if a in {r.air for r in of.readings}} - nights
        assert set(before) <= set(one.airs)
        assert read <= {*before, *after}


@given(rooms())
def test_within_hours_of_a_reading_no_night_is_supposed(of):
    read = {r.air for r in of.readings}
    for one in of.course.spans:
        last = [r for r in of.readings if r.at <= one.start][-1:]
        if last and one.start - last[0].at < READING_STAYS:
            assert set(one.airs) <= read


@given(rooms())
def test_only_a_loggers_steps_run_from_one_air_to_another(of):
    for one in of.course.spans:
        if one.ends:
            assert one.end - one.start <= JOINED_WITHIN
            assert len(one.airs) == len(one.ends) == 1


def test_hours_are_told_apart_from_the_start():
    spans = room_spans(room((0, WARM)), 2)
    assert [None if s.end is None else hours_until(s.end) for s in spans] == [6.0, 24.0, None]
    assert [hours_until(s.start) for s in spans] == [2.0, 6.0, 24.0]
