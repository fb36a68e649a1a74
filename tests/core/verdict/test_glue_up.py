"""Gluing up: all members, all of them fit for cauls, joints bare.

Common practice for padded cauls: shellac and lacquer overnight (12 h), waterborne 24 h, oil
varnish 72 h.
"""

from __future__ import annotations

import pytest

from finishlog.core.findings import Answer, Level
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found, Operation
from finishlog.core.shop.things import Need
from finishlog.core.verdict.glue_up import GlueUp, pick_members
from tests.shop_of import (
    LACQUER,
    SHELLAC,
    VARNISH,
    WATERBORNE,
    Story,
    at,
    hours_until,
)
from tests.worded_in import in_si, remedy, sentence, waits_for


def case_of_sides(*steps: str, sides: int = 2) -> Story:
    """Tell of a case that is made of two sides, which are coated first."""
    story = Story()
    story.part("sides", *(steps or (SHELLAC,)), pieces=sides, joints=("joints",))
    story.part("case", Operation.GLUE_UP, VARNISH, faces=(), needs={"sides": 2})
    return story.steady(since=-12.0)


def due(story: Story, hour: float, name: str = "case") -> GlueUp:
    return next(g for g in story.look(hour).glue_ups if g.part.name == name)


@pytest.mark.parametrize(
    ("key", "hours"), [(SHELLAC, 12), (LACQUER, 12), (WATERBORNE, 24), (VARNISH, 72)]
)
def test_members_bear_padded_cauls_after(key, hours):
    story = case_of_sides(key)
    story.coat(0, key)
    before, after = due(story, hours - 0.5), due(story, hours + 0.5)
    assert before.verdict.answer is Answer.WAITS
    assert waits_for(before.verdict) == "sides: clamp not reached"
    assert f"clamp not reached (label {hours} h)" in sentence(before.verdict.binds)
    assert hours_until(before.verdict.high) == hours
    assert after.verdict.answer is Answer.GO


def test_the_slowest_member_decides():
    story = case_of_sides()
    story.coat(0, SHELLAC, pieces=[1])
    story.coat(8, SHELLAC, pieces=[2])
    assert hours_until(due(story, 10).verdict.high) == 20


def test_a_coat_that_is_still_to_come_holds_it_up():
    story = case_of_sides(SHELLAC, SHELLAC)
    story.coat(0, SHELLAC)
    verdict = due(story, 100).verdict
    assert verdict.answer is Answer.WAITS
    assert "coat still to come" in waits_for(verdict)
    assert verdict.high is None, "nobody can say when"


def test_members_that_do_not_exist_are_named():
    story = case_of_sides(sides=1)
    story.coat(0, SHELLAC)
    verdict = due(story, 50).verdict
    assert verdict.answer is Answer.WAITS
    assert waits_for(verdict) == "1 more of sides"


def test_a_member_that_prints_is_not_clamped():
    """A failed check beats any clock."""
    story = case_of_sides()
    story.coat(0, SHELLAC)
    story.check(20, Found.PRINTS)
    verdict = due(story, 500).verdict
    assert verdict.answer is Answer.WAITS
    assert "prints" in waits_for(verdict)
    assert "check again later" in remedy(verdict.binds)
    story.check(501, Found.NO_PRINT)
    assert due(story, 502).verdict.answer is Answer.GO


def test_a_suspect_member_is_not_clamped():
    """Waterborne that met 5 °C in its first night: no date lifts that, only the scratch test."""
    story = Story()
    story.part("sides", WATERBORNE, pieces=2)
    story.part("case", Operation.GLUE_UP, faces=(), needs={"sides": 2})
    story.read(-1, 18, 50)
    story.coat(0, WATERBORNE)
    story.read(9, 5, 60)
    story.steady(20, 50, since=14, days=20)
    verdict = due(story, 24 * 10).verdict
    assert verdict.answer is Answer.WAITS
    assert "suspect" in waits_for(verdict)
    assert "met 5 °C in its first hours" in in_si(sentence(verdict.binds))
    assert "scratch a hidden spot" in remedy(verdict.binds)
    story.check(24 * 10, Found.HOLDS)
    assert due(story, 24 * 10 + 1).verdict.answer is Answer.GO


def test_a_member_that_was_set_aside_is_waited_for():
    story = case_of_sides()
    story.coat(0, SHELLAC)
    story.set_aside(20)
    verdict = due(story, 50).verdict
    assert verdict.answer is Answer.WAITS
    assert "set aside" in waits_for(verdict)


def test_air_that_was_not_read_gives_label_time_only():
    story = Story()
    story.part("sides", SHELLAC, pieces=2)
    story.part("case", Operation.GLUE_UP, faces=(), needs={"sides": 2})
    story.coat(0, SHELLAC)
    assert due(story, 100).verdict.answer is Answer.TEST


def test_finish_on_a_glue_face_is_said():
    """Glue needs bare wood."""
    story = case_of_sides()
    story.coat(0, SHELLAC)
    story.coat(0, SHELLAC, face="joints")
    found = due(story, 50).verdict.findings
    assert [f.level for f in found] == [Level.CAUTION]
    assert "glue needs bare wood" in sentence(found[0])


def test_finish_on_a_glue_face_holds_it_up_however_old_until_it_is_off():
    """Order is no help: coated long before it is glued is still no bare wood. common practice"""
    story = case_of_sides()
    story.coat(0, SHELLAC)
    story.coat(0, SHELLAC, face="joints")
    verdict = due(story, 20000).verdict
    assert verdict.answer is Answer.WAITS
    assert "glue needs bare wood" in sentence(verdict.binds)
    assert "sides: finish on a glue face" in waits_for(verdict)
    assert remedy(verdict.binds) == "scrape it back to bare wood"


def test_a_glue_face_that_was_coated_is_not_offered_another_coat():
    story = Story()
    story.part("sides", joints=("joints",))
    story.steady(since=-12.0)
    story.coat(0, SHELLAC, face="joints")
    assert story.state(50, face="joints").verdict.answer is Answer.DONE


def test_a_joint_face_left_bare_holds_nothing_up():
    story = case_of_sides()
    story.coat(0, SHELLAC)
    assert due(story, 50).verdict.findings == ()


def test_glued_up_it_is_not_due_any_more_and_its_members_follow_the_assembly():
    story = case_of_sides()
    sides, case = story.named("sides"), story.named("case")
    story.coat(0, SHELLAC)
    story.join(20, case.pieces[0], sides.pieces)
    assert story.look(21).glue_ups == ()
    state = story.state(21, sides)
    assert state.joined
    assert state.part is case
    assert state.progress.next is not None
    assert state.progress.next.operation is Operation.COAT, "the case's own coat, after gluing up"
    assert {z.part.name for z in story.look(21).of_part(case.id)} == {"case"}


def test_the_layers_that_the_members_brought_lie_under_the_assemblys_coat():
    story = case_of_sides()
    sides, case = story.named("sides"), story.named("case")
    story.coat(0, SHELLAC)
    story.join(20, case.pieces[0], sides.pieces)
    story.coat(50, VARNISH, sides)
    assert [x.of.key for x in story.state(51, sides).layers] == [SHELLAC, VARNISH]
    assert story.verdict(51, sides).answer is Answer.DONE


def test_a_used_member_is_not_picked_twice():
    story = Story()
    story.part("sides", pieces=4)
    story.part("case", faces=(), pieces=2, needs={"sides": 2})
    sides, case = story.named("sides"), story.named("case")
    first, second = story.look(0).glue_ups
    assert not set(first.members) & set(second.members)
    story.join(1, case.pieces[0], sides.pieces[:2])
    (left,) = story.look(2).glue_ups
    assert left.members == tuple(p.id for p in sides.pieces[2:])


def test_picking_takes_the_lowest_numbered_free_pieces():
    story = Story()
    legs = story.part("legs", pieces=4)
    taken = frozenset({legs.pieces[0].id})
    picked, missing = pick_members((Need(legs.id, 4),), {legs.id: legs}, taken)
    assert picked == tuple(p.id for p in legs.pieces[1:])
    assert missing == (("legs", 1),)


def nested() -> Story:
    """Tell of a table made of a base, which is made of two legs first."""
    story = Story()
    story.part("legs", SHELLAC, pieces=2)
    story.part("base", Operation.GLUE_UP, SHELLAC, faces=(), needs={"legs": 2})
    story.part("table", Operation.GLUE_UP, faces=(), needs={"base": 1})
    return story.steady(since=-12.0)


def test_an_assembly_waits_for_the_assembly_that_is_to_go_into_it():
    story = nested()
    story.coat(0, SHELLAC, story.named("legs"))
    assert due(story, 20, "base").verdict.answer is Answer.GO
    verdict = due(story, 20, "table").verdict
    assert verdict.answer is Answer.WAITS
    assert "base" in waits_for(verdict)


def test_the_film_on_an_assembly_inside_an_assembly_counts():
    story = nested()
    legs, base = story.named("legs"), story.named("base")
    story.coat(0, SHELLAC, legs)
    story.join(20, base.pieces[0], legs.pieces)
    assert due(story, 21, "table").verdict.answer is Answer.WAITS, "its own coat is to come"
    story.coat(30, SHELLAC, legs)
    assert due(story, 31, "table").verdict.answer is Answer.WAITS, "it would print"
    in_cauls = due(story, 43, "table").verdict
    assert waits_for(in_cauls) == "base: in cauls: any glue, cold press", "a day by its facts"
    assert due(story, 45, "table").verdict.answer is Answer.GO


def test_where_the_assembly_is_carried_its_members_go():
    story = case_of_sides()
    sides, case = story.named("sides"), story.named("case")
    story.join(1, case.pieces[0], sides.pieces)
    attic = story.another_room("attic")
    story.read(2, 6, 60, room=attic)
    story.move(3, case, attic)
    assert story.state(2.5, sides).room.id == 1
    assert story.state(4, sides).room.id == attic
    assert waits_for(story.verdict(4, sides)) == "the joint", "it is still in cauls"
    story.read(239, 6, 60, room=attic)
    assert story.verdict(240, sides).answer is Answer.NOT_IN_THIS_AIR


def test_clamping_asks_every_layer():
    story = case_of_sides(VARNISH, SHELLAC)
    story.coat(0, VARNISH)
    story.coat(49, SHELLAC)
    assert story.state(50).stages[Stage.CLAMP].high == at(72)


def test_a_coat_typed_right_after_the_glue_up_is_the_assembly_s():
    """Both in the same minute: what was typed later comes later."""
    story = case_of_sides()
    sides, case = story.named("sides"), story.named("case")
    story.coat(0, SHELLAC, sides)
    story.join(1, case.pieces[0], sides.pieces)
    before = len(story.state(2, sides).progress.aside)
    story.coat(1, SHELLAC, sides)
    assert len(story.state(2, sides).progress.aside) == before + 1


def test_a_coat_that_a_member_lacks_is_due_on_the_assembly_before_its_own():
    """Nobody forgets a coat by gluing."""
    story = case_of_sides()
    sides, case = story.named("sides"), story.named("case")
    story.join(1, case.pieces[0], sides.pieces)
    left = story.state(2, sides).progress
    assert (left.done, len(left.steps)) == (0, 2)
    story.coat(40, SHELLAC, sides)
    assert story.state(41, sides).progress.done == 1
