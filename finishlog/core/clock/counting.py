"""How a clock counts through a stretch of air: k capped, stopped at limits, by quarter hours.

Two clocks never mix. A wait is never shortened (k <= 1); a window is never lengthened (k >= 1).
Steady air counts in one step. Where it runs from one value to another the stretch is counted by
quarter hours, or by what a logger read within them, and oftener where it runs steeply; it is cut
where its straight line crosses a limit, and k is that of the middle of each piece. Against exact
integration that is some seconds a day; the law itself is an estimate.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from enum import Enum
from functools import cache
from itertools import pairwise
from math import ceil

from msgspec import Struct

from finishlog.core.air.course import Pieces
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.span import AirSpan, Known, Ramp, between
from finishlog.core.finish.classes import Limits
from finishlog.core.finish.rate_law import Law, RateAt
from finishlog.core.measure.as_written import WRITTEN_TO

# An assumption that keeps dates finite in air so damp that the estimate would say "never".
SLOWEST = 0.05
# Saturated: dew. No class goes on or dries in it.
DEW_PCT = 100.0
# How far the air may go in one step: in time, in °C, in % RH.
_STEP, _STEP_C, _STEP_PCT = timedelta(minutes=15), 0.5, 2.5


class Clock(Enum):
    """What is counted: a wait, whose k never exceeds 1, or a window, whose k is never below 1."""

    WAIT = "wait"
    WINDOW = "window"


class Counting(Struct, frozen=True):
    """A rate law, the clock that it drives, and the limits outside of which a wait stands still.

    `doubted`: what the air of unknown hours may have been; empty: they count by the nearest air.
    """

    law: Law
    clock: Clock
    limits: Limits | None = None
    doubted: tuple[Air, ...] = ()

    def pace(self, span: AirSpan) -> float:
        """Return k at the beginning of a span; for a wait what reads as the label's air is it."""
        k = self.law.k()
        waits = self.clock is Clock.WAIT and any(map(self.law.is_its_air, span.airs))
        if not waits or self._is_outside(span.airs[0], WRITTEN_TO):
            return self._capped(k, span.airs, WRITTEN_TO)
        rest = [air for air in span.airs if not self.law.is_its_air(air)]
        return _capped_wait(k, rest) if rest else 1.0

    def pieces(self) -> Pieces:
        """Return the pieces of a stretch: from when on, and k at the middle of each."""
        return pieces_of(self)

    def _pieces(self) -> Pieces:
        k = self.law.k()

        # What is usual comes again day after day.
        @cache
        def straight(
            airs: tuple[Air, ...], ends: tuple[Air, ...], length: timedelta
        ) -> list[tuple[timedelta, float]]:
            ramps = list(zip(airs, ends, strict=True))
            return [
                (length * a, self._capped(k, [between(*ramp, (a + b) / 2) for ramp in ramps]))
                for a, b in pairwise(self._marks(length, ramps))
            ]

        def pieces(span: AirSpan) -> list[tuple[datetime, float]]:
            if self.doubted and span.known is Known.UNKNOWN:
                return [(span.start, _capped_wait(k, (*self.doubted, *span.airs, *span.ends)))]
            if span.is_steady or span.end is None:
                return [(span.start, self.pace(span))]
            if self._is_one_piece(span, span.end):
                return [(span.start, self._capped(k, [between(span.airs[0], span.ends[0], 0.5)]))]
            found = straight(span.airs, span.ends, span.end - span.start)
            return [(span.start + since, pace) for since, pace in found]

        return pieces

    def _is_one_piece(self, span: AirSpan, end: datetime) -> bool:
        """Tell at a glance of what a logger read twice in a quarter hour that nothing cuts it."""
        if len(span.airs) > 1 or end - span.start > _STEP:
            return False
        a, b = span.airs[0], span.ends[0]
        if abs(b.temperature_c - a.temperature_c) > _STEP_C:
            return False
        if abs(b.humidity_pct - a.humidity_pct) > _STEP_PCT:
            return False
        return not (self._is_outside(a, 0) or self._is_outside(b, 0))

    def _capped(self, k: RateAt, airs: Sequence[Air], by: float = 0.0) -> float:
        """Return k in one of several airs: a wait takes the slowest of them, a window the fastest.

        A room that was never read counts label time; whoever asks must then test before coating.
        """
        if not airs:
            return 1.0
        if self._is_outside(airs[0], by):
            return 0.0
        if self.clock is Clock.WAIT:
            return _capped_wait(k, airs)
        return max(1.0, *(k(air.temperature_c, air.humidity_pct) for air in airs))

    def _is_outside(self, air: Air, by: float) -> bool:
        limits = self.limits
        return bool(limits and outside(limits, air.temperature_c, air.humidity_pct, by))

    def _marks(self, length: timedelta, ramps: Sequence[Ramp]) -> list[float]:
        """Return where to cut a stretch, in shares of it: evenly, and where it crosses a limit."""
        steps = [length / _STEP]
        for a, b in ramps:
            steps.append(abs(b.temperature_c - a.temperature_c) / _STEP_C)
            steps.append(abs(b.humidity_pct - a.humidity_pct) / _STEP_PCT)
        # Some steps that come out even by all but a rounding are as many.
        parts = max(1, ceil(max(steps) - 1e-9))
        marks = [n / parts for n in range(parts + 1)]
        crossed = list(_crossed(self.limits, *ramps[0])) if self.limits else []
        return sorted({*marks, *crossed}) if crossed else marks


def _capped_wait(k: RateAt, airs: Sequence[Air]) -> float:
    return min(1.0, max(SLOWEST, min(k(air.temperature_c, air.humidity_pct) for air in airs)))


def pieces_of(counting: Counting) -> Pieces:
    """Return the pieces of a stretch as it is counted; a run of tests keeps them between shops."""
    return counting._pieces()


def outside(limits: Limits, temperature_c: float, humidity_pct: float, by: float = 0.0) -> bool:
    """Tell whether air lies outside a class's limits; saturated air lies outside any.

    `by`: so many °C beyond a limit are none: what was read is no finer than a limit was written.
    """
    return bool(
        (limits.min_c and temperature_c < limits.min_c.value - by)
        or (limits.max_c and temperature_c > limits.max_c.value + by)
        or (limits.max_rh_pct and humidity_pct > limits.max_rh_pct.value)
        or humidity_pct >= DEW_PCT
    )


def _crossed(limits: Limits, a: Air, b: Air) -> Iterator[float]:
    """Yield at which share of its way straight air crosses a limit: a division each."""
    t, rh = a.temperature_c, a.humidity_pct
    warms, dampens = b.temperature_c - t, b.humidity_pct - rh
    ways = [(limit.value - t, warms) for limit in (limits.min_c, limits.max_c) if limit]
    ways += [(limits.max_rh_pct.value - rh, dampens)] if limits.max_rh_pct else []
    for way, whole in (*ways, (DEW_PCT - rh, dampens)):
        if whole and 0 < way / whole < 1:
            yield way / whole
