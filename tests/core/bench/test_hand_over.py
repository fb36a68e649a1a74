"""What was handed over is no work of tonight; it comes back with the first work on it."""

from __future__ import annotations

import pytest

from finishlog.core.findings import Answer
from finishlog.core.log.words import Found, Operation
from tests.shop_of import SHELLAC, VARNISH, WATERBORNE, Story, one_coat
from tests.worded_in import because


def told() -> Story:
    """Two doors of one finish; the first was handed over a day after its coat."""
    story = Story()
    door = story.part("door", WATERBORNE, WATERBORNE)
    other = story.part("panel", WATERBORNE, WATERBORNE)
    story.steady(days=30)
    story.coat(0, WATERBORNE, door)
    story.coat(0, WATERBORNE, other)
    story.hand_over(24, door)
    return story


def test_it_asks_for_nothing_though_steps_are_still_to_come():
    story = told()
    verdict = story.verdict(30)
    assert (verdict.answer, because(verdict)) == (Answer.DONE, "handed over")
    assert story.state(30).progress.next is not None
    assert [z.part.name for z in story.look(30).in_the_shop] == ["panel"]


def test_what_is_on_it_stays_known():
    story = told()
    assert [layer.coat.figures.class_key for layer in story.state(30).layers] == [WATERBORNE]


def test_before_it_left_it_was_here():
    assert told().state(23).handed_over is None


@pytest.mark.parametrize("operation", [Operation.SCUFF, Operation.SAND, Operation.RUB])
def test_work_on_it_brings_it_back(operation: Operation):
    story = told()
    story.work(48, operation, story.parts[0])
    assert story.state(50).handed_over is None
    assert story.verdict(50).answer is not Answer.DONE


def test_a_repair_coat_brings_it_back_until_it_is_handed_over_again():
    story = told()
    story.coat(48, WATERBORNE, story.parts[0])
    assert story.state(50).handed_over is None
    again = story.hand_over(72, story.parts[0])
    assert story.state(73).handed_over == again


def test_taken_up_again_on_purpose_it_is_back():
    story = told()
    story.resume(48, story.parts[0])
    assert story.verdict(49).answer is not Answer.DONE


@pytest.mark.parametrize("operation", [Operation.USE, Operation.SUN, Operation.PACK])
def test_what_is_done_where_it_lives_leaves_it_there(operation: Operation):
    story = told()
    story.work(48, operation, story.parts[0])
    assert story.state(50).handed_over is not None


def test_a_check_where_it_lives_leaves_it_there():
    story = told()
    story.check(48, Found.PRINTS, story.parts[0])
    assert story.verdict(50).answer is Answer.DONE


def test_one_face_on_the_bench_means_the_whole_piece_is_here():
    story = Story()
    door = story.part("door", WATERBORNE, faces=("front", "back"))
    story.coat(0, WATERBORNE)
    story.hand_over(24, door)
    story.work(48, Operation.SCUFF, door, face="front")
    assert {z.face.name for z in story.look(50).in_the_shop} == {"front", "back"}


def test_of_a_batch_only_the_piece_at_work_comes_back():
    story = Story()
    legs = story.part("leg", WATERBORNE, pieces=3)
    story.coat(0, WATERBORNE, legs)
    story.hand_over(24, legs)
    story.coat(48, WATERBORNE, legs, pieces=[2])
    assert [z.piece.number for z in story.look(50).in_the_shop] == [2]


def test_its_wet_film_spoils_nobodys_sanding_any_more():
    """Common practice: no sanding while a film in the room is not dust-free; this one is gone."""
    story = Story()
    door = story.part("door")
    panel = story.part("panel", VARNISH, Operation.SCUFF, VARNISH)
    story.steady(days=30)
    story.coat(0, VARNISH, panel)
    story.coat(47.5, VARNISH, door)
    assert story.verdict(48, panel).answer is Answer.WAITS
    story.hand_over(47.75, door)
    assert story.verdict(48, panel).answer is Answer.GO


def test_members_that_left_are_not_waited_for_with_glue():
    story = Story()
    leg = story.part("leg", SHELLAC, pieces=3, joints=("tenon",))
    story.part("stool", needs={"leg": 3})
    story.coat(0, SHELLAC, leg)
    assert len(story.look(48).glue_ups) == 1
    story.hand_over(24, leg)
    assert story.look(48).glue_ups == ()


def test_a_coat_after_hand_over_is_judged_like_any_other():
    """What happened is recorded, and warned about, wherever the piece is said to be."""
    story = one_coat(VARNISH)
    story.hand_over(1)
    assert story.may(VARNISH, 2).answer is Answer.DRYING
