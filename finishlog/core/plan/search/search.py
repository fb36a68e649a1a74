"""The search: rules first, then runs side by side toward an earlier end, within a budget.

A pure function of shop, budget and seed: it asks no clock, and counts what it does in openings
filled.
"""

from __future__ import annotations

from bisect import bisect_right

from msgspec import Struct

from finishlog.core.plan.search.beam import Beam, Hope, Node, cost
from finishlog.core.plan.search.bounds import Bounds, bounds
from finishlog.core.plan.search.decode import decode, plan_of
from finishlog.core.plan.search.draw import Draw
from finishlog.core.plan.search.latest import Latest, latest
from finishlog.core.plan.search.policy import RULES
from finishlog.core.plan.search.shop import CompiledShop, Plan
from finishlog.core.plan.search.state import State
from finishlog.core.plan.search.tables import Tables

WIDTH, CHILDREN = 20, 10


def budget(tasks: int) -> int:
    """Return how many openings a plan of so many tasks may fill."""
    return min(45_000, 400 * tasks)


class Found(Struct, frozen=True):
    """A plan, what bounds it from below, and the openings that were filled to find it."""

    plan: Plan
    bounds: Bounds
    evenings: int


def search(shop: CompiledShop, budget: int, seed: int = 0) -> Found:
    """Search for a plan of a shop, filling about so many openings."""
    return Search(shop, seed).run(budget)


class Search:
    """One search: the best plan so far, and how it came to be."""

    def __init__(self, shop: CompiledShop, seed: int) -> None:
        """Lay the shop out."""
        self.tables = Tables(shop)
        self.draw = Draw(seed)
        self.evenings = 0
        self.best: list[State] = []
        self.cost = 1 << 60

    def run(self, budget: int) -> Found:
        """Search until so many openings were filled."""
        rank = [-float(tail) for tail in self.tables.tail]
        for policy in RULES:
            states = decode(self.tables, policy, rank)
            self.evenings += len(states) - 1
            self._keep(states)
        while self.evenings < budget and self.best[-1].left == 0:
            self._side_by_side()
        return Found(plan_of(self.tables, self.best[-1]), bounds(self.tables), self.evenings)

    def _keep(self, states: list[State]) -> bool:
        found = cost(self.tables, states[-1]) + (states[-1].left << 40)
        if found >= self.cost and self.best:
            return False
        self.best, self.cost = states, found
        return True

    def _side_by_side(self) -> None:
        """Grow plans toward an end an opening or two before the best one so far."""
        tables, draw = self.tables, self.draw
        last = bisect_right(tables.shop.opens, self.best[-1].finish) - 1
        aim = self._aim(last - draw.of((0, 1, 1, 1, 1, 1, 2, 2)))
        hope = Hope(
            chain=draw.of((0.1, 0.3, 1.0)),
            over=draw.of((0.5, 1.0, 3.0)),
            spread=draw.of((0.1, 0.3, 1.0)),
            margin=draw.of((100.0, 300.0)),
            coat=draw.of((7.0, 10.0, 13.0)),
            rank=draw.of((0.5, 1.0, 2.0)),
        )
        beam = Beam(tables, aim, hope, draw)
        from_ = 0 if draw.share() < 0.8 else draw.below(last + 1)
        grown = beam.run(beam.root(self.best[from_], from_), WIDTH, CHILDREN, self.cost)
        self.evenings += beam.evenings
        if grown is not None:
            self._keep(self.best[:from_] + _grown(grown))

    def _aim(self, number: int) -> Latest:
        openings = self.tables.shop.openings
        return latest(self.tables, openings[max(0, number)][1])


def _grown(node: Node) -> list[State]:
    """Return how a plan stood at the head of each opening since its root, and its end."""
    states: list[State] = []
    at: Node | None = node
    while at is not None:
        states.append(at.state)
        at = at.grown_from
    return states[::-1]
