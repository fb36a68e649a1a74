"""Shops drawn by a number, compiled for the search: each task begins when the bench says.

Schedules are common practice; pieces, woods, hours and air are anything, figures the published
ones. What a search makes of a compiled shop is drawn by dice: any order of it must hold.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.compiled_plan import laid_out, named, told_of
from tests.examples import examples
from tests.shops_at_random import shop_at_random

pytestmark = pytest.mark.thorough

SEEN, MOST_THAT_DIFFER = range(904, 908), 0.02


@examples(6)
@given(st.integers(0, 100_000), st.integers(0, 100))
def test_no_task_begins_before_the_bench_lets_it(number, dice):
    made = shop_at_random(number, 2)
    shop = made.compiled()
    told = [*told_of(made, shop, laid_out(shop.shop, dice))]
    assert [t for t in told if t.against is not None] == [], named(shop, told)


def test_a_date_is_found_behind_what_the_search_minds_by_itself():
    """Wood that was wetted, in a room where a film is wet: both hold the sanding up."""
    made = shop_at_random(217, 6)
    shop = made.compiled()
    told = [*told_of(made, shop, laid_out(shop.shop, 0))]
    assert named(shop, told) == []


def test_hardly_a_task_waits_longer_than_the_bench_has_it_wait():
    told, late = 0, []
    for number in SEEN:
        made = shop_at_random(number, 4)
        shop = made.compiled()
        found = [*told_of(made, shop, laid_out(shop.shop, number))]
        told += len(found)
        late += named(shop, found)
    assert told > 60
    assert len(late) <= MOST_THAT_DIFFER * told, late


def test_the_same_shop_is_compiled_to_the_same():
    made = shop_at_random(77, 4)
    assert made.compiled().shop == made.compiled().shop
