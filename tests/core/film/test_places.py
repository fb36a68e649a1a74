"""A check or a mending at a place of a face answers what was found there, and nothing else.

The rule is our own, on the side of caution: one spot that passes says nothing of another.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from finishlog.core.clock.pace_posterior import Bracket
from finishlog.core.film import checks as film_checks
from finishlog.core.film.checks import DENIES, PROVES, held, last_of_each_place, test_that_finds
from finishlog.core.findings import Answer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check
from finishlog.core.log.where import reaches
from finishlog.core.log.words import FaultKind, Found, Operation
from finishlog.core.pace.seen import brackets
from tests.examples import examples
from tests.shop_of import LACQUER, LINSEED, VARNISH, at, one_coat, when
from tests.trouble_of import Trouble, door

RIM, MIDDLE = "the rim", "middle"


def row(*told: tuple[Found, str]) -> list[Check]:
    """Return checks an hour apart, each of a place."""
    return [
        Check(
            id=n,
            act=n,
            when=when(n, n),
            typed_at=at(n),
            test=test_that_finds(found),
            found=found,
            place=place,
        )
        for n, (found, place) in enumerate(told, 1)
    ]


def blocked(checks: list[Check]) -> set[Stage]:
    return {stage for _, stages in held(checks, lambda _: {}) for stage in stages}


def test_a_place_is_the_same_however_it_was_typed():
    assert reaches("Left-Edge", "the left  edge")
    assert not reaches("left edge", "right edge")


def test_all_over_is_of_every_place_and_a_place_is_not_all_over():
    assert reaches("", "left edge")
    assert not reaches("left edge", "")


def test_what_passes_elsewhere_lifts_nothing():
    failed = row((Found.PRINTS, RIM))
    assert blocked(row((Found.PRINTS, RIM), (Found.NO_PRINT, MIDDLE))) == blocked(failed)
    assert not blocked(row((Found.PRINTS, RIM), (Found.NO_PRINT, RIM)))
    assert not blocked(row((Found.PRINTS, RIM), (Found.NO_PRINT, "")))
    assert blocked(row((Found.PRINTS, ""), (Found.NO_PRINT, RIM))) == blocked(failed)


def test_a_stage_is_proved_when_the_last_place_passes():
    """What passed elsewhere before that proved nothing, and its hour is not taken."""
    told = row((Found.TACKY, RIM), (Found.DRY, MIDDLE), (Found.DRY, RIM))
    proof = film_checks.proof(told, Stage.TACK_FREE, builds_film=True)
    assert proof is told[2]
    assert film_checks.proof(told[:2], Stage.TACK_FREE, builds_film=True) is None


def test_the_last_word_of_a_place_is_what_was_found_there_or_all_over_since():
    told = row((Found.TACKY, RIM), (Found.DRY, MIDDLE), (Found.GUMS, RIM))
    assert last_of_each_place(told) == (told[1], told[2])
    assert last_of_each_place([*told, *row((Found.DRY, ""))])[0].place == ""


TOLD = st.lists(
    st.tuples(st.sampled_from(sorted({*DENIES, *PROVES})), st.sampled_from(["", RIM, MIDDLE])),
    max_size=6,
)


@examples(200)
@given(TOLD)
def test_a_place_never_frees_what_the_same_checks_without_places_hold(
    told: list[tuple[Found, str]],
):
    placed = row(*told)
    plain = [replace(check, place="") for check in placed]
    assert blocked(placed) >= blocked(plain)
    for stage in Stage:
        proof = film_checks.proof(placed, stage, builds_film=True)
        as_plain = film_checks.proof(plain, stage, builds_film=True)
        if proof is not None:
            assert as_plain is not None
            assert proof.id >= as_plain.id


def test_a_film_that_failed_at_one_place_and_then_at_another_has_stopped():
    story = one_coat(VARNISH)
    story.check(30, Found.TACKY, place=RIM)
    story.check(43, Found.TACKY, place=MIDDLE)
    assert story.verdict(44).answer is Answer.STALLED


def test_a_place_that_got_hard_is_no_part_of_a_stall():
    story = one_coat(VARNISH)
    story.check(30, Found.TACKY, place=RIM)
    story.check(40, Found.DRY, place=RIM)
    story.check(43, Found.TACKY, place=MIDDLE)
    assert story.verdict(44).answer is Answer.BLOCKED


def test_what_is_found_at_a_place_teaches_no_pace():
    """A spot may be thick, or lie over glue: only what was found all over tells of the product."""

    def told(*checks: tuple[float, Found, str]) -> list[Bracket]:
        story = one_coat(VARNISH)
        for hour, found, place in checks:
            story.check(hour, found, place=place)
        top = story.state(50).top
        assert top is not None
        return brackets(top)

    assert told((30, Found.TACKY, RIM), (31, Found.DRY, RIM)) == []
    assert told((30, Found.TACKY, RIM), (31, Found.DRY, MIDDLE)) == []
    (found,) = told((30, Found.TACKY, ""), (31, Found.DRY, RIM), (40, Found.DRY, ""))
    assert (found.soft_h, found.hard_h) == pytest.approx((30, 40), abs=0.1)


def test_an_oil_that_is_soft_at_the_rim_leaves_soft_scrapings():
    """The heap is watched as one of soft film although the middle was dry by then."""

    def waste(place: str) -> list[bool]:
        story = one_coat(LINSEED)
        story.check(30, Found.TACKY, place=RIM)
        story.check(31, Found.DRY, place=place)
        story.work(32, Operation.SAND)
        return [item.soft for item in story.look(33).rags if item.soft]

    assert waste(MIDDLE) == [True]
    assert waste(RIM) == []


class TestFaults:
    def names(self, story: Trouble, hour: float) -> list[str]:
        return [fault.name for fault in story.state(hour).faults]

    def two(self, kind: FaultKind, class_key: str = LACQUER) -> Trouble:
        story = door(class_key)
        story.coat(0, class_key)
        for hour, place in ((20, RIM), (21, MIDDLE)):
            story.fault(hour, kind, place=place)
        return story

    def test_two_places_are_two_and_each_is_mended_by_itself(self):
        story = self.two(FaultKind.DENT)
        assert self.names(story, 22) == ["dent (the rim)", "dent (middle)"]
        story.work(22, Operation.MEND, place="rim")
        assert self.names(story, 23) == ["dent (middle)"]

    def test_mended_without_a_place_is_all_of_them(self):
        story = self.two(FaultKind.DENT)
        story.work(22, Operation.MEND)
        assert self.names(story, 23) == []

    def test_a_mist_at_one_place_makes_the_film_wet_there_and_so_it_waits(self):
        """No part of a face is ready before all of it is."""
        story = self.two(FaultKind.BLUSH)
        story.work(22, Operation.MEND, place=RIM)
        top = story.state(23).top
        assert top is not None
        assert top.dries_since == at(22)
        assert self.names(story, 23) == ["blush (middle)"]

    def test_a_scratch_that_holds_elsewhere_does_not_end_a_peeling(self):
        story = self.two(FaultKind.WRINKLE, VARNISH)
        story.check(300, Found.HOLDS, place="under the lid")
        assert len(self.names(story, 301)) == 2
        story.check(302, Found.HOLDS, place=MIDDLE)
        assert self.names(story, 303) == ["wrinkle (the rim)"]
