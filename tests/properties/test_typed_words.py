"""What people type for times and amounts, in every zone and over every clock change."""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from finishlog.cli.typed.figures.amounts import amount, cut, film, volume
from finishlog.cli.typed.figures.unclear import Unclear
from finishlog.cli.typed.times.durations import Hours, duration, hours, minutes
from finishlog.cli.typed.times.moments import due_moment, moment
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.when import Sureness
from finishlog.core.measure.units import Cut, Film, Volume, Weight, from_base, sign
from finishlog.errors import UsageFault

# A half-hour change, a day left out (30 December 2011), offsets of 45 minutes, changes at
# midnight (Havana, Beirut), the southern hemisphere.
ZONES = st.sampled_from(
    [
        *("Europe/Berlin", "America/New_York", "Australia/Lord_Howe", "Asia/Kathmandu"),
        *("Pacific/Apia", "America/Havana", "Asia/Beirut", "America/St_Johns", "UTC"),
    ]
).map(ZoneInfo)
# Days of changes in those zones (IANA tz database), and any day.
CHANGES = st.sampled_from(
    [
        *(date(2026, *d) for d in ((3, 8), (3, 28), (3, 29), (4, 5), (10, 4), (10, 25), (11, 1))),
        *(date(2011, *d) for d in ((12, 29), (12, 30), (12, 31))),
    ]
)
DAYS = CHANGES | st.dates(date(2008, 1, 1), date(2030, 1, 1))
CLOCKS = st.times().map(lambda t: t.replace(second=0, microsecond=0))
LATER = st.timedeltas(timedelta(hours=30), timedelta(days=100))


def shown_instants(wall: datetime, zone: ZoneInfo) -> set[datetime]:
    """Every instant within two days at which a clock on the wall shows a time, found by search."""
    around = datetime.combine(wall.date(), wall.time(), UTC)
    quarters = (around + timedelta(minutes=15 * n) for n in range(-200, 200))
    return {i for i in quarters if i.astimezone(zone).replace(tzinfo=None) == wall}


@given(DAYS, CLOCKS.filter(lambda t: t.minute % 15 == 0), ZONES, LATER)
def test_a_wall_time_is_every_instant_at_which_a_clock_shows_it(day, clock, zone, later):
    wall = datetime.combine(day, clock)
    instants = shown_instants(wall, zone)
    now = wall.replace(tzinfo=zone).astimezone(UTC) + later
    typed = f"{wall:%Y-%m-%d %H:%M}"
    try:
        when = moment(typed, now, zone)
    except Unclear as fault:
        assert len(instants) != 1
        meant = {moment(each, now, zone).earliest for each in fault.choices.values()}
        assert len(meant) == len(fault.choices)  # noqa: PT017
        assert meant == instants if instants else len(meant) == 1
    else:
        assert instants == {when.earliest}
        assert when.sureness is Sureness.EXACT


# Where the clocks were put forward, from when, and by how many minutes (IANA tz database).
SKIPPED = st.sampled_from(
    [
        ("Europe/Berlin", "2026-03-29 02:00", 60),
        ("America/New_York", "2026-03-08 02:00", 60),
        ("Australia/Lord_Howe", "2026-10-04 02:00", 30),
        ("America/Havana", "2026-03-08 00:00", 60),
        ("Asia/Beirut", "2026-03-29 00:00", 60),
        ("Asia/Kathmandu", "1986-01-01 00:00", 15),
        ("Pacific/Apia", "2011-12-30 00:00", 24 * 60),
    ]
)


@given(SKIPPED, st.floats(0, 1, exclude_max=True), LATER)
def test_a_time_that_the_clocks_skipped_is_offered_as_the_one_they_went_on_to(case, share, later):
    name, begins, gap = case
    zone, wall = (
        ZoneInfo(name),
        datetime.fromisoformat(begins) + timedelta(minutes=int(share * gap)),
    )
    now = wall.replace(tzinfo=zone).astimezone(UTC) + later
    with pytest.raises(Unclear, match="the clocks skipped") as fault:
        moment(f"{wall:%Y-%m-%d %H:%M}", now, zone)
    [clear] = fault.value.choices.values()
    assert clear in fault.value.hint
    shown = moment(clear, now, zone).earliest.astimezone(zone)
    assert shown.replace(tzinfo=None) == wall + timedelta(minutes=gap)


def test_a_day_that_a_zone_left_out_is_refused_with_the_next():
    # Samoa moved over the date line: 29 December 2011 was followed by the 31st.
    now, zone = datetime(2012, 1, 2, tzinfo=UTC), ZoneInfo("Pacific/Apia")
    for typed in ("2011-12-30", "30 Dec 2011", "evening 30 Dec 2011"):
        with pytest.raises(UsageFault, match="left out") as fault:
            moment(typed, now, zone)
        assert fault.value.hint == "type 2011-12-31"


@given(DAYS, ZONES, st.integers(0, 239))
def test_between_midnight_and_four_the_evening_is_the_one_before(day, zone, minutes_past):
    midnight = datetime.combine(day, time(), zone).astimezone(UTC)
    now = midnight + timedelta(minutes=minutes_past)
    assume(now.astimezone(zone).date() == day and now.astimezone(zone).hour < 4)
    # The day before must be one that the zone had.
    assume((midnight - timedelta(hours=6)).astimezone(zone).date() == day - timedelta(days=1))
    evening = moment("yesterday evening", now, zone)
    assert moment("this evening", now, zone) == evening
    assert evening.latest <= now
    assert evening.earliest.astimezone(zone).date() == day - timedelta(days=1)
    assert now - evening.earliest < timedelta(hours=11)


@given(st.integers(1, 12), st.integers(0, 59), DAYS, ZONES)
def test_an_hour_on_a_clock_face_is_read_as_the_part_of_the_day_says(hour, minute, day, zone):
    now = datetime.combine(day, time(23), zone).astimezone(UTC)
    assume(now.astimezone(zone).hour == 23)
    typed = f"this evening {hour}:{minute:02}"
    if 6 <= hour < 10 or (hour == 10 and minute == 0):
        wall = datetime.combine(day, time(hour + 12, minute), zone)
        assert moment(typed, now, zone).earliest == wall.astimezone(UTC)
    else:
        with pytest.raises(UsageFault, match="not in the evening"):
            moment(typed, now, zone)


@given(
    st.sampled_from(["9", "half 9", "half past nine", "quarter to 9", "yesterday 9"]), DAYS, ZONES
)
def test_every_reading_that_is_offered_is_read_or_still_to_come(typed, day, zone):
    now = datetime.combine(day, time(12), zone).astimezone(UTC)
    with pytest.raises(Unclear) as fault:
        moment(typed, now, zone)
    for each in fault.value.choices.values():
        assert moment(each, now, zone, future=True).sureness is Sureness.EXACT


@given(DAYS, st.integers(1, 24), ZONES)
def test_months_step_the_calendar_and_end_on_the_last_day_of_a_short_one(day, months, zone):
    now = datetime.combine(day, time(12), zone).astimezone(UTC)
    assume(now.astimezone(zone).date() == day)
    month = day.month - 1 + months
    year, month = day.year + month // 12, month % 12 + 1
    last = (date(year + month // 12, month % 12 + 1, 1) - timedelta(days=1)).day
    due = due_moment(f"in {months} months", now, zone).astimezone(zone)
    assume(due.date() != date(2011, 12, 29))  # the eve of the day that Apia left out
    assert due.date() == date(year, month, min(day.day, last))


@given(st.timedeltas(timedelta(minutes=1), timedelta(days=300)))
def test_a_duration_that_was_echoed_can_be_typed_back(length):
    whole = timedelta(minutes=length // timedelta(minutes=1))
    assert duration(length_words(whole)) == whole


@given(st.floats(0.1, 2000))
def test_a_label_figure_typed_with_an_insisting_sign_is_the_same_figure(figure):
    typed = f"{figure:.2f}h"
    assert hours(f"{typed}!") == Hours(*(pytest.approx(float(typed[:-1])),) * 2)


def grams(typed: str) -> float | None:
    return amount(typed).weight_g


AMOUNTS = st.one_of(
    st.tuples(st.just(volume), st.sampled_from(Volume), st.floats(0.001, 40)),
    st.tuples(st.just(grams), st.sampled_from(Weight), st.floats(1, 40e3)),
    st.tuples(st.just(film), st.sampled_from(Film), st.floats(6, 400)),
    st.tuples(st.just(cut), st.sampled_from(Cut), st.floats(40, 700)),
)


@given(AMOUNTS)
def test_an_amount_is_read_in_every_unit_by_its_sign(case):
    read, unit, base = case
    number = f"{from_base(base, unit):.4g}"
    assume("e" not in number and len(number.partition(".")[2]) <= 4)
    # A pint alone is asked about.
    said = "US pt" if unit is Volume.US_PINT else sign(unit)
    assert read(f"{number} {said}") == pytest.approx(base, rel=6e-4)


@given(
    st.text(max_size=20)
    | st.from_regex(r"[0-9.,/ ½-]{1,6} ?(oz|ml|g|lb|h|m|d|!)?!?", fullmatch=True)
)
def test_whatever_is_typed_is_an_amount_or_one_line_of_refusal(text):
    for read in (volume, amount, film, cut, duration, hours, minutes):
        try:
            read(text)
        except UsageFault as fault:
            assert fault.hint  # noqa: PT017
            assert "\n" not in fault.message + fault.hint  # noqa: PT017
