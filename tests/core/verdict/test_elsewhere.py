"""Carried into a warmer room a wait is over sooner; carried into a colder one it is not offered."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.findings import Answer, Finding
from finishlog.core.log.words import Found
from finishlog.core.rules.all import findings_of
from finishlog.core.verdict.another_room import Elsewhere, sooner_elsewhere, sooner_warmed
from finishlog.core.verdict.due import asked_of
from finishlog.core.zone.around import around
from tests.shop_of import FACTS, LACQUER, SHELLAC, VARNISH, WATERBORNE, Story, at


def in_a_cool_room(celsius: float = 12) -> tuple[Story, int]:
    """Tell of one coat of varnish in a cool room, and of a room beside it that nobody read."""
    story = Story()
    story.part("box", VARNISH, VARNISH)
    other = story.another_room("house")
    story.steady(celsius, 50, since=-12)
    story.coat(0, VARNISH)
    return story, other


def offered(story: Story, hour: float) -> tuple[Elsewhere, ...]:
    bench = story.look(hour)
    state = bench.zones[0]
    asked = asked_of(state, story.shop, FACTS)
    return sooner_elsewhere(
        state, asked, bench.rooms.values(), around(bench.zones, at(hour), FACTS, bench.products)
    )


def test_a_warm_room_that_was_read_is_offered_with_its_time():
    story, house = in_a_cool_room()
    story.read(0.5, 21, 45, room=house)
    (there,) = offered(story, 1)
    here = story.verdict(1)
    assert there.room.id == house
    assert here.high is not None
    assert at(0) < there.high < here.high


def test_it_is_what_carrying_it_there_then_gives():
    story, house = in_a_cool_room()
    story.read(0.5, 21, 45, room=house)
    (there,) = offered(story, 1)
    story.move(1, story.named("box"), house)
    moved = story.verdict(1)
    assert (there.low, there.high) == (moved.low, moved.high)


def test_a_room_that_nobody_read_is_not_offered():
    story, _ = in_a_cool_room()
    assert offered(story, 1) == ()


def test_nothing_is_offered_to_a_film_that_is_dry_or_late():
    story, house = in_a_cool_room()
    for hour in range(0, 700, 6):
        story.read(hour, 21, 45, room=house)
    assert offered(story, 600) == ()
    story.check(600, Found.TACKY)
    assert offered(story, 601) == ()


def test_a_film_that_was_tacky_within_its_time_is_offered_the_warm_room_too():
    story, house = in_a_cool_room()
    story.read(0.5, 21, 45, room=house)
    story.check(1, Found.TACKY)
    assert [there.room.id for there in offered(story, 1)] == [house]


@given(st.floats(10, 32), st.floats(10, 32))
def test_no_room_is_offered_that_is_not_sooner(here_c: float, there_c: float):
    story, house = in_a_cool_room(here_c)
    story.read(0.5, there_c, 50, room=house)
    wait = story.verdict(1).high
    for there in offered(story, 1):
        assert wait is None or there.high < wait
        assert there_c > here_c


def warmed(story: Story, hour: float) -> Elsewhere | None:
    bench = story.look(hour)
    state = bench.zones[0]
    asked = asked_of(state, story.shop, FACTS)
    return sooner_warmed(state, asked, around(bench.zones, at(hour), FACTS, bench.products))


def film_of(story: Story, hour: float) -> tuple[Finding, ...]:
    """Return what the clocks of the film say to the next coat."""
    bench = story.look(hour)
    near = around(bench.zones, at(hour), FACTS, bench.products)
    return findings_of(bench.zones[0], asked_of(bench.zones[0], story.shop, FACTS), near)


def test_a_damp_warm_room_is_dried_and_not_cooled():
    """28 °C and 80 %, above the 75 % of varnish: the label's 50 % is what is missing."""
    story, _ = in_a_cool_room()
    story.read(0.5, 28, 80)
    there = warmed(story, 1)
    assert there is not None
    (air,) = there.room.readings
    assert (air.temperature_c, air.humidity_pct) == (28, 50)


@given(
    st.sampled_from([VARNISH, WATERBORNE, SHELLAC, LACQUER]),
    st.floats(2, 36),
    st.floats(20, 95),
    st.floats(0.1, 12),
)
def test_what_is_offered_here_is_sooner_in_exactly_the_air_that_is_said(key, celsius, rh, hour):
    story = Story()
    story.part("box", key, key)
    better = story.another_room("as said")
    story.read(-1, 20, 50)
    story.coat(0, key)
    story.read(0.05, celsius, rh)
    here, there = story.verdict(hour), warmed(story, hour)
    if there is None:
        return
    (air,) = there.room.readings
    assert air.temperature_c >= min(celsius, 32)
    assert here.high is None or there.high < here.high
    story.read(hour, air.temperature_c, air.humidity_pct, room=better)
    story.move(hour, story.named("box"), better)
    # Carried there the wood would have to warm up first; kept warm here it does so with the room.
    kept = next(f for f in film_of(story, hour) if f.answer is Answer.DRYING)
    assert (kept.low, kept.high) == (there.low, there.high)
