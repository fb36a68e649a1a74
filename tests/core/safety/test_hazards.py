"""What a thing is decides what can hurt, whatever class it stands under. common practice, NFPA."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.finish.hazard import Hazard
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.safety.hazards import hazards_in
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
CLASSES = sorted(FACTS.classes)
PARTS = (
    "water", "alcohol", "acetone", "lacquer thinner", "turpentine", "tung oil", "walnut oil", "lye",
    "vinegar", "ammonia", "hardener", "epoxy hardener", "mekp", "dichromate", "dichloromethane",
    "methanol", "white spirit", "d-limonene", "household bleach", "hydrogen peroxide",
)  # fmt: skip


def mix(key: str, *parts: str, note: str = "") -> frozenset[Hazard]:
    made = tuple(map(Ingredient, parts))
    return frozenset(hazards_in(Ingredient("it", key, note, made), FACTS))


# NFPA tip sheet: oil in rags; common practice: what a thinner brings, and what water drowns.
@every_row(
    ("key", "parts", "brings", "not_that"),
    [
        ("tung-oil", (), {Hazard.SELF_HEATING}, {Hazard.FLAMMABLE}),
        ("tung-oil", ("turpentine",), {Hazard.SELF_HEATING, Hazard.FLAMMABLE}, set()),
        ("shellac-2lb", ("walnut oil",), {Hazard.SELF_HEATING, Hazard.NUT_OIL}, set()),
        ("waterborne-clear", ("alcohol",), {Hazard.METHANOL}, {Hazard.FLAMMABLE}),
        ("waterborne-clear", ("lacquer thinner",), {Hazard.FLAMMABLE}, {Hazard.SELF_HEATING}),
        ("waterborne-clear", ("hardener",), {Hazard.ISOCYANATE}, set()),
        ("waterborne-clear", ("water",), set(), {Hazard.VAPOUR, Hazard.FLAMMABLE}),
        ("lacquer-sprayed", ("citrus",), {Hazard.SELF_HEATING}, set()),
        ("water-dye", ("lye",), {Hazard.CAUSTIC}, {Hazard.ACID}),
        ("unknown", ("epoxy hardener",), {Hazard.AMINE}, {Hazard.ISOCYANATE}),
        ("alkyd-varnish", ("dichloromethane",), {Hazard.CHLORINATED}, set()),
    ],
)
def test_what_goes_in_says_what_it_is(key, parts, brings, not_that):
    found = mix(key, *parts)
    assert brings <= found
    assert not not_that & found


def test_what_was_noted_of_a_coat_lights_nothing():
    """It may be about the wood, or last year; what poisons is heard all the same."""
    found = mix("waterborne-clear", note="over linseed and turpentine, ammonia fumed")
    assert not {Hazard.SELF_HEATING, Hazard.FLAMMABLE} & found
    assert Hazard.AMMONIA in found


@given(st.sampled_from(CLASSES), st.lists(st.sampled_from(PARTS), max_size=3))
def test_a_class_keeps_its_hazards_whatever_is_poured_in(key: str, parts: list[str]):
    assert frozenset(FACTS.finish_class(key).hazards) <= mix(key, *parts)


@given(st.sampled_from(CLASSES), st.permutations(PARTS[:6]), st.integers(0, 5))
def test_neither_order_nor_nesting_of_the_parts_matters(key: str, parts: list[str], at: int):
    nested = Ingredient("jug", made_of=tuple(map(Ingredient, parts[at:])))
    inside = Ingredient("it", key, "", (*map(Ingredient, parts[:at]), nested))
    assert frozenset(hazards_in(inside, FACTS)) == mix(key, *parts)


@given(st.sampled_from(CLASSES), st.sampled_from(PARTS), st.sampled_from(PARTS))
def test_one_part_more_never_hurts_less(key: str, one: str, other: str):
    # A hardener that says what it is, beside one that does not, speaks for both.
    lost = mix(key, one) - mix(key, one, other)
    assert lost <= {Hazard.ISOCYANATE}
