"""Every zone has one answer out of fourteen; each is told here by a small story.

The figures behind them stand in the other tests; here it is the answers that count.
"""

from __future__ import annotations

from collections.abc import Callable

from msgspec.structs import replace

from finishlog.core.findings import Answer
from finishlog.core.log.words import Found, Operation
from finishlog.core.shop.things import FaceKind
from finishlog.core.zone.verdict import MAY_ACT, Verdict
from tests.rows import every_row
from tests.shop_of import (
    LACQUER,
    LINSEED,
    SHELLAC,
    VARNISH,
    WATERBORNE,
    WAX,
    Story,
    at,
    hours_until,
)
from tests.worded_in import because, sentence, waits_for


def door(*steps: object, **options: object) -> Story:
    story = Story()
    story.part("door", *steps, **options)  # type: ignore[arg-type]
    return story.steady(since=-12.0)


def go() -> Verdict:
    """Say it of shellac that dried for four hours in air that was read."""
    story = door(SHELLAC, SHELLAC)
    story.coat(0, SHELLAC)
    return story.verdict(4)


def scuff() -> Verdict:
    """Say it of varnish, which does not melt into the next coat."""
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    return story.verdict(50)


def test_first() -> Verdict:
    """Say it of a coat between the short and the long published time."""
    story = door(SHELLAC, SHELLAC)
    story.coat(0, SHELLAC)
    return story.verdict(2.5)


test_first.__test__ = False  # type: ignore[attr-defined]


def drying() -> Verdict:
    story = door(SHELLAC, SHELLAC)
    story.coat(0, SHELLAC)
    return story.verdict(1)


def dead_zone() -> Verdict:
    """Say it of waterborne in the cold, its window closed before it sands."""
    story = Story()
    story.part("door", WATERBORNE, WATERBORNE)
    story.coat(0, WATERBORNE)
    story.steady(14, 60, since=-12.0)
    return story.verdict(9)


def not_in_this_air() -> Verdict:
    story = Story()
    story.part("door", VARNISH)
    story.read(0, 7, 60)
    return story.verdict(0.5)


def blocked() -> Verdict:
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.check(60, Found.GUMS)
    return story.verdict(200)


def stalled() -> Verdict:
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.check(60, Found.TACKY)
    story.check(110, Found.TACKY)
    return story.verdict(111)


def suspect() -> Verdict:
    """Say it of waterborne that froze in its first night."""
    story = Story()
    story.part("door", WATERBORNE, WATERBORNE)
    story.read(-1, 18, 50)
    story.coat(0, WATERBORNE)
    story.read(9, 3, 60)
    return story.verdict(14)


def underneath() -> Verdict:
    story = door(SHELLAC, WAX, VARNISH)
    story.coat(0, SHELLAC)
    story.coat(60, WAX)
    return story.verdict(400)


def waits() -> Verdict:
    """Say it of a front whose back is wet."""
    story = door(VARNISH, faces=("front", "back"))
    story.coat(0, VARNISH, face="back")
    return story.verdict(1, face="front")


def deadline() -> Verdict:
    """Say it of linseed oil that has to come off within half an hour."""
    story = door(LINSEED, LINSEED)
    story.coat(0, LINSEED)
    return story.verdict(0.2)


def set_aside() -> Verdict:
    story = door(SHELLAC, SHELLAC)
    story.coat(0, SHELLAC)
    story.set_aside(5)
    return story.verdict(6)


def done() -> Verdict:
    story = door(SHELLAC)
    story.coat(0, SHELLAC)
    return story.verdict(1)


STORIES: dict[Answer, Callable[[], Verdict]] = {
    Answer.GO: go,
    Answer.SCUFF: scuff,
    Answer.TEST: test_first,
    Answer.DRYING: drying,
    Answer.DEAD_ZONE: dead_zone,
    Answer.NOT_IN_THIS_AIR: not_in_this_air,
    Answer.BLOCKED: blocked,
    Answer.STALLED: stalled,
    Answer.SUSPECT: suspect,
    Answer.UNDERNEATH: underneath,
    Answer.WAITS: waits,
    Answer.DEADLINE: deadline,
    Answer.SET_ASIDE: set_aside,
    Answer.DONE: done,
}


def test_there_are_fourteen_answers_and_a_story_for_each():
    assert set(STORIES) == set(Answer)
    assert len(Answer) == 14


@every_row("answer", Answer)
def test_each_answer_can_be_had(answer):
    verdict = STORIES[answer]()
    assert verdict.answer is answer
    assert because(verdict)


def test_only_three_answers_let_a_person_act():
    assert {Answer.GO, Answer.SCUFF, Answer.TEST} == MAY_ACT


def test_a_wait_says_from_when_and_by_when():
    verdict = drying()
    assert (hours_until(verdict.low), hours_until(verdict.high)) == (2, 3)


def test_a_deadline_says_when_it_is_over():
    """Boiled linseed oil: surplus off within 15 to 30 min (common practice)."""
    assert hours_until(deadline().closes) == 0.5


def test_wiped_off_it_is_a_wait_like_any_other():
    story = door(LINSEED, LINSEED)
    story.coat(0, LINSEED)
    story.work(0.2, Operation.WIPE)
    assert story.verdict(0.3).answer is Answer.DRYING


def test_what_waits_says_for_what_and_until_when():
    verdict = waits()
    assert waits_for(verdict) == "face back"
    assert hours_until(verdict.high) == 24


def test_a_front_may_be_coated_once_its_back_bears_turning():
    """Alkyd varnish turns after 8 to 24 h, the later end is promised (common practice)."""
    story = door(VARNISH, faces=("front", "back"))
    story.coat(0, VARNISH, face="back")
    assert story.verdict(23, face="front").answer is Answer.WAITS
    assert story.verdict(25, face="front").answer is Answer.GO


def test_a_hidden_back_bears_the_points_from_the_early_end():
    """Small marks of the points are accepted where nobody looks (common practice): 8 h."""
    story = door(VARNISH, faces=("front", "back"))
    part = story.parts[0]
    front, back = part.faces
    story.parts[0] = replace(part, faces=(front, replace(back, kind=FaceKind.HIDDEN)))
    story.coat(0, VARNISH, face="back")
    early = story.verdict(7.5, face="front")
    assert early.answer is Answer.WAITS
    assert hours_until(early.high) == 8
    assert story.verdict(8.5, face="front").answer is Answer.GO


def test_no_sanding_while_another_film_in_the_room_catches_dust():
    """Common practice: nothing is sanded until everything wet in the room is dust-free."""
    story = door(VARNISH, Operation.SCUFF, VARNISH)
    story.part("shelf", VARNISH)
    story.coat(0, VARNISH)
    story.coat(50, VARNISH, story.named("shelf"))
    verdict = story.verdict(51)
    assert verdict.answer is Answer.WAITS
    assert "shelf" in waits_for(verdict)
    assert hours_until(verdict.high) == 58
    assert story.verdict(59).answer is Answer.GO


def test_set_aside_raises_no_alarm_and_says_what_it_needs_when_it_is_taken_up():
    story = door(WATERBORNE, WATERBORNE)
    story.coat(0, WATERBORNE)
    story.set_aside(5)
    story.steady(days=10)
    aside = story.verdict(200)
    assert aside.answer is Answer.SET_ASIDE
    assert (because(aside), aside.scuff_first) == ("scuff it first", True)
    assert (aside.closes, aside.high, aside.findings) == (None, None, ())
    story.check(150, Found.TACKY)
    assert because(story.verdict(200)) == "blocked: touch failed: tacky"


def test_resumed_it_goes_on():
    story = door(SHELLAC, SHELLAC)
    story.coat(0, SHELLAC)
    story.set_aside(5)
    story.resume(7)
    assert story.verdict(8).answer is Answer.GO


def test_without_steps_and_coats_there_is_nothing_to_ask():
    assert door().verdict(0).answer is Answer.DONE


def test_a_suspect_film_is_not_called_go_by_waiting():
    story = Story()
    story.part("door", WATERBORNE, WATERBORNE)
    story.read(-1, 18, 50)
    story.coat(0, WATERBORNE)
    story.read(9, 3, 60)
    story.steady(20, 50, since=20, days=40)
    assert story.verdict(24 * 35).answer is Answer.SUSPECT


def test_what_is_to_be_heeded_comes_with_the_answer():
    """Sprayed lacquer in damp air over sound lacquer: may go, with the risk of blush said."""
    story = Story()
    story.part("door", LACQUER, LACQUER)
    story.coat(0, LACQUER)
    story.steady(21, 55, since=-12.0)
    verdict = story.verdict(5)
    assert verdict.answer is Answer.GO
    assert any("blush" in sentence(f) for f in verdict.findings)


def test_one_answer_for_each_zone():
    story = door(SHELLAC, faces=("front", "back"), pieces=3)
    states = story.look(0).zones
    assert len(states) == 6
    assert {s.verdict.answer for s in states} == {Answer.GO}
    assert len({s.target for s in states}) == 6
    assert story.look(0).now == at(0)
