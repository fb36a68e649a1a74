"""Improving or stalled: repeated checks that get no better, why, and when to decide.

Common practice where no other source stands beside a test.
"""

from __future__ import annotations

from datetime import timedelta

import pytest
from msgspec.structs import replace

from finishlog.core.bench.state import bench_state
from finishlog.core.film.checks import no_better
from finishlog.core.findings import Answer
from finishlog.core.log.words import Found
from finishlog.core.zone.verdict import Verdict
from tests.shop_of import FACTS, VARNISH, at
from tests.trouble_of import Trouble, door
from tests.worded_in import remedy, sentence


def checked(*findings: tuple[float, Found], species: str | None = None) -> Trouble:
    story = door(VARNISH, VARNISH, species=species)
    story.coat(0, VARNISH)
    for hour, found in findings:
        story.check(hour, found)
    return story


def test_tacky_and_later_still_tacky_has_stalled():
    story = checked((100, Found.TACKY), (120, Found.TACKY))
    assert story.verdict(121).answer is Answer.STALLED


def test_tacky_and_later_only_printing_gets_on():
    story = checked((100, Found.TACKY), (120, Found.PRINTS))
    assert story.verdict(121).answer is not Answer.STALLED


def test_printing_and_later_tacky_again_does_not():
    story = checked((100, Found.PRINTS), (120, Found.TACKY))
    assert story.verdict(121).answer is Answer.STALLED


def test_a_passed_check_between_begins_anew():
    story = checked((100, Found.TACKY), (110, Found.DRY), (130, Found.TACKY))
    assert story.verdict(131).answer is not Answer.STALLED


@pytest.mark.parametrize(
    ("before", "now", "stuck"),
    [
        (Found.TACKY, Found.TACKY, True),
        (Found.TACKY, Found.GUMS, False),
        (Found.GUMS, Found.PRINTS, False),
        (Found.PRINTS, Found.GUMS, True),
        (Found.SMELLS, Found.SMELLS, True),
        (Found.SMELLS, Found.TACKY, False),
        (Found.TACKY, Found.SMELLS, False),
    ],
)
def test_what_counts_as_no_better(before: Found, now: Found, stuck: bool):
    assert no_better(before, now) is stuck


def test_it_says_what_the_log_shows_and_what_it_cannot_rule_out():
    """Likely causes in order, from logged facts; what is not known is said."""
    story = checked((100, Found.TACKY), (120, Found.TACKY), species="cocobolo")
    said = " ".join(sentence(f) for f in story.verdict(121).findings)
    assert "the log shows: oil of the wood itself: cocobolo is oily" in said
    assert "cannot be ruled out: an old can" in said
    assert "stripper residue" in said


def due_in(days: float) -> Verdict:
    story = checked((100, Found.TACKY), (120, Found.TACKY))
    due = at(121) + timedelta(days=days)
    shop = replace(story.shop, projects=(replace(story.shop.projects[0], due=due),))
    bench = bench_state(shop, story.log(121), FACTS, at(121), story.zone)
    return bench.zones[0].verdict


def test_with_a_date_it_says_until_when_to_decide():
    """Two coats of alkyd varnish: 48 h to recoat, 168 h to pack (common practice): nine days."""
    said = [f for f in due_in(30).findings if "to keep" in sentence(f)]
    assert len(said) == 1
    assert sentence(said[0]) == "take it off by Sat 19 Dec to keep Mon 28 Dec"
    assert "9 days at label time" in remedy(said[0])


def test_without_a_date_there_is_none_to_keep():
    story = checked((100, Found.TACKY), (120, Found.TACKY))
    assert not any("to keep" in sentence(f) for f in story.verdict(121).findings)
