"""Cold in the first night of a waterborne film is damage, not a pause.

Wood Handbook, chapter 16: at least 10 °C for 24 h after latex is put on. The film may feel dry and
stay weak, so only a scratch test lifts the doubt (common practice).
"""

from __future__ import annotations

import pytest

from finishlog.cli.words.finding_words import barred_by
from finishlog.core.bench.milestones import milestone
from finishlog.core.findings import Answer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found
from finishlog.core.zone.verdict import MAY_ACT
from tests.shop_of import LACQUER, SHELLAC, VARNISH, WATERBORNE, Story, at, one_coat
from tests.worded_in import because, in_si, remedy, waits_for


def cold_first_night() -> Story:
    """Waterborne put on in the evening; the room is read at 5 °C in the night, warm after."""
    story = Story()
    story.part()
    story.read(-1, 18, 50)
    story.coat(0, WATERBORNE)
    story.read(9, 5, 60)
    story.read(14, 18, 50)
    for day in range(1, 40):
        story.read(14 + 24 * day, 20, 50)
    return story


def test_waterborne_that_met_5_c_in_its_first_night_is_suspect():
    """Wood Handbook, chapter 16: at least 10 °C for 24 h after latex is put on."""
    verdict = cold_first_night().verdict(20)
    assert verdict.answer is Answer.SUSPECT
    assert verdict.high is None, "no dates"
    assert any("scratch" in remedy(f) for f in verdict.findings)


@pytest.mark.parametrize("found", [Found.DRY, Found.NO_PRINT, Found.POWDER, Found.NO_SMELL])
def test_no_other_test_lifts_that(found):
    """It may feel dry and stay weak."""
    story = cold_first_night()
    story.check(30, found)
    assert story.verdict(31).answer is Answer.SUSPECT
    assert story.verdict(24 * 30).answer is Answer.SUSPECT


def test_a_scratch_that_holds_lifts_it():
    story = cold_first_night()
    story.check(40, Found.HOLDS)
    assert story.verdict(41).answer in MAY_ACT


def test_a_scratch_that_flakes_does_not():
    story = cold_first_night()
    story.check(40, Found.FLAKES)
    assert story.verdict(41).answer is Answer.SUSPECT


def test_a_scratch_that_flakes_after_one_that_held_makes_it_suspect_again():
    story = cold_first_night()
    story.check(40, Found.HOLDS)
    story.check(50, Found.FLAKES)
    assert story.verdict(51).answer not in MAY_ACT


def test_a_scratch_before_the_cold_came_says_nothing_of_it():
    story = cold_first_night()
    story.check(3, Found.HOLDS)
    assert story.verdict(20).answer is Answer.SUSPECT


def test_a_scratch_through_a_later_coat_clears_the_film_below_too():
    """The coat went on before the night's reading was typed in; the scratch goes through both."""
    story = cold_first_night()
    story.coat(15, WATERBORNE)
    assert story.verdict(20).answer is Answer.SUSPECT
    story.check(60, Found.HOLDS)
    assert story.verdict(61).answer in MAY_ACT


def test_a_suspect_film_is_promised_to_no_stack():
    film = milestone([cold_first_night().state(24 * 30)], Stage.STACK)
    assert not film.reached(at(24 * 30))
    assert film.blocked is not None
    assert barred_by(film.blocked).startswith("suspect film")


def test_cold_after_the_first_day_is_no_damage():
    story = one_coat(WATERBORNE, days=2.0)
    story.read(40, 5, 60)
    assert story.verdict(41).answer is not Answer.SUSPECT


def test_a_reading_of_the_last_hours_of_the_first_day_counts():
    """A reading speaks for the four hours before it: cold read at 26 h was cold at 23 h."""
    story = Story()
    story.part()
    story.read(0, 18, 50)
    story.coat(0, WATERBORNE)
    story.read(26, 5, 60)
    assert story.verdict(27).answer is Answer.SUSPECT


@pytest.mark.parametrize("key", [SHELLAC, VARNISH, LACQUER])
def test_a_cold_night_only_slows_the_others(key):
    story = Story()
    story.part()
    story.read(-1, 18, 50)
    story.coat(0, key)
    story.read(9, 5, 60)
    assert story.verdict(20).answer is not Answer.SUSPECT


def test_wood_measured_too_cold_right_before_the_coat_makes_it_suspect():
    """A warm room does not warm the wood at once; common practice."""
    story = Story()
    part = story.part()
    story.steady(20, 60, since=-12)
    story.surface(-0.1, 6, part)
    story.coat(0, WATERBORNE)
    assert story.verdict(24).answer is Answer.SUSPECT
    story.check(25, Found.HOLDS)
    assert story.verdict(26).answer in MAY_ACT


def test_wood_measured_hours_before_the_coat_tells_nothing_of_it():
    story = Story()
    part = story.part()
    story.steady(20, 50, since=-12)
    story.surface(-3, 6, part)
    story.coat(0, WATERBORNE)
    assert story.verdict(24).answer is not Answer.SUSPECT


def test_coated_right_out_of_a_cold_shed_it_is_scratched_first():
    story = Story()
    shed = story.another_room("shed")
    part = story.part(room=shed)
    story.read(-1, 4, 80, room=shed)
    story.steady(19, 45, since=-12)
    story.move(-0.5, part, 1)
    story.coat(0, WATERBORNE)
    verdict = story.verdict(24)
    assert verdict.answer is Answer.TEST
    assert "may have met 4 °C" in in_si(because(verdict))


def test_a_face_waits_for_its_suspect_back_without_a_date():
    story = Story()
    story.part("door", WATERBORNE, faces=("front", "back"))
    story.read(-1, 18, 50)
    story.coat(0, WATERBORNE, face="back")
    story.read(9, 5, 60)
    story.read(30, 20, 50)
    front = story.verdict(31, face="front")
    assert front.answer is Answer.WAITS
    assert "suspect" in waits_for(front)
    assert front.high is None


def test_dew_on_a_wet_film_is_called_dew_and_not_cold():
    """The wood at 13 °C lies below the 14.4 °C dew point of 20 °C and 70 % (ASHRAE)."""
    story = Story()
    part = story.part()
    story.steady(20, 70, since=-12)
    story.coat(0, WATERBORNE)
    story.surface(0.2, 13, part)
    verdict = story.verdict(24)
    assert verdict.answer is Answer.SUSPECT
    assert because(verdict) == "dew lay on it while it was wet"
