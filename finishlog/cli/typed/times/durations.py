"""Read the lengths of time that people type: `40min`, `1h30`, `4-6h`; and passes so far apart.

`30m` by itself is refused: on a can an `m` may be minutes or months. Behind `ago` nothing but
minutes can be meant (cli.typed.times.moments), and so of hands-on minutes.
"""

from __future__ import annotations

import re
from datetime import datetime, timedelta
from typing import NamedTuple

from msgspec.structs import replace

from finishlog.cli.typed.figures.numbers import (
    FRACTION,
    NUMBER,
    check_thousands,
    counted,
    plain,
    quantity,
)
from finishlog.cli.typed.figures.unclear import Unclear, asked, insisted
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.when import When
from finishlog.errors import UsageFault

# Ten years: nothing in a shop is planned or kept for longer.
LONGEST = timedelta(days=3660)
# What a film may take; outside the likely the person is asked.
LONGEST_ON_A_LABEL = timedelta(days=366)
LIKELY_ON_A_LABEL = (timedelta(minutes=5), timedelta(days=120))
LIKELY_MINUTES = 600.0

_PAIR = rf"({FRACTION}|{NUMBER}) ?([a-z]+)"
_MINUTE, _HOUR, _DAY = timedelta(minutes=1), timedelta(hours=1), timedelta(days=1)
_UNITS: dict[str, timedelta] = {
    **dict.fromkeys(("m", "min", "mins", "minute", "minutes"), _MINUTE),
    **dict.fromkeys(("h", "hr", "hrs", "hour", "hours"), _HOUR),
    **dict.fromkeys(("d", "day", "days"), _DAY),
    **dict.fromkeys(("w", "wk", "wks", "week", "weeks"), 7 * _DAY),
}
_DAYS_OF_THE_VAGUE = {
    **dict.fromkeys(("mo", "mos", "month", "months"), 30),
    **dict.fromkeys(("y", "yr", "yrs", "year", "years"), 365),
}


class Hours(NamedTuple):
    """A length of time in hours, from low to high; equal when one figure was typed."""

    low_h: float
    high_h: float


# From the evening to the next morning; the longer counts for a wait. Common practice.
_OVERNIGHT = Hours(12.0, 16.0)
_SAID_ON_A_LABEL = {
    **dict.fromkeys(("overnight", "over night", "a night", "one night"), _OVERNIGHT),
    **dict.fromkeys(("next day", "the next day"), Hours(24.0, 24.0)),
}


@asked
def duration(text: str) -> timedelta:
    """Read one length of time: `40min`, `2 h`, `1h30`, `3 d`, `2 wk`.

    UsageFault for `30m`, months, a missing unit, nothing at all, or more than ten years.
    """
    return _one_length(text, plain(text), LONGEST, "type 40min, 2h, 1h30, 3d or 2wk")


@asked
def hours(text: str) -> Hours:
    """Read what a label says, `4h`, `30min`, `4-6h` or `24h-48h`, as hours.

    UsageFault for `30m`, months, a missing unit, nothing at all, more than a year; Unclear for
    less than 5 min or more than 120 d, unless a `!` insists.
    """
    bare, sure = insisted(text)
    if plain(bare) in _SAID_ON_A_LABEL:
        return _SAID_ON_A_LABEL[plain(bare)]
    low, dash, high = re.sub(r" ?(?:[-–]|\bto\b) ?", "-", plain(bare)).partition("-")
    if not dash:
        span = (_on_a_label(bare, low),) * 2
    else:
        if not re.search(r"[a-z]", low):
            low += "".join(re.findall(r"[a-z]+", high)[-1:])
        span = (_on_a_label(bare, low), _on_a_label(bare, high))
    if span[0] > span[1]:
        raise UsageFault(f"{bare!r} runs from long to short", "type the shorter first: 4-6h")
    if not sure:
        _likely(bare, *span)
    return Hours(span[0] / _HOUR, span[1] / _HOUR)


@asked
def minutes(text: str) -> float:
    """Read hands-on minutes: `45`, `45m`, `1h30`; Unclear above ten hours unless insisted."""
    bare, sure = insisted(text)
    words = plain(bare)
    if re.fullmatch(NUMBER, words):
        words += "min"
    found = length(words)
    hint = "type minutes: 45, or 1h30"
    if found is None or not timedelta() < found <= _DAY:
        raise UsageFault(f"{bare!r} is no time that hands are on a piece", hint)
    if not sure and found / _MINUTE > LIKELY_MINUTES:
        shown = length_words(found)
        raise Unclear(
            f"{shown} is long to have hands on a piece", {f"{shown}, as typed": f"{words}!"}
        )
    return found / _MINUTE


def length(text: str) -> timedelta | None:
    """Read `1.5h`, `1h30`, `90m`, `an hour` as a length of time; None when it is none.

    UsageFault for months and years, which have no one length.
    """
    words = counted(plain(text))
    check_thousands(words)
    if re.fullmatch(r"\d{1,2} ?h ?\d{1,2}", words):
        words += "min"
    if not re.fullmatch(rf"(?:{_PAIR} ?)+", words):
        return None
    pairs = [(quantity(value) or 0.0, unit) for value, unit in re.findall(_PAIR, words)]
    vague = [value * _DAYS_OF_THE_VAGUE.get(unit, 0) for value, unit in pairs]
    if any(vague):
        raise UsageFault(
            f"{text.strip()!r}: months and years have no one length",
            f"type days: {sum(vague):.0f}d",
        )
    if any(unit not in _UNITS for _, unit in pairs):
        return None
    return sum((value * _UNITS[unit] for value, unit in pairs), timedelta())


def _on_a_label(whole: str, words: str) -> timedelta:
    return _one_length(whole, words, LONGEST_ON_A_LABEL, "type 4h, 30min, 2d or 4-6h")


def _one_length(whole: str, words: str, longest: timedelta, hint: str) -> timedelta:
    if re.fullmatch(rf"{NUMBER} ?m", words):
        figure = words.rstrip(" m")
        days = (quantity(figure) or 1) * _DAYS_OF_THE_VAGUE["months"]
        clear = f"type {figure}min" + (f", or days: {days:g}d" if days * _DAY <= longest else "")
        raise UsageFault(f"{whole!r} could be minutes or months", clear)
    if re.fullmatch(NUMBER, words):
        raise UsageFault(f"{whole!r} has no unit", f"type {words}h, {words}min or {words}d")
    found = length(words)
    if found is None:
        raise UsageFault(f"cannot read {whole!r} as a length of time", hint)
    if not timedelta() < found <= longest:
        raise UsageFault(f"{whole!r} is no time that a finish takes", hint)
    return found


def _likely(typed: str, low: timedelta, high: timedelta) -> None:
    shortest, longest = LIKELY_ON_A_LABEL
    if shortest <= low and high <= longest:
        return
    end, how = (low, "short") if low < shortest else (high, "long")
    raise Unclear(
        f"{length_words(end)} is very {how} for a finish",
        {f"{typed.strip()}, as the can says": f"{typed.strip()}!"},
        f"type {typed.strip()}! if the can says so",
    )


# More in one sitting is a slip of the finger.
_MOST = 40


def sitting(
    at: When, now: datetime, passes: int, every: str | None, *, began: bool
) -> tuple[tuple[When, ...], When]:
    """Return the passes before the last one, and the last.

    `at` is when the first went on if that was said (`began`), else when the last did. UsageFault
    for passes without their distance, or a last pass that is still to come.
    """
    if passes == 1 and every is None:
        return (), at
    if not 2 <= passes <= _MOST:
        raise UsageFault(f"{passes} passes?", f"type 2 to {_MOST}: --passes 4 --every 30min")
    if every is None:
        raise UsageFault(f"{passes} passes, how far apart?", "add --every 30min")
    between = duration(every)
    before_at = timedelta() if began else between * (passes - 1)
    offsets = [between * n - before_at for n in range(passes)]
    times = [replace(at, earliest=at.earliest + o, latest=at.latest + o) for o in offsets]
    if times[-1].latest > now:
        raise UsageFault(
            f"{passes} passes every {length_words(between)} from then on end after now",
            "log those that are on, with --at for the first of them",
        )
    return tuple(times[:-1]), times[-1]
