"""How a clock counts through a stretch of air: k capped, stopped at limits, added up.

Two clocks never mix. A wait is never shortened (k <= 1); a window is never lengthened (k >= 1).
Where the air runs from one value to another, the stretch is cut at every kink (a cap, a limit, two
airs that change places, freezing) and each piece is integrated by five-point Gauss-Legendre
quadrature: the air itself is never averaged, since the rates are curved.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from enum import Enum
from functools import partial
from itertools import combinations, pairwise
from math import ceil

from msgspec import Struct

from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.span import AirSpan
from finishlog.core.finish.classes import Limits
from finishlog.core.finish.rate_law import Law, rate_at

# An assumption that keeps dates finite in air so damp that the estimate would say "never".
SLOWEST = 0.05

# Gauss-Legendre nodes and weights on 0..1.
_GAUSS = (
    (0.046910077030668004, 0.11846344252809454),
    (0.23076534494715845, 0.23931433524968324),
    (0.5, 0.28444444444444444),
    (0.76923465505284155, 0.23931433524968324),
    (0.953089922969332, 0.11846344252809454),
)
# A piece over which a rate may change no more than this keeps the quadrature exact to 1e-10.
_STEP_C, _STEP_PCT = 5.0, 25.0
_FREEZES_C = 0.01
# Saturated: dew. No class goes on or dries in it.
DEW_PCT = 100.0
# So little may temperature (°C) and humidity (%) change in a small step, so far must k stay from a
# bend, that nothing has to be cut.
_SMALL_C, _SMALL_PCT, CLEAR = 1.0, 5.0, 0.02
_BISECTIONS = 60


class Clock(Enum):
    """What is counted: a wait, whose k never exceeds 1, or a window, whose k is never below 1."""

    WAIT = "wait"
    WINDOW = "window"


class Counting(Struct, frozen=True):
    """A rate law, the clock that it drives, and the limits outside of which a wait stands still."""

    law: Law
    clock: Clock
    limits: Limits | None = None

    def pace(self, span: AirSpan) -> float:
        """Return k at the beginning of a span."""
        return _capped(self, [(air.temperature_c, air.humidity_pct) for air in span.airs])


def _capped(counting: Counting, airs: list[tuple[float, float]]) -> float:
    """Return k in one of several airs: a wait takes the slowest of them, a window the fastest.

    A room that was never read counts label time; whoever asks must then test before coating.
    """
    if not airs:
        return 1.0
    if counting.limits is not None and outside(counting.limits, *airs[0]):
        return 0.0
    k = rate_at(counting.law)
    if counting.clock is Clock.WAIT:
        return min(1.0, max(SLOWEST, min(k(t, rh) for t, rh in airs)))
    return max(1.0, *(k(t, rh) for t, rh in airs))


def outside(limits: Limits, temperature_c: float, humidity_pct: float) -> bool:
    """Tell whether air lies outside a class's limits; saturated air lies outside any."""
    return bool(
        (limits.min_c and temperature_c < limits.min_c.value)
        or (limits.max_c and temperature_c > limits.max_c.value)
        or (limits.max_rh_pct and humidity_pct > limits.max_rh_pct.value)
        or humidity_pct >= DEW_PCT
    )


def gain(counting: Counting, span: AirSpan, until_h: float) -> float:
    """Return the equivalent hours of the first `until_h` hours of a span."""
    if until_h <= 0:
        return 0.0
    if span.is_steady or span.length_h is None:
        return until_h * counting.pace(span)
    return sum(
        piece(counting, span, a, min(b, until_h)) for a, b in _pieces(counting, span, until_h)
    )


def _pieces(counting: Counting, span: AirSpan, until_h: float) -> Iterator[tuple[float, float]]:
    marks = [0.0, *sorted(_kinks(counting, span)), span.length_h or 0.0]
    for a, b in pairwise(marks):
        if a < b and a < until_h:
            yield a, b


def _at(ramp: tuple[Air, Air], share: float) -> tuple[float, float]:
    a, b = ramp
    return (
        a.temperature_c + (b.temperature_c - a.temperature_c) * share,
        a.humidity_pct + (b.humidity_pct - a.humidity_pct) * share,
    )


def piece(counting: Counting, span: AirSpan, start_h: float, end_h: float) -> float:
    """Return the equivalent hours of a piece of a span; the piece must be without kinks."""
    length, ramps = span.length_h or 1.0, list(span.ramps)
    width = end_h - start_h
    return width * sum(
        weight * _capped(counting, [_at(r, (start_h + node * width) / length) for r in ramps])
        for node, weight in _GAUSS
    )


def _kinks(counting: Counting, span: AirSpan) -> Iterator[float]:
    """Yield the hours inside a span at which k bends or jumps, and enough others between."""
    length, ramps = span.length_h or 0.0, list(span.ramps)
    if counting.limits is not None:
        yield from (x * length for x in _limits_crossed(counting.limits, *ramps[0]))
    parts = _parts(ramps)
    yield from (n * length / parts for n in range(1, parts))
    if _is_plain(counting, ramps):
        return
    k = rate_at(counting.law)
    rates = [partial(_rate_along, k, ramp) for ramp in ramps]
    levels = (1.0, SLOWEST) if counting.clock is Clock.WAIT else (1.0,)
    bends: list[Callable[[float], float]] = [
        *(partial(_above, rate, level) for rate in rates for level in levels),
        *(partial(_apart, one, other) for one, other in combinations(rates, 2)),
    ]
    for bend in bends:
        yield from (x * length for x in _roots(bend, 2 * parts))
    if counting.law.bends_at_freezing:
        yield from (
            x * length
            for r in ramps
            for x in _crossed(r[0].temperature_c, r[1].temperature_c, _FREEZES_C)
        )


def _parts(ramps: list[tuple[Air, Air]]) -> int:
    """Return into how many pieces a stretch is cut so that no rate changes much in one."""
    return max(
        1,
        *(ceil(abs(b.temperature_c - a.temperature_c) / _STEP_C) for a, b in ramps),
        *(ceil(abs(b.humidity_pct - a.humidity_pct) / _STEP_PCT) for a, b in ramps),
    )


def _is_plain(counting: Counting, ramps: list[tuple[Air, Air]]) -> bool:
    """Tell whether one small step of air keeps clear of every bend: most of a logger's do."""
    (a, b), *others = ramps
    if others or not is_small(a, b):
        return False
    k = rate_at(counting.law)
    ends = (k(a.temperature_c, a.humidity_pct), k(b.temperature_c, b.humidity_pct))
    levels = (1.0, SLOWEST) if counting.clock is Clock.WAIT else (1.0,)
    return all(min(ends) > level + CLEAR or max(ends) < level - CLEAR for level in levels)


def is_small(a: Air, b: Air) -> bool:
    """Tell whether air hardly changes, and does not freeze, as between two readings of a logger."""
    return (
        abs(b.temperature_c - a.temperature_c) <= _SMALL_C
        and abs(b.humidity_pct - a.humidity_pct) <= _SMALL_PCT
        and min(a.temperature_c, b.temperature_c) > _FREEZES_C
    )


def _rate_along(k: Callable[[float, float], float], ramp: tuple[Air, Air], share: float) -> float:
    return k(*_at(ramp, share))


def _above(rate: Callable[[float], float], level: float, share: float) -> float:
    return rate(share) - level


def _apart(one: Callable[[float], float], other: Callable[[float], float], share: float) -> float:
    return one(share) - other(share)


def _limits_crossed(limits: Limits, start: Air, end: Air) -> Iterator[float]:
    for limit in (limits.min_c, limits.max_c):
        if limit is not None:
            yield from _crossed(start.temperature_c, end.temperature_c, limit.value)
    if limits.max_rh_pct is not None:
        yield from _crossed(start.humidity_pct, end.humidity_pct, limits.max_rh_pct.value)
    yield from _crossed(start.humidity_pct, end.humidity_pct, DEW_PCT)


def _crossed(start: float, end: float, level: float) -> Iterator[float]:
    if min(start, end) < level < max(start, end):
        yield (level - start) / (end - start)


def _roots(bend: Callable[[float], float], parts: int) -> Iterator[float]:
    """Yield where a function of 0..1 is 0, by bisection between points at an even number of parts.

    Where it turns between them a point is added, so that a hump past 0 and back is seen.
    """
    shares = [n / parts for n in range(parts + 1)]
    values = [bend(share) for share in shares]
    known = dict(zip(shares, values, strict=True))
    for n in range(1, parts, 2):
        turn = shares[n] + _turn(*values[n - 1 : n + 2]) / parts
        known.setdefault(turn, bend(turn))
    for (a, at_a), (b, at_b) in pairwise(sorted(known.items())):
        if at_a * at_b < 0:
            yield _bisected(bend, a, b, rising=at_b > 0)
        elif at_b == 0:
            yield b


def _turn(before: float, here: float, after: float) -> float:
    """Return where a parabola through three equal steps turns, -1 to 1; 0: not between them."""
    curved = before - 2 * here + after
    turn = (before - after) / (2 * curved) if curved else 0.0
    return turn if abs(turn) < 1 else 0.0


def _bisected(bend: Callable[[float], float], a: float, b: float, *, rising: bool) -> float:
    for _ in range(_BISECTIONS):
        middle = (a + b) / 2
        if (bend(middle) < 0) is rising:
            a = middle
        else:
            b = middle
    return (a + b) / 2
