"""The search on shops drawn at random: what it finds keeps every rule, is whole, and is the same.

Held by a checker written apart (`tests/checked_shop.py`), which is shown to see what is wrong.
"""

from __future__ import annotations

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from msgspec import json
from msgspec.structs import replace

from finishlog.core.plan.search.search import search
from finishlog.core.plan.search.shop import CompiledShop, Plan, Task
from tests.bench.made_shops import RULES, compiled, made
from tests.checked_shop import checked
from tests.core.plan.search.any_shop import any_shop
from tests.examples import examples

SEEDS = st.integers(0, 1 << 30)


# A film was abraded before its coat's release.
@example(10798)
@given(SEEDS)
def test_a_plan_of_any_shop_keeps_every_rule(seed):
    shop = any_shop(seed)
    found = search(shop, 300, seed)
    assert found.plan.is_whole
    count = checked(shop, found.plan)
    assert (count.days_late, count.finish) == (found.plan.days_late, found.plan.finish)
    assert found.bounds.finish <= count.finish


@examples(12)
@given(st.integers(3, 12), SEEDS)
def test_a_plan_of_a_made_shop_keeps_its_racks_and_comes_to_what_it_says(parts, seed):
    shop = compiled(RULES, made(parts, seed, due=seed % 2 == 0))
    found = search(shop, 300, seed)
    assert found.plan.is_whole
    count = checked(shop, found.plan)
    assert count.places <= (10,)
    assert count.days_late == found.plan.days_late
    assert found.bounds.finish <= count.finish


@examples(8)
@given(SEEDS)
def test_the_same_shop_is_planned_to_the_same_byte(seed):
    one, other = (search(any_shop(seed), 200, 5) for _ in range(2))
    assert json.encode(one) == json.encode(other)


@examples(4)
@given(SEEDS)
def test_a_longer_search_finds_nothing_worse(seed):
    shop = compiled(RULES, made(6, seed))
    costs = [checked(shop, search(shop, budget).plan).cost for budget in (0, 150, 600)]
    assert costs == sorted(costs, reverse=True)


@examples(8)
@given(SEEDS)
def test_moving_everything_by_a_week_moves_the_plan_and_changes_nothing(seed):
    """Common practice: a shop's week is the same whenever it begins."""
    one = made(5, seed)
    shop = compiled(RULES, one)
    week = 7 * 24 * 60
    later = replace(
        shop,
        openings=tuple((a + week, b + week) for a, b in shop.openings),
        tasks=tuple(replace(t, not_before=t.not_before + week) for t in shop.tasks),
    )
    plan, moved = search(shop, 0).plan, search(later, 0).plan
    assert [start + week for start in plan.starts] == list(moved.starts)


def test_what_is_due_comes_before_what_is_not():
    """Two parts fill an evening each, and the second one is due when the first evening ends."""
    evenings = tuple((day * 1440 + 1080, day * 1440 + 1260) for day in range(8))
    tasks = (Task(170, 0), Task(170, 1, due=1260))
    found = search(CompiledShop(openings=evenings, products=(), tasks=tasks), 100).plan
    assert (found.days_late, found.starts) == (0, (2520, 1080))
    undue = search(CompiledShop(openings=evenings, products=(), tasks=(tasks[0],) * 2), 100).plan
    assert undue.finish == found.finish


# A made shop and a plan of it, to be spoilt.
TIGHT = compiled(RULES, made(9, 4))
PLAN = search(TIGHT, 0).plan
COAT = next(n for n, task in enumerate(TIGHT.tasks) if task.product is not None)


def _moved(task: int, minutes: int) -> Plan:
    starts = list(PLAN.starts)
    starts[task] += minutes
    return replace(PLAN, starts=tuple(starts))


def _sessions(*sessions: tuple[int, int, int]) -> Plan:
    return replace(PLAN, sessions=sessions)


SPOILT = {
    "it begins before the shop opens": _moved(0, -600),
    "a coat goes on before it is ready": _moved(COAT + 1, -24 * 60),
    "a session is missing": _sessions(*PLAN.sessions[1:]),
    "a session has no coat": _sessions(*PLAN.sessions, (0, 100 * 1440 + 1080, 100 * 1440 + 1110)),
    "two things at once": _sessions(
        (PLAN.sessions[0][0], PLAN.sessions[0][1], PLAN.sessions[0][2] + 600), *PLAN.sessions[1:]
    ),
    "an abrading that nothing wants": replace(PLAN, abrades=((0, PLAN.starts[0]),)),
}


@pytest.mark.parametrize("spoilt", SPOILT.values(), ids=SPOILT)
def test_the_checker_sees_what_is_wrong(spoilt):
    checked(TIGHT, PLAN)
    with pytest.raises(AssertionError):
        checked(TIGHT, spoilt)


def test_the_checker_counts_places():
    checked(TIGHT, PLAN)
    with pytest.raises(AssertionError, match="more than there are places"):
        checked(replace(TIGHT, racks=(2,)), PLAN)
