"""What stands ready before the cans that are offered now are opened."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import timedelta

from msgspec import Struct

from finishlog.asks.look.look import Look
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.entries import Coat
from finishlog.core.safety.hazards import hazards_in, hazards_of
from finishlog.core.safety.whats_in import in_product

# At most so many at a time, the most dangerous first.
_AT_MOST = 3
# Said in full once so often: who opened such a can lately has heard it.
_LATELY = timedelta(days=30)


class BeforeLine(Struct, frozen=True):
    """One thing to have ready, and the products that ask for it, by name."""

    hazard: Hazard
    text: str
    source: str
    products: tuple[str, ...]


def before_work(products: Iterable[int], seen: Look) -> tuple[BeforeLine, ...]:
    """Say it of products, by their ids, whose hazards no coat of the last month has met."""
    shop, facts = seen.shop, seen.facts
    due = [shop.products[key] for key in sorted(set(products)) if key in shop.products]
    if not due:
        return ()
    known = _met_lately(seen)
    brings = [(p.name, frozenset(hazards_in(in_product(p), facts)) - known) for p in due]
    lines = (
        BeforeLine(row.hazard, row.text, row.source, tuple(n for n, h in brings if row.hazard in h))
        for row in facts.before
    )
    return tuple(line for line in lines if line.products)[:_AT_MOST]


def _met_lately(seen: Look) -> frozenset[Hazard]:
    coats = (e for e in seen.log.entries if isinstance(e, Coat))
    lately = {
        (coat.product, coat.container): coat
        for coat in coats
        if coat.when.latest > seen.clock.now - _LATELY
    }
    return frozenset(h for c in lately.values() for h in hazards_of(c, seen.shop, seen.facts))
