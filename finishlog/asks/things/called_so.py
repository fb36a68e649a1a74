"""What else goes by a name that is no part's: products, rooms, finishing schedules."""

from __future__ import annotations

from finishlog.context import Context
from finishlog.core.shop.things import ThingKind
from finishlog.store.things.read_shop import read_schedules, read_shop


def called_so(context: Context, name: str) -> frozenset[ThingKind]:
    """Return the kinds of things in use that are called just so."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now)
        there = {
            ThingKind.PRODUCT: [each.name for each in shop.products.values()],
            ThingKind.ROOM: [each.name for each in shop.rooms.values()],
            ThingKind.STEPS: [each.name for each in read_schedules(connection)],
        }
    low = name.casefold()
    return frozenset(k for k, names in there.items() if low in map(str.casefold, names))
