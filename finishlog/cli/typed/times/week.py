"""Read hours of the day, `7pm-10:30pm`, and of the week, `mon-fri 18:00-23:00 sat 9:00-17:00`."""

from __future__ import annotations

import re
from collections.abc import Sequence

from finishlog.core.shop.hours import WeeklyHours
from finishlog.errors import UsageFault

DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
# What people say for several days.
_DAYS_SAID = {
    **dict.fromkeys(("weekdays", "weekday", "workdays"), range(5)),
    **dict.fromkeys(("weekends", "weekend"), range(5, 7)),
    **dict.fromkeys(("daily", "everyday", "all"), range(7)),
}
_EXAMPLE = "type: mon-fri 18:00-23:00 sat 9:00-17:00"


def read_week(words: Sequence[str]) -> tuple[WeeklyHours, ...]:
    """Read pairs of days and hours; UsageFault when they cannot be read."""
    typed = together([re.sub(r"\bevery ?day\b", "daily", " ".join(words).casefold())])
    week: list[WeeklyHours] = []
    days: tuple[int, ...] = ()
    fresh = False
    for word in typed:
        span = span_of_day(word)
        if span is None and word[:1].isdecimal():
            raise UsageFault(f"{word!r} is no time of the day", _EXAMPLE)
        if span is None:
            days = (*days, *days_said(word)) if fresh else days_said(word)
            fresh = True
            continue
        if not days:
            raise UsageFault(f"{word!r} belongs to no day", _EXAMPLE)
        if span[0] == span[1]:
            raise UsageFault(f"{word!r} opens and closes at once", _EXAMPLE)
        week += [WeeklyHours(day, *span) for day in days]
        fresh = False
    if not week or fresh:
        raise UsageFault("shop hours need days and hours", _EXAMPLE)
    return tuple(week)


def days_said(word: str) -> tuple[int, ...]:
    """Read `mon-fri`, `sat` or `weekends`, Monday 0; UsageFault when it is no day."""
    if word in _DAYS_SAID:
        return tuple(_DAYS_SAID[word])
    first, _, last = word.partition("-")
    a, b = _day(first, word), _day(last or first, word)
    return tuple(day % 7 for day in range(a, (b if b >= a else b + 7) + 1))


def days_words(days: Sequence[int]) -> str:
    """Write days as they are typed, with a blank behind: `mon-fri `; empty for every day."""
    if len(days) == len(DAYS):
        return ""
    if len(days) > 2 and days[-1] - days[0] == len(days) - 1:
        return f"{DAYS[days[0]]}-{DAYS[days[-1]]} "
    return f"{','.join(DAYS[day] for day in days)} "


def _day(word: str, typed: str) -> int:
    if word[:3] not in DAYS:
        raise UsageFault(f"{typed!r} is no day of the week", _EXAMPLE)
    return DAYS.index(word[:3])


def week_words(week: Sequence[WeeklyHours]) -> str:
    """Write shop hours as they are typed."""
    by_hours: dict[tuple[int, int], list[str]] = {}
    for each in week:
        by_hours.setdefault((each.opens_min, each.closes_min), []).append(DAYS[each.weekday])
    return " ".join(
        f"{','.join(days)} {clock_face(opens)}-{clock_face(closes)}"
        for (opens, closes), days in by_hours.items()
    )


def clock_face(minutes: int) -> str:
    """Write a minute of the day: `7:00`."""
    return f"{minutes // 60}:{minutes % 60:02d}"


_TIME = r"(?:(?P<{0}h>\d{{1,2}})(?:[:.](?P<{0}m>\d{{2}}))?(?:\s?(?P<{0}half>[ap])\.?m?\.?)?"
_TIME += r"|(?P<{0}said>noon|midnight))"
_SPAN = re.compile(rf"{_TIME.format('a')}-{_TIME.format('b')}")
_SAID = {"noon": 12 * 60, "midnight": 24 * 60}
_DAY = 24 * 60


def span_of_day(word: str) -> tuple[int, int] | None:
    """Read one span in minutes after midnight, the end up to 24:00; None when it is none.

    Of an end that says `pm` the begin may leave it out: `7-10:30pm` is of the evening, `9-5pm`
    begins in the morning.
    """
    found = _SPAN.fullmatch(word.strip().casefold())
    if found is None:
        return None
    ends = _minute(found, "b", found["bhalf"])
    begins = _minute(found, "a", found["ahalf"])
    if begins is None or ends is None:
        return None
    if found["bhalf"] and not (found["ahalf"] or found["asaid"]) and begins <= 12 * 60:
        same = _minute(found, "a", found["bhalf"])
        begins = same if same is not None and same < ends else _minute(found, "a", "a")
    return None if begins is None or begins >= _DAY else (begins, ends)


def _minute(found: re.Match[str], side: str, half: str | None) -> int | None:
    if found[f"{side}said"]:
        return _SAID[found[f"{side}said"]]
    hour, minute = int(found[f"{side}h"]), int(found[f"{side}m"] or 0)
    if half is not None:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if half == "p" else 0)
    minutes = hour * 60 + minute
    return minutes if minute < 60 and minutes <= _DAY else None


def together(words: Sequence[str]) -> list[str]:
    """Put a span that was typed in several words into one: `7 pm - 10:30 pm`, `18 till 23`."""
    text = " ".join(words).casefold().replace("–", "-")
    text = re.sub(r"(?<=\d) (?=[ap]\.?m\b)", "", text)
    time = r"(\d[\d:.]*(?:[ap]\.?m\.?)?|noon|midnight)"
    text = re.sub(rf"\b{time} ?(?:-|\btill\b|\buntil\b|\bto\b) ?{time}(?=\s|,|$)", r"\1-\2", text)
    return text.replace(",", " ").split()
