"""What holds of the drying clock in any air: it never hurries a coat, and every hour is told of.

The air is random, -5 to 38 °C and up to 99 % RH, by the minute or with gaps of days; the films are
of the published classes.
"""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.met import AirMet, Stay, air_met
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint, AirSpan, Known
from finishlog.core.air.supposed import Heat
from finishlog.core.air.usual_day import UsualDay, UsualHour
from finishlog.core.clock.counting import SLOWEST, Clock, Counting
from finishlog.core.clock.reach import Reached, gained, reach
from finishlog.core.film.layers import Layer, laws_of
from finishlog.core.finish.classes import Limit, Limits, WindowKind
from finishlog.core.finish.stages import Stage
from tests.air_of import LAWS, ONE_MINUTE_H, Row, drawn, read_room, span, standing
from tests.examples import examples
from tests.shop_of import FACTS, Story, at, hours_until

HOUR = timedelta(hours=1)
# Instants are kept to the microsecond; a wait at the slowest pace stretches that twentyfold.
SAME_H = 1e-6
# Counted by quarter hours that are cut elsewhere, one air may seem warmer by so much.
SECOND_H = 1 / 3600
CLASSES = list(FACTS.classes)
CLOSING = [
    of.key
    for of in FACTS.classes.values()
    if of.window.kind is WindowKind.CLOSES and of.window.closes
]

celsius, humidity = st.floats(-5, 38), st.floats(5, 99)
airs = st.builds(Air, celsius, humidity)
laws = st.sampled_from(LAWS)
label_hours = st.floats(0.1, 200)
maybe_limits = st.none() | st.builds(
    Limits,
    st.none() | st.builds(Limit, st.floats(0, 18), st.just("")),
    st.none() | st.builds(Limit, st.floats(25, 36), st.just("")),
    st.none() | st.builds(Limit, st.floats(60, 90), st.just("")),
)


@st.composite
def countings(draw: st.DrawFn) -> Counting:
    """A wait, within limits or not, or a window."""
    of, clock = draw(laws), draw(st.sampled_from(Clock))
    return Counting(of, clock, draw(maybe_limits) if clock is Clock.WAIT else None)


@st.composite
def stretches(draw: st.DrawFn) -> tuple[AirSpan, ...]:
    """Air that stays or runs, of which up to three kinds are possible; the last for good."""
    spans, start = [], 0.0
    for length in [*draw(st.lists(st.floats(0.05, 72), max_size=5)), None]:
        near = draw(st.lists(airs, max_size=3))
        runs = length is not None and draw(st.booleans())
        ends = draw(st.lists(airs, min_size=len(near), max_size=len(near))) if runs else ()
        known = draw(st.sampled_from(Known))
        end = None if length is None else start + length
        spans.append(span(start, end, *near, known=known, ends=ends))
        start = end or start
    return tuple(spans)


@st.composite
def series(draw: st.DrawFn, *, hottest: float = 38.0, dampest: float = 99.0) -> list[Row]:
    """A logger's file: readings ten minutes to two hours apart, for up to two days."""
    every = draw(st.sampled_from([10, 30, 60, 120]))
    found = draw(
        st.lists(st.tuples(st.floats(-5, hottest), st.floats(5, dampest)), min_size=2, max_size=24)
    )
    return [(n * every / 60, t, rh) for n, (t, rh) in enumerate(found)]


@st.composite
def rooms(draw: st.DrawFn) -> RoomAir:
    """A room that was read now and then, with a usual day, a heater and cold nights, or not."""
    minutes = sorted(draw(st.lists(st.integers(-6_000, 6_000), max_size=6, unique=True)))
    hours = st.tuples(st.integers(0, 1439), celsius, st.none() | humidity)
    day = sorted(draw(st.lists(hours, max_size=4, unique_by=lambda h: h[0])), key=lambda h: h[0])
    begins = draw(st.floats(-50, 200))
    heat = Heat(at(begins), at(begins + draw(st.floats(0.5, 48))), draw(st.none() | celsius))
    return read_room(
        *((minute / 60, draw(celsius), draw(humidity)) for minute in minutes),
        coldest=draw(st.none() | celsius),
        usual=(UsualDay(tuple(UsualHour(*hour) for hour in day)),) if day else (),
        heats=draw(st.sampled_from([(), (heat,)])),
    )


def film(key: str, met: AirMet) -> Layer:
    """A coat of a class at hour 0, in some air."""
    of = FACTS.finish_class(key)
    story = Story()
    story.part()
    coat = story.coat(0, key)
    return Layer(coat=coat, of=of, air=met, window_air=met, law=laws_of(of, FACTS))


def ends_of(layer: Layer) -> list[datetime | None]:
    """Return all that its clocks say: the ends of its waits, and when its window closes."""
    waits = [layer.waits(figure) for figure in layer.coat.figures.stages.values()]
    return [moment for wait in waits for moment in (wait.low, wait.high)] + [layer.closes()]


def same(one: datetime | None, other: datetime | None) -> bool:
    if one is None or other is None:
        return one is other
    return abs(one - other) / HOUR < SAME_H


def not_sooner(one: datetime | None, other: datetime | None) -> bool:
    """Tell whether the first is no sooner than the second; None: never."""
    return one is None or (other is not None and (one - other) / HOUR > -SECOND_H)


def near(one: AirMet, other: AirMet, counting: Counting, hours: float) -> bool:
    """Tell whether two airs count alike, to a minute of the label.

    A minute less, and a minute more, lie on both sides: where a limit is crossed just then, a
    minute of the label may be a night.
    """
    less, more = (reach(hours + by, one, counting).moment for by in (-ONE_MINUTE_H, ONE_MINUTE_H))
    moment = reach(hours, other, counting).moment
    return not_sooner(moment, less) and not_sooner(more, moment)


# --- adding up --------------------------------------------------------------------------------


def paced(counting: Counting, near: list[Air]) -> float:
    """Return the capped pace in some air, put down once more."""
    limits = counting.limits
    if not near:
        return 1.0
    t, rh = near[0].temperature_c, near[0].humidity_pct
    if limits and (
        (limits.min_c and t < limits.min_c.value)
        or (limits.max_c and t > limits.max_c.value)
        or (limits.max_rh_pct and rh > limits.max_rh_pct.value)
        or rh >= 100
    ):
        return 0.0
    paces = [counting.law.k()(a.temperature_c, a.humidity_pct) for a in near]
    if counting.clock is Clock.WAIT:
        return min(1.0, max(SLOWEST, min(paces)))
    return max(1.0, *paces)


@given(countings(), st.lists(st.tuples(airs, airs), max_size=3), st.floats(0.05, 48))
def test_a_stretch_gains_what_many_small_steps_gain(counting, ramps, hours):
    """Midpoints of 2000 steps: a leap at a limit may cost one step, and there are few of them."""
    one = span(0, hours, *(a for a, _ in ramps), ends=[b for _, b in ramps])
    steps, total = 2000, 0.0
    for n in range(steps):
        share = (n + 0.5) / steps
        total += paced(
            counting,
            [
                Air(
                    a.temperature_c + share * (b.temperature_c - a.temperature_c),
                    a.humidity_pct + share * (b.humidity_pct - a.humidity_pct),
                )
                for a, b in ramps
            ],
        )
    met = drawn(one, span(hours, None, *(b for _, b in ramps)))
    assert gained(met, counting, at(hours)) == pytest.approx(
        hours * total / steps, abs=hours * 0.003
    )


@given(countings(), stretches())
def test_a_wait_is_never_shortened_and_a_window_never_lengthened(counting, spans):
    for stretch in spans:
        if counting.clock is Clock.WAIT:
            least = 0.0 if counting.limits else SLOWEST
            assert least <= counting.pace(stretch) <= 1.0
        else:
            assert counting.pace(stretch) >= 1.0


@given(countings(), label_hours, stretches())
def test_what_is_reached_was_gained(counting, hours, spans):
    met = drawn(*spans)
    moment = reach(hours, met, counting).moment
    if moment is not None:
        assert gained(met, counting, moment) == pytest.approx(hours, abs=SAME_H)


@given(countings(), label_hours, rooms())
def test_what_is_reached_in_a_room_was_gained_there(counting, hours, room):
    met = standing(room)
    moment = reach(hours, met, counting).moment
    if moment is not None:
        assert gained(met, counting, moment) == pytest.approx(hours, abs=SAME_H)


@given(countings(), label_hours, stretches(), st.floats(0, 100))
def test_more_hours_are_never_reached_sooner(counting, hours, spans, more):
    met = drawn(*spans)
    first, then = (reach(h, met, counting).moment for h in (hours, hours + more))
    assert not_sooner(then, first)


@given(countings(), label_hours, stretches(), st.floats(0.01, 0.99), st.integers(0, 5))
def test_cutting_a_stretch_in_two_changes_nothing(counting, hours, spans, where, n):
    """But for where the quarter hours lie."""
    n %= len(spans)
    one = spans[n]
    middle = one.start + (one.end - one.start if one.end else timedelta(hours=50)) * where
    parts = (one.cut(one.start, middle), one.cut(middle, one.end))
    whole, cut = drawn(*spans), drawn(*spans[:n], *parts, *spans[n + 1 :])
    assert gained(cut, counting, at(60)) == pytest.approx(
        gained(whole, counting, at(60)), abs=ONE_MINUTE_H
    )
    assert near(whole, cut, counting, hours)


# --- how the hours are known ------------------------------------------------------------------


def all_of(reached: Reached) -> float:
    hours = reached.hours
    return hours.measured + hours.held + hours.usual + hours.unknown


@examples(40)
@given(countings(), label_hours, st.lists(st.tuples(st.floats(0, 90), rooms()), max_size=3))
def test_measured_usual_and_unknown_hours_add_up_to_the_real_time(counting, hours, stood):
    stays = sorted((Stay(at(since), room) for since, room in stood), key=lambda s: s.since)
    reached = reach(hours, air_met(stays, at(0)), counting)
    assert 0 <= reached.hours.unread <= reached.hours.unknown + SAME_H
    if reached.moment is not None:
        assert all_of(reached) == pytest.approx(hours_until(reached.moment), abs=SAME_H)


def test_a_last_room_takes_no_hours_away_where_the_end_is_never_reached():
    """Carried late into a room that is too damp for good: no more is unread than is unknown."""
    law = next(iter(LAWS.values())) if isinstance(LAWS, dict) else next(iter(LAWS))
    damp = Counting(law, Clock.WAIT, Limits(None, None, Limit(60.0, "")))
    read_once = RoomAir((AirPoint(at(0), 0.0, 61.0, 1),), id=1)
    reached = reach(
        26.0, air_met([Stay(at(0), RoomAir(id=2)), Stay(at(25), read_once)], at(0)), damp
    )
    assert reached.moment is None
    assert reached.hours.unread <= reached.hours.unknown


# --- films ------------------------------------------------------------------------------------


@examples(40)
@given(st.sampled_from(CLASSES), rooms())
def test_no_wait_is_ever_shorter_than_the_labels_hours_in_real_time(key, room):
    layer = film(key, standing(room))
    for figure in layer.coat.figures.stages.values():
        wait = layer.waits(figure)
        assert wait.low is None or hours_until(wait.low) >= figure.low_h - SAME_H
        assert wait.high is None or hours_until(wait.high) >= figure.high_h - SAME_H


@examples(40)
@given(st.sampled_from(CLOSING), rooms())
def test_no_window_is_ever_longer_than_the_labels_hours_in_real_time(key, room):
    layer = film(key, standing(room))
    assert hours_until(layer.closes()) <= layer.coat.figures.window.closes.low_h + SAME_H


def worse(rows: list[Row], which: list[bool], by_c: float, by_pct: float) -> list[Row]:
    """Make some of the readings colder and damper."""
    return [
        (hour, t - by_c, min(99.0, rh + by_pct)) if change else (hour, t, rh)
        for (hour, t, rh), change in zip(rows, which * len(rows), strict=False)
    ]


@examples(40)
@given(st.data(), st.lists(st.booleans(), min_size=1, max_size=24))
def test_a_colder_or_damper_hour_never_makes_a_wait_shorter(data, which):
    """Below the most that the class allows: too hot is also outside its limits."""
    key = data.draw(st.sampled_from(CLASSES))
    most = FACTS.finish_class(key).limits.max_c
    rows = data.draw(series(hottest=most.value if most else 38.0))
    by_c, by_pct = data.draw(st.floats(0, 15)), data.draw(st.floats(0, 40))
    mild = film(key, standing(read_room(*rows)))
    harsh = film(key, standing(read_room(*worse(rows, which, by_c, by_pct))))
    for figure in mild.coat.figures.stages.values():
        assert not_sooner(harsh.waits(figure).low, mild.waits(figure).low)
        assert not_sooner(harsh.waits(figure).high, mild.waits(figure).high)


@examples(40)
@given(st.sampled_from(CLOSING), series(), st.lists(st.booleans(), min_size=1, max_size=24))
def test_a_warmer_hour_never_makes_a_window_longer(key, rows, which):
    warm = film(key, standing(read_room(*rows)))
    cold = film(key, standing(read_room(*worse(rows, which, 7.0, 0.0))))
    assert not_sooner(cold.closes(), warm.closes())


def with_more_readings(rows: list[Row], shares: list[float]) -> list[Row]:
    """Read the air in between as well: it was on the straight way."""
    more = list(rows)
    for (since, t, rh), (until, t2, rh2), share in zip(rows, rows[1:], shares, strict=False):
        minutes = round((until - since) * 60 * share)
        exact = minutes / 60 / (until - since)
        if 0 < exact < 1:
            more.append((since + minutes / 60, t + (t2 - t) * exact, rh + (rh2 - rh) * exact))
    return sorted(more)


@examples(40)
@given(countings(), label_hours, series(), st.lists(st.floats(0, 1), max_size=24))
def test_reading_more_often_what_runs_straight_changes_nothing(counting, hours, rows, shares):
    """But for where the quarter hours lie."""
    seldom, often = (standing(read_room(*r)) for r in (rows, with_more_readings(rows, shares)))
    assert gained(often, counting, at(60)) == pytest.approx(
        gained(seldom, counting, at(60)), abs=ONE_MINUTE_H
    )
    assert near(seldom, often, counting, hours)


def twin_of(room: RoomAir) -> RoomAir:
    return RoomAir(room.readings, room.coldest_night_c, 2, room.usual, room.heats)


@examples(40)
@given(st.sampled_from(CLASSES), rooms(), st.lists(st.floats(0, 100), max_size=4))
def test_moving_into_a_room_with_the_same_air_changes_nothing(key, room, moves):
    stays = [Stay(at(-1), room), *(Stay(at(hour), twin_of(room)) for hour in sorted(moves))]
    moved, stood = film(key, air_met(stays, at(0))), film(key, standing(room))
    assert all(map(same, ends_of(moved), ends_of(stood)))


@examples(40)
@given(st.sampled_from(CLASSES), rooms(), st.floats(0, 300))
def test_hours_done_are_those_of_the_wait(key, room, hour):
    """What `done_h` says is reached exactly when the wait is over."""
    layer = film(key, standing(room))
    for stage in (Stage.RECOAT, Stage.CLAMP):
        figure = layer.coat.figures.stages.get(stage)
        wait = layer.waits(figure) if figure else None
        if figure is None or wait is None:
            continue
        done = layer.done_h(figure, at(hour))
        over = wait.high is not None and wait.high <= at(hour)
        if abs(done - figure.high_h) > SAME_H:
            assert over is (done > figure.high_h)
