"""One small step of air, as a logger's file is made of: most of the summing, so it is quick.

Between two readings ten minutes apart the air hardly changes. Where such a step keeps clear of
every bend of a clock, four-point Lobatto quadrature is exact to 1e-12 and shares its ends with the
steps beside it. Where it does not, core.clock.counting cuts it with care.
"""

from __future__ import annotations

from collections.abc import Callable

from finishlog.core.air.span import AirSpan
from finishlog.core.clock.counting import CLEAR, SLOWEST, Clock, Counting, is_small, outside
from finishlog.core.finish.rate_law import rate_at

# Lobatto: the ends count 1/12 each, these two points between 5/12.
_NEAR = 0.27639320225002106
_FAR = 1 - _NEAR
# No step begins here.
_NOWHERE_C = -100.0


def small_steps(counting: Counting) -> Callable[[AirSpan, float], float | None]:
    """Return what a step of so many hours gains, None where it has to be cut with care."""
    k, waits, limits = rate_at(counting.law), counting.clock is Clock.WAIT, counting.limits

    def at(t: float, rh: float) -> tuple[float, float, float, bool]:
        return t, rh, k(t, rh), limits is not None and outside(limits, t, rh)

    last = at(_NOWHERE_C, 0.0)

    def gain(span: AirSpan, hours: float) -> float | None:
        nonlocal last
        if len(span.airs) != 1 or not span.ends:
            return None
        (a,), (b,) = span.airs, span.ends
        if not is_small(a, b):
            return None
        t, rh = a.temperature_c, a.humidity_pct
        dt, drh = b.temperature_c - t, b.humidity_pct - rh
        _, _, first, out = last if last[:2] == (t, rh) else at(t, rh)
        last = at(b.temperature_c, b.humidity_pct)
        _, _, end, out_then = last
        if out or out_then:
            return None
        low, high = (first, end) if first < end else (end, first)
        if not waits:
            if high < 1 - CLEAR:
                return hours
            if low < 1 + CLEAR:
                return None
        elif low > 1 + CLEAR:
            return hours
        elif high > 1 - CLEAR or low < SLOWEST + CLEAR:
            return None
        inner = k(t + _NEAR * dt, rh + _NEAR * drh) + k(t + _FAR * dt, rh + _FAR * drh)
        return hours * (first + end + 5 * inner) / 12

    return gain
