"""How slow films dry here, from brackets of their times: interval-censored log-normal, on a grid.

theta = ln f is what the shop does to a label's hours, and ln T = ln D + theta + a coat's own
scatter. A film found soft after t1 hours and dry after t2 tells that T lies between. The logarithm
of the density of theta is concave; its quantiles are read off points of theta.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate, pairwise
from math import erfc, exp, inf, log, log1p, pi, sqrt
from typing import NamedTuple

from finishlog.core.published.drying import PaceFigures

# Points over all that can be, and again over where the density has not fallen by exp(-12.5): five
# standard deviations of a normal one to each side.
_STEPS = 160
_FALLEN = 12.5
# From here on erfc is left for the tail's asymptotic series: before it underflows.
_FAR = 25.0
# No film hardens in less than this share of its time: what is narrower would be lost in rounding.
_A_MOMENT = 1e-6


class Bracket(NamedTuple):
    """A film whose label says `label_h` was soft after `soft_h` and had hardened by `hard_h`.

    `soft_h` 0: it was not found soft; `hard_h` inf: not found hard yet.
    """

    label_h: float
    soft_h: float = 0.0
    hard_h: float = inf


class Posterior(NamedTuple):
    """What is known of f: 5 %, 50 % and 95 %."""

    low: float
    median: float
    high: float


def posterior(brackets: Sequence[Bracket], figures: PaceFigures) -> Posterior:
    """Work out what brackets teach; without any, it is the prior."""
    # In an order of their own: the same brackets give the same bytes.
    return _posterior(tuple(sorted(map(_bounds, brackets))), figures.spread, figures.scatter)


def _posterior(bounds: tuple[tuple[float, float], ...], spread: float, scatter: float) -> Posterior:
    known = [0.0, *(bound for pair in bounds for bound in pair if abs(bound) < inf)]
    thetas = _points(min(known) - 6 * spread, max(known) + 6 * spread)
    heights = _heights(thetas, bounds, spread, scatter)
    step, floor = thetas[1] - thetas[0], max(heights) - _FALLEN
    there = [theta for theta, height in zip(thetas, heights, strict=True) if height > floor]
    thetas = _points(there[0] - step, there[-1] + step)
    heights = _heights(thetas, bounds, spread, scatter)
    density = [exp(height - max(heights)) for height in heights]
    below = [0.0, *accumulate((a + b) / 2 for a, b in pairwise(density))]
    return Posterior(*(exp(_quantile(p, thetas, density, below)) for p in (0.05, 0.5, 0.95)))


def _bounds(bracket: Bracket) -> tuple[float, float]:
    """Take a bracket to the log of multiples of the label's hours."""
    if not 0 <= bracket.soft_h < bracket.hard_h or bracket.label_h <= 0:
        raise ValueError(f"{bracket} brackets nothing")
    low = log(bracket.soft_h / bracket.label_h) if bracket.soft_h else -inf
    high = log(bracket.hard_h / bracket.label_h) if bracket.hard_h < inf else inf
    return low, max(high, low + _A_MOMENT)


def _points(low: float, high: float) -> list[float]:
    return [low + n * (high - low) / _STEPS for n in range(_STEPS + 1)]


def _heights(
    thetas: Sequence[float],
    bounds: Sequence[tuple[float, float]],
    spread: float,
    scatter: float,
) -> list[float]:
    """Return the logarithm of the density, but for a constant."""
    return [
        sum(log_chance((a - theta) / scatter, (b - theta) / scatter) for a, b in bounds)
        - (theta / spread) ** 2 / 2
        for theta in thetas
    ]


def log_chance(a: float, b: float) -> float:
    """Return the log of a normal variable's chance to lie between a and b, however far out."""
    if a + b < 0:
        a, b = -b, -a
    # Now most of it lies in the upper tail: there the difference of two tails loses nothing.
    if a < 0:
        return log(1.0 - (erfc(-a / sqrt(2)) + erfc(b / sqrt(2))) / 2)
    above = _log_tail(a)
    return above + log1p(-exp(_log_tail(b) - above)) if b < inf else above


def _log_tail(x: float) -> float:
    """Return the log of the chance to lie above x >= 0 (Abramowitz and Stegun 26.2.12)."""
    if x < _FAR:
        return log(erfc(x / sqrt(2)) / 2)
    return -(x * x + log(2 * pi)) / 2 - log(x) + log1p(-(x**-2) + 3 * x**-4 - 15 * x**-6)


def _quantile(
    p: float, thetas: Sequence[float], density: Sequence[float], below: Sequence[float]
) -> float:
    """Return where a share p lies below, the density taken straight between two points."""
    n = next(n for n in range(_STEPS) if below[n + 1] >= p * below[-1])
    wanted, rise = p * below[-1] - below[n], density[n + 1] - density[n]
    part = 2 * wanted / (density[n] + sqrt(density[n] ** 2 + 2 * rise * wanted))
    return thetas[n] + part * (thetas[1] - thetas[0])
