"""Read the day that people name: `yesterday`, `mon`, `2 days ago`, `24 Nov`, `in 3 weeks`.

Steps of months are the calendar's: a month from 31 January is the last day of February.
"""

from __future__ import annotations

import re
from datetime import date, datetime, time, timedelta
from typing import NoReturn
from zoneinfo import ZoneInfo

from msgspec import Struct

from finishlog.cli.typed.figures.numbers import COUNTS
from finishlog.core.log.when import OUR_YEARS
from finishlog.errors import UsageFault

DAY = timedelta(days=1)
DAY_ENDS_H = 4


class TimeTyped(Struct, frozen=True):
    """`text` as typed at `now` (UTC) in `zone`; `future` admits times to come."""

    text: str
    now: datetime
    zone: ZoneInfo
    future: bool

    @property
    def today(self) -> date:
        """The calendar's day."""
        return self.now.astimezone(self.zone).date()

    @property
    def persons_day(self) -> date:
        """The day that the person is still in: until 04:00 it is yesterday's."""
        early = self.now.astimezone(self.zone).hour < DAY_ENDS_H
        return self.today - DAY if early else self.today

    def in_our_time(self, day: date) -> date:
        """Return the day; UsageFault when no shop of ours was or will be open on it."""
        if day.year not in OUR_YEARS:
            raise UsageFault(f"{self.text!r} is not of our time", f"type the year: {self.today}")
        return day

    def unreadable(self) -> NoReturn:
        """Refuse it with what can be read."""
        if self.future:
            raise UsageFault(
                f"cannot read {self.text!r} as a time to come",
                'type "Sat 5 Dec", "next fri", "in 3 weeks" or "2026-12-05 18:00"',
            )
        raise UsageFault(
            f"cannot read {self.text!r} as a time",
            'type "19:30", "yesterday 19:30", "2h ago", "mon evening" or "2026-11-24 19:30"',
        )


_NAMED_DAYS = {"today": 0, "yesterday": -1, "day before yesterday": -2, "tomorrow": 1}
_WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")

WEEKDAY = (
    r"(?P<weekday>mon(?:day)?|tue(?:s|sday)?|wed(?:s|nesday)?|thu(?:r|rs|rsday)?"
    r"|fri(?:day)?|sat(?:urday)?|sun(?:day)?)\b"
)
_MONTH = (
    r"(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?"
    r"|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)"
)
_NTH = r"\d{1,2}(?:st|nd|rd|th|\.)?"
DATE = rf"(?:{WEEKDAY},? )?(?:{_NTH} {_MONTH}|{_MONTH} {_NTH})(?:,? \d{{4}})?"
ISO_DAY = r"\d{4}-\d{2}-\d{2}"
_END = rf"end (?:month|year|(?P<month>{_MONTH})(?: (?P<year>\d{{4}}))?)"
_UNIT = r"(?P<unit>d|days?|w|wks?|weeks?|mo|months?|y|yrs?|years?)"
_AGO = rf"(?P<count>\d{{1,4}} ?|[a-z]+ ){_UNIT} ago"
_TO_COME = rf"in (?P<count>\d{{1,4}} ?|[a-z]+ ){_UNIT}"
# What names a day without a figure of its own.
DAY_WORDS = (
    rf"today|yesterday|day before yesterday|tomorrow|(?:(?:last|this|next) )?{WEEKDAY}|{_AGO}"
)


def is_days_away(words: str) -> bool:
    """Tell `2 days ago` and `in a month`, which step the calendar, from hours and minutes."""
    return re.fullmatch(_AGO, words) is not None or re.fullmatch(_TO_COME, words) is not None


def is_without_a_year(words: str) -> bool:
    """Tell a date whose year has to be guessed."""
    return re.fullmatch(DATE, words) is not None and not re.search(r"\d{4}", words)


def days(rest: str, part: str, typed: TimeTyped) -> tuple[date, ...]:
    """Find the day that the words name; a weekday gives the likeliest first, then the other.

    `part` is the part of the day that was said, if any. UsageFault when they name no day.
    """
    if rest in {"", "this"}:
        if part.startswith("last"):
            return (typed.today - DAY,)
        return (typed.persons_day if part else typed.today,)
    if rest in _NAMED_DAYS:
        return (typed.today + _NAMED_DAYS[rest] * DAY,)
    if found := re.fullmatch(_AGO, rest) or re.fullmatch(_TO_COME, rest):
        return (_days_away(found, typed),)
    if found := re.fullmatch(rf"(?:(last|this|next) )?{WEEKDAY}", rest):
        return _weekday(found[1], _WEEKDAYS.index(found["weekday"][:3]), typed)
    if typed.future and (found := re.fullmatch(_END, rest)):
        return (_end_of(found, typed),)
    return (calendar_day(rest, typed),)


def calendar_day(words: str, typed: TimeTyped) -> date:
    """Read a date by dateutil, which takes almost anything: only whole, known shapes reach it."""
    from dateutil.parser import isoparse, parse

    spelled = re.fullmatch(DATE, words)
    try:
        if re.fullmatch(ISO_DAY, words):
            return typed.in_our_time(isoparse(words).date())
        if spelled is None:
            typed.unreadable()
        # Two leap years as defaults: where the answers differ no year was typed.
        first, second = (parse(words, default=_new_year(year)) for year in (2000, 2004))
    except ValueError as error:
        raise UsageFault(f"{typed.text!r} does not exist", "type 2026-11-24 or 24 Nov") from error
    day = first.date()
    if first != second:
        day = _nearest(day.month, day.day, typed.today)
    said = spelled["weekday"]
    if said and _WEEKDAYS.index(said[:3]) != day.weekday():
        raise UsageFault(f"{day.day} {day:%b %Y} is a {day:%A}", f"type {day} if you meant that")
    return typed.in_our_time(day)


def _days_away(found: re.Match[str], typed: TimeTyped) -> date:
    from dateutil.relativedelta import relativedelta

    count = COUNTS.get(found["count"].strip(), found["count"].strip())
    unit = found["unit"][0]
    if not count.isdecimal():
        typed.unreadable()
    back = found[0].endswith("ago")
    if back and unit in "my":
        raise UsageFault(f"{typed.text!r} is no one day", f"type a date like {typed.today}")
    n = int(count)
    step = {
        "d": relativedelta(days=n),
        "w": relativedelta(weeks=n),
        "m": relativedelta(months=n),
        "y": relativedelta(years=n),
    }[unit]
    try:
        return typed.in_our_time(typed.today - step if back else typed.today + step)
    except (ValueError, OverflowError):
        hint = f"type the year: {typed.today}"
        raise UsageFault(f"{typed.text!r} is not of our time", hint) from None


def _weekday(said: str | None, weekday: int, typed: TimeTyped) -> tuple[date, ...]:
    back = (typed.today.weekday() - weekday) % 7
    ahead = -back % 7
    if said == "next" or (typed.future and said != "last"):
        first = typed.today + (7 if said == "next" and not ahead else ahead) * DAY
        return (first, first + 7 * DAY)
    first = typed.today - (7 if said == "last" and not back else back) * DAY
    return (first, first - 7 * DAY)


def _end_of(found: re.Match[str], typed: TimeTyped) -> date:
    """Find the last day of a month or of the year; a month that is over is next year's."""
    from dateutil.parser import parse
    from dateutil.relativedelta import relativedelta

    if found["month"] is None:
        month = typed.today.month if "month" in found[0] else 12
        return typed.today + relativedelta(month=month, day=31)
    month = parse(found["month"], default=_new_year(2000)).month
    year = int(found["year"] or typed.today.year)
    if not found["year"] and month < typed.today.month:
        year += 1
    return typed.in_our_time(date(max(year, 1), month, 1)) + relativedelta(day=31)


def _nearest(month: int, day: int, today: date) -> date:
    """Choose the year in which a date without one comes nearest to today."""
    dates = []
    for year in range(today.year - 8, today.year + 9):
        try:
            dates.append(date(year, month, day))
        except ValueError:  # 29 February
            continue
    return min(dates, key=lambda found: abs(found - today))


def _new_year(year: int) -> datetime:
    return datetime.combine(date(year, 1, 1), time())
