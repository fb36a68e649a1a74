"""The drying clock: equivalent hours at the label's air.

A label says "recoat after 4 h" at its reference air. In other air the film gains k equivalent
hours an hour, and a stage is reached when they add up to the label's hours: the maturity method
of ASTM C1074 carried to films. How k follows from air stands in core.rate_law, how it is added up
in core.counting; here the hours of the rooms that a piece stood in become moments.

One running sum per room and way of counting is shared by all films (`Course.sums`).
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from finishlog.core.air_met import AirMet, Leg
from finishlog.core.air_span import Known
from finishlog.core.counting import Counting, gain
from finishlog.core.room_air import Course

_HOUR = timedelta(hours=1)
_TURNS = 200
_EXACT_H = 1e-11


@dataclass(frozen=True, slots=True)
class Hours:
    """Real hours by how their air is known; the `unread` of the unknown have none near them."""

    measured: float = 0.0
    usual: float = 0.0
    unknown: float = 0.0
    unread: float = 0.0


@dataclass(frozen=True, slots=True)
class Reached:
    """When a clock reaches its hours; `moment` None: not in this air. `hours` lie on the way."""

    moment: datetime | None
    hours: Hours


class _Sums:
    """The running sum of equivalent hours over a course, worked out as far as it was asked."""

    def __init__(self, course: Course, counting: Counting) -> None:
        self.course, self.counting = course, counting
        self.totals = [0.0]

    def _extend(self) -> bool:
        """Add one more span; False when the last has no end."""
        n = len(self.totals) - 1
        length = self.course.spans[n].length_h
        if length is None:
            return False
        self.totals.append(self.totals[n] + gain(self.counting, self.course.spans[n], length))
        return True

    def at(self, moment: datetime) -> float:
        """Return the sum at a moment."""
        n = self.course.index(moment)
        while len(self.totals) <= n:
            self._extend()
        span = self.course.spans[n]
        return self.totals[n] + gain(self.counting, span, (moment - span.start) / _HOUR)

    def when(self, total: float, since: datetime) -> datetime | None:
        """Return the first moment from `since` on at which the sum is `total`; None: never."""
        while self.totals[-1] < total and self._extend():
            pass
        n = max(bisect_right(self.totals, total) - 1, 0)
        # Where nothing is gained the sum stands still: it was reached before.
        while n > 0 and self.totals[n] >= total:
            n -= 1
        n = max(n, self.course.index(since))
        left = total - self.totals[n]
        hours = self._inside(n, left)
        if hours is None:
            return None
        return max(since, self.course.spans[n].start + timedelta(hours=hours))

    def _inside(self, n: int, left: float) -> float | None:
        """Return after how many hours of span `n` so much is gained; None: it never is."""
        span = self.course.spans[n]
        length = span.length_h
        if span.is_steady or length is None:
            k = self.counting.pace(span)
            return left / k if k > 0 else (0.0 if left <= 0 else None)
        return _inverse(lambda x: gain(self.counting, span, x), left, length)


def _inverse(rises: Callable[[float], float], wanted: float, length: float) -> float:
    """Return where a rising function of 0..length is `wanted`, by false position kept in check."""
    low, high = 0.0, length
    at_low, at_high = -wanted, rises(length) - wanted
    middle = high
    for turn in range(_TURNS):
        if at_high - at_low <= 0 or high - low < _EXACT_H:
            break
        middle = low - at_low * (high - low) / (at_high - at_low)
        if turn % 4 == 3:
            middle = (low + high) / 2
        at_middle = rises(middle) - wanted
        if abs(at_middle) < _EXACT_H:
            return middle
        if at_middle < 0:
            low, at_low = middle, at_middle
        else:
            high, at_high = middle, at_middle
    return high


def _sums(course: Course, counting: Counting) -> _Sums:
    known = course.sums.get(counting)
    if not isinstance(known, _Sums):
        known = course.sums[counting] = _Sums(course, counting)
    return known


def gained(met: AirMet, counting: Counting, until: datetime) -> float:
    """Return the equivalent hours from the beginning of `met` to `until`."""
    return sum(_gained_in(leg, counting, until) for leg in met.legs if leg.start < until)


def _gained_in(leg: Leg, counting: Counting, until: datetime) -> float:
    end = until if leg.end is None else min(leg.end, until)
    sums = _sums(leg.room.course, counting)
    return sums.at(end) - sums.at(leg.start)


def reach(hours: float, met: AirMet, counting: Counting, since: datetime | None = None) -> Reached:
    """Add up equivalent hours until there are `hours` of them.

    From the beginning of `met`, or from a later moment `since`; the hours on the way always count
    from the beginning.
    """
    left = max(hours, 0.0)
    since = since or met.start
    for leg in met.legs:
        if leg.end is not None and leg.end <= since:
            continue
        sums, begins = _sums(leg.room.course, counting), max(leg.start, since)
        start = sums.at(begins)
        if leg.end is None or sums.at(leg.end) - start >= left:
            moment = sums.when(start + left, begins) if left else begins
            return Reached(moment, _on_the_way(met, moment))
        left -= sums.at(leg.end) - start
    raise ValueError("the last stay must have no end")


def _on_the_way(met: AirMet, until: datetime | None) -> Hours:
    """Sum up the real hours by how their air is known; of a way without end, all that ends."""
    found = dict.fromkeys(Known, 0.0)
    unread = 0.0
    for leg in met.legs:
        if until is not None and leg.start >= until:
            break
        end = leg.end if until is None or (leg.end and leg.end < until) else until
        for known, hours, nothing in _known(leg, end):
            found[known] += hours
            unread += hours if nothing else 0.0
    return Hours(found[Known.MEASURED], found[Known.USUAL], found[Known.UNKNOWN], unread)


def _known(leg: Leg, end: datetime | None) -> Iterable[tuple[Known, float, bool]]:
    for span in leg.room.course.between(leg.start, end):
        length = span.length_h
        if length is not None:
            yield span.known, length, not span.airs
