"""Log what was done with oily rags."""

from __future__ import annotations

import re
from collections.abc import Sequence

from msgspec import Struct

from finishlog.acts.meant.said import one_meant
from finishlog.asks.bench.rags import RagsLine, open_rags, rags
from finishlog.asks.look.look import look
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.log.entries import RagsEvent
from finishlog.core.log.when import When
from finishlog.core.log.words import RagsDeed
from finishlog.core.measure.whole_number import whole_number
from finishlog.core.published.facts import Facts
from finishlog.core.safety.oily_waste import Handling
from finishlog.core.safety.rags import (
    NotCounted,
    RagsItem,
    RagsState,
    Severity,
    may_be_stiff_from,
    severity,
)
from finishlog.core.safety.rags_clock import stiff_from
from finishlog.errors import NotFound, UsageFault


class RagsDealtWith(Struct, frozen=True):
    """What was recorded, for which of the `of` open items, and what is still open.

    `not_counted`: whose state it did not change, and why; `before_wet`: those that were wetted
    after it; `ask_how`: what was handed over so young that it may have gone into a bin.
    """

    act: int
    deed: RagsDeed
    at: When
    items: tuple[str, ...]
    of: int
    not_counted: tuple[tuple[str, NotCounted], ...]
    before_wet: tuple[str, ...]
    ask_how: tuple[str, ...]
    still_open: tuple[RagsLine, ...]


def deed_meant(context: Context, typed: str) -> RagsDeed:
    """Read what was done with rags; where none are open, washing is nothing to warn of."""
    if _is_washed(typed) and not rags(context):
        raise _none_open()
    return deed_word(typed)


def deed_word(typed: str) -> RagsDeed:
    """Read what was done; UsageFault names the words there are."""
    if _is_washed(typed):
        raise UsageFault(
            "washing leaves oil in them, and a dryer sets it alight: rags that heat are as open as "
            "before",
            "no dryer, never folded or stacked warm: hang them singly outdoors, warm ones into "
            "water, and get out and call if they smoke; then type one of: spread, water, lifted, "
            "can, stiff, gone",
        )
    return one_meant(RagsDeed, typed, f"nothing is done with rags called {typed!r}")


def _is_washed(typed: str) -> bool:
    said = set(re.findall(r"\w+", typed.lower()))
    return bool(said & _WASHED) or said == {"dried"}


def _none_open() -> NotFound:
    return NotFound("no rags are open", f"{Do.RAGS()} shows what is open")


def log_rags(context: Context, *, deed: RagsDeed, which: str | None, at: When) -> RagsDealtWith:
    """Record a deed for one open item (its number or product), or for all that are meant."""
    with context.writing("rags") as ledger:
        before = look(context, ledger.connection)
        there = [i for i in before.bench.rags if i.is_open]
        items = _picked(context, there, which, deed, at)
        for item in items:
            ledger.record(RagsEvent(when=at, deed=deed, item=item.id))
        after = before.after(ledger)
        touched = [n for n in after.bench.rags if any(i.id in n.entries for i in items)]
        return RagsDealtWith(
            act=ledger.act_id,
            deed=deed,
            at=at,
            items=tuple(i.product for i in touched),
            of=len(there),
            not_counted=tuple(
                (n.product, done.not_counted)
                for n in touched
                for done in n.history
                if done.act == ledger.act_id and done.not_counted is not None
            ),
            before_wet=tuple(n.product for n in touched if n.wet_until > at.latest),
            ask_how=_gone_young(items, at, context.facts) if deed is RagsDeed.GONE else (),
            still_open=open_rags(after),
        )


def _gone_young(items: Sequence[RagsItem], at: When, facts: Facts) -> tuple[str, ...]:
    """Return what went before it could be stiff, and out of no water or listed can."""
    young = []
    for item in items:
        held = item.state in {RagsState.WATER, RagsState.CAN}
        lay = item.since if item.state is RagsState.SPREAD else item.opened
        ripe = stiff_from(lay, item.stiffens, (*item.near, *item.around), facts.rags)
        if not held and (ripe is None or at.latest < ripe):
            young.append(item.product)
    return tuple(young)


_WASHED = {"wash", "washed", "laundered", "dryer", "tumble"}

# Whose rags are meant when nobody says: those that must be dealt with, else those in these states.
_ELSE = {
    RagsDeed.SPREAD: {RagsState.WATER, RagsState.CAN},
    RagsDeed.WATER: {RagsState.SPREAD, RagsState.WATER, RagsState.CAN},
    RagsDeed.CAN: {RagsState.SPREAD, RagsState.WATER},
}


def _picked(
    context: Context, items: list[RagsItem], which: str | None, deed: RagsDeed, at: When
) -> list[RagsItem]:
    if not items:
        raise _none_open()
    if which is None:
        meant = _meant(context, items, deed, at)
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


def _meant(context: Context, items: list[RagsItem], deed: RagsDeed, at: When) -> list[RagsItem]:
    """Choose, of the open items, those that a deed without a name is about; `gone` means all."""
    match deed:
        case RagsDeed.GONE:
            return items
        case RagsDeed.LIFTED:
            return [i for i in items if i.state is RagsState.WATER]
        case RagsDeed.STIFF:
            spread = [i for i in items if i.state is RagsState.SPREAD]
            return [i for i in spread if _is_ripe(i, at, context.facts)] or spread
    first = [
        i
        for i in items
        if severity(i, context.clock.now, context.facts, context.clock.zone) is Severity.DANGER
    ]
    if deed is RagsDeed.SPREAD:
        first = [i for i in first if i.handling is not Handling.HEAP] or first
    return first or [i for i in items if i.state in _ELSE[deed]]


def _is_ripe(item: RagsItem, at: When, facts: Facts) -> bool:
    ripe = may_be_stiff_from(item, facts)
    return ripe is not None and at.earliest >= ripe
