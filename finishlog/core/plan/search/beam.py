"""Many plans side by side, opening by opening: of all ways to fill one the most hopeful are kept.

A way of filling an opening is a policy and an order of rank. How hopeful a plan is, is judged from
an aim, an end that all of it is to have by then: what is left behind its latest start, and whether
the work still due by each opening finds its minutes. One that falls behind the aim goes on, one
that can no longer be better than the best plan known is dropped.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from finishlog.core.plan.search.draw import Draw
from finishlog.core.plan.search.evening import Evening
from finishlog.core.plan.search.latest import Latest
from finishlog.core.plan.search.policy import POLICIES
from finishlog.core.plan.search.shop import NEVER
from finishlog.core.plan.search.state import State
from finishlog.core.plan.search.tables import BY_HAND, Tables

_DAY = 24 * 60
_NONE = float("inf")
# A day late weighs more than any finish.
LATE = 1 << 22


class Node(NamedTuple):
    """A plan up to the head of an opening, and what it grew from.

    `need`: minutes of work left, by the opening in which it may start at the latest.
    """

    state: State
    number: int
    need: list[float]
    grown_from: Node | None


class Hope(NamedTuple):
    """What a plan in the making is judged by; minutes count one each, these weigh the rest.

    `chain`: what a task's start is behind; `over`: the most by which work due exceeds the hours
    until then; `margin` and `spread`: the same over every opening, seen as close from so many
    minutes on; `coat`: minutes of set-up and clean-up that each coat is thought to cost; `rank`:
    days by which orders of rank are shuffled.
    """

    chain: float
    over: float
    spread: float
    margin: float
    coat: float
    rank: float


class Beam:
    """Runs of one shop toward one aim."""

    def __init__(
        self,
        tables: Tables,
        aim: Latest,
        limit: Sequence[int],
        hope: Hope,
        draw: Draw,
        sooner: dict[int, float],
    ) -> None:
        """Prepare orders of rank and what each task weighs.

        A plan in which a task can no longer start by its `limit` is dropped; a part that comes
        `sooner` by some minutes goes before its turn.
        """
        self.tables, self.aim, self.limit = tables, aim, limit
        self.hope, self.draw = hope, draw
        self.evenings = 0
        # The parts for which plans were dropped, and how many.
        self.blamed: dict[int, int] = {}
        self._weight = [
            minutes + (hope.coat if product != BY_HAND else 0.0)
            for minutes, product in zip(tables.minutes, tables.product, strict=True)
        ]
        self._last = max(aim.opening, default=0)
        plain = [
            start - sooner.get(p, 0.0) for start, p in zip(aim.start, tables.part, strict=True)
        ]
        tails = [-float(tail) for tail in tables.tail]
        self._ranks = [plain, tails]
        self._ranks += [self._shuffled(of, n % 2 == 0) for of in (plain, tails) for n in range(4)]
        self._hours = [0]
        for opens, closing in tables.shop.openings:
            self._hours.append(self._hours[-1] + closing - opens)

    def _shuffled(self, plain: Sequence[float], by_part: bool) -> list[float]:
        """Return an order of rank in which parts, or tasks, come some days earlier or later."""
        days, bell = self.hope.rank * _DAY, self.draw.bell
        if not by_part:
            return [start + days * bell() for start in plain]
        moved = {part: days * bell() for part in self.tables.of_part}
        return [s + moved[part] for s, part in zip(plain, self.tables.part, strict=True)]

    def root(self, state: State, number: int = 0) -> Node:
        """Return the plan that a run grows from."""
        need = [0.0] * (self._last + 1)
        for task, start in enumerate(state.starts):
            if start < 0:
                need[self.aim.opening[task]] += self._weight[task]
        return Node(state, number, need, None)

    def run(self, root: Node, width: int, children: int, give_up: float) -> Node | None:
        """Grow plans until one is whole; None when none is cheaper than what to give up at."""
        kept, best, best_cost = [root], None, give_up
        openings = self.tables.shop.openings
        for number in range(root.number, len(openings)):
            grown: dict[tuple[int, ...], tuple[float, Node]] = {}
            for node in kept:
                for _ in range(children):
                    child = self._grow(node)
                    state = child.state
                    if state.left == 0:
                        if cost(self.tables, state) < best_cost:
                            best, best_cost = child, cost(self.tables, state)
                        continue
                    if number + 1 == len(openings):
                        continue
                    key = _alike(state)
                    hope = self._hope(child)
                    if hope < _NONE and (key not in grown or hope < grown[key][0]):
                        grown[key] = (hope, child)
            following = openings[number + 1][0] if number + 1 < len(openings) else NEVER
            if best is not None or not grown or following > best_cost:
                break
            kept = [node for _, node in sorted(grown.values(), key=_hopeful)[:width]]
        return best

    def _grow(self, node: Node) -> Node:
        """Fill the next opening of a plan in some way."""
        draw, ranks = self.draw, self._ranks
        policy = draw.of(POLICIES)
        rank = ranks[0] if draw.share() < 0.1 else draw.of(ranks)
        state = node.state.copy()
        evening = Evening(self.tables, state, node.number, policy, rank, self.aim.start)
        evening.run()
        self.evenings += 1
        need = node.need[:]
        opening, weight = self.aim.opening, self._weight
        for task in evening.done:
            need[opening[task]] -= weight[task]
        return Node(state, node.number + 1, need, node)

    def _hope(self, node: Node) -> float:
        """Judge a plan in the making: fewer minutes are more hopeful."""
        hope, state, aims = self.hope, node.state, self.tables.shop.aims
        number, hours = node.number, self._hours
        behind = self._behind(state, number)
        if behind == _NONE:
            return _NONE
        left, most, close = 0.0, -200.0, 0.0
        since = hours[number]
        for opening, need in enumerate(node.need):
            left += need
            if opening >= number:
                over = left - (hours[opening + 1] - since)
            elif need > 0.5:
                over = left
            else:
                continue
            most = over if over > most else most
            if over > -hope.margin:
                close += over + hope.margin
        return (
            hope.chain * behind
            + hope.over * most
            + hope.spread * close
            + left
            + aims.session * len(state.sessions)
            + 1.5 * aims.missed * len(state.abrades)
            + LATE * state.late
        )

    def _behind(self, state: State, number: int) -> float:
        """Return the shop minutes by which tasks start behind their latest start."""
        tables, aim, hours, limit = self.tables, self.aim, self._hours, self.limit
        opens = tables.shop.opens[number]
        behind = 0.0
        for task in state.ready:
            product = tables.product[task]
            start = opens if product == BY_HAND else opens + tables.set_up[product]
            start = max(start, state.ready_at[task])
            if start > limit[task]:
                part = tables.part[task]
                self.blamed[part] = self.blamed.get(part, 0) + 1
                return _NONE
            if start > aim.start[task]:
                at = hours[_opening_of(tables, start, number)]
                behind += 60 + at - hours[aim.opening[task]]
        return behind


def _opening_of(tables: Tables, minute: int, number: int) -> int:
    """Return the opening in which, or behind which, a minute lies, from a number on."""
    opens = tables.shop.opens
    while number + 1 < len(opens) and opens[number + 1] <= minute:
        number += 1
    return number


def _alike(state: State) -> tuple[int, ...]:
    """Plans that are alike in this go on alike."""
    ready = sum(state.ready_at[task] for task in state.ready)
    return state.left, state.hands, ready, len(state.sessions), len(state.abrades)


def _hopeful(grown: tuple[float, Node]) -> float:
    return grown[0]


def cost(tables: Tables, state: State) -> int:
    """Return what a plan comes to, in minutes; a day late weighs more than any of them."""
    aims = tables.shop.aims
    return (
        LATE * state.late
        + state.finish
        + aims.session * len(state.sessions)
        + aims.missed * len(state.abrades)
    )
