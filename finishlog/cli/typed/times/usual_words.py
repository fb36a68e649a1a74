"""Read and write usual days: `0:13C/65% 7:12C 17:18C/55%`, `16-23 18C`, `nov-mar`."""

from __future__ import annotations

import re
from collections.abc import Sequence

from finishlog.cli.typed.figures.measures import humidity, temperature
from finishlog.cli.typed.times.week import DAYS as DAYS_BEGIN
from finishlog.cli.typed.times.week import clock_face, days_said, days_words, span_of_day, together
from finishlog.core.air.usual_day import EVERY_DAY, UsualDay, UsualHour
from finishlog.core.measure.quantities import celsius, typed_celsius
from finishlog.core.measure.units import Temperature
from finishlog.errors import UsageFault

NONE = "none"
MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")

_POINT = re.compile(r"(\d{1,2})(?::(\d{2}))?[:=]([+-]?\d[^/]*)(?:/(.+))?", re.IGNORECASE)
_WARM = typed_celsius(18)
DAY_EXAMPLE = f"0:{typed_celsius(13)}/65% 7:{typed_celsius(12)} 17:{_WARM}/55%"
_POINT_EXAMPLE = f"type the hour and its air: {DAY_EXAMPLE}"
_SPAN_EXAMPLE = f"type from when until when, and how warm: 16-23 {_WARM}, or mon-fri 16-23 {_WARM}"
# What the words after the name of a room begin with; where that is left out, the first of them.
HOURS_BEGIN = r"\d{1,2}(?::\d{2})?[:=].*"
HEATING_BEGINS = rf"\d.*|noon.*|midnight.*|(?:{'|'.join(DAYS_BEGIN)})[a-z]*(?:[-,].*)?"
_SEASON_EXAMPLE = "type the first and the last month: --season nov-mar"


def room_and(words: Sequence[str], begins: str) -> tuple[str | None, list[str]]:
    """Tell the name of a room, None where it was left out, from what is said of it."""
    said = not words or words[0].casefold() == NONE
    if said or re.fullmatch(begins, words[0], re.IGNORECASE):
        return None, list(words)
    return words[0], list(words[1:])


def read_hours(words: Sequence[str], unit: Temperature) -> tuple[UsualHour, ...]:
    """Read the points of a day; `none`: no points. UsageFault when they cannot be read."""
    if [word.casefold() for word in words] == [NONE]:
        return ()
    hours = [_hour(word, unit) for word in words]
    minutes = [hour.minute for hour in hours]
    for n, minute in enumerate(minutes):
        if minute in minutes[:n]:
            raise UsageFault(f"{clock_face(minute)} is given twice", _POINT_EXAMPLE)
    return tuple(sorted(hours, key=lambda hour: hour.minute))


def _hour(word: str, unit: Temperature) -> UsualHour:
    found = _POINT.fullmatch(word)
    if found is None:
        raise UsageFault(f"cannot read {word!r} as an hour with its air", _POINT_EXAMPLE)
    hour, minute, warm, damp = found.groups()
    if not re.search("[cf]", warm, re.IGNORECASE):
        raise UsageFault(f"{word!r} may be a time: say °C or °F", _POINT_EXAMPLE)
    minutes = int(hour) * 60 + int(minute or 0)
    if minutes >= 24 * 60 or int(minute or 0) > 59:
        raise UsageFault(f"{word!r} is no time of the day", _POINT_EXAMPLE)
    return UsualHour(minutes, temperature(warm, unit), humidity(damp) if damp else None)


def read_heating(
    words: Sequence[str], unit: Temperature
) -> tuple[int, int, float | None, tuple[int, ...]]:
    """Read `mon-fri 16-23 18C` as minutes of the day, °C and days, Monday 0; no days: every one.

    `none` is from 0 to 0, no heating.
    """
    if [word.casefold() for word in words] == [NONE]:
        return 0, 0, None, EVERY_DAY
    said = together(words)
    at = next((n for n, word in enumerate(said) if span_of_day(word)), 0)
    span = span_of_day(said[at]) if said else None
    days = sorted({day for word in said[:at] for day in days_said(word)})
    said = said[at:]
    if span is None or len(said) > 2:
        raise UsageFault(f"cannot read {' '.join(words)!r} as heating", _SPAN_EXAMPLE)
    begins, ends = span[0], span[1] % (24 * 60)
    if begins == ends:
        raise UsageFault(f"{said[0]!r} begins and ends at once", _SPAN_EXAMPLE)
    warm = temperature(said[1], unit) if len(said) == 2 else None
    return begins, ends, warm, tuple(days) or EVERY_DAY


def read_season(typed: str) -> tuple[int, int]:
    """Read `nov-mar`, or one month, as the numbers of the first and the last month."""
    months = [_month(word, typed) for word in re.split(r"[-–]", typed)]
    if len(months) > 2:
        raise UsageFault(f"cannot read {typed!r} as a season", _SEASON_EXAMPLE)
    return months[0], months[-1]


def _month(word: str, typed: str) -> int:
    short = word.strip().casefold()[:3]
    if short not in MONTHS:
        raise UsageFault(f"cannot read {typed!r} as a season", _SEASON_EXAMPLE)
    return MONTHS.index(short) + 1


def season_words(season: tuple[int, int] | None) -> str:
    """Write a season: `Nov to Mar`, `Jan`, `all the year`."""
    if season is None:
        return "all the year"
    first, last = (MONTHS[month - 1].title() for month in season)
    return first if first == last else f"{first} to {last}"


def heating_words(day: UsualDay) -> str:
    """Write when a day is heated: `mon-fri 16:00 to 23:00, to 18 °C`; empty when it is not."""
    if day.heated is None:
        return ""
    warm, (begins, ends) = "as warm as it gets", day.heated
    if day.heated_c is not None:
        warm = f"to {celsius(day.heated_c, 1)}"
    return f"{days_words(day.heated_days)}{clock_face(begins)} to {clock_face(ends)}, {warm}"
