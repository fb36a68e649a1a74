"""Spell out dates in figures: 24/11 and 24.11. have one reading, 10/11 has two, 10.11 three."""

from __future__ import annotations

import re
from datetime import date

from finishlog.cli.typed.figures.unclear import Unclear
from finishlog.cli.typed.times.dates import calendar_day
from finishlog.cli.typed.times.time_typed import TimeTyped
from finishlog.cli.typed.times.times_of_day import CLOCK
from finishlog.errors import UsageFault

_FIGURES = r"(?<![\d./:-])(\d{1,2})([./])(\d{1,2})(\2(?:\d{2}(?:\d{2})?)?)?(?![\d./:-])"


def figures_spelled(words: str, typed: TimeTyped) -> str:
    """Spell out 24/11, 24.11. and 19.30; Unclear, with every reading, for 10/11 and 10.11."""
    found = re.search(_FIGURES, words)
    if found is None:
        return words
    readings = _readings(found, words)
    if not readings:
        typed.unreadable()
    if len((found[4] or "")[1:]) == 2:
        raise UsageFault(f"{found[0]}: which is the year?", f"type it as {typed.today}")
    if len(readings) > 1:
        meant = (_with(reading, found, words) for reading in readings)
        raise Unclear(
            f"{found[0].rstrip('.')} could be {' or '.join(readings)}",
            dict(zip(readings, meant, strict=True)),
            f"type {readings[0]} or {calendar_day(readings[0].casefold(), typed)}",
        )
    return _with(readings[0], found, words)


def _readings(found: re.Match[str], words: str) -> list[str]:
    """Return the day and month, the month and day, and the clock time that figures may be."""
    one, dot, two, tail = found.groups()
    year = (tail or "")[1:]
    readings = [
        f"{day} {date(2000, month, 1):%b} {year}".strip()
        for day, month in ((int(one), int(two)), (int(two), int(one)))
        if 1 <= month <= 12 and 1 <= day <= 31
    ]
    as_clock = dot == "." and tail is None and len(two) == 2 and int(one) < 24 and int(two) < 60
    if as_clock and not re.search(CLOCK, words):
        readings.append(f"{one}:{two}")
    return list(dict.fromkeys(readings))


def _with(reading: str, found: re.Match[str], words: str) -> str:
    spelled = f"{words[: found.start()]}{reading.lower()}{words[found.end() :]}"
    return " ".join(spelled.split())
