"""Correct an entry: a new one supersedes it, and both stay visible in `history`."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.acts.answers.reconsidered import MovedDate, moved_dates, now_judged
from finishlog.acts.correct.amend_can import amend_container, what_changed
from finishlog.acts.correct.amend_whereabouts import amend_whereabouts
from finishlog.acts.meant.due import selectors
from finishlog.acts.mixing.can import NONE
from finishlog.asks.bench.open_cans import pick_container
from finishlog.asks.look.look import Look, look
from finishlog.asks.look.standing import Standing, standings
from finishlog.clock import Clock
from finishlog.core.air.psychrometrics import Air
from finishlog.core.film.checks import test_that_finds
from finishlog.core.findings import Finding
from finishlog.core.finish.classes import Method, judged_by
from finishlog.core.log.entries import (
    AnyEntry,
    Away,
    Check,
    Coat,
    ContainerEvent,
    Fault,
    Found,
    HandedOver,
    Joined,
    Moved,
    Note,
    Outcome,
    Photo,
    PieceReading,
    RagsEvent,
    Reading,
    Resumed,
    Review,
    SetAside,
    Stripped,
    Target,
    When,
    Work,
)
from finishlog.core.mixing.containers import MixPart
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import Product, Shop
from finishlog.core.verdict.edges import edges_of
from finishlog.errors import NotFound, UsageFault
from finishlog.picking import pick_product, pick_zones, with_edges
from finishlog.store.database import Database
from finishlog.store.log.ledger import Ledger
from finishlog.store.log.read_history import HistoryRow, read_history


class Change(Struct, frozen=True):
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
    # The can or mix of a coat; `none`: none on record.
    container: str | None = None
    room: str | None = None
    glue: str | None = None
    grit: str | None = None
    # Of a review.
    outcome: Outcome | None = None
    # Of a reading of the wood itself: % moisture, °C of its surface.
    moisture: float | None = None
    surface: float | None = None
    # Of a mix: the parts whose amounts were other.
    amounts: tuple[MixPart, ...] = ()


class Amended(Struct, frozen=True):
    """The amendment as recorded. `was` and `now_is` are when it happened, before and after.

    `moved`: the dates that it moved; `warnings`: what coats are now warned of and were not before.
    """

    act: int
    amends: int
    kind: str
    was: When
    now_is: When
    standings: tuple[Standing, ...]
    remarks: tuple[str, ...] = ()
    moved: tuple[MovedDate, ...] = ()
    warnings: tuple[Finding, ...] = ()


def amend(
    database: Database, facts: Facts, clock: Clock, words: str, act: int, change: Change
) -> Amended:
    """Supersede the entry of an act with a changed one."""
    with database.writing("amend", words, clock.now, clock.zone.key) as ledger:
        seen = look(ledger.connection, facts, clock)
        entry = _in_force(act, read_history(ledger.connection), seen.log.entries)
        targets = entry.targets
        if change.parts or change.face:
            parts = change.parts or selectors(
                [z for z in seen.bench.zones if z.target in entry.targets]
            )
            _has_its_parts(entry, change)
            whole = isinstance(entry, _OF_THE_WHOLE)
            picked = pick_zones(seen.shop, seen.bench, parts, change.face, joints_too=whole)
            if entry.targets & edges_of(seen.bench.zones, entry.targets):
                picked = with_edges(seen.bench, picked)
            targets = picked.targets
        when = change.at or entry.when
        _write(ledger, facts, seen, entry, when, targets, change)
        after = look(ledger.connection, facts, clock)
        touched = entry.targets | targets
        states = [z for z in after.bench.zones if z.target in touched]
        return Amended(
            ledger.act_id,
            act,
            _kind(entry),
            entry.when,
            when,
            standings([s for s in states if s.layers or s.progress.next], after),
            what_changed(seen, after, entry, facts) if isinstance(entry, ContainerEvent) else (),
            moved_dates(seen, after),
            now_judged(
                seen,
                after,
                touched,
                min(entry.when.earliest, when.earliest),
                {entry.act: ledger.act_id},
                facts,
                clock,
            ),
        )


_OF_THE_WHOLE = Moved | SetAside | Resumed | HandedOver | Note | PieceReading
_OF_PIECES = Moved | HandedOver


def _has_its_parts(entry: AnyEntry, change: Change) -> None:
    """Refuse other parts or faces for what has none, or has them by its nature."""
    if not entry.targets and not isinstance(entry, Moved):
        raise UsageFault("this entry is of no part", "undo it and log it again")
    if isinstance(entry, Joined):
        raise UsageFault("a glue-up stays with its pieces", "undo it and log it again")
    if isinstance(entry, _OF_PIECES) and (change.face or any("@" in p for p in change.parts)):
        raise UsageFault("it is of whole pieces, not of a face", "name the part or its pieces")


def _kind(entry: AnyEntry) -> str:
    """Name the kind of entry in a word."""
    named: dict[type[AnyEntry], str] = {ContainerEvent: "can or mix", PieceReading: "wood"}
    return named.get(type(entry)) or type(entry).__name__.lower()


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
    if mine[0].withdraws:
        hint = f"to take that back: finishlog undo {act}"
        raise UsageFault(f"act {act} is an undo: there is nothing in it to amend", hint)
    if found is None and not mine[0].withdrawn_by:
        kind = "can" if mine[0].kind == "container" else "part"
        raise UsageFault(
            f"what act {act} is about was put away", f"bring it back: {kind} restore NAME"
        )
    if found is None:
        raise UsageFault(f"act {act} was undone", "log it again as it should be")
    return found


def _write(
    ledger: Ledger,
    facts: Facts,
    seen: Look,
    entry: AnyEntry,
    when: When,
    targets: frozenset[Target],
    change: Change,
) -> None:
    match entry:
        case Coat():
            _allowed(change, "product", "method", "scuffed", "text", "container")
            _coat(ledger, facts, seen.shop, entry, when, targets, change)
        case Check() | Work() | Fault() | Stripped() | PieceReading():
            _on_piece(ledger, entry, when, targets, change)
        case Reading():
            _allowed(change, "air")
            _reading(ledger, entry, when, change.air)
        case Note():
            _allowed(change, "text")
            text = change.text if change.text is not None else entry.text
            ledger.note(when, targets, text=text, outcome=entry.outcome, supersedes=entry.id)
        case RagsEvent():
            _allowed(change)
            ledger.rags_event(when, deed=entry.deed, item=entry.item, supersedes=entry.id)
        case Moved() | Joined() | SetAside() | Resumed() | Away():
            _allowed(change, *_WHEREABOUTS[type(entry)])
            amend_whereabouts(
                ledger,
                seen,
                facts,
                entry,
                when,
                targets,
                room=change.room,
                glue=change.glue,
                text=change.text,
            )
        case HandedOver():
            _allowed(change, "text")
            note = entry.note if change.text is None else change.text
            ledger.handed_over(when, targets, note=note, supersedes=entry.id)
        case Review():
            _allowed(change, "text", "outcome")
            ledger.review(
                when,
                targets,
                outcome=change.outcome or entry.outcome,
                text=entry.text if change.text is None else change.text,
                supersedes=entry.id,
            )
        case Photo():
            _allowed(change, "text")
            note = entry.note if change.text is None else change.text
            ledger.photo(when, targets, path=entry.path, note=note, supersedes=entry.id)
        case ContainerEvent():
            _allowed(change, "text", "amounts")
            amend_container(ledger, seen, entry, when, change.amounts, change.text)
        case _:
            raise UsageFault("this kind of act is not amended", "undo it and log it again")


def _reading(ledger: Ledger, entry: Reading, when: When, air: Air | None) -> None:
    """Supersede a reading of a room; the wet bulb stays while the air does."""
    wet_bulb_c = entry.wet_bulb_c if air is None else None
    ledger.reading(
        when,
        room=entry.room,
        air=air or entry.air,
        wet_bulb_c=wet_bulb_c,
        humidity_supposed=entry.humidity_supposed and air is None,
        supersedes=entry.id,
    )


def _piece_reading(
    ledger: Ledger, entry: PieceReading, when: When, targets: frozenset[Target], change: Change
) -> None:
    """Supersede a reading of the wood itself: only what was measured can have been other."""
    measured = {"surface": entry.temperature_c, "moisture": entry.moisture_pct}
    _allowed(change, *(name for name, value in measured.items() if value is not None))
    ledger.piece_reading(
        when,
        targets,
        temperature_c=entry.temperature_c if change.surface is None else change.surface,
        moisture_pct=entry.moisture_pct if change.moisture is None else change.moisture,
        supersedes=entry.id,
    )


def _on_piece(
    ledger: Ledger,
    entry: Check | Work | Fault | Stripped | PieceReading,
    when: When,
    targets: frozenset[Target],
    change: Change,
) -> None:
    """Supersede what was done to a piece, or found on it."""
    match entry:
        case PieceReading():
            _piece_reading(ledger, entry, when, targets, change)
        case Check():
            _allowed(change, "found", "text")
            found = change.found or entry.found
            test = test_that_finds(found) if change.found else entry.test
            note = entry.note if change.text is None else change.text
            ledger.film_check(when, targets, test=test, found=found, note=note, supersedes=entry.id)
        case Work():
            _allowed(change, "grit", "text")
            ledger.work(
                when,
                targets,
                operation=entry.operation,
                grit=entry.grit if change.grit is None else change.grit,
                note=entry.note if change.text is None else change.text,
                supersedes=entry.id,
            )
        case Fault():
            _allowed(change, "text")
            remedy = entry.remedy if change.text is None else change.text
            ledger.fault(
                when,
                targets,
                what=entry.what,
                place=entry.place,
                remedy=remedy,
                supersedes=entry.id,
            )
        case Stripped():
            _allowed(change, "text")
            ledger.stripped(
                when,
                targets,
                operation=entry.operation,
                survives=entry.survives,
                note=entry.note if change.text is None else change.text,
                supersedes=entry.id,
            )


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
        container=_container(shop, entry, product, change.container),
        hands_on_min=entry.hands_on_min,
        note=entry.note if change.text is None else change.text,
        supersedes=entry.id,
    )


def _container(shop: Shop, entry: Coat, product: Product | None, typed: str | None) -> int | None:
    """Return the can or mix of an amended coat: of another product it came from another."""
    if typed is not None:
        return None if typed.casefold() == NONE else pick_container(shop, typed).id
    return entry.container if product is None or product.id == entry.product else None


_CHANGES = (
    "product",
    "method",
    "scuffed",
    "found",
    "air",
    "text",
    "container",
    "amounts",
    "room",
    "glue",
    "grit",
    "outcome",
    "moisture",
    "surface",
)

_WHEREABOUTS: dict[type[AnyEntry], tuple[str, ...]] = {
    Moved: ("room",),
    Joined: ("glue",),
    SetAside: ("text",),
    Resumed: (),
    Away: ("text",),
}


def _allowed(change: Change, *names: str) -> None:
    """Refuse a change that this kind of entry does not have."""
    for name in _CHANGES:
        if getattr(change, name) not in {None, ()} and name not in names:
            raise UsageFault(f"this entry has no {name} to amend", "finishlog history shows it")
