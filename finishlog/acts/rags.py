"""Log what was done with oily rags."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from finishlog.acts.said import one_meant
from finishlog.asks.look import look
from finishlog.asks.rags import RagsLine, open_rags
from finishlog.clock import Clock
from finishlog.core.rags import RagsItem, RagsState
from finishlog.core.records import RagsDeed, When
from finishlog.core.whole_number import whole_number
from finishlog.errors import NotFound
from finishlog.facts.load import Facts
from finishlog.store.database import Database


@dataclass(frozen=True, slots=True)
class RagsDealtWith:
    """What was recorded, for which items, and what is still open."""

    act: int
    deed: RagsDeed
    at: When
    items: tuple[str, ...]
    remarks: tuple[str, ...]
    still_open: tuple[RagsLine, ...]


def deed_word(typed: str) -> RagsDeed:
    """Read what was done; UsageFault names the words there are."""
    return one_meant(RagsDeed, typed, f"nothing is done with rags called {typed!r}")


def log_rags(
    database: Database,
    facts: Facts,
    clock: Clock,
    words: str,
    *,
    deed: RagsDeed,
    which: str | None,
    at: When,
) -> RagsDealtWith:
    """Record a deed for one open item (its number or product), or for all that are open."""
    with database.writing("rags", words, clock.now, clock.zone.key) as ledger:
        before = look(ledger.connection, facts, clock)
        items = _picked([i for i in before.bench.rags if i.is_open], which, deed)
        for item in items:
            ledger.rags_event(at, deed=deed, item=item.id)
        after = look(ledger.connection, facts, clock)
        touched = [n for n in after.bench.rags if any(n.entries & i.entries for i in items)]
        return RagsDealtWith(
            act=ledger.act_id,
            deed=deed,
            at=at,
            items=tuple(i.product for i in items),
            remarks=_still_open_because(deed, touched),
            still_open=open_rags(after, facts, clock),
        )


def _still_open_because(deed: RagsDeed, touched: Sequence[RagsItem]) -> tuple[str, ...]:
    """Return why rags that were found stiff stay open; every time that it is tried."""
    if deed is not RagsDeed.STIFF:
        return ()
    return tuple(dict.fromkeys(i.remarks[-1] for i in touched if i.is_open and i.remarks))


# Whose rags are meant when nobody says: what is spread already is not spread again.
_MEANT = {
    RagsDeed.SPREAD: RagsState.OPEN,
    RagsDeed.WATER: RagsState.OPEN,
    RagsDeed.CAN: RagsState.OPEN,
    RagsDeed.LIFTED: RagsState.WATER,
    RagsDeed.STIFF: RagsState.SPREAD,
}


def _picked(items: list[RagsItem], which: str | None, deed: RagsDeed) -> list[RagsItem]:
    if not items:
        raise NotFound("no rags are open", "finishlog rags shows what is open")
    if which is None:
        meant = [i for i in items if _MEANT.get(deed, i.state) is i.state]
        if not meant:
            there = ", ".join(f"{n} {i.product} ({i.state.value})" for n, i in enumerate(items, 1))
            raise NotFound(f"no rags are there to be {deed.value}", f"name them by number: {there}")
        return meant
    number = whole_number(which)
    if number is not None and 1 <= number <= len(items):
        return [items[number - 1]]
    named = [i for i in items if i.product.lower() == which.lower()]
    if not named:
        names = ", ".join(f"{n} {i.product}" for n, i in enumerate(items, 1))
        raise NotFound(f"no open rags are called {which!r}", f"open are: {names}")
    return named
