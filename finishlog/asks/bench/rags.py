"""Which rags are still dangerous?"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.look.acts_behind import acts_of_rags
from finishlog.asks.look.look import Look, look
from finishlog.context import Context
from finishlog.core.finish.classes import Method
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.entries import Coat, Target
from finishlog.core.safety.hazards import hazards_of
from finishlog.core.safety.oily_waste import Handling, Stiffens, Waste
from finishlog.core.safety.rags import (
    Dealt,
    RagsItem,
    RagsState,
    Severity,
    asked_for,
    evening_of,
    may_be_stiff_from,
    overdue,
    severity,
)
from finishlog.core.shop.things import Shop
from finishlog.core.zone.grouping import describe


class RagsLine(Struct, frozen=True):
    """One open item: whose rags, since when, where they are, how much they are to be feared.

    `number` counts the open items, for `rags spread 2`; `new`: the act that is answered opened it;
    `asked`: under water for so long that somebody should look; `history`: what was done with it.
    """

    number: int
    product: str
    parts: tuple[str, ...]
    opened: datetime
    state: RagsState
    since: datetime
    severity: Severity
    overdue: bool
    asked: bool
    stiff_from: datetime | None
    stiffens: Stiffens
    handling: Handling
    dust: bool
    soft: bool
    waste: tuple[Waste, ...]
    remarks: tuple[str, ...]
    history: tuple[Dealt, ...]
    new: bool = False
    acts: tuple[int, ...] = ()

    @property
    def is_dangerous(self) -> bool:
        """Tell whether it can heat as it lies: a heap, or what was left for too long."""
        return self.severity is Severity.DANGER

    @property
    def speaks(self) -> bool:
        """Tell whether the answer to an act names it: it is new, or overdue."""
        return self.new or self.overdue


def rags(context: Context) -> tuple[RagsLine, ...]:
    """Return the open items, oldest first."""
    with context.reading() as connection:
        return open_rags(look(context, connection))


def open_rags(seen: Look, before: Look | None = None) -> tuple[RagsLine, ...]:
    """Return the open items of a shop already looked at; `before`: as it was an act ago."""
    lay_open = {i.id for i in before.bench.rags if i.state is RagsState.OPEN} if before else None
    return tuple(
        replace(
            _line(seen, n, item),
            acts=acts_of_rags(item, seen.log),
            new=lay_open is not None and item.state is RagsState.OPEN and item.id not in lay_open,
        )
        for n, item in enumerate((i for i in seen.bench.rags if i.is_open), 1)
    )


def solvent_rags(seen: Look) -> tuple[str, ...]:
    """Return what was put on by hand this evening whose cloths a spark lights, and no oil heats."""
    tonight = evening_of(seen.clock.now, seen.clock.zone)
    found = []
    for coat in (e for e in seen.log.entries if isinstance(e, Coat)):
        of = seen.facts.finish_class(coat.figures.class_key)
        by_hand = (coat.method or of.methods[0]) is not Method.SPRAY
        hazards = hazards_of(coat, seen.shop, seen.facts)
        burns = Hazard.FLAMMABLE in hazards and Hazard.SELF_HEATING not in hazards
        if by_hand and burns and evening_of(coat.when.latest, seen.clock.zone) == tonight:
            found.append(coat.product_name)
    return tuple(dict.fromkeys(found))


def _line(seen: Look, number: int, item: RagsItem) -> RagsLine:
    now, facts, zone = seen.clock.now, seen.facts, seen.clock.zone
    return RagsLine(
        number=number,
        product=item.product,
        parts=parts_of(item.targets, seen.shop),
        opened=item.opened,
        state=item.state,
        since=item.since,
        severity=severity(item, now, facts, zone),
        overdue=overdue(item, now, facts, zone),
        asked=asked_for(item, now, facts),
        stiff_from=may_be_stiff_from(item, facts),
        stiffens=item.stiffens,
        handling=item.handling,
        dust=item.from_dust,
        soft=item.soft,
        waste=tuple(w for w in Waste if w in item.made_of),
        remarks=item.remarks,
        history=item.history,
    )


def parts_of(targets: Iterable[Target], shop: Shop) -> tuple[str, ...]:
    """Name the parts that some zones belong to, with the pieces where they are not all."""
    pieces = {target.piece for target in targets}
    named = []
    for part in shop.parts:
        numbers = [p.number for p in part.pieces if p.id in pieces]
        if numbers:
            named.append(describe(part, numbers, ()).full)
    return tuple(named)
