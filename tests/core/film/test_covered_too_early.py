"""What was covered before it was dry goes on drying below: the film is no further than it is.

Common practice: breaking the rule of the undercoat never brings sandpaper or a coat sooner.
"""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found
from finishlog.core.zone.verdict import MAY_ACT
from tests.examples import examples
from tests.shop_of import SHELLAC, STAIN, VARNISH, Story, at


def covered(after_h: float) -> Story:
    """Tell of stain at hour 0 and shellac over it after so many hours."""
    story = Story()
    story.part("door", STAIN, SHELLAC, VARNISH)
    story.steady(since=-12.0)
    story.coat(0, STAIN)
    story.coat(after_h, SHELLAC)
    return story


def left_alone() -> Story:
    story = Story()
    story.part("door", STAIN, SHELLAC, VARNISH)
    story.steady(since=-12.0)
    story.coat(0, STAIN)
    return story


def test_wet_stain_under_shellac_holds_the_sanding_and_the_next_coat():
    stain = left_alone().state(1).stages[Stage.RECOAT]
    state = covered(0.5).state(3)
    assert state.stages[Stage.SAND].high == stain.high
    assert state.stages[Stage.RECOAT].high == stain.high
    assert state.verdict.answer not in MAY_ACT


def test_dry_stain_under_shellac_holds_nothing_up():
    fresh = Story()
    fresh.part("door", SHELLAC)
    fresh.steady(since=-12.0)
    fresh.coat(30, SHELLAC)
    assert covered(30).state(31).stages[Stage.SAND] == fresh.state(31).stages[Stage.SAND]


def test_a_check_that_proves_it_speaks_for_what_lies_below():
    story = covered(0.5)
    check = story.check(5, Found.POWDER)
    sand = story.state(6).stages[Stage.SAND]
    assert sand.proved_by == check.act
    assert sand.high == at(5)


@examples(40)
@given(st.floats(0.1, 30), st.floats(0.2, 40))
def test_covering_it_early_never_brings_the_next_coat_sooner(after_h: float, later_h: float):
    alone = left_alone().state(after_h + later_h).stages[Stage.RECOAT].high
    below = covered(after_h).state(after_h + later_h).stages[Stage.SAND].high
    assert alone is not None
    assert below is not None
    if at(after_h) < alone:
        assert below >= alone
