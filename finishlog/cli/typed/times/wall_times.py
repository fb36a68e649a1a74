"""Place a time of the shop's clock in UTC, over the nights in which the clocks change.

A time that came twice is refused with both instants, and can be typed with its offset. One that
the clocks skipped is refused with the time that a clock which was not put forward meant by it.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta

from finishlog.cli.typed.figures.unclear import Unclear
from finishlog.cli.typed.times.time_typed import DAY, TimeTyped
from finishlog.cli.typed.times.times_of_day import Span
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.when import Sureness, When, at
from finishlog.errors import UsageFault


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
