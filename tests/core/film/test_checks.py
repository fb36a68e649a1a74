"""What a test of a film proves, what it blocks, and what lifts a failure.

Which test proves what is common practice, after the stages of ASTM D1640; "still tacky at 12 h is
slow" is TM 43-0139, chapter 5; cold in the first night of waterborne is the Wood Handbook's.
"""

from __future__ import annotations

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.cli.words.finding_words import short
from finishlog.core.bench.milestones import milestone
from finishlog.core.film import checks as film_checks
from finishlog.core.film.checks import DENIES, FOUND_BY, LIFTED_BY, PROVES, failed, held
from finishlog.core.findings import Answer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check
from finishlog.core.log.words import SOFT, Found, Operation, Test
from tests.examples import examples
from tests.rows import every_row
from tests.shop_of import (
    FACTS,
    LACQUER,
    LINSEED,
    SHELLAC,
    VARNISH,
    WATERBORNE,
    Story,
    at,
    hours_until,
    one_coat,
    when,
    within_limits,
)
from tests.stage_order import implied_by
from tests.worded_in import because, remedy

EARLY = {Stage.TOUCH, Stage.DUST_FREE}
# A rub with solvent speaks of cure: not of dust, paper, the next coat or a caul.
FREE_OF_A_RUB = (Stage.TACK_FREE, Stage.TURN, Stage.CLAMP, Stage.RECOAT, Stage.SAND)


def check(hour: float, found: Found, n: int = 1) -> Check:
    test = film_checks.test_that_finds(found)
    return Check(id=n, act=n, when=when(hour, n), typed_at=at(hour), test=test, found=found)


def blocked(*found: Found, of: str = "") -> set[Stage]:
    """Return the stages that a row of findings leaves blocked; of no class: whatever the finish."""
    row = [check(n, f, n) for n, f in enumerate(found)]
    figures = FACTS.finish_class(of).stages if of else {}
    return {stage for _, stages in held(row, lambda _: figures) for stage in stages}


# --- each test touches only what it is about --------------------------------------------------


@pytest.mark.parametrize(
    ("found", "stages"),
    [
        (Found.TACKY, set(Stage) - EARLY),
        (Found.GUMS, {Stage.SAND, Stage.RECOAT, Stage.RUB, Stage.CURED}),
        (Found.PRINTS, {Stage.CLAMP, Stage.STACK, Stage.PACK, Stage.RUB, Stage.CURED}),
        (Found.SMELLS, {Stage.CLOSE, Stage.PACK, Stage.RUB, Stage.LIGHT_USE, Stage.CURED}),
        (Found.SOFTENS, set(Stage) - EARLY - {*FREE_OF_A_RUB}),
        (Found.FLAKES, set(Stage) - EARLY - {Stage.TACK_FREE, Stage.TURN, Stage.SAND}),
        (Found.CUPPED, set()),
    ],
)
def test_a_failure_blocks_what_it_speaks_of_and_all_that_comes_after(found, stages):
    """Whatever the finish; the order is that of ASTM D1640, the rest common practice."""
    assert blocked(found) == stages


@pytest.mark.parametrize(
    ("found", "of", "also"),
    [
        # Each class promises the stages in its own order: hours of facts/data/classes.
        (Found.GUMS, VARNISH, {Stage.CLAMP, Stage.STACK, Stage.PACK, Stage.CLOSE, Stage.LIGHT_USE}),
        (Found.GUMS, LACQUER, {Stage.CLAMP, Stage.STACK, Stage.PACK, Stage.CLOSE, Stage.LIGHT_USE}),
        # Waxy shellac bears a caul before it sands.
        (Found.GUMS, "shellac-waxy", {Stage.STACK, Stage.PACK, Stage.CLOSE, Stage.LIGHT_USE}),
        (Found.PRINTS, VARNISH, {Stage.CLOSE, Stage.LIGHT_USE}),
        # Wet and soft are two things: no order of hardness follows from a smell.
        (Found.SMELLS, "spar-varnish", set()),
        (Found.FLAKES, VARNISH, set()),
    ],
)
def test_what_its_own_figures_promise_later_than_what_a_soft_film_lacks_it_lacks_too(
    found, of, also
):
    assert blocked(found, of=of) == blocked(found) | also


def test_a_thumbnail_that_leaves_no_mark_bears_a_stack_though_paper_gums():
    """Wax and heat clog paper too; rubbing, use and full hardness wait for the paper."""
    since = blocked(Found.GUMS, Found.NO_PRINT, of=VARNISH)
    assert since == blocked(Found.GUMS) | {Stage.CLOSE, Stage.LIGHT_USE}
    assert blocked(Found.NO_PRINT, Found.GUMS, of=VARNISH) >= {Stage.STACK, Stage.PACK}
    assert blocked(Found.SOFTENS, Found.NO_PRINT, of=VARNISH) == blocked(Found.SOFTENS)


@every_row("of", FACTS.classes)
@every_row("found", [f for f in Found if failed(f)])
def test_no_failure_denies_what_comes_before_what_its_test_is_about(found, of):
    """What prints may still be tack-free, what gums be turned: the order says so, and D1640."""
    denied = blocked(found, of=of)
    assert Stage.TURN not in denied or found is Found.TACKY
    assert not denied & EARLY
    if found in SOFT:
        first = DENIES[found][0]
        assert not denied & (implied_by([first]) - {first})


@pytest.mark.parametrize(
    ("found", "stages"),
    [
        (Found.DRY, {Stage.TOUCH, Stage.DUST_FREE, Stage.TACK_FREE}),
        (
            Found.NO_PRINT,
            {Stage.TOUCH, Stage.DUST_FREE, Stage.TACK_FREE, Stage.TURN, Stage.CLAMP},
        ),
        (Found.POWDER, {Stage.TOUCH, Stage.DUST_FREE, Stage.TACK_FREE, Stage.SAND}),
        (Found.NO_SMELL, {Stage.CLOSE}),
        (Found.HOLDS, set()),
    ],
)
def test_a_pass_proves_the_stages_it_speaks_of(found, stages):
    row = [check(1, found)]
    assert {s for s in Stage if film_checks.proof(row, s, builds_film=False)} == stages


def test_a_film_that_flakes_off_takes_no_coat_and_goes_nowhere():
    """A scratch that flakes shows that the film does not hold: nothing more belongs on it."""
    assert blocked(Found.FLAKES) >= {Stage.RECOAT, Stage.PACK, Stage.LIGHT_USE, Stage.CURED}
    story = one_coat(VARNISH)
    story.work(60, Operation.SCUFF)
    story.check(61, Found.FLAKES)
    assert story.verdict(62).answer is Answer.BLOCKED
    story.check(63, Found.HOLDS)
    assert story.verdict(64).answer is Answer.GO


def test_dry_to_the_touch_proves_tack_free_only():
    """The classic mistake: dry is not dry enough to recoat, sand, clamp or stack."""
    story = one_coat(VARNISH)
    story.check(10, Found.DRY)
    stages = story.state(11).stages
    assert hours_until(stages[Stage.TACK_FREE].high) == 10
    assert hours_until(stages[Stage.RECOAT].high) == 48
    assert hours_until(stages[Stage.STACK].high) == 120
    assert story.verdict(11).answer is Answer.DRYING


def test_powder_proves_sanding_and_a_film_ready_to_recoat():
    story = one_coat(VARNISH)
    story.check(30, Found.POWDER)
    assert story.verdict(30.5).answer is Answer.SCUFF
    story.work(30.6, Operation.SCUFF)
    assert story.verdict(31).answer is Answer.GO


def test_powder_proves_no_recoat_of_an_oil_that_builds_no_film():
    """Dust comes off the surface; the oil below may still be wet."""
    story = one_coat(LINSEED)
    story.work(0.2, Operation.WIPE)
    story.check(30, Found.POWDER)
    assert hours_until(story.state(31).stages[Stage.SAND].high) == 30
    assert hours_until(story.state(31).stages[Stage.RECOAT].high) == 72
    assert story.verdict(31).answer is Answer.TEST


def test_powder_proves_neither_clamping_nor_stacking():
    story = one_coat(VARNISH)
    story.check(30, Found.POWDER)
    stages = story.state(31).stages
    assert hours_until(stages[Stage.CLAMP].high) == 72
    assert hours_until(stages[Stage.STACK].high) == 120


# --- a failed check beats any clock -----------------------------------------------------------


@pytest.mark.parametrize("days", [1, 3, 7, 30, 55])
def test_tacky_blocks_however_long_ago_it_was(days):
    story = one_coat(VARNISH)
    story.check(20, Found.TACKY)
    verdict = story.verdict(24 * days)
    assert verdict.answer is Answer.BLOCKED
    assert "tacky" in because(verdict)
    assert verdict.low is None, "no date: only a test can lift it"


@pytest.mark.parametrize("days", [3, 30])
def test_what_gums_is_neither_sanded_nor_recoated_however_long_ago(days):
    story = one_coat(VARNISH)
    story.check(50, Found.GUMS)
    assert story.verdict(24 * days).answer is Answer.BLOCKED
    assert story.may_work(Operation.SCUFF, 24 * days).answer is Answer.BLOCKED


@pytest.mark.parametrize(
    ("failure", "does_not_lift", "lifts"),
    [
        (Found.TACKY, Found.NO_SMELL, Found.DRY),
        (Found.GUMS, Found.DRY, Found.POWDER),
        (Found.GUMS, Found.NO_PRINT, Found.POWDER),
        (Found.PRINTS, Found.DRY, Found.NO_PRINT),
        (Found.PRINTS, Found.POWDER, Found.NO_PRINT),
        (Found.SMELLS, Found.DRY, Found.NO_SMELL),
        (Found.FLAKES, Found.POWDER, Found.HOLDS),
    ],
)
def test_only_a_test_that_could_have_shown_it_again_lifts_a_failure(failure, does_not_lift, lifts):
    assert blocked(failure)
    assert blocked(failure, does_not_lift) == blocked(failure)
    assert blocked(failure, lifts) == set()


def test_it_failed_again_after_it_had_passed():
    assert blocked(Found.TACKY, Found.DRY, Found.TACKY) == set(Stage) - EARLY


def test_a_pass_before_the_last_failure_proves_nothing():
    row = [check(1, Found.DRY, 1), check(2, Found.TACKY, 2), check(3, Found.NO_PRINT, 3)]
    proved = film_checks.proof(row, Stage.TACK_FREE, builds_film=True)
    assert proved is row[2]


def test_a_film_that_gums_is_not_tacky_any_more_but_still_not_ready():
    assert blocked(Found.TACKY, Found.GUMS) == blocked(Found.GUMS)
    assert blocked(Found.GUMS) < blocked(Found.TACKY)


def test_lacquer_that_prints_may_still_be_recoated():
    """It melts into the next coat; what prints is not clamped, stacked or packed."""
    story = one_coat(LACQUER, rh=40.0)
    story.check(3, Found.PRINTS)
    assert story.verdict(4).answer is Answer.GO
    assert story.may_work(Operation.HARDWARE, 100).answer is Answer.BLOCKED


def test_varnish_that_prints_is_tested_before_it_is_recoated():
    story = one_coat(VARNISH)
    story.check(49, Found.PRINTS)
    story.work(49.5, Operation.SCUFF)
    verdict = story.verdict(50)
    assert verdict.answer is Answer.TEST
    assert "prints" in because(verdict)


def test_what_smells_is_not_shut_in():
    story = one_coat(VARNISH)
    story.check(400, Found.SMELLS)
    close = milestone([story.state(420)], Stage.CLOSE)
    assert close.high < at(420)
    assert not close.reached(at(420))
    assert "smell" in short(close.blocked)
    assert milestone([story.state(420)], Stage.STACK).reached(at(420))


def test_a_check_of_one_coat_says_nothing_of_the_next():
    story = one_coat(SHELLAC)
    story.check(4, Found.NO_PRINT)
    story.coat(5, SHELLAC)
    assert hours_until(story.state(6).stages[Stage.CLAMP].high) == 17


def test_a_thumbnail_on_the_top_coat_speaks_for_all_below():
    story = one_coat(VARNISH)
    story.coat(50, SHELLAC)
    story.check(64, Found.NO_PRINT)
    assert hours_until(story.state(65).stages[Stage.CLAMP].high) == 64


# --- a pass ends our lengthening, never the label's minimum ------------------------------------


def test_in_the_cold_a_pass_ends_the_longer_wait():
    story = one_coat(VARNISH, celsius=13.0)
    assert hours_until(story.state(0).stages[Stage.RECOAT].high) == pytest.approx(96)
    story.check(50, Found.POWDER)
    assert hours_until(story.state(51).stages[Stage.RECOAT].high) == 50


def test_a_pass_before_the_labels_minimum_waits_for_it():
    story = one_coat(WATERBORNE)
    story.check(1, Found.POWDER)
    assert hours_until(story.state(1.5).stages[Stage.RECOAT].high) == 2
    assert story.verdict(1.5).answer is Answer.DRYING
    assert story.verdict(2.1).answer is Answer.GO


@examples(100)
@given(
    st.sampled_from(list(FACTS.classes)),
    st.floats(0, 10),
    st.lists(
        st.tuples(st.floats(0, 400), st.sampled_from(list(Found))),
        max_size=5,
        unique_by=lambda c: c[0],
    ),
    st.floats(11, 32),
)
def test_no_pass_ever_goes_below_the_labels_minimum_in_real_hours(key, vague, found, celsius):
    story = Story()
    story.part()
    story.coat((0.0, vague), key)
    story.steady(within_limits(key, celsius), 50.0, since=-12.0, days=20.0)
    for hour, finding in found:
        story.check(vague + hour, finding)
    top = story.state(vague + 400).top
    for stage, label in top.coat.figures.stages.items():
        time = top.stage(stage)
        assert hours_until(time.low) >= vague + label.low_h - 1e-6
        assert hours_until(time.high) >= vague + label.low_h - 1e-6


@given(st.lists(st.sampled_from(list(Found)), min_size=1, max_size=8))
def test_nothing_is_blocked_and_proved_at_once(findings):
    row = [check(n, f, n) for n, f in enumerate(findings)]
    for stage in Stage:
        if film_checks.blocking(row, stage):
            assert film_checks.proof(row, stage, builds_film=True) is None


# --- stalled ----------------------------------------------------------------------------------


def test_tacky_again_long_after_is_stalled_and_has_no_date():
    """TM 43-0139, chapter 5: a film still tacky at 12 h dries slowly; no better 12 h later."""
    story = one_coat(VARNISH)
    story.check(30, Found.TACKY)
    assert story.verdict(31).answer is Answer.BLOCKED
    story.check(43, Found.TACKY)
    verdict = story.verdict(44)
    assert verdict.answer is Answer.STALLED
    assert verdict.high is None
    assert any("take it off" in remedy(f) for f in verdict.findings)


def test_a_film_that_gets_better_is_not_stalled():
    story = one_coat(VARNISH)
    story.check(30, Found.TACKY)
    story.check(43, Found.GUMS)
    assert story.verdict(44).answer is Answer.BLOCKED


def test_twice_within_an_hour_is_impatience_and_not_a_stall():
    story = one_coat(VARNISH)
    story.check(30, Found.TACKY)
    story.check(31, Found.TACKY)
    assert story.verdict(32).answer is Answer.BLOCKED


def test_a_young_film_is_not_stalled():
    """Tacky at two and at four hours is what a varnish is."""
    slow = timedelta(hours=FACTS.drying.slow_after_h.value)
    young = [check(2, Found.TACKY, 1), check(4, Found.TACKY, 2)]
    assert not film_checks.stalled(young, at(0), slow)


def test_a_stalled_film_that_passes_at_last_goes_on():
    story = one_coat(VARNISH)
    story.check(30, Found.TACKY)
    story.check(60, Found.TACKY)
    story.check(200, Found.POWDER)
    assert story.verdict(201).answer is Answer.SCUFF


# --- the words --------------------------------------------------------------------------------


def test_every_finding_belongs_to_one_test_and_passes_or_fails():
    for found in Found:
        test = film_checks.test_that_finds(found)
        assert found in FOUND_BY[test]
        assert failed(found) is (found not in PROVES)
    assert set(FOUND_BY) == set(Test)


def test_every_failure_can_be_answered():
    assert set(LIFTED_BY) == set(DENIES)
    for failure, answers in LIFTED_BY.items():
        assert any(not failed(answer) for answer in answers), failure
