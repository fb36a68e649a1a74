"""When something happened, in the words that people type. It is Tuesday 24 November, 21:05."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from finishlog.cli.typed.times.moments import moment
from finishlog.core.log.when import Sureness, When
from finishlog.errors import UsageFault
from tests.rows import every_row

LONDON = ZoneInfo("Europe/London")
EXACT, ABOUT, PART = Sureness


def local(text: str, zone: ZoneInfo = LONDON) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=zone)


NOW = local("2026-11-24 21:05")
AFTER_MIDNIGHT = local("2026-11-25 01:00")


def read(typed: str, now: datetime = NOW) -> tuple[str, str, Sureness]:
    when = moment(typed, now, LONDON)
    assert when.earliest.tzinfo is UTC
    assert when.latest.tzinfo is UTC
    first, last = (
        f"{end.astimezone(LONDON):%Y-%m-%d %H:%M}" for end in (when.earliest, when.latest)
    )
    return first, last, when.sureness


def refused(typed: str, now: datetime = NOW, **options) -> tuple[str, str]:
    with pytest.raises(UsageFault) as fault:
        moment(typed, now, LONDON, **options)
    assert "\n" not in fault.value.message + fault.value.hint
    return fault.value.message, fault.value.hint


@every_row(
    ("typed", "meant"),
    [
        ("now", "2026-11-24 21:05"),
        ("19:30", "2026-11-24 19:30"),
        ("at 19:30", "2026-11-24 19:30"),
        ("7:30pm", "2026-11-24 19:30"),
        ("7.30 p.m.", "2026-11-24 19:30"),
        ("7 PM", "2026-11-24 19:00"),
        ("12am", "2026-11-24 00:00"),
        ("12pm", "2026-11-24 12:00"),
        ("19.30", "2026-11-24 19:30"),
        ("today 8:05", "2026-11-24 08:05"),
        ("yesterday 19:30", "2026-11-23 19:30"),
        ("19:30 yesterday", "2026-11-23 19:30"),
        ("yesterday 19.30", "2026-11-23 19:30"),
        ("day before yesterday 8am", "2026-11-22 08:00"),
        ("2 days ago 19:30", "2026-11-22 19:30"),
        ("last night 23:00", "2026-11-23 23:00"),
        ("last night 01:00", "2026-11-24 01:00"),
        ("this evening 19:30", "2026-11-24 19:30"),
    ],
)
def test_a_time_of_the_clock(typed, meant):
    assert read(typed) == (meant, meant, EXACT)


@every_row(
    ("typed", "meant"),
    [
        ("2h ago", "2026-11-24 19:05"),
        ("1.5h ago", "2026-11-24 19:35"),
        ("1h30 ago", "2026-11-24 19:35"),
        ("30m ago", "2026-11-24 20:35"),
        ("30min ago", "2026-11-24 20:35"),
        ("90 minutes ago", "2026-11-24 19:35"),
        ("an hour ago", "2026-11-24 20:05"),
        ("half an hour ago", "2026-11-24 20:35"),
        ("two hours ago", "2026-11-24 19:05"),
    ],
)
def test_so_long_ago_and_m_is_minutes(typed, meant):
    assert read(typed) == (meant, meant, EXACT)


@every_row(
    ("typed", "first", "last"),
    [
        ("this morning", "2026-11-24 06:00", "2026-11-24 12:00"),
        ("at lunch", "2026-11-24 12:00", "2026-11-24 14:00"),
        ("noon", "2026-11-24 12:00", "2026-11-24 14:00"),
        ("afternoon", "2026-11-24 12:00", "2026-11-24 18:00"),
        ("in the evening", "2026-11-24 18:00", "2026-11-24 21:05"),
        ("this evening", "2026-11-24 18:00", "2026-11-24 21:05"),
        ("tonight", "2026-11-24 18:00", "2026-11-24 21:05"),
        ("last night", "2026-11-23 18:00", "2026-11-24 02:00"),
        ("yesterday evening", "2026-11-23 18:00", "2026-11-23 22:00"),
        ("mon evening", "2026-11-23 18:00", "2026-11-23 22:00"),
        ("fri night", "2026-11-20 22:00", "2026-11-21 02:00"),
        ("evening 20 nov", "2026-11-20 18:00", "2026-11-20 22:00"),
    ],
)
def test_a_part_of_the_day_is_a_span_that_ends_by_now(typed, first, last):
    assert read(typed) == (first, last, PART)


@pytest.mark.parametrize(
    ("typed", "first", "last"),
    [
        ("9:40 to 12:30", "2026-11-24 09:40", "2026-11-24 12:30"),
        ("9:40-12:30", "2026-11-24 09:40", "2026-11-24 12:30"),
        ("from 9:40 until 12:30", "2026-11-24 09:40", "2026-11-24 12:30"),
        ("yesterday 9.40 – 12.30", "2026-11-23 09:40", "2026-11-23 12:30"),
        ("24.10. 9.40 to 12:30", "2026-10-24 09:40", "2026-10-24 12:30"),
        ("Sat 10am to 1:15pm", "2026-11-21 10:00", "2026-11-21 13:15"),
        ("2026-11-20 9:40 to 12:30", "2026-11-20 09:40", "2026-11-20 12:30"),
    ],
)
def test_work_that_took_hours_keeps_both_its_ends(typed, first, last):
    assert read(typed) == (first, last, PART)


def test_an_offset_is_no_end():
    assert read("2026-11-24T19:30-05:00", local("2026-11-25 09:00"))[0] == "2026-11-25 00:30"


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("12:30 to 9:40", "ends before it begins"),
        ("12:30 to 12:30", "ends before it begins"),
        ("20:00 to 22:00", "still to come"),
        ("evening to 22:00", "cannot read"),
    ],
)
def test_hours_that_make_no_span_are_refused(typed, said):
    assert said in refused(typed)[0]


@every_row(
    ("typed", "first", "last"),
    [
        ("yesterday", "2026-11-23 00:00", "2026-11-24 00:00"),
        ("today", "2026-11-24 00:00", "2026-11-24 21:05"),
        ("sat", "2026-11-21 00:00", "2026-11-22 00:00"),
        ("2 days ago", "2026-11-22 00:00", "2026-11-23 00:00"),
        ("a week ago", "2026-11-17 00:00", "2026-11-18 00:00"),
        ("2026-11-20", "2026-11-20 00:00", "2026-11-21 00:00"),
        ("20 Nov", "2026-11-20 00:00", "2026-11-21 00:00"),
        ("24 Nov", "2026-11-24 00:00", "2026-11-24 21:05"),
        ("Fri 20th of November 2026", "2026-11-20 00:00", "2026-11-21 00:00"),
        ("24/10", "2026-10-24 00:00", "2026-10-25 00:00"),
        ("24.10.", "2026-10-24 00:00", "2026-10-25 00:00"),
        ("24.10.2025", "2025-10-24 00:00", "2025-10-25 00:00"),
        ("11/11", "2026-11-11 00:00", "2026-11-12 00:00"),
    ],
)
def test_a_bare_day_is_all_of_that_day(typed, first, last):
    assert read(typed) == (first, last, PART)


@pytest.mark.parametrize(
    ("typed", "first", "last"),
    [
        ("about 19:00", "2026-11-24 18:45", "2026-11-24 19:15"),
        ("around 7pm", "2026-11-24 18:45", "2026-11-24 19:15"),
        ("yesterday at about 7pm", "2026-11-23 18:45", "2026-11-23 19:15"),
        ("about 2h ago", "2026-11-24 18:50", "2026-11-24 19:20"),
        ("about 21:00", "2026-11-24 20:45", "2026-11-24 21:05"),
    ],
)
def test_about_is_a_quarter_of_an_hour_either_way(typed, first, last):
    assert read(typed) == (first, last, ABOUT)


@every_row(
    ("typed", "meant"),
    [
        ("2026-11-24 19:30", "2026-11-24 19:30"),
        ("2026-11-24T19:30", "2026-11-24 19:30"),
        ("24 Nov 19:30", "2026-11-24 19:30"),
        ("24 Nov 19.30", "2026-11-24 19:30"),  # dateutil alone reads this as the year 2019
        ("Nov 24 7pm", "2026-11-24 19:00"),
        ("24.10. 19:30", "2026-10-24 19:30"),
        ("24 November 2025, 7:30 pm", "2025-11-24 19:30"),
        ("2026-08-21T16:00:00Z", "2026-08-21 17:00"),
        ("2026-08-22T01:00+09:00", "2026-08-21 17:00"),
        ("2026-08-22 01:00 +0900", "2026-08-21 17:00"),
    ],
)
def test_a_date_and_time(typed, meant):
    assert read(typed) == (meant, meant, EXACT)


def test_the_same_instant_typed_in_two_zones_is_the_same_instant():
    # Also in any order of widths: instants are compared, never their texts.
    first = moment("2026-08-21T16:00Z", NOW, LONDON)
    second = moment("2026-08-22T01:00:00+09:00", NOW, LONDON)
    third = moment("2026-08-22 00:30", NOW, LONDON)
    assert first == second
    assert max(first, second, third, key=lambda when: when.order) is third


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("monday 19:30", "2026-11-23 19:30"),
        ("tue 19:30", "2026-11-24 19:30"),  # today, and passed
        ("tue 22:00", "2026-11-17 22:00"),  # today's is to come, so last week's
        ("last tue 19:30", "2026-11-17 19:30"),
        ("wed 19:30", "2026-11-18 19:30"),
    ],
)
def test_a_weekday_is_the_last_one_that_has_passed(typed, meant):
    assert read(typed)[0] == meant


@pytest.mark.parametrize(
    ("typed", "now", "year"),
    [
        ("24 Nov", "2026-11-24 21:05", 2026),
        ("28 Dec", "2027-01-03 12:00", 2026),
        ("1 Jun", "2026-11-24 21:05", 2026),
        ("29 Feb", "2027-01-03 12:00", 2028),
    ],
)
def test_a_date_without_a_year_is_the_nearest_one(typed, now, year):
    when = moment(typed, local(now), LONDON, future=True)
    assert when.earliest.astimezone(LONDON).year == year


@every_row(
    ("typed", "first", "last"),
    [
        # The person's day lasts until 04:00.
        ("this evening", "2026-11-24 18:00", "2026-11-24 22:00"),
        ("tonight", "2026-11-24 18:00", "2026-11-25 01:00"),
        ("this morning", "2026-11-24 06:00", "2026-11-24 12:00"),
        ("lunch", "2026-11-24 12:00", "2026-11-24 14:00"),
        # `yesterday` and `last` are the calendar's.
        ("yesterday evening", "2026-11-24 18:00", "2026-11-24 22:00"),
        ("last night", "2026-11-24 18:00", "2026-11-25 01:00"),
        ("tue evening", "2026-11-24 18:00", "2026-11-24 22:00"),
        ("today", "2026-11-25 00:00", "2026-11-25 01:00"),
    ],
)
def test_typed_after_midnight(typed, first, last):
    assert read(typed, AFTER_MIDNIGHT) == (first, last, PART)


def test_at_four_the_persons_day_is_the_calendars():
    before, after = local("2026-11-25 03:59"), local("2026-11-25 06:30")
    assert read("this morning", before)[0] == "2026-11-24 06:00"
    assert read("this morning", after)[0] == "2026-11-25 06:00"
    assert refused("this evening", after) == (
        "'this evening' is still to come",
        'did you mean "yesterday evening"?',
    )


def test_work_in_the_future_is_refused_with_the_remedy():
    assert refused("22:30") == ("'22:30' is still to come", 'did you mean "yesterday 22:30"?')
    assert refused("23:30", AFTER_MIDNIGHT)[1] == 'did you mean "yesterday 23:30"?'
    assert refused("today 22:30")[1] == 'did you mean "yesterday 22:30"?'
    assert refused("5 Dec")[1] == "type its year too if it was in an earlier one"
    for typed in ("tomorrow", "in 2h", "in 3 days", "next fri", "2026-11-24T21:06Z"):
        assert refused(typed)[0] == f"{typed!r} is still to come"


def test_a_plan_may_be_in_the_future():
    def starts(typed: str) -> str:
        when = moment(typed, NOW, LONDON, future=True)
        return f"{when.earliest.astimezone(LONDON):%Y-%m-%d %H:%M}"

    assert starts("22:30") == "2026-11-24 22:30"
    assert starts("tomorrow 18:00") == "2026-11-25 18:00"
    assert starts("sat") == "2026-11-28 00:00"
    assert starts("tue 18:00") == "2026-12-01 18:00"
    assert starts("in 2h") == "2026-11-24 23:05"


def test_ten_eleven_is_refused_with_both_readings():
    assert refused("10/11") == ("10/11 could be 10 Nov or 11 Oct", "type 10 Nov or 2026-11-10")
    assert refused("10.11.")[0] == "10.11 could be 10 Nov or 11 Oct"
    assert refused("10/11 19:30")[0] == "10/11 could be 10 Nov or 11 Oct"
    assert refused("10.11")[0] == "10.11 could be 10 Nov or 11 Oct or 10:11"
    assert refused("10/11/2025")[1] == "type 10 Nov 2025 or 2025-11-10"
    assert refused("24/11/26") == ("24/11/26: which is the year?", "type it as 2026-11-24")


def test_how_long_is_not_when():
    assert refused("30m") == ("'30m' says how long, not when", 'did you mean "30m ago"?')
    assert refused("2h", future=True)[1] == 'type "in 2h"'


@pytest.mark.parametrize("typed", ["3 months ago", "30mo ago", "a year ago", "2 yrs ago"])
def test_months_ago_is_no_day(typed):
    assert refused(typed) == (f"{typed!r} is no one day", "type a date like 2026-11-24")


@every_row(
    "typed",
    [
        # dateutil alone would fill in what is missing here, silently.
        *("21", "may", "Nov", "2026", "2026-11", "1930", "tue 23", "24", "3rd", "Nov 2026", "10 a"),
        *("", "  ", "gibberish", "a while ago", "sat sun", "19:30 20:30", "yesterday tomorrow"),
        *("25.30", "24-11-26", "ago", "in", "in 2h ago", "tue 24", "x" * 200),
    ],
)
def test_what_cannot_be_read_is_refused_with_what_to_type(typed):
    message, hint = refused(typed)
    assert message == f"cannot read {typed!r} as a time"
    assert "yesterday 19:30" in hint


@pytest.mark.parametrize("typed", ["31 Nov", "2026-02-30", "2026-13-01", "29 Feb 2026 19:30"])
def test_a_day_that_there_is_not(typed):
    assert refused(typed)[0] == f"{typed!r} does not exist"


@pytest.mark.parametrize("typed", ["24:00", "19:60", "13pm", "0pm", "2026-11-20 25:00"])
def test_a_time_that_no_clock_shows(typed):
    assert "no time of a clock" in refused(typed)[0]


@pytest.mark.parametrize(
    "typed", ["0001-01-01", "9999-12-31", "9999 weeks ago", "0001-01-01T00:00+14:00"]
)
def test_a_year_of_no_shop(typed):
    assert "not of our time" in refused(typed)[0]


def test_more_odd_words():
    assert refused("midnight")[0] == "midnight belongs to two days"
    assert refused("99999w 1h ago")[0].endswith("more than ten years away")
    assert "not in the evening" in refused("this evening 11:00")[0]


def test_a_weekday_that_does_not_fit_its_date():
    assert refused("Mon 24 Nov") == (
        "24 Nov 2026 is a Tuesday",
        "type 2026-11-24 if you meant that",
    )


def test_an_hour_that_occurs_twice_asks_which():
    # Europe/London leaves summer time on Sun 25 Oct 2026 at 02:00 BST; worked against zoneinfo.
    noon = local("2026-10-25 12:00")
    assert refused("01:30", noon) == (
        "01:30 came twice on Sun 25 Oct 2026",
        "type 2026-10-25 01:30+01:00 or 2026-10-25 01:30+00:00",
    )
    first = moment("2026-10-25 01:30+01:00", noon, LONDON)
    second = moment("2026-10-25 01:30+00:00", noon, LONDON)
    assert second.earliest - first.earliest == timedelta(hours=1)


def test_between_the_two_only_the_first_has_been():
    between = datetime(2026, 10, 25, 0, 40, tzinfo=UTC)  # 01:40 BST
    when = moment("01:30", between, LONDON)
    assert when.earliest == datetime(2026, 10, 25, 0, 30, tzinfo=UTC)


def test_an_hour_that_the_clocks_skipped():
    # Europe/London enters summer time on Sun 29 Mar 2026 at 01:00 GMT.
    assert refused("01:30", local("2026-03-29 12:00")) == (
        "the clocks skipped 01:30 on Sun 29 Mar 2026",
        "type 2026-03-29 02:30 if you meant an hour later",
    )


def test_hours_ago_are_elapsed_hours_over_a_clock_change():
    when = moment("12h ago", local("2026-10-25 09:00"), LONDON)
    assert f"{when.earliest.astimezone(LONDON):%a %H:%M}" == "Sat 22:00"
    when = moment("12h ago", local("2026-03-29 11:00"), LONDON)
    assert f"{when.earliest.astimezone(LONDON):%a %H:%M}" == "Sat 22:00"


def test_the_same_time_yesterday_is_the_same_on_the_clock():
    when = moment("yesterday 19:30", local("2026-10-25 20:00"), LONDON)
    assert f"{when.earliest.astimezone(LONDON):%a %H:%M}" == "Sat 19:30"


def test_a_night_with_a_clock_change_is_taken_whole():
    when = moment("last night", local("2026-10-25 12:00"), LONDON)
    assert when == When(
        datetime(2026, 10, 24, 17, tzinfo=UTC), datetime(2026, 10, 25, 2, tzinfo=UTC), PART
    )
