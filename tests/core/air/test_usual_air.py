"""What is supposed of a room's air where nobody read it: its usual day, its seasons, its heater.

The usual days are invented. Water kept in air that is cooled or warmed is checked against the
saturation pressures of psychrolib 2.5.0 (saturation_pressure.csv): 611.2, 1228.0, 1705.4, 2338.8 Pa
at 0, 10, 15 and 20 °C.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.met import AirMet, Leg
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint, AirSpan, Known
from finishlog.core.air.supposed import Heat, usual_on
from finishlog.core.air.usual_day import UsualDay, UsualHour
from finishlog.core.clock.air_to_come import coldest_ahead
from finishlog.core.clock.counting import Clock, Counting
from finishlog.core.clock.reach import reach
from finishlog.core.finish.classes import Mechanism
from finishlog.core.finish.stages import Stage
from tests.air_of import law
from tests.examples import examples
from tests.rows import every_row
from tests.shop_of import VARNISH, Story, hours_until

BERLIN = ZoneInfo("Europe/Berlin")
HOUR = timedelta(hours=1)
# Coldest at six in the morning, warmest at two.
COOL = (UsualHour(6 * 60, 8, 80), UsualHour(14 * 60, 16, 60))
COOL_DAY = UsualDay(COOL)
READ = Air(20.0, 50.0)


def on(wall: str) -> datetime:
    """Return the instant of a time on the wall in Berlin."""
    return datetime.fromisoformat(wall).replace(tzinfo=BERLIN).astimezone(UTC)


def a_room(read: str, *usual: UsualDay, heats: tuple[Heat, ...] = (), air: Air = READ) -> RoomAir:
    """Build a room that was read once, and then never again."""
    point = AirPoint(on(read), air.temperature_c, air.humidity_pct)
    return RoomAir((point,), None, 1, usual, heats, BERLIN)


def span_at(room: RoomAir, wall: str) -> AirSpan:
    course = room.course
    return course.spans[course.index(on(wall))]


def expected(room: RoomAir, wall: str) -> tuple[float, float]:
    air = room.expected_at(on(wall))
    return round(air.temperature_c, 6), round(air.humidity_pct, 3)


# --- the day ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("wall", "air"),
    [
        ("2026-12-03 06:00", (8, 80)),
        ("2026-12-03 10:00", (12, 70)),
        ("2026-12-03 14:00", (16, 60)),
        ("2026-12-03 22:00", (12, 70)),
        ("2026-12-04 00:00", (11, 72.5)),
        ("2026-12-04 02:00", (10, 75)),
    ],
)
def test_a_usual_day_is_drawn_straight_between_its_points(wall, air):
    assert expected(a_room("2026-12-01 12:00", COOL_DAY), wall) == air
    assert span_at(a_room("2026-12-01 12:00", COOL_DAY), wall).known is Known.USUAL


def test_a_day_of_one_point_is_the_same_all_day():
    room = a_room("2026-12-01 12:00", UsualDay((UsualHour(720, 14, 55),)))
    assert {expected(room, f"2026-12-05 {hour:02}:00") for hour in range(24)} == {(14, 55)}


def test_the_last_reading_stands_first_for_some_hours_and_counts_for_a_day():
    """Our own rule: for six hours it is as it was read; for a day this may be unusual weather."""
    room = a_room("2026-12-01 12:00", COOL_DAY)
    fresh, stale, gone = (
        span_at(room, f"2026-12-0{wall}") for wall in ("1 17:00", "1 23:00", "2 13:00")
    )
    assert (fresh.known, fresh.airs[0]) == (Known.HELD, Air(20, 50))
    assert stale.known is Known.USUAL
    assert stale.airs[0] != Air(20, 50)
    assert Air(20, 50) in stale.airs
    assert Air(20, 50) not in gone.airs


def test_from_the_first_hour_on_a_wait_supposes_the_colder_of_reading_and_usual_day():
    """17:00 on a day whose usual air is then 14.5 °C, read as 20 °C; a window supposes the 20."""
    span = span_at(a_room("2026-12-01 12:00", COOL_DAY), "2026-12-01 17:00")
    of = law(Mechanism.OXIDATION)
    hour = span.cut(on("2026-12-01 17:00"), span.end)
    assert Counting(of, Clock.WAIT).pace(hour) == pytest.approx(2 ** ((14.5 - 23) / 10))
    assert Counting(of, Clock.WINDOW).pace(hour) == 1.0


# --- seasons ----------------------------------------------------------------------------------

WINTER = UsualDay((UsualHour(0, 6, 75),), season=(11, 2))
SUMMER = UsualDay((UsualHour(0, 22, 55),), season=(6, 8))
BETWEEN = UsualDay((UsualHour(0, 15, 60),))


@every_row(
    ("month", "day"),
    [
        *((month, WINTER) for month in (11, 12, 1, 2)),
        *((month, SUMMER) for month in (6, 7, 8)),
        *((month, BETWEEN) for month in (3, 4, 5, 9, 10)),
    ],
)
def test_a_season_may_wrap_the_year(month, day):
    for order in ((WINTER, SUMMER, BETWEEN), (BETWEEN, SUMMER, WINTER)):
        assert usual_on(order, date(2026, month, 15)) is day
    without = usual_on((WINTER, SUMMER), date(2026, month, 15))
    assert without is (day if day is not BETWEEN else None)


def test_over_new_year_it_stays_winter_and_march_is_another_season():
    room = a_room("2026-12-28 12:00", WINTER, BETWEEN)
    assert expected(room, "2026-12-31 23:59")[0] == 6
    assert expected(room, "2027-01-01 00:01")[0] == 6
    later = a_room("2027-02-20 12:00", WINTER, BETWEEN)
    assert expected(later, "2027-02-27 12:00")[0] == 6
    assert expected(later, "2027-03-02 12:00")[0] == 15


def test_where_no_season_tells_of_a_month_nothing_is_supposed():
    """A usual summer's day says nothing about October."""
    room = a_room("2026-08-20 12:00", SUMMER)
    assert span_at(room, "2026-08-31 23:00").known is Known.USUAL
    autumn = span_at(room, "2026-09-20 12:00")
    assert (autumn.known, autumn.airs) == (Known.UNKNOWN, (Air(20, 50),))


# --- heating ----------------------------------------------------------------------------------


def kept(celsius: float, rh: float, pressure_pa: float, to_pa: float) -> float:
    """Return the humidity of air that is warmed or cooled: its water stays."""
    return rh * pressure_pa / to_pa


def test_a_heater_that_runs_over_midnight():
    heated = UsualDay((UsualHour(0, 10, 80),), heated=(22 * 60, 6 * 60), heated_c=20.0)
    room = a_room("2026-12-01 12:00", heated)
    warm = (20, pytest.approx(kept(10, 80, 1228.0, 2338.8), abs=0.01))
    for wall in ("2026-12-03 22:00", "2026-12-03 23:59", "2026-12-04 00:00", "2026-12-04 05:59"):
        assert expected(room, wall) == warm
    for wall in ("2026-12-03 21:59", "2026-12-04 06:00", "2026-12-04 12:00"):
        assert expected(room, wall) == (10, 80)


def test_a_heater_never_cools():
    heated = UsualDay(COOL, heated=(0, 23 * 60), heated_c=12.0)
    room = a_room("2026-12-01 12:00", heated)
    assert expected(room, "2026-12-03 14:00") == (16, 60)
    assert expected(room, "2026-12-03 06:00")[0] == 12


def test_heated_without_a_figure_it_is_as_warm_as_the_day_gets():
    heated = UsualDay(COOL, heated=(5 * 60, 7 * 60))
    assert expected(a_room("2026-12-01 12:00", heated), "2026-12-03 06:00")[0] == 16


def test_a_heater_for_once_keeps_the_water_in_the_air():
    heat = Heat(on("2026-12-03 04:00"), on("2026-12-03 08:00"), 20.0)
    cold = UsualDay((UsualHour(0, 10, 80),))
    room = a_room("2026-12-01 12:00", cold, heats=(heat,))
    warm = (20, pytest.approx(kept(10, 80, 1228.0, 2338.8), abs=0.01))
    assert expected(room, "2026-12-03 04:00") == warm
    assert expected(room, "2026-12-03 07:59") == warm
    assert expected(room, "2026-12-03 03:59") == (10, 80)
    assert expected(room, "2026-12-03 08:00") == (10, 80)
    assert expected(room, "2026-12-04 05:00") == (10, 80), "once is not every night"


def test_a_heater_in_a_room_without_a_usual_day_warms_what_was_read():
    heat = Heat(on("2026-12-01 13:00"), on("2026-12-01 20:00"), 20.0)
    room = a_room("2026-12-01 12:00", heats=(heat,), air=Air(10, 80))
    assert expected(room, "2026-12-01 12:30") == (10, 80)
    warm = kept(10, 80, 1228.0, 2338.8)
    assert expected(room, "2026-12-01 15:00") == (20, pytest.approx(warm, abs=0.01))
    assert span_at(room, "2026-12-01 15:00").known is Known.USUAL


def test_a_room_that_was_never_read_is_not_drawn_through_fifty_years():
    heat = Heat(on("2026-12-03 04:00"), on("2026-12-03 08:00"), 20.0)
    room = RoomAir((), None, 1, (COOL_DAY,), (heat,), BERLIN)
    assert len(room.course.spans) < 1000
    assert expected(room, "2026-12-03 06:00")[0] == 20
    assert expected(room, "2026-12-04 06:00") == (8, 80)
    assert span_at(room, "2026-12-04 06:00").known is Known.USUAL


# --- water ------------------------------------------------------------------------------------


def test_where_no_humidity_is_given_the_water_before_it_stays():
    """20 °C and 50 % hold 1169.4 Pa: 68.57 % at 15 °C, 95.23 % at 10 °C, dew at 0 °C."""
    day = UsualDay(
        (
            UsualHour(0, 20, 50),
            UsualHour(6 * 60, 15),
            UsualHour(12 * 60, 10),
            UsualHour(18 * 60, 0),
        )
    )
    room = a_room("2026-12-01 12:00", day)
    assert expected(room, "2026-12-03 06:00")[1] == pytest.approx(68.57, abs=0.01)
    assert expected(room, "2026-12-03 12:00")[1] == pytest.approx(95.23, abs=0.01)
    assert expected(room, "2026-12-03 18:00")[1] == 100.0


def test_before_the_first_humidity_of_a_day_the_last_one_of_the_day_before_stays():
    day = UsualDay((UsualHour(6 * 60, 15), UsualHour(18 * 60, 20, 50)))
    room = a_room("2026-12-01 12:00", day)
    assert expected(room, "2026-12-03 06:00")[1] == pytest.approx(68.57, abs=0.01)


def test_where_a_day_gives_none_the_water_that_was_read_stays():
    day = UsualDay((UsualHour(6 * 60, 10), UsualHour(14 * 60, 15)))
    room = a_room("2026-12-01 12:00", day, air=Air(20, 50))
    assert expected(room, "2026-12-03 06:00")[1] == pytest.approx(95.23, abs=0.01)
    assert expected(room, "2026-12-03 14:00")[1] == pytest.approx(68.57, abs=0.01)


# --- the nights on which the clock is put on and back -----------------------------------------

HOURLY = UsualDay(tuple(UsualHour(60 * hour, 10 + hour / 4, 60) for hour in range(24)))


@pytest.mark.parametrize(
    ("day", "next_day", "hours"),
    [("2026-03-29", "2026-03-30", 23), ("2026-10-25", "2026-10-26", 25)],
)
def test_a_day_has_as_many_hours_as_pass(day, next_day, hours):
    """In Berlin 29 March 2026 has 23 hours and 25 October 25 (IANA time zone database)."""
    read = (datetime.fromisoformat(day) - timedelta(days=3)).strftime("%Y-%m-%d 12:00")
    room = a_room(read, HOURLY)
    drawn = list(room.course.between(on(day), on(next_day)))
    assert sum((span.end - span.start) / HOUR for span in drawn) == pytest.approx(hours)
    assert all(one.end == other.start for one, other in pairwise(drawn))
    for hour in (0, 1, 3, 4, 12, 23):
        assert expected(room, f"{day} {hour:02}:00")[0] == 10 + hour / 4


@pytest.mark.parametrize(
    ("day", "hours"), [("2026-03-28", 4), ("2026-03-29", 3), ("2026-10-25", 5)]
)
def test_drying_goes_by_the_hours_that_pass(day, hours):
    """Heated from one to five on the wall, at the label's air; at 3 °C a film gains a quarter."""
    night = UsualDay((UsualHour(0, 3, 50),), heated=(60, 300), heated_c=23.0)
    read = (datetime.fromisoformat(day) - timedelta(days=3)).strftime("%Y-%m-%d 12:00")
    met = AirMet((Leg(a_room(read, night), on(f"{day} 01:00"), None),))
    counting = Counting(law(Mechanism.OXIDATION), Clock.WAIT)
    over = reach(hours + 1, met, counting).moment
    assert over == on(f"{day} 05:00") + 4 * HOUR


def test_a_time_on_the_wall_that_does_not_occur_leaves_no_gap_and_no_overlap():
    """On 29 March 2026 there is no half past two."""
    day = UsualDay((UsualHour(60, 8, 60), UsualHour(150, 9, 60), UsualHour(180, 10, 60)))
    spans = a_room("2026-03-26 12:00", day).course.spans
    assert all(one.end == other.start for one, other in pairwise(spans))
    assert all(one.start < one.end for one in spans[:-1])


# --- far ahead --------------------------------------------------------------------------------


def test_two_months_ahead_it_may_be_anything_from_the_coldest_to_the_warmest():
    """Our own rule: no day is drawn then; waits suppose the coldest, windows the warmest."""
    room = a_room("2026-12-01 12:00", WINTER, SUMMER, BETWEEN)
    assert len(span_at(room, "2027-01-29 12:00").airs) == 1
    far = span_at(room, "2027-02-01 12:00")
    assert far.end is None
    assert {air.temperature_c for air in far.airs} == {6, 22}
    of = law(Mechanism.OXIDATION, Air(14, 50))
    assert Counting(of, Clock.WAIT).pace(far) == pytest.approx(2 ** ((6 - 14) / 10))
    assert Counting(of, Clock.WINDOW).pace(far) == pytest.approx(2 ** ((22 - 14) / 10))


def test_it_may_be_as_warm_as_it_is_heated():
    heated = UsualDay((UsualHour(0, 10, 80),), heated=(0, 60), heated_c=20.0)
    far = span_at(a_room("2026-12-01 12:00", heated), "2027-03-01 12:00")
    assert {air.temperature_c for air in far.airs} == {10, 20}


# --- a film in it -----------------------------------------------------------------------------


def recoat_h(story: Story, hour: float = 1.0) -> float:
    return hours_until(story.state(hour).top.stage(Stage.RECOAT).high)


def cold_shop() -> Story:
    """A varnished door in a shed that is 13 °C on a usual day, read once."""
    story = Story()
    story.part()
    story.usual(UsualDay((UsualHour(0, 13, 60),)))
    story.read(0, 13, 60)
    story.coat(0, VARNISH)
    return story


def test_a_film_dries_by_the_usual_day_and_says_so():
    """Varnish takes 24 to 48 h at 23 °C; at 13 °C it goes at half the pace."""
    story = cold_shop()
    wait = story.state(1).top.stage(Stage.RECOAT)
    assert hours_until(wait.high) == pytest.approx(2 * 48)
    assert wait.known
    assert wait.hours.held == pytest.approx(6)
    assert wait.hours.usual == pytest.approx(90)
    assert wait.hours.unknown == 0


def test_a_heater_for_ten_hours_saves_ten():
    """Ten hours at the label's 23 °C count twice as much as at 13 °C."""
    story = cold_shop()
    story.heat(30, 40, 23.0)
    assert recoat_h(story, 30) == pytest.approx(2 * 48 - 10)


def test_a_heater_told_of_beforehand_counts_before_it_runs():
    story = cold_shop()
    story.heat(30, 40, 23.0)
    assert recoat_h(story, 29.9) == pytest.approx(2 * 48), "not told of yet"
    assert recoat_h(story, 30.1) == pytest.approx(2 * 48 - 10), "it still has ten hours to run"


# --- properties -------------------------------------------------------------------------------

hours_of_day = st.lists(
    st.builds(UsualHour, st.integers(0, 1439), st.floats(-5, 35), st.none() | st.floats(20, 99)),
    max_size=5,
    unique_by=lambda hour: hour.minute,
).map(lambda hours: tuple(sorted(hours, key=lambda hour: hour.minute)))
minutes = st.integers(0, 1439)
months = st.integers(1, 12)
usual_days = st.builds(
    UsualDay,
    hours_of_day,
    st.none() | st.tuples(months, months),
    st.none() | st.tuples(minutes, minutes),
    st.none() | st.floats(10, 28),
)


# Begins, runs (hours), °C.
HEATS = st.lists(
    st.tuples(st.floats(-300, 600), st.floats(0.5, 60), st.none() | st.floats(5, 28)), max_size=3
)


@examples(40)
@given(
    st.lists(usual_days, max_size=3),
    HEATS,
    st.lists(st.floats(-2000, 200), max_size=4, unique=True),
    st.integers(0, 364),
)
def test_the_air_of_all_time_has_no_gap_and_no_overlap(usual, heats, readings, day):
    """Whatever was told of days, seasons and heaters, also where the clock is put on or back."""
    start = on("2026-01-01 12:00") + timedelta(days=day)
    room = RoomAir(
        tuple(AirPoint(start + hour * HOUR, 12, 60) for hour in sorted(readings)),
        None,
        1,
        tuple(usual),
        tuple(
            Heat(start + begins * HOUR, start + (begins + runs) * HOUR, warm)
            for begins, runs, warm in heats
        ),
        BERLIN,
    )
    spans = room.course.spans
    assert spans[-1].end is None
    assert all(one.end == other.start for one, other in pairwise(spans))
    assert all(one.start < one.end for one in spans[:-1])
    for span in spans:
        assert (span.known is Known.UNKNOWN) or span.airs
        assert not span.ends or len(span.ends) == len(span.airs)
        assert all(0 <= air.humidity_pct <= 100 for air in (*span.airs, *span.ends))


# --- said anew --------------------------------------------------------------------------------


def test_a_heater_that_was_said_to_stay_off_is_off_tonight_and_was_on_till_then():
    told = on("2026-12-10 21:00")
    hours = (UsualHour(0, 5, 70),)
    was = UsualDay(hours, heated=(18 * 60, 10 * 60), heated_c=18, replaced_at=told)
    room = a_room("2026-12-10 12:00", was, UsualDay(hours, valid_from=told))
    assert expected(room, "2026-12-10 20:30")[0] == 18
    assert expected(room, "2026-12-10 23:00")[0] == 5
    assert expected(room, "2026-12-11 02:00")[0] == 5


def test_nights_called_colder_than_any_usual_hour_count_too():
    """Both were said by the person: the colder is believed."""
    told = a_room("2026-12-10 12:00", UsualDay((UsualHour(0, 14, 60),)))
    room = RoomAir(told.readings, 2.0, told.id, told.usual, told.heats, told.zone)
    assert coldest_ahead(room, on("2026-12-10 20:00"), timedelta(hours=12)) == 2.0
