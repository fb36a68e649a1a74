"""The seventy rules of the researched table: where each is held, with its verdict and its wait.

Beside each stands the verdict as the table prints it, with the source of verdict and of wait. Where
ours is said otherwise, the reason stands there too; it is never the laxer one.
"""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from finishlog.core.finish.classes import Method, WindowKind
from finishlog.core.finish.overcoat import OvercoatAnswer, OvercoatRule, rule_for, rule_on_bare_wood
from finishlog.core.finish.stages import Stage
from finishlog.core.published.sources import cited
from finishlog.core.published.species import Condition, Species, WoodRule, rules_for_wood
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
CLASSES = {c.key: c for c in FACTS.classes.values()}
WOODS = {s.key: s for s in FACTS.species}

OK, WAIT, SCUFF = OvercoatAnswer.OK, OvercoatAnswer.WAIT, OvercoatAnswer.SCUFF
BARRIER, AVOID, TEST = OvercoatAnswer.BARRIER, OvercoatAnswer.AVOID, OvercoatAnswer.TEST

Hours = tuple[float, float] | None

# What may go over what: number, lower, upper, answer, hours, source of the answer, of the hours.
OVERCOATS: list[tuple[str, str, str, OvercoatAnswer, Hours, str, str]] = [
    # 1: wait, 72-168 h; dewaxed shellac or vinyl between allows it after a day.
    ("R01", "wiping-stain", "waterborne-clear", WAIT, (72, 168),
     "waterborne-over-oil-stain", "waterborne-over-oil-stain"),
    # 2: wait, 12-24 h: the book says 12 h, the magazine overnight.
    ("R02", "wiping-stain", "alkyd-varnish", WAIT, (12, 24), "stains-and-dyes", "stains-and-dyes"),
    ("R02", "wiping-stain", "oil-polyurethane", WAIT, (12, 24),
     "stains-and-dyes", "stains-and-dyes"),
    # 3: wait, 24 h, or a sealer coat.
    ("R03", "wiping-stain", "lacquer-sprayed", WAIT, (24, 24),
     "wood-handbook-ch16", "common practice"),
    ("R03", "wiping-stain", "lacquer-precatalysed", WAIT, (24, 24),
     "wood-handbook-ch16", "common practice"),
    ("R03", "wiping-stain", "conversion-varnish", WAIT, (24, 24),
     "wood-handbook-ch16", "common practice"),
    # 4: wait, 12-24 h.
    ("R04", "wiping-stain", "shellac-2lb", WAIT, (12, 24), "essentials-1908", "common practice"),
    ("R04", "wiping-stain", "shellac-waxy", WAIT, (12, 24), "essentials-1908", "common practice"),
    # 5: barrier, 72 h and the barrier; a week to be safe (common practice).
    ("R05", "oil-varnish-blend", "waterborne-clear", BARRIER, (72, 168),
     "waterborne-over-oil-defects", "common practice"),
    # 6: wait, 72-168 h; the magazine says a week.
    ("R06", "boiled-linseed-oil", "alkyd-varnish", WAIT, (72, 168),
     "tung-and-linseed-article", "tung-and-linseed-article"),
    ("R06", "tung-oil", "oil-polyurethane", WAIT, (72, 168),
     "tung-and-linseed-article", "tung-and-linseed-article"),
    # 7: avoid unless cured, 7-30 d: the wait is the cure.
    ("R07", "boiled-linseed-oil", "lacquer-sprayed", WAIT, (168, 720),
     "hptp-06400-14", "common practice"),
    ("R07", "tung-oil", "conversion-varnish", WAIT, (168, 720),
     "hptp-06400-14", "common practice"),
    # 8: wait, 72-168 h.
    ("R08", "gel-stain", "waterborne-clear", WAIT, (72, 168), "gel-stain-page", "common practice"),
    # 9: wait, 24-48 h.
    ("R09", "gel-stain", "alkyd-varnish", WAIT, (24, 48), "gel-stain-page", "gel-stain-page"),
    ("R09", "gel-stain", "oil-polyurethane", WAIT, (24, 48), "gel-stain-page", "gel-stain-page"),
    # 10: barrier, 12-24 h, brushed or wiped.
    ("R10", "water-dye", "waterborne-clear", BARRIER, (12, 24),
     "stains-and-dyes", "water-dye-q-and-a"),
    # 12: ok, 12-24 h.
    ("R12", "water-dye", "shellac-2lb", OK, (12, 24), "stains-and-dyes", "common practice"),
    ("R12", "water-dye", "lacquer-sprayed", OK, (12, 24), "stains-and-dyes", "common practice"),
    ("R12", "water-dye", "alkyd-varnish", OK, (12, 24), "stains-and-dyes", "common practice"),
    # 13: barrier, 0.5-1 h, brushed.
    ("R13", "alcohol-dye", "shellac-2lb", BARRIER, (0.5, 1), "common practice", "common practice"),
    # 14: ok, 0.25-1 h.
    ("R14", "alcohol-dye", "lacquer-sprayed", OK, (0.25, 1), "stains-and-dyes", "common practice"),
    # 15: avoid.
    ("R15", "water-dye", "boiled-linseed-oil", AVOID, None, "stains-and-dyes", ""),
    ("R15", "alcohol-dye", "oil-varnish-blend", AVOID, None, "stains-and-dyes", ""),
    # 16: ok, 24-72 h and abrade, which is to scuff.
    ("R16", "waterborne-clear", "alkyd-varnish", SCUFF, (24, 72),
     "common practice", "common practice"),
    # 17: avoid; over lacquer 21 d, dewaxed shellac and a test make it right.
    ("R17", "waterborne-clear", "lacquer-sprayed", AVOID, (504, 504),
     "common practice", "common practice"),
    ("R17", "waterborne-clear", "conversion-varnish", AVOID, None, "common practice", ""),
    # 18: wait, 24-72 h, misted.
    ("R18", "waterborne-clear", "shellac-2lb", WAIT, (24, 72),
     "waterborne-over-oil-defects", "common practice"),
    # 19: avoid.
    ("R19", "shellac-waxy", "oil-polyurethane", AVOID, None, "oily-exotics-article", ""),
    ("R19", "shellac-waxy", "waterborne-clear", AVOID, None, "oily-exotics-article", ""),
    ("R19", "shellac-waxy", "conversion-varnish", AVOID, None, "oily-exotics-article", ""),
    # 20: ok, 1-24 h.
    *(
        ("R20", low, top, OK, (1, 24), "tm-43-0139", "common practice")
        for low in ("shellac-1lb", "shellac-2lb", "shellac-3lb")
        for top in ("oil-polyurethane", "alkyd-varnish", "waterborne-clear")
    ),
    # 21: ok, 1-3 h, thin.
    ("R21", "shellac-1lb", "lacquer-sprayed", OK, (1, 3), "common practice", "common practice"),
    # 22: avoid.
    ("R22", "shellac-1lb", "conversion-varnish", AVOID, None, "conversion-finishes-reference", ""),
    ("R22", "shellac-3lb", "conversion-varnish", AVOID, None, "conversion-finishes-reference", ""),
    # 23: avoid; the two-part one is the post-catalysed.
    ("R23", "lacquer-sanding-sealer", "conversion-varnish", AVOID, None,
     "conversion-finishes-reference", ""),
    ("R23", "lacquer-sanding-sealer", "lacquer-postcatalysed", AVOID, None,
     "conversion-finishes-reference", ""),
    # 24: ok, 1 h.
    ("R24", "lacquer-sanding-sealer", "lacquer-sprayed", OK, (1, 1),
     "cid-a-a-1572", "cid-a-a-1572"),
    # 25: avoid, or dewaxed shellac between.
    ("R25", "lacquer-sanding-sealer", "oil-polyurethane", AVOID, None, "common practice", ""),
    ("R25", "lacquer-sanding-sealer", "waterborne-clear", AVOID, None, "common practice", ""),
    # 26: avoid; 30 d, dewaxed shellac and mist coats make it right.
    ("R26", "alkyd-varnish", "lacquer-sprayed", AVOID, (720, 720),
     "lacquer-versus-varnish", "common practice"),
    ("R26", "oil-polyurethane", "lacquer-precatalysed", AVOID, (720, 720),
     "lacquer-versus-varnish", "common practice"),
    # 27: ok, 24-72 h and abrade, which is to scuff.
    ("R27", "lacquer-sprayed", "oil-polyurethane", SCUFF, (24, 72),
     "common practice", "common practice"),
    ("R27", "lacquer-sprayed", "alkyd-varnish", SCUFF, (24, 72),
     "common practice", "common practice"),
    # 31: avoid. A wax put in as a repair is not a wax coat: the film-under-wax rule says so.
    ("R31", "conversion-varnish", "lacquer-sprayed", AVOID, None, "common practice", ""),
    ("R31", "conversion-varnish", "shellac-2lb", AVOID, None, "common practice", ""),
    # 33: avoid; neutralised, rinsed and 24-72 h dry it may.
    ("R33", "bleach-two-part", "conversion-varnish", AVOID, (24, 72),
     "common practice", "common practice"),
    ("R33", "bleach-two-part", "lacquer-precatalysed", AVOID, (24, 72),
     "common practice", "common practice"),
    # 34: avoid.
    *(
        ("R34", low, top, AVOID, None, "common practice", "")
        for low in ("alkyd-varnish", "lacquer-sprayed", "waterborne-clear", "conversion-varnish")
        for top in ("boiled-linseed-oil", "tung-oil", "hardwax-oil")
    ),
    # 35: avoid.
    ("R35", "paste-wax", "shellac-2lb", AVOID, None, "lumber-and-its-uses", ""),
    ("R35", "paste-wax", "waterborne-clear", AVOID, None, "lumber-and-its-uses", ""),
    # 36: wait, at least 48 h, 168 h and 504 h; the long end is another source's full hardness.
    ("R36", "lacquer-sprayed", "paste-wax", WAIT, (48, 336), "rub-out-2011", "restoration-shop"),
    ("R36", "shellac-2lb", "paste-wax", WAIT, (48, 336), "rub-out-2011", "restoration-shop"),
    ("R36", "oil-polyurethane", "paste-wax", WAIT, (168, 720), "rub-out-2011", "pack-and-stack"),
    ("R36", "waterborne-clear", "paste-wax", WAIT, (504, 720), "rub-out-2011", "pack-and-stack"),
    # 52: linseed filler is to be avoided; of which oil a filler is, nobody logs. 53: 24-168 h.
    ("R52", "paste-filler", "lacquer-sprayed", WAIT, (24, 168),
     "hptp-06400-14", "pore-fillers-article"),
    ("R53", "paste-filler", "lacquer-sprayed", WAIT, (24, 168),
     "hptp-06400-14", "pore-fillers-article"),
    ("R53", "paste-filler", "shellac-2lb", WAIT, (24, 168),
     "navedtra-14044", "pore-fillers-article"),
    # 54: wait, 72-168 h.
    ("R54", "paste-filler", "waterborne-clear", WAIT, (72, 168),
     "pore-fillers-article", "common practice"),
    # 55: wait, 12-24 h.
    ("R55", "wiping-stain", "paste-filler", WAIT, (12, 24),
     "wood-handbook-ch16", "common practice"),
    # 56: wait, at least 8 h.
    ("R56", "paste-filler", "wiping-stain", WAIT, (8, 8), "ufgs-09995", "ufgs-09995"),
    # 60: wait, 12-24 h; under waterborne the oil in it wants shellac between.
    ("R60", "glaze", "alkyd-varnish", WAIT, (12, 24),
     "glaze-peeling-q-and-a", "common practice"),
    ("R60", "glaze", "lacquer-sprayed", WAIT, (12, 24),
     "glaze-peeling-q-and-a", "common practice"),
    # 65: wait, 24-72 h; under oil chair makers wait overnight.
    ("R65", "milk-paint", "oil-varnish-blend", WAIT, (4, 16), "common practice", "common practice"),
    *(
        ("R65", "milk-paint", top, WAIT, (24, 72), "common practice", "common practice")
        for top in ("alkyd-varnish", "paste-wax")
    ),
    # 66: avoid.
    ("R66", "soap", "alkyd-varnish", AVOID, None, "common practice", ""),
    ("R66", "soap", "waterborne-clear", AVOID, None, "common practice", ""),
    # 68: wait: rinse next day, then 12-24 h.
    ("R68", "bleach-oxalic", "alkyd-varnish", WAIT, (36, 48), "bleaches-2011", "bleaches-2011"),
    # 69: wait, 24-72 h after neutralising; the class's own recoat time counts the bleach before it.
    ("R69", "bleach-two-part", "alkyd-varnish", WAIT, (24, 72),
     "common practice", "common practice"),
    # 70: avoid.
    ("R70", "shellac-2lb", "spar-varnish", AVOID, None, "cyclopedia-1907", ""),
]  # fmt: skip

# The same when it is sprayed.
SPRAYED: list[tuple[str, str, str, OvercoatAnswer, Hours]] = [
    # 11: ok, 12-24 h (common practice).
    ("R11", "water-dye", "waterborne-clear", OK, (12, 24)),
    # 13: the first coat sprayed is the way out (common practice).
    ("R13", "alcohol-dye", "shellac-2lb", OK, (0.5, 1)),
]

# What a wood, or what is on it, does: number, wood, upper, where only, answer, hours, source.
ON_WOOD: list[
    tuple[str, str, str, Condition | None, OvercoatAnswer, Hours, str]
] = [
    # 32: avoid (common practice).
    ("R32", "ash", "conversion-varnish", Condition.STEEL_WOOL, AVOID, None, "common practice"),
    # 38: barrier.
    ("R38", "ash", "lacquer-sprayed", Condition.SILICONE, BARRIER, None,
     "silicone-fisheye-article"),
    # 39: avoid.
    *(
        ("R39", wood, top, Condition.STEEL_WOOL, AVOID, None, "lsu-fact-sheet-2")
        for wood in ("red-oak", "chestnut", "walnut", "mahogany")
        for top in ("waterborne-clear", "water-dye")
    ),
    # 40: wait, 24-48 h after oxalic acid and rinsing.
    ("R40", "oak", "alkyd-varnish", Condition.IRON_STAIN, WAIT, (24, 48), "bleaches-2011"),
    # 41: caution, which is to test.
    ("R41", "ash", "waterborne-clear", Condition.STEARATE, TEST, None, "stearated-paper-q-and-a"),
    # 42: barrier within minutes of the solvent wipe, shellac 1-3 h.
    ("R42", "teak", "tung-oil", None, BARRIER, (1, 3), "oily-exotics-article"),
    ("R42", "rosewood", "oil-polyurethane", None, BARRIER, (1, 3), "oily-exotics-article"),
    ("R42", "cocobolo", "alkyd-varnish", None, BARRIER, (1, 3), "oily-exotics-article"),
    # 43: barrier, as above.
    ("R43", "teak", "waterborne-clear", None, BARRIER, (1, 3), "oily-wood-restorer"),
    ("R43", "teak", "lacquer-sprayed", None, BARRIER, (1, 3), "oily-wood-restorer"),
    # 44: barrier.
    ("R44", "aromatic-cedar", "alkyd-varnish", None, BARRIER, None, "fpl-1733-pitch"),
    ("R44", "aromatic-cedar", "oil-enamel", None, BARRIER, None, "fpl-1733-pitch"),
    # 45: avoid until 24 h at 71 °C.
    ("R45", "pine", "alkyd-varnish", Condition.PITCH, AVOID, (24, 24), "fpl-1733-pitch"),
    ("R45", "fir", "lacquer-sprayed", Condition.PITCH, AVOID, (24, 24), "fpl-1733-pitch"),
    # 46: barrier, 0.75-3 h.
    ("R46", "pine", "oil-enamel", Condition.KNOTS, BARRIER, (0.75, 3), "wood-handbook-ch16"),
    # 47: no effect, so a board decides; tannin first, 2-4 h dry.
    *(
        ("R47", wood, "tannin-sealer", None, TEST, (2, 4), "common practice")
        for wood in ("maple", "pine", "poplar", "birch")
    ),
    # 48: barrier, 1-3 h.
    ("R48", "oak", "latex-enamel", None, BARRIER, (1, 3), "common practice"),
    # 49: barrier, washcoat 0.5-1 h.
    *(
        ("R49", wood, "wiping-stain", None, BARRIER, (0.5, 1), "blotching-2004")
        for wood in ("pine", "spruce", "fir", "aspen", "poplar", "alder", "cherry", "birch",
                     "soft-maple")
    ),
    # 59: wait until it is as warm as the room.
    ("R59", "ash", "lacquer-sprayed", Condition.COLD, WAIT, None, "blush-trade-q-and-a"),
    # 61: avoid.
    ("R61", "ash", "wiping-stain", Condition.SQUEEZE_OUT, AVOID, None, "stains-and-dyes"),
    ("R61", "ash", "waterborne-clear", Condition.SQUEEZE_OUT, AVOID, None, "stains-and-dyes"),
    # 64: barrier.
    ("R64", "ash", "wiping-stain", Condition.END_GRAIN, BARRIER, None, "common practice"),
    ("R64", "ash", "alkyd-varnish", Condition.END_GRAIN, BARRIER, None, "common practice"),
]  # fmt: skip


def same(found: OvercoatRule | WoodRule | None, answer: OvercoatAnswer, hours: Hours) -> None:
    assert found is not None
    assert found.answer is answer
    assert (found.wait and (found.wait.low_h, found.wait.high_h)) == hours


@every_row(
    ("low", "top", "answer", "hours", "source", "hours_from"),
    [rule[1:] for rule in OVERCOATS],
    ids=[" ".join(rule[:3]) for rule in OVERCOATS],
)
def test_one_product_over_another(
    low: str, top: str, answer: OvercoatAnswer, hours: Hours, source: str, hours_from: str
):
    found = rule_for(FACTS.overcoats, CLASSES[low], CLASSES[top])
    same(found, answer, hours)
    assert found is not None
    assert found.source == source
    assert (found.wait.source if found.wait else "") == hours_from


# Where sources differ on a wait, as the researched tables print them: number of the rule or, with
# a letter, of the source; lower, upper, hours, source.
OTHERS = [
    ("R01 T35", "wiping-stain", "waterborne-clear", (72, 72), "waterborne-over-oil-defects"),
    ("T22", "gel-stain", "waterborne-clear", (24, 48), "gel-stain-page"),
    ("R02 B4", "wiping-stain", "alkyd-varnish", (12, 12), "essentials-1908"),
    ("R04 B4", "wiping-stain", "shellac-2lb", (12, 12), "essentials-1908"),
    ("R05 T35", "oil-varnish-blend", "waterborne-clear", (72, 72), "waterborne-over-oil-defects"),
    ("R06 CP", "boiled-linseed-oil", "alkyd-varnish", (72, 72), "common practice"),
    ("T8", "oil-varnish-blend", "oil-polyurethane", (12, 24), "finishing-in-one-day"),
    ("R36 T11", "lacquer-sprayed", "paste-wax", (48, 48), "rub-out-2011"),
    ("R36 T11", "oil-polyurethane", "paste-wax", (168, 168), "rub-out-2011"),
    ("R36 T11", "waterborne-clear", "paste-wax", (504, 504), "rub-out-2011"),
    ("R53 G13", "paste-filler", "lacquer-sprayed", (24, 24), "navedtra-14044"),
    ("B4", "paste-filler", "shellac-2lb", (12, 12), "essentials-1908"),
    ("R54 T25", "paste-filler", "waterborne-clear", (48, 168), "pore-fillers-article"),
    ("R55 B4", "wiping-stain", "paste-filler", (12, 12), "essentials-1908"),
    ("T29", "bleach-chlorine", "alkyd-varnish", (24, 24), "bleaching-page"),
]


@every_row(("row", "low", "top", "hours", "source"), OTHERS)
def test_what_another_source_asks_for_stands_beside_it(
    row: str, low: str, top: str, hours: tuple[float, float], source: str
):
    found = rule_for(FACTS.overcoats, CLASSES[low], CLASSES[top])
    assert found is not None
    assert found.wait is not None
    assert (*hours, source) in {(o.low_h, o.high_h, o.source) for o in found.wait.also}


@pytest.mark.parametrize(("_", "low", "top", "answer", "hours"), SPRAYED)
def test_sprayed_over_another(_: str, low: str, top: str, answer: OvercoatAnswer, hours: Hours):
    same(rule_for(FACTS.overcoats, CLASSES[low], CLASSES[top], Method.SPRAY), answer, hours)


@every_row(
    ("wood", "top", "only_with", "answer", "hours", "source"),
    [rule[1:] for rule in ON_WOOD],
    ids=[" ".join(rule[:3]) for rule in ON_WOOD],
)
def test_on_a_wood(
    wood: str,
    top: str,
    only_with: Condition | None,
    answer: OvercoatAnswer,
    hours: Hours,
    source: str,
):
    found = speaking(WOODS[wood], top, only_with)
    assert (answer, hours, source) in [
        (r.answer, r.wait and (r.wait.low_h, r.wait.high_h), r.source) for r in found
    ]


def speaking(wood: Species, top: str, only_with: Condition | None) -> list[WoodRule]:
    rules = rules_for_wood(FACTS.wood_rules, wood, CLASSES[top], (only_with,) if only_with else ())
    return [rule for rule in rules if rule.only_with is only_with]


def the_film_of(key: str) -> tuple[float, float]:
    limit = CLASSES[key].dry_film_limit_um
    assert limit is not None
    return limit.low, limit.high


def lacquer_melts_into_lacquer() -> None:
    """28: ok, 0.5-2 h, no window (common practice)."""
    lacquer = CLASSES["lacquer-sprayed"]
    assert lacquer.window.kind is WindowKind.MELTS_IN
    recoat = lacquer.stages[Stage.RECOAT]
    assert (recoat.low_h, recoat.high_h, recoat.source) == (0.5, 2, "common practice")


def precatalysed_stays_thin() -> None:
    """29: ok to 4-5 dry mil, 0.75-2 h (trade questions and answers, for the build only)."""
    of = CLASSES["lacquer-precatalysed"]
    assert the_film_of(of.key) == pytest.approx((4 * 25.4, 5 * 25.4), abs=0.5)
    recoat = of.stages[Stage.RECOAT]
    assert (recoat.low_h, recoat.high_h) == (0.75, 2)


def conversion_varnish_has_a_window_and_a_limit() -> None:
    """30: ok to 4-5 dry mil and 3 coats, 1-2 h within the window (trade questions and answers)."""
    of = CLASSES["conversion-varnish"]
    assert the_film_of(of.key) == pytest.approx((4 * 25.4, 5 * 25.4), abs=0.5)
    recoat = of.stages[Stage.RECOAT]
    assert (recoat.low_h, recoat.high_h) == (1, 2)
    assert of.window.kind is WindowKind.CLOSES


def wax_stays_off_bare_wood() -> None:
    """37: avoid; a sealer coat first (National Park Service, Conserve O Gram 7/2)."""
    rule = rule_on_bare_wood(FACTS.overcoats, CLASSES["paste-wax"])
    same(rule, AVOID, None)
    assert rule is not None
    assert rule.source == "conserve-o-gram-7-2"
    assert rule.barrier


def oak_ash_and_mahogany_take_stain() -> None:
    """50: ok (woodworking magazine, April 2004)."""
    for key in ("oak", "ash", "mahogany"):
        assert not WOODS[key].blotches
        assert WOODS[key].blotches_source == "blotching-2004"
        assert not speaking(WOODS[key], "wiping-stain", None)


def water_raises_the_grain() -> None:
    """51: first wet it, 2-12 h dry, sand 220-320 (woodworking magazine, three fast finishes)."""
    for top in ("waterborne-clear", "water-dye"):
        rule = rule_on_bare_wood(FACTS.overcoats, CLASSES[top])
        same(rule, OK, (2, 12))
        assert rule is not None
        assert rule.source == "three-fast-finishes"
        assert "220 to 320" in rule.remedy


def damp_air_blushes_lacquer_and_shellac() -> None:
    """57: above 65 % RH, or dew point within 20 °F (11.1 °C): avoid (trade Q and A)."""
    for key in ("lacquer-sprayed", "shellac-2lb"):
        limits = CLASSES[key].limits
        assert limits.blush_rh_pct is not None
        assert limits.blush_dew_gap_c is not None
        assert limits.blush_rh_pct.value == 65
        assert limits.blush_dew_gap_c.value == pytest.approx(20 / 1.8, abs=0.1)
        assert limits.blush_rh_pct.source == "blush-trade-q-and-a"


def nothing_is_coated_below_ten_degrees() -> None:
    """58: below 50 °F (10 °C) avoid (US Army TM 43-0139 and TM 55-1500-345-23)."""
    for of in CLASSES.values():
        assert of.limits.min_c is None or of.limits.min_c.value >= 10, of.key


def glue_wants_bare_wood() -> None:
    """62: finish on a glue face: avoid (common practice); core.rules.glue_up warns of it too."""
    for key in ("white-pva", "yellow-pva", "hot-hide"):
        glue = FACTS.glue_named(key)
        assert glue is not None
        assert any("bare wood only" in note for note in glue.notes), key


def wax_around_a_joint_keeps_squeeze_out_off() -> None:
    """63: ok, but only outside the joint (magazine, two finishes)."""
    for key in ("white-pva", "yellow-pva"):
        glue = FACTS.glue_named(key)
        assert glue is not None
        (said,) = [note for note in glue.notes if "wax" in note]
        assert "outside the joint" in said
        assert cited([said]) == ("two-finishes-article",)


def epoxy_is_finished_when_it_is_cured() -> None:
    """67: wait for full cure, 24-168 h (UFGS 09995; the hours are common practice)."""
    epoxy = FACTS.glue_named("epoxy")
    assert epoxy is not None
    assert (epoxy.before_finish.low_h, epoxy.before_finish.high_h) == (24, 168)
    assert cited([epoxy.before_finish.note]) == ("ufgs-09995",)
    assert any("amine blush" in note for note in epoxy.notes)


HELD_ELSEWHERE: dict[str, Callable[[], None]] = {
    "R28": lacquer_melts_into_lacquer,
    "R29": precatalysed_stays_thin,
    "R30": conversion_varnish_has_a_window_and_a_limit,
    "R37": wax_stays_off_bare_wood,
    "R50": oak_ash_and_mahogany_take_stain,
    "R51": water_raises_the_grain,
    "R57": damp_air_blushes_lacquer_and_shellac,
    "R58": nothing_is_coated_below_ten_degrees,
    "R62": glue_wants_bare_wood,
    "R63": wax_around_a_joint_keeps_squeeze_out_off,
    "R67": epoxy_is_finished_when_it_is_cured,
}


@every_row("number", HELD_ELSEWHERE)
def test_what_a_class_a_glue_or_the_air_holds(number: str):
    HELD_ELSEWHERE[number]()


def test_all_seventy_are_held():
    listed = {rule[0] for rule in (*OVERCOATS, *SPRAYED, *ON_WOOD)} | set(HELD_ELSEWHERE)
    assert listed == {f"R{number:02}" for number in range(1, 71)}


# What makes a forbidden pair right, as the table's column of barriers has it.
@every_row(
    ("low", "top", "barrier"),
    [
        ("wiping-stain", "waterborne-clear", {"shellac-2lb", "vinyl-sealer"}),
        ("oil-varnish-blend", "waterborne-clear", {"shellac-2lb", "vinyl-sealer"}),
        ("gel-stain", "waterborne-clear", {"shellac-2lb"}),
        ("water-dye", "waterborne-clear", {"shellac-2lb"}),
        ("waterborne-clear", "lacquer-sprayed", {"shellac-2lb"}),
        ("alkyd-varnish", "lacquer-sprayed", {"shellac-2lb"}),
        ("lacquer-sanding-sealer", "oil-polyurethane", {"shellac-2lb"}),
        ("paste-filler", "waterborne-clear", {"shellac-2lb"}),
        ("wiping-stain", "paste-filler", {"washcoat"}),
    ],
)
def test_what_lies_between_makes_it_right(low: str, top: str, barrier: set[str]):
    found = rule_for(FACTS.overcoats, CLASSES[low], CLASSES[top])
    assert found is not None
    assert barrier <= set(found.barrier)


def test_no_shellac_is_named_between_where_a_conversion_varnish_follows():
    for low in CLASSES.values():
        found = rule_for(FACTS.overcoats, low, CLASSES["conversion-varnish"])
        if found:
            assert not [key for key in found.barrier if re.match("shellac", key)]
