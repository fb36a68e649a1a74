"""How slow films dry here, from brackets of their times: interval-censored log-normal, by hand.

theta = ln f is what the shop does to a label's hours, and ln T = ln D + theta + a coat's own
scatter. A film found soft after t1 hours and dry after t2 tells that T lies between. The posterior
of theta has one mode; everything is read off a grid around it, with nothing but `math.erfc`.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import erfc, exp, inf, log, log1p, pi, sqrt
from typing import NamedTuple

from msgspec import Struct

# An even number of steps. Where the density has fallen by exp(-32) the grid ends: +-8 standard
# deviations of a normal one, never further off than that of the prior.
_STEPS = 200
_FALLEN = 32.0
_CONVERGED = 1e-12
# From here on erfc is left for the tail's continued fraction: before it underflows.
_FAR = 6.0
# No film hardens in less than this share of its time: what is narrower would be lost in rounding.
_A_MOMENT = 1e-6


class PaceFigures(Struct, frozen=True):
    """The prior of ln f is normal about 0 with sd `spread`; one coat scatters by sd `scatter`.

    `basis`: what they rest on, in words.
    """

    spread: float
    scatter: float
    basis: tuple[str, ...] = ()


class Bracket(NamedTuple):
    """A film whose label says `label_h` was soft after `soft_h` and had hardened by `hard_h`.

    `soft_h` 0: it was not found soft; `hard_h` inf: not found hard yet.
    """

    label_h: float
    soft_h: float = 0.0
    hard_h: float = inf


class Posterior(Struct, frozen=True):
    """What is known of theta: its mode and the sd of the curvature there, mean, sd, quantiles.

    `evidence` is the chance that the brackets had beforehand.
    """

    mode: float
    laplace_sd: float
    mean: float
    sd: float
    low: float
    median: float
    high: float
    evidence: float


def posterior(brackets: Sequence[Bracket], figures: PaceFigures) -> Posterior:
    """Work out what brackets teach; without any, it is the prior."""
    # In an order of their own: the same brackets give the same bytes.
    bounds = sorted(_bounds(bracket) for bracket in brackets)
    mode, curvature = _climb(bounds, figures)
    peak = _log_density(mode, bounds, figures)
    start = mode - _reach(mode, peak, -1, bounds, figures)
    step = (mode + _reach(mode, peak, 1, bounds, figures) - start) / _STEPS
    thetas = [start + n * step for n in range(_STEPS + 1)]
    density = [exp(_log_density(theta, bounds, figures) - peak) for theta in thetas]
    mass = _simpson(density, step)
    mean = _simpson([d * t for d, t in zip(density, thetas, strict=True)], step) / mass
    squares = [d * (t - mean) ** 2 for d, t in zip(density, thetas, strict=True)]
    quantile = _quantiles(start, step, density, mass)
    return Posterior(
        mode=mode,
        laplace_sd=1 / sqrt(curvature),
        mean=mean,
        sd=sqrt(_simpson(squares, step) / mass),
        low=quantile(0.05),
        median=quantile(0.5),
        high=quantile(0.95),
        evidence=exp(peak + log(mass)),
    )


_Bounds = tuple[float, float]


def _bounds(bracket: Bracket) -> _Bounds:
    """Take a bracket to the log of multiples of the label's hours."""
    if not 0 <= bracket.soft_h < bracket.hard_h or bracket.label_h <= 0:
        raise ValueError(f"{bracket} brackets nothing")
    low = log(bracket.soft_h / bracket.label_h) if bracket.soft_h else -inf
    high = log(bracket.hard_h / bracket.label_h) if bracket.hard_h < inf else inf
    return low, max(high, low + _A_MOMENT)


def _climb(bounds: Sequence[_Bounds], figures: PaceFigures) -> tuple[float, float]:
    """Find the mode by Newton's steps, halved where they overshoot, and the curvature there."""
    theta, height = 0.0, _log_density(0.0, bounds, figures)
    while True:
        slope, curvature = _derivatives(theta, bounds, figures)
        step = slope / curvature
        while (there := _log_density(theta + step, bounds, figures)) < height:
            step /= 2
            if abs(step) < _CONVERGED:
                return theta, curvature
        theta, height = theta + step, there
        if abs(step) < _CONVERGED:
            return theta, curvature


def _log_density(theta: float, bounds: Sequence[_Bounds], figures: PaceFigures) -> float:
    prior = _log_normal(theta / figures.spread) - log(figures.spread)
    at = ((a - theta, b - theta) for a, b in bounds)
    return prior + sum(log_chance(a / figures.scatter, b / figures.scatter) for a, b in at)


def _derivatives(
    theta: float, bounds: Sequence[_Bounds], figures: PaceFigures
) -> tuple[float, float]:
    """Return the slope of the log density and its curvature, turned positive."""
    slope, curvature = -theta / figures.spread**2, figures.spread**-2
    for low, high in bounds:
        a, b = (low - theta) / figures.scatter, (high - theta) / figures.scatter
        chance = log_chance(a, b)
        at_a, at_b = (0.0 if x in {-inf, inf} else exp(_log_normal(x) - chance) for x in (a, b))
        pull = at_b - at_a
        bend = (b * at_b if at_b else 0.0) - (a * at_a if at_a else 0.0) + pull**2
        slope -= pull / figures.scatter
        curvature += max(0.0, bend) / figures.scatter**2
    return slope, curvature


def log_chance(a: float, b: float) -> float:
    """Return the log of a normal variable's chance to lie between a and b, however far out."""
    if a + b < 0:
        a, b = -b, -a
    # Now most of it lies in the upper tail: there the difference of two tails loses nothing.
    if a < 0:
        return log(1.0 - (erfc(-a / sqrt(2)) + erfc(b / sqrt(2))) / 2)
    above = _log_tail(a)
    return above + log1p(-exp(_log_tail(b) - above)) if b < inf else above


def _log_normal(x: float) -> float:
    return -(x * x + log(2 * pi)) / 2


def _log_tail(x: float) -> float:
    """Return the log of the chance to lie above x >= 0."""
    if x < _FAR:
        return log(erfc(x / sqrt(2)) / 2)
    # Laplace's continued fraction, from its far end.
    fraction = x
    for n in range(60, 0, -1):
        fraction = x + n / fraction
    return _log_normal(x) - log(fraction)


def _reach(
    mode: float, peak: float, side: int, bounds: Sequence[_Bounds], figures: PaceFigures
) -> float:
    """Find how far from the mode the density has fallen to nothing."""
    near, far = 0.0, 8 * figures.spread
    for _ in range(8):
        middle = (near + far) / 2
        fallen = peak - _log_density(mode + side * middle, bounds, figures) >= _FALLEN
        near, far = (near, middle) if fallen else (middle, far)
    return far


def _simpson(values: Sequence[float], step: float) -> float:
    return step / 3 * (values[0] + values[-1] + 4 * sum(values[1::2]) + 2 * sum(values[2:-1:2]))


def _quantiles(
    start: float, step: float, density: Sequence[float], mass: float
) -> Callable[[float], float]:
    """Return the inverse of the distribution: within two steps, by the parabola through them."""
    below = [0.0]
    for n in range(0, _STEPS, 2):
        below.append(below[-1] + step / 3 * (density[n] + 4 * density[n + 1] + density[n + 2]))

    def quantile(p: float) -> float:
        n = next(i for i in range(len(below) - 1) if below[i + 1] >= p * mass)
        d0, d1, d2 = density[2 * n : 2 * n + 3]
        bend, rise = (d0 - 2 * d1 + d2) / 2, (4 * d1 - 3 * d0 - d2) / 2
        low, high = 0.0, 2.0
        for _ in range(50):
            x = (low + high) / 2
            part = step * (d0 * x + rise * x**2 / 2 + bend * x**3 / 3)
            low, high = (x, high) if below[n] + part < p * mass else (low, x)
        return start + (2 * n + high) * step

    return quantile
