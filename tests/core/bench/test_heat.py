"""Which young films still need warmth, and how cold it is expected to get. All rooms invented."""

from __future__ import annotations

import pytest

from finishlog.core.air.usual_day import UsualDay, UsualHour
from finishlog.core.bench.warmth import HeatWanted, heat_wanted
from finishlog.core.finish.stages import Stage
from tests.shop_of import SHELLAC, VARNISH, WATERBORNE, Story, at

COLD = UsualDay((UsualHour(0, 4, 60),))


def young(class_key: str, celsius: float = 20.0) -> Story:
    """Tell of a door that was coated an hour ago, in a room that was read since."""
    story = Story()
    story.part("door")
    story.cold_nights(None)
    story.coat(-1, class_key)
    story.read(-0.5, celsius, 50)
    return story


def wanted(story: Story, hour: float = 0.0) -> list[HeatWanted]:
    return list(heat_wanted(story.look(hour).in_the_shop, at(hour)))


@pytest.mark.parametrize("class_key", [WATERBORNE, VARNISH, SHELLAC])
def test_without_a_word_on_the_nights_every_young_film_may_need_warmth(class_key):
    story = young(class_key)
    (want,) = wanted(story)
    assert want.expected_c is None
    dry = story.state(0).stages[Stage.TACK_FREE].high
    assert want.until >= dry


def test_a_cold_night_and_no_usual_day_is_what_to_expect():
    story = young(WATERBORNE)
    story.cold_nights(5)
    assert [w.expected_c for w in wanted(story)] == [5]


def test_a_night_that_was_called_colder_than_any_usual_hour_counts():
    """Both were said of the room: the colder is believed; else the coldest of the usual hours."""
    story = young(WATERBORNE)
    story.cold_nights(-5)
    story.usual(UsualDay((UsualHour(6 * 60, 8, 60), UsualHour(14 * 60, 16, 50))))
    assert [w.expected_c for w in wanted(story)] == [-5]
    story.cold_nights(8)
    assert [w.expected_c for w in wanted(story)] == [8]


def test_a_heater_that_runs_until_the_film_is_past_it_is_warmth_enough():
    story = young(WATERBORNE)
    story.usual(UsualDay(COLD.hours, heated=(0, 24 * 60 - 1), heated_c=18))
    (open_for_a_minute,) = wanted(story)
    assert open_for_a_minute.expected_c == 4
    story.usual(COLD)
    assert wanted(story)
    story.heat(-2, 40, 18)
    assert wanted(story) == []


def test_cold_after_the_film_is_tack_free_is_no_matter():
    """Shellac put on at five is past it before the heater stops at eleven."""
    story = young(SHELLAC)
    story.usual(UsualDay(COLD.hours, heated=(12 * 60, 23 * 60), heated_c=18))
    assert wanted(story) == []
    late = young(VARNISH)
    late.usual(UsualDay(COLD.hours, heated=(12 * 60, 23 * 60), heated_c=18))
    assert [w.expected_c for w in wanted(late)] == [4]
