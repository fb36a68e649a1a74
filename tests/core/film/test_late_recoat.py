"""A catalysed film that is recoated late may wrinkle, scuffed or not, until it is fully hard.

common practice: past the window there is often a zone in which scuffing does not help; what helps
is full hardness or a test. Films that only want grip are scuffed and recoated.
"""

from __future__ import annotations

import pytest

from finishlog.core.findings import Answer
from finishlog.core.log.words import Operation
from finishlog.core.zone.verdict import Verdict
from tests.shop_of import FACTS, SHELLAC, WATERBORNE, Story, hours_until
from tests.worded_in import sentence

CATALYSED = ["lacquer-precatalysed", "lacquer-postcatalysed", "conversion-varnish"]
# Past every window (24 h at the longest) and long before full hardness (14 days at the soonest).
LATE_H = 48
HARD_H = 31 * 24


def one_coat_of(class_key: str) -> Story:
    story = Story()
    story.part("door", class_key, class_key)
    story.coat(0, class_key)
    # Drier than label air, so that no risk of blush hides the answer.
    return story.steady(23, 45, since=-12.0)


def wrinkles(verdict: Verdict) -> bool:
    return any("wrinkle" in sentence(finding) for finding in verdict.findings)


def test_it_is_said_of_the_catalysed_films_and_of_no_other():
    wrinkling = {of.key for of in FACTS.classes.values() if of.wrinkles_when_late_source}
    assert wrinkling == set(CATALYSED)
    assert wrinkling == {of.key for of in FACTS.classes.values() if of.family == "catalysed"}


@pytest.mark.parametrize("key", CATALYSED)
def test_inside_its_window_a_catalysed_film_is_simply_recoated(key):
    verdict = one_coat_of(key).verdict(2)
    assert verdict.answer is Answer.GO
    assert not wrinkles(verdict)


@pytest.mark.parametrize("key", CATALYSED)
def test_past_its_window_it_is_tested_first_and_the_answer_says_why(key):
    verdict = one_coat_of(key).verdict(LATE_H)
    assert verdict.answer is Answer.TEST
    assert wrinkles(verdict)
    (finding,) = [f for f in verdict.findings if "wrinkle" in sentence(f)]
    assert finding.source == "common practice"


@pytest.mark.parametrize("key", CATALYSED)
def test_scuffing_does_not_lift_it(key):
    story = one_coat_of(key)
    story.work(LATE_H - 1, Operation.SCUFF)
    verdict = story.verdict(LATE_H)
    assert verdict.answer is Answer.TEST
    assert wrinkles(verdict)


@pytest.mark.parametrize("key", CATALYSED)
def test_it_lasts_until_the_film_is_fully_hard_and_then_it_is_scuffed(key):
    story = one_coat_of(key)
    assert hours_until(story.verdict(LATE_H).high) == pytest.approx(30 * 24, abs=1)
    verdict = story.verdict(HARD_H)
    assert verdict.answer is Answer.SCUFF
    assert not wrinkles(verdict)


@pytest.mark.parametrize("key", [WATERBORNE, SHELLAC])
def test_waterborne_and_shellac_do_not_wrinkle_for_being_late(key):
    assert not wrinkles(one_coat_of(key).verdict(LATE_H))
