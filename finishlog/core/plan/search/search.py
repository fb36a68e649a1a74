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
from finishlog.core.plan.search.shop import NEVER, CompiledShop, Plan
from finishlog.core.plan.search.state import State
from finishlog.core.plan.search.tables import Tables

DAY = 24 * 60
WIDTH, CHILDREN = 30, 7


def budget(tasks: int) -> int:
    """Return how many openings a plan of so many tasks may fill; a large shop's take longer."""
    return min(800 * tasks, max(5_200_000 // (60 + tasks // 4), 29_000))


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
        # The parts for which plans were dropped, the latest runs first.
        self.blamed: dict[int, float] = {}
        self.bounds = bounds(self.tables)
        # The first opening in which a plan may end.
        self.first = bisect_right(shop.opens, self.bounds.finish) - 1
        self._known: dict[tuple[int, bool], Latest] = {}

    def run(self, budget: int) -> Found:
        """Search until so many openings were filled."""
        rank = [-float(tail) for tail in self.tables.tail]
        for policy in RULES:
            states = decode(self.tables, policy, rank)
            self.evenings += len(states) - 1
            self._keep(states)
        while self.evenings < budget and self.best[-1].left == 0:
            self._side_by_side()
        return Found(plan_of(self.tables, self.best[-1]), self.bounds, self.evenings)

    def _keep(self, states: list[State]) -> bool:
        found = cost(self.tables, states[-1]) + (states[-1].left << 40)
        if found >= self.cost and self.best:
            return False
        self.best, self.cost = states, found
        return True

    def _side_by_side(self) -> None:
        """Grow plans toward an end an opening or two before the best one so far."""
        tables, draw, opens = self.tables, self.draw, self.tables.shop.opens
        last = bisect_right(opens, self.best[-1].finish) - 1
        sooner = draw.of((0, 1, 1, 1, 1, 1, 1, 1))
        aim = self._latest(last - sooner)
        # Where something is late, what would end later may yet be late by less.
        limit = [NEVER] * tables.size
        if not self.best[-1].late:
            limit = self._latest(last - min(sooner, 1), due=False).start
        # Whether drying bounds the end, or the hours do.
        dries = self.bounds.chain >= self.bounds.hours
        hope = Hope(
            chain=draw.of((0.3, 1.0, 3.0) if dries else (0.3, 1.0)),
            over=draw.of((1.0, 3.0)),
            spread=draw.of((0.1, 0.3)),
            margin=draw.of((0.0, 100.0, 300.0) if dries else (100.0, 300.0)),
            coat=draw.of((8.0, 10.0)),
            rank=draw.of((0.5, 1.0, 2.0) if dries else (1.0, 2.0)),
        )
        beam = Beam(tables, aim, limit, hope, draw, self._sooner())
        from_ = 0 if draw.share() < 0.95 else draw.below(last + 1)
        grown = beam.run(beam.root(self.best[from_], from_), WIDTH, CHILDREN, self.cost)
        self.evenings += beam.evenings
        for part in sorted(self.blamed.keys() | beam.blamed.keys()):
            before = self.blamed.get(part, 0.0)
            self.blamed[part] = before / 2 + beam.blamed.get(part, 0)
        if grown is not None:
            self._keep(self.best[:from_] + _grown(grown))

    def _sooner(self) -> dict[int, float]:
        """Return minutes by which parts come sooner: those for which plans were dropped."""
        most, days = max(self.blamed.values(), default=0.0), self.draw.of((0, 1, 2))
        return {part: days * DAY * of / most for part, of in self.blamed.items()} if most else {}

    def _latest(self, number: int, *, due: bool = True) -> Latest:
        """Return the latest starts for all to end in an opening, kept from then on."""
        number = max(number, self.first)
        if (number, due) not in self._known:
            end = self.tables.shop.openings[number][1]
            self._known[number, due] = latest(self.tables, end, due=due)
        return self._known[number, due]


def _grown(node: Node) -> list[State]:
    """Return how a plan stood at the head of each opening since its root, and its end."""
    states: list[State] = []
    at: Node | None = node
    while at is not None:
        states.append(at.state)
        at = at.grown_from
    return states[::-1]
