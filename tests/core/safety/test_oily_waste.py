"""Sanding, scraping or stripping a young self-heating film leaves what heats like rags.

Film younger than 30 days: a city fire bulletin. Scrapings of fresh varnish have burned in a bin.
"""

from __future__ import annotations

from datetime import UTC

import pytest

from finishlog.core.finish.classes import Method
from finishlog.core.log.words import Found, Operation, RagsDeed, Stripping
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.safety.oily_waste import Waste, heats
from finishlog.core.safety.rags import RagsItem, RagsState, overdue, rags_items
from tests.rows import every_row
from tests.shop_of import FACTS, SHELLAC, VARNISH, at
from tests.trouble_of import Trouble, door

DAY = 24.0


def items(story: Trouble, hour: float) -> tuple[RagsItem, ...]:
    return rags_items(story.log(hour).entries, FACTS, UTC)


def varnished(class_key: str = VARNISH) -> Trouble:
    story = door()
    story.coat(0, class_key)
    story.rags(0.5, RagsDeed.GONE)
    return story


@pytest.mark.parametrize(
    ("how", "waste"),
    [
        (Stripping.SCRAPE, Waste.SCRAPINGS),
        (Stripping.SAND_THROUGH, Waste.DUST),
        (Stripping.STRIP, Waste.STRIPPINGS),
        (Stripping.WASH, Waste.STRIPPINGS),
    ],
)
def test_what_comes_off_a_young_film_is_an_item(how: Stripping, waste: Waste):
    story = varnished()
    story.off(2 * DAY, how=how)
    *_, last = items(story, 2 * DAY + 1)
    assert last.made_of == {waste}
    assert last.state is RagsState.OPEN
    assert overdue(last, at(2 * DAY + 1), FACTS, UTC)


@every_row("key", sorted(FACTS.classes))
def test_a_coat_opens_rags_by_what_its_method_takes(key: str):
    """A cloth or a brush gets wet with what heats; a gun wets filters and paper (29 CFR 1910.107),
    and cloths where it is wiped off (common practice). A name that its class contradicts makes no
    oil of it.
    """
    of = FACTS.finish_class(key)
    for method in of.methods:
        story = door()
        story.coat(0, key, method=method)
        takes = method is not Method.SPRAY or of.wipe_off_h is not None
        left = {Waste.RAGS if takes else Waste.OVERSPRAY} if of.self_heating else set()
        assert {waste for item in items(story, 0.1) for waste in item.made_of} == left, method
    for name in ("varnish", "oil"):
        assert heats(Ingredient(name, key), FACTS) == of.self_heating
    assert heats(Ingredient("varnish"), FACTS), "a part of a mix that no class is known of"


def test_no_longer_after_thirty_days():
    story = varnished()
    story.off(30 * DAY, how=Stripping.SCRAPE)
    assert len(items(story, 31 * DAY)) == 1


def test_shellac_does_not_heat():
    story = varnished(SHELLAC)
    story.off(DAY, how=Stripping.SCRAPE)
    assert items(story, DAY + 1) == ()


@pytest.mark.parametrize("found", [Found.TACKY, Found.GUMS])
def test_from_a_film_that_was_still_soft_it_is_worse(found: Found):
    story = varnished()
    story.check(DAY, found)
    story.off(DAY + 1, how=Stripping.SCRAPE)
    assert items(story, DAY + 2)[-1].soft


def test_scrapings_and_rags_of_one_evening_are_two_items():
    """Cloths may be spread, scrapings never."""
    story = door()
    story.coat(0, VARNISH)
    story.off(2, how=Stripping.SCRAPE)
    assert [item.made_of for item in items(story, 3)] == [{Waste.RAGS}, {Waste.SCRAPINGS}]


def test_the_bare_wood_leaves_none():
    story = varnished()
    story.off(DAY, how=Stripping.STRIP)
    story.rags(DAY + 1, RagsDeed.GONE)
    story.work(2 * DAY, Operation.SAND)
    assert all(item.state is RagsState.GONE for item in items(story, 2 * DAY + 1))


def test_sanding_the_coat_that_stayed_does():
    story = varnished()
    first = story.state(1).layers[0].coat
    story.coat(DAY, VARNISH)
    story.off(DAY + 1, first, how=Stripping.WASH)
    story.work(3 * DAY, Operation.SAND)
    assert items(story, 3 * DAY + 1)[-1].made_of == {Waste.DUST}
