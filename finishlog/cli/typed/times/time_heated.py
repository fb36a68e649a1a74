"""Read spans to come: when nobody is in the shop; when a heater runs, `tonight 16 till 23`.

A bare figure is an hour here. Where the start is spoken in the hours of one half of the day, the
end is the first such hour after it: `tonight 7 till 11` ends at 23:00; `16 till 6` ends at 6:00.
"""

from __future__ import annotations

import re
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

from finishlog.cli.typed.times.moments import moment
from finishlog.core.log.when import Sureness, When
from finishlog.core.measure.quantities import typed_celsius
from finishlog.errors import UsageFault

LONGEST = timedelta(days=14)
_WARM = typed_celsius(18)
EXAMPLE = f"finishlog heat tonight 16 till 23 {_WARM}"

_TILL = r"(?:^|\s)(?:till|until|til|to|-|–)\s"
_HOUR = r"(?P<day>.*?)\s*(?P<h>\d{1,2})(?:[:.](?P<m>\d{2}))?(?P<half>\s?[ap]\.?m\.?)?"
_HOURS = r"(?<![\d.-])(\d{1,2}(?::\d{2})?)-(\d{1,2}(?::\d{2})?)(?![\d.-])"
_TONIGHT = r"\b(?:tonight|this evening)\b"


def heated_span(text: str, now: datetime, zone: ZoneInfo) -> When:
    """Read from when until when; UsageFault when it cannot be read, or is over before it begins."""
    words = " ".join(text.casefold().replace("–", "-").split())
    words = re.sub(_HOURS, r"\1 - \2", re.sub(r"^from ", "", words))
    halves = re.split(_TILL, f"{words} ", maxsplit=1)
    if len(halves) != 2 or not halves[1].strip():
        raise UsageFault(f"cannot read {text!r} as from when until when", f"type: {EXAMPLE}")
    begins, ends = (half.strip() for half in halves)
    start = _start(begins, now, zone)
    end = _end(ends, begins, start, zone)
    if not begins and end <= now:
        end = _end(ends, begins, now, zone)
    if not _names_a_day(begins) and end <= now:
        # `16 till 23` after 23:00 is tomorrow's.
        start = _at(f"tomorrow {_clock(begins)}", now, zone)
        end = _end(ends, begins, start, zone)
    if end <= start:
        raise UsageFault(f"{text!r} is over before it begins", f"type: {EXAMPLE}")
    if end - start > LONGEST:
        raise UsageFault(
            f"{text!r} is longer than two weeks",
            f"what is usual belongs to the room: finishlog room heating ROOM 16-23 {_WARM}",
        )
    return When(start, end, Sureness.EXACT)


def _start(begins: str, now: datetime, zone: ZoneInfo) -> datetime:
    if not begins or begins == "now":
        return now
    return _at(_spelled(begins), now, zone)


def _at(words: str, now: datetime, zone: ZoneInfo) -> datetime:
    when = moment(words, now, zone, future=True)
    if when.earliest != when.latest:
        raise UsageFault(f"{words!r} names no hour", f"type: {EXAMPLE}")
    return when.earliest


def _spelled(words: str) -> str:
    """Give a bare hour its minutes, and a day: `16` is `today 16:00`."""
    found = re.fullmatch(_HOUR, words)
    if found is None:
        return words
    day = found["day"].strip()
    late = not found["half"] and int(found["h"]) > 12
    # The evening's hours begin at 18:00 to whoever reads times; a heater is on before.
    day = re.sub(_TONIGHT, "today", day) if late else day
    return f"{day or 'today'} {_clock(words)}"


def _clock(words: str) -> str:
    found = re.fullmatch(_HOUR, words)
    if found is None:
        return words
    return f"{found['h']}:{found['m'] or '00'}{(found['half'] or '').strip()}"


def _names_a_day(words: str) -> bool:
    found = re.fullmatch(_HOUR, words)
    return bool(found["day"].strip()) if found else words not in {"", "now"}


def _end(ends: str, begins: str, start: datetime, zone: ZoneInfo) -> datetime:
    """Read the end: with a day of its own, else the first such time after the start."""
    if _names_a_day(ends):
        return _at(_spelled(ends), start, zone)
    day = start.astimezone(zone).date()
    clock = _clock(ends)
    spoken = re.fullmatch(_HOUR, begins)
    by_halves = spoken is not None and int(spoken["h"]) <= 12 and not spoken["half"]
    for away, shift in ((0, 0), (0, 12), (1, 0)):
        found = re.fullmatch(_HOUR, clock)
        later = found and by_halves and not found["half"] and int(found["h"]) < 12
        if shift and not later:
            continue
        on = day + timedelta(days=away)
        shown = f"{int(found['h']) + shift}:{found['m'] or '00'}" if found and shift else clock
        end = _at(f"{on} {shown}", datetime.combine(on, time(), zone), zone)
        if start < end < start + timedelta(days=1):
            return end
    return start


def away_span(since: str, until: str | None, now: datetime, zone: ZoneInfo) -> When:
    """Read a span to come: from the start of its first day or hour to the end of its last.

    Without `until` it is that one day or part of a day. UsageFault when it ends before it begins.
    """
    first = moment(since, now, zone, future=True)
    if until is None and first.earliest == first.latest:
        raise UsageFault(
            f"away from {since!r}, until when?", "finishlog away 'Fri 18:00' 'Mon 18:00'"
        )
    last = moment(until, now, zone, future=True) if until is not None else first
    if last.latest <= first.earliest or last.latest <= now:
        raise UsageFault(
            f"away from {since!r} until {until or since!r} is over before it begins",
            "type the first day and then the last: finishlog away 'Sat 28 Nov' 'Sun 6 Dec'",
        )
    return When(first.earliest, last.latest, Sureness.EXACT)
