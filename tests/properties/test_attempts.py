"""Random coats, work, faults and strippings on one door: what must hold whatever happened."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.film.attempts import attempts_before, what_stays
from finishlog.core.findings import Answer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Coat
from finishlog.core.log.words import FaultKind, Found, Operation, Stripping
from tests.examples import examples
from tests.shop_of import LACQUER, LINSEED, SHELLAC, STAIN, VARNISH, WATERBORNE
from tests.trouble_of import Trouble, door

CLASSES = st.sampled_from([SHELLAC, WATERBORNE, VARNISH, LINSEED, LACQUER, STAIN])
WORK = st.sampled_from(
    [Operation.SAND, Operation.SCUFF, Operation.WIPE, Operation.MEND, Operation.SOLVENT_WIPE]
)
STEPS = st.lists(st.one_of(CLASSES, st.just(Operation.SAND)), max_size=5)


@st.composite
def doors(draw: st.DrawFn) -> tuple[Trouble, float]:
    """Tell of a door with up to twelve things that happened to it, an hour to two days apart."""
    story, hour = door(*draw(STEPS), species=draw(st.sampled_from([None, "oak", "cocobolo"]))), 0.0
    for kind in draw(st.lists(st.sampled_from("cccwkfoo"), max_size=12)):
        hour += draw(st.integers(60, 2880)) / 60
        coats = [e for e in story.entries if isinstance(e, Coat)]
        if kind == "c":
            story.coat(hour, draw(CLASSES))
        elif kind == "w":
            story.work(hour, draw(WORK))
        elif kind == "k":
            story.check(hour, draw(st.sampled_from(list(Found))))
        elif kind == "f":
            story.fault(hour, draw(st.sampled_from(list(FaultKind))))
        else:
            to = draw(st.sampled_from([None, *coats]))
            story.off(hour, to, how=draw(st.sampled_from(list(Stripping))))
    return story, hour + 1


@examples(150)
@given(doors())
def test_every_coat_is_on_the_door_or_in_an_attempt_and_never_in_both(told):
    story, hour = told
    state = story.state(hour)
    there = [layer.coat.id for layer in state.layers]
    gone = [coat.id for attempt in state.attempts for coat in attempt.coats]
    put_on = [e.id for e in state.entries if isinstance(e, Coat)]
    assert sorted(there + gone) == sorted(put_on)


@examples(150)
@given(doors())
def test_down_to_bare_wood_there_is_no_layer_and_no_coat_counts(told):
    story, hour = told
    story.off(hour)
    state = story.state(hour + 1)
    assert state.layers == ()
    assert state.progress.done == 0
    assert state.progress.matched == frozenset()


@examples(150)
@given(doors())
def test_taking_the_last_stripping_back_brings_all_back(told):
    story, hour = told
    before = story.state(hour + 1)
    off = story.off(hour)
    story.entries.remove(off)
    after = story.state(hour + 1)
    assert [x.coat for x in after.layers] == [x.coat for x in before.layers]
    assert after.progress == before.progress
    assert dict(after.stages) == dict(before.stages)
    assert after.faults == before.faults
    assert after.verdict == before.verdict


@examples(150)
@given(doors())
def test_a_coat_that_stays_keeps_its_date(told):
    story, hour = told
    for layer in story.state(hour).layers:
        assert layer.put_on == layer.coat.when.latest
        assert layer.dries_since >= layer.put_on


@examples(150)
@given(doors())
def test_a_fault_that_blocks_never_lets_a_coat_go(told):
    story, hour = told
    state = story.state(hour)
    blocked = any(fault.keeps_from(Stage.RECOAT) for fault in state.faults)
    step = state.progress.next
    if blocked and step is not None and step.operation is Operation.COAT:
        assert state.verdict.answer not in {Answer.GO, Answer.SCUFF, Answer.TEST}


@examples(100)
@given(doors())
def test_nothing_more_goes_of_what_stays(told):
    story, hour = told
    once = what_stays(story.log(hour).entries)
    assert what_stays(once) == once
    assert attempts_before(once) == ()
