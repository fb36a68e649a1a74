"""Time, whatever is typed, wherever the shop is and whenever the clocks change."""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from hypothesis import assume, example, given
from hypothesis import strategies as st

from finishlog.cli.typed.times.moments import due_moment, moment
from finishlog.core.log.shown_times import closes_at, happened, wait_until, wait_words
from finishlog.core.log.when import Sureness
from finishlog.core.shop.hours import (
    ShopHours,
    WeeklyHours,
    intervals,
    is_open,
    next_opening,
    open_minutes,
)
from finishlog.errors import UsageFault

# Half-hour and 45-minute offsets, a half-hour summer time, the southern hemisphere, and none.
ZONES = st.sampled_from(
    [
        *("Europe/London", "Europe/Berlin", "America/New_York", "America/St_Johns"),
        *("Asia/Kathmandu", "Australia/Lord_Howe", "Pacific/Auckland", "UTC"),
    ]
).map(ZoneInfo)
# Near a change of 2026 as often as not: US 8 Mar and 1 Nov, EU 29 Mar and 25 Oct, NZ 4 Apr and
# 26 Sep, all in UTC days (IANA tz database).
CHANGES = st.sampled_from(
    [date(2026, *d) for d in ((3, 8), (3, 29), (4, 4), (9, 26), (10, 3), (10, 25), (11, 1))]
)
NEAR_CHANGES = st.builds(
    lambda day, minutes: datetime.combine(day, time(), UTC) + timedelta(minutes=minutes),
    CHANGES,
    st.integers(-2 * 24 * 60, 3 * 24 * 60),
)
MOMENTS = NEAR_CHANGES | st.datetimes(
    *(datetime.combine(date(year, 1, 1), time()) for year in (2026, 2028)), timezones=st.just(UTC)
)
SPANS = st.timedeltas(timedelta(minutes=1), timedelta(days=20))
WEEKLY = st.builds(WeeklyHours, st.integers(0, 6), st.integers(0, 1439), st.integers(0, 1440))
WEEKS = st.lists(WEEKLY, max_size=6).map(tuple)
START = datetime(2020, 1, 1, tzinfo=UTC)


def shop(week: tuple[WeeklyHours, ...], zone: ZoneInfo) -> ShopHours:
    return ShopHours(((START, week),), zone.key)


@given(WEEKS, ZONES, MOMENTS, SPANS)
def test_openings_are_apart_and_in_order(week, zone, start, span):
    found = intervals(shop(week, zone), start, start + span)
    ends = [end for pair in found for end in pair]
    assert ends == sorted(set(ends))
    assert all(start <= end <= start + span for end in ends)


@given(WEEKS, ZONES, MOMENTS)
def test_the_shop_is_open_by_the_clock_on_its_wall(week, zone, moment_):
    local = moment_.astimezone(zone)
    # Where the hour occurs twice the shop stays open through both: tested by hand elsewhere.
    assume(local.replace(fold=0).utcoffset() == local.replace(fold=1).utcoffset())
    minute = local.hour * 60 + local.minute
    day, before = local.weekday(), (local.weekday() - 1) % 7
    said = any(
        (h.weekday == day and h.opens_min <= minute < h.ends_min)
        or (h.weekday == before and minute < h.ends_min - 1440)
        for h in week
    )
    assert is_open(shop(week, zone), moment_) is said


@given(WEEKS, st.integers(-11, 12), MOMENTS)
def test_another_zone_with_the_same_instants_changes_nothing(week, offset, start):
    def moved(hours: WeeklyHours) -> WeeklyHours:
        opens = hours.weekday * 1440 + hours.opens_min + offset * 60
        closes = hours.closes_min + offset * 60
        return WeeklyHours(opens // 1440 % 7, opens % 1440, closes % 1440)

    at_home = ShopHours(((START, week),), "UTC")
    # POSIX names count westward: Etc/GMT-3 is three hours ahead.
    away = ShopHours(((START, tuple(map(moved, week))),), f"Etc/GMT{-offset:+d}")
    end = start + timedelta(days=20)
    assert intervals(at_home, start, end) == intervals(away, start, end)
    assert open_minutes(at_home, start, end) == open_minutes(away, start, end)


@given(WEEKS, WEEKLY, ZONES, MOMENTS, SPANS)
def test_more_hours_never_shut_the_shop(week, extra, zone, start, span):
    end = start + span
    fewer, more = (intervals(shop(each, zone), start, end) for each in (week, (*week, extra)))
    assert all(any(a <= opens and closes <= b for a, b in more) for opens, closes in fewer)


@given(WEEKS, ZONES, MOMENTS)
def test_the_next_opening_is_the_first_moment_that_is_open_after_one_that_is_not(
    week, zone, moment_
):
    hours = shop(week, zone)
    opens = next_opening(hours, moment_)
    assume(opens is not None)
    assert opens > moment_
    assert is_open(hours, opens)
    assert not is_open(hours, opens - timedelta.resolution)


@given(ZONES, MOMENTS, SPANS)
def test_elapsed_time_is_wall_time_only_while_the_clocks_stand_still(zone, start, span):
    local = start.astimezone(zone)
    elapsed = (start + span).astimezone(zone)
    naive = local + span  # wall arithmetic
    same = elapsed.replace(tzinfo=None) == naive.replace(tzinfo=None)
    assert same == (local.utcoffset() == elapsed.utcoffset())


def _instant(shown: str, now: datetime, zone: ZoneInfo) -> datetime:
    """Read back a shown time by hand: `23:00`, `Wed 14:30`, `Sun 01:30+01:00`."""
    *weekday, clock = shown.split()
    day = now.astimezone(zone).date()
    while weekday and f"{day:%a}" != weekday[0]:
        day += timedelta(days=1)
    offset = clock[5:]
    if offset:
        return datetime.fromisoformat(f"{day} {clock}")
    return datetime.fromisoformat(f"{day} {clock}").replace(tzinfo=zone).astimezone(UTC)


@given(ZONES, MOMENTS, st.timedeltas(timedelta(seconds=1), timedelta(days=3)))
def test_a_wait_is_never_shown_earlier_nor_half_an_hour_later(zone, now, wait):
    shown = _instant(wait_until(now + wait, now, zone), now, zone)
    assert now + wait <= shown < now + wait + timedelta(minutes=30)


@given(ZONES, MOMENTS, st.timedeltas(timedelta(minutes=31), timedelta(days=3)))
def test_a_closing_is_never_shown_later_nor_half_an_hour_earlier(zone, now, left):
    shown = _instant(closes_at(now + left, now, zone), now, zone)
    assert now + left - timedelta(minutes=30) < shown <= now + left


@given(ZONES, MOMENTS, st.timedeltas(timedelta(days=3, seconds=1), timedelta(days=150)))
def test_a_far_wait_is_over_when_its_day_begins_and_a_far_closing_lasts_its_day(zone, now, away):
    then = now + away
    day = then.astimezone(zone).date()
    first = (then - timedelta.resolution).astimezone(zone).date() + timedelta(days=1)
    assert wait_until(then, now, zone) == f"{first:%a} {first.day} {first:%b}"
    last = day - timedelta(days=1)
    assert closes_at(then, now, zone) == f"{last:%a} {last.day} {last:%b}"
    begins = datetime.combine(first, time(), zone).astimezone(UTC)
    ends = datetime.combine(day, time(), zone).astimezone(UTC)
    assert ends <= then <= begins


def _length(words: str) -> timedelta:
    number, unit = words.split()[-2:]
    return float(number) * {"min": timedelta(minutes=1), "h": timedelta(hours=1)}.get(
        unit, timedelta(days=1)
    )


@given(st.timedeltas(timedelta(seconds=1), timedelta(days=400)))
def test_a_wait_is_never_said_too_short(length):
    assert _length(wait_words(length)) >= length


@given(ZONES, MOMENTS, st.integers(0, 10 * 24 * 60))
def test_minutes_ago_are_elapsed_minutes(zone, now, minutes):
    when = moment(f"{minutes}m ago", now, zone)
    assert when.earliest == when.latest == now - timedelta(minutes=minutes)


@given(ZONES, MOMENTS, st.timedeltas(timedelta(), timedelta(days=400)))
def test_a_moment_written_with_its_offset_is_read_as_written(zone, now, ago):
    then = (now - ago).replace(microsecond=0)
    assert moment(then.astimezone(zone).isoformat(), now, zone).earliest == then


@given(ZONES, MOMENTS, st.timedeltas(timedelta(), timedelta(days=400)))
def test_a_wall_time_is_read_as_one_instant_or_refused(zone, now, ago):
    wall = f"{(now - ago).astimezone(zone):%Y-%m-%d %H:%M}"
    try:
        when = moment(wall, now, zone)
    except UsageFault as fault:
        assert "came twice" in fault.message  # noqa: PT017
    else:
        assert when.sureness is Sureness.EXACT
        assert f"{when.earliest.astimezone(zone):%Y-%m-%d %H:%M}" == wall


WORDS = st.lists(
    st.sampled_from(
        [
            *("yesterday", "today", "tomorrow", "mon", "sunday", "last", "next", "this", "in"),
            *("evening", "night", "tonight", "noon", "morning", "about", "at", "ago", "the"),
            *("19:30", "01:30", "7pm", "19.30", "10/11", "24.11.", "2h", "30m", "2 days", "week"),
            *("24 nov", "nov 24", "29 feb", "2026-10-25", "2026", "a", "an hour", "half", "now"),
        ]
    ),
    max_size=4,
).map(" ".join)


@given(WORDS | st.text(max_size=30), ZONES, MOMENTS)
@example("2026-10-25 01:30+99:99", ZoneInfo("UTC"), START)
@example("²h ago", ZoneInfo("UTC"), START)
@example("٣h ago", ZoneInfo("UTC"), START)
def test_whatever_is_typed_is_a_time_by_now_or_one_line_of_refusal(text, zone, now):
    try:
        when = moment(text, now, zone)
    except UsageFault as fault:
        assert fault.hint  # noqa: PT017
        assert "\n" not in fault.message + fault.hint  # noqa: PT017
    else:
        assert when.earliest <= when.latest <= now
        assert when.earliest.tzinfo is UTC
        assert happened(when, now, zone)


@given(WORDS | st.text(max_size=30), ZONES, MOMENTS)
def test_whatever_is_due_is_due_in_time_to_come_or_refused(text, zone, now):
    try:
        due = due_moment(text, now, zone)
    except UsageFault as fault:
        assert fault.hint  # noqa: PT017
    else:
        assert due >= now
