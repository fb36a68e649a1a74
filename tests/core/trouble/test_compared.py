"""What went wrong beside what went well: what they share is hardly the cause.

The stories are invented; that a finisher compares is common practice.
"""

from __future__ import annotations

from finishlog.core.findings import Finding
from finishlog.core.log.words import FaultKind, Found, Operation
from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.trouble.causes import looked_into
from finishlog.core.trouble.scene import Missing
from finishlog.core.trouble.suspect import Stands, Suspect
from tests.shop_of import FACTS, LINSEED, SHELLAC, STAIN, VARNISH, WATERBORNE
from tests.trouble_of import Trouble


def two(sick: str, sound: str, *steps: object) -> Trouble:
    """Tell of two parts in one room, the first of which will go wrong."""
    story = Trouble()
    story.part("sick", *steps, species=sick)
    story.part("sound", *steps, species=sound)
    story.steady(since=-12.0)
    return story


def both(story: Trouble, hour: float, class_key: str) -> None:
    for part in story.parts:
        story.coat(hour, class_key, on=part)


def looked(story: Trouble, hour: float) -> tuple[tuple[Suspect, ...], tuple[Finding, ...]]:
    """Return the causes of the one thing that is wrong on the first part, and what is apart."""
    zones = story.look(hour).zones
    state = next(z for z in zones if z.part.name == "sick")
    of = state.faults[-1] if state.faults else state.checks[-1]
    return looked_into(of, state, story.log(hour), zones, FACTS)


def why(story: Trouble, hour: float) -> tuple[Suspect, ...]:
    return looked(story, hour)[0]


def differs(story: Trouble, hour: float) -> list[Finding]:
    return list(looked(story, hour)[1])


def stands(found: tuple[Suspect, ...]) -> dict[Evidence, Stands]:
    return {each.cause.evidence: each.stands for each in found}


def test_the_wood_that_differs_comes_before_the_cold_that_both_met():
    """Varnish in a cold room: tacky on rosewood, hard on the maple beside it."""
    story = two("rosewood", "maple", VARNISH)
    story.steady(10, 50, since=-12.0, days=20)
    both(story, 0, VARNISH)
    sick, sound = story.parts
    story.check(300, Found.NO_PRINT, on=sound)
    story.check(300, Found.TACKY, on=sick)
    found = why(story, 301)
    assert found[0].cause.evidence is Evidence.OILY_WOOD
    assert stands(found)[Evidence.OILY_WOOD] is Stands.APART
    assert stands(found)[Evidence.COLD] is Stands.SHARED
    (wood,) = (f for f in differs(story, 301) if f.value("what") == "wood")
    assert (wood.value("sound"), wood.value("there")) == ("sound", "maple, sugar")


def test_without_a_sound_film_the_cold_is_what_the_log_shows():
    story = Trouble()
    story.part("sick", VARNISH, species="maple")
    story.steady(10, 50, since=-12.0, days=20)
    story.coat(0, VARNISH)
    story.check(300, Found.TACKY)
    found = why(story, 301)
    assert found[0].cause.evidence is Evidence.COLD
    assert found[0].stands is Stands.SHOWN


def test_a_film_that_nobody_tried_is_no_proof_that_all_is_well():
    """Coated in another act, and neither checked nor coated since: it may be as soft."""
    story = two("rosewood", "rosewood", VARNISH)
    sick, sound = story.parts
    story.coat(0, VARNISH, on=sound)
    story.coat(1, VARNISH, on=sick)
    story.check(100, Found.TACKY, on=sick)
    assert stands(why(story, 101))[Evidence.OILY_WOOD] is Stands.SHOWN


def test_nothing_that_is_shared_is_struck_out():
    story = two("rosewood", "rosewood", VARNISH)
    sick, sound = story.parts
    both(story, 0, VARNISH)
    story.check(100, Found.NO_PRINT, on=sound)
    story.check(100, Found.TACKY, on=sick)
    assert stands(why(story, 101))[Evidence.OILY_WOOD] is Stands.SHARED


def test_a_thermometer_in_the_room_sees_no_sun():
    """Blisters on the half by the window, at 20 °C in the room."""
    story = two("oak", "oak", VARNISH)
    story.coat(0, VARNISH)
    story.fault(60, FaultKind.BLISTER, on=story.parts[0])
    (sun,) = (s for s in why(story, 61) if s.cause.evidence is Evidence.HOT)
    assert sun.stands is Stands.OPEN


def test_one_reading_in_the_evening_does_not_rule_out_a_damp_night():
    story = Trouble()
    story.part("sick", SHELLAC, species="maple")
    story.read(-1, 21, 50)
    story.coat(0, SHELLAC)
    story.fault(12, FaultKind.BLUSH)
    assert stands(why(story, 13))[Evidence.HUMID] is Stands.OPEN


def test_what_stood_on_longer_than_where_it_came_out_right():
    story = two("oak", "oak", STAIN)
    sick, sound = story.parts
    both(story, 0, STAIN)
    story.work(0.1, Operation.WIPE, on=sound)
    story.work(0.5, Operation.WIPE, on=sick)
    story.check(15, Found.DRY, on=sound)
    story.fault(20, FaultKind.WRONG_COLOUR, on=sick)
    found = why(story, 21)
    assert found[0].cause.evidence is Evidence.STOOD_LONGER
    assert found[0].stands is Stands.APART


def test_a_cause_that_no_time_mends_comes_before_the_cold():
    story = Trouble()
    story.part("sick", VARNISH, species="rosewood")
    story.steady(10, 50, since=-12.0, days=20)
    story.coat(0, VARNISH)
    story.check(300, Found.TACKY)
    first = why(story, 301)[0]
    assert not first.cause.time_helps
    verdict = story.verdict(301)
    late = next(f for f in verdict.findings if f.rule == "late")
    assert late.value("how") == "no-time"


def test_in_the_cold_in_which_its_hours_never_pass_causes_are_told_all_the_same():
    story = Trouble()
    story.part("sick", VARNISH, species="rosewood")
    story.steady(2, 60, since=-12.0, days=20)
    story.coat(0, VARNISH)
    story.check(240, Found.TACKY)
    assert "cause-shown" in {f.rule for f in story.verdict(241).findings}


def test_a_film_that_is_tried_within_its_time_has_no_causes():
    """Tacky three hours after the coat is what varnish is."""
    story = Trouble()
    story.part("sick", VARNISH, species="rosewood")
    story.steady(since=-12.0)
    story.coat(0, VARNISH)
    story.check(3, Found.TACKY)
    assert not {f.rule for f in story.verdict(4).findings} & {"cause-shown", "causes-open"}


def test_what_is_suspect_itself_is_no_proof_that_all_is_well():
    """Both met 5 °C in their first night: that the other has not flaked yet tells nothing."""
    story = two("maple", "maple")
    story.steady(18, 50, since=-12.0, days=0.5)
    story.steady(5, 60, since=3, days=3)
    sick, sound = story.parts
    both(story, 0, WATERBORNE)
    story.check(60, Found.FLAKES, on=sick)
    assert stands(why(story, 61))[Evidence.COLD] is Stands.SHOWN
    story.check(61, Found.HOLDS, on=sound)
    assert stands(why(story, 62))[Evidence.COLD] is Stands.SHARED


def test_a_coat_that_lies_under_one_that_went_wrong_is_no_proof_that_all_is_well():
    """Two legs oiled three times a day apart, both tacky: the second coat of one is not sound."""
    story = two("cherry", "cherry", LINSEED, LINSEED, LINSEED)
    for hour in (0.0, 24.0, 48.0):
        both(story, hour, LINSEED)
    for part in story.parts:
        story.check(400.0, Found.TACKY, on=part)
    assert stands(why(story, 401.0))[Evidence.OIL_BELOW] is Stands.SHOWN
    assert differs(story, 401.0) == []


def test_a_coat_that_went_on_too_soon_comes_before_a_cool_room():
    """Varnish over a stain of four hours at 16 °C: the stain, not the degrees (common practice)."""
    story = Trouble()
    story.part("sick", STAIN, VARNISH, species="walnut")
    story.steady(16.0, since=-12.0)
    story.coat(0.0, STAIN)
    story.coat(4.0, VARNISH)
    story.check(180.0, Found.TACKY)
    first, *others = why(story, 181.0)
    assert first.cause.evidence is Evidence.OIL_BELOW
    assert Evidence.COLD in {each.cause.evidence for each in others if each.is_shown}


def test_what_one_act_had_of_all_that_it_coated_is_not_to_blame_for_one_of_them():
    """A back stays tacky, the seat of the same can and hour is dry; nobody read the air."""
    story = Trouble()
    story.part("sick", VARNISH, faces=("back", "seat"), species="oak")
    story.coat(0.0, VARNISH)
    story.check(430.0, Found.DRY, face="seat")
    story.check(430.0, Found.TACKY, face="back")
    found = stands(why(story, 431.0))
    shared = {Evidence.OLD_CONTAINER, Evidence.COLD, Evidence.HUMID}
    assert {each: found[each] for each in shared} == dict.fromkeys(shared, Stands.SHARED)
    assert found[Evidence.UNSEEN] is Stands.OPEN


def test_what_should_never_have_been_done_is_blamed_though_others_have_not_failed_yet():
    """Waterborne over oil stain of nine hours lets go on one face; the other nobody tried."""
    story = Trouble()
    story.part("sick", STAIN, WATERBORNE, faces=("back", "seat"), species="oak")
    story.steady(since=-12.0)
    story.coat(0.0, STAIN)
    story.coat(9.0, WATERBORNE)
    story.fault(240.0, FaultKind.PEEL, face="back")
    assert stands(why(story, 241.0))[Evidence.OIL_BELOW] is Stands.SHOWN
    # A scratch that holds there speaks for it.
    story.check(242.0, Found.HOLDS, face="seat")
    assert stands(why(story, 243.0))[Evidence.OIL_BELOW] is Stands.SHARED


def test_a_wood_of_which_nothing_is_published_is_told_apart_all_the_same():
    """Lacewood stays tacky where oak of the same varnish dried in its time."""
    story = two("lacewood", "oak", VARNISH)
    both(story, 0.0, VARNISH)
    story.check(40.0, Found.DRY, on=story.parts[1])
    story.check(90.0, Found.TACKY, on=story.parts[0])
    (wood,) = (f for f in differs(story, 91.0) if f.value("what") == "wood")
    assert (wood.value("here"), wood.value("there")) == ("lacewood", "oak, either group")
    lacks = {each.missing for each in why(story, 91.0)}
    assert Missing.OF_THE_WOOD in lacks
    assert Missing.WOOD not in lacks


def test_a_film_that_was_tacky_when_its_time_was_over_is_no_sound_one():
    story = two("oak", "oak", VARNISH)
    both(story, 0.0, VARNISH)
    for part in story.parts:
        story.check(90.0, Found.TACKY, on=part)
    story.check(200.0, Found.DRY, on=story.parts[1])
    assert not any(each.sound for each in why(story, 201.0))
