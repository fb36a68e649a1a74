"""Read the shop and its log once, and work out the state of everything."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import TYPE_CHECKING

from msgspec import Struct, field
from msgspec.structs import replace

from finishlog.asks.look.lessons import lessons_in_hand, may_teach
from finishlog.asks.look.pace import paces, products_in_hand
from finishlog.clock import Clock
from finishlog.context import Context
from finishlog.core.bench.state import BenchState, bench_state
from finishlog.core.clock.pace import Paces
from finishlog.core.log.entries import (
    AnyEntry,
    Away,
    Coat,
    ContainerEvent,
    Heated,
    Moved,
    Note,
    RagsEvent,
    Reading,
    Resumed,
    SetAside,
)
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import Log, Shop, ThingKind
from finishlog.store.log.ledger import Ledger
from finishlog.store.log.read_log import read_log
from finishlog.store.things.changes import ADDED, read_changes
from finishlog.store.things.containers import read_containers, with_containers_of
from finishlog.store.things.read_shop import read_shop

if TYPE_CHECKING:
    from sqlalchemy import Connection


class Look(Struct, frozen=True):
    """What there is, what happened, and what follows from it now."""

    context: Context
    shop: Shop
    log: Log
    bench: BenchState
    # By part: the act that put it on record.
    made: Mapping[int, int] = field(default_factory=dict)
    # How products dry here, by what their checks taught.
    paces: Paces = Paces.none

    @property
    def facts(self) -> Facts:
        """The facts by which it is judged."""
        return self.context.facts

    @property
    def clock(self) -> Clock:
        """The present, also where this is a look back."""
        return self.context.clock

    def as_of(self, moment: datetime) -> Look:
        """Look back: the shop as the log leaves it at a moment."""
        if moment >= self.clock.now:
            return self
        return replace(self.by(self.log.as_of(moment), moment), made={})

    def by(self, log: Log, moment: datetime) -> Look:
        """Work out what would follow from another log at a moment."""
        bench = bench_state(
            self.shop,
            log,
            self.facts,
            moment,
            self.clock.zone,
            paces=self.paces,
            lessons=self.bench.lessons,
        )
        return replace(self, log=log, bench=bench)

    def after(self, ledger: Ledger) -> Look:
        """Add what an act recorded; only what was learnt, and cans after a deed, are read again."""
        connection, shop = ledger.connection, self.shop
        if any(isinstance(entry, ContainerEvent) for entry in ledger.recorded):
            shop = replace(shop, containers=read_containers(connection))
        new = [_as_kept(entry, self.shop) for entry in ledger.recorded]
        # What was typed last comes last among what happened at one time.
        entries = tuple(sorted((*self.log.entries, *new), key=lambda each: each.when.order))
        log = replace(self.log, entries=entries)
        shop = with_containers_of(connection, shop, log)
        learnt = self.paces
        is_new = products_in_hand(self.shop, log) != products_in_hand(self.shop, self.log)
        if is_new or any(_may_teach(entry, entries) for entry in new):
            learnt = paces(self.context, connection, shop, log)
        rooms = None if any(isinstance(e, Reading | Heated) for e in new) else self.bench.rooms
        told = self.bench.lessons
        if any(map(may_teach, ledger.recorded)):
            told = lessons_in_hand(self.context, connection, shop)
        clock = self.clock
        bench = bench_state(
            shop, log, self.facts, clock.now, clock.zone, rooms, learnt, lessons=told
        )
        return replace(self, shop=shop, log=log, bench=bench, paces=learnt)


def _as_kept(entry: AnyEntry, shop: Shop) -> AnyEntry:
    """Name the product of a coat, and leave out of its figures what no log keeps."""
    if not isinstance(entry, Coat):
        return entry
    figures, closes = entry.figures, entry.figures.window.closes
    stages = {stage: replace(figure, also=()) for stage, figure in figures.stages.items()}
    window = replace(figures.window, closes=closes and replace(closes, also=()))
    kept = replace(figures, stages=stages, window=window)
    return replace(entry, product_name=shop.products[entry.product].name, figures=kept)


def _may_teach(entry: AnyEntry, entries: Sequence[AnyEntry]) -> bool:
    """Tell whether an entry may tell of a pace; what is put on top, or moved now, does not."""
    if isinstance(entry, SetAside | Resumed | Note | RagsEvent | ContainerEvent):
        return False
    if isinstance(entry, Moved):
        return entry.when.order < entries[-1].when.order
    if isinstance(entry, Coat):
        return any(e.when.order > entry.when.order for e in entries if e.targets & entry.targets)
    return True


def look(
    context: Context,
    connection: Connection,
    since: datetime | None = None,
    shop: Shop | None = None,
    made: Mapping[int, int] | None = None,
) -> Look:
    """Look at every open part, in a `shop` that was read, or read it.

    `since`: also the air of what is told late, before any coat. `made`: who put its parts on
    record, where it was read too.
    """
    facts, now, zone = context.facts, context.clock.now, context.clock.zone
    shop = shop or read_shop(connection, now)
    log = read_log(connection, [p.id for part in shop.parts for p in part.pieces], since=since)
    away = tuple((e.when.earliest, e.when.latest) for e in log.entries if isinstance(e, Away))
    shop = replace(shop, hours=replace(shop.hours, away=away))
    shop = with_containers_of(connection, shop, log)
    if made is None:
        changes = read_changes(connection, ThingKind.PART, [part.id for part in shop.parts])
        made = {change.thing: change.act for change in changes if change.what == ADDED}
    learnt = paces(context, connection, shop, log)
    told = lessons_in_hand(context, connection, shop)
    bench = bench_state(shop, log, facts, now, zone, paces=learnt, lessons=told)
    return Look(context, shop, log, bench, made, learnt)
