"""Read when something happened, or is due, in the words that people type.

A clock time is one instant; `evening` or a bare day is a span, of which the log keeps both ends.
Anything with two meanings (10/11, an hour that occurs twice) is refused with both of them, and
work in the future is refused. What was understood is always echoed by the command that asked.

Until 04:00 the person's day is still yesterday's: `this evening` and `tonight` typed at 01:00 are
the evening that has just passed. `yesterday` and `last night` keep the calendar's yesterday, so
`yesterday evening` typed at 01:00 is that same evening.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time, timedelta
from typing import NamedTuple, NoReturn
from zoneinfo import ZoneInfo

from finishlog.cli.measures import COUNTS, length
from finishlog.core.records import Sureness, When, at
from finishlog.errors import UsageFault

ABOUT = timedelta(minutes=15)
DAY_ENDS_H = 4

_DAY = timedelta(days=1)
_LONGEST_AGO = 3660 * _DAY
_YEARS = range(1970, 2200)

# Parts of the day, in hours after midnight.
_PARTS_H: dict[str, tuple[int, int]] = {
    "last night": (18, 26),
    "last evening": (18, 22),
    "morning": (6, 12),
    "lunchtime": (12, 14),
    "lunch": (12, 14),
    "midday": (12, 14),
    "noon": (12, 14),
    "afternoon": (12, 18),
    "evening": (18, 22),
    "tonight": (18, 26),
    "night": (22, 26),
}
_NAMED_DAYS = {"today": 0, "yesterday": -1, "day before yesterday": -2, "tomorrow": 1}
_WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")

_WEEKDAY = (
    r"(?P<weekday>mon(?:day)?|tue(?:s|sday)?|wed(?:s|nesday)?|thu(?:r|rs|rsday)?"
    r"|fri(?:day)?|sat(?:urday)?|sun(?:day)?)"
)
_MONTH = (
    r"(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?"
    r"|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)"
)
_NTH = r"\d{1,2}(?:st|nd|rd|th|\.)?"
_DATE = rf"(?:{_WEEKDAY},? )?(?:{_NTH} {_MONTH}|{_MONTH} {_NTH})(?:,? \d{{4}})?"
_ISO_DAY = r"\d{4}-\d{2}-\d{2}"
_OFFSET = r"(?:z|[+-]\d{2}(?::?\d{2})?)"
_ISO_INSTANT = rf"{_ISO_DAY}[t ]\d{{2}}:\d{{2}}(?::\d{{2}}(?:\.\d{{1,6}})?)? ?{_OFFSET}"
_CLOCK = (
    r"(?<![\d:.])(?P<h>\d{1,2})(?::(?P<m>\d{2})(?::(?P<s>\d{2}))?(?![\d:])"
    r"(?: ?(?P<half>[ap])\.?m\b\.?)?| ?(?P<half_only>[ap])\.?m\b\.?)"
)
_FIGURES = r"(?<![\d./:-])(\d{1,2})([./])(\d{1,2})(\2(?:\d{2}(?:\d{2})?)?)?(?![\d./:-])"
_DAYS_AWAY = r"(?:(in )(?!.*ago)|(?=.*ago))(\d{1,4} ?|[a-z]+ )(d|days?|w|wks?|weeks?)(?: ago)?"


@dataclass(frozen=True, slots=True)
class _Asked:
    """What was typed, and where and when."""

    text: str
    now: datetime
    zone: ZoneInfo
    future: bool

    @property
    def today(self) -> date:
        return self.now.astimezone(self.zone).date()

    @property
    def persons_day(self) -> date:
        early = self.now.astimezone(self.zone).hour < DAY_ENDS_H
        return self.today - _DAY if early else self.today


class _Span(NamedTuple):
    """A clock time or a part of the day, after local midnight; `part` is the word, if any."""

    start: timedelta
    end: timedelta
    part: str = ""

    @property
    def is_clock(self) -> bool:
        return self.start == self.end


_WHOLE_DAY = _Span(timedelta(), _DAY)


def moment(text: str, now: datetime, zone: ZoneInfo, *, future: bool = False) -> When:
    """Read the time of the work, such as `19:30`, `2h ago`, `mon evening`, `24 Nov 7pm`.

    `future` admits times to come. UsageFault when it cannot be read or has two meanings.
    """
    return _read(_Asked(text, now.astimezone(UTC), zone, future))


def due_moment(text: str, now: datetime, zone: ZoneInfo) -> datetime:
    """Read a due date, such as `Sat 5 Dec`, `2026-12-05`, `in 10 days`, `next fri`, in UTC.

    A bare date is due by its end, 23:59. UsageFault when it is past or cannot be read.
    """
    asked = _Asked(re.sub(r"(?i)^\s*by\s+", "", text), now.astimezone(UTC), zone, future=True)
    when = _read(asked)
    due = when.latest
    if when.sureness is Sureness.PART_OF_DAY and due.astimezone(zone).time() == time():
        due -= timedelta(minutes=1)
    if due < asked.now:
        hint = f"type a day to come, with its year: {asked.today + 10 * _DAY}"
        raise UsageFault(f"{text.strip()!r} is past", hint)
    return due


def _read(asked: _Asked) -> When:
    words = " ".join(asked.text.casefold().split()).strip(",;!")
    if len(words) > 100:
        _unreadable(asked)
    plain = re.sub(r"\b(?:about|around|approx|circa)\b|~", " ", words)
    about = plain != words
    plain = " ".join(re.sub(r"\b(?:in the|at|on|the|of)\b", " ", plain).split())
    plain = re.sub(rf"^({_ISO_DAY})t(?=\d)", r"\1 ", plain)
    plain = re.sub(r"(\d)\.(\d\d ?[ap]\.?m\b)", r"\1:\2", plain)
    when = _instant_said(plain, asked) or _elapsed(plain, asked)
    if when is not None:
        instead = "type when it was done, such as 2h ago"
    else:
        when, instead = _on_a_day(plain, asked)
    if about and when.sureness is Sureness.EXACT:
        when = When(when.earliest - ABOUT, when.latest + ABOUT, Sureness.ABOUT)
    return when if asked.future else _passed(when, instead, asked)


def _passed(when: When, instead: str, asked: _Asked) -> When:
    """Refuse what is still to come, and cut a span at now."""
    if when.earliest > asked.now:
        raise UsageFault(f"{asked.text.strip()!r} is still to come", instead)
    return replace(when, latest=min(when.latest, asked.now))


def _instant_said(words: str, asked: _Asked) -> When | None:
    """`now`, or ISO 8601 with its offset."""
    if words in {"now", "just now"}:
        return at(asked.now)
    if not re.fullmatch(_ISO_INSTANT, words):
        return None
    from dateutil.parser import isoparse

    try:
        said = isoparse(words.replace(" ", "T", 1).replace(" ", "").upper())
    except ValueError as error:
        raise UsageFault(f"{asked.text!r} does not exist", "type 2026-11-24 19:30") from error
    _in_our_time(said.date(), asked)
    return at(said.astimezone(UTC))


def _elapsed(words: str, asked: _Asked) -> When | None:
    """`2h ago`, `an hour ago`, `in 2h`: elapsed time, across any clock change."""
    found = re.fullmatch(r"(in )?(.+?)( ago)?", words)
    if found is None or re.fullmatch(_DAYS_AWAY, words):
        return None
    if re.search(r"\d ?(?:mo|months?|y|yrs?|years?)\b|\b(?:months?|years?)\b", found[2]):
        raise UsageFault(f"{asked.text!r} is no one day", f"type a date like {asked.today}")
    away = length(found[2])
    if away is None:
        return None
    if found[1] and found[3]:
        _unreadable(asked)
    if not (found[1] or found[3]):
        hint = f'type "in {words}"' if asked.future else f'did you mean "{words} ago"?'
        raise UsageFault(f"{asked.text!r} says how long, not when", hint)
    if away > _LONGEST_AGO:
        raise UsageFault(f"{asked.text!r} is more than ten years away", "type the date")
    return at(asked.now + away if found[1] else asked.now - away)


def _on_a_day(words: str, asked: _Asked) -> tuple[When, str]:
    """Read a day with a clock time, a part of the day or neither; and what to type instead."""
    words = _figures_spelled(words, asked)
    span, rest = _time_of_day(words, asked)
    if span is None and not rest:
        _unreadable(asked)
    days = _days(rest, span, asked)
    for day in days:
        when = _place(day, span or _WHOLE_DAY, asked)
        if when.latest >= asked.now if asked.future else when.earliest <= asked.now:
            return when, ""
    return _place(days[0], span or _WHOLE_DAY, asked), _instead(words, rest)


def _instead(words: str, rest: str) -> str:
    if rest in {"", "this", "today"}:
        said = re.sub(r"\b(?:this|today)\b", "", words).replace("tonight", "evening").strip()
        return f'did you mean "yesterday {said}"?'
    if re.fullmatch(_DATE, rest) and not re.search(r"\d{4}", rest):
        return "type its year too if it was in an earlier one"
    return "type when it was done, such as 2h ago"


def _time_of_day(words: str, asked: _Asked) -> tuple[_Span | None, str]:
    """Take the clock time or the part of the day out of the words."""
    span: _Span | None = None
    if part := re.search(rf"\b({'|'.join(_PARTS_H)})\b", words):
        first, last = (timedelta(hours=h) for h in _PARTS_H[part[1]])
        span = _Span(first, last, part[1])
        words = _without(part, words)
    elif re.search(r"\bmidnight\b", words):
        raise UsageFault("midnight belongs to two days", "type today 00:00 or yesterday 23:59")
    if clock := re.search(_CLOCK, words):
        span = _at_clock(_after_midnight(clock, asked), span, asked)
        words = _without(clock, words)
    return span, words


def _without(found: re.Match[str], words: str) -> str:
    return " ".join(f"{words[: found.start()]} {words[found.end() :]}".split()).strip(" ,")


def _at_clock(clock: timedelta, part: _Span | None, asked: _Asked) -> _Span:
    """Narrow a part of the day to a clock time within it: `last night 01:00`."""
    if part is None:
        return _Span(clock, clock)
    for moment_of_day in (clock, clock + _DAY):
        if part.start <= moment_of_day <= part.end:
            return _Span(moment_of_day, moment_of_day, part.part)
    raise UsageFault(f"{asked.text!r}: that time is not in the {part.part}", "type 19:30 or 7:30pm")


def _after_midnight(found: re.Match[str], asked: _Asked) -> timedelta:
    hour, minute, second = (int(found[name] or 0) for name in ("h", "m", "s"))
    half = found["half"] or found["half_only"]
    if half and 1 <= hour <= 12:
        hour = hour % 12 + (12 if half == "p" else 0)
    elif half:
        hour = 24
    if hour > 23 or minute > 59 or second > 59:
        raise UsageFault(f"{asked.text!r} holds no time of a clock", "type 19:30 or 7:30pm")
    return timedelta(hours=hour, minutes=minute, seconds=second)


def _days(rest: str, span: _Span | None, asked: _Asked) -> tuple[date, ...]:
    """Find the day that the words name; a weekday gives the likeliest first, then the other."""
    if rest in {"", "this"}:
        part = span.part if span else ""
        if part.startswith("last"):
            return (asked.today - _DAY,)
        return (asked.persons_day if part else asked.today,)
    if rest in _NAMED_DAYS:
        return (asked.today + _NAMED_DAYS[rest] * _DAY,)
    if found := re.fullmatch(_DAYS_AWAY, rest):
        return (_days_away(found, asked),)
    if found := re.fullmatch(rf"(?:(last|this|next) )?{_WEEKDAY}", rest):
        return _weekday(found[1], _WEEKDAYS.index(found["weekday"][:3]), asked)
    return (_calendar_day(rest, asked),)


def _days_away(found: re.Match[str], asked: _Asked) -> date:
    count = COUNTS.get(found[2].strip(), found[2].strip())
    if not count.isdecimal():
        _unreadable(asked)
    days = int(count) * (7 if found[3].startswith("w") else 1) * _DAY
    return _in_our_time(asked.today + (days if found[1] else -days), asked)


def _weekday(said: str | None, weekday: int, asked: _Asked) -> tuple[date, ...]:
    back = (asked.today.weekday() - weekday) % 7
    ahead = -back % 7
    if said == "next" or (asked.future and said != "last"):
        first = asked.today + (7 if said == "next" and not ahead else ahead) * _DAY
        return (first, first + 7 * _DAY)
    first = asked.today - (7 if said == "last" and not back else back) * _DAY
    return (first, first - 7 * _DAY)


def _calendar_day(rest: str, asked: _Asked) -> date:
    """Read a date by dateutil, which takes almost anything: only whole, known shapes reach it."""
    from dateutil.parser import isoparse, parse

    spelled = re.fullmatch(_DATE, rest)
    try:
        if re.fullmatch(_ISO_DAY, rest):
            return _in_our_time(isoparse(rest).date(), asked)
        if spelled is None:
            _unreadable(asked)
        # Two leap years as defaults: where the answers differ no year was typed.
        first, second = (parse(rest, default=_midnight(date(y, 1, 1))) for y in (2000, 2004))
    except ValueError as error:
        raise UsageFault(f"{asked.text!r} does not exist", "type 2026-11-24 or 24 Nov") from error
    day = first.date()
    if first != second:
        day = _nearest(day.month, day.day, asked.today)
    said = spelled["weekday"]
    if said and _WEEKDAYS.index(said[:3]) != day.weekday():
        raise UsageFault(f"{day.day} {day:%b %Y} is a {day:%A}", f"type {day} if you meant that")
    return _in_our_time(day, asked)


def _nearest(month: int, day: int, today: date) -> date:
    """Choose the year in which a date without one comes nearest to today."""
    dates = []
    for year in range(today.year - 8, today.year + 9):
        try:
            dates.append(date(year, month, day))
        except ValueError:  # 29 February
            continue
    return min(dates, key=lambda found: abs(found - today))


def _figures_spelled(words: str, asked: _Asked) -> str:
    """Spell out 24/11, 24.11. and 19.30; refuse 10/11 and 10.11 with every reading."""
    found = re.search(_FIGURES, words)
    if found is None:
        return words
    one, dot, two, tail = found.groups()
    year = (tail or "")[1:]
    readings: list[str] = []
    for day, month in ((int(one), int(two)), (int(two), int(one))):
        if 1 <= month <= 12 and 1 <= day <= 31:
            readings.append(f"{day} {date(2000, month, 1):%b} {year}".strip())
    as_clock = dot == "." and tail is None and len(two) == 2 and int(one) < 24 and int(two) < 60
    if as_clock and not re.search(_CLOCK, words):
        readings.append(f"{one}:{two}")
    readings = list(dict.fromkeys(readings))
    if not readings:
        _unreadable(asked)
    if len(year) == 2:
        raise UsageFault(f"{found[0]}: which is the year?", f"type it as {asked.today}")
    if len(readings) > 1:
        raise UsageFault(
            f"{found[0].rstrip('.')} could be {' or '.join(readings)}",
            f"type {readings[0]} or {_calendar_day(readings[0].casefold(), asked)}",
        )
    spelled = f"{words[: found.start()]}{readings[0].lower()}{words[found.end() :]}"
    return " ".join(spelled.split())


def _place(day: date, span: _Span, asked: _Asked) -> When:
    """Place a span of a day in UTC; ends that a clock change doubles or skips widen it."""
    start, end = _midnight(day) + span.start, _midnight(day) + span.end
    if span.is_clock:
        return at(_one_instant(start, asked))
    first, last = min(_both(start, asked.zone)), max(_both(end, asked.zone))
    return When(first, last, Sureness.PART_OF_DAY)


def _one_instant(wall: datetime, asked: _Asked) -> datetime:
    """Place a wall time that exists once; of two, one that is still to come is not meant."""
    both = _both(wall, asked.zone)
    real = [i for i in both if i.astimezone(asked.zone).replace(tzinfo=None) == wall]
    if not real:
        raise UsageFault(
            f"the clocks skipped {wall:%H:%M} on {wall:%a} {wall.day} {wall:%b %Y}",
            f"type {both[0].astimezone(asked.zone):%Y-%m-%d %H:%M} if you meant an hour later",
        )
    meant = [i for i in real if asked.future or i <= asked.now] or real[:1]
    if len(set(meant)) > 1:
        types = (i.astimezone(asked.zone).isoformat(" ", "minutes") for i in meant)
        raise UsageFault(
            f"{wall:%H:%M} came twice on {wall:%a} {wall.day} {wall:%b %Y}",
            f"type {' or '.join(types)}",
        )
    return meant[0]


def _both(wall: datetime, zone: ZoneInfo) -> tuple[datetime, datetime]:
    first, second = (wall.replace(tzinfo=zone, fold=fold).astimezone(UTC) for fold in (0, 1))
    return first, second


def _midnight(day: date) -> datetime:
    return datetime.combine(day, time())


def _in_our_time(day: date, asked: _Asked) -> date:
    if day.year not in _YEARS:
        raise UsageFault(f"{asked.text!r} is not of our time", "type the year: 2026-11-24")
    return day


def _unreadable(asked: _Asked) -> NoReturn:
    raise UsageFault(
        f"cannot read {asked.text!r} as a time",
        'type "19:30", "yesterday 19:30", "2h ago", "mon evening" or "2026-11-24 19:30"',
    )
