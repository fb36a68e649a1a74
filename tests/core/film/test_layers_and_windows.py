"""When a film reaches each stage, how long its recoat window is open, what comes after.

Through the published figures, in air that is read all the time; standard air is 23 °C and 50 %
(ASTM D3924), where the clock runs at the label's pace.
"""

from __future__ import annotations

from itertools import pairwise
from math import log

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from finishlog.core.air.psychrometrics import Air
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Answer
from finishlog.core.finish.classes import FinishClass, WindowKind
from finishlog.core.finish.stage_time import StageTime
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Operation
from finishlog.core.zone.verdict import MAY_ACT, Verdict
from tests.examples import examples
from tests.rows import every_row
from tests.shop_of import (
    BLEND,
    FACTS,
    FILLER,
    LACQUER,
    LINSEED,
    SHELLAC,
    STAIN,
    VARNISH,
    WATERBORNE,
    WAX,
    Story,
    closing,
    figure,
    hours_until,
    one_coat,
    within_limits,
)
from tests.stage_order import NOT_LATER_THAN
from tests.worded_in import because, in_si, remedy, sentence

TOPCOATS = [of.key for of in FACTS.classes.values() if of.topcoat]
EVERY_CLASS = list(FACTS.classes)


def layer(story: Story, hour: float = 0.0) -> Layer:
    top = story.state(hour).top
    assert top is not None
    return top


def stage_h(story: Story, stage: Stage, hour: float = 0.0) -> tuple[float, float]:
    time = layer(story, hour).stage(stage)
    assert isinstance(time, StageTime)
    return round(hours_until(time.low), 6), round(hours_until(time.high), 6)


# --- the published figures, in standard air ---------------------------------------------------


def test_shellac_is_handled_at_1_h_and_recoated_at_2_to_3_h():
    """US Army TM 43-0139, paragraph 2-23: handled 1 h, recoated 2-3 h, fully hard 24 h."""
    coat = one_coat(SHELLAC)
    assert stage_h(coat, Stage.TURN) == (1, 1)
    assert stage_h(coat, Stage.RECOAT) == (2, 3)


def test_the_army_calls_shellac_hard_at_24_h_which_is_shown_and_not_promised():
    """TM 43-0139: full hardness 24 h; rub-hard takes 7 to 14 days (common practice)."""
    figure_of = FACTS.finish_class(SHELLAC).stages[Stage.CURED]
    assert [f.high_h for f in figure_of.also if f.source == "tm-43-0139"] == [24]
    assert stage_h(one_coat(SHELLAC), Stage.CURED) == (168, 336)


def test_rubbing_varnish_is_promised_no_sooner_than_its_specification():
    """CID A-A-1546: set to touch 0.5-2 h, dry hard 8 h, no after-tack 24 h (on a test panel)."""
    readings = FACTS.finish_class(VARNISH).readings
    assert (readings["set-to-touch"].low_h, readings["set-to-touch"].high_h) == (0.5, 2)
    assert readings["dry-hard"].high_h == 8
    coat = one_coat(VARNISH)
    assert stage_h(coat, Stage.TOUCH)[1] >= 2
    assert stage_h(coat, Stage.TURN)[0] >= 8
    assert stage_h(coat, Stage.TACK_FREE)[1] == readings["no-after-tack"].high_h == 24


def test_waterborne_sets_within_half_an_hour_and_is_dry_through_within_a_day():
    """CID A-A-2850: at most 0.5 h to set, at most 24 h dry through at 1.5 mil wet."""
    assert stage_h(one_coat(WATERBORNE), Stage.TOUCH) == (0.5, 0.5)
    through = FACTS.finish_class(WATERBORNE).readings["dry-through"]
    assert through.high_h == 24
    assert stage_h(one_coat(WATERBORNE), Stage.CURED)[0] > through.high_h, "through is not hard"


def test_boiled_linseed_oil_is_tack_free_within_20_h_on_glass_and_later_on_wood():
    """Ohio Revised Code 3741.09: at most 20 h on glass at about 70 °F."""
    low, high = stage_h(one_coat(LINSEED), Stage.TACK_FREE)
    assert low <= 20 <= high


def test_paste_filler_dries_24_h_before_finish_coats():
    """NAVEDTRA 14044: 24 h before finish coats."""
    assert stage_h(one_coat(FILLER), Stage.RECOAT)[0] == 24
    assert one_coat(FILLER).may(VARNISH, 23.9).answer is Answer.DRYING


@every_row("key", TOPCOATS)
def test_nothing_is_promised_to_be_stacked_before_48_h(key):
    """Packaging guidance for finished wood: at least 48 h, with separators."""
    assert stage_h(one_coat(key), Stage.STACK)[1] >= 48


@pytest.mark.parametrize(
    ("key", "days"), [(SHELLAC, 2), (LACQUER, 2), (VARNISH, 7), (WATERBORNE, 21)]
)
def test_rubbing_out_waits(key, days):
    """Article on rubbing out (2011): lacquer and shellac 2 days, varnish 7, waterborne 21."""
    coat = one_coat(key)
    assert stage_h(coat, Stage.RUB)[0] >= 24 * days
    assert coat.may_work(Operation.RUB, 24 * days - 1).answer is Answer.DRYING


@every_row("key", EVERY_CLASS)
def test_stages_come_in_their_order_in_cold_air_too(key):
    coat = layer(one_coat(key, celsius=14.0, rh=55.0, days=400.0))
    for early, late in NOT_LATER_THAN:
        one, other = coat.stage(early), coat.stage(late)
        if one and other and one.low and other.low and one.high and other.high:
            assert one.low <= other.low
            assert one.high <= other.high


# --- waits from the latest, closings from the earliest ----------------------------------------


@examples(60)
@given(
    st.sampled_from(EVERY_CLASS),
    st.floats(0, 12),
    st.floats(5, 34),
    st.floats(20, 90),
)
def test_a_promise_is_never_before_the_label_hours_after_the_latest_possible_end(
    key, vague_h, celsius, rh
):
    story = Story()
    story.part()
    story.coat((0.0, vague_h), key)
    story.steady(celsius, rh, since=-12.0, days=4.0)
    coat = layer(story, vague_h)
    for stage, label in coat.coat.figures.stages.items():
        time = coat.stage(stage)
        assert time is not None
        if time.low:
            assert hours_until(time.low) >= vague_h + label.low_h - 1e-6
        if time.high:
            assert hours_until(time.high) >= vague_h + label.high_h - 1e-6


@examples(60)
@given(st.floats(0, 12), st.floats(1, 100), st.floats(5, 34), st.floats(20, 90))
def test_a_window_never_closes_later_than_its_label_hours_after_the_earliest_start(
    vague_h, window_h, celsius, rh
):
    story = Story()
    story.part()
    story.coat((0.0, vague_h), WATERBORNE, window=closing(window_h))
    story.steady(celsius, rh, since=-12.0, days=4.0)
    assert hours_until(layer(story, vague_h).closes()) <= window_h + 1e-6


def test_of_a_range_the_window_closes_at_its_short_end():
    """Waterborne: 8 to 24 h (common practice); the short end is the promise."""
    assert hours_until(layer(one_coat(WATERBORNE)).closes()) == 8


def test_the_label_overrides_the_class_and_keeps_its_own_reference_air():
    """By hand: 4 h at 13 °C are 4 h in standard air (never shortened), 8 h at 3 °C (k = 0.5)."""
    story = Story()
    story.part()
    story.coat(0, VARNISH, label={Stage.RECOAT: figure(4, air=Air(13, 50))})
    story.steady(since=-12.0)
    assert stage_h(story, Stage.RECOAT) == (4, 4)


# --- windows ----------------------------------------------------------------------------------


@pytest.mark.parametrize("key", [SHELLAC, LACQUER])
@pytest.mark.parametrize("hours", [5, 24, 24 * 30, 24 * 300])
def test_what_melts_in_never_closes(key, hours):
    """Common practice: alcohol and lacquer thinner dissolve the coat below at any age."""
    story = one_coat(key, rh=40.0, days=310.0)
    verdict = story.verdict(hours)
    assert layer(story).closes() is None
    assert verdict.closes is None
    assert verdict.answer in {Answer.GO, Answer.TEST}
    assert "scuff" not in because(verdict)


@pytest.mark.parametrize("key", [VARNISH, "oil-polyurethane"])
@pytest.mark.parametrize("hours", [49, 24 * 10, 24 * 59])
def test_varnish_is_scuffed_every_time(key, hours):
    """Common practice, unless the can says otherwise."""
    assert one_coat(key).verdict(hours).answer is Answer.SCUFF


@pytest.mark.parametrize("key", [BLEND, LINSEED, "tung-oil", "hardwax-oil"])
@pytest.mark.parametrize("days", [9, 59])
def test_a_wiped_oil_wants_no_scuff_however_late(key, days):
    """It soaks in: there is no film to scuff (common practice)."""
    story = one_coat(key, days=60.0)
    story.work(0.2, Operation.WIPE)
    assert story.verdict(24 * days).answer is Answer.GO


def test_a_scuffed_varnish_takes_its_next_coat():
    story = one_coat(VARNISH)
    story.work(50, Operation.SCUFF)
    assert story.verdict(51).answer is Answer.GO


def test_scuffing_varnish_is_not_offered_before_it_sands():
    """Alkyd varnish sands after 24 to 48 h (common practice)."""
    story = one_coat(VARNISH)
    assert story.verdict(20).answer is Answer.DRYING
    assert story.may_work(Operation.SCUFF, 20).answer is Answer.DRYING
    assert story.verdict(30).answer is Answer.TEST


def test_a_stain_is_neither_scuffed_nor_closed():
    story = one_coat(STAIN)
    story.work(0.1, Operation.WIPE)
    for hours in (25, 200, 1000):
        verdict = story.may(VARNISH, hours)
        assert verdict.answer is Answer.GO
        assert verdict.closes is None


def test_within_its_window_waterborne_takes_a_coat_and_after_it_a_scuff():
    """Recoat 2 to 4 h, sands after 2 to 6 h, window 8 h (common practice), in standard air."""
    story = one_coat(WATERBORNE)
    answers = [story.verdict(h).answer for h in (1.9, 2.1, 4.0, 7.9, 8.1)]
    assert answers == [Answer.DRYING, Answer.TEST, Answer.GO, Answer.GO, Answer.SCUFF]
    assert hours_until(story.verdict(4.0).closes) == 8


# Waterborne at 14 °C and 60 %: k = 0.4548 by the vapour deficits of psychrolib 2.5.0, so that
# recoat (2 to 4 h) takes 4.4 to 8.8 h and sanding (2 to 6 h) 4.4 to 13.2 h; the window stays 8 h.
COLD = (14.0, 60.0)


def in_the_cold() -> Story:
    return one_coat(WATERBORNE, celsius=COLD[0], rh=COLD[1])


def test_a_wait_that_outlasts_the_window_says_so_while_it_dries():
    verdict = in_the_cold().verdict(3)
    assert verdict.answer is Answer.DRYING
    assert verdict.high > verdict.closes
    assert any("cannot be relied on" in sentence(f) for f in verdict.findings)
    assert any(remedy(f) == "scuff once it sands" for f in verdict.findings)


def test_in_good_air_nothing_is_said_of_a_window_that_outlasts_the_wait():
    verdict = one_coat(WATERBORNE).verdict(1)
    assert not any("cannot be relied on" in sentence(f) for f in verdict.findings)


def test_the_dead_zone_is_too_late_to_bond_and_too_soft_to_scuff():
    story = in_the_cold()
    sands = stage_h(story, Stage.SAND)[1]
    assert 8 < sands < 20
    for hours in (8.1, 10.0, sands - 0.1):
        verdict = story.verdict(hours)
        assert verdict.answer is Answer.DEAD_ZONE
        assert Answer.DEAD_ZONE not in MAY_ACT
        assert verdict.high == layer(story).stage(Stage.SAND).high
    assert story.verdict(sands + 0.1).answer is Answer.SCUFF


def test_in_the_dead_zone_scuffing_is_not_offered():
    """It begins on the window's clock and ends on the wait's."""
    story = in_the_cold()
    verdict = story.verdict(9)
    assert "scuff it" not in because(verdict)
    assert story.may_work(Operation.SCUFF, 4).answer is Answer.DRYING
    assert story.may_work(Operation.SCUFF, 9).answer is not Answer.GO


def test_once_it_was_scuffed_the_closed_window_does_not_matter():
    story = in_the_cold()
    story.work(16, Operation.SCUFF)
    assert story.verdict(17).answer is Answer.GO


def test_a_window_on_the_can_overrides_always_scuff():
    story = Story()
    story.part()
    story.coat(0, VARNISH, label={Stage.RECOAT: figure(4)}, window=closing(12))
    story.steady(since=-12.0)
    assert story.verdict(5).answer is Answer.GO
    assert story.verdict(13).answer is Answer.DEAD_ZONE, "it does not sand before 24 to 48 h"
    assert story.verdict(49).answer is Answer.SCUFF


def test_warm_air_closes_a_window_sooner_and_shortens_no_wait():
    """28 °C and 40 %: the deficit is 1.6 times that of standard air."""
    warm = layer(one_coat(WATERBORNE, celsius=28.0, rh=40.0))
    assert hours_until(warm.closes()) < 6
    assert hours_until(warm.stage(Stage.RECOAT).high) == 4


# --- limits of the air ------------------------------------------------------------------------


def test_below_its_limit_a_wet_film_stands_still_and_has_no_date():
    """Alkyd varnish: not below 10 °C (TM 55-1500-345-23)."""
    story = one_coat(VARNISH, celsius=8.0)
    verdict = story.verdict(100)
    assert verdict.answer is Answer.DRYING
    assert verdict.high is None
    assert in_si(because(verdict)) == "this air is outside its limits, 8 °C, it needs 10 °C"


def test_a_film_that_is_tack_free_goes_on_drying_slowly_below_the_limit():
    """By hand: 24 h at 23 °C to tack-free; half an hour on the way to 3 °C, where the pace falls to
    0.25, gives 0.5 (1 - 0.25) / ln 4; the rest of 48 h goes at 0.25: 119.418 h."""
    story = one_coat(VARNISH, days=1.5)
    story.steady(3.0, 50.0, since=24.5, days=20.0)
    at_24 = stage_h(story, Stage.TACK_FREE, 24.0)
    assert at_24 == (8, 24)
    high = stage_h(story, Stage.RECOAT, 240.0)[1]
    assert high == pytest.approx(24.5 + (24 - 0.5 * 0.75 / log(4)) * 4)


def test_unknown_air_gives_label_time_and_never_a_plain_go():
    story = Story()
    story.part()
    story.coat(0, SHELLAC)
    for hours in (4, 40, 4000):
        assert story.verdict(hours).answer is Answer.TEST
    assert stage_h(story, Stage.RECOAT) == (2, 3)


def test_air_read_only_for_part_of_the_way_is_not_enough_for_a_plain_go():
    """A reading holds for a day; stacking a varnish takes five."""
    story = Story()
    story.part()
    story.coat(0, VARNISH)
    story.read(0, 23, 50)
    time = layer(story, 200.0).stage(Stage.STACK)
    assert not time.known
    assert time.air_read
    assert story.may_work(Operation.HARDWARE, 130).answer is Answer.TEST


def test_unknown_air_is_in_doubt_no_longer_than_its_slowest_would_have_taken():
    """By hand: 24 h as read, the other 96 of 120 at the varnish's least 10 °C, where a factor of 2
    for 10 °C below 23 °C gives 0.4061: over at 260.4 h. At 3 °C, once read, 0.25: at 408 h.
    """
    story = Story()
    story.part()
    story.coat(0, VARNISH)
    story.read(0, 23, 50)
    assert hours_until(layer(story, 200.0).stage(Stage.STACK).sure) == pytest.approx(260.4, abs=0.1)
    assert story.may_work(Operation.HARDWARE, 260).answer is Answer.TEST
    assert story.may_work(Operation.HARDWARE, 261).answer is Answer.GO
    story.read(-200, 3, 50)
    assert hours_until(layer(story, 200.0).stage(Stage.STACK).sure) == pytest.approx(408, abs=0.1)


# --- the whole film ---------------------------------------------------------------------------


def test_the_slowest_layer_decides_when_the_film_may_be_stacked():
    """Varnish of Monday stacks after 120 h; shellac over it would after 48 h."""
    story = one_coat(VARNISH)
    story.coat(60, SHELLAC)
    assert hours_until(story.state(61).stages[Stage.STACK].high) == 120
    story.coat(100, SHELLAC)
    assert hours_until(story.state(101).stages[Stage.STACK].high) == 148


def test_the_surface_is_asked_when_it_is_recoated_or_sanded():
    story = one_coat(VARNISH)
    story.coat(60, SHELLAC)
    assert hours_until(story.state(61).stages[Stage.RECOAT].high) == 63
    assert hours_until(story.state(61).stages[Stage.SAND].high) == 63


def test_a_top_layer_without_a_figure_for_a_stage_promises_nothing():
    """Nothing is published on packing a stain: the shellac under it cannot speak for it."""
    assert Stage.PACK not in FACTS.finish_class(STAIN).stages
    story = one_coat(SHELLAC)
    story.coat(4, STAIN)
    assert Stage.PACK not in story.state(5).stages
    assert Stage.STACK in story.state(5).stages


def test_layers_lie_in_the_order_of_the_work():
    story = Story()
    story.part()
    for hour, key in ((48, WAX), (0, STAIN), (24, SHELLAC)):
        story.coat(hour, key)
    assert [x.of.key for x in story.state(50).layers] == [STAIN, SHELLAC, WAX]


def is_late(verdict: Verdict) -> bool:
    """Tell of a closed window that scuffing alone does not open: it wrinkles, or never sands."""
    return verdict.answer is Answer.TEST and (
        "wrinkle" in because(verdict) or "no sanding figure" in because(verdict)
    )


@examples(40)
@given(st.sampled_from(EVERY_CLASS), st.floats(11, 30), st.floats(35, 60))
def test_an_answer_only_moves_forward_as_time_passes(key, celsius, rh):
    """Without new entries: drying, then test, then go (or scuff); a window may close on the way."""
    of: FinishClass = FACTS.finish_class(key)
    # Colder than its least is a story of its own (test_suspect).
    story = one_coat(key, celsius=within_limits(key, celsius), rh=rh, days=20.0)
    story.work(0.01, Operation.WIPE)
    order = [Answer.DRYING, Answer.TEST, Answer.GO, Answer.DEAD_ZONE, Answer.SCUFF]
    if of.window.kind is WindowKind.ALWAYS_SCUFF:
        order = [Answer.DRYING, Answer.TEST, Answer.SCUFF]
    if of.left_on_top:  # past its bond it waits for the wash, however long
        order = [Answer.DRYING, Answer.TEST, Answer.GO, Answer.DEAD_ZONE, Answer.WAITS]
    if key in {WAX, "wax-stick"}:  # on bare wood, which no time mends
        order = [Answer.UNDERNEATH]
    seen = [story.verdict(h) for h in (0.1, 1, 2, 3, 5, 7, 9, 12, 18, 30, 60, 100, 200, 400)]
    # Too late to bond by itself is past go, though it says to test first where scuffing is no way.
    ranks = [order.index(Answer.SCUFF if is_late(one) else one.answer) for one in seen]
    for one, following in pairwise(ranks):
        assert one <= following, [v.answer.value for v in seen]


def test_a_film_measured_thicker_than_usual_takes_longer_and_a_thin_one_no_less():
    """Diffusion through a layer goes by the square of its thickness (Fick); from memory."""
    top = one_coat(WATERBORNE).state(1).top
    assert top is not None
    usual = top.of.wet_film_um
    recoat = top.coat.figures.stages[Stage.RECOAT]
    assert usual is not None
    thick = replace(top, coat=replace(top.coat, wet_film_um=1.5 * usual.high))
    thin = replace(top, coat=replace(top.coat, wet_film_um=usual.low / 2))
    assert hours_until(thick.waits(recoat).high) == pytest.approx(2.25 * recoat.high_h, abs=1e-6)
    assert thin.waits(recoat) == top.waits(recoat)
    assert thick.closes() == top.closes(), "no window is lengthened"
