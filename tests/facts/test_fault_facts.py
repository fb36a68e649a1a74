"""What is known of faults: whole, sourced, and in words that a person types."""

from __future__ import annotations

import re

from finishlog.acts.film.fault import MENDED, fault_word
from finishlog.core.film.faults import barred_by
from finishlog.core.findings import Level
from finishlog.core.finish.classes import COMMON_PRACTICE, FROM_MEMORY
from finishlog.core.finish.stages import HANDLING, Stage
from finishlog.core.log.words import SOFT, FaultKind
from finishlog.core.published.fault_kinds import Evidence, KnownFault
from finishlog.core.trouble.evidence import LOOKS
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
KNOWN = {*FACTS.sources, COMMON_PRACTICE, FROM_MEMORY}
FAMILIES = {of.family for of in FACTS.classes.values()} | set(FACTS.classes)
EVERY = every_row("fault", FACTS.faults, ids=lambda f: f.kind.value)


def test_every_kind_is_told():
    assert sorted(fault.kind for fault in FACTS.faults) == sorted(FaultKind)


@EVERY
def test_it_says_what_it_means_and_what_to_do(fault: KnownFault):
    assert fault.means.endswith(".")
    assert fault.remedies
    assert all(remedy and not remedy.endswith(".") for remedy in fault.remedies)
    assert {fault.source, *(cause.source for cause in fault.causes)} <= KNOWN


@EVERY
def test_a_stop_blocks_and_what_blocks_is_no_note(fault: KnownFault):
    assert fault.level is not Level.STOP or barred_by(fault, None)
    assert fault.level is not Level.NOTE or not barred_by(fault, None)


@EVERY
def test_something_ends_it_that_only_a_check_may(fault: KnownFault):
    if fault.not_by_mending:
        assert fault.answered_by_checks or fault.answered_by


# What mends each kind is never kept from it; common practice.
@EVERY
def test_what_would_bury_it_is_kept_off_and_what_is_put_right_by_the_next_coat_is_not(
    fault: KnownFault,
):
    buried = {Stage.RECOAT} & barred_by(fault, None)
    assert not (buried and fault.evened_first), "scuffing is asked for, no coat is barred"
    if fault.colour_first:
        assert fault.answered_by_coat
        assert buried
    if fault.bears_after:
        assert barred_by(fault, None) & frozenset(HANDLING)
        assert fault.shows in SOFT


@EVERY
def test_a_deadline_is_sourced_and_says_what_is_left_after_it(fault: KnownFault):
    for special in fault.by_family:
        assert set(special.families) <= FAMILIES
        if special.deadline is not None:
            assert special.too_late
            assert 0 < special.deadline.low_h <= special.deadline.high_h
            assert special.deadline.source in KNOWN


def test_no_word_means_two_faults():
    words = [w for f in FACTS.faults for w in {f.kind.value, *f.said_as}]
    assert len(words) == len(set(words))
    assert not MENDED & set(words)
    assert all(re.fullmatch(r"[a-z][a-z-]+", word) for word in words)


def test_every_evidence_can_be_looked_for_but_one():
    assert set(Evidence) - set(LOOKS) == {Evidence.UNSEEN}


@every_row(
    ("typed", "kind"),
    [
        ("sag", FaultKind.RUN),
        ("Curtains", FaultKind.RUN),
        ("cloudy", FaultKind.BLUSH),
        ("milky", FaultKind.BLUSH),
        ("white haze", FaultKind.BLUSH),
        ("fish eyes", FaultKind.FISHEYE),
        ("alligatoring", FaultKind.WRINKLE),
        ("wrinkled", FaultKind.WRINKLE),
        ("lifted", FaultKind.WRINKLE),
        ("rubbed through", FaultKind.RUBBED_THROUGH),
        ("burn-through", FaultKind.RUBBED_THROUGH),
        ("blotchy", FaultKind.BLOTCH),
        ("too dark", FaultKind.WRONG_COLOUR),
        ("squeeze-out", FaultKind.GLUE_SPOT),
        ("joint opened", FaultKind.OPEN_JOINT),
        ("orange", FaultKind.ORANGE_PEEL),
    ],
)
def test_the_words_people_use(typed: str, kind: FaultKind):
    assert fault_word(typed, FACTS) is kind


def test_a_blush_on_catalysed_films_is_mended_within_hours():
    """A retarder mist works only within a few hours (trade questions and answers on blush)."""
    special = FACTS.fault_known(FaultKind.BLUSH).for_class("conversion-varnish", "catalysed")
    assert special is not None
    assert special.deadline is not None
    assert special.deadline.low_h == 2


def test_over_application_causes_runs():
    """US Army TM 43-0139, chapter 5, defects."""
    first = FACTS.fault_known(FaultKind.RUN).causes[0]
    assert (first.evidence, first.source) == (Evidence.THICK, "tm-43-0139")


def test_a_stalled_film_is_looked_at_in_the_trades_order():
    order = [cause.evidence for cause in FACTS.stall_causes]
    assert order[:3] == [Evidence.OLD_CONTAINER, Evidence.THICK, Evidence.COLD]
    assert order[-1] is Evidence.UNSEEN
    assert {cause.source for cause in FACTS.stall_causes} <= KNOWN
