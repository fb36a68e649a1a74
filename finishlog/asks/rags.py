"""Which rags are still dangerous?"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, tzinfo

from finishlog.asks.behind import acts_of_rags
from finishlog.asks.look import Look, look
from finishlog.clock import Clock
from finishlog.core.grouping import describe, with_project
from finishlog.core.oily_waste import Waste
from finishlog.core.rags import RagsItem, RagsState, overdue, stiff_from
from finishlog.core.records import Target
from finishlog.core.shop import Shop
from finishlog.facts.load import Facts
from finishlog.store.database import Database


@dataclass(frozen=True, slots=True)
class RagsLine:
    """One open item: whose rags, since when, where they are, whether they are overdue.

    `number` counts the open items, for `rags spread 2`.
    """

    number: int
    product: str
    parts: tuple[str, ...]
    opened: datetime
    state: RagsState
    since: datetime
    overdue: bool
    stiff_from: datetime | None
    dust: bool
    waste: tuple[Waste, ...]
    remarks: tuple[str, ...]
    acts: tuple[int, ...] = ()

    @property
    def is_dangerous(self) -> bool:
        """Tell whether it can heat as it lies: a heap, or what was left for too long."""
        return self.overdue or self.state is RagsState.OPEN


def rags(database: Database, facts: Facts, clock: Clock) -> tuple[RagsLine, ...]:
    """Return the open items, oldest first."""
    with database.reading() as connection:
        return open_rags(look(connection, facts, clock), facts, clock)


def open_rags(seen: Look, facts: Facts, clock: Clock) -> tuple[RagsLine, ...]:
    """Return the open items of a shop that was already looked at."""
    items = [item for item in seen.bench.rags if item.is_open]
    return tuple(
        replace(
            _line(n, item, seen.shop, facts, clock.now, clock.zone),
            acts=acts_of_rags(item, seen.log),
        )
        for n, item in enumerate(items, 1)
    )


def _line(
    number: int, item: RagsItem, shop: Shop, facts: Facts, now: datetime, zone: tzinfo
) -> RagsLine:
    return RagsLine(
        number=number,
        product=item.product,
        parts=parts_of(item.targets, shop),
        opened=item.opened,
        state=item.state,
        since=item.since,
        overdue=overdue(item, now, facts, zone),
        stiff_from=stiff_from(item, facts),
        dust=item.from_dust,
        waste=tuple(w for w in Waste if w in item.made_of),
        remarks=item.remarks,
    )


def parts_of(targets: Iterable[Target], shop: Shop) -> tuple[str, ...]:
    """Name the parts that some zones belong to, with the pieces where they are not all."""
    pieces = {target.piece for target in targets}
    named = []
    for part in shop.parts:
        numbers = [p.number for p in part.pieces if p.id in pieces]
        if numbers:
            named.append(with_project(part.path, describe(part, numbers, ())))
    return tuple(named)
