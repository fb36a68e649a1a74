"""What no plan can be earlier than: the longest chain, and the hours of the shop."""

from __future__ import annotations

from msgspec import Struct

from finishlog.core.plan.search.latest import earliest
from finishlog.core.plan.search.shop import NEVER
from finishlog.core.plan.search.tables import BY_HAND, Tables


class Bounds(Struct, frozen=True):
    """Minutes before which no plan ends: `chain` dries, `hours` are worked.

    NEVER where it cannot end.
    """

    chain: int
    hours: int

    @property
    def finish(self) -> int:
        """The later of the two."""
        return max(self.chain, self.hours)


def bounds(tables: Tables) -> Bounds:
    """Bound the end of every plan from below; windows, racks and dust only make it later."""
    starts = earliest(tables)
    chain = max((s + m for s, m in zip(starts, tables.minutes, strict=True)), default=0)
    return Bounds(min(chain, NEVER), _hours(tables))


def _hours(tables: Tables) -> int:
    """Fill the openings with the work, with as few sessions of each product as hold its coats."""
    need, longest = tables.hands, max((b - a for a, b in tables.shop.openings), default=0)
    used = set(tables.product) - {BY_HAND}
    for product in used:
        around = tables.set_up[product] + tables.clean_up[product]
        work = sum(m for m, p in zip(tables.minutes, tables.product, strict=True) if p == product)
        most = min(longest - around, tables.pot_life[product])
        need += around * max(1, -(-work // max(1, most)))
    # The last coat's end counts, and its clean-up comes behind it.
    need -= max((tables.clean_up[product] for product in used), default=0)
    first = min((task.not_before for task in tables.shop.tasks), default=0)
    for opens, closing in tables.shop.openings:
        begin = max(opens, first)
        if begin >= closing:
            continue
        if need <= closing - begin:
            return begin + need
        need -= closing - begin
    return NEVER if need else 0
