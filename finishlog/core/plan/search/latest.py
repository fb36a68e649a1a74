"""How late, and how early, a task may start: single chains on the shop's calendar, solved exactly.

Hands are not shared here: what holds for one chain alone holds for every plan, so both ends are
bounds.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right

from msgspec import Struct

from finishlog.core.plan.search.shop import NEVER, QUARTER, Lag, Span, waits
from finishlog.core.plan.search.tables import BY_HAND, Tables, allowed


class Latest(Struct, frozen=True):
    """The latest starts for all to end by an aim, and by its due dates; -1 where none does.

    `opening`: the number of the opening in which that is, 0 where there is none.
    """

    start: list[int]
    opening: list[int]


def latest(tables: Tables, aim: int, *, due: bool = True) -> Latest:
    """Return the latest starts for every task to end by a minute, and by when it is `due`."""
    start, opening = [0] * tables.size, [0] * tables.size
    for number in reversed(range(tables.size)):
        end = aim
        wanted = tables.due[number] if due else None
        if wanted is not None:
            end = min(end, latest_end(tables.shop.tasks[number].packs, wanted))
        for behind, lag in tables.before[number]:
            end = min(end, latest_end(lag, start[behind]))
        start[number], opening[number] = latest_start(tables, number, end)
    return Latest(start, opening)


def latest_end(lag: Lag, reached: int) -> int:
    """Return the last end from which a lag is reached by a minute; -1 when there is none."""
    if isinstance(lag, int):
        return reached - lag
    end = (bisect_right(lag, reached) - 1) * QUARTER
    while end >= 0 and waits(lag, end + 1) <= reached:
        end += 1
    return max(end, -1)


def latest_start(tables: Tables, number: int, end: int) -> tuple[int, int]:
    """Return the last start of a task that ends by a minute, and the opening; (-1, 0) if none."""
    set_up, clean_up = _around(tables, number)
    openings, blocked = tables.shop.openings, tables.blocked[number]
    which = bisect_left(tables.shop.opens, end) - 1
    while which >= 0:
        opens, closing = openings[which]
        start = _unblocked(blocked, min(end, closing - clean_up) - tables.minutes[number])
        if start >= opens + set_up:
            return start, which
        which -= 1
    return -1, 0


def _unblocked(blocked: tuple[Span, ...], start: int) -> int:
    """Return the last minute up to a start at which no block lies; blocks ascend."""
    for since, until in reversed(blocked):
        if since <= start < until:
            start = since - 1
    return start


def earliest(tables: Tables) -> list[int]:
    """Return the first start of every task, had the hands nothing else to do; NEVER: none."""
    start = [NEVER] * tables.size
    for number, task in enumerate(tables.shop.tasks):
        ready = task.not_before
        for first, lag in tables.after[number]:
            ready = max(ready, waits(lag, start[first] + tables.minutes[first]))
        start[number] = earliest_start(tables, number, ready)
    return start


def earliest_start(tables: Tables, number: int, ready: int) -> int:
    """Return the first start of a task from a minute on; NEVER when no opening is left for it."""
    set_up, clean_up = _around(tables, number)
    openings, blocked = tables.shop.openings, tables.blocked[number]
    for opens, closing in openings[max(0, bisect_right(tables.shop.opens, ready) - 1) :]:
        start = allowed(blocked, max(ready, opens + set_up))
        if start + tables.minutes[number] + clean_up <= closing:
            return start
    return NEVER


def _around(tables: Tables, number: int) -> tuple[int, int]:
    product = tables.product[number]
    if product == BY_HAND:
        return 0, 0
    return tables.set_up[product], tables.clean_up[product]
