"""What of one product could be coated, were it opened now."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from finishlog.core.plan.search.shop import NEVER
from finishlog.core.plan.search.tables import Tables

# A rank, of which the lowest goes first, and a task.
Ranked = tuple[float, int]


class Offer(NamedTuple):
    """What of one product could be coated now: coats, their minutes, worth, and until when."""

    coats: int
    busy: int
    worth: float
    until: int
    scuffs: list[Ranked]


def offered(
    tables: Tables,
    product: int,
    waiting: Sequence[Ranked],
    closes_at: Sequence[int],
    times: tuple[int, int, int],
    *,
    urgent: bool,
) -> Offer:
    """Count what could be coated, and what wants abrading first.

    `times`: now, by when the last coat ends, when the shop opens next. `urgent`: the first coat
    says what it is worth, and not all of them.
    """
    now, last, following = times
    minutes, set_up = tables.minutes, tables.set_up[product]
    wet = now + set_up
    coats, busy, until = 0, set_up + tables.clean_up[product], NEVER
    worth = -1e300 if urgent else 0.0
    scuffs: list[Ranked] = []
    for each in waiting:
        rank, number = each
        closes = closes_at[number]
        if wet > closes:
            scuffs.append(each)
            continue
        still = last - minutes[number]
        if wet > still:
            if closes < following + set_up:
                scuffs.append(each)
            continue
        still = closes if closes < still else still
        until = still if still < until else until
        coats += 1
        busy += minutes[number]
        if not urgent:
            worth -= rank
        elif -rank > worth:
            worth = -rank
    return Offer(coats, busy, worth, until - set_up + 1, scuffs)
