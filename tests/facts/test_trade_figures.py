"""Published figures stand in the facts as their sources print them."""

from __future__ import annotations

import pytest

from finishlog.core.finish.classes import Figure, FinishClass, Limit
from finishlog.core.finish.stages import Stage
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
SHELLAC = FACTS.finish_class("shellac-2lb")
VARNISH = FACTS.finish_class("alkyd-varnish")
POLYURETHANE = FACTS.finish_class("oil-polyurethane")
LACQUER = FACTS.finish_class("lacquer-sprayed")
WATERBORNE = FACTS.finish_class("waterborne-clear")
LINSEED = FACTS.finish_class("boiled-linseed-oil")
FILLER = FACTS.finish_class("paste-filler")
STAIN = FACTS.finish_class("wiping-stain")
WAX = FACTS.finish_class("paste-wax")
DAY_H = 24.0
MINUTE_H = 1 / 60


def printed(figure: Figure, source: str) -> list[Figure]:
    """Select what one source prints of a figure, used or only shown."""
    return [one for one in (figure, *figure.also) if one.source == source]


def stage(of: FinishClass, at: Stage, source: str) -> Figure:
    (only,) = printed(of.stages[at], source)
    return only


# US Army TM 43-0139, paragraph 2-23: shellac handled at 1 h, recoated at 2 to 3 h, full
# hardness at 24 h.
def test_the_army_handles_shellac_at_one_hour():
    assert stage(SHELLAC, Stage.TURN, "tm-43-0139").high_h == 1


def test_the_army_recoats_shellac_at_two_to_three_hours():
    recoat = stage(SHELLAC, Stage.RECOAT, "tm-43-0139")
    assert (recoat.low_h, recoat.high_h) == (2, 3)


def test_the_army_calls_shellac_fully_hard_at_24_h_and_the_trade_waits_longer():
    assert stage(SHELLAC, Stage.CURED, "tm-43-0139").high_h == 24
    assert SHELLAC.stages[Stage.CURED].high_h > 24


# Cyclopedia of Architecture, Carpentry and Building (about 1907): second coat at 6 h, later
# coats 48 h apart, 5 lb cut.
def test_the_old_heavy_build_of_shellac_is_shown_beside():
    assert [f.high_h for f in printed(SHELLAC.stages[Stage.RECOAT], "cyclopedia-1907")] == [6, 48]


# US CID A-A-1546A, rubbing varnish: set to touch in 0.5 to 2 h, dry hard in 8 h, no after-tack at
# 24 h, no lifting when recoated at any time up to 24 h.
def test_rubbing_varnish_as_its_specification_tests_it():
    touch = stage(VARNISH, Stage.TOUCH, "cid-a-a-1546")
    assert (touch.low_h, touch.high_h) == (0.5, 2)
    assert stage(VARNISH, Stage.TURN, "cid-a-a-1546").high_h == 8
    assert stage(VARNISH, Stage.TACK_FREE, "cid-a-a-1546").high_h == 24
    readings = {word: f.high_h for word, f in VARNISH.readings.items()}
    assert readings["dry-hard"] == 8
    assert readings["no-after-tack"] == 24
    assert readings["recoat-without-lifting"] == 24


# US CID A-A-2850, waterborne clear for interior wood: set to touch in at most 0.5 h, dry through
# in at most 24 h at 1.5 mil wet.
def test_waterborne_sets_within_half_an_hour_and_dries_through_within_a_day():
    assert stage(WATERBORNE, Stage.TOUCH, "cid-a-a-2850").high_h <= 0.5
    assert WATERBORNE.readings["dry-through"].high_h <= DAY_H
    assert WATERBORNE.readings["dry-through"].source == "cid-a-a-2850"


def test_dry_through_of_a_specification_is_not_fully_hard():
    assert WATERBORNE.stages[Stage.CURED].low_h > WATERBORNE.readings["dry-through"].high_h


# Ohio Revised Code 3741.09: a film of boiled linseed oil on glass is not tacky after 20 h at about
# 70 °F.
def test_boiled_linseed_oil_on_glass_is_not_tacky_after_20_h_at_70_f():
    film = stage(LINSEED, Stage.TACK_FREE, "orc-3741-09")
    assert film.high_h <= 20
    assert film.at.temperature_c == pytest.approx((70 - 32) / 1.8, abs=0.05)


def test_on_wood_a_longer_wait_is_promised_than_the_glass_test_prints():
    assert LINSEED.stages[Stage.TACK_FREE].high_h > 20


# US Navy NAVEDTRA 14044: paste filler stands 5 to 10 min, is wiped, and dries 24 h before finish
# coats.
def test_paste_filler_is_wiped_at_five_to_ten_minutes_and_finished_after_a_day():
    assert FILLER.wipe_off_h is not None
    assert FILLER.wipe_off_h.source == "navedtra-14044"
    assert FILLER.wipe_off_h.low_h == pytest.approx(5 * MINUTE_H, abs=1e-6)
    assert FILLER.wipe_off_h.high_h == pytest.approx(10 * MINUTE_H, abs=1e-6)
    assert stage(FILLER, Stage.RECOAT, "navedtra-14044").low_h == DAY_H


# Tool Processes in Woodworking (about 1915): filler stands about 15 minutes.
def test_the_older_book_lets_filler_stand_a_quarter_hour():
    assert FILLER.wipe_off_h is not None
    (older,) = printed(FILLER.wipe_off_h, "tool-processes-1915")
    assert older.high_h == 0.25


# UFGS 09995: filler dries at least 8 h before stain.
def test_the_federal_specification_stains_over_filler_after_eight_hours():
    assert stage(FILLER, Stage.RECOAT, "ufgs-09995").low_h == 8


# How-to article on pore fillers: 2 to 7 days before sanding or topcoat.
def test_the_cautious_reading_of_oil_filler_is_a_week():
    assert stage(FILLER, Stage.RECOAT, "pore-fillers-article").low_h == 2 * DAY_H
    assert FILLER.stages[Stage.RECOAT].high_h == 7 * DAY_H


# Essentials of Woodworking (1908): 12 h to a stain, 12 h to each coat of filler, wax stands 5 to
# 10 min, the next coat of wax after 24 h.
def test_the_book_of_1908_on_stain_filler_and_wax():
    assert stage(STAIN, Stage.RECOAT, "essentials-1908").high_h == 12
    assert stage(FILLER, Stage.RECOAT, "essentials-1908").high_h == 12
    assert stage(WAX, Stage.RECOAT, "essentials-1908").high_h == DAY_H
    assert WAX.readings["buff-1908"].high_h == pytest.approx(10 * MINUTE_H, abs=1e-6)


# National Park Service, Conserve O Gram 7/2: paste wax dries 30 to 60 min before buffing.
def test_paste_wax_is_buffed_after_half_an_hour_to_an_hour():
    buff = WAX.readings["buff"]
    assert (buff.low_h, buff.high_h, buff.source) == (0.5, 1, "conserve-o-gram-7-2")


# Finishing-education page on packing and stacking: at least 48 h before stacking; about 30 days
# until fully hard.
@every_row("key", list(FACTS.classes))
def test_48_h_before_stacking_stands_in_every_class(key):
    assert stage(FACTS.finish_class(key), Stage.STACK, "pack-and-stack").low_h == 48


@every_row("of", [c for c in FACTS.classes.values() if c.topcoat], ids=lambda c: c.key)
def test_no_topcoat_is_promised_to_stack_before_48_h_nor_to_pack_before_it_stacks(of):
    assert of.stages[Stage.STACK].high_h >= 48
    assert of.stages[Stage.PACK].high_h >= of.stages[Stage.STACK].high_h


@pytest.mark.parametrize("of", [VARNISH, POLYURETHANE, LACQUER, WATERBORNE], ids=lambda c: c.key)
def test_most_finishes_take_about_thirty_days_to_harden(of):
    assert of.stages[Stage.CURED].high_h == 30 * DAY_H


# Woodworking magazine, winter 2011: before rubbing out wait 2 days on shellac and lacquer, 7 on oil
# varnish, three weeks on waterborne.
@pytest.mark.parametrize(
    ("of", "days"),
    [(SHELLAC, 2), (LACQUER, 2), (VARNISH, 7), (POLYURETHANE, 7), (WATERBORNE, 21)],
    ids=lambda x: getattr(x, "key", str(x)),
)
def test_rubbing_out_waits_at_least_so_many_days(of, days):
    assert stage(of, Stage.RUB, "rub-out-2011").low_h == days * DAY_H
    assert of.stages[Stage.RUB].high_h > days * DAY_H


# General article on hardwax oil: one week with drier, three without.
def test_hardwax_oil_counts_as_without_drier_until_the_can_says_otherwise():
    cured = FACTS.finish_class("hardwax-oil").stages[Stage.CURED]
    assert (cured.low_h, cured.high_h) == (7 * DAY_H, 21 * DAY_H)


# Common practice: padded cauls overnight on shellac and lacquer, after 24 h on waterborne, after
# 72 h on oil varnish.
@pytest.mark.parametrize(
    ("of", "hours"),
    [(SHELLAC, 12), (LACQUER, 12), (WATERBORNE, 24), (VARNISH, 72), (POLYURETHANE, 72)],
    ids=lambda x: getattr(x, "key", str(x)),
)
def test_clamping_waits_longer_than_turning(of, hours):
    assert of.stages[Stage.CLAMP].high_h == hours
    assert of.stages[Stage.TURN].high_h < hours


# Common practice.
def test_lacquer_and_waterborne_recoat_before_they_sand():
    for of in (LACQUER, WATERBORNE):
        assert of.stages[Stage.RECOAT].low_h <= of.stages[Stage.SAND].low_h
        assert of.stages[Stage.RECOAT].high_h <= of.stages[Stage.SAND].high_h


# Common practice.
def test_shellac_and_varnish_are_turned_before_they_are_recoated():
    for of in (SHELLAC, VARNISH):
        assert of.stages[Stage.TURN].high_h <= of.stages[Stage.RECOAT].high_h


# Common practice: 8 to 24 h, the shorter is relied on.
def test_the_window_of_waterborne_closes_after_8_to_24_hours():
    closes = WATERBORNE.window.closes
    assert closes is not None
    assert (closes.low_h, closes.high_h) == (8, 24)


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8


def value(limit: Limit | None) -> float:
    assert limit is not None
    return limit.value


# US Army TM 55-1500-345-23: 50 to 90 °F, at most 75 % RH where a coating gives no limits of its
# own. Common practice: what cross-links wants 65 °F, waterborne and latex 55 °F, and post-catalysed
# lacquer at most 85 °F.
@every_row("of", FACTS.classes.values(), ids=lambda c: c.key)
def test_nothing_is_coated_outside_50_to_90_f(of):
    waterborne = (
        *("waterborne-clear", "waterborne-oil-modified", "waterborne-two-part", "latex-enamel"),
        "polyurethane-unknown",
    )
    least = {"conversion-varnish": 65, "lacquer-postcatalysed": 65}
    least |= dict.fromkeys(waterborne, 55)
    most = {"lacquer-postcatalysed": 85}
    # Of what is unknown the narrowest of all holds.
    least, most = least | {"unknown": 65}, most | {"unknown": 85}
    assert value(of.limits.min_c) == pytest.approx(celsius(least.get(of.key, 50)), abs=0.05)
    assert value(of.limits.max_c) == pytest.approx(celsius(most.get(of.key, 90)), abs=0.05)


@pytest.mark.parametrize("of", [VARNISH, LINSEED, STAIN], ids=lambda c: c.key)
def test_oil_stops_at_75_percent_humidity(of):
    assert value(of.limits.max_rh_pct) == 75


# Common practice: the cautious figure of most cans.
@pytest.mark.parametrize("key", ["waterborne-clear", "waterborne-two-part", "latex-enamel"])
def test_waterborne_and_latex_stop_at_70_percent_humidity(key):
    assert value(FACTS.finish_class(key).limits.max_rh_pct) == 70


# Common practice: 1 to 3 days are printed too; the cautious figure is the one that is used.
def test_pigmented_shellac_is_hard_in_two_weeks():
    assert FACTS.finish_class("pigmented-shellac").stages[Stage.CURED].high_h == 14 * 24


# Common practice.
def test_of_old_bleached_shellac_it_is_said_that_it_may_not_dissolve():
    for key in ("shellac-1lb", "shellac-2lb", "shellac-3lb", "shellac-waxy"):
        assert any("may not dissolve" in note for note in FACTS.finish_class(key).notes)
    assert "may not dissolve" in FACTS.keeping.test_for("shellac").test


# Trade questions and answers on blush: no lacquer or shellac above 65 % RH, nor with less than
# 20 °F between air and dew point.
@pytest.mark.parametrize("of", [SHELLAC, LACQUER], ids=lambda c: c.key)
def test_both_blush_rules_stand_although_they_contradict_each_other(of):
    assert value(of.limits.max_rh_pct) == 65
    assert value(of.limits.blush_rh_pct) == 65
    assert value(of.limits.blush_dew_gap_c) == pytest.approx(20 / 1.8, abs=0.05)
    assert any("contradict" in note for note in of.notes)


# Wood Handbook, chapter 16: latex wants 10 °C (50 °F) and keeps wanting it for 24 h.
@pytest.mark.parametrize("of", [c for c in FACTS.classes.values() if c.family == "waterborne"])
def test_a_cold_first_night_damages_waterborne(of):
    assert value(of.limits.warm_first_h) == 24
    assert value(of.limits.min_c) >= 10


# US Army TM 43-0139, chapter 5: still tacky at 12 h is slow drying.
def test_a_film_still_tacky_after_twelve_hours_is_slow():
    assert (FACTS.drying.slow_after_h.value, FACTS.drying.slow_after_h.source) == (12, "tm-43-0139")


# MIL-HDBK-1110 / UFC 3-190-06, paragraph 9.6.6: surface at least 5 °F (3 °C) above the dew point.
def test_the_surface_stays_three_degrees_above_the_dew_point():
    assert (FACTS.drying.dew_margin_c.value, FACTS.drying.dew_margin_c.source) == (
        3,
        "mil-hdbk-1110",
    )


# UFGS-09971, recoat windows of polyurethane over polyurethane: the middle of the band (°C) and its
# shortest wait (h).
UFGS_09971 = [(18.5, 8), (24.5, 6), (30.0, 4), (35.5, 3), (41.0, 2), (46.5, 1)]


def test_a_factor_of_two_for_ten_degrees_lies_within_what_the_recoat_table_implies():
    cold_c, cold_h = UFGS_09971[0]
    implied = [(cold_h / h) ** (10 / (c - cold_c)) for c, h in UFGS_09971[1:]]
    assert (min(implied), max(implied)) == pytest.approx((1.62, 2.10), abs=0.01)
    assert min(implied) <= FACTS.factor_per_10c <= max(implied)


def test_that_factor_is_too_quick_in_the_warm_so_no_printed_wait_may_be_shortened_by_it():
    cold_c, cold_h = UFGS_09971[0]
    factor = FACTS.factor_per_10c
    early = [h for c, h in UFGS_09971[1:] if cold_h / factor ** ((c - cold_c) / 10) < h]
    assert early == [6, 4, 3, 2]


# UFGS-09971, paragraph 3.7.1.3: pot life halves for each 10 °C warmer.
def test_the_factor_is_printed_for_pot_life_and_assumed_for_oil_varnish():
    assert not FACTS.rates["pot-life"].assumed
    assert FACTS.rates["oxidation"].assumed
    assert {r.factor_per_10c for r in FACTS.rates.values()} == {2}
