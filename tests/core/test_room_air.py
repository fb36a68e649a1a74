"""The air that a piece met: readings, the hours between them, the coldest night, moves."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air import Air, dew_point_c
from finishlog.core.records import Reading
from finishlog.core.room_air import (
    READING_HOLDS,
    READING_SPEAKS_FOR,
    READING_STAYS,
    AirSpan,
    RoomAir,
    Stay,
    air_met,
    cooled,
    room_spans,
)
from tests.shop_of import at, hours_until, when

WARM, COLD = Air(20.0, 50.0), Air(10.0, 70.0)


def reading(hour: float, air: Air, room: int = 1) -> Reading:
    n = round(hour * 1000) + 10_000_000
    return Reading(id=n, act=n, when=when(hour), typed_at=at(hour), room=room, air=air)


def room(*readings: tuple[float, Air], coldest: float | None = None) -> RoomAir:
    return RoomAir(tuple(reading(h, air) for h, air in readings), coldest, 1)


def covering(spans: tuple[AirSpan, ...], hour: float) -> AirSpan:
    """Return the span that holds at an hour."""
    return next(s for s in spans if s.start <= at(hour) and (s.end is None or at(hour) < s.end))


def test_a_room_that_was_never_read_has_no_air_and_is_not_measured():
    (only,) = room_spans(RoomAir(), at(0))
    assert (only.start, only.end, only.airs, only.measured) == (at(0), None, (), False)


def test_a_reading_holds_for_a_day_and_no_longer():
    """Our own rule: yesterday's reading says nothing about tonight."""
    spans = room_spans(room((0, WARM)), at(0))
    assert covering(spans, 23.9).measured
    assert not covering(spans, 24.1).measured
    assert covering(spans, 24.1).airs == (WARM,), "reckoned by the nearest air there is"
    assert spans[-1].end is None


def test_a_reading_speaks_for_the_few_hours_before_it():
    spans = room_spans(room((10, WARM)), at(0))
    assert not covering(spans, 5.9).measured
    assert covering(spans, 6.1).measured
    assert covering(spans, 6.1).airs == (WARM,)


def test_between_two_readings_both_count():
    spans = room_spans(room((0, WARM), (12, COLD)), at(0))
    for hour in (1, 7, 11):
        assert set(covering(spans, hour).airs) == {WARM, COLD}
        assert covering(spans, hour).measured
    assert covering(spans, 13).airs == (COLD,)


def test_the_nearest_reading_stands_first():
    """What damages a film or forbids a coat is judged by the first: near ten, by what ten read."""
    spans = room_spans(room((0, WARM), (12, COLD)), at(0))
    assert covering(spans, 1).airs[0] == WARM
    assert covering(spans, 11).airs[0] == COLD


def test_a_gap_of_days_between_readings_is_marked():
    spans = room_spans(room((0, WARM), (72, COLD)), at(0))
    assert covering(spans, 20).measured
    assert not covering(spans, 30).measured
    assert not covering(spans, 67.9).measured
    assert covering(spans, 68.1).measured
    assert set(covering(spans, 30).airs) == {WARM, COLD}


def test_some_hours_after_a_reading_the_coldest_night_counts_too():
    spans = room_spans(room((0, WARM), coldest=8.0), at(0))
    assert covering(spans, 5).airs == (WARM,), "this evening's reading stays true for some hours"
    night = covering(spans, 8).airs
    assert night[0] == WARM
    assert night[1].temperature_c == 8.0
    assert night[1].humidity_pct == 100.0, "9.3 °C is its dew point: it is dew by then"


def test_the_morning_reading_speaks_for_the_hours_before_it_in_place_of_the_night():
    spans = room_spans(room((0, WARM), (14, COLD), coldest=6.0), at(0))
    assert any(a.temperature_c == 6.0 for a in covering(spans, 9.9).airs)
    assert set(covering(spans, 10.1).airs) == {WARM, COLD}


def test_a_room_already_colder_than_its_coldest_night_is_as_it_was_read():
    spans = room_spans(room((0, COLD), coldest=12.0), at(0))
    assert covering(spans, 10).airs == (COLD,)


def test_the_reading_that_holds_now():
    seen = room((0, WARM), (12, COLD))
    assert seen.measured_at(at(11)).air == WARM
    assert seen.measured_at(at(12)).air == COLD
    assert seen.measured_at(at(-1)) is None
    assert seen.measured_at(at(36.1)) is None


def test_a_piece_meets_the_air_of_each_room_while_it_is_there():
    shop, attic = room((0, WARM)), room((0, COLD))
    spans = air_met([Stay(at(-100), shop), Stay(at(5), attic)], at(1))
    assert covering(spans, 4.9).airs == (WARM,)
    assert covering(spans, 5.1).airs == (COLD,)
    assert spans[0].start == at(1)


def test_carried_twice_before_the_coat_only_the_last_room_counts():
    shop, attic, hall = room((0, WARM)), room((0, COLD)), RoomAir()
    stays = [Stay(at(-9), shop), Stay(at(-5), attic), Stay(at(-2), hall)]
    assert all(s.airs == () and not s.measured for s in air_met(stays, at(0)))


def test_a_piece_whose_room_nobody_said_has_unknown_air():
    (only,) = air_met([], at(0))
    assert not only.measured
    late = air_met([Stay(at(4), room((4, WARM)))], at(0))
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


@st.composite
def rooms(draw: st.DrawFn) -> RoomAir:
    moments = sorted(draw(st.lists(hours, max_size=6, unique=True)))
    readings = tuple(reading(h, draw(airs)) for h in moments)
    return RoomAir(readings, draw(st.none() | st.floats(-10, 25)), 1)


@st.composite
def stays(draw: st.DrawFn) -> list[Stay]:
    moments = sorted(draw(st.lists(hours, max_size=4)))
    return [Stay(at(h), draw(rooms())) for h in moments]


@given(stays(), hours)
def test_spans_follow_each_other_without_a_gap_and_the_last_has_no_end(stood, start):
    spans = air_met(stood, at(start))
    assert spans[0].start == at(start)
    assert spans[-1].end is None
    for one, following in pairwise(spans):
        assert one.end == following.start
        assert one.start < following.start


@given(rooms(), hours)
def test_what_no_reading_covers_is_marked(of, start):
    """A span is measured exactly where a reading lies at most a day before or 4 h after it."""
    for one in room_spans(of, at(start)):
        middle = one.start + ((one.end or at(900)) - one.start) / 2
        near = any(
            r.when.latest <= middle < r.when.latest + READING_HOLDS
            or r.when.latest - READING_SPEAKS_FOR <= middle < r.when.latest
            for r in of.readings
        )
        if one.end is not None:
            assert one.measured == near
        else:
            assert not one.measured


@given(rooms(), hours)
def test_a_room_that_was_read_once_is_always_reckoned_by_some_air(of, start):
    for one in room_spans(of, at(start)):
        assert bool(one.airs) == bool(of.readings)


@given(rooms(), hours)
def test_a_span_tells_of_the_readings_around_it_and_of_no_others(of, start):
    for one in room_spans(of, at(start)):
        before = [r.air for r in of.readings if r.when.latest <= one.start][-1:]
        after = [r.air for r in of.readings if r.when.latest > one.start][:1]
        # The usual night may by chance be what was read at some other time.
        nights = {
            cooled(air, of.coldest_night_c) for air in before if of.coldest_night_c is not None
        }
        read = {a for a in one.airs if a in {r.air for r in of.readings}} - nights
        assert set(before) <= set(one.airs)
        assert read <= {*before, *after}


@given(rooms(), st.floats(-200, 200))
def test_within_hours_of_a_reading_no_night_is_supposed(of, start):
    read = {r.air for r in of.readings}
    for one in room_spans(of, at(start)):
        last = [r for r in of.readings if r.when.latest <= one.start][-1:]
        if last and one.start - last[0].when.latest < READING_STAYS:
            assert set(one.airs) <= read


def test_hours_are_told_apart_from_the_start():
    spans = room_spans(room((0, WARM)), at(2))
    assert [None if s.end is None else hours_until(s.end) for s in spans] == [6.0, 24.0, None]
    assert [s.length_h for s in spans] == [4.0, 18.0, None]
