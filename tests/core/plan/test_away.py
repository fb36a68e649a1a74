"""Being away: the shop is shut from leaving until coming back, whatever the week says.

Berlin cases: worked by hand against zoneinfo (IANA tz database, 2026 rules). Shop hours in them
are Monday to Friday 18:00-21:00 and Saturday 09:00-17:00.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from finishlog.core.shop.hours import ShopHours, intervals, is_open, next_opening, open_minutes
from tests.core.shop.test_shop_hours import EVENINGS, berlin, earliest_start, hours, minutes, utc

WEEK = (berlin("2026-03-02 00:00"), berlin("2026-03-09 00:00"))


def away(*spans: tuple[str, str]) -> ShopHours:
    """Go away for some spans of Berlin wall time."""
    return replace(EVENINGS, away=tuple((berlin(since), berlin(until)) for since, until in spans))


def spans(hours: ShopHours, start: datetime, end: datetime) -> list[tuple[str, str]]:
    zone = ZoneInfo("Europe/Berlin")
    return [
        (f"{a.astimezone(zone):%a %H:%M}", f"{b.astimezone(zone):%a %H:%M}")
        for a, b in intervals(hours, start, end)
    ]


def test_two_days_away_are_two_evenings_shut():
    trip = away(("2026-03-03 12:00", "2026-03-05 12:00"))
    assert [opens for opens, _ in spans(trip, *WEEK)] == [
        "Mon 18:00",
        "Thu 18:00",
        "Fri 18:00",
        "Sat 09:00",
    ]
    assert is_open(trip, berlin("2026-03-03 19:00")) is False
    assert is_open(trip, berlin("2026-03-05 19:00")) is True


def test_leaving_in_the_middle_of_an_evening_cuts_it_there():
    early = away(("2026-03-02 19:30", "2026-03-03 20:00"))
    assert spans(early, *WEEK)[:2] == [("Mon 18:00", "Mon 19:30"), ("Tue 20:00", "Tue 21:00")]


def test_an_hour_out_on_a_saturday_leaves_two_visits():
    errand = away(("2026-03-07 11:00", "2026-03-07 12:00"))
    assert spans(errand, *WEEK)[-2:] == [("Sat 09:00", "Sat 11:00"), ("Sat 12:00", "Sat 17:00")]
    # Three hours do not fit before the errand.
    assert earliest_start(errand, berlin("2026-03-07 09:00"), hours(3)) == berlin(
        "2026-03-07 12:00"
    )


def test_coming_back_is_an_opening():
    trip = away(("2026-03-02 12:00", "2026-03-03 19:00"))
    assert next_opening(trip, berlin("2026-03-02 10:00")) == berlin("2026-03-03 19:00")


def test_at_the_minute_of_coming_back_the_shop_is_open_again():
    trip = away(("2026-03-02 18:00", "2026-03-02 19:00"))
    assert is_open(trip, berlin("2026-03-02 18:00")) is False
    assert is_open(trip, berlin("2026-03-02 19:00")) is True


def test_away_spans_may_overlap_in_any_order():
    twice = away(("2026-03-02 19:00", "2026-03-02 20:30"), ("2026-03-02 18:30", "2026-03-02 19:30"))
    assert spans(twice, *WEEK)[:2] == [("Mon 18:00", "Mon 18:30"), ("Mon 20:30", "Mon 21:00")]


def test_shop_minutes_leave_out_what_is_away():
    trip = away(("2026-03-03 12:00", "2026-03-03 19:00"))
    start, end = berlin("2026-03-02 18:00"), berlin("2026-03-03 21:00")
    assert open_minutes(EVENINGS, start, end) == 360
    assert open_minutes(trip, start, end) == 300


def test_away_shuts_a_shop_whose_hours_are_unknown():
    unknown = ShopHours((), "Europe/Berlin", ((utc("2026-03-02 00:00"), utc("2026-03-03 00:00")),))
    assert is_open(unknown, utc("2026-03-02 19:00")) is False
    assert is_open(unknown, utc("2026-03-04 19:00")) is None
    assert next_opening(unknown, utc("2026-03-02 19:00")) is None


def test_nobody_comes_back_before_leaving():
    with pytest.raises(ValueError, match="comes back"):
        away(("2026-03-03 12:00", "2026-03-02 12:00"))


OFFSETS = st.integers(-600, 8 * 24 * 60)


@given(st.lists(st.tuples(OFFSETS, st.integers(0, 3000)), max_size=5), st.integers(0, 11_000))
def test_a_minute_is_open_when_the_week_says_so_and_nobody_is_away(trips, minute):
    start = WEEK[0]
    gone = tuple(
        (start + minutes(leaves), start + minutes(leaves + length)) for leaves, length in trips
    )
    hours_then, now = replace(EVENINGS, away=gone), start + minutes(minute)
    out = any(since <= now < until for since, until in gone)
    assert is_open(hours_then, now) is (not out and is_open(EVENINGS, now))


@given(st.lists(st.tuples(OFFSETS, st.integers(0, 3000)), max_size=5))
def test_openings_stay_in_order_apart_and_inside_the_week(trips):
    start = WEEK[0]
    gone = tuple(
        (start + minutes(leaves), start + minutes(leaves + length)) for leaves, length in trips
    )
    found = intervals(replace(EVENINGS, away=gone), *WEEK)
    usual = intervals(EVENINGS, *WEEK)
    for opens, closes in found:
        assert opens < closes
        assert any(a <= opens and closes <= b for a, b in usual)
    for (_, closes), (opens, _) in pairwise(found):
        assert closes < opens
    assert sum((b - a for a, b in found), timedelta()) <= sum(
        (b - a for a, b in usual), timedelta()
    )
