"""What names tell of a thing, and what must never meet: poison first, in any order and nesting."""

from __future__ import annotations

from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.findings import Level
from finishlog.core.finish.classes import COMMON_PRACTICE, FROM_MEMORY
from finishlog.core.mixing.chemistry import LEAVE_NOW, Ingredient, contents, hardens, mixed_findings
from finishlog.core.published.chemistry import Substance
from finishlog.facts.load import load_facts
from tests.rows import every_row
from tests.worded_in import sentence

FACTS = load_facts()
CHEMISTRY = FACTS.chemistry
KNOWN = {*FACTS.sources, COMMON_PRACTICE, FROM_MEMORY}


def mix(key: str, *parts: str, name: str = "", note: str = "") -> Ingredient:
    return Ingredient(name, key, note, tuple(Ingredient(part) for part in parts))


def stops(of: Ingredient) -> list[str]:
    family = FACTS.finish_class(of.class_key).family if of.class_key else ""
    found = mixed_findings(contents(of, CHEMISTRY), family, CHEMISTRY)
    return [sentence(f) for f in found if f.level is Level.STOP]


# Poison control and safety data sheets say so everywhere (from memory): acids free chlorine,
# ammonia makes chloramine, alcohol and acetone make chloroform, peroxide reacts violently.
@every_row(
    "other",
    ["vinegar", "Oxalic Acid", "lemon juice", "toilet cleaner", "household ammonia",
     "glass cleaner", "hydrogen peroxide", "alcohol", "denatured alcohol", "acetone",
     "lacquer thinner", "dish soap"],
)  # fmt: skip
@every_row("bleach", ["water + chlorine bleach", "laundry bleach", "bleach"])
def test_chlorine_bleach_in_any_part_meets_nothing_but_water(bleach: str, other: str):
    for key in ("bleach-chlorine", "water-dye", "bleach-oxalic", "milk-paint"):
        (said, *_) = stops(mix(key, bleach, other))
        assert said.startswith(LEAVE_NOW)


# common practice: what is right draws no alarm.
@every_row(
    "right",
    [
        mix("bleach-chlorine", "bleach", "water"),
        mix("bleach-chlorine", "water", "laundry bleach"),
        mix("bleach-oxalic", "oxalic crystals", "hot water"),
        mix("bleach-oxalic", "bleach", "water", name="deck brightener"),
        mix("bleach-two-part", "bleach A", "bleach B"),
        mix("bleach-two-part", "lye", "peroxide"),
        mix("shellac-2lb", "bleached flakes", "alcohol"),
        mix("alkyd-varnish", "varnish", "mineral spirits"),
        mix("alkyd-varnish", "varnish", "turpentine", "tung oil"),
        mix("lacquer-sprayed", "lacquer", "lacquer thinner"),
        mix("alcohol-dye", "powder", "lacquer thinner"),
        mix("conversion-varnish", "base", "acid catalyst", "thinner"),
        mix("waterborne-two-part", "base", "hardener", "water"),
        mix("bleach-chlorine", "water", note="no vinegar, never ammonia"),
        mix("milk-paint", "powder", "water", note="acid-free paper under it"),
    ],
)
def test_what_is_mixed_right_draws_no_stop(right: Ingredient):
    assert stops(right) == []


# from memory: peracids, acetone peroxide, peroxide on oil and solvent.
@pytest.mark.parametrize(
    "other", ["vinegar", "acetone", "linseed oil", "turps", "white spirit", "alcohol"]
)
def test_strong_peroxide_meets_no_acid_and_nothing_that_burns(other: str):
    assert stops(mix("bleach-two-part", other))
    assert stops(mix("water-dye", "hydrogen peroxide", other))


# from memory: the vapour of petrol lights at any temperature of a shop.
@every_row("key", ["alkyd-varnish", "lacquer-sprayed", "shellac-2lb", "paste-wax"])
@every_row("word", ["petrol", "gasoline", "Unleaded gasoline 95"])
def test_petrol_belongs_in_no_finish(key: str, word: str):
    assert "petrol" in stops(mix(key, "base", word))[0]


@pytest.mark.parametrize("key", ["alkyd-varnish", "oil-polyurethane", "shellac-2lb", "hardwax-oil"])
def test_lacquer_thinner_is_no_thinner_for_varnish_oil_or_shellac(key: str):
    assert "lacquer thinner" in stops(mix(key, "base", "lacquer thinner"))[0]


# NIOSH alerts: two-part urethanes with free isocyanate. A hardener that does not say what it is
# may be one; an acid catalyst, a peroxide or an amine says so.
@every_row(
    ("of", "may"),
    [
        (mix("waterborne-clear", "base", "hardener"), True),
        (mix("alkyd-varnish", "base", "crosslinker X2"), True),
        (mix("lacquer-sprayed", "base", "part B"), True),
        (mix("oil-enamel", "A", "B component"), True),
        (mix("spar-varnish", "base", "hardner"), True),
        (mix("waterborne-clear", "base", name="2K topcoat"), True),
        (mix("waterborne-clear", "base", "water"), False),
        (mix("conversion-varnish", "base", "hardener"), False),
        (mix("lacquer-postcatalysed", "base", "catalyst"), False),
        (mix("lacquer-sprayed", "base", "acid catalyst"), False),
        (mix("waterborne-clear", "resin", "epoxy hardener"), False),
    ],
)
def test_a_hardener_may_be_isocyanate_unless_it_or_its_class_says_what_it_is(
    of: Ingredient, may: bool
):
    assert (Substance.ISOCYANATE in contents(of, CHEMISTRY)) is may


@pytest.mark.parametrize("word", ["pre-catalysed lacquer", "retarder", "hardwax", "japan drier"])
def test_what_only_sounds_like_it_does_not_harden(word: str):
    assert not hardens(CHEMISTRY.in_name(word))


def test_a_word_of_no_takes_back_what_follows_it_and_nothing_else():
    said = CHEMISTRY.in_note("not with ammonia; rinsed, vinegar and water after")
    assert said == {Substance.ACID, Substance.WATER}


def test_a_nested_mix_that_says_nothing_of_itself_is_what_its_parts_are():
    inner = Ingredient("", made_of=(Ingredient("water"),))
    assert stops(Ingredient("", "bleach-chlorine", made_of=(inner,))) == []
    inner = Ingredient("", made_of=(Ingredient("vinegar"),))
    assert stops(Ingredient("", "bleach-chlorine", made_of=(inner,))) != []


NAMES = st.sampled_from(
    ["water", "bleach", "chlorine bleach", "vinegar", "oxalic", "ammonia", "peroxide", "lye",
     "alcohol", "acetone", "linseed", "turps", "petrol", "lacquer thinner", "hardener", "base",
     "acid catalyst", "soap"]
)  # fmt: skip
CLASSES = st.sampled_from(["", "bleach-chlorine", "bleach-oxalic", "bleach-two-part", "water-dye"])


@given(st.sampled_from(list(FACTS.classes)), st.lists(NAMES, min_size=1, max_size=4), st.data())
def test_neither_order_nor_nesting_of_the_parts_changes_what_is_said(
    key: str, names: list[str], data: st.DataObject
):
    said = stops(mix(key, *names))
    for turned in permutations(names):
        assert stops(mix(key, *turned)) == said
    n = data.draw(st.integers(0, len(names) - 1))
    inner = Ingredient("", data.draw(st.sampled_from(["", key])), made_of=(Ingredient(names[n]),))
    outer = tuple(Ingredient(name) for m, name in enumerate(names) if m != n)
    nested = Ingredient("", key, made_of=(inner, *outer))
    assert [s for s in said if s.startswith(LEAVE_NOW)] == [
        s for s in stops(nested) if s.startswith(LEAVE_NOW)
    ]


@given(st.frozensets(st.sampled_from(Substance)), st.frozensets(st.sampled_from(Substance)))
def test_which_of_two_comes_first_makes_no_difference(one, other):
    assert CHEMISTRY.meeting(one, other) == CHEMISTRY.meeting(other, one)


@given(st.frozensets(st.sampled_from(Substance)), st.sampled_from(Substance))
def test_more_in_a_pot_is_never_safer(of, more):
    before = set(CHEMISTRY.meeting(of, of))
    assert before <= set(CHEMISTRY.meeting(of | {more}, of | {more}))


def test_every_clue_and_every_conflict_is_sourced_and_said_once():
    assert {c.source for c in (*CHEMISTRY.substances.values(), *CHEMISTRY.conflicts)} <= KNOWN
    assert {s.source for s in (*CHEMISTRY.strangers, *CHEMISTRY.thinnings)} <= KNOWN
    named = [key for thinning in CHEMISTRY.thinnings for key in thinning.classes]
    assert len(named) == len(set(named))
    assert set(named) <= {*FACTS.classes, *(c.family for c in FACTS.classes.values())}
    assert len({c.of for c in CHEMISTRY.conflicts}) == len(CHEMISTRY.conflicts)
    classes = {key for c in CHEMISTRY.substances.values() for key in c.classes}
    assert classes <= set(FACTS.classes)


def test_whoever_stands_in_poison_is_told_to_leave_before_anything_else():
    for conflict in CHEMISTRY.conflicts:
        if not conflict.poison:
            continue
        assert conflict.level is Level.STOP
        (first, *_) = mixed_findings(conflict.of, "", CHEMISTRY)
        assert first.get_out
        assert sentence(first).startswith("leave now, call from outside: ")
        assert "rinse" not in sentence(first)
