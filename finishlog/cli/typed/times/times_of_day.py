"""Read the time of a day: `19:30`, `7pm`, `evening`, `half past nine tonight`.

An hour that could be of the morning or of the evening is read when a part of the day settles it,
and else refused with its readings; `half nine` is 8:30 to some and 9:30 to others.
"""

from __future__ import annotations

import re
from datetime import timedelta
from typing import NamedTuple

from finishlog.cli.typed.figures.unclear import Unclear
from finishlog.cli.typed.times.dates import DAY, DAY_WORDS, WEEKDAY, TimeTyped
from finishlog.errors import UsageFault

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
_NUMBER_WORDS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
                 "eleven", "twelve")  # fmt: skip

CLOCK = (
    r"(?<![\d:.])(?P<h>\d{1,2})(?::(?P<m>\d{2})(?::(?P<s>\d{2}))?(?![\d:])"
    r"(?: ?(?P<half>[ap])\.?m\b\.?)?| ?(?P<half_only>[ap])\.?m\b\.?)"
)
# `half past nine`, `quarter to 10`, `nine o'clock`, `9`.
_SPOKEN = (
    r"(?<![\d./:-])(?:(?:a )?(?P<lead>half past|half|quarter past|quarter to) )?"
    rf"(?P<hour>\d{{1,2}}|{'|'.join(_NUMBER_WORDS)})(?: ?o['’]?clock)?(?![\d./:-]| ?[a-z]*\d)\b"
)
_AFTER_THE_HOUR_MIN = {
    "half past": (30,),
    "half": (-30, 30),
    "quarter past": (15,),
    "quarter to": (-15,),
}


class Span(NamedTuple):
    """A clock time or a part of the day, after local midnight; `part` is the word, if any."""

    start: timedelta
    end: timedelta
    part: str = ""

    @property
    def is_clock(self) -> bool:
        """Tell a clock time, which is one instant, from a part of the day."""
        return self.start == self.end


WHOLE_DAY = Span(timedelta(), DAY)


def time_of_day(words: str, typed: TimeTyped) -> tuple[Span | None, str]:
    """Take the clock time or the part of the day out of the words; return it and the rest."""
    part: Span | None = None
    if found := re.search(rf"\b({'|'.join(_PARTS_H)})\b", words):
        first, last = (timedelta(hours=h) for h in _PARTS_H[found[1]])
        part = Span(first, last, found[1])
        words = _without(found, words)
    elif re.search(r"\bmidnight\b", words):
        raise UsageFault("midnight belongs to two days", "type today 00:00 or yesterday 23:59")
    if clock := re.search(CLOCK, words):
        span = _one_reading(_on_the_clock(clock, typed), clock, words, part, typed)
        return span, _without(clock, words)
    if spoken := _spoken(words, part):
        span = _one_reading(_in_words(spoken), spoken, words, part, typed)
        return span, _without(spoken, words)
    return part, words


def _without(found: re.Match[str], words: str) -> str:
    return " ".join(f"{words[: found.start()]} {words[found.end() :]}".split()).strip(" ,")


def _spoken(words: str, part: Span | None) -> re.Match[str] | None:
    """Find an hour in words or a bare figure, where what is left names a day or nothing."""
    found = re.search(_SPOKEN, words)
    if found is None:
        return None
    rest = _without(found, words)
    day = rest in {"", "this"} or re.fullmatch(DAY_WORDS, rest)
    # `21` may be the 21st, and `mon 21` too; `yesterday 21` and `21 tonight` are not.
    least_sure = part is None and (rest in {"", "this"} or re.search(WEEKDAY, rest))
    hour = int(found["hour"]) if found["hour"].isdecimal() else 1
    return found if day and 1 <= hour <= (12 if least_sure else 23) else None


def _in_words(found: re.Match[str]) -> list[timedelta]:
    """Return the readings of a spoken time, each in the morning and in the evening."""
    said = found["hour"]
    hour = int(said) if said.isdecimal() else _NUMBER_WORDS.index(said) + 1
    minutes = [hour * 60 + after for after in _AFTER_THE_HOUR_MIN.get(found["lead"], (0,))]
    if hour > 12:
        return [timedelta(minutes=m) for m in minutes]
    halves = [m % 720 + half for half in (0, 720) for m in minutes]
    return [timedelta(minutes=m) for m in sorted(halves)]


def _on_the_clock(found: re.Match[str], typed: TimeTyped) -> list[timedelta]:
    """Return the readings of a clock time: as written first, then twelve hours away."""
    hour, minute, second = (int(found[name] or 0) for name in ("h", "m", "s"))
    half = found["half"] or found["half_only"]
    if half and 1 <= hour <= 12:
        hour = hour % 12 + (12 if half == "p" else 0)
    elif half:
        hour = 24
    if hour > 23 or minute > 59 or second > 59:
        raise UsageFault(f"{typed.text!r} holds no time of a clock", "type 19:30 or 7:30pm")
    written = timedelta(hours=hour, minutes=minute, seconds=second)
    if half or not 1 <= hour <= 12 or found["h"].startswith("0"):
        return [written]
    return [written, (written + DAY / 2) % DAY]


def _one_reading(
    readings: list[timedelta],
    found: re.Match[str],
    words: str,
    part: Span | None,
    typed: TimeTyped,
) -> Span:
    """Choose the reading within the part of the day; without one, a clock time is as written."""
    if part is None:
        if "h" in found.groupdict() or len(readings) == 1:
            return Span(readings[0], readings[0])
        raise _which(readings, found, _without(found, words))
    inside = [
        shown
        for reading in readings
        for shown in (reading, reading + DAY)
        if part.start <= shown <= part.end
    ]
    if len(inside) > 1 and "h" not in found.groupdict():
        raise _which(inside, found, f"{_without(found, words)} {part.part}")
    if not inside:
        hint = "type 19:30 or 7:30pm"
        raise UsageFault(f"{typed.text!r}: that time is not in the {part.part}", hint)
    return Span(inside[0], inside[0], part.part)


def _which(readings: list[timedelta], found: re.Match[str], day: str) -> Unclear:
    clocks = [_clock(reading % DAY) for reading in readings]
    meant = [f"{day} {clock}".strip() for clock in clocks]
    return Unclear(
        f"{found[0].strip()!r} could be {' or '.join(clocks)}",
        dict(zip(meant, meant, strict=True)),
    )


def _clock(time: timedelta) -> str:
    hours, minutes = divmod(round(time / timedelta(minutes=1)), 60)
    return f"{hours}:{minutes:02}"
