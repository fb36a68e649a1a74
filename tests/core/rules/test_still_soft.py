"""A film that a check found soft: slow is not failed, and a pass in the air does not hide damp.

Common practice where no other source stands beside a test.
"""

from __future__ import annotations

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from finishlog.core.bench.state import bench_state
from finishlog.core.clock.pace import PaceKey, PaceLearnt
from finishlog.core.film.faults import patch_due
from finishlog.core.findings import Answer, Finding
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Coat
from finishlog.core.log.words import FaultKind, Found, Operation, Stripping
from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.rules.film.soft import still_soft
from finishlog.core.trouble.evidence import LOOKS
from finishlog.core.trouble.scene import Look, Missing, Scene
from finishlog.core.zone.verdict import MAY_ACT, Verdict
from tests.shop_of import BLEND, FACTS, SHELLAC, VARNISH, at, figure
from tests.trouble_of import Trouble, door
from tests.worded_in import because, in_si, remedy, sentence

TACK_FREE_H = FACTS.finish_class(VARNISH).stages[Stage.TACK_FREE].high_h


def found(verdict: Verdict) -> str:
    return " | ".join(f"{sentence(f)}; {remedy(f)}" for f in verdict.findings)


def test_within_its_time_a_tacky_film_is_no_surprise():
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.check(2, Found.TACKY)
    said = found(story.verdict(2))
    assert f"its time is not over: {TACK_FREE_H - 2:g} h still to go" in said
    assert "the log shows" not in said
    assert "late: still" not in said


def test_when_its_time_is_over_since_the_check_it_is_checked_again():
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.check(2, Found.TACKY)
    assert "its time is over since; check it again now" in found(story.verdict(TACK_FREE_H + 1))


def test_the_label_that_promised_less_is_the_one_that_was_broken():
    """Eight hours past the 4 h of the can: neither coat it nor strip it; it is slow."""
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH, label={Stage.RECOAT: figure(4)})
    story.check(12, Found.TACKY)
    verdict = story.verdict(12)
    assert verdict.answer is Answer.BLOCKED
    assert "late: still tacky 12 h after the coat, its label hours are 4 h" in found(verdict)
    assert "neither coat it nor strip it yet" in found(verdict)
    assert "cannot be ruled out: an old can" in found(verdict)


def test_from_tacky_to_printing_it_gets_on():
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.check(60, Found.TACKY)
    story.check(70, Found.GUMS)
    assert "it gets on: tacky, then gums" in found(story.verdict(71))


def test_in_a_hot_room_a_slow_film_is_cooled_and_aired():
    """Above 80 °F heat closes the skin over what is soft below it."""
    story = Trouble()
    story.part("door", VARNISH, VARNISH)
    for hour in range(-12, 125, 12):
        story.read(hour, 31 if hour in {60, 120} else 22, 60)
    story.coat(0, VARNISH)
    story.check(60, Found.TACKY)
    hot = found(story.verdict(61))
    assert "do not heat it" in hot
    assert "warm air" not in hot
    assert "wait in moving, warm air" in found(story.verdict(73))
    story.check(120, Found.TACKY)
    stalled = story.verdict(121)
    assert stalled.answer is Answer.STALLED
    assert "cool and change the air" in found(stalled)


def test_oil_that_stands_on_the_wood_is_rubbed_off_not_waited_for():
    story = door(BLEND, BLEND)
    story.coat(0, BLEND)
    story.check(100, Found.TACKY)
    said = found(story.verdict(101))
    assert "rub it off with its own solvent" in said
    assert "no wax over it" in said


def test_on_oily_wood_it_says_how_to_begin_again():
    """Wash it off, then a barrier (Woodworking magazine, finishing oily exotic woods)."""
    story = door(VARNISH, VARNISH, species="cocobolo")
    story.coat(0, VARNISH)
    story.check(200, Found.TACKY)
    assert "to begin again on cocobolo: wash the film off" in found(story.verdict(201))
    sealed = door(SHELLAC, VARNISH, species="cocobolo")
    sealed.coat(0, SHELLAC)
    sealed.coat(24, VARNISH)
    sealed.check(200, Found.TACKY)
    assert "to begin again" not in found(sealed.verdict(201))


def test_a_date_that_no_new_start_can_keep_is_said_to_be_lost():
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.check(100, Found.TACKY)
    due = at(101) + timedelta(days=2)
    shop = replace(story.shop, projects=(replace(story.shop.projects[0], due=due),))
    bench = bench_state(shop, story.log(101), FACTS, at(101), story.zone)
    assert "taken off and done again it is too late for" in found(bench.zones[0].verdict)


@given(st.floats(0.5, 200), st.sampled_from([Found.TACKY, Found.GUMS, Found.PRINTS]))
def test_a_soft_film_is_late_only_when_its_time_was_over_at_the_check(hour: float, how: Found):
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    story.check(hour, how)
    soft = still_soft(story.state(hour).top)
    assert soft is not None
    assert soft.promised is not None
    assert soft.is_late == (at(soft.promised.high_h) <= at(hour))


def test_what_no_check_speaks_against_is_not_soft():
    story = door(VARNISH, VARNISH)
    story.coat(0, VARNISH)
    assert still_soft(story.state(1).top) is None
    story.check(60, Found.TACKY)
    story.check(70, Found.DRY)
    assert still_soft(story.state(71).top) is None


def damp_then_dry() -> Trouble:
    """Tell of varnish above its limit of 75 % RH (TM 55-1500-345-23) for a night, then dry air."""
    story = Trouble()
    story.part("floor", VARNISH, VARNISH)
    for hour in (-6, 0, 6, 12):
        story.read(hour, 15, 90)
    story.steady(23, 50, since=18)
    story.coat(0, VARNISH)
    return story


def test_a_film_that_was_wet_in_damp_air_is_sanded_for_proof():
    story = damp_then_dry()
    verdict = story.verdict(400)
    assert verdict.answer is Answer.TEST
    assert (
        in_si(because(verdict)) == "it met 15 °C, 90 % RH while wet: sand a spot, it has to powder"
    )
    story.check(401, Found.POWDER)
    assert story.verdict(402).answer is Answer.SCUFF


def test_damp_after_it_is_dry_asks_for_nothing():
    story = Trouble()
    story.part("floor", VARNISH, VARNISH)
    story.steady(23, 50, since=-6, days=5)
    story.coat(0, VARNISH)
    for hour in (126, 132):
        story.read(hour, 15, 90)
    for hour in (138, 144, 150):
        story.read(hour, 23, 50)
    assert story.verdict(151).answer is Answer.SCUFF


def wrinkled() -> tuple[Trouble, Coat]:
    story = door(VARNISH, VARNISH)
    first = story.coat(0, VARNISH)
    story.coat(20, VARNISH)
    story.fault(22, FaultKind.WRINKLE)
    return story, first


def test_after_a_wrinkle_a_patch_goes_before_the_rest():
    story, first = wrinkled()
    assert story.verdict(23).answer is Answer.BLOCKED
    story.off(24, first, how=Stripping.SCRAPE)
    story.check(200, Found.POWDER)
    verdict = story.verdict(201)
    assert verdict.answer is Answer.TEST
    assert "coat a small patch first" in because(verdict)
    story.check(204, Found.HOLDS)
    assert story.verdict(205).answer in MAY_ACT - {Answer.TEST}


@pytest.mark.parametrize("how", ["bare wood", "a coat", "it holds"])
def test_what_settles_the_patch(how: str):
    story, _ = wrinkled()
    match how:
        case "bare wood":
            story.off(24, how=Stripping.SAND_THROUGH)
        case "a coat":
            story.coat(300, VARNISH)
        case _:
            story.check(300, Found.HOLDS)
    assert patch_due(story.log(23).entries, FACTS) is not None
    assert patch_due([e for e in story.log(301).entries if e.targets], FACTS) is None


def again(first: int | None, second: int | None) -> Look:
    """Strip a film that stayed tacky and coat again, each from a can; look for what that shows."""
    story = door(VARNISH)
    one = story.coat(0, VARNISH)
    story.check(100, Found.TACKY)
    story.off(110)
    story.work(111, Operation.SAND)
    two = story.coat(120, VARNISH)
    story.entries[story.entries.index(one)] = replace(one, container=first)
    story.entries[story.entries.index(two)] = replace(two, container=second)
    state = story.state(300)
    assert state.top is not None
    scene = Scene(state.top, (), at(300), state, story.log(300), (state,), FACTS)
    return LOOKS[Evidence.EARLIER_TOO](scene)


def test_two_cans_and_the_same_trouble_speak_for_the_wood():
    found = again(1, 2)
    assert isinstance(found, Finding)
    assert sentence(found) == "our alkyd-varnish from another can stayed soft there too"


def test_the_same_can_twice_does_not():
    assert again(1, 1) is None


def test_cans_that_nobody_logged_leave_it_open():
    assert again(None, None) is Missing.SAME_CAN


def test_late_is_asked_of_the_label_and_not_of_a_pace_that_its_own_check_taught():
    """A film that taught the tool to be slow is not excused by it: it is late by its label."""
    story = door(VARNISH, VARNISH)
    coat = story.coat(0, VARNISH)
    story.check(TACK_FREE_H + 1, Found.TACKY)
    top = story.state(TACK_FREE_H + 1).top
    assert top is not None
    learnt = PaceLearnt(PaceKey(coat.product, first=True), 2.0, 1.5, 2.5, 1, (1,), 3.0, 6.0)
    slow = replace(top, pace=learnt)
    film, plain = slow.stage(Stage.RECOAT), top.stage(Stage.RECOAT)
    assert film is not None
    assert plain is not None
    assert film.high > plain.high, "the wait itself is longer"
    soft = still_soft(slow)
    assert soft is not None
    assert soft.is_late
