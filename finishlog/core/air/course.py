"""The air of a room through all time, stretch by stretch, and what adds up along it.

The sums belong to the course: films that stand in one room and count alike share them, and they go
when the room goes.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Hashable, Iterable, Iterator
from datetime import datetime, timedelta
from itertools import groupby, pairwise
from operator import sub
from typing import NamedTuple, Protocol

from finishlog.core.air.span import AirSpan, Known

_HOUR = timedelta(hours=1)
# From when on what is counted goes at which pace an hour, through a stretch.
Pieces = Callable[[AirSpan], Iterable[tuple[datetime, float]]]


class Counted(Hashable, Protocol):
    """What may be added up along the air of a room."""

    def pieces(self) -> Pieces:
        """Return how a stretch counts, piece by piece; each holds until the next begins."""
        ...


class RunningSum:
    """What is gained along some stretches, worked out only where it was asked for.

    They follow each other and the last has no end.
    """

    def __init__(self, course: Course, pieces: Pieces) -> None:
        """Count nothing yet."""
        self._course, self._pieces = course, pieces
        # Which stretches are counted, and their pieces with the sum where each begins.
        self._first = self._next = 0
        self._starts: list[datetime] = []
        self._paces: list[float] = []
        self._totals: list[float] = []

    def at(self, moment: datetime) -> float:
        """Return the sum at a moment; only differences between two of them mean something."""
        starts = self._starts
        if not starts or not starts[0] <= moment < starts[-1]:
            self._reckon_with(self._course.index(moment))
        n = max(0, bisect_right(self._starts, moment) - 1)
        return self._totals[n] + self._paces[n] * ((moment - self._starts[n]) / _HOUR)

    def when(self, total: float, since: datetime) -> datetime | None:
        """Return the first moment from `since` on at which the sum is `total`; None: never.

        The sum at `since` must have been asked for, and be less.
        """
        while self._totals[-1] < total and self._next < len(self._course.spans):
            self._extend(self._next + 1)
        n = max(0, bisect_left(self._totals, total) - 1)
        if self._paces[n] <= 0:
            return None
        hours = (total - self._totals[n]) / self._paces[n]
        return max(since, self._starts[n] + timedelta(hours=hours))

    def _reckon_with(self, n: int) -> None:
        """Count a stretch, and all between it and those that are counted already."""
        if not self._starts:
            self._first = self._next = n
        if n < self._first:
            # What is counted already follows on the stretches before it.
            starts, paces, totals, upto = self._starts, self._paces, self._totals, self._next
            self._starts, self._paces, self._totals, self._next = [], [], [], n
            self._extend(self._first)
            lower = totals[0] - self._total_at(starts[0])
            self._totals = [total + lower for total in self._totals] + totals
            self._starts, self._paces = self._starts + starts, self._paces + paces
            self._first, self._next = n, upto
        self._extend(n + 1)

    def _extend(self, upto: int) -> None:
        starts, paces, totals = self._starts, self._paces, self._totals
        for span in self._course.spans[self._next : upto]:
            for start, pace in self._pieces(span):
                totals.append(self._total_at(start))
                starts.append(start)
                paces.append(pace)
        self._next = max(self._next, upto)

    def _total_at(self, end: datetime) -> float:
        """Return the sum where what is counted so far ends; none: nothing is."""
        if not self._starts:
            return 0.0
        return self._totals[-1] + self._paces[-1] * ((end - self._starts[-1]) / _HOUR)


class Hours(NamedTuple):
    """Real hours by how their air is known; the `unread` of the unknown have none near them."""

    measured: float = 0.0
    held: float = 0.0
    usual: float = 0.0
    unknown: float = 0.0
    unread: float = 0.0

    def plus(self, hours: float, told: Hours) -> Hours:
        """Add some hours to those that they belong to: 1 in `told`, else 0."""
        measured, held, usual, unknown, unread = told
        return Hours(
            self.measured + hours * measured,
            self.held + hours * held,
            self.usual + hours * usual,
            self.unknown + hours * unknown,
            self.unread + hours * unread,
        )


class Course:
    """The air of a room from the beginning of time on: spans in order, the last without an end."""

    def __init__(self, spans: Iterable[AirSpan]) -> None:
        """Sum up nothing yet."""
        self.spans = tuple(spans)
        self._starts = [span.start for span in self.spans]
        self._sums: dict[Counted, RunningSum] = {}
        # Where it is known in another way than before, how, and the hours up to there.
        runs = [(told, next(run).start) for told, run in groupby(self.spans, key=_told)]
        self._told, self._changes = zip(*runs, strict=True)
        self._hours = [Hours()]
        for (told, start), (_, end) in pairwise(runs):
            self._hours.append(self._hours[-1].plus((end - start) / _HOUR, told))

    def index(self, moment: datetime) -> int:
        """Return the number of the span that a moment lies in."""
        return max(0, bisect_right(self._starts, moment) - 1)

    def between(self, start: datetime, end: datetime | None) -> Iterator[AirSpan]:
        """Yield the spans from one moment to another, cut at both."""
        for n in range(self.index(start), len(self.spans)):
            span = self.spans[n]
            if end is not None and max(span.start, start) >= end:
                return
            until = span.end if end is None or (span.end and span.end <= end) else end
            yield span.cut(max(span.start, start), until)

    def sum_of(self, counted: Counted) -> RunningSum:
        """Return what is gained along it by one way of counting."""
        known = self._sums.get(counted)
        if known is None:
            known = self._sums[counted] = RunningSum(self, counted.pieces())
        return known

    def hours(self, start: datetime, end: datetime | None) -> Hours:
        """Return the hours between two moments; `end` None: all that end after the first."""
        if end is None:
            end = max(start, self.spans[-1].start)
        return Hours(*map(sub, self._hours_until(end), self._hours_until(start)))

    def _hours_until(self, moment: datetime) -> Hours:
        n = max(0, bisect_right(self._changes, moment) - 1)
        return self._hours[n].plus((moment - self._changes[n]) / _HOUR, self._told[n])


_MEASURED, _HELD, _USUAL = Hours(measured=1), Hours(held=1), Hours(usual=1)
_READ_NEAR, _UNREAD = Hours(unknown=1), Hours(unknown=1, unread=1)


def _told(span: AirSpan) -> Hours:
    """Return which hours those of a stretch are."""
    match span.known:
        case Known.MEASURED:
            return _MEASURED
        case Known.HELD:
            return _HELD
        case Known.USUAL:
            return _USUAL
        case Known.UNKNOWN:
            return _READ_NEAR if span.airs else _UNREAD
