"""The finding that decides is named by the verdict, and it is its remedy that a person is given.

Hours and parts are invented; limits are those of the facts.
"""

from __future__ import annotations

from shop_of import SHELLAC, VARNISH, WATERBORNE, WAX, Story

from finishlog.core.findings import Answer, Level
from finishlog.core.log.words import Found
from tests.rows import every_row
from tests.worded_in import remedy


def test_in_cold_air_the_air_is_to_be_mended_whatever_else_is_said():
    """What is underneath is spoken of first; 10 °C is what forbids (TM 55-1500-345-23)."""
    story = Story()
    story.part("door", WAX, WATERBORNE)
    story.coat(0, SHELLAC)
    for day in range(20):
        story.read(24 * day, 8, 50)
    story.part("lid", VARNISH, species="oak")
    lid = next(z for z in story.look(24).zones if z.member.name == "lid")
    assert lid.verdict.answer is Answer.NOT_IN_THIS_AIR
    assert not lid.verdict.binds.plain
    assert "warm the room" in remedy(lid.verdict.binds)


def test_a_failed_check_names_itself():
    story = Story().steady()
    story.part("door", VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.check(20, Found.TACKY)
    verdict = story.verdict(21)
    assert verdict.answer is Answer.BLOCKED
    assert verdict.binds in verdict.findings
    assert not verdict.binds.plain
    assert verdict.binds.level is Level.STOP


def test_a_clock_binds_without_a_finding():
    story = Story().steady()
    story.part("door", VARNISH, VARNISH)
    story.coat(0, VARNISH)
    verdict = story.verdict(1)
    assert verdict.answer is Answer.DRYING
    assert verdict.binds.plain


@every_row("celsius", [4, 8, 20, 35])
@every_row("over", [VARNISH, WATERBORNE, SHELLAC, WAX])
@every_row("below", [VARNISH, WATERBORNE, SHELLAC, WAX])
def test_what_binds_is_among_what_is_said(below, over, celsius):
    story = Story()
    story.part("door", below, over, species="maple")
    story.read(-1, 20, 50)
    story.coat(0, below)
    story.steady(celsius, 60, since=1, days=40)
    for hour in (2, 30, 200, 900):
        verdict = story.verdict(hour)
        assert verdict.binds.plain or verdict.binds in verdict.findings
        if verdict.answer in {Answer.NOT_IN_THIS_AIR, Answer.UNDERNEATH, Answer.SUSPECT}:
            assert not verdict.binds.plain
            assert verdict.binds.level is Level.STOP
            assert remedy(verdict.binds)
