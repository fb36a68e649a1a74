"""A can that gives its hours at several temperatures: between its rows, and beyond them.

Rows are drawn at random, invented throughout; what they must obey is the trade's: never sooner than
the can, never sooner where it is colder, nothing read into the cold that the can does not speak of.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.met import AirMet, Leg
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint
from finishlog.core.clock.counting import Clock, Counting
from finishlog.core.clock.reach import least_printed, reach
from finishlog.core.film.layers import laws_of
from finishlog.core.finish.classes import YOUR_CAN, Colder, Figure
from finishlog.core.finish.rate_law import RateLaw, rate, slower_by
from tests.examples import examples
from tests.shop_of import FACTS

START = datetime(2026, 11, 24, 18, tzinfo=UTC)
CLASSES = (
    "spar-varnish",
    "conversion-varnish",
    "waterborne-clear",
    "shellac-2lb",
    "lacquer-sprayed",
)


@st.composite
def rows(draw: st.DrawFn) -> Figure:
    """Draw hours at two to four temperatures, no shorter where it is colder."""
    warm = draw(st.integers(4, 30))
    count = draw(st.integers(2, 4))
    steps = draw(st.lists(st.integers(1, 8), min_size=count - 1, max_size=count - 1))
    hours = draw(st.floats(0.5, 12))
    more = [draw(st.floats(1, 3)) for _ in steps]
    at, colder = float(warm), []
    high = hours
    for step, by in zip(steps, more, strict=True):
        at, high = at - step, high * by
        colder.append(Colder(at, high, high, high))
    return Figure(hours, hours, hours, YOUR_CAN, Air(warm, 50.0), colder=tuple(colder))


def law_of(key: str, figure: Figure) -> RateLaw:
    return laws_of(FACTS.finish_class(key), FACTS)(figure)


def steady(celsius: float, humidity: float = 50.0) -> AirMet:
    room = RoomAir(readings=tuple(
        AirPoint(START + timedelta(hours=h), celsius, humidity) for h in range(0, 24 * 40, 2)
    ))  # fmt: skip
    return AirMet((Leg(room, START, None),))


def hours_at(law: RateLaw, figure: Figure, met: AirMet) -> float:
    done = reach(figure.high_h, met, Counting(law, Clock.WAIT)).moment
    assert done is not None
    return (done - START) / timedelta(hours=1)


@given(st.sampled_from(CLASSES), rows())
@examples(60)
def test_at_its_own_temperatures_the_hours_are_the_cans(key: str, figure: Figure):
    law = law_of(key, figure)
    for degrees, row in zip(figure.at_c, figure.rows, strict=True):
        assert figure.high_h / rate(law, Air(degrees, 50.0)) == pytest.approx(row.high_h)


@given(st.sampled_from(CLASSES), rows(), st.floats(-5, 35), st.floats(0, 10), st.floats(20, 95))
@examples(200)
def test_colder_is_never_faster_within_the_rows_and_beyond(
    key: str, figure: Figure, celsius: float, colder: float, humidity: float
):
    law = law_of(key, figure)
    warm, cold = (rate(law, Air(c, humidity)) for c in (celsius, celsius - colder))
    assert cold <= warm * (1 + 1e-9)


@given(st.sampled_from(CLASSES), rows(), st.floats(0, 1))
@examples(100)
def test_between_two_rows_the_hours_lie_between_theirs(key: str, figure: Figure, share: float):
    law = law_of(key, figure)
    for (warm, short), (cold, long) in pairwise(zip(figure.at_c, figure.rows, strict=True)):
        hours = figure.high_h / rate(law, Air(warm + (cold - warm) * share, 50.0))
        assert short.high_h * (1 - 1e-9) <= hours <= long.high_h * (1 + 1e-9)


@given(st.sampled_from(CLASSES), rows(), st.floats(0.2, 15))
@examples(100)
def test_colder_than_its_coldest_row_takes_longer_than_that_row(
    key: str, figure: Figure, below: float
):
    coldest, last = figure.at_c[-1], figure.rows[-1]
    assert figure.high_h / rate(law_of(key, figure), Air(coldest - below, 50.0)) > last.high_h


@given(st.sampled_from(CLASSES), rows(), st.floats(-5, 35))
@examples(60)
def test_a_wait_is_never_sooner_than_the_can_in_any_steady_air(
    key: str, figure: Figure, celsius: float
):
    least = hours_at(law_of(key, figure), figure, steady(celsius))
    colder = [r.high_h for c, r in zip(figure.at_c, figure.rows, strict=True) if celsius <= c]
    assert least >= max([figure.high_h, *colder]) * (1 - 1e-6)


@given(rows(), st.floats(0, 12), st.lists(st.floats(-3, 30), min_size=4, max_size=12))
@examples(60)
def test_one_colder_night_never_makes_it_sooner(figure: Figure, less: float, course: list[float]):
    def through(drop: float) -> AirMet:
        points = (
            AirPoint(START + timedelta(hours=2 * n), c - (drop if n % 2 else 0.0), 50.0)
            for n, c in enumerate(course * 40)
        )
        return AirMet((Leg(RoomAir(readings=tuple(points)), START, None),))

    law = law_of("spar-varnish", figure)
    assert hours_at(law, figure, through(less)) >= hours_at(law, figure, through(0.0)) - 1e-6


@given(rows(), st.floats(-5, 35))
@examples(60)
def test_what_a_passed_check_cannot_go_below_is_the_cans_row_and_no_guess(
    figure: Figure, celsius: float
):
    least = (least_printed(figure, steady(celsius)) - START) / timedelta(hours=1)
    assert figure.low_h * (1 - 1e-6) <= least <= figure.rows[-1].low_h * (1 + 1e-6)


def test_one_temperature_alone_counts_as_it_always_did():
    figure = Figure(6, 6, 6, YOUR_CAN, Air(21.0, 50.0))
    assert slower_by(figure) == ()
    assert least_printed(figure, steady(5.0)) == START + timedelta(hours=6)


@pytest.mark.parametrize(
    ("at_c", "hours"),
    [((21.0, 21.0), (6, 16)), ((13.0, 21.0), (6, 16)), ((21.0, 13.0), (16, 6))],
    ids=["one temperature twice", "the warmer last", "sooner in the cold"],
)
def test_rows_that_contradict_each_other_are_no_figure(
    at_c: tuple[float, float], hours: tuple[float, float]
):
    (warm, cold), (one, other) = at_c, hours
    with pytest.raises(ValueError, match="not in order"):
        Figure(one, one, one, YOUR_CAN, Air(warm, 50.0), colder=(Colder(cold, *3 * (other,)),))
