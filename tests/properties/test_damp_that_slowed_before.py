"""Damp that slowed a coat here slows the next one more in damper air: never the other way round.

No source gives oil films a factor for humidity: that damp slows them, where the person's own coat
showed it, is common practice; by how much is our own assumption.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from finishlog.core.air.psychrometrics import Air
from finishlog.core.clock.pace import PaceKey, PaceLearnt, Took
from finishlog.core.film.layers import laws_of
from finishlog.core.finish.classes import COMMON_PRACTICE, Figure
from finishlog.core.finish.rate_law import RateLaw, rate
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found
from finishlog.core.pace.learnt import learn
from finishlog.core.pace.seen import films, observed
from tests.examples import examples
from tests.shop_of import FACTS, Story, whole_part

VARNISH = "oil-polyurethane"
LABEL = Figure(6, 12, 24, COMMON_PRACTICE)
TEMPERATURES, DAMP = st.floats(5, 32), st.floats(0, 99)


def law_of(key: str, damp_from: float) -> RateLaw:
    return replace(laws_of(FACTS.finish_class(key), FACTS)(LABEL), damp_from_pct=damp_from)


@given(TEMPERATURES, DAMP, st.floats(65, 95))
@examples(200)
def test_it_only_slows_and_not_at_all_in_air_as_dry_as_before(
    celsius: float, damp: float, before: float
):
    with_it, without = (rate(law_of("alkyd-varnish", n), Air(celsius, damp)) for n in (before, 0.0))
    assert with_it <= without
    assert (with_it == without) == (damp <= before)


@given(TEMPERATURES, DAMP, st.floats(0, 30), st.floats(65, 95))
@examples(200)
def test_damper_is_never_faster(celsius: float, damp: float, more: float, before: float):
    law = law_of(VARNISH, before)
    dry, wet = (rate(law, Air(celsius, min(100.0, rh))) for rh in (damp, damp + more))
    assert wet <= dry


@pytest.mark.parametrize("key", ["conversion-varnish", "shellac-2lb", "lacquer-sprayed"])
def test_what_dries_by_no_oxygen_is_left_alone(key: str):
    wet = Air(20.0, 90.0)
    assert rate(law_of(key, 70.0), wet) == rate(law_of(key, 0.0), wet)


@given(st.floats(1, 200), st.floats(1, 48), st.floats(1, 4))
@examples(100)
def test_what_a_coat_took_is_carried_within_bounds_and_to_what_it_speaks_of(
    took: float, high: float, carried: float
):
    figure = Figure(high / 2, high, high, COMMON_PRACTICE)
    of = Took(frozenset({Stage.TACK_FREE, Stage.RECOAT}), took)
    learnt = PaceLearnt(PaceKey(7, True), 1.5, 1.2, 1.8, 1, (1,), carried, 6.0, took=of)
    assert learnt.took_h(figure, Stage.TACK_FREE) == min(took, carried * high)
    assert learnt.took_h(figure, Stage.TOUCH) == learnt.took_h(figure, None) == 0.0


def taught(humidity: float, *checks: tuple[float, Found]) -> PaceLearnt | None:
    """Learn from one coat of oil varnish at 23 °C, read every six hours."""
    story = Story()
    part = story.part("top", VARNISH)
    for hour in range(-6, 60, 6):
        story.read(hour, 23.0, humidity)
    story.coat(0, VARNISH)
    for hour, found in checks:
        story.check(hour, found)
    woods = dict.fromkeys(whole_part(part))
    stacks = films(story.shop, story.log(60), story.zone, woods, FACTS)
    return next(iter(learn(observed(stacks, FACTS), FACTS.pace).learnt.values()), None)


def test_a_coat_that_was_late_in_damp_teaches_both():
    learnt = taught(70.0, (15, Found.TACKY), (24, Found.DRY))
    assert learnt is not None
    assert learnt.took is not None
    assert learnt.took.hours == pytest.approx(24, abs=0.1)
    assert {Stage.TACK_FREE, Stage.RECOAT} <= learnt.took.stages
    assert learnt.damp_pct == pytest.approx(70)


def test_in_dry_air_it_teaches_no_damp():
    learnt = taught(45.0, (15, Found.TACKY), (24, Found.DRY))
    assert learnt is not None
    assert learnt.took is not None
    assert learnt.damp_pct == 0.0


def test_tacky_within_its_least_hours_is_no_lateness():
    learnt = taught(70.0, (4, Found.TACKY), (20, Found.DRY))
    assert learnt is None or learnt.took is None


def test_who_looked_again_only_days_later_saw_it_soft_and_no_more():
    learnt = taught(50.0, (10, Found.TACKY), (58, Found.DRY))
    assert learnt is not None
    assert learnt.took is not None
    assert not learnt.took.seen
    assert learnt.took.hours == pytest.approx(10, abs=0.1)
