"""The air to come: the night, the heater's end, and from when a coat may go on. Rooms invented.

The least temperatures are those of the classes, whose sources tests/facts checks; wood at least
3 °C above the dew point (MIL-HDBK-1110). What a reading tells of, and for how long, are our own
rules.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.psychrometrics import dew_point_c
from finishlog.core.air.room import RoomAir
from finishlog.core.air.supposed import Heat, one_heat
from finishlog.core.air.usual_day import UsualDay, UsualHour
from finishlog.core.clock.air_to_come import allowed_from, coldest_ahead, wood_c
from finishlog.core.findings import Answer, Level
from finishlog.core.plan.shop_ahead import as_expected
from finishlog.core.rules.air.coating_air import air_findings
from tests.air_of import read_room
from tests.examples import examples
from tests.shop_of import FACTS, SHELLAC, VARNISH, WATERBORNE, Story, at
from tests.worded_in import in_si, remedy

NIGHT = timedelta(hours=12)


def heat(since: float, until: float, celsius: float | None = 20.0) -> Heat:
    return Heat(at(since), at(until), celsius)


def day(*points: tuple[float, float, float], **told) -> UsualDay:
    return UsualDay(tuple(UsualHour(int(h * 60), c, rh) for h, c, rh in points), **told)


def asks(room: RoomAir, class_key: str, hour: float = 0.0) -> list[Level]:
    found = air_findings(FACTS.finish_class(class_key), None, room, at(hour), FACTS.drying)
    return [f.level for f in found if "room night" in in_si(remedy(f))]


def date(room: RoomAir, hour: float) -> datetime | None:
    """Return from when varnish may go on, asked at an hour."""
    limits = FACTS.finish_class(VARNISH).limits
    return allowed_from(limits, FACTS.drying.dew_margin_c.value, room, at(hour))


# --- a heater that is on record counts ----------------------------------------------------------


def test_a_heater_that_runs_all_night_is_the_night():
    """Read while it ran, or before; with a cold night on record, or none."""
    for read_at in (-2.0, 0.0):
        for coldest in (None, 2.0):
            room = read_room((read_at, 20, 50), coldest=coldest, heats=(heat(-1, 16),))
            assert coldest_ahead(room, at(0.5), NIGHT) == 20


def test_a_heater_that_stops_in_the_night_leaves_the_night_that_was_told():
    room = read_room((0, 20, 50), coldest=-3.0, heats=(heat(-1, 3),))
    assert coldest_ahead(room, at(0.5), timedelta(hours=2)) == 20
    assert coldest_ahead(room, at(0.5), NIGHT) == -3


def test_what_a_heater_leaves_is_unknown_until_somebody_tells():
    """Read at 20 °C with the heater on till nine: nobody knows of ten o'clock."""
    room = read_room((0, 20, 50), heats=(heat(-1, 3),))
    assert coldest_ahead(room, at(0.5), NIGHT) is None
    assert coldest_ahead(room, at(0.5), timedelta(hours=2)) == 20
    assert room.read_lately(at(2)) is not None
    assert room.read_lately(at(4)) is None, "it was read with the heater on"
    usual = read_room((0, 20, 50), heats=(heat(-1, 3),), usual=(day((0, 6, 70), (14, 9, 60)),))
    assert coldest_ahead(usual, at(0.5), NIGHT) == pytest.approx(6)
    assert usual.expected_at(at(4)).temperature_c < 9


def test_a_house_that_hardly_falls_when_its_heating_stops_stays_as_it_was_read():
    room = read_room((0, 20, 50), usual=(day((0, 18, 50), heated=(6 * 60, 19 * 60), heated_c=20),))
    assert room.read_lately(at(2)) is not None
    assert asks(room, WATERBORNE, 0.5) == []


def test_read_before_the_heater_came_on_the_room_falls_back_to_what_was_read():
    room = read_room((0, 12, 60), heats=(heat(1, 3),), coldest=11.0)
    assert room.expected_at(at(2)).temperature_c == 20
    assert room.expected_at(at(4)).temperature_c == 12


def test_one_heat_put_on_record_twice_is_one():
    assert one_heat([heat(0, 5), heat(0, 5)]) == [heat(0, 5)]
    assert one_heat([heat(0.1, 5), heat(0, 5)]) == [heat(0, 5)]
    assert one_heat([heat(0, 2), heat(2, 5)]) == [heat(0, 5)]
    assert one_heat([heat(0, 5), heat(1, 3, 24)]) == [heat(0, 5), heat(1, 3, 24)]
    assert one_heat([heat(0, 2), heat(3, 5)]) == [heat(0, 2), heat(3, 5)]


# --- a night that nobody told of ----------------------------------------------------------------


def test_before_a_film_that_cold_damages_the_night_is_asked_for():
    assert asks(read_room((0, 20, 50)), WATERBORNE) == [Level.CAUTION]
    story = Story()
    story.cold_nights(None)
    story.part("door", WATERBORNE)
    story.read(0, 20, 50)
    verdict = story.verdict(0.2)
    assert verdict.answer is Answer.TEST
    story.cold_nights(15)
    assert story.verdict(0.2).answer is Answer.GO


def test_before_any_film_it_is_asked_where_a_heater_is_known_to_stop():
    room = read_room((0, 20, 50), heats=(heat(-1, 3),))
    assert asks(room, VARNISH) == [Level.CAUTION]
    assert asks(room, SHELLAC) == [], "tack-free before the heater stops"
    assert asks(read_room((0, 20, 50)), VARNISH) == [Level.NOTE]


def test_nobody_is_asked_where_the_night_was_told():
    """By word, by a usual day, by a heater, by a logger that read the night before."""
    told = (
        read_room((0, 20, 50), coldest=14.0),
        read_room((0, 20, 50), usual=(day((0, 19, 50)),)),
        read_room((0, 20, 50), heats=(heat(-1, 90),)),
        read_room(*((float(hour), 20, 50) for hour in range(-24, 1))),
    )
    for room in told:
        for of in FACTS.classes.values():
            assert asks(room, of.key) == []


def test_the_night_that_a_logger_read_is_the_night_to_expect():
    """Ten in the evening to six at 7 °C, else 20 °C."""
    cold = range(-20, -11)
    room = read_room(*((float(h), 7 if h in cold else 20, 50) for h in range(-24, 1)))
    assert coldest_ahead(room, at(0), NIGHT) == 7
    unheated = read_room(*((float(h), 20, 50) for h in range(-24, 1)), heats=(heat(-24, 3),))
    assert coldest_ahead(unheated, at(0), NIGHT) is None, "it was read with the heater on"


# --- from when a coat may go on -----------------------------------------------------------------


def test_the_date_is_where_the_rising_air_meets_the_limit():
    """From 6 °C at midnight to 18 °C at noon it is 10 °C at 4:00, in the middle of a stretch."""
    room = read_room((0, 6, 40), usual=(day((0, 6, 40), (12, 18, 40), (18, 6, 40)),))
    found = date(room, 0.5)
    assert found == at(10)


def test_wood_that_is_cold_from_the_night_has_a_date_when_the_night_is_behind():
    """28 °C and 42 % have their dew point at 13.9 °C (ASHRAE formula); the wood was at 11 °C."""
    story = Story()
    story.cold_nights(None)
    story.part("door", VARNISH)
    story.usual(day((19.75, 23, 66), (21, 11, 48)))
    story.read(-2, 28, 42)
    verdict = story.verdict(0)
    assert verdict.answer is Answer.NOT_IN_THIS_AIR
    assert verdict.high is not None
    assert story.verdict(0).high > at(0)


DAYS = st.lists(
    st.tuples(st.integers(0, 23), st.integers(2, 30), st.integers(30, 95)),
    min_size=1,
    max_size=4,
    unique_by=lambda point: point[0],
).map(lambda points: day(*sorted(points)))


@examples(60)
@given(DAYS, st.tuples(st.integers(2, 32), st.integers(30, 95)), st.sampled_from([0.1, 3.0]))
def test_the_date_is_the_first_quarter_hour_at_which_air_and_wood_allow_it(usual, read, hour):
    """Checked against limits and dew margin apart."""
    room, of = read_room((0, *read), usual=(usual,)), FACTS.finish_class(VARNISH)
    least, most, damp = of.limits.min_c, of.limits.max_c, of.limits.max_rh_pct

    def allows(moment) -> bool:
        air = room.expected_at(moment)
        dry = wood_c(room, moment, air) - dew_point_c(air) >= FACTS.drying.dew_margin_c.value
        fit = least.value <= air.temperature_c <= most.value and air.humidity_pct <= damp.value
        return fit and dry

    found = date(room, hour)
    until = found or at(hour + 48)
    if not allows(at(hour)):
        for quarter in range(4 * 48):
            moment = at(ceil(4 * hour) / 4 + quarter / 4)
            assert moment >= until or not allows(moment)
    if found is not None:
        assert not allows(at(hour))
        assert allows(found)


@examples(60)
@given(DAYS, st.tuples(st.integers(2, 32), st.integers(30, 95)))
def test_a_stop_of_the_air_is_over_at_its_date(usual, read):
    """What the verdict dates is what the verdict says at that date, by what is expected then."""
    room, of = read_room((0, *read), usual=(usual,)), FACTS.finish_class(VARNISH)
    found = date(room, 0.1)
    if found is not None:
        then = as_expected(room, found)
        said = air_findings(of, None, then, found, FACTS.drying)
        assert all(f.level is not Level.STOP for f in said)


def test_where_nothing_forbids_it_there_is_no_date():
    room = read_room((0, 20, 50), usual=(day((0, 19, 50)),))
    assert date(room, 0.1) is None
