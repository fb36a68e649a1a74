"""Be away: the shop stands shut, and no work is planned or expected meanwhile."""

from __future__ import annotations

from msgspec import Struct

from finishlog.asks.bench.leave import Closing, closing_before
from finishlog.asks.look.look import look
from finishlog.context import Context
from finishlog.core.log.entries import Away
from finishlog.core.log.when import When


class AwaySpan(Struct, frozen=True):
    """One time away, and the act that put it on record."""

    act: int
    span: When
    reason: str


class GoingAway(Struct, frozen=True):
    """An absence as recorded, and what closes while the shop is shut."""

    act: int
    span: When
    reason: str
    closing: tuple[Closing, ...]


def away(context: Context, *, span: When, reason: str) -> GoingAway:
    """Record that nobody is in the shop in a span of time; it may lie in the future."""
    with context.writing("away") as ledger:
        ledger.record(Away(when=span, reason=reason))
        after = look(context, ledger.connection)
        meanwhile = closing_before(after, max(context.clock.now, span.earliest), span.latest)
        return GoingAway(ledger.act_id, span, reason, meanwhile)


def times_away(context: Context) -> tuple[AwaySpan, ...]:
    """Return the times away that are not over, soonest first."""
    with context.reading() as connection:
        seen = look(context, connection)
    spans = [
        e for e in seen.log.entries if isinstance(e, Away) and e.when.latest > context.clock.now
    ]
    spans.sort(key=lambda e: e.when.earliest)
    return tuple(AwaySpan(e.act, e.when, e.reason) for e in spans)
