"""When may a coat begin so that it is tack-free before the air turns on it?

The limits are those of TM 55-1500-345-23 (10 to 32.2 °C, 75 % RH); rooms and hours are invented.
"""

from __future__ import annotations

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.met import AirMet, Leg
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint
from finishlog.core.air.supposed import Heat
from finishlog.core.air.usual_day import UsualDay, UsualHour
from finishlog.core.clock.counting import Clock, Counting, outside
from finishlog.core.clock.reach import reach
from finishlog.core.clock.start_times import Wanted, next_starts
from finishlog.core.film.layers import laws_of
from finishlog.core.findings import Level
from finishlog.core.finish.stages import Stage
from finishlog.core.rules.air.coating_air import air_findings
from tests.examples import examples
from tests.shop_of import FACTS, STAIN, VARNISH, at
from tests.worded_in import in_si, sentence

OF = FACTS.finish_class(VARNISH)
FIGURE = OF.stages[Stage.TACK_FREE]


def wanted(hours: float) -> Wanted:
    counting = Counting(laws_of(OF, FACTS)(FIGURE), Clock.WAIT, OF.limits)
    return Wanted(hours, counting, FACTS.drying.dew_margin_c.value)


def shed(*hours: tuple[int, float, float], heats: tuple[Heat, ...] = ()) -> RoomAir:
    """A room on its usual day, from (hour of the day, °C, % RH); it is Monday, 18:00 UTC."""
    day = UsualDay(tuple(UsualHour(60 * hour, t, rh) for hour, t, rh in hours))
    return RoomAir((AirPoint(at(-24), 15, 50),), usual=(day,), heats=heats, id=1)


def test_in_a_shed_that_is_heated_by_day_it_begins_in_the_morning():
    """Heated from Tuesday 7:00 to 21:00: eight hours at full pace fit in until 13:00."""
    heat = Heat(at(13), at(27), 24.0)
    found = next_starts(shed((5, -1, 70), (14, 9, 50), heats=(heat,)), at(0), wanted(8))
    assert found is not None
    assert (found.earliest, found.latest) == (at(13), at(19))
    assert found.tack_free == at(27) == found.turns


def test_where_it_never_stays_fit_long_enough_there_is_no_time():
    assert next_starts(shed((5, 3, 70), (13, 12, 50), (20, 6, 60)), at(0), wanted(8)) is None


def test_in_a_room_that_stays_fit_the_air_does_not_turn():
    found = next_starts(shed((0, 21, 50)), at(0), wanted(8))
    assert found is not None
    assert (found.earliest, found.turns, found.wood_cold) == (at(0), None, False)


def test_wood_that_is_cold_from_the_night_may_sweat_in_damp_air():
    """At least 3 °C over the dew point (MIL-HDBK-1110)."""
    found = next_starts(shed((5, 12, 90), (9, 24, 70), (20, 24, 60)), at(2), wanted(2))
    assert found is not None
    morning = next_starts(shed((5, 12, 90), (9, 24, 70), (20, 24, 60)), at(10), wanted(2))
    assert morning is not None
    assert (found.wood_cold, morning.wood_cold) == (False, True)


@examples(40)
@given(
    st.lists(
        st.tuples(st.floats(0, 36), st.floats(20, 95)), min_size=4, max_size=4
    ),
    st.floats(0.5, 12),
)  # fmt: skip
def test_what_begins_in_time_meets_no_air_outside_the_limits(airs, hours):
    room = shed(*((6 * n, t, rh) for n, (t, rh) in enumerate(airs)))
    found = next_starts(room, at(0), wanted(hours))
    if found is None:
        return
    assert at(0) <= found.earliest <= found.latest
    for start in (found.earliest, found.latest):
        met = AirMet((Leg(room, start, None),))
        end = reach(hours, met, wanted(hours).counting).moment
        assert end is not None
        assert end - start >= timedelta(hours=hours) - timedelta(seconds=1)
        for span in met.until(end):
            assert not any(
                outside(OF.limits, air.temperature_c, air.humidity_pct) for air in span.nearest
            )


def read(*readings: tuple[float, float, float], coldest: float | None = None) -> RoomAir:
    return RoomAir(tuple(AirPoint(at(h), t, rh) for h, t, rh in readings), coldest, 1)


def said(room: RoomAir, key: str = VARNISH, hour: float = 0.0) -> list[str]:
    found = air_findings(FACTS.finish_class(key), None, room, at(hour), FACTS.drying)
    return [sentence(f) for f in found if f.level is not Level.STOP]


def test_dew_of_the_night_is_said_to_a_film_that_is_still_wet_by_then():
    """20 °C and 50 % have a dew point of 9.3 °C (psychrometric chart)."""
    (dew,) = (s for s in said(read((0, 20, 50), coldest=11)) if "dew" in s)
    assert "the room goes to 11 °C, the dew point of this air is 9.3 °C" in in_si(dew)
    assert said(read((0, 20, 50), coldest=13)) == []
    assert not any("dew" in s for s in said(read((0, 20, 50), coldest=11), STAIN)), "wiped off"


@pytest.mark.parametrize(
    ("before", "words"), [(28.0, "it rises"), (32.0, "it falls"), (None, "does it rise or fall?")]
)
def test_heat_shortens_nothing_and_the_next_hour_is_asked_for(before, words):
    """Above 80 °F a film skins over before it has flowed out. common practice"""
    earlier = [] if before is None else [(-1, before, 50)]
    (hot,) = said(read(*earlier, (0, 30, 50), coldest=28))
    assert "its hours get no shorter" in hot
    assert words in hot
    assert said(read((0, 26, 50), coldest=22)) == []


def test_what_was_usual_before_the_first_reading_stays_usual():
    day = UsualDay((UsualHour(0, 15.0, 60.0),))
    room = RoomAir((AirPoint(at(0), 20, 50),), usual=(day,), id=1)
    counting = Counting(laws_of(OF, FACTS)(FIGURE), Clock.WAIT)
    hours = reach(4, AirMet((Leg(room, at(-30), None),)), counting).hours
    assert hours.unknown == 0
    assert hours.usual > 4
    without = RoomAir((AirPoint(at(0), 20, 50),), id=1)
    assert reach(4, AirMet((Leg(without, at(-30), None),)), counting).hours.unknown > 0
