"""`room usual` is asked for where it would move a date by more than a day. Rooms invented."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.usual_day import UsualDay, UsualHour
from finishlog.core.verdict.usual_day_wanted import usual_would_move
from tests.examples import examples
from tests.shop_of import SHELLAC, VARNISH, Story, at, hours_until


def coated(class_key: str, celsius: float, night: float | None, rh: float = 50.0) -> Story:
    story = Story()
    story.part("top", class_key, class_key)
    story.cold_nights(night)
    story.read(-1, celsius, rh)
    story.coat(0, class_key)
    return story


def asked(story: Story, hour: float = 0.5) -> bool:
    return usual_would_move(story.state(hour), at(hour))


def test_one_reading_and_a_cold_night_make_a_date_that_a_usual_day_moves():
    story = coated(VARNISH, 18, -4)
    assert asked(story)
    before = story.state(0.5).verdict.high
    story.usual(UsualDay((UsualHour(6 * 60, -4), UsualHour(15 * 60, 18, 50))))
    assert not asked(story), "it was told"
    after = story.state(0.5).verdict.high
    assert abs(hours_until(before) - hours_until(after)) > 24


@pytest.mark.parametrize(
    "story",
    [
        coated(VARNISH, 20, 19),
        coated(VARNISH, 20, None),
        coated(SHELLAC, 20, 12),
        coated(VARNISH, 20, 60),
    ],
    ids=["a mild night", "no night told", "dry within the evening", "nothing colder"],
)
def test_where_it_would_change_nothing_nobody_is_asked(story):
    assert not asked(story)


def test_a_film_that_is_dry_asks_nothing():
    assert not asked(coated(VARNISH, 18, -4), 24 * 200)


@examples(25)
@given(st.floats(10, 26), st.floats(-10, 24), st.floats(0.2, 20))
def test_it_is_asked_exactly_where_the_answer_moves_the_date(celsius, night, hour):
    story = coated(VARNISH, celsius, night)
    said = asked(story, hour)
    before = story.state(hour).verdict.high
    story.usual(UsualDay((UsualHour(6 * 60, min(night, celsius)), UsualHour(15 * 60, celsius, 50))))
    after = story.state(hour).verdict.high
    if before is None or after is None:
        assert said == (before is not after)
    else:
        moved = abs(hours_until(before) - hours_until(after))
        assert said == (moved > 24) or abs(moved - 24) < 0.1
