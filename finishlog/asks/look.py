"""Read the shop and its log once, and work out the state of everything."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from finishlog.clock import Clock
from finishlog.core.bench import BenchState, bench_state
from finishlog.core.shop import Log, Shop
from finishlog.facts.load import Facts
from finishlog.store.read_log import read_log
from finishlog.store.read_shop import read_shop

if TYPE_CHECKING:
    from sqlalchemy import Connection


@dataclass(frozen=True, slots=True)
class Look:
    """What there is, what happened, and what follows from it now."""

    shop: Shop
    log: Log
    bench: BenchState


def look(connection: Connection, facts: Facts, clock: Clock) -> Look:
    """Look at every open part."""
    shop = read_shop(connection, clock.now)
    log = read_log(connection, [p.id for part in shop.parts for p in part.pieces])
    return Look(shop, log, bench_state(shop, log, facts, clock.now, clock.zone))
