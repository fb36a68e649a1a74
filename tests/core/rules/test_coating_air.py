"""May this product go on in this air?

Limits: 10 to 32.2 °C (TM 55-1500-345-23), 75 % RH for oil and water, 65 % for what blushes. Wood at
least 3 °C (5 °F) above the dew point (MIL-HDBK-1110). Two blush rules are in circulation: 65 % RH,
and 11.1 °C (20 °F) between air and dew point (trade questions and answers); they contradict.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.met import Stay
from finishlog.core.air.psychrometrics import Air, dew_point_c
from finishlog.core.air.room import RoomAir
from finishlog.core.findings import PLACE_UNTOLD, Answer, Finding, Level
from finishlog.core.finish.classes import Method
from finishlog.core.rules.air.coating_air import air_findings, cold_wood_until, surface_c
from finishlog.core.zone.verdict import MAY_ACT
from tests.air_of import read_room
from tests.rows import every_row
from tests.shop_of import (
    FACTS,
    LACQUER,
    SHELLAC,
    VARNISH,
    WATERBORNE,
    WAX,
    Story,
    at,
    one_coat,
    within_limits,
)
from tests.stories.telling import scene
from tests.worded_in import because, in_si, remedy, sentence, waits_for


def found(
    key: str, of: RoomAir, hour: float = 0.0, method: Method | None = None
) -> tuple[Finding, ...]:
    return air_findings(FACTS.finish_class(key), method, of, at(hour), FACTS.drying)


def stops(findings: tuple[Finding, ...]) -> list[Finding]:
    return [f for f in findings if f.level is Level.STOP]


EVERY_CLASS = list(FACTS.classes)


# What is sprayed and may blush: 21 °C and 50 % RH are 11 °C over the dew point, under the rule.
BLUSHES = {
    of.key
    for of in FACTS.classes.values()
    if of.limits.blush_dew_gap_c and of.methods[0] is Method.SPRAY
}


@every_row("key", [k for k in EVERY_CLASS if k not in BLUSHES])
def test_in_good_air_nothing_speaks_against_it(key):
    said = found(key, read_room((0, 21, 50), coldest=21))
    assert [f for f in said if f.rule != PLACE_UNTOLD] == []


@every_row("key", EVERY_CLASS)
def test_below_10_c_and_above_32_c_nothing_goes_on(key):
    """TM 55-1500-345-23: 50 to 90 °F; waterborne also the Wood Handbook, chapter 16.

    What cures by a catalyst has narrower limits of its own (common practice).
    """
    least, most = (round(within_limits(key, t)) for t in (-40, 60))
    assert (least, most) == (10, 32) or (least > 10 and most <= 32)
    cold, hot = found(key, read_room((0, 9.5, 50))), found(key, read_room((0, 32.5, 30)))
    assert any(f"below the {least} °C" in in_si(sentence(f)) for f in stops(cold))
    assert any(f"above the {most} °C" in in_si(sentence(f)) for f in stops(hot))
    assert all(remedy(f) and f.source for f in (*stops(cold), *stops(hot)))


def test_at_the_limit_itself_it_may():
    assert stops(found(VARNISH, read_room((0, 10.0, 50)))) == []
    assert stops(found(VARNISH, read_room((0, 20.0, 75)))) == []


@pytest.mark.parametrize(
    ("key", "limit"), [(VARNISH, 75), (WATERBORNE, 70), (SHELLAC, 65), (LACQUER, 65)]
)
def test_above_its_humidity_nothing_goes_on(key, limit):
    assert any(
        f"{limit} % limit" in sentence(f) for f in stops(found(key, read_room((0, 21, limit + 1))))
    )


def test_wax_has_no_humidity_limit_and_is_given_none():
    """No source gives one; the dew point still holds."""
    assert FACTS.finish_class(WAX).limits.max_rh_pct is None
    assert stops(found(WAX, read_room((0, 21, 80)))) == []


# --- dew --------------------------------------------------------------------------------------


def test_wood_less_than_3_c_above_the_dew_point_takes_no_coat():
    """MIL-HDBK-1110. By psychrolib 2.5.0 the dew point of 16 °C and 71 % is 10.75 °C; wood that
    stood at 13 °C in the night is 2.25 °C above it (paint application guide: rejected)."""
    night_in_it = read_room((-8, 13, 60), (0, 16, 71))
    (dew,) = stops(found(VARNISH, night_in_it))
    assert "dew point of 10.8 °C" in in_si(sentence(dew))
    assert "13 °C" in in_si(sentence(dew))
    assert dew.source == "mil-hdbk-1110"


def test_the_worked_example_that_is_accepted():
    """Same guide: 21 °C, dew point 15 °C, surface 19 °C: margin 4.3 °C."""
    assert stops(found(VARNISH, read_room((-8, 19, 60), (0, 21, 67)))) == []


def test_the_surface_is_the_colder_of_the_room_and_last_night():
    """Wood follows the air slowly; nobody measured it."""
    assert surface_c(read_room((-10, 9, 60), (0, 20, 50)), at(0)) == 9
    warm_since = read_room((-20, 9, 60), (-13, 20, 50), (0, 20, 50))
    assert surface_c(warm_since, at(0)) == 20, "the night before is over"
    unread_since = read_room((-20, 9, 60), (0, 20, 50))
    assert surface_c(unread_since, at(0)) == 9, "nothing says that the cold was over by midnight"
    assert surface_c(read_room((0, 20, 50)), at(0)) == 20
    assert surface_c(RoomAir(), at(0)) is None


def test_a_thermometer_on_the_wood_is_believed_for_two_hours():
    """Air of 21 °C and 50 % has its dew point at 10.2 °C (psychrolib 2.5.0): 8 °C is below it."""
    story = Story()
    story.part("door", VARNISH)
    story.steady(21, 50, since=-12)
    assert story.verdict(0).answer is Answer.GO
    story.surface(1, 8.0)
    assert story.verdict(1.5).answer is Answer.NOT_IN_THIS_AIR
    assert story.verdict(3.5).answer is Answer.GO
    story.surface(4, 20.5)
    assert story.verdict(4).answer is Answer.GO


@given(st.floats(10, 32), st.floats(10, 75))
def test_the_dew_margin_decides_exactly(t, rh):
    margin = t - dew_point_c(Air(t, rh))
    said = any("dew point" in sentence(f) for f in stops(found(VARNISH, read_room((0, t, rh)))))
    assert said is (margin < 3.0)


# --- blush ------------------------------------------------------------------------------------


def test_both_blush_rules_are_shown_where_they_contradict():
    """21.1 °C and 55 %: passes 65 %, fails 20 °F (80 °F air with a dew point of 65 °F is the
    source's own example of a warning)."""
    (blush,) = found(LACQUER, read_room((0, 21.1, 55)))
    assert blush.level is Level.NOTE
    assert "11 °C" in in_si(sentence(blush))
    assert "passes the 65 % rule" in sentence(blush)
    assert blush.source == "blush-trade-q-and-a"


def test_80_f_with_a_dew_point_of_65_f_is_warned_of():
    """The source's own example: a gap of 15 °F."""
    assert any("blush" in sentence(f) for f in found(LACQUER, read_room((0, 26.67, 60))))


def test_in_dry_air_neither_rule_speaks():
    assert found(LACQUER, read_room((0, 21, 40))) == ()


def test_where_both_rules_forbid_it_the_humidity_stops_it():
    findings = found(LACQUER, read_room((0, 21, 70)))
    assert any("65 % limit" in sentence(f) for f in stops(findings))
    assert any("blush" in sentence(f) for f in findings)
    assert not any("passes" in sentence(f) for f in findings)


def test_blush_is_about_spraying():
    """Brushed shellac evaporates too slowly to chill itself into the dew (the same source)."""
    air = read_room((0, 21, 55))
    assert found(SHELLAC, air, method=Method.BRUSH) == ()
    assert any("blush" in sentence(f) for f in found(SHELLAC, air, method=Method.SPRAY))
    assert found(SHELLAC, air) == (), "shellac is brushed unless the person says otherwise"


def test_standard_air_is_no_risk_though_the_gap_is_a_hair_under_the_rule():
    """23 °C and 50 % (ASTM D3924): the gap is 10.98 °C, the rule asks 11.1 °C; a word, no alarm."""
    findings = found(LACQUER, read_room((0, 23, 50)))
    assert [f.level for f in findings] == [Level.NOTE]
    assert one_coat(LACQUER, celsius=23.0, rh=50.0).verdict(5).answer is Answer.GO


# --- what is not known, and tonight -----------------------------------------------------------


def test_a_room_that_was_not_read_is_said_and_never_a_plain_go():
    (unread,) = found(VARNISH, RoomAir())
    assert unread.level is Level.CAUTION
    assert "not read" in sentence(unread)
    story = Story()
    story.part("door", VARNISH)
    assert story.verdict(0).answer is Answer.TEST


def test_a_reading_of_yesterday_is_no_reading():
    assert any("not read" in sentence(f) for f in found(VARNISH, read_room((-25, 21, 50))))


def test_a_reading_to_come_is_no_reading():
    assert any("not read" in sentence(f) for f in found(VARNISH, read_room((1, 21, 50))))


def test_a_cold_night_ahead_is_said_for_what_it_would_damage():
    """Wood Handbook, chapter 16: 24 h of warmth; 12.8 °C (55 °F) for it is common practice."""
    tonight = read_room((0, 18, 50), coldest=6)
    (cold,) = found(WATERBORNE, tonight)
    assert "6 °C" in in_si(sentence(cold))
    assert "24 h" in sentence(cold)
    stands_still, fogs = found(VARNISH, tonight)
    assert stands_still.level is Level.NOTE, "varnish only dries more slowly"
    assert (fogs.level, "dew may fog it" in sentence(fogs)) == (Level.CAUTION, True)
    assert found(VARNISH, read_room((0, 18, 50), coldest=12)) == ()
    assert found(WATERBORNE, read_room((0, 18, 50), coldest=13)) == ()


def test_in_bad_air_the_verdict_says_so_and_keeps_the_window():
    story = Story()
    story.part("door", WATERBORNE, WATERBORNE)
    story.read(-1, 21, 50)
    story.coat(0, WATERBORNE)
    story.read(3, 21, 50)
    story.read(6.9, 21, 80)
    verdict = story.verdict(7)
    assert verdict.answer is Answer.NOT_IN_THIS_AIR
    assert "80 % RH" in because(verdict)
    assert verdict.closes is not None


def test_carried_into_a_better_room_it_may():
    story = Story()
    part = story.part("door", VARNISH, room=1)
    warm = story.another_room("house")
    story.read(0, 7, 60)
    story.read(0, 21, 50, room=warm)
    assert story.verdict(1).answer is Answer.NOT_IN_THIS_AIR
    story.move(1, part, warm)
    story.read(6, 21, 50, room=warm)
    assert story.verdict(1.5).answer is Answer.WAITS, "its wood is still cold"
    assert story.verdict(7).answer is Answer.GO


@given(
    st.sampled_from(EVERY_CLASS),
    st.floats(-5, 40),
    st.floats(5, 100),
    st.sampled_from(list(Method)),
)
def test_outside_a_limit_no_method_may_put_it_on(key, t, rh, method):
    limits = FACTS.finish_class(key).limits
    outside = (
        (limits.min_c is not None and t < limits.min_c.value)
        or (limits.max_c is not None and t > limits.max_c.value)
        or (limits.max_rh_pct is not None and rh > limits.max_rh_pct.value)
    )
    if outside:
        assert stops(found(key, read_room((0, t, rh)), method=method))
    story = Story()
    story.part("door", key)
    story.read(0, t, rh)
    if outside:
        assert story.verdict(0).answer not in MAY_ACT


def carried(cold_c: float, into: RoomAir) -> list[Stay]:
    """Stand in a room of so many °C, and from hour 0 in another."""
    return [Stay(at(-100), read_room((-1, cold_c, 60))), Stay(at(0), into)]


def test_wood_carried_in_from_the_cold_warms_up_for_hours():
    house = read_room((-1, 21, 35), (5, 21, 35), coldest=18)
    of = FACTS.finish_class(WATERBORNE)
    stays = carried(9, house)
    for hour, until in ((1, at(6)), (5.9, at(6)), (6, None)):
        assert cold_wood_until(of, house, at(hour), FACTS.drying, stays) == until
    told = scene("oak door; air 21C 35%; night 18C; carried-in 9C 60%; ask waterborne-clear +1h")
    (cold,) = (f for f in told.verdict.findings if "came from 9 °C" in in_si(sentence(f)))
    assert "the part and the can" in remedy(cold)
    assert cold.source == "common practice"
    assert told.verdict.answer is Answer.WAITS
    mild = carried(15, house)
    assert cold_wood_until(of, house, at(1), FACTS.drying, mild) is None


def test_what_is_carried_from_a_cool_room_into_damp_heat_sweats():
    # Worked by the ASHRAE formula: air of 31.1 °C and 70 % RH has its dew point at 25 °C.
    outside, of = read_room((-1, 31.1, 70)), FACTS.finish_class(VARNISH)
    stood_there = air_findings(of, None, outside, at(0.5), FACTS.drying)
    assert all(f.level is Level.NOTE for f in stood_there), "hot, and nothing sweats"
    stays = carried(22.2, outside)
    assert cold_wood_until(of, outside, at(0.5), FACTS.drying, stays) == at(6)


def test_a_room_that_is_too_cold_itself_warms_nothing():
    garage = read_room((-1, 8, 60))
    of = FACTS.finish_class(WATERBORNE)
    assert cold_wood_until(of, garage, at(1), FACTS.drying, carried(5, garage)) is None


def test_a_part_just_carried_in_waits_until_it_is_warm():
    story = Story()
    door = story.part("door", WATERBORNE)
    house = story.another_room("house")
    story.cold_nights(18, house)
    story.read(0, 9, 60)
    story.read(0, 21, 35, house)
    story.move(1, door, house)
    story.read(6, 21, 35, house)
    waits = story.verdict(2)
    assert (waits.answer, waits_for(waits)) == (Answer.WAITS, "the wood to warm up")
    assert waits.high == at(7)
    assert story.verdict(7).answer is Answer.GO
