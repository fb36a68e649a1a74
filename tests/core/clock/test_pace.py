"""Learning a shop's pace from "still tacky at t1, dry at t2".

The worked examples 0 to 3 are frozen values of scipy.stats.norm and scipy.integrate.quad;
tests/reference/test_pace_live.py makes them again.
"""

from __future__ import annotations

from math import exp, inf, isfinite, log, log1p, pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from finishlog.core.clock.pace import PaceKey, PaceLearnt, Paces
from finishlog.core.clock.pace_posterior import Bracket, log_chance, posterior
from finishlog.core.finish.classes import Method
from tests.examples import examples
from tests.shop_of import FACTS

FIGURES = FACTS.pace
FEW = examples(40)

# Ours is a grid; figures of f are shown to two digits.
AS_GOOD = {"rel": 5e-4}

# Brackets; 5 %, median and 95 % of f.
EXAMPLES = {
    "nothing seen": ([], (0.5623, 1.0, 1.7784)),
    "one bracket": ([(4, 5, 7)], (1.0516, 1.3617, 1.7750)),
    "two brackets and one still tacky": (
        [(4, 5, 7), (4, 4, 6.5), (4, 6, inf)],
        (1.2399, 1.4739, 1.7544),
    ),
    "two found dry and one bracket": (
        [(4, 0, 3), (2, 0, 1.75), (6, 5, 8)],
        (0.6508, 0.7797, 0.9244),
    ),
}


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_worked_examples(name: str):
    told, quantiles = EXAMPLES[name]
    assert posterior([Bracket(*b) for b in told], FIGURES) == pytest.approx(quantiles, **AS_GOOD)


@FEW
@given(
    times=st.lists(st.floats(0.05, 20), min_size=1, max_size=6),
    spread=st.floats(0.1, 0.6),
    scatter=st.floats(0.08, 0.4),
)
def test_times_known_to_the_moment_agree_with_their_closed_form(times, spread, scatter):
    """A normal prior and normal observations of known scatter: the conjugate posterior.

    Gelman et al., Bayesian Data Analysis, section 2.5.
    """
    certainty = spread**-2 + len(times) * scatter**-2
    mean = sum(map(log, times)) * scatter**-2 / certainty
    found = posterior(
        [Bracket(1, t, t * 1.0001) for t in times], replace(FIGURES, spread=spread, scatter=scatter)
    )
    from_the_mean = 1.6448536 / sqrt(certainty)
    wanted = [exp(mean + z * from_the_mean) for z in (-1, 0, 1)]
    assert found == pytest.approx(wanted, **AS_GOOD)


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
    assert all(isfinite(value) for value in found)
    assert 0 < found.low < found.median < found.high
    # Whatever is seen, it is never less sure than before anything was.
    assert found.high / found.low <= exp(2 * 1.6448536 * FIGURES.spread) * 1.003


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
    assert after.median >= before.median * (1 - AS_GOOD["rel"])
    assert after.low >= before.low * (1 - AS_GOOD["rel"])


@given(st.lists(st.floats(0.1, 30), min_size=1, max_size=8))
@FEW
def test_a_film_never_found_soft_never_lengthens(hard):
    """So that a product without a failed check need not be looked at (asks/look/pace)."""
    assert posterior([Bracket(1, 0, h) for h in hard], FIGURES).median <= 1 + 1e-6


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
    assert 1 < slow.low < slow.median < slow.high < inf
    assert quick.high < 1


def test_what_brackets_nothing_is_refused():
    for wrong in (Bracket(4, 5, 5), Bracket(4, 5, 4), Bracket(0, 1, 2), Bracket(4, -1, 2)):
        with pytest.raises(ValueError, match="brackets nothing"):
            posterior([wrong], FIGURES)


def learnt(key: PaceKey, median: float) -> tuple[PaceKey, PaceLearnt]:
    return key, PaceLearnt(key, median, median / 2, median * 2, 1, (41,), 3.0, 6.0)


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
