"""A plan that was searched for: the shop compiled, searched, and held against the bench.

Where the bench disagrees the task waits as long as the bench says, and the search begins again;
what no task was made of is planned forward behind it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from msgspec.structs import replace

from finishlog.core.plan.compiled.shop import Compiled, compiled
from finishlog.core.plan.compiled.verified import Bench, Disagreement, Verified
from finishlog.core.plan.dates import Dates
from finishlog.core.plan.forward import Behind, Forward
from finishlog.core.plan.jobs_that_fit import Hands
from finishlog.core.plan.results import Chore, Plan, PlannedSession, PlannedTask
from finishlog.core.plan.search import search
from finishlog.core.plan.search.shop import Plan as Found
from finishlog.core.plan.search.shop import Span

# How often a plan is mended and searched for again before it is given up.
_ROUNDS = 3


def searched(forward: Forward) -> Plan | None:
    """Search for a plan of what is planned forward; None: none passes the bench whole."""
    ahead = forward.waiting.ahead
    shop = compiled(ahead, forward.due)
    for _ in range(_ROUNDS):
        if not shop.shop.tasks or not shop.shop.openings:
            return None
        found = search.search(shop.shop, search.budget(len(shop.shop.tasks))).plan
        if not found.is_whole:
            return None
        fresh = forward.again()
        bench = Bench(shop, fresh, Hands(forward.shop, forward.facts), Dates(fresh, forward.now))
        verified = bench.verify(found)
        if not verified.against:
            return _planned(forward, shop, found, bench, verified)
        shop = _tightened(shop, verified.against)
    return None


def _tightened(shop: Compiled, against: Sequence[Disagreement]) -> Compiled:
    """Let every task that the bench holds up wait as long as it says."""
    tasks, origin = list(shop.shop.tasks), shop.origin
    for each in against:
        until = each.of.start + 1 if each.until is None else origin.up(each.until)
        task = tasks[each.of.task]
        tasks[each.of.task] = replace(task, not_before=max(task.not_before, until))
    return replace(shop, shop=replace(shop.shop, tasks=tuple(tasks)))


def _planned(
    forward: Forward, shop: Compiled, found: Found, bench: Bench, verified: Verified
) -> Plan:
    """Lay the work out by visits; what is left is planned forward from the next one on."""
    tasks = sorted((*verified.tasks, *_chores(shop, found)), key=lambda t: (t.start, t.end))
    sessions = [
        PlannedSession(shop.origin.at(a), shop.origin.at(b), within)
        for a, b in shop.shop.openings
        if (within := tuple(_within(tasks, shop, (a, b))))
    ]
    until = sessions[-1].closes if sessions else forward.now
    assert bench.dates is not None
    rest = forward.from_(Behind(until, bench.dates), sessions)
    rest.run()
    return rest.plan()


def _within(tasks: Sequence[PlannedTask], shop: Compiled, opening: Span) -> Iterator[PlannedTask]:
    opens, closes = (shop.origin.at(minute) for minute in opening)
    return (task for task in tasks if opens <= task.start and task.end <= closes)


def _chores(shop: Compiled, found: Found) -> Iterator[PlannedTask]:
    """Yield set-up, clean-up and vacuuming of a plan."""
    of = {n: product for product, n in shop.products.items()}

    def at(minute: int) -> datetime:
        return shop.origin.at(minute)

    for number, begins, ends in found.sessions:
        product, each = of[number], shop.shop.products[number]
        yield PlannedTask(Chore.SET_UP, at(begins), at(begins + each.set_up), product=product)
        yield PlannedTask(Chore.CLEAN_UP, at(ends - each.clean_up), at(ends), product=product)
    for _, begins in found.vacuums:
        yield PlannedTask(Chore.VACUUM, at(begins), at(begins + shop.shop.vacuum))
