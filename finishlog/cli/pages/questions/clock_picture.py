"""Draw a wait in a few lines of text: the air, the pace, the hours done, and how each is known."""

from __future__ import annotations

from collections.abc import Sequence

from finishlog.asks.bench.why import ClockLine
from finishlog.clock import Clock
from finishlog.core.air.span import Known
from finishlog.core.film.drying_course import CourseHour
from finishlog.core.measure.quantities import celsius

_BARS = "▁▂▃▄▅▆▇█"
_KNOWN = {
    Known.MEASURED: ("=", "read"),
    Known.HELD: ("~", "as read"),
    Known.USUAL: ("-", "usual"),
    Known.UNKNOWN: ("?", "unknown"),
}


def clock_picture(clock_line: ClockLine, clock: Clock) -> list[tuple[str, str]]:
    """Return the rows of the picture: what a row shows, and the row; none without a course."""
    course = clock_line.course
    if not course:
        return []
    rows = [("air", _air(course))] if any(hour.air for hour in course) else []
    done = course[-1].done_h
    return [
        *rows,
        ("speed", f"{_bars([h.pace for h in course], 0, 1)} of the label's"),
        ("done", f"{_bars([h.done_h for h in course], 0, done)} {done:.1f} label hours"),
        ("known", _known(course)),
        ("", _times(course, clock)),
    ]


def _air(course: Sequence[CourseHour]) -> str:
    warm = [hour.air.temperature_c for hour in course if hour.air]
    low, high = min(warm), max(warm)
    # A room that hardly changes is drawn flat.
    spread = max(high - low, 2.0)
    bars = "".join(
        _bar(hour.air.temperature_c - high, -spread, 0) if hour.air else " " for hour in course
    )
    words = celsius(low, 1)
    if high - low >= 0.05:
        words = f"{words} to {celsius(high, 1)}"
    return f"{bars} {words}"


def _bars(values: Sequence[float], low: float, high: float) -> str:
    return "".join(_bar(value, low, high) for value in values)


def _bar(value: float, low: float, high: float) -> str:
    share = (value - low) / (high - low) if high > low else 1.0
    return _BARS[min(len(_BARS) - 1, max(0, int(share * len(_BARS))))]


def _known(course: Sequence[CourseHour]) -> str:
    kinds = dict.fromkeys(hour.known for hour in course)
    legend = ", ".join(" ".join(_KNOWN[kind]) for kind in kinds)
    return f"{''.join(_KNOWN[h.known][0] for h in course)} {legend}"


def _times(course: Sequence[CourseHour], clock: Clock) -> str:
    """Write the first and the last moment under their ends, and a mark where now is."""
    first, last = (clock.words(h.moment) for h in (course[0], course[-1]))
    line = list(first.ljust(len(course)))
    line[len(course) - len(last) :] = last
    now = sum(hour.moment <= clock.now for hour in course) - 1
    free = len(first) < now < len(course) - len(last) - 1
    if free:
        line[now] = "^"
    return "".join(line) + (" ^ now" if free else "")
