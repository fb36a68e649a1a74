"""When a piece is due, in the words that people type. It is Tuesday 24 November, 21:05."""

from __future__ import annotations

from datetime import datetime
from zoneinfo import ZoneInfo

import pytest

from finishlog.cli.typed.times.moments import due_moment
from finishlog.errors import UsageFault
from tests.rows import every_row

LONDON = ZoneInfo("Europe/London")
NOW = datetime(2026, 11, 24, 21, 5, tzinfo=LONDON)


@every_row(
    ("typed", "due"),
    [
        ("Sat 5 Dec", "2026-12-05 23:59"),
        ("by Sat 5 Dec", "2026-12-05 23:59"),
        ("2026-12-05", "2026-12-05 23:59"),
        ("2026-12-05 18:00", "2026-12-05 18:00"),
        ("in 10 days", "2026-12-04 23:59"),
        ("in a week", "2026-12-01 23:59"),
        ("in 3 weeks", "2026-12-15 23:59"),
        ("in a month", "2026-12-24 23:59"),
        ("in 3 months", "2027-02-24 23:59"),
        ("end of January", "2027-01-31 23:59"),
        ("end of Feb 2028", "2028-02-29 23:59"),
        ("end of the month", "2026-11-30 23:59"),
        ("end of nov", "2026-11-30 23:59"),
        ("end of the year", "2026-12-31 23:59"),
        ("fri", "2026-11-27 23:59"),
        ("next fri", "2026-11-27 23:59"),
        ("tue", "2026-11-24 23:59"),
        ("next tue", "2026-12-01 23:59"),
        ("tomorrow", "2026-11-25 23:59"),
        ("fri evening", "2026-11-27 22:00"),
        ("2 Jan", "2027-01-02 23:59"),
        ("today", "2026-11-24 23:59"),
    ],
)
def test_a_due_date_is_due_by_its_end(typed, due):
    assert f"{due_moment(typed, NOW, LONDON).astimezone(LONDON):%Y-%m-%d %H:%M}" == due


@pytest.mark.parametrize("typed", ["1 Nov", "2025-12-05", "19:00", "yesterday", "last fri"])
def test_a_due_date_that_is_past_is_refused(typed):
    with pytest.raises(UsageFault, match="is past") as fault:
        due_moment(typed, NOW, LONDON)
    assert fault.value.hint == "type a day to come, with its year: 2026-12-04"


@pytest.mark.parametrize("typed", ["10/12", "soon", "", "10 days", "Sun 5 Dec", "31 Nov"])
def test_a_due_date_with_no_one_reading_is_refused(typed):
    with pytest.raises(UsageFault):
        due_moment(typed, NOW, LONDON)


@pytest.mark.parametrize(
    ("typed_on", "typed", "due"),
    [
        # The Gregorian calendar: 2028 is a leap year, 2027 is none.
        ("2027-01-31", "in a month", "2027-02-28"),
        ("2028-01-31", "in a month", "2028-02-29"),
        ("2027-01-31", "in 2 months", "2027-03-31"),
        ("2028-02-29", "in a year", "2029-02-28"),
    ],
)
def test_a_month_from_the_thirty_first_is_the_last_day_of_a_short_month(typed_on, typed, due):
    now = datetime.fromisoformat(f"{typed_on} 12:00").replace(tzinfo=LONDON)
    assert f"{due_moment(typed, now, LONDON):%Y-%m-%d}" == due


def test_a_week_from_now_is_the_same_time_on_the_clock_over_a_clock_change():
    # Europe/London leaves summer time on 25 October 2026.
    now = datetime(2026, 10, 20, 9, 0, tzinfo=LONDON)
    due = due_moment("in 10 days 18:00", now, LONDON)
    assert f"{due.astimezone(LONDON):%Y-%m-%d %H:%M}" == "2026-10-30 18:00"


@pytest.mark.parametrize(
    "typed", ["before Christmas", "christmas", "next month", "in 5", "end of it"]
)
def test_a_due_date_that_cannot_be_read_says_what_to_type(typed):
    with pytest.raises(UsageFault, match="cannot read") as fault:
        due_moment(typed, NOW, LONDON)
    assert '"Sat 5 Dec"' in fault.value.hint
    assert '"in 3 weeks"' in fault.value.hint


@pytest.mark.parametrize("typed", ["in 3m", "in 3 m", "by in 3m"])
def test_three_m_to_come_are_minutes_or_months(typed):
    with pytest.raises(UsageFault, match="could be minutes or months") as fault:
        due_moment(typed, NOW, LONDON)
    assert fault.value.hint == "type in 3 months, or in 3min"


def test_due_at_nine_asks_which_nine():
    with pytest.raises(UsageFault, match="'9' could be 9:00 or 21:00") as fault:
        due_moment("fri 9", NOW, LONDON)
    assert fault.value.hint == "type fri 9:00 or fri 21:00"
