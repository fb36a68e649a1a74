"""Plans against OR-Tools, and bounds against networkx, asked live."""

from __future__ import annotations

import pytest

from finishlog.core.plan.search.bounds import bounds
from finishlog.core.plan.search.shop import CompiledShop, Product
from finishlog.core.plan.search.tables import Tables
from tests.bench.made_shops import RULES, compiled, made
from tests.reference.proved_plans import SHOPS, frozen, proved, shop_of

pytestmark = pytest.mark.reference


@pytest.mark.parametrize(("parts", "seed", "places"), SHOPS)
def test_the_frozen_plans_are_the_best_there_are(parts, seed, places):
    assert frozen()[parts, seed, places] == proved(shop_of(parts, seed, places))


@pytest.mark.parametrize(("parts", "seed"), [(1, 1), (4, 2), (12, 3), (30, 4), (100, 5)])
def test_the_longest_chain_is_the_longest_path_where_the_shop_never_shuts(parts, seed):
    """A path through the graph of waits, each task as long as its hands and what it waits for."""
    import networkx

    made_shop = compiled(RULES, made(parts, seed))
    shop = CompiledShop(
        openings=((0, 1 << 20),),
        products=(Product(0, 0),) * len(made_shop.products),
        tasks=made_shop.tasks,
    )
    graph = networkx.DiGraph()
    for number, task in enumerate(shop.tasks):
        graph.add_edge("begin", number, weight=task.not_before)
        graph.add_edge(number, "end", weight=task.minutes)
        for after in task.after:
            length = shop.tasks[after.task].minutes + after.ready
            graph.add_edge(after.task, number, weight=length)
    longest = networkx.dag_longest_path_length(graph, weight="weight")
    assert bounds(Tables(shop)).chain == longest
