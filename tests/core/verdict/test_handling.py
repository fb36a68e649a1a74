"""What holds a coat holds the handling too: each stage asks the same rules (common practice).

The stories are invented; hours are those of the classes.
"""

from __future__ import annotations

import pytest

from finishlog.core.bench.milestones import milestone
from finishlog.core.findings import Answer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found
from tests.shop_of import SHELLAC, STAIN, VARNISH, WATERBORNE, WAX, Story, at, hours_until
from tests.stories.telling import scene

MONTH = 24.0 * 30


def told(*coats: str) -> Story:
    story = Story().steady(since=-12.0)
    story.part("door")
    for n, key in enumerate(coats):
        story.coat(48.0 * n, key)
    return story


@pytest.mark.parametrize("stage", [Stage.STACK, Stage.PACK, Stage.LIGHT_USE])
def test_what_lies_on_what_it_should_not_is_not_packed_by_date(stage: Stage):
    """Varnish over wax never holds, however long it dries."""
    wrong = milestone([told(WAX, VARNISH).state(3 * MONTH)], stage)
    assert wrong is not None
    assert wrong.blocked is not None
    assert not wrong.reached(at(3 * MONTH))
    right = milestone([told(SHELLAC, VARNISH).state(3 * MONTH)], stage)
    assert right is not None
    assert right.blocked is None


def test_a_scratch_that_holds_lets_it_go():
    story = told(WAX, VARNISH)
    story.check(2 * MONTH, Found.HOLDS)
    assert milestone([story.state(3 * MONTH)], Stage.PACK).blocked is None


def test_a_joint_puts_off_the_stacking_of_films_that_are_long_dry():
    """PVA bears no stress for a day (facts/data/glues.toml); the film was dry weeks before."""
    story = told(WATERBORNE)
    rail = story.part("rail")
    frame = story.part("frame", needs={"rail": 1})
    story.coat(0.0, WATERBORNE, rail)
    story.join(MONTH, frame.pieces[0], rail.pieces[:1], glue="yellow-pva")
    state = next(z for z in story.look(MONTH + 2).zones if z.member.id == rail.id)
    stack = milestone([state], Stage.STACK)
    assert stack.high is not None
    assert MONTH + 2 < hours_until(stack.high) <= MONTH + 48
    assert not stack.reached(at(MONTH + 2))


def test_the_stages_are_worked_out_as_they_are_asked_for_and_answer_like_the_work():
    story = told(STAIN)
    state = story.state(1.0)
    assert set(state.handling) >= {Stage.TURN, Stage.CLAMP, Stage.STACK, Stage.PACK, Stage.CURED}
    assert state.handling[Stage.SAND].answer in {Answer.DRYING, Answer.TEST, Answer.DEADLINE}


def test_the_last_coat_from_a_stale_mix_is_not_sent_to_the_bench_and_packed_by_no_date():
    """Minutes old nobody tests it; weeks later time alone made nothing hard (common practice)."""
    mixed = "mix pot waterborne-two-part base*10+hardener 08:00"
    after = f"oak top; {mixed}; waterborne-two-part from-pot +3h; ask rest"
    assert scene(f"{after} +2m").verdict.answer is Answer.DONE
    weeks = scene(f"{after} +60d")
    assert weeks.verdict.answer is Answer.DONE
    pack = milestone([weeks.zone], Stage.PACK)
    assert pack is not None
    assert pack.blocked is not None
    assert pack.blocked.rule == "past-pot-life"
