"""Small made shops planned by OR-Tools CP-SAT, each proved to have no better plan.

`python -m tests.reference.proved_plans` writes tests/core/plan/search/proved_plans.csv;
`test_plans_live` makes it again and compares. Proved are plans with at most two sessions of one
product in one opening, on a grid of five minutes.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator
from pathlib import Path

from finishlog.core.plan.search.search import search
from finishlog.core.plan.search.shop import CompiledShop
from tests.bench.made_shops import RULES, compiled, made

FROZEN = Path(__file__).parents[1] / "core" / "plan" / "search" / "proved_plans.csv"
GRID = 5
SESSIONS = 2
# Parts, seed, rack places.
SHOPS = ((3, 1, 10), (4, 2, 2), (5, 3, 10), (5, 4, 2), (5, 5, 10), (5, 6, 3))


def shop_of(parts: int, seed: int, places: int) -> CompiledShop:
    """Return a made shop with so many places on its rack."""
    return compiled({**RULES, "rack_places": places}, made(parts, seed))


def frozen() -> dict[tuple[int, int, int], int]:
    """Read the frozen table: the cost of the best plan, by parts, seed and rack places."""
    lines = [x for x in FROZEN.read_text("utf-8").splitlines() if not x.startswith("#")]
    rows = csv.DictReader(lines)
    return {
        (int(r["parts"]), int(r["seed"]), int(r["rack_places"])): int(r["cost_min"]) for r in rows
    }


def proved(shop: CompiledShop) -> int:
    """Return the cost of the best plan in minutes; AssertionError where it is not proved."""
    from ortools.sat.python import cp_model

    known = search(shop, 2000).plan
    openings = [o for o in shop.openings if o[0] < known.finish]
    model = _Model(cp_model.CpModel(), shop, [(a // GRID, b // GRID) for a, b in openings])
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 2
    solver.parameters.max_time_in_seconds = 120
    status = solver.solve(model.complete())
    assert status == cp_model.OPTIMAL, solver.status_name(status)
    return GRID * round(solver.objective_value)


class _Model:
    """One shop as constraints; every time in steps of the grid."""

    def __init__(self, model, shop, openings):
        from ortools.sat.python import cp_model

        self.model, self.shop, self.openings = model, shop, openings
        self.horizon = openings[-1][1]
        self.domain = cp_model.Domain.from_intervals
        self.starts, self.busy, self.coats = [], [], []
        self.missed, self.sessions = [], []

    def complete(self):
        for number in range(len(self.shop.tasks)):
            self._task(number)
        for number in range(len(self.shop.tasks)):
            self._after(number)
        for product in range(len(self.shop.products)):
            self._product(product)
        self.model.add_no_overlap(self.busy)
        self.model.add_no_overlap(self.coats)
        self._racks()
        finish = self.model.new_int_var(0, self.horizon, "")
        for number in range(len(self.shop.tasks)):
            self.model.add(finish >= self._end(number))
        aims = self.shop.aims
        self.model.minimize(
            finish
            + aims.session // GRID * sum(self.sessions)
            + aims.missed // GRID * sum(self.missed)
        )
        return self.model

    def _minutes(self, number):
        return self.shop.tasks[number].minutes // GRID

    def _end(self, number):
        return self.starts[number] + self._minutes(number)

    def _inside(self, length, first=0):
        spans = [[max(a, first), b - length] for a, b in self.openings]
        return self.domain([s for s in spans if s[0] <= s[1]])

    def _task(self, number):
        task, length = self.shop.tasks[number], self._minutes(number)
        start = self.model.new_int_var_from_domain(
            self._inside(length, task.not_before // GRID), ""
        )
        self.starts.append(start)
        interval = self.model.new_fixed_size_interval_var(start, length, "")
        (self.busy if task.product is None else self.coats).append(interval)

    def _after(self, number):
        task = self.shop.tasks[number]
        for after in task.after:
            self.model.add(self.starts[number] >= self._end(after.task) + after.ready // GRID)
        window = task.window
        if window is None:
            return
        beneath, length = self._end(window.task), window.abrade // GRID
        missed = self.model.new_bool_var("")
        open_for = self.starts[number] - beneath
        self.model.add(open_for <= window.closes // GRID).only_enforce_if(missed.negated())
        abraded = self.model.new_int_var_from_domain(self._inside(length), "")
        self.model.add(abraded >= beneath + window.sands // GRID).only_enforce_if(missed)
        self.model.add(abraded + length <= self.starts[number]).only_enforce_if(missed)
        self.busy.append(
            self.model.new_optional_fixed_size_interval_var(abraded, length, missed, "")
        )
        self.missed.append(missed)

    def _product(self, product):
        """Offer sessions of a product in every opening, and put each coat into one of them."""
        of = self.shop.products[product]
        coats = [n for n, task in enumerate(self.shop.tasks) if task.product == product]
        inside = {number: [] for number in coats}
        for opens, closing in self.openings:
            last = None
            for _ in range(SESSIONS):
                there = self.model.new_bool_var("")
                start = self.model.new_int_var(opens, closing, "")
                end = self.model.new_int_var(opens, closing, "")
                size = self.model.new_int_var(0, closing - opens, "")
                self.busy.append(self.model.new_optional_interval_var(start, size, end, there, ""))
                around = (of.set_up + of.clean_up) // GRID
                self.model.add(end - start <= of.pot_life // GRID + around)
                for number in coats:
                    put = self.model.new_bool_var("")
                    self.model.add_implication(put, there)
                    self.model.add(
                        self.starts[number] >= start + of.set_up // GRID
                    ).only_enforce_if(put)
                    self.model.add(self._end(number) <= end - of.clean_up // GRID).only_enforce_if(
                        put
                    )
                    inside[number].append(put)
                if last is not None:
                    self.model.add_implication(there, last)
                last = there
                self.sessions.append(there)
        for puts in inside.values():
            self.model.add_exactly_one(puts)

    def _racks(self):
        for kind, places in enumerate(self.shop.racks):
            held, demands = [], []
            for number, task in enumerate(self.shop.tasks):
                for rack in task.racks:
                    if rack.kind == kind:
                        length = rack.until // GRID
                        held.append(
                            self.model.new_fixed_size_interval_var(self._end(number), length, "")
                        )
                        demands.append(rack.places)
            self.model.add_cumulative(held, demands, places)


def rows() -> Iterator[tuple[int, int, int, int]]:
    """Prove every shop of the table."""
    for parts, seed, places in SHOPS:
        yield parts, seed, places, proved(shop_of(parts, seed, places))


SAYS = """\
# Frozen output of OR-Tools 9.15 (CP-SAT): the cost of the best plan of small made shops, proved.
# Made by "python -m tests.reference.proved_plans", re-proved live by
# tests/reference/test_plans_live.py.
parts,seed,rack_places,cost_min
"""


if __name__ == "__main__":
    FROZEN.write_text(SAYS + "".join(f"{','.join(map(str, r))}\n" for r in rows()), "utf-8")
