"""A film that is soft when by its class it might be fully hard. common practice"""

from __future__ import annotations

import pytest

from finishlog.core.findings import Answer, Level
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found
from tests.shop_of import FACTS, SHELLAC, VARNISH, Story
from tests.worded_in import sentence

OIL = "oil-varnish-blend"


def coated(key: str) -> Story:
    story = Story()
    story.part("top", key, key)
    story.steady(since=-12.0)
    story.coat(0, key)
    return story


def hard(key: str) -> tuple[float, float]:
    figure = FACTS.finish_class(key).stages[Stage.CURED]
    return figure.low_h, figure.high_h


@pytest.mark.parametrize("key", [OIL, VARNISH, SHELLAC])
def test_one_check_is_enough_once_it_might_be_fully_hard(key: str):
    story, (low, _) = coated(key), hard(key)
    story.check(low + 1, Found.TACKY)
    verdict = story.state(low + 2).verdict
    assert verdict.answer is Answer.STALLED
    stop = next(f for f in verdict.findings if f.level is Level.STOP)
    assert "unlikely to help" in sentence(stop)
    assert any("it comes off with" in sentence(f) for f in verdict.findings)


@pytest.mark.parametrize("key", [OIL, VARNISH, SHELLAC])
def test_before_that_one_check_only_blocks(key: str):
    story, (low, _) = coated(key), hard(key)
    story.check(low - 1, Found.TACKY)
    assert story.state(low).verdict.answer is Answer.BLOCKED


def test_a_print_is_no_failure_until_the_promise_of_full_hardness():
    story, (low, high) = coated(SHELLAC), hard(SHELLAC)
    assert low < high
    story.check(high - 1, Found.PRINTS)
    assert story.state(high).verdict.answer is not Answer.STALLED
    story.check(high + 1, Found.PRINTS)
    assert story.state(high + 2).verdict.answer is Answer.STALLED


def test_a_film_that_gets_on_is_only_slow():
    story, (_, high) = coated(VARNISH), hard(VARNISH)
    story.check(high + 1, Found.TACKY)
    story.check(high + 200, Found.PRINTS)
    assert story.state(high + 201).verdict.answer is not Answer.STALLED


def test_a_passed_check_lifts_it():
    story, (low, _) = coated(OIL), hard(OIL)
    story.check(low + 1, Found.TACKY)
    story.check(low + 24, Found.DRY)
    assert story.state(low + 25).verdict.answer is not Answer.STALLED
