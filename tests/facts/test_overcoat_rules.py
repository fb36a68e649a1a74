"""What may go over what: the rules are whole, sourced and unambiguous."""

from __future__ import annotations

from itertools import permutations

import pytest

from finishlog.core.finishes import COMMON_PRACTICE, FROM_MEMORY
from finishlog.core.overcoat import (
    ANY,
    ANY_FILM,
    BARE_WOOD,
    OvercoatAnswer,
    OvercoatRule,
    named_by,
    rule_for,
    rule_on_bare_wood,
)
from finishlog.core.stages import Stage
from finishlog.facts.load import Facts

FACTS = Facts()
RULES = FACTS.overcoats
CLASSES = {c.key: c for c in FACTS.classes()}
WORDS = {*CLASSES, *(c.family for c in CLASSES.values()), ANY, ANY_FILM, BARE_WOOD}
KNOWN = {*FACTS.sources, COMMON_PRACTICE, FROM_MEMORY}
DAY_H = 24.0


def over(under: str, top: str) -> OvercoatRule | None:
    return rule_for(RULES, CLASSES[under], CLASSES[top])


def answer(under: str, top: str) -> OvercoatAnswer | None:
    rule = over(under, top)
    return rule.answer if rule else None


def waits(under: str, top: str) -> tuple[float, float]:
    rule = over(under, top)
    assert rule is not None
    assert rule.wait is not None
    return rule.wait.low_h, rule.wait.high_h


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_a_rule_names_what_exists_and_says_why(rule):
    assert {*rule.under, *rule.over} <= WORDS
    assert set(rule.barrier) <= set(CLASSES)
    assert rule.source in KNOWN
    assert rule.reason.endswith(".")
    if rule.wait is not None:
        assert rule.wait.source in KNOWN


def test_rules_have_names_of_their_own():
    assert len({r.id for r in RULES}) == len(RULES)


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_what_is_forbidden_or_wants_a_barrier_comes_with_a_remedy(rule):
    if rule.answer in {OvercoatAnswer.AVOID, OvercoatAnswer.BARRIER, OvercoatAnswer.TEST}:
        assert rule.remedy
    if rule.answer is OvercoatAnswer.BARRIER:
        assert rule.barrier


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_every_rule_decides_some_pair(rule):
    pairs = permutations(CLASSES.values(), 2)
    on_wood = [rule_on_bare_wood(RULES, top) for top in CLASSES.values()]
    assert rule in on_wood or any(rule_for(RULES, a, b) is rule for a, b in pairs)


@pytest.mark.parametrize("low", CLASSES)
def test_no_two_rules_claim_a_pair_with_the_same_right(low):
    for top in set(CLASSES) - {low}:
        ranks = []
        for rule in RULES:
            below = named_by(rule.under, CLASSES[low])
            above = named_by(rule.over, CLASSES[top])
            if below is not None and above is not None:
                ranks.append((below + above, below))
        assert len(ranks) == len(set(ranks)), top


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_a_barrier_may_itself_go_on_and_carry_the_overcoat(rule):
    for low, top in permutations(CLASSES, 2):
        if over(low, top) is rule:
            for barrier in rule.barrier:
                on_it, under_it = answer(low, barrier), answer(barrier, top)
                assert on_it not in {None, OvercoatAnswer.AVOID}, (low, barrier)
                assert under_it not in {None, OvercoatAnswer.AVOID}, (barrier, top)


def test_the_same_class_needs_no_rule():
    assert all(rule_for(RULES, of, of) is None for of in CLASSES.values())


def test_a_pair_that_no_source_covers_is_unknown_and_not_ok():
    for low, top in [
        ("lacquer-sprayed", "shellac-2lb"),
        ("oil-polyurethane", "waterborne-clear"),
        ("alkyd-varnish", "oil-polyurethane"),
        ("boiled-linseed-oil", "hardwax-oil"),
        ("wiping-stain", "hardwax-oil"),
        ("tannin-sealer", "lacquer-sprayed"),
    ]:
        assert over(low, top) is None


# Finishing-tip page: several days to a week; trade questions and answers: 72 h or a barrier.
def test_oil_stain_dries_three_to_seven_days_under_waterborne_or_takes_shellac_between():
    assert waits("wiping-stain", "waterborne-clear") == (72, 168)
    rule = over("wiping-stain", "waterborne-clear")
    assert rule is not None
    assert rule.barrier == ("shellac-2lb",)


# Essentials of Woodworking (1908): 12 h to a stain.
def test_oil_stain_dries_overnight_under_varnish():
    assert waits("wiping-stain", "alkyd-varnish") == (12, 24)
    assert waits("wiping-stain", "oil-polyurethane") == (12, 24)


# Trade questions and answers, defects of waterborne over oil.
def test_an_oil_and_varnish_blend_under_waterborne_wants_shellac_between():
    assert answer("oil-varnish-blend", "waterborne-clear") is OvercoatAnswer.BARRIER


# Woodworking magazine, linseed and tung oil: a week.
def test_linseed_oil_waits_a_week_under_varnish():
    assert waits("boiled-linseed-oil", "oil-polyurethane")[1] == 7 * DAY_H


# US Army TM 43-0139; Woodworking magazine, finishing oily exotic woods.
@pytest.mark.parametrize("top", ["alkyd-varnish", "oil-polyurethane", "waterborne-clear"])
def test_dewaxed_shellac_ties_everything_together(top):
    assert answer("shellac-2lb", top) is OvercoatAnswer.OK


# Woodworking magazine's readers' page: lacquer solvents attack varnish.
@pytest.mark.parametrize("low", ["alkyd-varnish", "oil-polyurethane", "waterborne-clear"])
def test_lacquer_is_kept_off_varnish_and_young_waterborne(low):
    assert answer(low, "lacquer-sprayed") is OvercoatAnswer.AVOID


# Common practice.
@pytest.mark.parametrize("low", ["lacquer-sprayed", "waterborne-clear"])
def test_varnish_over_lacquer_or_waterborne_holds_by_the_scuff(low):
    assert answer(low, "alkyd-varnish") is OvercoatAnswer.SCUFF
    assert waits(low, "alkyd-varnish") == (24, 72)


# Architectural specifications of the period; Woodworking magazine, oily exotic woods.
@pytest.mark.parametrize("top", [key for key in CLASSES if key != "paste-wax"])
def test_nothing_goes_over_wax(top):
    assert answer("paste-wax", top) is OvercoatAnswer.AVOID


# Woodworking magazine, winter 2011.
@pytest.mark.parametrize(
    ("low", "days"),
    [
        ("shellac-2lb", 2),
        ("lacquer-sprayed", 2),
        ("alkyd-varnish", 7),
        ("oil-polyurethane", 7),
        ("waterborne-clear", 21),
    ],
)
def test_wax_waits_as_long_as_rubbing_out(low, days):
    assert waits(low, "paste-wax")[0] == days * DAY_H
    assert waits(low, "paste-wax")[1] == CLASSES[low].stages[Stage.RUB].high_h


# National Park Service, Conserve O Gram 7/2.
def test_wax_is_kept_off_bare_wood():
    rule = rule_on_bare_wood(RULES, CLASSES["paste-wax"])
    assert rule is not None
    assert rule.answer is OvercoatAnswer.AVOID
    assert rule.source == "conserve-o-gram-7-2"


# Common practice.
@pytest.mark.parametrize("low", [c.key for c in CLASSES.values() if c.builds_film])
def test_oil_does_not_mend_a_film(low):
    assert answer(low, "boiled-linseed-oil") is OvercoatAnswer.AVOID


# US Navy NAVEDTRA 14044: 24 h before finish coats; how-to article: 2 to 7 days.
@pytest.mark.parametrize("top", ["lacquer-sprayed", "shellac-2lb", "alkyd-varnish"])
def test_filler_dries_a_day_at_least_and_a_week_to_be_safe(top):
    assert waits("paste-filler", top) == (24, 168)


def a_rule(name: str, under: str, over: str) -> OvercoatRule:
    return OvercoatRule(name, (under,), (over,), OvercoatAnswer.OK, "Because.", COMMON_PRACTICE)


def test_the_most_specific_rule_decides_whatever_the_order():
    rules = [
        a_rule("film", ANY_FILM, "wax"),
        a_rule("family", "shellac", "wax"),
        a_rule("class", "shellac-2lb", "paste-wax"),
        a_rule("half", "shellac", "paste-wax"),
    ]
    shellac, wax = CLASSES["shellac-2lb"], CLASSES["paste-wax"]
    for order in permutations(rules):
        found = rule_for(order, shellac, wax)
        assert found is not None
        assert found.id == "class"


def test_of_equals_the_one_that_knows_the_lower_coat_decides():
    rules = [a_rule("upper", "shellac", "paste-wax"), a_rule("lower", "shellac-2lb", "wax")]
    for order in permutations(rules):
        found = rule_for(order, CLASSES["shellac-2lb"], CLASSES["paste-wax"])
        assert found is not None
        assert found.id == "lower"


def test_any_film_means_what_builds_one():
    rules = [a_rule("film", ANY_FILM, "oil")]
    assert rule_for(rules, CLASSES["alkyd-varnish"], CLASSES["hardwax-oil"]) is not None
    assert rule_for(rules, CLASSES["paste-wax"], CLASSES["hardwax-oil"]) is None
