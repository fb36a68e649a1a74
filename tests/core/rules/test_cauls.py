"""After a glue-up: time in cauls, then time before stress, and a week before a joint is flushed.

The hours are those of facts/data, whose sources tests/facts checks: the glue tables of the
trade, NAVEDTRA 14119 (PVA above 10 °C), the Wood Handbook (cold press, at most 24 h), a chapter on
glue joints (7 days before a joint of a water-based glue is planed flush).
"""

from __future__ import annotations

import pytest

from finishlog.core.bench.state import verdict_on_work
from finishlog.core.findings import Answer
from finishlog.core.log.words import Operation
from finishlog.core.published.glues import clamp_until, finish_from, level_from
from finishlog.core.zone.verdict import MAY_ACT, Verdict
from tests.rows import every_row
from tests.shop_of import FACTS, VARNISH, Story, at, hours_until
from tests.worded_in import because, in_si, waits_for


def case(glue: str = "", *, celsius: float = 23.0) -> Story:
    """Tell of a case glued up from bare sides at hour 0, whose next step is varnish."""
    story = Story()
    story.part("sides", pieces=2)
    story.part("case", Operation.GLUE_UP, VARNISH, faces=(), needs={"sides": 2})
    story.join(0, story.named("case").pieces[0], story.named("sides").pieces, glue)
    return story.steady(celsius, since=-12.0)


def coat(story: Story, hour: float) -> Verdict:
    return story.verdict(hour, story.named("sides"))


def work(story: Story, hour: float, operation: Operation) -> Verdict:
    bench = story.look(hour)
    return verdict_on_work(bench.zones[0], bench, operation, FACTS)


@every_row("glue", [g.key for g in FACTS.glues])
def test_nothing_is_coated_before_the_joint_bears_it(glue: str):
    known = FACTS.glue_named(glue)
    assert known is not None
    bears = max(hours_until(finish_from(known, at(0))), hours_until(clamp_until(known, at(0))))
    story = case(glue)
    assert waits_for(coat(story, bears - 0.1)) == "the joint"
    assert coat(story, bears + 0.1).answer is Answer.GO


@every_row("glue", [g.key for g in FACTS.glues])
def test_in_cauls_not_even_tape_is_touched(glue: str):
    known = FACTS.glue_named(glue)
    assert known is not None
    clamps = hours_until(clamp_until(known, at(0)))
    story = case(glue)
    assert work(story, 0.9 * clamps, Operation.UNTAPE).answer is Answer.WAITS
    assert work(story, 1.1 * clamps, Operation.UNTAPE).answer is Answer.GO


@every_row("glue", [g.key for g in FACTS.glues])
def test_the_date_of_a_joint_is_when_what_is_asked_may_be_done(glue: str):
    """The clamps come off sooner; a coat is not promised with them."""
    story = case(glue)
    high = coat(story, 0.1).high
    assert waits_for(coat(story, hours_until(high) - 0.01)) == "the joint"
    assert coat(story, hours_until(high)).answer is Answer.GO


def test_a_joint_of_water_based_glue_is_not_levelled_for_a_week():
    """Sunken joints: the wood beside the glue is swollen and shrinks later."""
    story = case("yellow-pva")
    known = FACTS.glue_named("yellow-pva")
    assert known is not None
    assert hours_until(level_from(known, at(0))) == 7 * 24
    assert coat(story, 30).answer is Answer.GO
    assert work(story, 6 * 24, Operation.LEVEL).answer is Answer.WAITS
    assert work(story, 7 * 24 + 1, Operation.LEVEL).answer is Answer.GO


def test_glue_that_was_not_named_gets_the_longest_of_the_cold_press():
    """Wood Handbook chapter 10: cold pressing holds from 15 min to 24 h, by the glue."""
    assert because(work(case(), 23, Operation.UNTAPE)).startswith("in cauls")
    assert work(case(), 25, Operation.UNTAPE).answer is Answer.GO
    assert coat(case(), 25).answer is Answer.WAITS


def test_the_cold_lengthens_the_time_in_cauls_and_warmth_never_shortens_it():
    until = {c: coat(case("yellow-pva", celsius=c), 0.5).high for c in (13.0, 23.0, 31.0)}
    assert hours_until(until[13.0]) == pytest.approx(2 * hours_until(until[23.0]))
    assert until[31.0] == until[23.0]


def test_a_cold_spell_after_the_glue_has_set_does_not_put_it_back_in_cauls():
    story = case("yellow-pva")
    story.read(40, 12, 50)
    assert waits_for(coat(story, 41)) != "the joint"


def test_glue_that_was_too_cold_while_it_set_is_tried_first():
    """NAVEDTRA 14119: PVA is used above 10 °C (50 °F)."""
    story = case("yellow-pva", celsius=8.0)
    verdict = coat(story, 200)
    assert verdict.answer not in MAY_ACT or verdict.answer is Answer.TEST
    warmed = case("yellow-pva", celsius=8.0)
    warmed.entries[:] = [e for e in warmed.entries if e.when.latest < at(72)]
    warmed.steady(since=72.0)
    answer = coat(warmed, 200)
    assert answer.answer is Answer.TEST
    assert "8 °C" in in_si(because(answer))


def test_below_its_limit_a_joint_is_held_longest_and_then_tried():
    """Yellow PVA at 11 °C, and at 5 °C: the colder joint was released first, by the plain hours."""
    until = {c: coat(case("yellow-pva", celsius=c), 0.5).high for c in (5.0, 9.9, 10.0, 11.0, 18.0)}
    assert until[5.0] == until[9.9] == until[10.0] > until[11.0] > until[18.0]


def test_a_joint_that_is_carried_into_the_cold_waits_longer_and_remembers_it():
    """Carried out of the cold again it has still met it."""
    story = case("yellow-pva", celsius=20.0)
    here = coat(story, 0.1).high
    shed = story.another_room("shed")
    story.read(0, 5, 70, shed)
    story.move(0.5, story.named("case"), shed)
    story.read(1, 5, 70, shed)
    carried = coat(story, 4).high
    assert carried > here
    story.move(5, story.named("case"), 1)
    assert coat(story, 6).high >= carried
    assert coat(story, hours_until(carried) + 1).answer is Answer.TEST


def test_tape_comes_off_before_a_joint_is_closed():
    story = Story()
    sides = story.part("sides", pieces=2, joints=("tenons",))
    story.part("case", Operation.GLUE_UP, faces=(), needs={"sides": 2})
    story.steady(since=-12.0)
    story.work(0, Operation.MASK, sides, face="tenons")
    taped = next(g for g in story.look(1).glue_ups)
    assert "tape to come off" in waits_for(taped.verdict)
    story.work(2, Operation.UNTAPE, sides, face="tenons")
    assert next(g for g in story.look(3).glue_ups).verdict.answer is Answer.GO
