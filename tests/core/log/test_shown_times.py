"""A wait is never shown shorter than it is, nor a closing later."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from finishlog.core.log.shown_times import (
    clock_words,
    closes_at,
    happened,
    is_ambiguous,
    length_words,
    wait_until,
    wait_words,
)
from finishlog.core.log.when import Sureness, When, at
from tests.rows import every_row

LONDON = ZoneInfo("Europe/London")
NOW = datetime(2026, 11, 24, 21, 5, tzinfo=LONDON)  # a Tuesday; GMT


def local(text: str, fold: int = 0) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=LONDON, fold=fold).astimezone(UTC)


@every_row(
    ("dry", "shown"),
    [
        ("2026-11-24 22:31", "23:00"),
        ("2026-11-24 23:00", "23:00"),
        ("2026-11-24 23:40", "Wed 00:00"),
        ("2026-11-25 14:05", "Wed 14:30"),
        ("2026-11-27 21:05", "Fri 21:30"),
        # Beyond three days the day: dry on Friday at 22:00 is shown as from Saturday.
        ("2026-11-27 22:00", "Sat 28 Nov"),
        ("2026-12-05 00:00", "Sat 5 Dec"),
        ("2026-12-04 00:01", "Sat 5 Dec"),
        ("2027-12-04 12:00", "Sun 5 Dec 2027"),
        ("2026-11-24 21:05", "now"),
        ("2026-11-20 09:00", "now"),
    ],
)
def test_a_wait_is_rounded_up(dry, shown):
    assert wait_until(local(dry), NOW, LONDON) == shown


@every_row(
    ("closes", "shown"),
    [
        ("2026-11-24 23:59", "23:30"),
        ("2026-11-25 21:00", "Wed 21:00"),
        ("2026-11-24 21:29", "within the half hour"),
        ("2026-11-24 21:30", "21:30"),
        # Beyond three days the day: closing on Saturday at noon is shown as to Friday's end.
        ("2026-12-05 12:00", "Fri 4 Dec"),
        ("2026-12-05 00:00", "Fri 4 Dec"),
        # What has closed says when.
        ("2026-11-24 20:59", "20:30"),
        ("2026-11-20 20:59", "Fri 20:30"),
        ("2026-11-10 20:59", "Tue 10 Nov 20:30"),
    ],
)
def test_a_closing_is_rounded_down(closes, shown):
    assert closes_at(local(closes), NOW, LONDON) == shown


def test_the_offset_is_shown_only_where_an_hour_occurs_twice():
    evening = local("2026-10-24 22:00")
    first, second = local("2026-10-25 01:10"), local("2026-10-25 01:10", fold=1)
    assert wait_until(first, evening, LONDON) == "Sun 01:30+01:00"
    assert wait_until(second, evening, LONDON) == "Sun 01:30+00:00"
    # The half hour after 01:40 summer time is 01:00 winter time.
    assert wait_until(local("2026-10-25 01:40"), evening, LONDON) == "Sun 01:00+00:00"
    assert closes_at(second, evening, LONDON) == "Sun 01:00+00:00"
    assert is_ambiguous(first, LONDON)
    assert not is_ambiguous(local("2026-10-25 02:00"), LONDON)
    assert not is_ambiguous(local("2026-03-29 02:30"), LONDON)


@pytest.mark.parametrize(
    ("zone", "coat", "shown"),
    [
        ("America/New_York", "2026-10-31 22:00", "Sun 09:00"),
        ("America/New_York", "2026-03-07 22:00", "Sun 11:00"),
        ("Europe/London", "2026-10-24 22:00", "Sun 09:00"),
        ("Europe/London", "2026-03-28 22:00", "Sun 11:00"),
    ],
)
def test_twelve_hours_over_a_clock_change(zone, coat, shown):
    # Worked by hand against zoneinfo: drying counts elapsed hours, the wall clock jumps.
    here = ZoneInfo(zone)
    start = datetime.fromisoformat(coat).replace(tzinfo=here)
    dry = start.astimezone(UTC) + timedelta(hours=12)
    assert wait_until(dry, start, here) == shown


def test_what_happened_is_shown_as_it_was_understood():
    def span(first: str, last: str, sureness: Sureness) -> When:
        return When(local(first), local(last), sureness)

    assert happened(at(local("2026-11-24 19:30")), NOW, LONDON) == "19:30"
    assert happened(at(local("2026-11-23 19:30")), NOW, LONDON) == "Mon 19:30"
    assert happened(at(local("2025-11-23 19:30")), NOW, LONDON) == "Sun 23 Nov 2025 19:30"
    about = span("2026-11-24 18:45", "2026-11-24 19:15", Sureness.ABOUT)
    assert happened(about, NOW, LONDON) == "about 18:45 to 19:15"
    evening = span("2026-11-23 18:00", "2026-11-23 22:00", Sureness.PART_OF_DAY)
    assert happened(evening, NOW, LONDON) == "Mon 18:00 to 22:00"
    night = span("2026-11-23 22:00", "2026-11-24 02:00", Sureness.PART_OF_DAY)
    assert happened(night, NOW, LONDON) == "Mon 22:00 to Tue 02:00"
    monday = span("2026-11-23 00:00", "2026-11-24 00:00", Sureness.PART_OF_DAY)
    assert happened(monday, NOW, LONDON) == "some time on Mon"
    long_ago = span("2026-10-05 00:00", "2026-10-06 00:00", Sureness.PART_OF_DAY)
    assert happened(long_ago, NOW, LONDON) == "some time on Mon 5 Oct"


def test_a_time_to_the_minute_is_not_rounded():
    assert clock_words(local("2026-11-24 21:06"), NOW, LONDON) == "21:06"


@every_row(
    ("minutes", "length", "wait"),
    [
        (0, "0 h", "0 h"),
        (10, "10 min", "30 min"),
        (30, "30 min", "30 min"),
        (45, "45 min", "1 h"),
        (90, "1.5 h", "1.5 h"),
        (105, "1 h 45 min", "2 h"),
        (180, "3 h", "3 h"),
        (48 * 60, "2 d", "2 d"),
        (50 * 60, "50 h", "50 h"),
        (73 * 60, "73 h", "4 d"),
        (96 * 60, "4 d", "4 d"),
    ],
)
def test_lengths_of_time(minutes, length, wait):
    elapsed = timedelta(minutes=minutes)
    assert (length_words(elapsed), wait_words(elapsed)) == (length, wait)


def test_what_is_over_leaves_nothing():
    assert wait_words(timedelta(hours=-3)) == "0 h"
