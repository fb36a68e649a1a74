"""The hours that a person can be in the shop, across midnight, weekends and clock changes.

Berlin cases: worked by hand against zoneinfo (IANA tz database, 2026 rules: spring Sun 29 March
02:00 to 03:00, autumn Sun 25 October 03:00 to 02:00). Shop hours in them are Monday to Friday
18:00-21:00 and Saturday 09:00-17:00 unless stated.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from finishlog.core.shop.hours import (
    ShopHours,
    WeeklyHours,
    intervals,
    is_open,
    next_opening,
    open_minutes,
)

BERLIN = ZoneInfo("Europe/Berlin")
ALWAYS = datetime(2020, 1, 1, tzinfo=UTC)
MON, TUE, WED, THU, FRI, SAT, SUN = range(7)


def weekly(day: int, opens: str, closes: str) -> WeeklyHours:
    def minutes(text: str) -> int:
        return int(text[:2]) * 60 + int(text[3:])

    return WeeklyHours(day, minutes(opens), minutes(closes))


USUAL = (*(weekly(day, "18:00", "21:00") for day in range(MON, SAT)), weekly(SAT, "09:00", "17:00"))


def shop(*openings: WeeklyHours, zone: str = "Europe/Berlin") -> ShopHours:
    return ShopHours(((ALWAYS, openings),), zone)


EVENINGS = shop(*USUAL)
WITH_SUNDAY = shop(*USUAL, weekly(SUN, "09:00", "12:00"))


def berlin(text: str, fold: int = 0) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=BERLIN, fold=fold)


def utc(text: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def hours(count: float) -> timedelta:
    return timedelta(hours=count)


def minutes(count: float) -> timedelta:
    return timedelta(minutes=count)


def after(moment: datetime, elapsed: timedelta) -> datetime:
    """Elapsed time, never wall time."""
    return moment.astimezone(UTC) + elapsed


def earliest_start(hours: ShopHours, ready: datetime, work: timedelta) -> datetime | None:
    """Find the first start at which work fits one of the intervals; ending at closing fits."""
    found = intervals(hours, ready, ready + timedelta(days=60))
    return next((opens for opens, closes in found if opens + work <= closes), None)


def test_dry_after_closing_means_the_next_evening():  # case 1
    ready = after(berlin("2026-03-02 20:30"), hours(2))
    assert ready == utc("2026-03-02 21:30")
    assert earliest_start(EVENINGS, ready, minutes(20)) == utc("2026-03-03 17:00")


def test_work_that_does_not_fit_before_closing_waits():  # case 2a
    ready = berlin("2026-03-02 20:50")
    assert earliest_start(EVENINGS, ready, minutes(20)) == berlin("2026-03-03 18:00")


def test_work_may_end_exactly_at_closing():  # case 2b
    ready = berlin("2026-03-02 20:50")
    assert earliest_start(EVENINGS, ready, minutes(10)) == ready.astimezone(UTC)


def test_a_spring_night_is_an_hour_shorter_on_the_wall():  # case 3
    ready = after(berlin("2026-03-28 16:30"), hours(16))
    start = earliest_start(WITH_SUNDAY, ready, minutes(20))
    assert start == utc("2026-03-29 07:30") == berlin("2026-03-29 09:30").astimezone(UTC)


def test_an_autumn_night_closes_the_window_an_hour_earlier_on_the_wall():  # case 4
    coat_ends = berlin("2026-10-24 16:30")
    dry, window_closes = after(coat_ends, hours(12)), after(coat_ends, hours(17))
    assert dry == berlin("2026-10-25 03:30").astimezone(UTC)
    assert window_closes == berlin("2026-10-25 08:30").astimezone(UTC)
    first = earliest_start(WITH_SUNDAY, dry, minutes(20))
    assert first is not None
    assert first > window_closes  # missed: abrade first
    abrade = earliest_start(WITH_SUNDAY, dry, minutes(15))
    assert abrade == berlin("2026-10-25 09:00").astimezone(UTC)
    recoat = earliest_start(WITH_SUNDAY, abrade + minutes(15), minutes(20))
    assert recoat == utc("2026-10-25 08:15")


def test_one_to_five_is_three_hours_in_spring():  # case 5a
    night = shop(weekly(SUN, "01:00", "05:00"))
    day = (utc("2026-03-28 20:00"), utc("2026-03-29 20:00"))
    assert intervals(night, *day) == ((utc("2026-03-29 00:00"), utc("2026-03-29 03:00")),)
    assert earliest_start(night, day[0], minutes(180)) == utc("2026-03-29 00:00")
    following = earliest_start(night, day[0], minutes(200))
    assert following == berlin("2026-04-05 01:00").astimezone(UTC)


def test_one_to_five_is_five_hours_in_autumn():  # case 5b
    night = shop(weekly(SUN, "01:00", "05:00"))
    day = (utc("2026-10-24 20:00"), utc("2026-10-25 20:00"))
    assert intervals(night, *day) == ((utc("2026-10-24 23:00"), utc("2026-10-25 04:00")),)
    assert earliest_start(night, day[0], minutes(300)) == utc("2026-10-24 23:00")
    assert open_minutes(night, *day) == 300


@pytest.mark.parametrize(
    ("day", "opens", "closes"),
    [
        ("2026-03-29", "2026-03-29 01:00", "2026-03-29 03:00"),  # 03:00 CEST, after the gap
        ("2026-10-25", "2026-10-25 00:30", "2026-10-25 04:00"),  # 02:30 CEST, the first one
    ],
)
def test_half_past_two_opens_after_the_gap_or_at_the_first_of_two(day, opens, closes):  # case 5c
    early = shop(weekly(SUN, "02:30", "05:00"))
    found = intervals(early, utc(f"{day} 00:00"), utc(f"{day} 12:00"))
    assert found == ((utc(opens), utc(closes)),)


def test_half_past_two_closes_at_the_second_of_two():
    late = shop(weekly(SAT, "22:00", "02:30"))
    found = intervals(late, utc("2026-10-24 12:00"), utc("2026-10-25 12:00"))
    assert found == ((utc("2026-10-24 20:00"), utc("2026-10-25 01:30")),)


def test_hours_wholly_inside_the_gap_never_open():
    gone = shop(weekly(SUN, "02:10", "02:50"))
    assert intervals(gone, utc("2026-03-28 12:00"), utc("2026-03-29 12:00")) == ()


@pytest.mark.parametrize(
    "friday",
    [
        (weekly(FRI, "22:00", "02:00"),),
        (weekly(FRI, "18:00", "00:00"), weekly(SAT, "00:00", "02:00")),
        (weekly(FRI, "18:00", "24:00"), weekly(SAT, "00:00", "02:00")),
    ],
)
def test_an_evening_past_midnight_is_one_interval(friday):  # case 6
    late = shop(*friday, weekly(SAT, "09:00", "17:00"))
    ready = berlin("2026-03-06 23:15")
    assert earliest_start(late, ready, minutes(90)) == ready.astimezone(UTC)
    too_late = berlin("2026-03-07 00:45")
    assert earliest_start(late, too_late, minutes(90)) == berlin("2026-03-07 09:00").astimezone(UTC)


def test_a_window_that_closes_while_the_shop_is_shut_costs_an_abrading():  # case 7
    coat_ends = berlin("2026-03-03 20:00")
    dry, window_closes = after(coat_ends, hours(4)), after(coat_ends, hours(20))
    first = earliest_start(EVENINGS, dry, minutes(20))
    assert first == berlin("2026-03-04 18:00").astimezone(UTC)
    assert first > window_closes
    assert earliest_start(EVENINGS, first + minutes(15), minutes(20)) == berlin(
        "2026-03-04 18:15"
    ).astimezone(UTC)


def test_a_weekend_outlasts_two_days_of_window_by_two_hours():  # case 9
    coat_ends = berlin("2026-03-07 16:00")
    first = earliest_start(EVENINGS, after(coat_ends, hours(24)), minutes(20))
    assert first == after(coat_ends, hours(50)) == berlin("2026-03-09 18:00").astimezone(UTC)
    assert next_opening(EVENINGS, after(coat_ends, hours(24))) == first


def test_slack_counts_the_minutes_of_the_shop():  # case 10
    first, second = berlin("2026-03-02 18:00"), berlin("2026-03-03 18:00")
    assert open_minutes(EVENINGS, first, berlin("2026-03-04 20:30")) == 510
    assert open_minutes(EVENINGS, second, berlin("2026-03-05 19:45")) == 465
    assert open_minutes(EVENINGS, berlin("2026-03-04 18:30"), berlin("2026-03-06 20:15")) == 465


@pytest.mark.parametrize(
    ("zone", "coat", "ready"),
    [
        ("America/New_York", "2026-10-31 22:00", "2026-11-01 09:00"),
        ("America/New_York", "2026-03-07 22:00", "2026-03-08 11:00"),
        ("Europe/London", "2026-10-24 22:00", "2026-10-25 09:00"),
        ("Europe/London", "2026-03-28 22:00", "2026-03-29 11:00"),
    ],
)
def test_twelve_hours_of_drying_are_elapsed_hours(zone, coat, ready):
    # US: 15 USC 260a (2005 act): second Sunday of March, first Sunday of November. UK: Summer
    # Time Order 2002: last Sundays of March and October. Worked by hand against zoneinfo.
    here = ZoneInfo(zone)
    round_the_clock = shop(*(weekly(day, "00:00", "24:00") for day in range(7)), zone=zone)
    done = after(datetime.fromisoformat(coat).replace(tzinfo=here), hours(12))
    start = earliest_start(round_the_clock, done, minutes(20))
    assert start == done
    assert f"{start.astimezone(here):%Y-%m-%d %H:%M}" == ready


def test_the_shop_is_open_from_opening_until_just_before_closing():
    assert is_open(EVENINGS, berlin("2026-03-02 18:00")) is True
    assert is_open(EVENINGS, berlin("2026-03-02 20:59:59")) is True
    assert is_open(EVENINGS, berlin("2026-03-02 21:00")) is False
    assert is_open(EVENINGS, berlin("2026-03-01 12:00")) is False


def test_the_next_opening_is_never_the_one_now():
    now = berlin("2026-03-02 19:00")
    following = next_opening(EVENINGS, now)
    assert following == berlin("2026-03-03 18:00").astimezone(UTC)
    assert next_opening(EVENINGS, following) == berlin("2026-03-04 18:00").astimezone(UTC)


def test_unknown_hours_give_no_answer():
    unknown = ShopHours((), "Europe/Berlin")
    now = berlin("2026-03-02 19:00")
    assert is_open(unknown, now) is None
    assert next_opening(unknown, now) is None
    assert intervals(unknown, now, now + hours(999)) == ()


def test_a_shut_shop_is_known_to_be_shut():
    shut = shop()
    assert is_open(shut, berlin("2026-03-02 19:00")) is False
    assert earliest_start(shut, berlin("2026-03-02 19:00"), minutes(1)) is None


def test_work_longer_than_any_evening_never_fits():
    assert earliest_start(EVENINGS, berlin("2026-03-02 18:00"), hours(8)) == berlin(
        "2026-03-07 09:00"
    ).astimezone(UTC)
    assert earliest_start(EVENINGS, berlin("2026-03-02 18:00"), hours(8.25)) is None


def test_a_shop_that_never_shuts_is_one_interval():
    here = shop(*(weekly(day, "00:00", "00:00") for day in range(7)))
    span = (utc("2026-10-20 00:00"), utc("2026-11-20 00:00"))
    assert intervals(here, *span) == (span,)


def test_new_hours_hold_from_their_date_and_the_old_ones_until_then():
    changed = ShopHours(
        (
            (ALWAYS, USUAL),
            (utc("2026-03-03 18:30"), (weekly(TUE, "20:00", "22:00"),)),
        ),
        "Europe/Berlin",
    )
    found = intervals(changed, utc("2026-03-02 00:00"), utc("2026-03-05 00:00"))
    assert found == (
        (utc("2026-03-02 17:00"), utc("2026-03-02 20:00")),
        (utc("2026-03-03 17:00"), utc("2026-03-03 18:30")),  # the old evening, cut
        (utc("2026-03-03 19:00"), utc("2026-03-03 21:00")),
    )


def test_before_the_first_known_pattern_the_hours_are_unknown():
    late = ShopHours(((utc("2026-03-04 00:00"), USUAL),), "Europe/Berlin")
    assert is_open(late, berlin("2026-03-02 19:00")) is None
    assert is_open(late, berlin("2026-03-04 19:00")) is True


def test_impossible_hours_are_refused():
    with pytest.raises(ValueError, match="weekday"):
        WeeklyHours(7, 0, 60)
    with pytest.raises(ValueError, match="minutes after midnight"):
        WeeklyHours(0, 1440, 60)
    with pytest.raises(ValueError, match="minutes after midnight"):
        WeeklyHours(0, 0, 1441)
    with pytest.raises(ValueError, match="order"):
        ShopHours(((utc("2026-02-01 00:00"), ()), (utc("2026-01-01 00:00"), ())), "UTC")
    with pytest.raises(ValueError, match="no time zone"):
        is_open(shop(zone="Nowhere/Here"), utc("2026-01-01 00:00"))
    with pytest.raises(ValueError, match="with a zone"):
        is_open(EVENINGS, datetime(2026, 3, 2, 19))  # noqa: DTZ001
