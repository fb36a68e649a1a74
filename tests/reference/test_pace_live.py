"""Our posterior of a shop's pace against scipy's normal distribution and adaptive quadrature."""

from __future__ import annotations

from math import exp, inf, log

import pytest

from finishlog.core.clock.pace_posterior import Bracket, log_chance, posterior
from tests.shop_of import FACTS

FIGURES = FACTS.pace
TOLD = (
    (),
    ((4, 5, 7),),
    ((4, 5, 7), (4, 4, 6.5), (4, 6, inf)),
    ((4, 0, 3), (2, 0, 1.75), (6, 5, 8)),
    ((1, 20, inf), (1, 0, 0.5)),
    ((2, 2.9, 3.1),) * 24,
)

pytestmark = pytest.mark.reference


@pytest.mark.parametrize("told", TOLD)
def test_the_quantiles(told):
    from scipy.integrate import quad
    from scipy.stats import norm

    def density(theta: float) -> float:
        found = norm.pdf(theta, scale=FIGURES.spread)
        for label, soft, hard in told:
            a = (log(soft / label) - theta) / FIGURES.scatter if soft else -inf
            b = (log(hard / label) - theta) / FIGURES.scatter if hard < inf else inf
            found *= norm.cdf(b) - norm.cdf(a) if a < 0 else norm.sf(a) - norm.sf(b)
        return float(found)

    ours = [log(f) for f in posterior([Bracket(*b) for b in told], FIGURES)]
    scale = density(ours[1])

    def area(low: float, high: float) -> float:
        around = [theta for theta in ours if low < theta < high]
        return quad(
            lambda t: density(t) / scale, low, high, points=around, limit=500, epsrel=1e-11
        )[0]

    sd = (ours[2] - ours[0]) / 3.3
    low, high = ours[1] - 12 * sd, ours[1] + 12 * sd
    for theta, p in zip(ours, (0.05, 0.5, 0.95), strict=True):
        assert area(low, theta) / area(low, high) == pytest.approx(p, abs=1e-4)


@pytest.mark.parametrize("a", [-40, -8, -6, -1, 0, 0.5, 5.9, 6.1, 12, 40])
@pytest.mark.parametrize("width", [1e-3, 0.3, 2, 50, inf])
def test_the_chance_between_two_values(a, width):
    from scipy.stats import norm

    b = a + width
    if a > 0:
        expected = norm.logsf(a) + log(-expm1_of(norm.logsf(b) - norm.logsf(a)))
    elif b < 0:
        expected = norm.logcdf(b) + log(-expm1_of(norm.logcdf(a) - norm.logcdf(b)))
    else:
        expected = log(norm.cdf(b) - norm.cdf(a))
    assert log_chance(a, b) == pytest.approx(expected, rel=1e-9, abs=1e-12)


def expm1_of(x: float) -> float:
    from math import expm1

    return expm1(x) if x > -700 else exp(x) - 1
