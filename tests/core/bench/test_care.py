"""What goes on a care card: what lies open decides, never how old it is."""

from __future__ import annotations

from datetime import timedelta

import pytest

from finishlog.core.bench.care_facts import last_coat, rules_on, smelt, surface_of, waits_until
from finishlog.core.bench.milestones import milestone
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found
from finishlog.core.published.care import CareKind, UsedFor
from finishlog.core.zone.state import ZoneState
from tests.rows import every_row
from tests.shop_of import (
    FACTS,
    LACQUER,
    LINSEED,
    SHELLAC,
    STAIN,
    VARNISH,
    WATERBORNE,
    WAX,
    Story,
    at,
    one_coat,
)

RULES = FACTS.care.rules


def film(*classes: str) -> ZoneState:
    story = Story()
    story.part()
    for n, key in enumerate(classes):
        story.coat(240 * n, key)
    return story.state(240 * len(classes))


def never(state: ZoneState, used_for: UsedFor | None = None) -> str:
    found = rules_on(RULES, state.layers, used_for)
    return " | ".join(rule.text for rule in found if rule.kind is CareKind.NEVER)


@pytest.mark.parametrize(
    ("classes", "open_to_the_world"),
    [
        ((SHELLAC,), {SHELLAC}),
        ((SHELLAC, WATERBORNE), {WATERBORNE}),
        ((SHELLAC, WAX), {WAX, SHELLAC}),
        ((STAIN, SHELLAC, LACQUER, WAX), {WAX, LACQUER}),
        ((LINSEED,), {LINSEED}),
        ((LINSEED, WAX), {WAX, LINSEED}),
        ((LINSEED, SHELLAC), {SHELLAC}),
    ],
)
def test_what_lies_open_is_from_the_top_to_the_first_film(
    classes: tuple[str, ...], open_to_the_world: set[str]
):
    assert {of.key for of in surface_of(film(*classes).layers)} == open_to_the_world


@pytest.mark.parametrize("film_finish", [LACQUER, SHELLAC, WATERBORNE, VARNISH])
def test_soft_plastic_and_rubber_never_stand_on_a_film(film_finish: str):
    """ASTM STP 45860S: plasticizer migrates from soft vinyl and mars lacquer on long contact."""
    said = never(film(film_finish))
    assert "vinyl" in said
    assert "rubber feet" in said
    assert "felt or cotton" in said


def test_an_oil_has_no_film_for_plastic_to_soften():
    assert "vinyl" not in never(film(LINSEED))


def test_alcohol_never_on_shellac_but_on_what_covers_it():
    """Common practice: shellac is spirit varnish, alcohol dissolves it at any age."""
    assert "alcohol" in never(film(SHELLAC))
    assert "alcohol" in never(film(SHELLAC, WAX))
    assert "alcohol" not in never(film(SHELLAC, VARNISH))


@pytest.mark.parametrize("classes", [(SHELLAC,), (SHELLAC, WAX), (LINSEED, WAX)])
def test_hot_and_wet_never_on_shellac_or_wax(classes: tuple[str, ...]):
    """Common practice: white rings."""
    assert "hot cups" in never(film(*classes))


@pytest.mark.parametrize("key", [LACQUER, SHELLAC, WATERBORNE, VARNISH])
def test_oil_never_on_a_film(key: str):
    """A restorer's page: oil only on what was oiled in the first place."""
    assert "it feeds nothing" in never(film(key))
    assert "it feeds nothing" not in never(film(LINSEED))


@every_row("key", [of.key for of in FACTS.classes.values() if of.topcoat])
def test_silicone_never_on_anything(key: str):
    """National Park Service, Conserve O Gram 7/2: silicone polishes are harmful."""
    assert "silicone" in never(film(key))


@pytest.mark.parametrize("years", [0, 1, 30])
def test_never_does_not_run_out(years: int):
    """A restriction that never expires: full hardness makes no difference to it."""
    story = one_coat(LACQUER)
    young, old = story.state(1), story.state(1 + years * 365 * 24)
    assert rules_on(RULES, young.layers, None) == rules_on(RULES, old.layers, None)


def test_who_oils_a_piece_again_is_told_of_the_rags():
    """NFPA tip sheet on oily rags: spread flat, outdoors, never in a heap."""
    said = " ".join(r.text for r in rules_on(RULES, film(LINSEED).layers, None))
    assert "catch fire by themselves" in said
    assert "catch fire" not in " ".join(r.text for r in rules_on(RULES, film(SHELLAC).layers, None))


def test_food_and_children_have_words_of_their_own():
    layers = film(VARNISH).layers
    plain, child = rules_on(RULES, layers, None), rules_on(RULES, layers, UsedFor.CHILD)
    (more,) = set(child) - set(plain)
    assert "doctor" in more.text
    assert "safety data sheet" in more.text
    assert "safe from" not in " ".join(r.text for r in child)


def two_parts() -> Story:
    """Rails finished at once, feet two days later: the feet govern."""
    story = Story()
    rails, feet = story.part("rails"), story.part("feet")
    story.steady(days=90)
    story.coat(0, VARNISH, rails)
    story.coat(48, VARNISH, feet)
    return story


def test_dates_count_from_the_last_coat_of_the_last_part():
    zones = two_parts().look(49).zones
    assert last_coat(zones) == at(48)
    hard = milestone(zones, Stage.CURED)
    feet = milestone([z for z in zones if z.part.name == "feet"], Stage.CURED)
    assert hard is not None
    assert feet is not None
    assert hard.high == feet.high


def test_a_child_waits_the_longest_that_is_advised():
    """Forum threads: advice from 24 h to 30 days; the trade: most finishes about 30 days."""
    assert (FACTS.care.waits_d.low, FACTS.care.waits_d.high) == (1, 30)
    assert waits_until(two_parts().look(49).zones, FACTS.care) == at(48) + timedelta(days=30)


def test_no_smell_counts_only_when_every_part_was_smelt_since_the_last_coat():
    story = two_parts()
    rails, feet = story.parts
    story.check(100, Found.NO_SMELL, rails)
    assert smelt(story.look(101).zones) is None
    story.check(102, Found.NO_SMELL, feet)
    newest = smelt(story.look(103).zones)
    assert newest is not None
    assert newest.found is Found.NO_SMELL


def test_a_smell_before_the_last_coat_proves_nothing():
    story = two_parts()
    story.check(20, Found.NO_SMELL, story.parts[0])
    story.check(50, Found.NO_SMELL, story.parts[1])
    assert smelt(story.look(60).zones) is None


def test_one_part_that_smells_speaks_for_all():
    story = two_parts()
    story.check(100, Found.SMELLS, story.parts[0])
    story.check(101, Found.NO_SMELL, story.parts[1])
    newest = smelt(story.look(102).zones)
    assert newest is not None
    assert newest.found is Found.SMELLS
