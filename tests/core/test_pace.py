"""Learning a shop's pace from "still tacky at t1, dry at t2".

The worked examples 0 to 3 are frozen values of scipy.stats.norm and scipy.integrate.quad;
tests/reference/test_pace_live.py makes them again.
"""

from __future__ import annotations

from math import erfc, exp, inf, isfinite, log, log1p, pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.clock.pace import PaceKey, PaceLearnt, Paces
from finishlog.core.clock.pace_posterior import Bracket, PaceFigures, log_chance, posterior
from finishlog.core.finish.classes import Method
from tests.examples import examples

FIGURES = PaceFigures(0.35, 0.15)
FEW = examples(40)

# Brackets; mode, Laplace sd, mean, sd; 5 %, median and 95 % of f; evidence.
EXAMPLES = {
    "nothing seen": ([], (0, 0.35, 0, 0.35), (0.5623, 1.0, 1.7784), 1),
    "one bracket": (
        [(4, 5, 7)],
        (0.3055, 0.1627, 0.3100, 0.1591),
        (1.0516, 1.3617, 1.7750),
        0.2081,
    ),
    "two brackets and one still tacky": (
        [(4, 5, 7), (4, 4, 6.5), (4, 6, inf)],
        (0.3875, 0.1060, 0.3881, 0.1055),
        (1.2399, 1.4739, 1.7544),
        0.0403,
    ),
    "two found dry and one bracket": (
        [(4, 0, 3), (2, 0, 1.75), (6, 5, 8)],
        (-0.2450, 0.1049, -0.2508, 0.1068),
        (0.6508, 0.7797, 0.9244),
        0.0239,
    ),
}


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_worked_examples(name: str):
    told, (mode, laplace_sd, mean, sd), quantiles, evidence = EXAMPLES[name]
    found = posterior([Bracket(*b) for b in told], FIGURES)
    to_four_digits = {"abs": 0.6e-4}
    assert found.mode == pytest.approx(mode, **to_four_digits)
    assert found.laplace_sd == pytest.approx(laplace_sd, **to_four_digits)
    assert found.mean == pytest.approx(mean, **to_four_digits)
    assert found.sd == pytest.approx(sd, **to_four_digits)
    assert found.evidence == pytest.approx(evidence, **to_four_digits)
    factors = [exp(theta) for theta in (found.low, found.median, found.high)]
    assert factors == pytest.approx(quantiles, **to_four_digits)


def in_closed_form(low: float, high: float, figures: PaceFigures) -> tuple[float, float, float]:
    """Mean, sd and evidence of theta after one bracket of ln f: a truncated normal, joined."""
    tau2, sigma2 = figures.spread**2, figures.scatter**2
    s = sqrt(tau2 + sigma2)
    a, b = low / s, high / s

    def density(x: float) -> float:
        return exp(-x * x / 2) / sqrt(2 * pi) if isfinite(x) else 0.0

    # In the tail where it lies: the difference of two chances near 1 would be lost.
    one, other = (a, b) if a > 0 else (-b, -a)
    chance = (erfc(one / sqrt(2)) - erfc(other / sqrt(2))) / 2
    pull = (density(a) - density(b)) / chance
    ends = (a * density(a) if a > -inf else 0.0) - (b * density(b) if b < inf else 0.0)
    rho = tau2 / s**2
    variance = rho * sigma2 + rho**2 * s**2 * (1 + ends / chance - pull**2)
    return rho * s * pull, sqrt(variance), chance


@FEW
@given(
    soft=st.floats(0.3, 3) | st.just(0.0),
    wider=st.floats(1.05, 4) | st.just(inf),
    spread=st.floats(0.1, 0.6),
    scatter=st.floats(0.08, 0.4),
)
def test_one_bracket_agrees_with_its_closed_form(soft, wider, spread, scatter):
    figures = PaceFigures(spread, scatter)
    hard = soft * wider if soft else min(wider, 4.0)
    found = posterior([Bracket(1, soft, hard)], figures)
    low, high = log(soft) if soft else -inf, log(hard) if hard < inf else inf
    mean, sd, evidence = in_closed_form(low, high, figures)
    assert found.mean == pytest.approx(mean, abs=1e-6)
    assert found.sd == pytest.approx(sd, rel=1e-5)
    assert found.evidence == pytest.approx(evidence, rel=1e-6)


def brackets() -> st.SearchStrategy[Bracket]:
    hours = st.floats(0.02, 50)
    return st.builds(
        lambda label, soft, wider: Bracket(label, label * soft, label * soft * wider),
        hours,
        hours,
        st.floats(1.0001, 100) | st.just(inf),
    ) | st.builds(lambda label, hard: Bracket(label, 0.0, label * hard), hours, hours)


@given(st.lists(brackets(), max_size=6))
@FEW
def test_whatever_is_seen_gives_finite_ordered_numbers(told):
    found = posterior(told, FIGURES)
    values = [getattr(found, name) for name in found.__slots__]
    assert all(isfinite(value) for value in values)
    assert found.low < found.median < found.high
    assert 0 < found.sd <= FIGURES.spread * 1.0001
    assert abs(found.median - found.mean) < found.sd


@given(
    st.lists(brackets(), max_size=6).flatmap(lambda x: st.tuples(st.just(x), st.permutations(x)))
)
@FEW
def test_the_order_of_what_is_seen_does_not_matter(told):
    one, other = told
    assert posterior(one, FIGURES) == posterior(other, FIGURES)


@given(st.lists(brackets(), max_size=5), st.floats(0.1, 30))
@FEW
def test_one_more_failure_never_shortens(told, soft):
    before = posterior(told, FIGURES)
    after = posterior([*told, Bracket(1, soft)], FIGURES)
    assert after.median >= before.median - 1e-6
    assert after.low >= before.low - 1e-6


@given(st.lists(st.floats(0.1, 30), min_size=1, max_size=8))
@FEW
def test_a_film_never_found_soft_never_lengthens(hard):
    """So that a product without a failed check need not be looked at (asks/look/pace)."""
    assert posterior([Bracket(1, 0, h) for h in hard], FIGURES).median <= 1e-6


@pytest.mark.parametrize("a", [6.5, 10, 20, 37, 40, 300])
def test_far_tails_do_not_underflow(a):
    # Above x there is between phi(x) (1/x - 1/x^3) and phi(x) / x.
    most = -(a * a + log(2 * pi)) / 2 - log(a)
    for chance in (log_chance(a, inf), log_chance(-inf, -a), log_chance(a, 2 * a)):
        assert most + log1p(-(a**-2)) <= chance <= most


@pytest.mark.parametrize("soft", [exp(0.15 * 7), exp(0.15 * 40), 1e9])
@pytest.mark.parametrize("hard", [1.5, inf])
def test_films_far_beyond_every_label_give_a_number(soft, hard):
    slow = posterior([Bracket(1, soft, soft * hard)], FIGURES)
    quick = posterior([Bracket(1, 0, 1 / soft)], FIGURES)
    assert 0 < slow.low < slow.median < slow.high < inf
    assert quick.high < 0


def test_what_brackets_nothing_is_refused():
    for wrong in (Bracket(4, 5, 5), Bracket(4, 5, 4), Bracket(0, 1, 2), Bracket(4, -1, 2)):
        with pytest.raises(ValueError, match="brackets nothing"):
            posterior([wrong], FIGURES)


def learnt(key: PaceKey, median: float) -> tuple[PaceKey, PaceLearnt]:
    return key, PaceLearnt(key, median, median / 2, median * 2, 1, (41,))


def test_a_factor_is_never_below_one():
    key = PaceKey(7, first=False, any_way=True)
    assert learnt(key, 0.8)[1].factor == 1
    assert learnt(key, 1.36)[1].factor == 1.36


def test_without_checks_nothing_is_known():
    assert Paces.none.factor(PaceKey(7, first=True)) is None
    assert Paces.none.of(7) == ()


def test_what_is_not_known_of_a_method_is_asked_of_all():
    however = PaceKey(7, first=False, any_way=True)
    sprayed = PaceKey(7, first=False, method=Method.SPRAY)
    paces = Paces(dict([learnt(sprayed, 1.1), learnt(however, 1.5)]))
    assert paces.factor(sprayed).key == sprayed
    assert paces.factor(PaceKey(7, first=False, method=Method.BRUSH)).key == however
    assert paces.factor(PaceKey(7, first=True, method=Method.SPRAY)) is None
    assert [each.key for each in paces.of(7)] == [however, sprayed]
