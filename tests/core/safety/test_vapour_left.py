"""Time alone never ends what a film gives off sooner, and never while it is found tacky.

That no published time airs a room: NIOSH Pocket Guide has none; a day is our own rule for what the
log speaks of, and no all-clear. Films, hours and airs are drawn.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.place import Place
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found
from finishlog.core.safety.vapour_left import hangs_until, tack_free_at
from tests.examples import examples
from tests.rows import every_row
from tests.shop_of import FACTS, Story, at

NEVER = datetime.max.replace(tzinfo=UTC)
GIVES_OFF = sorted(
    key
    for key, of in FACTS.classes.items()
    if Hazard.FLAMMABLE in of.hazards and Stage.TACK_FREE in of.stages
)
films = st.sampled_from(GIVES_OFF)
hours = st.lists(st.floats(0.1, 24 * 30), min_size=2, max_size=2).map(sorted)


def coated(key: str, celsius: float) -> Story:
    story = Story()
    story.part("top")
    story.read(-0.5, celsius, 50)
    story.coat(0, key)
    return story


def ends(story: Story, hour: float) -> datetime:
    """Return when it ends by what is known at an hour; what no date ends comes last."""
    return tack_free_at(story.state(hour)) or NEVER


@examples(40)
@given(films, st.floats(5, 35), hours)
def test_who_looks_later_is_not_told_of_an_earlier_end(key, celsius, looked):
    story = coated(key, celsius)
    sooner, later = (ends(story, hour) for hour in looked)
    assert later >= sooner >= at(0)
    # And what it gave off hangs there for longer.
    for place in (Place(), Place(volume_m3=40, exhaust_m3_h=400, mixing=4)):
        assert later == NEVER or hangs_until(later, place) > later


@examples(40)
@given(films, st.floats(5, 35), st.floats(0.2, 24 * 20), st.floats(0, 24 * 365))
def test_no_time_ends_it_while_the_film_is_found_tacky(key, celsius, checked, later):
    story = coated(key, celsius)
    story.check(checked, Found.TACKY)
    assert tack_free_at(story.state(checked + 0.1 + later)) is None


@examples(40)
@given(films, st.floats(5, 25), st.floats(0, 8))
def test_a_colder_room_never_ends_it_sooner(key, celsius, colder):
    assert ends(coated(key, max(1.0, celsius - colder)), 1) >= ends(coated(key, celsius), 1)


@every_row("key", GIVES_OFF)
def test_it_is_never_less_than_its_class_promises_and_ends_where_nothing_holds_it(key):
    most = FACTS.classes[key].stages[Stage.TACK_FREE].high_h
    until = tack_free_at(coated(key, 23).state(0.1))
    assert until is not None
    assert at(0) + timedelta(hours=most) <= until <= at(0.1) + timedelta(hours=most)


def test_found_dry_later_it_ends():
    story = coated("alkyd-varnish", 20)
    story.check(40, Found.TACKY)
    story.check(90, Found.DRY)
    until = tack_free_at(story.state(91))
    assert until is not None
    assert until <= at(91)
