"""What may go over what: the rules are whole, sourced and unambiguous."""

from __future__ import annotations

from itertools import permutations

import pytest
from msgspec.structs import replace

from finishlog.core.finish.classes import COMMON_PRACTICE, FROM_MEMORY, FinishClass, Method
from finishlog.core.finish.overcoat import (
    ANY,
    ANY_FILM,
    BARE_WOOD,
    LiftedBy,
    OvercoatAnswer,
    OvercoatRule,
    PutOn,
    is_lifted,
    named_by,
    rule_between,
    rule_for,
    rule_on_bare_wood,
)
from finishlog.core.finish.stages import Stage
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
RULES = FACTS.overcoats
CLASSES = {c.key: c for c in FACTS.classes.values()}
WORDS = {*CLASSES, *(c.family for c in CLASSES.values()), ANY, ANY_FILM, BARE_WOOD}
KNOWN = {*FACTS.sources, COMMON_PRACTICE, FROM_MEMORY}
DAY_H = 24.0
ON_WOOD = [rule_on_bare_wood(RULES, top) for top in CLASSES.values()]
TOLD = {key: of for key, of in CLASSES.items() if not of.may_be}
BY_HAND = {
    (low.key, top.key): rule_for(RULES, low, top) for low, top in permutations(TOLD.values(), 2)
}
SPRAYED = {
    (low, top): rule_for(RULES, CLASSES[low], CLASSES[top], Method.SPRAY) for low, top in BY_HAND
}
DECIDING = {rule for rule in (*BY_HAND.values(), *SPRAYED.values()) if rule}


def over(under: str, top: str) -> OvercoatRule | None:
    return rule_between(FACTS, CLASSES[under], CLASSES[top])


def answer(under: str, top: str) -> OvercoatAnswer | None:
    rule = over(under, top)
    return rule.answer if rule else None


def waits(under: str, top: str) -> tuple[float, float]:
    rule = over(under, top)
    assert rule is not None
    assert rule.wait is not None
    return rule.wait.low_h, rule.wait.high_h


@every_row("rule", RULES, ids=lambda r: r.id)
def test_a_rule_names_what_exists_and_says_why(rule):
    assert {*rule.under, *rule.over} <= WORDS
    assert set(rule.barrier) <= set(CLASSES)
    assert rule.source in KNOWN
    assert rule.reason.endswith(".")
    if rule.wait is not None:
        assert {each.source for each in (rule.wait, *rule.wait.also)} <= KNOWN
    assert {way.source for way in rule.ways} <= KNOWN
    assert len(rule.ways) != 1, "one way is no choice"


def test_of_several_sources_the_longest_binds():
    """A row of which another source asks for more cannot be built (common practice)."""
    row = over("wiping-stain", "waterborne-clear")
    assert row is not None
    assert row.wait is not None
    longer = replace(row.wait.also[0], typical_h=169, high_h=169)
    with pytest.raises(ValueError, match="the longest binds"):
        replace(row, wait=replace(row.wait, also=(longer,)))
    assert all(
        each.high_h <= rule.wait.high_h for rule in RULES if rule.wait for each in rule.wait.also
    )


@every_row("rule", RULES, ids=lambda r: r.id)
def test_a_rule_about_what_is_buried_says_what_lifts_it(rule):
    if rule.lifted_by is LiftedBy.BARRIER:
        assert rule.barrier
    if rule.lifted_by is LiftedBy.NOTHING:
        assert not rule.barrier or rule.under == (BARE_WOOD,)
    if rule.lifted_by is LiftedBy.FULL_HARDNESS:
        assert all(Stage.CURED in low.stages for low in CLASSES.values() if named(rule, low))


def named(rule: OvercoatRule, low: FinishClass) -> bool:
    return named_by(rule.under, low) is not None


# Common practice: what lies between is what the new coat touches.
@pytest.mark.thorough
def test_every_pair_is_silent_under_what_lifts_it_and_under_nothing_else():
    """Each pair of classes, with each class laid between: who lifts, and who never does."""
    for (low, top), rule in BY_HAND.items():
        if rule is None or rule.answer is OvercoatAnswer.OK:
            continue
        for mid in TOLD.values():
            own = None if mid.key == low else BY_HAND[low, mid.key]
            between = [PutOn(mid)]
            young, hard = (
                is_lifted(rule, CLASSES[low], between, FACTS, hard=it_is) for it_is in (False, True)
            )
            same = own is not None and own.id == rule.id
            wrong = own is not None and own.answer in {OvercoatAnswer.BARRIER, OvercoatAnswer.AVOID}
            # What only dragged colour as it went on is a film like any other by now.
            wrong = wrong and not own.at_once
            says = f"{rule.id}: {top} over {mid.key} over {low}"
            if rule.lifted_by is LiftedBy.NOTHING:
                assert not hard, says
            elif mid.key in rule.barrier:
                assert young, says
            elif same and rule.at_once and rule.lifted_by is LiftedBy.ANY_FILM:
                # The colour was dragged while it went on, and there it lies by now.
                assert young, says
            elif rule.lifted_by is LiftedBy.BARRIER or wrong:
                assert not hard, says
            elif same:
                assert hard is (rule.answer is OvercoatAnswer.TEST), says
            else:
                assert hard is mid.builds_film, says
                assert young is (hard and rule.lifted_by is LiftedBy.ANY_FILM), says
        assert not is_lifted(rule, CLASSES[low], [], FACTS, hard=True)


def test_a_barrier_stays_one_whatever_else_lies_over_it():
    """Oil stain, shellac, lacquer, waterborne: the shellac is still there (common practice)."""
    rule = over("wiping-stain", "waterborne-clear")
    assert rule is not None
    stain, shellac, lacquer = (
        CLASSES[key] for key in ("wiping-stain", "shellac-2lb", "lacquer-sprayed")
    )
    for between in ([PutOn(lacquer), PutOn(shellac)], [PutOn(shellac), PutOn(lacquer)]):
        assert is_lifted(rule, stain, between, FACTS, hard=False)
    assert not is_lifted(rule, stain, [PutOn(lacquer)], FACTS, hard=False)


def test_rules_have_names_of_their_own():
    assert len({r.id for r in RULES}) == len(RULES)


@every_row("rule", RULES, ids=lambda r: r.id)
def test_what_is_forbidden_or_wants_a_barrier_comes_with_a_remedy(rule):
    if rule.answer in {OvercoatAnswer.AVOID, OvercoatAnswer.BARRIER, OvercoatAnswer.TEST}:
        assert rule.remedy
    if rule.answer is OvercoatAnswer.BARRIER:
        assert rule.barrier


# Between two bleaches goes water, not a coat (from memory: an acid sets chlorine free). Whether it
# was rinsed stands in the log: core.rules.bleached stops what was not.
def test_between_two_bleaches_goes_plenty_of_water():
    rule = over("bleach-chlorine", "bleach-oxalic")
    assert rule is not None
    assert rule.answer is OvercoatAnswer.WAIT
    assert rule.wait is not None
    assert rule.wait.low_h >= 24
    assert "poison gas" in rule.reason
    assert "plenty of water" in rule.remedy


@every_row("rule", RULES, ids=lambda r: r.id)
def test_every_rule_decides_some_pair(rule):
    assert rule in ON_WOOD or rule in DECIDING


@every_row("low", CLASSES)
def test_no_two_rules_claim_a_pair_with_the_same_right(low):
    for top in set(CLASSES) - {low}:
        ranks = []
        for rule in RULES:
            below = named_by(rule.under, CLASSES[low])
            above = named_by(rule.over, CLASSES[top])
            if below is not None and above is not None:
                ranks.append((below + above, below, rule.methods))
        assert len(ranks) == len(set(ranks)), top


@every_row("rule", RULES, ids=lambda r: r.id)
def test_a_barrier_may_itself_go_on_and_carry_the_overcoat(rule):
    for (low, top), deciding in BY_HAND.items():
        if deciding is rule:
            for barrier in rule.barrier:
                on_it, under_it = answer(low, barrier), answer(barrier, top)
                assert on_it not in {None, OvercoatAnswer.AVOID}, (low, barrier)
                assert under_it not in {None, OvercoatAnswer.AVOID}, (barrier, top)


def test_the_same_class_needs_no_rule():
    assert all(rule_for(RULES, of, of) is None for of in CLASSES.values())


def test_a_pair_that_no_source_covers_is_unknown_and_not_ok():
    for low, top in [
        ("conversion-varnish", "oil-polyurethane"),
        ("conversion-varnish", "waterborne-clear"),
        ("milk-paint", "conversion-varnish"),
        ("tannin-sealer", "lacquer-sprayed"),
        ("oil-polyurethane", "washcoat"),
    ]:
        assert over(low, top) is None


def test_most_pairs_have_an_answer():
    known = [rule is not None for pair, rule in BY_HAND.items() if "unknown" not in pair]
    assert sum(known) > 0.9 * len(known)


def test_a_finish_of_unknown_kind_is_tried_on_a_board_over_and_under_every_film():
    """No plain yes, and no wait that would end in one (common practice)."""
    unsure = {None, OvercoatAnswer.TEST, OvercoatAnswer.BARRIER, OvercoatAnswer.AVOID}
    for key, of in TOLD.items():
        if key != "unknown" and of.builds_film and of.topcoat:
            assert answer("unknown", key) in unsure, key
            assert answer(key, "unknown") in unsure, key


def test_of_what_may_be_several_the_strictest_of_them_decides():
    poly = CLASSES["polyurethane-unknown"]
    kinds = [CLASSES[key] for key in poly.may_be]
    for of in TOLD.values():
        for low, top in ((poly, of), (of, poly)):
            pairs = [(k, of) if low is poly else (of, k) for k in kinds if k is not of]
            rows = [BY_HAND[a.key, b.key] for a, b in pairs]
            found = rule_between(FACTS, low, top)
            if found is None:
                assert None in rows
                continue
            assert found.id in {row.id for row in rows if row}
            wrong = {OvercoatAnswer.AVOID, OvercoatAnswer.BARRIER, OvercoatAnswer.TEST}
            assert (found.answer in wrong) >= any(r and r.answer in wrong for r in rows)
            if found.answer in wrong:
                continue
            adds = [row for row in rows if row and row.wait and row.answer is not OvercoatAnswer.OK]
            scuffs = any(row.answer is OvercoatAnswer.SCUFF for row in rows if row)
            assert (found.answer is OvercoatAnswer.SCUFF) is scuffs
            if adds:
                assert found.wait is not None
                assert found.wait.high_h == max(row.wait.high_h for row in adds if row.wait)
    assert rule_between(FACTS, poly, poly) is None


def test_what_is_read_for_a_pair_decides_it_as_all_the_rules_do():
    for (low, top), by_hand in BY_HAND.items():
        of, over_it = CLASSES[low], CLASSES[top]
        some = FACTS.overcoats_between(of, over_it)
        assert rule_for(some, of, over_it) == by_hand
        assert rule_for(some, of, over_it, Method.SPRAY) == SPRAYED[low, top]


def test_what_is_read_for_bare_wood_decides_as_all_the_rules_do():
    for top in CLASSES.values():
        some = FACTS.overcoats_on_bare_wood
        assert rule_on_bare_wood(some, top) == rule_on_bare_wood(RULES, top)


# Finishing-tip page: several days to a week; trade questions and answers: 72 h or a barrier.
def test_oil_stain_dries_three_to_seven_days_under_waterborne_or_takes_shellac_between():
    assert waits("wiping-stain", "waterborne-clear") == (72, 168)
    rule = over("wiping-stain", "waterborne-clear")
    assert rule is not None
    assert {"shellac-2lb", "vinyl-sealer"} <= set(rule.barrier)


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
@every_row("top", [key for key in CLASSES if key != "paste-wax"])
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
# A heat-bodied oil is itself an oil, and milk paint is porous.
FILMS = [c.key for c in CLASSES.values() if c.builds_film and c.family not in {"oil", "paint"}]


@every_row("low", FILMS)
def test_oil_does_not_mend_a_film(low):
    assert answer(low, "boiled-linseed-oil") is OvercoatAnswer.AVOID


# US Navy NAVEDTRA 14044: 24 h before finish coats; how-to article: 2 to 7 days.
@pytest.mark.parametrize("top", ["lacquer-sprayed", "shellac-2lb", "alkyd-varnish"])
def test_filler_dries_a_day_at_least_and_a_week_to_be_safe(top):
    assert waits("paste-filler", top) == (24, 168)


# Woodworking magazine, oily exotic woods: wax in shellac destroys the bond.
@pytest.mark.parametrize("top", ["oil-polyurethane", "waterborne-clear", "conversion-varnish"])
def test_waxy_shellac_is_no_tie_coat(top):
    assert answer("shellac-waxy", top) is OvercoatAnswer.AVOID


# General reference on conversion finishes.
@pytest.mark.parametrize("low", ["shellac-1lb", "shellac-2lb", "shellac-3lb", "shellac-waxy"])
def test_no_shellac_under_a_conversion_finish(low):
    assert answer(low, "conversion-varnish") is OvercoatAnswer.AVOID
    assert answer("vinyl-sealer", "conversion-varnish") is OvercoatAnswer.OK


# Woodworking magazine, understanding stains and dyes: brushed waterborne drags water dye.
def test_a_brush_drags_dye_and_a_spray_gun_does_not():
    for low, top in (("water-dye", "waterborne-clear"), ("alcohol-dye", "shellac-2lb")):
        brushed = rule_for(RULES, CLASSES[low], CLASSES[top], Method.BRUSH)
        sprayed = rule_for(RULES, CLASSES[low], CLASSES[top], Method.SPRAY)
        assert brushed is not None
        assert sprayed is not None
        assert brushed.answer is OvercoatAnswer.BARRIER
        assert sprayed.answer is OvercoatAnswer.OK
        assert over(low, top) is brushed


# Common practice: each melts into the one below.
@pytest.mark.parametrize("family", ["shellac", "lacquer"])
def test_what_melts_in_goes_over_its_own_family(family):
    mine = [key for key, of in CLASSES.items() if of.family == family]
    for low, top in permutations(mine, 2):
        assert answer(low, top) is OvercoatAnswer.OK


# Common practice; acid catalyst and alkali.
def test_alkali_of_a_bleach_kills_the_catalyst():
    assert answer("bleach-two-part", "conversion-varnish") is OvercoatAnswer.AVOID
    assert answer("bleach-two-part", "oil-polyurethane") is OvercoatAnswer.WAIT


# Period texts on shellac: it softens and blisters under sun and heat.
def test_no_shellac_under_spar_varnish():
    for low in (key for key, of in CLASSES.items() if of.family == "shellac"):
        assert answer(low, "spar-varnish") is OvercoatAnswer.AVOID


def a_rule(name: str, under: str, over: str) -> OvercoatRule:
    return OvercoatRule(
        name,
        (under,),
        (over,),
        OvercoatAnswer.OK,
        "Because.",
        COMMON_PRACTICE,
        lifted_by=LiftedBy.NOTHING,
    )


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
