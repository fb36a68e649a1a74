"""What the search finds on small made shops, held against plans proved to be the best.

The table is frozen output of OR-Tools CP-SAT (`tests/reference/proved_plans.py`).
"""

from __future__ import annotations

from finishlog.core.plan.search.search import budget, search
from tests.checked_shop import checked
from tests.reference.proved_plans import SHOPS, frozen, shop_of


def test_small_shops_are_planned_within_a_hundredth_of_what_is_proved_best():
    best, over = frozen(), []
    assert set(best) == set(SHOPS)
    for parts, seed, places in SHOPS:
        shop = shop_of(parts, seed, places)
        cost = checked(shop, search(shop, budget(len(shop.tasks)) // 2).plan).cost
        proved = best[parts, seed, places]
        assert cost >= proved, (parts, seed, places, "better than the best there is")
        over.append(cost / proved - 1)
    assert max(over) <= 0.01, over
