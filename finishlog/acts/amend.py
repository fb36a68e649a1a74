"""Correct an entry: a new one supersedes it, and both stay visible in `history`."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from finishlog.asks.look import look
from finishlog.asks.standing import Standing, standings
from finishlog.clock import Clock
from finishlog.core.air import Air
from finishlog.core.checks import test_that_finds
from finishlog.core.finishes import Method, judged_by
from finishlog.core.records import (
    AnyEntry,
    Check,
    Coat,
    Found,
    Note,
    RagsEvent,
    Reading,
    Target,
    When,
    Work,
)
from finishlog.core.shop import Shop
from finishlog.errors import NotFound, UsageFault
from finishlog.facts.load import Facts
from finishlog.picking import pick_product, pick_zones
from finishlog.store.database import Database
from finishlog.store.ledger import Ledger
from finishlog.store.read_history import HistoryRow, read_history


@dataclass(frozen=True, slots=True)
class Change:
    """What is to be different; None: as it was."""

    at: When | None = None
    parts: tuple[str, ...] = ()
    face: str | None = None
    product: str | None = None
    method: Method | None = None
    scuffed: bool | None = None
    found: Found | None = None
    air: Air | None = None
    text: str | None = None


@dataclass(frozen=True, slots=True)
class Amended:
    """The amendment as recorded. `was` and `now_is` are when it happened, before and after."""

    act: int
    amends: int
    kind: str
    was: When
    now_is: When
    standings: tuple[Standing, ...]


def amend(
    database: Database, facts: Facts, clock: Clock, words: str, act: int, change: Change
) -> Amended:
    """Supersede the entry of an act with a changed one."""
    with database.writing("amend", words, clock.now, clock.zone.key) as ledger:
        seen = look(ledger.connection, facts, clock)
        entry = _in_force(act, read_history(ledger.connection), seen.log.entries)
        targets = entry.targets
        if change.parts or change.face:
            parts = change.parts or tuple(
                {z.part.path for z in seen.bench.zones if z.target in entry.targets}
            )
            targets = pick_zones(seen.shop, seen.bench, parts, change.face).targets
        when = change.at or entry.when
        _write(ledger, facts, seen.shop, entry, when, targets, change)
        after = look(ledger.connection, facts, clock)
        touched = entry.targets | targets
        states = [z for z in after.bench.zones if z.target in touched]
        return Amended(
            ledger.act_id,
            act,
            type(entry).__name__.lower(),
            entry.when,
            when,
            standings([s for s in states if s.layers or s.progress.next], after),
        )


def _in_force(act: int, rows: Sequence[HistoryRow], entries: Sequence[AnyEntry]) -> AnyEntry:
    """Find the one entry of an act, or the amendment of it that holds now."""
    mine = [r for r in rows if r.act == act and r.entry]
    if not mine:
        raise NotFound(f"act {act} holds no entry", "finishlog history shows the numbers")
    if len(mine) > 1:
        raise UsageFault(
            f"act {act} holds {len(mine)} entries",
            f"undo it and log it again: finishlog undo {act}",
        )
    entry = mine[0].superseded_by or mine[0].entry
    found = next((e for e in entries if e.id == entry), None)
    if found is None:
        raise UsageFault(f"act {act} was undone", "log it again as it should be")
    return found


def _write(
    ledger: Ledger,
    facts: Facts,
    shop: Shop,
    entry: AnyEntry,
    when: When,
    targets: frozenset[Target],
    change: Change,
) -> None:
    match entry:
        case Coat():
            _allowed(change, "product", "method", "scuffed", "text")
            _coat(ledger, facts, shop, entry, when, targets, change)
        case Check():
            _allowed(change, "found")
            found = change.found or entry.found
            test = test_that_finds(found) if change.found else entry.test
            ledger.film_check(when, targets, test=test, found=found, supersedes=entry.id)
        case Work():
            _allowed(change)
            ledger.work(
                when, targets, operation=entry.operation, grit=entry.grit, supersedes=entry.id
            )
        case Reading():
            _allowed(change, "air")
            ledger.reading(when, room=entry.room, air=change.air or entry.air, supersedes=entry.id)
        case Note():
            _allowed(change, "text")
            text = change.text if change.text is not None else entry.text
            ledger.note(when, targets, text=text, outcome=entry.outcome, supersedes=entry.id)
        case RagsEvent():
            _allowed(change)
            ledger.rags_event(when, deed=entry.deed, item=entry.item, supersedes=entry.id)
        case _:
            raise UsageFault("this kind of act is not amended", "undo it and log it again")


def _coat(
    ledger: Ledger,
    facts: Facts,
    shop: Shop,
    entry: Coat,
    when: When,
    targets: frozenset[Target],
    change: Change,
) -> None:
    product = pick_product(shop, change.product) if change.product else None
    figures = entry.figures
    if product is not None:
        of = facts.finish_class(product.class_key)
        figures = judged_by(of, product.label, product.label_window, facts.version)
    ledger.coat(
        when,
        targets,
        product=product.id if product else entry.product,
        figures=figures,
        method=change.method or entry.method,
        scuffed_before=entry.scuffed_before if change.scuffed is None else change.scuffed,
        wet_film_um=entry.wet_film_um,
        note=entry.note if change.text is None else change.text,
        supersedes=entry.id,
    )


def _allowed(change: Change, *names: str) -> None:
    """Refuse a change that this kind of entry does not have."""
    for name in ("product", "method", "scuffed", "found", "air", "text"):
        if getattr(change, name) is not None and name not in names:
            raise UsageFault(f"this entry has no {name} to amend", "finishlog history shows it")
