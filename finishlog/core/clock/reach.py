"""The drying clock: equivalent hours at the label's air.

A label says "recoat after 4 h" at its reference air. In other air the film gains k equivalent
hours an hour, and a stage is reached when they add up to the label's hours: the maturity method
of ASTM C1074 carried to films. How k follows from air stands in core.finish.rate_law, how it is
added up in core.clock.counting; here the hours of the rooms that a piece stood in become moments.

One running sum per room and way of counting is shared by all films (`Course.sums`).
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable
from datetime import datetime, timedelta
from functools import lru_cache

from msgspec import Struct

from finishlog.core.air.met import AirMet, Leg
from finishlog.core.air.room import Course
from finishlog.core.air.span import AirSpan, Known
from finishlog.core.clock.counting import Counting, gain, piece
from finishlog.core.clock.small_step import small_steps

_HOUR = timedelta(hours=1)
_TURNS = 200
_EXACT_H = 1e-11


class Hours(Struct, frozen=True):
    """Real hours by how their air is known; the `unread` of the unknown have none near them."""

    measured: float = 0.0
    held: float = 0.0
    usual: float = 0.0
    unknown: float = 0.0
    unread: float = 0.0

    def __add__(self, other: Hours) -> Hours:
        """Add the hours of two ways."""
        return Hours(
            self.measured + other.measured,
            self.held + other.held,
            self.usual + other.usual,
            self.unknown + other.unknown,
            self.unread + other.unread,
        )

    def __sub__(self, other: Hours) -> Hours:
        """Take a shorter way from a longer."""
        return self + Hours(
            -other.measured, -other.held, -other.usual, -other.unknown, -other.unread
        )


class Reached(Struct, frozen=True):
    """When a clock reaches its hours; `moment` None: not in this air. `hours` lie on the way."""

    moment: datetime | None
    hours: Hours


class _Sums:
    """The running sum of equivalent hours over a course, worked out only where it was asked for.

    It begins with the first span that was asked for; an earlier one makes it begin anew.
    """

    def __init__(self, course: Course, counting: Counting) -> None:
        self.course, self.counting = course, counting
        self.first, self.totals = len(course.spans), [0.0]
        self.small = small_steps(counting)

    def _extend(self) -> bool:
        """Add one more span; False when the last has no end."""
        span = self.course.spans[self.first + len(self.totals) - 1]
        length = span.length_h
        if length is None:
            return False
        gained = self.small(span, length)
        if gained is None:
            gained = gain(self.counting, span, length)
        self.totals.append(self.totals[-1] + gained)
        return True

    def begin(self, moment: datetime) -> None:
        """Make sure that a moment is reckoned with."""
        n = self.course.index(moment)
        if n < self.first:
            self.first, self.totals = n, [0.0]

    def at(self, moment: datetime) -> float:
        """Return the sum at a moment that is reckoned with."""
        n = self.course.index(moment)
        while len(self.totals) <= n - self.first:
            self._extend()
        span = self.course.spans[n]
        return self.totals[n - self.first] + gain(
            self.counting, span, (moment - span.start) / _HOUR
        )

    def when(self, total: float, since: datetime) -> datetime | None:
        """Return the first moment from `since` on at which the sum is `total`; None: never."""
        while self.totals[-1] < total and self._extend():
            pass
        # Where nothing is gained the sum stands still: it was reached before.
        n = max(bisect_left(self.totals, total) - 1, self.course.index(since) - self.first, 0)
        hours = self._inside(self.first + n, total - self.totals[n])
        if hours is None:
            return None
        return max(since, self.course.spans[self.first + n].start + timedelta(hours=hours))

    def _inside(self, n: int, left: float) -> float | None:
        """Return after how many hours of span `n` so much is gained; None: it never is."""
        span = self.course.spans[n]
        length = span.length_h
        if span.is_steady or length is None:
            k = self.counting.pace(span)
            return left / k if k > 0 else (0.0 if left <= 0 else None)
        whole = self.small(span, length)
        if whole is not None:
            return _inverse(lambda x: piece(self.counting, span, 0.0, x), left, length, whole)
        whole = gain(self.counting, span, length)
        return _inverse(lambda x: gain(self.counting, span, x), left, length, whole)


def _inverse(rises: Callable[[float], float], wanted: float, length: float, whole: float) -> float:
    """Return where a rising function of 0..length is `wanted`, by false position kept in check.

    `whole`: its value at the end.
    """
    low, high = 0.0, length
    at_low, at_high = -wanted, whole - wanted
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
    sums.begin(leg.start)
    return sums.at(end) - sums.at(leg.start)


# The pieces of a batch ask the same.
@lru_cache(maxsize=2048)
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
        sums.begin(begins)
        start = sums.at(begins)
        if leg.end is None or sums.at(leg.end) - start >= left:
            moment = sums.when(start + left, begins) if left else begins
            return Reached(moment, _on_the_way(met, moment))
        left -= sums.at(leg.end) - start
    raise ValueError("the last stay must have no end")


def _on_the_way(met: AirMet, until: datetime | None) -> Hours:
    """Sum up the real hours by how their air is known; of a way without end, all that ends."""
    found = Hours()
    for leg in met.legs:
        if until is not None and leg.start >= until:
            break
        end = leg.end if until is None or (leg.end and leg.end < until) else until
        found += _known(leg.room.course).between(leg.start, end)
    return found


class _KnownHours:
    """The running sums of real hours over a course, by how their air is known."""

    def __init__(self, course: Course) -> None:
        self.course = course
        self.totals = [Hours()]
        for span in course.spans[:-1]:
            self.totals.append(self.totals[-1] + _hours_of(span, span.length_h or 0.0))

    def between(self, start: datetime, end: datetime | None) -> Hours:
        """Return the hours between two moments; `end` None: all that end after the first."""
        if end is None:
            end = max(start, self.course.spans[-1].start)
        return self.until(end) - self.until(start)

    def until(self, moment: datetime) -> Hours:
        """Return the hours up to a moment."""
        n = self.course.index(moment)
        span = self.course.spans[n]
        return self.totals[n] + _hours_of(span, (moment - span.start) / _HOUR)


def _hours_of(span: AirSpan, hours: float) -> Hours:
    match span.known:
        case Known.MEASURED:
            return Hours(measured=hours)
        case Known.HELD:
            return Hours(held=hours)
        case Known.USUAL:
            return Hours(usual=hours)
        case Known.UNKNOWN:
            return Hours(unknown=hours, unread=0.0 if span.airs else hours)


def _known(course: Course) -> _KnownHours:
    known = course.sums.get(_KnownHours)
    if not isinstance(known, _KnownHours):
        known = course.sums[_KnownHours] = _KnownHours(course)
    return known
