"""Read when something happened, or is due, in the words that people type.

A clock time is one instant; `evening`, a bare day or `9:40 to 12:30` is a span, of which the log
keeps both ends.
Anything with two meanings (10/11, an hour that occurs twice) is asked at a terminal and refused
in a script with both of them, and work in the future is refused. What was understood is always
echoed by the command that asked.

Until 04:00 the person's day is still yesterday's: `this evening` and `tonight` typed at 01:00 are
the evening that has just passed. `yesterday` and `last night` keep the calendar's yesterday, so
`yesterday evening` typed at 01:00 is that same evening.

Where the clocks change, a time that came twice is refused with both instants, and can be typed
with its offset; one that was skipped is refused with the time that a clock which was not put
forward meant by it.
"""

from __future__ import annotations

import re
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from msgspec.structs import replace

from finishlog.cli.typed.figures.unclear import Unclear, asked
from finishlog.cli.typed.times.dates import (
    DAY,
    ISO_DAY,
    TimeTyped,
    calendar_day,
    days,
    is_days_away,
    is_without_a_year,
)
from finishlog.cli.typed.times.durations import LONGEST, length
from finishlog.cli.typed.times.times_of_day import CLOCK, WHOLE_DAY, Span, time_of_day
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.when import Sureness, When, at
from finishlog.errors import UsageFault

ABOUT = timedelta(minutes=15)

_OFFSET = r"(?:z|[+-]\d{2}(?::?\d{2})?)"
_CLOCK = r"(?:\d{1,2}[:.]\d{2}(?: ?[ap]\.?m\.?)?|\d{1,2} ?[ap]\.?m\.?)"
_FROM_TO = rf"(?:from )?((?:.* )?{_CLOCK}) ?(?:to|until|-|–) ?({_CLOCK})"
_ISO_INSTANT = rf"{ISO_DAY}[t ]\d{{2}}:\d{{2}}(?::\d{{2}}(?:\.\d{{1,6}})?)? ?{_OFFSET}"


@asked
def moment(text: str, now: datetime, zone: ZoneInfo, *, future: bool = False) -> When:
    """Read the time of the work, such as `19:30`, `2h ago`, `mon evening`, `24 Nov 7pm`.

    `future` admits times to come. UsageFault when it cannot be read, Unclear when it has two
    meanings.
    """
    typed = TimeTyped(text, now.astimezone(UTC), zone, future)
    return _from_to(typed) or _read(typed)


@asked
def due_moment(text: str, now: datetime, zone: ZoneInfo) -> datetime:
    """Read a due date, such as `Sat 5 Dec`, `2026-12-05`, `in 3 weeks`, `next fri`, in UTC.

    A bare date is due by its end, 23:59. UsageFault when it is past or cannot be read.
    """
    typed = TimeTyped(re.sub(r"(?i)^\s*by\s+", "", text), now.astimezone(UTC), zone, future=True)
    if vague := re.fullmatch(r"(?i)\s*in (\d+) ?m\s*", typed.text):
        clear = f"type in {vague[1]} months, or in {vague[1]}min"
        raise UsageFault(f"{text.strip()!r} could be minutes or months", clear)
    when = _read(typed)
    due = when.latest
    if when.sureness is Sureness.PART_OF_DAY and due.astimezone(zone).time() == time():
        due -= timedelta(minutes=1)
    if due < typed.now:
        hint = f"type a day to come, with its year: {typed.today + 10 * DAY}"
        raise UsageFault(f"{text.strip()!r} is past", hint)
    return due


def _from_to(typed: TimeTyped) -> When | None:
    """`9:40 to 12:30`, `yesterday 9:40-12:30`: work that took its time keeps both its ends."""
    words = " ".join(typed.text.casefold().split())
    found = re.fullmatch(_FROM_TO, words)
    if found is None or re.fullmatch(_ISO_INSTANT, words):
        return None
    begins, ends = (re.sub(r"(\d)\.(\d\d)(?=\D*$)", r"\1:\2", end) for end in found.groups())
    try:
        first = _read(replace(typed, text=begins))
        day = first.latest.astimezone(typed.zone).date()
        last = _read(replace(typed, text=f"{day} {ends}"))
    except Unclear as unclear:
        raise UsageFault(unclear.message, unclear.hint) from unclear
    if last.latest <= first.earliest:
        raise UsageFault(f"{typed.text.strip()!r} ends before it begins", "log it when it ended")
    return When(first.earliest, last.latest, Sureness.PART_OF_DAY)


def _read(typed: TimeTyped) -> When:
    words = " ".join(typed.text.casefold().split()).strip(",;!")
    if len(words) > 100:
        typed.unreadable()
    plain = re.sub(r"\b(?:about|around|approx|circa)\b|~", " ", words)
    about = plain != words
    plain = " ".join(re.sub(r"\b(?:in the|at|on|the|of)\b", " ", plain).split())
    plain = re.sub(rf"^({ISO_DAY})t(?=\d)", r"\1 ", plain)
    plain = re.sub(r"(\d)\.(\d\d ?[ap]\.?m\b)", r"\1:\2", plain)
    when = _instant_said(plain, typed) or _elapsed(plain, typed) or _on_a_day(plain, typed)
    if about and when.sureness is Sureness.EXACT:
        when = When(when.earliest - ABOUT, when.latest + ABOUT, Sureness.ABOUT)
    if typed.future:
        return when
    if when.earliest > typed.now:
        raise _still_to_come(typed, "type when it was done, such as 2h ago")
    # What has begun has not ended: the span is cut at now.
    return replace(when, latest=min(when.latest, typed.now))


def _still_to_come(typed: TimeTyped, instead: str) -> UsageFault:
    return UsageFault(f"{typed.text.strip()!r} is still to come", instead)


def _instant_said(words: str, typed: TimeTyped) -> When | None:
    """`now`, or ISO 8601 with its offset."""
    if words in {"now", "just now"}:
        return at(typed.now)
    if not re.fullmatch(_ISO_INSTANT, words):
        return None
    from dateutil.parser import isoparse

    try:
        said = isoparse(words.replace(" ", "T", 1).replace(" ", "").upper())
    except ValueError as error:
        raise UsageFault(f"{typed.text!r} does not exist", "type 2026-11-24 19:30") from error
    typed.in_our_time(said.date())
    return at(said.astimezone(UTC))


def _elapsed(words: str, typed: TimeTyped) -> When | None:
    """`2h ago`, `an hour ago`, `in 2h`: elapsed time, across any clock change."""
    found = re.fullmatch(r"(in )?(.+?)( ago)?", words)
    if found is None or is_days_away(words):
        return None
    if re.search(r"\d ?(?:mo|months?|y|yrs?|years?)\b|\b(?:months?|years?) ago\b", words):
        raise UsageFault(f"{typed.text!r} is no one day", f"type a date like {typed.today}")
    away = length(found[2])
    if away is None:
        return None
    if found[1] and found[3]:
        typed.unreadable()
    if not (found[1] or found[3]):
        raise _how_long(words, typed)
    if away > LONGEST:
        raise UsageFault(f"{typed.text!r} is more than ten years away", "type the date")
    return at(typed.now + away if found[1] else typed.now - away)


def _how_long(words: str, typed: TimeTyped) -> Unclear:
    """Offer what a bare length may mean: so long ago, or `21h30` on the clock."""
    meant = f"in {words}" if typed.future else f"{words} ago"
    choices = {meant: meant}
    hint = f'type "{meant}"' if typed.future else f'did you mean "{meant}"?'
    if clock := re.fullmatch(r"(1[3-9]|2[0-3]) ?h ?([0-5]\d)?", words):
        shown = f"{clock[1]}:{clock[2] or '00'}"
        choices[shown] = shown
        hint = f'type "{meant}", or {shown} if you meant the clock'
    return Unclear(f"{typed.text!r} says how long, not when", choices, hint)


def _on_a_day(words: str, typed: TimeTyped) -> When:
    """Read a day with a clock time, a part of the day or neither."""
    words = figures_spelled(words, typed)
    span, rest = time_of_day(words, typed)
    if span is None and not rest:
        typed.unreadable()
    named = days(rest, span.part if span else "", typed)
    for day in named:
        when = place(day, span or WHOLE_DAY, typed)
        if when.latest >= typed.now if typed.future else when.earliest <= typed.now:
            return when
    when = place(named[0], span or WHOLE_DAY, typed)
    if typed.future:
        return when
    if rest in {"", "this", "today"}:
        raise _yesterday(words, typed)
    if is_without_a_year(rest):
        raise _still_to_come(typed, "type its year too if it was in an earlier one")
    raise _still_to_come(typed, "type when it was done, such as 2h ago")


def _yesterday(words: str, typed: TimeTyped) -> Unclear:
    said = re.sub(r"\b(?:this|today)\b", "", words).replace("tonight", "evening").strip()
    meant = f"yesterday {said}"
    fault = _still_to_come(typed, f'did you mean "{meant}"?')
    return Unclear(fault.message, {meant: meant}, fault.hint)


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


def place(day: date, span: Span, typed: TimeTyped) -> When:
    """Place a span of a day; ends that a clock change doubles or skips widen it.

    UsageFault for a clock time that came twice or never, and for a day that a zone left out.
    """
    midnight = datetime.combine(day, time())
    start, end = midnight + span.start, midnight + span.end
    if span.is_clock:
        return at(_one_instant(start, typed))
    if not _real(midnight + DAY / 2, typed):
        raise UsageFault(f"{day} is a day that {typed.zone.key} left out", f"type {day + DAY}")
    return When(min(_both(start, typed)), max(_both(end, typed)), Sureness.PART_OF_DAY)


def _one_instant(wall: datetime, typed: TimeTyped) -> datetime:
    """Place a wall time that exists once; of two, one that is still to come is not meant."""
    real = _real(wall, typed)
    if not real:
        raise _skipped(wall, typed)
    meant = [i for i in real if typed.future or i <= typed.now] or real[:1]
    if len(set(meant)) > 1:
        clear = [i.astimezone(typed.zone).isoformat(" ", "minutes") for i in meant]
        said = f"{wall:%H:%M} came twice on {_day(wall)}"
        raise Unclear(said, {each: each for each in clear})
    return meant[0]


def _skipped(wall: datetime, typed: TimeTyped) -> Unclear:
    later = _both(wall, typed)[0].astimezone(typed.zone)
    clear = f"{later:%Y-%m-%d %H:%M}"
    gap = later.replace(tzinfo=None) - wall
    how = "an hour" if gap == timedelta(hours=1) else length_words(gap)
    return Unclear(
        f"the clocks skipped {wall:%H:%M} on {_day(wall)}",
        {f"{clear}, {how} later": clear},
        f"type {clear} if you meant {how} later",
    )


def _day(wall: datetime) -> str:
    return f"{wall:%a} {wall.day} {wall:%b %Y}"


def _real(wall: datetime, typed: TimeTyped) -> list[datetime]:
    """Return the instants, in order, at which the shop's clock shows a time: none, one or two."""
    shown = (i for i in _both(wall, typed) if i.astimezone(typed.zone).replace(tzinfo=None) == wall)
    return list(shown)


def _both(wall: datetime, typed: TimeTyped) -> tuple[datetime, datetime]:
    first, second = (wall.replace(tzinfo=typed.zone, fold=fold).astimezone(UTC) for fold in (0, 1))
    return first, second
