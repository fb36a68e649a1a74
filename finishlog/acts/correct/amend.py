"""Correct an entry: a new one supersedes it, and both stay visible in `history`."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.answers.reconsidered import MovedDate, moved_dates, now_judged
from finishlog.acts.correct.amend_can import change_amounts, what_changed
from finishlog.acts.film.glue_up import glue_key
from finishlog.acts.meant.due import selectors
from finishlog.acts.mixing.can import NONE
from finishlog.asks.bench.open_cans import pick_container
from finishlog.asks.look.look import Look, look
from finishlog.asks.look.standing import Standing, standings
from finishlog.context import Context
from finishlog.core.air.psychrometrics import Air
from finishlog.core.commands import Do
from finishlog.core.film.checks import FOUND_BY, found_by, test_that_finds
from finishlog.core.findings import Finding
from finishlog.core.finish.classes import judged_by
from finishlog.core.log.entries import (
    AnyEntry,
    Check,
    Coat,
    ContainerEvent,
    HandedOver,
    Joined,
    Moved,
    Note,
    PieceReading,
    Reading,
    Resumed,
    SetAside,
    Target,
    Work,
)
from finishlog.core.log.fields import fields_of
from finishlog.core.log.kinds import kind_of
from finishlog.core.log.when import When
from finishlog.core.log.words import Found, Operation
from finishlog.core.mixing.containers import MixPart
from finishlog.core.verdict.edges import edges_of
from finishlog.errors import NotFound, UsageFault
from finishlog.picking import pick_product, pick_room, pick_zones, with_edges
from finishlog.store.log.read_history import HistoryRow, read_history
from finishlog.store.things.containers import read_containers


class Change(Struct, frozen=True):
    """What is to be different; None: as it was.

    `said`: values by the words that fields are amended by, as their kinds declare them; of things
    their names as typed. `amounts`: of a mix, the parts whose amounts were other.
    """

    at: When | None = None
    parts: tuple[str, ...] = ()
    face: str | None = None
    said: Mapping[str, Any] = {}
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


def amend(context: Context, act: int, change: Change) -> Amended:
    """Supersede the entry of an act with a changed one."""
    with context.writing("amend") as ledger:
        seen = look(context, ledger.connection)
        entry = _in_force(act, read_history(ledger.connection), seen.log.entries)
        targets = _targets(seen, entry, change)
        when = change.at or entry.when
        changed = _changed(seen, entry, change)
        if change.amounts and isinstance(entry, ContainerEvent):
            change_amounts(ledger, seen, entry, change.amounts)
        reached = targets
        if isinstance(entry, Moved):
            reached = entry.targets
            changed["pieces"] = frozenset(t.piece for t in targets) or entry.pieces
        becomes = replace(entry, when=when, targets=reached, **changed)
        ledger.record(becomes, supersedes=entry.id)
        # What it moves may lie anywhere in the log; of the shop only what is in a mix can differ.
        shop = replace(seen.shop, containers=read_containers(ledger.connection))
        after = look(context, ledger.connection, shop=shop, made=seen.made)
        touched = entry.targets | targets
        states = [z for z in after.bench.zones if z.target in touched]
        return Amended(
            ledger.act_id,
            act,
            _kind(entry),
            entry.when,
            when,
            standings([s for s in states if s.layers or s.progress.next], after),
            what_changed(seen, after, entry) if isinstance(entry, ContainerEvent) else (),
            moved_dates(seen, after),
            now_judged(
                seen,
                after,
                touched,
                min(entry.when.earliest, when.earliest),
                {entry.act: ledger.act_id},
            ),
        )


def _targets(seen: Look, entry: AnyEntry, change: Change) -> frozenset[Target]:
    """Return the zones that an entry was of after all."""
    if not change.parts and not change.face:
        return entry.targets
    parts = change.parts or selectors([z for z in seen.bench.zones if z.target in entry.targets])
    _has_its_parts(entry, change)
    whole = isinstance(entry, _OF_THE_WHOLE)
    picked = pick_zones(seen.shop, seen.bench, parts, change.face, joints_too=whole)
    if entry.targets & edges_of(seen.bench.zones, entry.targets):
        picked = with_edges(seen.bench, picked)
    return picked.targets


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
        raise NotFound(f"act {act} holds no entry", f"{Do.HISTORY()} shows the numbers")
    if len(mine) > 1:
        raise UsageFault(
            f"act {act} holds {len(mine)} entries", f"undo it and log it again: {Do.UNDO(act)}"
        )
    entry = mine[0].superseded_by or mine[0].entry
    found = next((e for e in entries if e.id == entry), None)
    if mine[0].withdraws:
        hint = f"to take that back: {Do.UNDO(act)}"
        raise UsageFault(f"act {act} is an undo: there is nothing in it to amend", hint)
    if found is None and not mine[0].withdrawn_by:
        is_can = mine[0].kind == kind_of(ContainerEvent)
        back = Do.CAN_RESTORE if is_can else Do.PART_RESTORE
        raise UsageFault(
            f"what act {act} is about was put away", f"bring it back: {back.words('NAME')}"
        )
    if found is None:
        raise UsageFault(f"act {act} was undone", "log it again as it should be")
    return found


# How a change that was said becomes values of fields, where it is not the value itself.
_Follows = Callable[[Look, Any, Any], dict[str, object]]


def _product(seen: Look, entry: Coat, typed: str) -> dict[str, object]:
    """Judge a coat by another product; it came from another can, which was not said."""
    product = pick_product(seen.shop, typed)
    of = seen.facts.finish_class(product.class_key)
    figures = judged_by(of, product.label, product.label_window, seen.facts.version)
    same = {} if product.id == entry.product else {"container": None}
    return {"product": product.id, "product_name": product.name, "figures": figures, **same}


def _container(seen: Look, _: Coat, typed: str) -> dict[str, object]:
    picked = None if typed.casefold() == NONE else pick_container(seen.shop, typed).id
    return {"container": picked}


def _found(check: Check, said: Found) -> dict[str, object]:
    """Find another thing by the same test, where that finds it; else by the one that does."""
    found = found_by(check.test, said)
    same = found in FOUND_BY[check.test]
    return {"found": found, "test": check.test if same else test_that_finds(said)}


def _air(_: Look, __: Reading, air: Air) -> dict[str, object]:
    """Take another air as read: no wet bulb and no supposing lies behind it."""
    return {"air": air, "wet_bulb_c": None, "humidity_supposed": None}


_FOLLOWS: dict[str, _Follows] = {
    "product": _product,
    "container": _container,
    "air": _air,
    "stopped": lambda _, __, covered: {"stopped": covered or None},
    "found": lambda _, check, found: _found(check, found),
    "room": lambda seen, _, typed: {"room": pick_room(seen.shop, typed).id},
    "glue": lambda seen, _, typed: {"glue": glue_key(typed, seen.facts)},
}


def _changed(seen: Look, entry: AnyEntry, change: Change) -> dict[str, object]:
    """Return the values that a change gives fields; UsageFault for what its kind does not have."""
    if entry.stays:
        raise UsageFault("this kind of act is not amended", "undo it and log it again")
    named = {field.means.amend: field.name for field in fields_of(type(entry))}
    if isinstance(entry, PieceReading):
        # Only what was measured can have been other.
        named = {word: name for word, name in named.items() if getattr(entry, name) is not None}
    if isinstance(entry, Work) and entry.operation is not Operation.MEND:
        # Work is done all over; only what was mended lay at a place.
        named.pop("where")
    known = {*named, "amounts"} if isinstance(entry, ContainerEvent) else {*named}
    for word in (*change.said, *(["amounts"] if change.amounts else [])):
        if word not in known:
            raise UsageFault(f"this entry has no {word} to amend", f"{Do.HISTORY()} shows it")
    changed: dict[str, object] = {}
    for word, value in change.said.items():
        follows = _FOLLOWS.get(word)
        changed |= follows(seen, entry, value) if follows else {named[word]: value}
    return changed
