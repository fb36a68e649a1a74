"""The clock of oily rags: a clock in air. Warmth hastens what heats, cold delays what stiffens.

It never closes anything: it says from when a heap is overdue, and from when stiff may be tested.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable
from datetime import datetime, timedelta

from finishlog.core.air.met import AirMet, Leg
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirSpan, Known
from finishlog.core.clock.counting import Clock, Counting
from finishlog.core.clock.reach import reach
from finishlog.core.finish.classes import Mechanism
from finishlog.core.finish.rate_law import RateLaw
from finishlog.core.published.safety_notes import RagsFigures
from finishlog.core.safety.oily_waste import Stiffens

# For how long a reading still tells of the weather: heat passes sooner than cold. Our own bounds.
_HEAT_STAYS = timedelta(days=2)
_COLD_STAYS = timedelta(days=7)


def overdue_from(since: datetime, rooms: Iterable[RoomAir], figures: RagsFigures) -> datetime:
    """Return from when what lies there since a moment is overdue; the warmest room decides.

    An hour to the reference temperature, shorter above it, and none from the moment on at which a
    room is as warm as `overdue_at_once_from_c`.
    """
    reference = Air(figures.overdue_reference_c.value, 50.0)
    factor = 2.0 ** (10.0 / figures.overdue_halves_per_c.value)
    counting = Counting(RateLaw(Mechanism.CROSS_LINKING, reference, factor), Clock.WINDOW)
    hours = figures.overdue_after_h.value
    end = since + timedelta(hours=hours)
    for room in (r for r in rooms if _is_known(r, since, _HEAT_STAYS)):
        reached = reach(hours, AirMet((Leg(room, since, None),)), counting).moment
        end = end if reached is None else min(end, reached)
        end = min(end, _as_warm_from(room, since, end, figures.overdue_at_once_from_c.value))
    return end


def stiff_from(
    since: datetime, stiffens: Stiffens, rooms: Iterable[RoomAir], figures: RagsFigures
) -> datetime | None:
    """Return from when what lies spread since a moment may be tested; None: no date tells.

    Nobody reads a thermometer beside the rags: the coldest room that is known is the nearest to
    the air outdoors, so the one in which they take longest decides.
    """
    if stiffens is Stiffens.NEVER:
        return None
    days = figures.stiff_after_gel_h if stiffens is Stiffens.LATER else figures.stiff_after_h
    needed, floor = timedelta(hours=days.value), figures.stiff_counts_from_c.value
    found = [_warm_for(r, since, needed, floor) for r in rooms if _is_known(r, since, _COLD_STAYS)]
    known = [moment for moment in found if moment is not None]
    if len(known) < len(found):
        return None
    return max(known, default=since + needed)


def _is_known(room: RoomAir, moment: datetime, speaks_for: timedelta) -> bool:
    """Tell whether the air of a room is known at a moment, or was read not long before."""
    if room.course.spans[room.course.index(moment)].known is not Known.UNKNOWN:
        return True
    n = bisect_right(room.readings, moment, key=lambda reading: reading.at)
    return n > 0 and moment - room.readings[n - 1].at <= speaks_for


def _as_warm_from(room: RoomAir, start: datetime, end: datetime, celsius: float) -> datetime:
    """Return the first moment at which a room is so warm; `end` when it is not before that."""
    for span in room.course.between(start, end):
        found = [_crossing(span, a, b, celsius) for a, b in span.ramps]
        moments = [moment for moment in found if moment is not None]
        if moments:
            return min(*moments, end)
    return end


def _crossing(span: AirSpan, first: Air, last: Air, celsius: float) -> datetime | None:
    """Return when the air of a span first is as warm as that; None when it never is."""
    if first.temperature_c >= celsius:
        return span.start
    if last.temperature_c < celsius or span.end is None:
        return None
    rise = last.temperature_c - first.temperature_c
    return span.start + (span.end - span.start) * ((celsius - first.temperature_c) / rise)


def _warm_for(room: RoomAir, since: datetime, needed: timedelta, floor_c: float) -> datetime | None:
    """Return when a room was at least so warm for so long; None when that never comes."""
    left = needed
    for span in room.course.between(since, None):
        begins, ends = _warm_part(span, floor_c)
        if begins is None:
            continue
        if ends is None or ends - begins >= left:
            return begins + left
        left -= ends - begins
    return None


def _warm_part(span: AirSpan, floor_c: float) -> tuple[datetime | None, datetime | None]:
    """Return from when to when all that the air of a span may be is warm enough."""
    if span.end is None or span.is_steady:
        warm = all(air.temperature_c >= floor_c for air in (*span.airs, *span.ends))
        return (span.start, span.end) if warm else (None, None)
    begins, ends, length = span.start, span.end, span.end - span.start
    for first, last in span.ramps:
        a, b = first.temperature_c - floor_c, last.temperature_c - floor_c
        if a < 0 and b < 0:
            return None, None
        if a < 0 <= b:
            begins = max(begins, span.start + length * (a / (a - b)))
        elif b < 0 <= a:
            ends = min(ends, span.start + length * (a / (a - b)))
    return (begins, ends) if begins < ends else (None, None)
