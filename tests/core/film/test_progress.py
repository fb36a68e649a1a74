"""How far a zone has come: what was done, in the order of the work, against the steps."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.film.progress import Progress, progress
from finishlog.core.findings import Answer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Operation
from finishlog.core.shop.things import Step
from tests.shop_of import (
    SHELLAC,
    VARNISH,
    WATERBORNE,
    WAX,
    Story,
    hours_until,
)

SCUFF, SAND = Operation.SCUFF, Operation.SAND


def come(story: Story, hour: float, face: str | None = None) -> Progress:
    return story.state(hour, face=face).progress


def door(*steps: object, **options: object) -> Story:
    story = Story()
    story.part("door", *steps, **options)  # type: ignore[arg-type]
    return story.steady(since=-12.0)


def test_nothing_done_the_first_step_is_due():
    story = door(SAND, SHELLAC, VARNISH)
    assert come(story, 0).next.operation is SAND
    begun = come(story, 0)
    assert begun.steps[begun.done + 1].operation is Operation.COAT


def test_step_by_step_to_the_end():
    story = door(SAND, SHELLAC, SCUFF, VARNISH)
    story.work(0, SAND)
    story.coat(1, SHELLAC)
    assert come(story, 2).next.operation is SCUFF
    story.work(5, SCUFF)
    story.coat(6, VARNISH)
    assert come(story, 7).next is None
    assert story.verdict(7).answer is Answer.DONE


def test_coats_are_counted_by_product():
    story = door(SHELLAC, VARNISH, VARNISH, VARNISH)
    story.coat(0, SHELLAC)
    story.coat(30, VARNISH)
    seen = come(story, 31)
    assert seen.coat_number(seen.next) == (2, 3)


def test_a_step_passed_over_is_behind():
    """The person went on: nobody scuffs under a coat that is already there."""
    story = door(SHELLAC, SCUFF, VARNISH)
    story.coat(0, SHELLAC)
    story.coat(30, VARNISH)
    assert come(story, 31).next is None
    assert come(story, 31).matched == {0, 2}


def test_work_by_hand_never_passes_over_a_coat():
    story = door(SHELLAC, SCUFF, VARNISH)
    story.work(0, SCUFF)
    assert come(story, 1).next.operation is Operation.COAT
    assert come(story, 1).aside


def test_a_coat_too_many_does_not_move_the_schedule():
    story = door(VARNISH, WAX)
    story.coat(0, VARNISH)
    story.coat(60, VARNISH)
    seen = come(story, 61)
    assert seen.next.product == story.product(WAX)
    assert len(seen.aside) == 1


def test_a_second_scuffing_does_not_either():
    story = door(VARNISH, SCUFF, VARNISH)
    story.coat(0, VARNISH)
    story.work(50, SCUFF)
    story.work(51, SCUFF)
    assert come(story, 52).next.operation is Operation.COAT


def test_steel_wool_scuffs_where_no_step_asks_for_it_by_name():
    """Between coats it is the scuffing (common practice); as a step of its own it is that."""
    story = door(VARNISH, SCUFF, VARNISH)
    story.coat(0, VARNISH)
    story.work(50, Operation.STEEL_WOOL)
    assert come(story, 51).next.operation is Operation.COAT
    named = door(VARNISH, SCUFF, Operation.STEEL_WOOL, VARNISH)
    named.coat(0, VARNISH)
    named.work(50, SCUFF)
    assert come(named, 51).next.operation is Operation.STEEL_WOOL


def test_faces_go_their_own_way():
    story = door(SHELLAC, (VARNISH, "front"), faces=("front", "back"))
    story.coat(0, SHELLAC)
    assert come(story, 1, "front").next.operation is Operation.COAT
    assert come(story, 1, "back").next is None


def test_a_joint_face_is_kept_bare_unless_it_is_named():
    story = door(SHELLAC, (VARNISH, "tenon"), joints=("tenon",))
    assert len(come(story, 0, "all round").steps) == 1
    (named,) = come(story, 0, "tenon").steps
    assert named.product == story.product(VARNISH)


def test_three_of_twelve_are_ahead():
    story = door(SHELLAC, VARNISH, pieces=12)
    story.coat(0, SHELLAC)
    story.coat(30, VARNISH, pieces=[1, 2, 3])
    due = [z.progress.done for z in story.look(31).zones]
    assert due == [2] * 3 + [1] * 9


def test_a_coat_entered_two_days_late_lands_where_it_belongs():
    """Coats 1 and 3 were logged; coat 2, of Thursday, is typed on Saturday. The coats number by
    the time of the work, both intervals are judged again, the next date stays (common practice)."""
    story = door(VARNISH, VARNISH, VARNISH, WAX)
    wednesday, thursday, friday = 49.0, 73.0, 97.5
    story.coat(wednesday, VARNISH)
    third = story.coat(friday, VARNISH)
    before = story.state(120)
    late = story.coat(thursday, VARNISH)
    after = story.state(120)
    assert [x.coat.id for x in after.layers][1:] == [late.id, third.id]
    gaps = [hours_until(x.coat.when.latest) for x in after.layers]
    assert (gaps[1] - gaps[0], gaps[2] - gaps[1]) == (24.0, 24.5)
    assert before.progress.next.product == story.product(VARNISH)
    assert after.progress.next.product == story.product(WAX), "three coats are three coats"
    stage = Stage.RECOAT
    assert after.stages[stage] == before.stages[stage], "the last coat is unchanged"


def test_a_back_dated_scuffing_counts_from_its_own_time():
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    assert story.verdict(60).answer is Answer.SCUFF
    story.work(50, SCUFF)
    assert story.verdict(60).answer is Answer.GO


def test_a_back_dated_coat_between_scuffing_and_now_wants_a_scuffing_of_its_own():
    story = door(VARNISH, VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.work(50, SCUFF)
    story.coat(51, VARNISH)
    assert story.verdict(110).answer is Answer.SCUFF


def test_without_steps_the_same_product_is_asked_for_again():
    story = door()
    story.coat(0, WATERBORNE)
    assert come(story, 5).next is None
    assert story.verdict(5).answer is Answer.GO


words = st.sampled_from([SHELLAC, VARNISH, WAX, SCUFF, SAND])


@given(st.lists(words, max_size=6), st.lists(words, max_size=10))
def test_the_schedule_only_moves_forward_and_nothing_done_is_lost(steps, done):
    story = door(*steps)
    seen = []
    entries = []
    for hour, thing in enumerate(done):
        made = story.work(hour, thing) if isinstance(thing, Operation) else story.coat(hour, thing)
        entries.append(made)
        seen.append(progress(story.parts[0].steps, entries).done)
    assert seen == sorted(seen)
    last = progress(story.parts[0].steps, entries)
    assert len(last.matched) + len(last.aside) == len(done)
    assert all(n < last.done for n in last.matched)


@given(st.lists(words, max_size=6))
def test_whoever_does_the_steps_in_order_gets_to_the_end(steps):
    story = door(*steps)
    for hour, thing in enumerate(steps):
        if isinstance(thing, Operation):
            story.work(hour, thing)
        else:
            story.coat(hour, thing)
    seen = come(story, len(steps) + 1)
    assert seen.next is None
    assert not seen.aside
    assert len(seen.matched) == len(steps)


def test_steps_are_told_apart_by_their_place():
    step = Step(1, Operation.COAT, 7)
    again = Step(2, Operation.COAT, 7)
    assert Progress((step, again), 0, frozenset(), ()).coat_number(again) == (2, 2)
