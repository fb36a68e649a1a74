"""What the safety data sheet of a product says outranks its class, and where it is silent nothing
moves. Products are invented; arithmetic beside each figure."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.sheet import MAY_BE_FREE_OF, Sheet
from finishlog.core.mixing.chemistry import Ingredient, contents
from finishlog.core.published.chemistry import Substance
from finishlog.core.published.vapours import FlashCategory
from finishlog.core.safety.hazards import hazards_in, spared_by_sheet
from finishlog.core.safety.keeping import how_kept
from finishlog.core.safety.ventilation import NoFigure, all_vapour_l, mixed_lel_pct
from finishlog.core.safety.what_leaves import leaves_of, solvents_of
from finishlog.core.shop.own_rules import Own, OwnRule, sheet_of
from finishlog.core.shop.things import Product
from finishlog.facts.load import load_facts
from tests.rows import every_row
from tests.shop_of import Story

FACTS = load_facts()
SHOP = Story().shop
CLASSES = sorted(FACTS.classes)


def said(**figures: float) -> tuple[OwnRule, ...]:
    return tuple(OwnRule(Own(key.replace("_", "-")), figure=f) for key, f in figures.items())


def leaves(key: str, *rules: OwnRule):
    return leaves_of(Product(1, "mine", key, own_rules=rules), None, SHOP, FACTS)


def thing(key: str, *, free=(), holds=(), note="", parts=(), name="mine") -> Ingredient:
    return Ingredient(name, key, note, parts, Sheet(frozenset(free), frozenset(holds)))


def test_the_solvent_of_the_sheet_is_what_leaves():
    """390 g a litre of spirits of 0.78 g/ml (`vapours.toml`) are half a litre of it."""
    (share,) = leaves("spar-varnish", *said(solvent=390)).shares
    assert share[1] == pytest.approx(0.5)
    assert leaves("spar-varnish", *said(solvent=0)).is_nothing


def test_a_limit_of_the_sheet_is_the_limit_of_the_mixture():
    """Le Chatelier: parts that share one limit have it together."""
    by_class = leaves("conversion-varnish").of(1000)
    by_sheet = leaves("conversion-varnish", *said(lel=0.4, day_limit=80)).of(1000)
    assert mixed_lel_pct(by_sheet) == pytest.approx(0.4)
    assert mixed_lel_pct(by_class) != pytest.approx(0.4)
    assert {each.solvent.day_ppm for each in by_sheet} == {80}
    assert all_vapour_l(by_sheet) == pytest.approx(all_vapour_l(by_class))


def test_a_limit_below_fifty_leaves_no_figure_and_one_above_gives_it_back():
    """Below 50 ppm dilution is no answer (ACGIH manual, chapter 2)."""
    assert leaves("oil-varnish-blend", *said(day_limit=20)).why_no_figure is NoFigure.LOW_LIMIT
    assert leaves("oil-varnish-blend", *said(day_limit=100)).why_no_figure is None


def test_another_carrier_is_what_leaves():
    water, spirits = (OwnRule(Own.CARRIER, (c,)) for c in ("water", "mineral-spirits"))
    assert leaves("gel-stain", water).is_nothing
    assert not leaves("waterborne-clear", spirits, *said(solvent=120)).is_nothing
    # Solvent in water, of which nobody knows what it is.
    assert leaves("waterborne-clear", *said(solvent=60)).why_no_figure is NoFigure.UNKNOWN


def test_a_flash_point_of_the_sheet_is_its_own():
    """29 CFR 1910.106: 62 °C is category 4, the spirits of the class are 3 (`storage.toml`)."""
    by_class, by_sheet = (
        how_kept(
            solvents_of(Product(1, "mine", "gel-stain", own_rules=rules), FACTS), FACTS.storage
        )
        for rules in ((), said(flash=62))
    )
    assert (by_class.category, by_sheet.category) == (FlashCategory.THIRD, FlashCategory.FOURTH)
    assert by_sheet.flash_c == 62


def test_the_last_word_holds():
    rules = (*said(lel=0.6), *said(lel=0.9), OwnRule(Own.FREE_OF, ("amine",)))
    assert sheet_of(rules) == Sheet(frozenset({Hazard.AMINE}), lel_pct=0.9)
    back = (*rules, OwnRule(Own.HOLDS, ("amine",)))
    assert sheet_of(back) == Sheet(frozenset(), frozenset({Hazard.AMINE}), lel_pct=0.9)


# common practice: a sheet is of its own can. What was poured in or noted besides it does not know.
@every_row(
    ("of", "there", "not_there"),
    [
        (thing("epoxy-seal", free={Hazard.AMINE}), set(), {Hazard.AMINE}),
        (thing("shellac-1lb", free={Hazard.METHANOL}), {Hazard.FLAMMABLE}, {Hazard.METHANOL}),
        (
            thing("waterborne-clear", parts=(Ingredient("hardener"),), free={Hazard.ISOCYANATE}),
            set(),
            {Hazard.ISOCYANATE},
        ),
        (
            thing("waterborne-clear", parts=(Ingredient("hdi"),), free={Hazard.ISOCYANATE}),
            {Hazard.ISOCYANATE},
            set(),
        ),
        (
            thing("waterborne-two-part", note="isocyanate in it", free={Hazard.ISOCYANATE}),
            {Hazard.ISOCYANATE},
            set(),
        ),
        (
            thing("milk-paint", parts=(Ingredient("tung oil"),), free={Hazard.SELF_HEATING}),
            {Hazard.SELF_HEATING},
            set(),
        ),
        (
            thing("tung-oil", parts=(thing("alkyd-varnish"),), free={Hazard.SELF_HEATING}),
            {Hazard.SELF_HEATING},
            set(),
        ),
        (thing("glaze", holds={Hazard.CHLORINATED}), {Hazard.CHLORINATED}, set()),
    ],
)
def test_a_sheet_speaks_of_its_own_can(of, there, not_there):
    found = set(hazards_in(of, FACTS))
    assert there <= found
    assert not not_there & found


def test_what_a_sheet_names_meets_what_it_must_not():
    lye = thing("water-dye", holds={Hazard.CAUSTIC, Hazard.OXIDIZER})
    assert {Substance.CAUSTIC, Substance.OXIDIZER} <= contents(lye, FACTS.chemistry)


@given(st.sampled_from(CLASSES), st.sets(st.sampled_from(MAY_BE_FREE_OF)))
def test_it_takes_nothing_else_away_and_says_what_it_took(key: str, free: set[Hazard]):
    by_class, read = thing(key), thing(key, free=free)
    taken = set(hazards_in(by_class, FACTS)) - set(hazards_in(read, FACTS))
    assert taken <= free
    assert taken == set(spared_by_sheet(read, FACTS))
