"""A film taken off: what survives counts, what came off stays on record as an attempt.

Sources: FC is a restated question of finishers with a seasoned answer; the rest is common practice.
"""

from __future__ import annotations

import pytest

from finishlog.core.findings import Answer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import FaultKind, Found, Operation, Stripping
from tests.shop_of import LACQUER, SHELLAC, VARNISH, WATERBORNE, hours_until
from tests.trouble_of import Trouble, door

SAND, SCUFF = Operation.SAND, Operation.SCUFF
THREE_COATS = (SAND, VARNISH, SCUFF, VARNISH, SCUFF, VARNISH)


def scraped_down_to_the_first() -> Trouble:
    """Coat 2 went on 20 h after coat 1, wrinkled, and was scraped off 6 h later."""
    story = door(*THREE_COATS)
    story.work(0, SAND)
    first = story.coat(1, VARNISH)
    story.work(20.5, SCUFF)
    story.coat(21, VARNISH)
    story.off(27, first, how=Stripping.SCRAPE)
    return story


def test_bare_wood_is_bare():
    story = door(*THREE_COATS)
    story.work(0, SAND)
    story.coat(1, VARNISH)
    story.off(30)
    state = story.state(31)
    assert state.layers == ()
    assert dict(state.stages) == {}


def test_the_steps_begin_again_with_the_sanding():
    story = door(*THREE_COATS)
    story.work(0, SAND)
    story.coat(1, VARNISH)
    story.off(30)
    progress = story.state(31).progress
    assert progress.next.operation is SAND
    assert progress.done == 0
    assert progress.aside == ()


def test_the_coat_that_stays_keeps_its_own_date():
    """A wrinkled coat 2 is scraped off while soft: coat 1 keeps its own date (common practice)."""
    state = scraped_down_to_the_first().state(28)
    assert [hours_until(layer.put_on) for layer in state.layers] == [1]
    untouched = door(*THREE_COATS)
    untouched.coat(1, VARNISH)
    for stage in (Stage.RECOAT, Stage.SAND, Stage.CURED):
        assert state.stages[stage] == untouched.state(28).stages[stage]


def test_the_steps_go_on_behind_the_coat_that_stays():
    progress = scraped_down_to_the_first().state(28).progress
    assert progress.next.operation is SCUFF
    assert progress.coat_number(progress.next_coat) == (2, 3)


def test_coats_that_came_off_are_not_counted():
    story = scraped_down_to_the_first()
    story.work(60, SCUFF)
    story.coat(61, VARNISH)
    progress = story.state(62).progress
    assert progress.coat_number(progress.next_coat) == (3, 3)


@pytest.mark.parametrize("how", [Stripping.SCRAPE, Stripping.SAND_THROUGH])
def test_sanded_or_scraped_the_film_below_is_scuffed(how: Stripping):
    story = door(VARNISH, VARNISH)
    first = story.coat(0, VARNISH)
    story.coat(50, VARNISH)
    story.off(60, first, how=how)
    assert story.verdict(61).answer is Answer.GO


@pytest.mark.parametrize("how", [Stripping.STRIP, Stripping.WASH])
def test_stripped_or_washed_it_is_not(how: Stripping):
    """A scuffing of before was taken up by the coat that came off."""
    story = door(VARNISH, SCUFF, VARNISH)
    first = story.coat(0, VARNISH)
    story.work(49, SCUFF)
    story.coat(50, VARNISH)
    story.off(60, first, how=how)
    assert story.state(61).progress.next.operation is SCUFF
    assert story.may(VARNISH, 61).answer is Answer.SCUFF


def test_scraped_before_the_film_below_could_be_sanded_it_counts_for_nothing():
    """Alkyd varnish sands after 24 to 48 h (common practice)."""
    story = door(VARNISH, VARNISH)
    first = story.coat(0, VARNISH)
    story.coat(10, VARNISH)
    story.off(12, first, how=Stripping.SCRAPE)
    assert story.may(VARNISH, 60).answer is Answer.SCUFF


def test_what_was_done_on_the_film_that_came_off_says_nothing_any_more():
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.check(60, Found.GUMS)
    story.off(61)
    state = story.state(62)
    assert state.checks == ()
    assert story.may(VARNISH, 62).answer is Answer.GO


def test_a_check_of_the_coat_that_stays_is_kept():
    story = door(VARNISH, VARNISH)
    first = story.coat(0, VARNISH)
    story.check(40, Found.POWDER)
    story.coat(41, VARNISH)
    story.check(60, Found.TACKY)
    story.off(61, first)
    assert [c.found for c in story.state(62).checks] == [Found.POWDER]


def test_a_melting_film_was_wet_again_with_the_coat_that_came_off():
    """Lacquer and shellac dissolve the coat below (common practice): its wait counts anew."""
    story = door(LACQUER, LACQUER)
    first = story.coat(0, LACQUER)
    story.coat(10, LACQUER)
    story.off(10.2, first, how=Stripping.WASH)
    melted, alone = story.state(11), door(LACQUER)
    alone.coat(10, LACQUER)
    assert hours_until(melted.layers[0].put_on) == 0
    assert melted.stages[Stage.SAND].high == alone.state(11).stages[Stage.SAND].high


def test_down_to_the_sealer_of_another_class():
    """Waterborne off a shellac sealer: the shellac's clock is its own."""
    story = door(SHELLAC, SCUFF, WATERBORNE, WATERBORNE)
    sealer = story.coat(0, SHELLAC)
    story.work(5, SCUFF)
    story.coat(6, WATERBORNE)
    story.coat(10, WATERBORNE)
    story.off(20, sealer, how=Stripping.SAND_THROUGH)
    state = story.state(21)
    assert [layer.of.key for layer in state.layers] == [SHELLAC]
    assert state.layers[0].air_again is None
    assert state.progress.next.operation is SCUFF


def test_the_attempt_stays_on_record_with_what_went_wrong():
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.coat(50, VARNISH)
    story.check(100, Found.TACKY)
    story.fault(101, FaultKind.WRINKLE)
    off = story.off(102, note="never hardened")
    (attempt,) = story.state(103).attempts
    assert len(attempt.coats) == 2
    assert attempt.off == off
    assert {type(found).__name__ for found in attempt.found} == {"Check", "Fault"}
    assert attempt.lasted.total_seconds() / 3600 == 102


def test_two_attempts_and_a_third():
    story = door(VARNISH)
    for start in (0, 100):
        story.coat(start, VARNISH)
        story.off(start + 50)
    story.coat(200, VARNISH)
    state = story.state(201)
    assert len(state.attempts) == 2
    assert len(state.layers) == 1


def test_faces_come_off_by_themselves():
    story = door(VARNISH, faces=("front", "back"))
    story.coat(0, VARNISH)
    story.off(30, face="back")
    assert story.state(31, face="front").layers
    assert not story.state(31, face="back").layers


def test_a_coat_that_was_typed_late_lands_before_the_stripping_and_came_off_with_it():
    story = door(VARNISH)
    story.coat(0, VARNISH)
    story.off(30)
    story.coat(20, VARNISH)
    state = story.state(31)
    assert state.layers == ()
    assert len(state.attempts[0].coats) == 2


def test_the_coat_that_was_to_stay_never_happened():
    """Undone since: what was typed before it is what lay under it."""
    story = door(VARNISH, VARNISH)
    below = story.coat(0, VARNISH)
    never = story.coat(50, VARNISH)
    story.coat(100, VARNISH)
    story.off(150, never)
    story.entries.remove(never)
    assert [layer.coat.id for layer in story.state(151).layers] == [below.id]


def test_off_an_assembly_the_members_own_coats_are_due_again():
    story = Trouble()
    story.part("side", SHELLAC)
    story.part("case", Operation.GLUE_UP, VARNISH, faces=(), needs={"side": 1})
    side, case = story.parts
    story.steady(since=-12.0)
    story.coat(0, SHELLAC, side)
    story.join(20, case.pieces[0], side.pieces)
    story.coat(60, VARNISH, side)
    story.off(90, on=side)
    assert story.state(91, side).progress.next.product == story.product(SHELLAC)
    story.coat(92, SHELLAC, side)
    assert story.state(93, side).progress.next.product == story.product(VARNISH)
