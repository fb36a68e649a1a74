"""Which parts does a person mean?"""

from __future__ import annotations

from collections.abc import Sequence

from finishlog.clock import Clock
from finishlog.picking import pick_parts
from finishlog.store.database import Database
from finishlog.store.read_shop import read_shop


def part_ids(
    database: Database, clock: Clock, typed: Sequence[str], *, archived: bool = False
) -> tuple[int, ...]:
    """Resolve selectors to the ids of parts."""
    with database.reading() as connection:
        shop = read_shop(connection, clock.now, include_archived=archived)
    return tuple(dict.fromkeys(part.id for part, _ in pick_parts(shop, typed)))
