"""Woods: what they do to a finish, and who says so."""

from __future__ import annotations

import pytest

from finishlog.core.finish.classes import COMMON_PRACTICE, FROM_MEMORY, Mechanism
from finishlog.core.finish.overcoat import ANY, OvercoatAnswer
from finishlog.core.published.species import (
    Condition,
    Pores,
    Species,
    Tannin,
    WantsFiller,
    rules_for_wood,
)
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
WOODS = {s.key: s for s in FACTS.species}
CLASSES = {c.key: c for c in FACTS.classes.values()}
KNOWN = {*FACTS.sources, COMMON_PRACTICE, FROM_MEMORY}
TRAITS = {"any", "oily", "blotches", "pitchy", "tannin", "low-tannin"}

each_wood = every_row("wood", FACTS.species, ids=lambda s: s.key)


def on(wood: str, top: str, *conditions: Condition) -> dict[str, OvercoatAnswer]:
    rules = rules_for_wood(FACTS.wood_rules, WOODS[wood], CLASSES[top], conditions)
    return {rule.id: rule.answer for rule in rules}


@each_wood
def test_every_property_names_a_source(wood):
    assert {
        wood.pores_source,
        wood.wants_filler_source,
        wood.tannin_source,
        wood.oily_source,
        wood.blotches_source,
        wood.pitchy_source,
    } <= KNOWN
    for movement in (wood.radial_per_pct, wood.tangential_per_pct):
        assert movement is None or movement.source in KNOWN


def test_a_name_means_one_wood():
    seen = [w.casefold() for s in FACTS.species for w in {s.key, s.name, *s.aliases}]
    assert len(seen) == len(set(seen))


@each_wood
def test_a_wood_is_found_by_key_name_or_alias_whatever_the_case(wood):
    for word in (wood.key, wood.name, *wood.aliases):
        assert FACTS.species_named(f" {word.upper()} ") is wood


def test_a_wood_that_nobody_describes_is_not_guessed():
    assert FACTS.species_named("ironwood") is None
    assert FACTS.species_named("") is None


# Wood Handbook, table 16-1: ring-porous woods, filler wanted for a smooth finish.
@pytest.mark.parametrize("key", ["red-oak", "white-oak", "ash", "elm", "hickory", "chestnut"])
def test_ring_porous_woods_want_filler(key):
    assert WOODS[key].pores is Pores.RING
    assert WOODS[key].wants_filler is WantsFiller.YES


# Wood Handbook, table 16-1.
@pytest.mark.parametrize("key", ["walnut", "butternut"])
def test_semi_ring_porous_woods_may_want_filler(key):
    assert WOODS[key].pores is Pores.SEMI_RING
    assert WOODS[key].wants_filler is WantsFiller.DEPENDS


# Wood Handbook, table 16-1.
@every_row(
    "key",
    ["cherry", "maple", "birch", "beech", "alder", "aspen", "basswood", "sweetgum", "poplar"],
)
def test_diffuse_porous_woods_want_no_filler(key):
    assert WOODS[key].pores is Pores.DIFFUSE
    assert WOODS[key].wants_filler is WantsFiller.NO


# USDA Forest Products Laboratory, Iron Stain on Wood (2013).
@pytest.mark.parametrize("key", ["oak", "red-oak", "white-oak", "redwood", "cedar", "baldcypress"])
def test_oak_redwood_cedar_and_cypress_stain_with_iron(key):
    assert WOODS[key].tannin is Tannin.YES
    assert WOODS[key].tannin_source == "fpl-iron-stain-2013"


# Louisiana State University, fact sheet 2: steel wool, then a water-based finish, on red oak.
def test_steel_wool_before_waterborne_turns_oak_black():
    iron = Condition.STEEL_WOOL
    for top in ("waterborne-clear", "water-dye"):
        assert on("red-oak", top, iron)["steel-wool-under-water"] is OvercoatAnswer.AVOID
    assert "steel-wool-under-water" not in on("red-oak", "waterborne-clear")
    assert "steel-wool-under-water" not in on("red-oak", "oil-polyurethane", iron)


# Iron can stain nearly any wood: USDA Forest Products Laboratory, Iron Stain on Wood (2013).
def test_where_the_tannin_is_not_known_both_cautions_hold():
    assert WOODS["beech"].tannin is Tannin.UNKNOWN
    assert "steel-wool-under-water" in on("beech", "waterborne-clear", Condition.STEEL_WOOL)
    assert "pale-wood-under-sealer" in on("beech", "tannin-sealer")


# Woodworking magazine, April 2004.
@every_row(
    "key",
    ["pine", "spruce", "fir", "aspen", "poplar", "alder", "cherry", "birch", "soft-maple"],
)
def test_these_woods_go_blotchy_under_penetrating_stain(key):
    assert WOODS[key].blotches_source == "blotching-2004"
    assert on(key, "wiping-stain")["blotchy-wood-under-stain"] is OvercoatAnswer.BARRIER
    # Gel stain and dye are what is used instead.
    assert not {"gel-stain", "water-dye"} & {
        top for top in CLASSES if "blotchy-wood-under-stain" in on(key, top)
    }


# Woodworking magazine, April 2004.
@pytest.mark.parametrize("key", ["oak", "ash", "mahogany"])
def test_oak_ash_and_mahogany_take_stain_evenly(key):
    assert "blotchy-wood-under-stain" not in on(key, "wiping-stain")


# Woodworking magazine, finishing oily exotic woods; restorer's article on oily woods.
OILY = ["teak", "rosewood", "cocobolo", "bubinga", "jatoba", "wenge", "ebony"]


@pytest.mark.parametrize("key", OILY)
def test_oily_woods_want_shellac_under_what_oxidises_and_under_waterborne_and_lacquer(key):
    for top in CLASSES.values():
        if top.key in {"spar-varnish", "tannin-sealer", "washcoat"}:
            continue
        oxidises = top.mechanism is Mechanism.OXIDATION
        if oxidises or top.family in {"waterborne", "lacquer", "catalysed"}:
            assert OvercoatAnswer.BARRIER in on(key, top.key).values(), top.key
    assert not on(key, "shellac-2lb")


@pytest.mark.parametrize("rule", ["oily-wood-under-oil", "oily-wood-under-water"])
def test_oily_wood_is_wiped_with_solvent_minutes_before_the_shellac(rule):
    (found,) = [r for r in FACTS.wood_rules if r.id == rule]
    assert "solvent" in found.remedy
    assert "within minutes" in found.remedy
    assert found.barrier == ("shellac-1lb", "shellac-2lb")


# Common practice: shellac fails outdoors, so the first coat goes on thinned.
def test_outdoors_oily_wood_gets_a_thinned_coat_and_no_shellac():
    assert on("teak", "spar-varnish") == {"oily-wood-under-spar-varnish": OvercoatAnswer.TEST}


# USDA Forest Products Laboratory, report 1733 (1959).
def test_aromatic_cedar_wants_shellac_under_varnish_and_paint():
    for top in ("alkyd-varnish", "oil-enamel", "milk-paint"):
        assert on("aromatic-cedar", top)["aromatic-cedar"] is OvercoatAnswer.BARRIER
    assert "bare" in next(r.remedy for r in FACTS.wood_rules if r.id == "aromatic-cedar")


# Common practice.
def test_a_reactive_sealer_colours_oak_and_hardly_maple():
    assert "pale-wood-under-sealer" not in on("oak", "tannin-sealer")
    assert on("maple", "tannin-sealer")["pale-wood-under-sealer"] is OvercoatAnswer.TEST


# USDA Forest Products Laboratory, report 1733 (1959).
@pytest.mark.parametrize("key", ["pine", "fir", "douglas-fir"])
def test_pitch_comes_through_any_finish(key):
    assert all(on(key, top)["pitch"] is OvercoatAnswer.TEST for top in CLASSES)
    wet = on(key, "oil-polyurethane", Condition.PITCH)
    assert wet["pitch-not-set"] is OvercoatAnswer.AVOID


# Wood Handbook, chapter 16: knots.
def test_knots_want_shellac_under_paint():
    for top in ("oil-enamel", "latex-enamel"):
        assert on("pine", top, Condition.KNOTS)["knots-under-paint"] is OvercoatAnswer.BARRIER


# Common practice.
def test_end_grain_wants_a_washcoat():
    assert on("ash", "wiping-stain", Condition.END_GRAIN)["end-grain"] is OvercoatAnswer.BARRIER
    assert "end-grain" not in on("ash", "wiping-stain")


# Wood Handbook, table 13-5: change of width for each percent of moisture content.
@pytest.mark.parametrize(
    ("key", "radial", "tangential"),
    [
        ("red-oak", 0.00158, 0.00369),
        ("white-oak", 0.00180, 0.00365),
        ("cherry", 0.00126, 0.00248),
        ("maple", 0.00165, 0.00353),
        ("walnut", 0.00190, 0.00274),
        ("ash", 0.00169, 0.00274),
        ("beech", 0.00190, 0.00431),
    ],
)
def test_how_far_a_wood_moves(key, radial, tangential):
    wood = WOODS[key]
    assert (wood.radial_per_pct.value, wood.tangential_per_pct.value) == (radial, tangential)
    assert wood.radial_per_pct.source == wood.tangential_per_pct.source == "wood-handbook-ch13"


# Wood Handbook, page 13-17 (white fir, from memory): a flat-sawn board of 9.15 in from 8 to 11 %
# grows by 0.067 in.
def test_the_worked_example_of_the_handbook():
    assert 9.15 * WOODS["fir"].tangential_per_pct.value * (11 - 8) == pytest.approx(0.067, abs=5e-4)


# Wood Handbook, table 4-3, total shrinkage in percent: about 28.5 times the coefficient.
@every_row(
    ("key", "radial_pct", "tangential_pct"),
    [
        ("alder", 4.4, 7.3),
        ("ash", 4.9, 7.8),
        ("beech", 5.5, 11.9),
        ("cherry", 3.7, 7.1),
        ("walnut", 5.5, 7.8),
        ("poplar", 4.6, 8.2),
        ("sycamore", 5.0, 8.4),
        ("douglas-fir", 4.8, 7.6),
        ("sassafras", 4.0, 6.2),
    ],
)
def test_movement_agrees_with_the_total_shrinkage(key, radial_pct, tangential_pct):
    wood = WOODS[key]
    assert radial_pct / (100 * wood.radial_per_pct.value) == pytest.approx(28.9, abs=0.6)
    assert tangential_pct / (100 * wood.tangential_per_pct.value) == pytest.approx(28.2, abs=0.7)


@each_wood
def test_a_wood_moves_more_across_flat_sawn_than_across_quarter_sawn(wood):
    if wood.radial_per_pct and wood.tangential_per_pct:
        assert 0.0005 < wood.radial_per_pct.value < wood.tangential_per_pct.value < 0.005
    assert (wood.radial_per_pct is None) == (wood.tangential_per_pct is None)


def test_the_generic_oak_moves_by_its_group():
    assert WOODS["oak"].tangential_per_pct is None
    assert "group" in WOODS["oak"].note


@each_wood
def test_one_wood_read_alone_is_the_one_read_with_all(wood):
    for word in (wood.key, wood.name, *wood.aliases):
        assert load_facts().species_named(f" {word.upper()} ") == wood


@every_row("rule", FACTS.wood_rules, ids=lambda r: r.id)
def test_a_rule_names_what_exists_and_says_what_to_do(rule):
    assert set(rule.wood) <= TRAITS | set(WOODS)
    assert set(rule.over) <= {*CLASSES, *(c.family for c in CLASSES.values()), ANY}
    assert set(rule.barrier) <= set(CLASSES)
    assert rule.source in KNOWN
    assert rule.remedy
    assert rule.wait is None or rule.wait.source in KNOWN


def test_a_wood_has_the_trait_of_its_own_name():
    oak: Species = WOODS["oak"]
    assert {"oak", "tannin", "any"} == set(oak.traits)
