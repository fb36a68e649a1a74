"""Sources that differ on a wait: the longest binds, in any air, and where they agree none is told.

What the sources ask for is held to their tables in `tests/facts/test_all_rules`; here it is what
becomes of it on a film. Airs and hours are invented.
"""

from __future__ import annotations

from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.film.guidance import Guidance, guidance
from finishlog.core.film.layers import Layer
from finishlog.core.finish.classes import Figure
from finishlog.core.finish.overcoat import rule_for
from finishlog.core.finish.stages import Stage
from tests.examples import examples
from tests.shop_of import FACTS, Story, figure

PAIRS = sorted(
    {
        (under.key, over.key)
        for under in FACTS.classes.values()
        for over in FACTS.classes.values()
        if (row := rule_for(FACTS.overcoats, under, over)) and row.wait and row.wait.sooner
    }
)


def film(of: str, celsius: float = 23, label: float | None = None) -> Layer:
    """Build one coat of a class that dries at a temperature."""
    story = Story()
    story.part("board", of)
    for hour in range(0, 2000, 6):
        story.read(hour, celsius, 50)
    story.coat(0, of, label={Stage.RECOAT: figure(label)} if label else None)
    top = story.state(1).top
    assert top is not None
    return top


def row(under: str, over: str) -> Figure:
    found = rule_for(FACTS.overcoats, FACTS.finish_class(under), FACTS.finish_class(over))
    assert found is not None
    assert found.wait is not None
    return found.wait


def end(each: Guidance) -> datetime:
    assert each.time.high is not None
    return each.time.high


@given(pair=st.sampled_from(PAIRS), celsius=st.floats(14, 30), label=st.none() | st.floats(1, 400))
@examples(40)
def test_none_of_the_others_is_over_later_than_what_binds_nor_sooner_than_the_label(
    pair: tuple[str, str], celsius: float, label: float | None
):
    top = film(pair[0], celsius, label)
    binding, *others = guidance(top, row(*pair), Stage.RECOAT)
    own = top.stage(Stage.RECOAT)
    assert binding.binds
    assert others
    for each in others:
        assert not each.binds
        assert each.figure.high_h < binding.figure.high_h
        assert end(each) <= end(binding)
        assert own is None or own.high is None or end(each) >= own.high


def test_each_source_has_its_own_date_on_the_same_clock():
    """At 23 °C and 50 %, where an hour is an hour: a night, and a week."""
    week, night = guidance(
        film("oil-varnish-blend"), row("oil-varnish-blend", "alkyd-varnish"), Stage.RECOAT
    )
    assert (end(week) - end(night)).total_seconds() == pytest.approx((168 - 24) * 3600, abs=1)
    assert (night.figure.source, night.held) == ("finishing-in-one-day", False)


def test_a_label_that_asks_for_more_than_a_source_holds_it():
    week, night = guidance(
        film("oil-varnish-blend", label=60), row("oil-varnish-blend", "alkyd-varnish"), Stage.RECOAT
    )
    assert night.held
    assert not week.held
    assert (end(week) - end(night)).total_seconds() == pytest.approx((168 - 60) * 3600, abs=1)


def test_over_itself_a_class_tells_what_other_sources_say():
    linseed = film("boiled-linseed-oil")
    long, short = guidance(linseed, linseed.coat.figures.stages[Stage.RECOAT], Stage.RECOAT)
    assert (long.figure.high_h, short.figure.high_h) == (72, 10)
    assert short.held


def test_what_speaks_of_another_thing_is_no_guidance():
    """A weekly waxing is a habit, not a wait: its note says so."""
    wax = film("paste-wax")
    recoat = FACTS.finish_class("paste-wax").stages[Stage.RECOAT]
    assert any(each.high_h > recoat.high_h for each in recoat.also)
    assert guidance(wax, recoat, Stage.RECOAT) == ()


@pytest.mark.parametrize(
    ("under", "over"),
    [("gel-stain", "alkyd-varnish"), ("glaze", "shellac-2lb"), ("milk-paint", "alkyd-varnish")],
)
def test_where_sources_agree_or_are_one_nothing_is_told(under: str, over: str):
    assert guidance(film(under), row(under, over), Stage.RECOAT) == ()


def test_where_the_label_speaks_the_books_are_silent():
    linseed = film("boiled-linseed-oil", label=30)
    assert guidance(linseed, linseed.coat.figures.stages[Stage.RECOAT], Stage.RECOAT) == ()
