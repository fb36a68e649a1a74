"""What a finisher corrects in published tables of drying times.

A table lumps together what the trade keeps apart: turning and clamping, stacking and packing,
three meanings of "no limit" for the recoat window, and the wait after a bleach.
"""

from __future__ import annotations

import re

import pytest

from finishlog.core.finish.classes import FinishClass, Mechanism, WindowKind
from finishlog.core.finish.stages import Stage
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
CLASSES = {of.key: of for of in FACTS.classes.values()}
DAY_H = 24


def family(*names: str) -> list[FinishClass]:
    """Select the finishes of some families."""
    return [of for of in CLASSES.values() if of.family in names]


# Common practice of chemistry: acid or ammonia on hypochlorite frees poison gas.
def test_chlorine_bleach_is_rinsed_with_water_and_never_with_an_acid_or_ammonia():
    first = CLASSES["bleach-chlorine"].notes[0]
    assert "plenty of water and nothing else" in first
    for word in ("vinegar", "acid", "ammonia"):
        assert word in re.split(r"\bnever\b", first, maxsplit=1)[1]
        assert word not in re.split(r"\bnever\b", first, maxsplit=1)[0]


def test_vinegar_belongs_to_the_alkali_and_peroxide_bleach_only():
    for key, of in CLASSES.items():
        for text in (*of.notes, of.coats, of.abrade, of.window.note):
            if "vinegar" in text:
                assert key == "bleach-two-part" or "never vinegar" in text, (key, text)
    assert any("vinegar and water" in note for note in CLASSES["bleach-two-part"].notes)


def test_whoever_bleaches_is_shown_the_caution_for_bleach():
    assert all("bleach" in of.hazards for of in family("bleach"))


# Woodworking magazine, winter 2011: washed the next day, then dried overnight.
@pytest.mark.parametrize("key", ["bleach-oxalic", "bleach-chlorine"])
def test_the_wash_of_the_next_day_counts_into_the_wait_after_a_bleach(key):
    assert CLASSES[key].stages[Stage.RECOAT].high_h >= 2 * DAY_H


# Common practice: 24 to 72 h after it is neutralised, and it is neutralised once dry.
def test_two_part_bleach_waits_from_neutralising_not_from_bleaching():
    of = CLASSES["bleach-two-part"]
    after = of.readings["after-rinse"]
    wet = of.stages[Stage.TACK_FREE]
    recoat = of.stages[Stage.RECOAT]
    assert (recoat.low_h, recoat.high_h) == (wet.low_h + after.low_h, wet.high_h + after.high_h)


# Common practice with padded cauls: shellac and lacquer overnight, waterborne a day, oil varnish
# three.
@pytest.mark.parametrize(
    ("name", "hours"),
    [("shellac", 12), ("lacquer", 12), ("catalysed", 12), ("waterborne", 24), ("oil-varnish", 72)],
)
def test_what_may_be_turned_may_not_be_clamped_yet(name, hours):
    for of in family(name):
        clamp, turn = of.stages[Stage.CLAMP], of.stages[Stage.TURN]
        assert clamp.high_h >= max(hours, turn.high_h), of.key


# Common practice: stacked with separators first, packed under pressure and wrap later.
@every_row("of", [c for c in CLASSES.values() if c.topcoat], ids=lambda c: c.key)
def test_what_may_be_stacked_with_separators_may_not_be_packed_yet(of):
    assert of.stages[Stage.PACK].high_h > of.stages[Stage.STACK].high_h


# Common practice. A table that says "no limit" for the recoat window means three things.
def kinds(*names: str) -> set[WindowKind]:
    return {of.window.kind for of in family(*names)}


def test_shellac_and_plain_lacquer_melt_in_at_any_age():
    assert kinds("shellac") == {WindowKind.MELTS_IN}
    for of in family("lacquer"):
        assert of.window.kind is WindowKind.MELTS_IN or of.key == "vinyl-sealer"


def test_varnishes_are_scuffed_every_time_unless_the_can_says_otherwise():
    assert kinds("oil-varnish") == {WindowKind.ALWAYS_SCUFF}


def test_a_wiped_oil_has_no_window_and_one_that_builds_is_scuffed():
    for of in family("oil"):
        built = WindowKind.ALWAYS_SCUFF if of.builds_film else WindowKind.NOT_APPLICABLE
        assert of.window.kind is built, of.key


def test_wax_alone_needs_no_tooth():
    assert {key for key, of in CLASSES.items() if not of.needs_tooth} == {"paste-wax", "wax-stick"}


def test_a_stain_dye_filler_or_bleach_has_no_film_to_scuff():
    bare = ("stain", "dye", "filler", "bleach", "soap", "wax", "washcoat")
    assert kinds(*bare) == {WindowKind.NOT_APPLICABLE}


def test_milk_paint_soaks_in_at_any_age():
    assert CLASSES["milk-paint"].window.kind is WindowKind.NOT_APPLICABLE


def test_cross_linking_and_waterborne_films_close():
    assert kinds("catalysed", "waterborne") == {WindowKind.CLOSES}


# Common practice: 4 to 8 h under acid-cured coats.
def test_vinyl_sealer_closes_under_acid_cure_after_four_hours():
    closes = CLASSES["vinyl-sealer"].window.closes
    assert (closes.low_h, closes.high_h) == (4, 8)


# Common practice: a glaze is sealed within 48 h and never scuffed.
def test_a_glaze_is_sealed_within_two_days_and_cannot_be_scuffed():
    glaze = CLASSES["glaze"]
    assert glaze.window.closes.low_h == 2 * DAY_H
    assert Stage.SAND not in glaze.stages


# Wood Handbook, chapter 16, of latex; common practice for catalysed films.
def test_a_cold_first_night_is_damage_for_what_coalesces_or_cross_links_and_a_pause_for_the_rest():
    for of in CLASSES.values():
        tender = of.family in {"waterborne", "catalysed", "unknown"}
        # Cold holds epoxy up, and leaves the more of an amine film on it: that is washed off.
        washed = of.left_on_top is not None
        assert of.mechanism is not Mechanism.CROSS_LINKING or tender or washed, of.key
        assert (of.limits.warm_first_h is not None) == tender, of.key


# Common practice.
@every_row("of", family("oil", "oil-varnish"), ids=lambda c: c.key)
def test_oil_and_oil_varnish_stay_out_of_closed_cases(of):
    assert any("closed cases" in note for note in of.notes)


# NFPA tip sheet; fire services. The washcoat may be of oil: no false all-clear.
def test_whatever_may_hold_a_drying_oil_counts_as_heating_in_rags():
    for of in family("oil", "oil-varnish", "stain", "glaze", "washcoat", "wax", "unknown"):
        # A stick is wax and colour alone, without spirit or oil.
        assert of.self_heating is (of.key != "wax-stick"), of.key
    assert CLASSES["paste-filler"].self_heating


# Trade questions and answers on blush: 65 % RH for shellac and lacquer.
@every_row("of", family("shellac", "lacquer", "washcoat"), ids=lambda c: c.key)
def test_shellac_and_lacquer_stop_at_65_percent_humidity(of):
    limits = of.limits
    assert limits.max_rh_pct.value == limits.blush_rh_pct.value == 65
