"""Faults: what they hold up, until when a remedy works, and what answers them.

Common practice where no other source stands beside a test.
"""

from __future__ import annotations

import pytest

from finishlog.core.findings import Answer, Level
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import FaultKind, Found, Operation, Stripping
from tests.shop_of import LACQUER, LINSEED, SHELLAC, VARNISH, WATERBORNE, hours_until
from tests.trouble_of import Trouble, door
from tests.worded_in import because, remedy, sentence, waits_for

POST_CATALYSED = "lacquer-postcatalysed"


def blushed(class_key: str, coat: object = 0.0, found: float = 0.5) -> Trouble:
    story = door(class_key, class_key)
    story.coat(coat, class_key)  # type: ignore[arg-type]
    story.fault(found, FaultKind.BLUSH)
    return story


def names(story: Trouble, hour: float) -> list[str]:
    return [fault.known.kind.value for fault in story.state(hour).faults]


class TestBlush:
    def test_of_a_catalysed_film_it_is_mended_within_a_few_hours_of_that_coat(self):
        """A retarder mist dissolves it only within a few hours of spraying: trade Q and A."""
        verdict = blushed(POST_CATALYSED).verdict(1)
        assert verdict.answer is Answer.DEADLINE
        assert verdict.deed == "mend"
        assert hours_until(verdict.closes) == 2
        assert "retarder" in because(verdict)

    def test_the_hours_count_from_the_earliest_moment_of_the_coat(self):
        verdict = blushed(POST_CATALYSED, coat=(-1.0, 0.0)).verdict(0.6)
        assert hours_until(verdict.closes) == 1

    def test_after_that_only_sanding_is_left(self):
        verdict = blushed(POST_CATALYSED).verdict(3)
        assert verdict.answer is Answer.BLOCKED
        assert "cross-linked" in because(verdict)
        assert any(f.level is Level.STOP and "sand" in remedy(f) for f in verdict.findings)

    @pytest.mark.parametrize("class_key", [LACQUER, SHELLAC])
    def test_lacquer_and_shellac_may_be_wet_again_at_any_time(self, class_key):
        story = blushed(class_key)
        for hour in (1, 100):
            verdict = story.verdict(hour)
            assert verdict.answer is Answer.BLOCKED
            assert verdict.closes is None
            assert "mist" in because(verdict)

    def test_after_the_mist_its_stages_count_from_the_mist(self):
        story = blushed(POST_CATALYSED)
        before = story.state(1).stages[Stage.PACK].high
        story.work(1.5, Operation.MEND)
        assert names(story, 2) == []
        moved = hours_until(story.state(2).stages[Stage.PACK].high) - hours_until(before)
        assert moved == pytest.approx(1.5)

    def test_but_not_its_recoat_window(self):
        story = blushed(POST_CATALYSED)
        before = story.state(1).top.closes()
        story.work(1.5, Operation.MEND)
        assert story.state(2).top.closes() == before

    def test_a_check_from_before_the_mist_proves_nothing_of_it(self):
        story = door(LACQUER, LACQUER)
        story.coat(0, LACQUER)
        story.check(20, Found.POWDER)
        story.fault(21, FaultKind.BLUSH)
        story.work(22, Operation.MEND)
        sand = story.state(22.5).stages[Stage.SAND]
        assert sand.proved_by is None
        assert hours_until(sand.low) > 22

    def test_of_a_varnish_no_mist_opens_it(self):
        story = blushed(VARNISH)
        assert story.verdict(1).answer is not Answer.DEADLINE
        assert "mist" not in story.state(1).faults[0].remedies(story.look(1).now)[0]


class TestWrinkle:
    def wrinkled(self) -> Trouble:
        story = door(VARNISH, VARNISH, VARNISH)
        story.coat(0, VARNISH)
        story.coat(20, VARNISH)
        story.fault(26, FaultKind.WRINKLE)
        return story

    def test_no_coat_until_a_check(self):
        """After wrinkling a patch or sand test comes before the next coat."""
        verdict = self.wrinkled().verdict(400)
        assert verdict.answer is Answer.BLOCKED
        assert verdict.deed == "check again"
        assert verdict.high is None

    @pytest.mark.parametrize("found", [Found.POWDER, Found.HOLDS])
    def test_sands_to_powder_or_a_scratch_that_holds_answers_it(self, found):
        story = self.wrinkled()
        story.check(300, found)
        assert names(story, 301) == []

    def test_taking_the_coat_off_does_not_answer_for_the_one_below(self):
        story = self.wrinkled()
        first = story.state(27).layers[0].coat
        story.off(27, first, how=Stripping.SCRAPE)
        assert names(story, 28) == ["wrinkle"]
        assert story.may(VARNISH, 400).answer is Answer.BLOCKED

    def test_down_to_bare_wood_it_is_over(self):
        story = self.wrinkled()
        story.off(27)
        assert names(story, 28) == []

    def test_nobody_can_call_it_mended_without_a_check(self):
        story = self.wrinkled()
        story.work(27, Operation.MEND)
        assert names(story, 28) == ["wrinkle"]


def test_a_run_is_sanded_level_before_the_next_coat():
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.fault(2, FaultKind.RUN, place="left edge")
    verdict = story.verdict(400)
    assert verdict.answer is Answer.BLOCKED
    assert because(verdict).startswith("run (left edge)")
    story.work(401, Operation.SAND)
    assert story.verdict(402).answer is Answer.GO


def test_a_run_in_the_last_coat_is_not_forgotten():
    story = door(VARNISH)
    story.coat(0, VARNISH)
    story.fault(2, FaultKind.RUN)
    verdict = story.verdict(400)
    assert (verdict.answer, verdict.deed) == (Answer.BLOCKED, "mend")


def test_a_fault_may_be_called_mended():
    story = door(VARNISH)
    story.coat(0, VARNISH)
    story.fault(2, FaultKind.RUN)
    story.work(3, Operation.MEND)
    assert story.verdict(4).answer is Answer.DONE


def test_a_coat_over_a_run_is_recorded_and_the_run_stays_in_sight():
    story = door(VARNISH, VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.fault(2, FaultKind.RUN)
    story.coat(60, VARNISH)
    assert names(story, 61) == ["run"]


def test_a_blotch_stops_nothing_and_is_said():
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.fault(1, FaultKind.BLOTCH)
    verdict = story.verdict(60)
    assert verdict.answer is Answer.SCUFF
    assert any("blotch" in sentence(f) for f in verdict.findings)


def test_what_peels_goes_no_further_until_it_is_off():
    """An adhesion failure is not buried."""
    story = door(SHELLAC, WATERBORNE, WATERBORNE)
    story.coat(0, SHELLAC)
    story.coat(20, WATERBORNE)
    story.fault(50, FaultKind.PEEL)
    assert story.verdict(100).answer is Answer.BLOCKED
    first = story.state(100).layers[0].coat
    story.off(101, first)
    assert names(story, 102) == []


def test_a_film_that_flakes_blocks_all_that_lies_over_it():
    """It failed a scratch; a coat over it changes nothing until a scratch holds."""
    story = door(SHELLAC, WATERBORNE, WATERBORNE)
    story.coat(0, SHELLAC)
    story.check(20, Found.FLAKES)
    story.coat(21, WATERBORNE)
    assert story.verdict(100).answer is Answer.BLOCKED
    story.check(101, Found.HOLDS)
    assert story.verdict(102).answer is not Answer.BLOCKED


def test_silicone_is_still_on_the_wood_when_the_coat_is_off():
    story = door(VARNISH)
    story.coat(0, VARNISH)
    story.fault(0.2, FaultKind.FISHEYE)
    story.off(1, how=Stripping.WASH)
    assert names(story, 2) == ["fisheye"]
    story.work(3, Operation.SOLVENT_WIPE)
    assert names(story, 4) == []


def test_oil_that_set_is_scrubbed_off_with_solvent_within_minutes():
    """Surplus oil: off within half an hour; after that its solvent still takes it for a while."""
    story = door(LINSEED, LINSEED)
    story.coat(0, LINSEED)
    story.work(0.1, Operation.WIPE)
    story.fault(0.2, FaultKind.LEFT_THICK)
    verdict = story.verdict(0.3)
    assert verdict.answer is Answer.DEADLINE
    assert hours_until(verdict.closes) == 0.5
    assert "solvent" in because(verdict)


def test_dust_goes_with_the_next_scuffing():
    story = door(VARNISH, Operation.SCUFF, VARNISH)
    story.coat(0, VARNISH)
    story.fault(1, FaultKind.DUST)
    assert names(story, 2) == ["dust"]
    story.work(60, Operation.SCUFF)
    assert names(story, 61) == []


class TestOpenJoint:
    def stool(self) -> Trouble:
        story = Trouble()
        story.part("leg", SHELLAC, pieces=2)
        story.part("stool", Operation.GLUE_UP, VARNISH, VARNISH, faces=(), needs={"leg": 2})
        leg, stool = story.parts
        story.steady(since=-12.0)
        story.coat(0, SHELLAC, leg)
        story.join(20, stool.pieces[0], leg.pieces)
        story.coat(60, VARNISH, leg)
        story.fault(120, FaultKind.OPEN_JOINT, leg)
        return story

    def test_it_waits_for_the_glue_again(self):
        story = self.stool()
        verdict = story.verdict(121, story.named("leg"))
        assert verdict.answer is Answer.WAITS
        assert waits_for(verdict) == "glue-up again"

    def test_the_same_members_are_due_to_be_glued_up(self):
        story = self.stool()
        (due,) = story.look(400).glue_ups
        assert due.part.name == "stool"
        assert set(due.members) == {p.id for p in story.named("leg").pieces}
        assert due.verdict.answer is Answer.GO

    def test_not_before_the_film_bears_cauls(self):
        (due,) = self.stool().look(121).glue_ups
        assert due.verdict.answer is Answer.WAITS

    def test_glued_again_its_time_in_clamps_starts_anew(self):
        story = self.stool()
        leg, stool = story.parts
        story.glue_again(200, stool, leg)
        assert story.look(201).glue_ups == ()
        verdict = story.verdict(201, leg)
        assert verdict.answer is Answer.WAITS
        assert hours_until(verdict.high) > 201
        assert waits_for(verdict) == "the joint"

    def test_its_coats_still_count(self):
        story = self.stool()
        leg, stool = story.parts
        story.glue_again(200, stool, leg)
        progress = story.state(500, leg).progress
        assert progress.coat_number(progress.next) == (2, 2)


def test_a_batch_shows_the_pieces_with_a_fault_apart():
    story = door(VARNISH, VARNISH, faces=("front", "back"))
    story.coat(0, VARNISH)
    story.fault(1, FaultKind.RUN, face="front")
    assert story.verdict(60, face="front").answer is Answer.BLOCKED
    assert story.verdict(60, face="back").answer is Answer.SCUFF


def test_taking_back_the_fault_takes_it_out_of_sight():
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    fault = story.fault(1, FaultKind.RUN)
    story.entries.remove(fault)
    assert story.verdict(60).answer is Answer.SCUFF
