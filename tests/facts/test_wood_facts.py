"""Woods: what they do to a finish, and who says so."""

from __future__ import annotations

import pytest

from finishlog.core.finishes import COMMON_PRACTICE, FROM_MEMORY
from finishlog.core.overcoat import ANY, OvercoatAnswer
from finishlog.core.species import Pores, Species, Tannin, WantsFiller, named, rules_for_wood
from finishlog.facts.load import Facts

FACTS = Facts()
WOODS = {s.key: s for s in FACTS.species}
CLASSES = {c.key: c for c in FACTS.classes()}
KNOWN = {*FACTS.sources, COMMON_PRACTICE, FROM_MEMORY}
TRAITS = {"any", "oily", "blotches", "tannin", "low-tannin"}

each_wood = pytest.mark.parametrize("wood", FACTS.species, ids=lambda s: s.key)


def on(wood: str, top: str, *, steel_wool: bool = False) -> dict[str, OvercoatAnswer]:
    rules = rules_for_wood(FACTS.wood_rules, WOODS[wood], CLASSES[top], steel_wool=steel_wool)
    return {rule.id: rule.answer for rule in rules}


@each_wood
def test_every_property_names_a_source(wood):
    assert {
        wood.pores_source,
        wood.wants_filler_source,
        wood.tannin_source,
        wood.oily_source,
        wood.blotches_source,
    } <= KNOWN


def test_a_name_means_one_wood():
    seen = [w.casefold() for s in FACTS.species for w in {s.key, s.name, *s.aliases}]
    assert len(seen) == len(set(seen))


@each_wood
def test_a_wood_is_found_by_key_name_or_alias_whatever_the_case(wood):
    for word in (wood.key, wood.name, *wood.aliases):
        assert named(FACTS.species, f" {word.upper()} ") is wood


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
@pytest.mark.parametrize(
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
    assert on("red-oak", "waterborne-clear", steel_wool=True)["steel-wool-under-water"] == "avoid"
    assert "steel-wool-under-water" not in on("red-oak", "waterborne-clear")
    assert "steel-wool-under-water" not in on("red-oak", "oil-polyurethane", steel_wool=True)


# Iron can stain nearly any wood: USDA Forest Products Laboratory, Iron Stain on Wood (2013).
def test_where_the_tannin_is_not_known_both_cautions_hold():
    assert WOODS["beech"].tannin is Tannin.UNKNOWN
    assert "steel-wool-under-water" in on("beech", "waterborne-clear", steel_wool=True)
    assert "pale-wood-under-sealer" in on("beech", "tannin-sealer")


# Woodworking magazine, April 2004.
@pytest.mark.parametrize("key", ["pine", "aspen", "poplar", "alder", "cherry", "birch"])
def test_these_woods_go_blotchy_under_stain(key):
    assert on(key, "wiping-stain")["blotchy-wood-under-stain"] is OvercoatAnswer.TEST


# Woodworking magazine, April 2004.
@pytest.mark.parametrize("key", ["oak", "ash", "mahogany"])
def test_oak_ash_and_mahogany_take_stain_evenly(key):
    assert "blotchy-wood-under-stain" not in on(key, "wiping-stain")


# Woodworking magazine, finishing oily exotic woods; restorer's article on oily woods.
@pytest.mark.parametrize("key", ["teak", "rosewood", "cocobolo"])
def test_oily_woods_want_shellac_under_everything_but_shellac(key):
    for top in CLASSES.values():
        if top.family in {"shellac", "wax"}:
            continue
        assert OvercoatAnswer.BARRIER in on(key, top.key).values()
    assert not on(key, "shellac-2lb")


# Common practice.
def test_a_reactive_sealer_colours_oak_and_hardly_maple():
    assert "pale-wood-under-sealer" not in on("oak", "tannin-sealer")
    assert on("maple", "tannin-sealer")["pale-wood-under-sealer"] is OvercoatAnswer.TEST


# USDA Forest Products Laboratory, report 1733 (1959).
def test_pitch_comes_through_any_finish():
    assert all(on("pine", top)["pitch"] is OvercoatAnswer.TEST for top in CLASSES)


@pytest.mark.parametrize("rule", FACTS.wood_rules, ids=lambda r: r.id)
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
