"""A compiled shop held against the bench: may each task begin when it says, and no sooner?

Written apart from the compile step and from the search: a plain decoder lays the tasks out by a
throw of dice, and the bench is asked of every one, at its start and of when it could have begun.
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import datetime, tzinfo

from finishlog.core.clock.pace import Paces
from finishlog.core.film.lessons import Lessons
from finishlog.core.plan.compiled.shop import Compiled, compiled
from finishlog.core.plan.compiled.verified import Begun, Bench, Disagreement, in_order
from finishlog.core.plan.jobs_that_fit import Hands
from finishlog.core.plan.search.shop import NEVER, CompiledShop, Plan, Task, Window, closes, waits
from finishlog.core.plan.shop_ahead import ShopAhead
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import Log, Shop

# What a reading of a table by the quarter hour may be off, minutes.
A_QUARTER = 15


@dataclass(frozen=True)
class Made:
    """A shop as it is planned ahead: all that `plan` is given."""

    shop: Shop
    log: Log
    facts: Facts
    now: datetime
    zone: tzinfo
    paces: Paces = Paces.none
    lessons: Lessons = Lessons.none

    def ahead(self) -> ShopAhead:
        """Look at it as it stands."""
        return ShopAhead(
            self.shop,
            self.log,
            self.facts,
            self.now,
            self.zone,
            paces=self.paces,
            lessons=self.lessons,
        )

    def compiled(self) -> Compiled:
        """Compile it."""
        due = {p.id: p.due for p in self.shop.projects if p.due is not None}
        return compiled(self.ahead(), due)


def laid_out(shop: CompiledShop, dice: int) -> Plan:
    """Lay tasks out in time: what may begin first does, of several one by a throw of dice."""
    return _Layout(shop, random.Random(dice)).plan()


@dataclass
class _Layout:
    shop: CompiledShop
    dice: random.Random
    starts: dict[int, int] = field(default_factory=dict)
    ends: dict[int, int] = field(default_factory=dict)
    sessions: list[tuple[int, int, int]] = field(default_factory=list)
    abrades: dict[int, int] = field(default_factory=dict)
    vacuums: list[tuple[int, int]] = field(default_factory=list)
    dirty: set[int] = field(default_factory=set)
    down: dict[int, int] = field(default_factory=dict)
    wet: list[tuple[int, int, int]] = field(default_factory=list)
    brush: tuple[int, int] | None = None
    now: int = 0

    def __post_init__(self) -> None:
        self.rank = [self.dice.random() for _ in self.shop.tasks]
        for room in self.shop.rooms:
            self.dirty |= {room.room} if room.is_dirty else set()
            self.down[room.room] = room.dust_down
            self.wet.append((-1, room.room, room.wet_until))

    def plan(self) -> Plan:
        """Fill one opening after another."""
        for opens, shuts in self.shop.openings:
            self.now = opens
            while self._step(shuts):
                pass
            self._wash()
        starts = tuple(self.starts.get(n, -1) for n in range(len(self.shop.tasks)))
        whole = len(self.starts) == len(starts)
        return Plan(
            starts,
            tuple(self.sessions),
            tuple(self.abrades.items()),
            tuple(self.vacuums),
            0,
            max(self.ends.values(), default=0),
            whole,
        )

    def _step(self, shuts: int) -> bool:
        """Do what may begin first; tell whether anything may."""
        found = sorted(
            (start, self.rank[n], n, abrades)
            for n in range(len(self.shop.tasks))
            if n not in self.starts and (each := self._start(n, shuts)) is not None
            for start, abrades in [each]
        )
        if not found:
            return False
        start, _, n, abrades = found[0]
        task = self.shop.tasks[n]
        if abrades:
            self._wash()
            self._by_hand(max(start, self.now), task)
            self.abrades[n] = self.now
            assert task.window is not None
            self.now += task.window.abrade
            return True
        if task.product is None:
            self._wash()
            self._by_hand(max(start, self.now), task)
        else:
            self._take_up(task)
            start = max(start, self.now + self._set_up(task))
            if self.brush is None:
                self.brush = task.product, start - self.shop.products[task.product].set_up
            self.now = start
        self.starts[n] = self.now
        self.now += task.minutes
        self.ends[n] = self.now
        if task.product is not None and task.wet_until:
            self.wet.append((task.part, task.room, waits(task.wet_until, self.now)))
        return True

    def _by_hand(self, start: int, task: Task) -> None:
        self.now = start
        if task.is_dusty or task.product is not None:
            self.dirty.add(task.room)

    def _take_up(self, task: Task) -> None:
        """Take up the dust before a coat; the brush that is wet with another product is washed."""
        if self.brush is not None and (task.room in self.dirty or self.brush[0] != task.product):
            self._wash()
        if task.room in self.dirty:
            self.vacuums.append((task.room, self.now))
            self.now += self.shop.vacuum
            self.dirty.discard(task.room)
            self.down[task.room] = self.now + self.shop.settle

    def _wash(self) -> None:
        if self.brush is not None:
            product, begun = self.brush
            self.now += self.shop.products[product].clean_up
            self.sessions.append((product, begun, self.now))
            self.brush = None

    def _set_up(self, task: Task) -> int:
        assert task.product is not None
        return 0 if self.brush is not None else self.shop.products[task.product].set_up

    def _start(self, n: int, shuts: int) -> tuple[int, bool] | None:
        """Return when a task, or the abrading before it, may begin in an opening."""
        task = self.shop.tasks[n]
        ready = self.ready(n)
        if ready is None or ready >= NEVER:
            return None
        wash = self.shop.products[self.brush[0]].clean_up if self.brush is not None else 0
        if task.product is None:
            start = max(ready, self.now + wash, self._dry(task) if task.is_dusty else 0)
            return (start, False) if start + task.minutes <= shuts else None
        dirty = task.room in self.dirty
        fresh = dirty or self.brush is None or self.brush[0] != task.product
        product = self.shop.products[task.product]
        lead = (wash + product.set_up if fresh else 0) + (self._dust() if dirty else 0)
        start = max(ready, self.now + lead, self.down.get(task.room, 0))
        for since, until in task.blocked:
            start = until if since <= start < until else start
        sands = self.missed(n, start)
        if sands is not None and n not in self.abrades:
            assert task.window is not None
            begin = max(sands, self.now + wash, self._dry(task) if task.window.is_dusty else 0)
            return (begin, True) if begin + task.window.abrade <= shuts else None
        return (start, False) if start + task.minutes + product.clean_up <= shuts else None

    def _dust(self) -> int:
        return self.shop.vacuum + self.shop.settle

    def _dry(self, task: Task) -> int:
        """Return when no film of another part in the room takes dust any more."""
        return max((u for p, r, u in self.wet if r == task.room and p != task.part), default=0)

    def ready(self, n: int) -> int | None:
        """Return from when on a task may begin; None: something comes first."""
        return ready_at(self.shop.tasks[n], self.ends)

    def missed(self, n: int, start: int) -> int | None:
        """Return from when on a film may be abraded whose window is over by a start; else None."""
        window = self.shop.tasks[n].window
        if window is None:
            return None
        if start <= closes_at(window, self.ends):
            return None
        return sands_at(self.shop.tasks[n], window, self.ends)


def ready_at(task: Task, ends: Mapping[int, int]) -> int | None:
    """Return from when on a task may begin, by what ended when; None: something comes first."""
    if any(each.task not in ends for each in task.after):
        return None
    return max([task.not_before, *(waits(a.ready, ends[a.task]) for a in task.after)])


def closes_at(window: Window, ends: Mapping[int, int]) -> int:
    """Return when the window of a film closes."""
    if window.task is not None:
        return closes(window.closes, ends[window.task])
    assert isinstance(window.closes, int)
    return window.closes


def sands_at(task: Task, window: Window, ends: Mapping[int, int]) -> int:
    """Return from when on a film whose window is missed may be abraded for a coat."""
    others = [waits(a.ready, ends[a.task]) for a in task.after if a.task != window.task]
    if window.task is not None:
        return max([waits(window.sands, ends[window.task]), *others])
    assert isinstance(window.sands, int)
    return max([window.sands, *others])


@dataclass(frozen=True)
class Told:
    """What bench and compiled shop say of one task: from when on it may begin, minutes.

    `bench` None: with the rules that held it up by then it would not have been let at all.
    `against`: what the bench has against its start; `by`: which rules held it up till then.
    """

    begun: Begun
    bench: int | None
    compiled: int
    against: Disagreement | None
    by: tuple[str, ...]

    @property
    def is_late(self) -> bool:
        """Tell whether the bench would let it begin more than a quarter hour sooner."""
        return self.bench is not None and self.compiled - self.bench > A_QUARTER


def told_of(made: Made, shop: Compiled, found: Plan) -> Iterator[Told]:
    """Carry a plan out on the shop ahead, and ask of each task from when on it may begin."""
    bench = Bench(shop, made.ahead(), Hands(made.shop, made.facts))
    tasks = shop.shop.tasks
    ends = {n: s + tasks[n].minutes for n, s in enumerate(found.starts) if s >= 0}
    for begun in in_order(found):
        since = _worked_last(shop, bench.ahead, begun.task)
        by_shop = max(since, _may_begin(tasks[begun.task], ends, begun))
        by_bench, by = _asked(bench, begun, since, by_shop)
        against = bench.against(begun, shop.origin.at(begun.start))
        bench.carry_out(begun)
        yield Told(begun, by_bench, by_shop, against, by)


def _may_begin(task: Task, ends: Mapping[int, int], begun: Begun) -> int:
    """Return from when on a task may begin, or the scuffing before it."""
    if not begun.after:
        assert task.window is not None
        return sands_at(task, task.window, ends)
    start = ready_at(task, ends) or 0
    for since, until in task.blocked:
        start = until if since <= start < until else start
    return start


def _asked(
    bench: Bench, begun: Begun, since: int, until: int
) -> tuple[int | None, tuple[str, ...]]:
    """Ask the bench from when on a task may begin, and which rules held it up; None: not by then.

    Dust is the search's to mind: it is no date of the task's own.
    """
    origin, now, by = bench.compiled.origin, since, list[str]()
    while now <= until:
        held = bench.against(begun, origin.at(now))
        if held is None:
            return now, tuple(by)
        by.append(held.because.rule)
        if held.until is None or origin.up(held.until) <= now:
            return None, tuple(by)
        now = origin.up(held.until)
    return now, tuple(by)


def _worked_last(shop: Compiled, ahead: ShopAhead, n: int) -> int:
    """Return when the pieces of a task were last worked on; not before now."""
    pieces = {t.piece for t in shop.doings[n].on}
    planned = (e for z in ahead.zones if z.target.piece in pieces for e in z.entries if e.act < 0)
    done = [shop.origin.up(e.when.latest) for e in planned]
    return max([shop.origin.up(ahead.now), *done])


def named(shop: Compiled, told: Iterable[Told]) -> list[str]:
    """Name what disagrees, for a test that failed."""
    found = []
    for each in told:
        if each.against is None and not each.is_late:
            continue
        doing = shop.doings[each.begun.task]
        against = each.against.because.rule if each.against else "late"
        found.append(
            f"{doing.part.name} {doing.operation.value} {doing.deed.task.coat}: {against}, "
            f"bench {each.bench}, compiled {each.compiled}, start {each.begun.start}, {each.by}"
        )
    return found
