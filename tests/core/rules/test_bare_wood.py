"""Before the first coat: the solvent wipe of oily wood, steel wool, surplus that was left.

Common practice where no other source stands beside a test.
"""

from __future__ import annotations

import pytest

from finishlog.core.findings import PLACE_UNTOLD, Answer, Level
from finishlog.core.log.words import Found, Operation, Stripping
from tests.shop_of import LINSEED, SHELLAC, VARNISH, WATERBORNE, hours_until
from tests.trouble_of import Trouble, door
from tests.worded_in import sentence

WIPE, STEEL_WOOL = Operation.SOLVENT_WIPE, Operation.STEEL_WOOL


def box(*steps: object, species: str = "cocobolo") -> Trouble:
    return door(*steps, species=species)


class TestSolventWipe:
    def test_wiped_it_is_to_be_coated_within_the_hour(self):
        story = box(SHELLAC)
        story.work(0, WIPE)
        verdict = story.verdict(0.2)
        assert (verdict.answer, verdict.deed) == (Answer.DEADLINE, "coat")
        assert hours_until(verdict.closes) == 1

    def test_later_the_oil_is_back(self):
        story = box(SHELLAC)
        story.work(0, WIPE)
        verdict = story.verdict(2)
        assert verdict.answer is not Answer.DEADLINE
        assert any("the oil is back" in sentence(f) for f in verdict.findings)

    def test_wiped_again_it_counts_anew(self):
        story = box(SHELLAC)
        story.work(0, WIPE)
        story.work(5, WIPE)
        assert hours_until(story.verdict(5.1).closes) == 6

    def test_not_wiped_at_all_is_said(self):
        assert any("not wiped" in sentence(f) for f in box(SHELLAC).verdict(0).findings)

    def test_sanding_after_it_bares_fresh_oil(self):
        story = box(Operation.SAND, SHELLAC)
        story.work(0, WIPE)
        story.work(0.1, Operation.SAND)
        assert story.verdict(0.2).answer is not Answer.DEADLINE

    def test_varnish_on_oily_wood_is_stopped_without_it(self):
        """Extractives keep an oxidising finish from curing: magazine on oily exotics."""
        assert box(VARNISH).verdict(0).answer is Answer.UNDERNEATH

    def test_and_only_a_caution_with_it(self):
        story = box(VARNISH)
        story.work(0, WIPE)
        verdict = story.verdict(0.2)
        assert verdict.answer is Answer.DEADLINE
        said = [f for f in verdict.findings if f.rule != PLACE_UNTOLD]
        assert {f.level for f in said} == {Level.CAUTION}

    def test_of_a_wood_that_is_not_oily_it_asks_nothing(self):
        story = box(SHELLAC, species="ash")
        story.work(0, WIPE)
        assert story.verdict(0.2).answer is Answer.GO

    def test_without_steps_it_still_runs(self):
        story = box()
        story.work(0, WIPE)
        assert story.verdict(0.2).answer is Answer.DEADLINE

    def test_it_buys_nothing_in_air_that_forbids_the_coat(self):
        story = Trouble()
        story.part("box", VARNISH, species="cocobolo")
        story.read(0, 5, 60)
        story.work(0.1, WIPE)
        assert story.verdict(0.2).answer is Answer.NOT_IN_THIS_AIR


class TestSteelWool:
    """Iron in wood with tannin turns blue-black under water: a university's fact sheet."""

    def test_on_oak_no_waterborne(self):
        story = box(WATERBORNE, species="oak")
        assert story.verdict(0).answer is Answer.GO
        story.work(1, STEEL_WOOL)
        verdict = story.verdict(2)
        assert verdict.answer is Answer.UNDERNEATH
        assert any(f.level is Level.STOP and "iron" in sentence(f) for f in verdict.findings)

    def test_on_maple_it_does_not_matter_under_varnish(self):
        story = box(VARNISH, species="maple")
        story.work(1, STEEL_WOOL)
        assert story.verdict(2).answer is Answer.GO

    def test_on_maple_its_bits_rust_under_what_is_thinned_with_water(self):
        story = box(WATERBORNE, species="maple")
        story.work(1, STEEL_WOOL)
        assert story.verdict(2).answer is Answer.TEST

    def test_on_a_film_right_below_it_does(self):
        story = box(SHELLAC, WATERBORNE, species="oak")
        story.coat(0, SHELLAC)
        story.work(20, STEEL_WOOL)
        assert story.may(WATERBORNE, 30).answer is Answer.UNDERNEATH

    def test_buried_under_a_coat_it_does_not(self):
        story = box(SHELLAC, SHELLAC, WATERBORNE, species="oak")
        story.coat(0, SHELLAC)
        story.work(20, STEEL_WOOL)
        story.coat(21, SHELLAC)
        assert story.may(WATERBORNE, 40).answer is not Answer.UNDERNEATH

    @pytest.mark.parametrize(
        ("how", "clean"), [(Stripping.STRIP, False), (Stripping.SAND_THROUGH, True)]
    )
    def test_only_sanding_to_new_wood_takes_the_iron_out(self, how: Stripping, clean: bool):
        story = box(WATERBORNE, species="oak")
        story.work(1, STEEL_WOOL)
        story.coat(2, SHELLAC)
        story.off(30, how=how)
        assert (story.may(WATERBORNE, 31).answer is Answer.GO) is clean


class TestSurplus:
    def oiled(self) -> Trouble:
        story = door(LINSEED, LINSEED)
        story.coat(0, LINSEED)
        return story

    def doubts(self, story: Trouble, hour: float) -> bool:
        findings = story.may(LINSEED, hour).findings
        return any("wiped off in time" in sentence(f) for f in findings)

    def test_a_wipe_that_is_not_on_record_is_asked_about(self):
        assert self.doubts(self.oiled(), 400)

    def test_logged_it_is_not(self):
        story = self.oiled()
        story.work(0.3, Operation.WIPE)
        assert not self.doubts(story, 400)

    def test_a_film_that_was_found_dry_has_answered(self):
        story = self.oiled()
        story.check(300, Found.DRY)
        assert not self.doubts(story, 400)

    def test_a_film_that_is_not_wiped_off_is_not_asked(self):
        story = door(VARNISH, VARNISH)
        story.coat(0, VARNISH)
        assert not self.doubts(story, 400)
