"""A plan of the search held against a compiled shop, written apart from everything that searches.

It knows nothing of how a plan was found: it reads the minutes, and counts everything again.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import ceil, floor

from msgspec import Struct

from finishlog.core.plan.search.shop import NEVER, CompiledShop, Lag, Plan, Task


class Count(Struct, frozen=True):
    """What a plan comes to, counted again; `places`: the most that each kind of rack held."""

    days_late: int
    finish: int
    sessions: int
    missed: int
    places: tuple[int, ...]

    @property
    def cost(self) -> int:
        """The yardstick's objective in minutes, lateness apart: 15 a session, 30 a window."""
        return self.finish + 15 * self.sessions + 30 * self.missed


def checked(shop: CompiledShop, plan: Plan) -> Count:
    """Count what a plan comes to; AssertionError, with its numbers, for what it does not keep."""
    assert len(plan.starts) == len(shop.tasks)
    ends = [s + t.minutes for s, t in zip(plan.starts, shop.tasks, strict=True)]
    abrades = dict(plan.abrades)
    assert len(abrades) == len(plan.abrades), "abraded once"
    _hands(shop, plan, ends, abrades)
    for number in range(len(shop.tasks)):
        _task(shop, plan, ends, abrades, number)
    _sessions(shop, plan, ends)
    _dust(shop, plan, ends, abrades)
    return Count(
        days_late=sum(_late(shop, t, e) for t, e in zip(shop.tasks, ends, strict=True)),
        finish=max(ends, default=0),
        sessions=len(plan.sessions),
        missed=len(abrades),
        places=_places(shop, ends),
    )


def _reached(lag: Lag, end: int, *, closing: bool = False) -> int:
    """Read a lag: in a table straight between two quarter hours, to the cautious whole minute."""
    if isinstance(lag, int):
        return end + lag
    before, over = divmod(end, 15)
    if before + (over > 0) >= len(lag):
        return lag[-1] if closing else NEVER
    if over == 0:
        return lag[before]
    low, high = lag[before], lag[before + 1]
    if high >= NEVER:
        return low if closing else NEVER
    exact = Fraction(low) + Fraction((high - low) * over, 15)
    return floor(exact) if closing else ceil(exact)


def _inside(shop: CompiledShop, start: int, end: int) -> bool:
    return any(a <= start and end <= b for a, b in shop.openings)


def _hands(shop: CompiledShop, plan: Plan, ends: list[int], abrades: dict[int, int]) -> None:
    """Two hands: nothing overlaps, and everything lies within one opening."""
    busy = [(a, b, "session") for _, a, b in plan.sessions]
    busy += [(s, s + shop.vacuum, "vacuum") for _, s in plan.vacuums]
    for number, task in enumerate(shop.tasks):
        if task.product is None:
            busy.append((plan.starts[number], ends[number], f"task {number}"))
    for number, start in abrades.items():
        window = shop.tasks[number].window
        assert window is not None
        busy.append((start, start + window.abrade, f"abrading for {number}"))
    for start, end, what in busy:
        assert _inside(shop, start, end), (what, start, end, "outside the opening hours")
    for x, y in pairwise(sorted(busy)):
        assert x[1] <= y[0], (x, y, "at once")
    coats = sorted(
        (plan.starts[n], ends[n]) for n, t in enumerate(shop.tasks) if t.product is not None
    )
    for one, next_ in pairwise(coats):
        assert one[1] <= next_[0], (one, next_, "two coats at once")


def _task(
    shop: CompiledShop, plan: Plan, ends: list[int], abrades: dict[int, int], number: int
) -> None:
    task, start = shop.tasks[number], plan.starts[number]
    assert start >= task.not_before, (number, "before its release")
    for after in task.after:
        assert start >= _reached(after.ready, ends[after.task]), (number, after.task, "not ready")
    assert not any(a <= start < b for a, b in task.blocked), (number, start, "blocked")
    window = task.window
    if window is None:
        assert number not in abrades
        return
    end = 0 if window.task is None else ends[window.task]
    closes = _reached(window.closes, end, closing=True)
    if number in abrades:
        abraded = abrades[number]
        assert abraded >= _reached(window.sands, end), (number, "abraded while soft")
        assert abraded >= task.not_before
        assert abraded + window.abrade <= start, (number, "coated before it is abraded")
        return
    assert start <= closes, (number, start, closes, "its window closed")


def _sessions(shop: CompiledShop, plan: Plan, ends: list[int]) -> None:
    """Each coat in one session of its product, within the pot life; each session with a coat."""
    used: dict[tuple[int, int, int], list[int]] = {each: [] for each in plan.sessions}
    assert len(used) == len(plan.sessions)
    for number, task in enumerate(shop.tasks):
        if task.product is None:
            continue
        of = shop.products[task.product]
        start, end = plan.starts[number], ends[number]
        inside = [
            s
            for s in plan.sessions
            if s[0] == task.product and s[1] + of.set_up <= start and end <= s[2] - of.clean_up
        ]
        assert len(inside) == 1, (number, "in one session", inside)
        used[inside[0]].append(number)
    for each, coats in used.items():
        assert coats, (each, "opened for nothing")
        of = shop.products[each[0]]
        length = (each[2] - of.clean_up) - (each[1] + of.set_up)
        assert of.pot_life is None or length <= of.pot_life, (each, "past the pot life")


def _dust(shop: CompiledShop, plan: Plan, ends: list[int], abrades: dict[int, int]) -> None:
    """No dusty work beside a wet film; no coat before dust was taken up and is down."""
    dusty = [(t.room, plan.starts[n], ends[n]) for n, t in enumerate(shop.tasks) if t.is_dusty]
    for number, start in abrades.items():
        window = shop.tasks[number].window
        assert window is not None
        if window.is_dusty:
            dusty.append((shop.tasks[number].room, start, start + window.abrade))
    for room in shop.rooms:
        for at, start, _ in dusty:
            assert at != room.room or start >= room.wet_until, (at, start, "dust on a wet film")
    for number, task in enumerate(shop.tasks):
        if task.product is None:
            continue
        start = plan.starts[number]
        taken_up = [s for room, s in plan.vacuums if room == task.room and s < start]
        lain = [end for at, _, end in dusty if at == task.room and end <= start]
        lain += [0 for room in shop.rooms if room.room == task.room and room.is_dirty]
        for end in lain:
            down = [s + shop.vacuum + shop.settle for s in taken_up if s >= end]
            assert down, (number, start, end, "dust lies")
            assert min(down) <= start, (number, start, end, "dust falls")
        for room in shop.rooms:
            assert room.room != task.room or start >= room.dust_down, (number, "dust falls")
        wet = _reached(task.wet_until, ends[number])
        for at, since, until in dusty:
            assert at != task.room or until <= start or since >= wet, (number, since, "dust on it")


def _places(shop: CompiledShop, ends: list[int]) -> tuple[int, ...]:
    """Count the places of each kind at every moment at which one is taken."""
    most = []
    for kind, there in enumerate(shop.racks):
        spans = [(0, h.until, h.places) for h in shop.held if h.kind == kind]
        for task, end in zip(shop.tasks, ends, strict=True):
            spans += [(end, _reached(r.until, end), r.places) for r in task.racks if r.kind == kind]
        held = [sum(p for a, b, p in spans if a <= moment < b) for moment, _, _ in spans]
        most.append(max(held, default=0))
        assert most[-1] <= there, (kind, most[-1], "more than there are places")
    return tuple(most)


def _late(shop: CompiledShop, task: Task, end: int) -> int:
    """Count the openings that begin from the date until it is packed; at least one when late."""
    if task.due is None:
        return 0
    packed = _reached(task.packs, end)
    if packed <= task.due:
        return 0
    return max(1, sum(task.due <= opens < packed for opens, _ in shop.openings))
