"""Another name for a thing; put away, what keeps it from that; brought back."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Sequence

from finishlog.acts.answers.made import Made, Shelved, a_name, in_words
from finishlog.asks.look.look import Look, look
from finishlog.clock import Clock
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.log.entries import Coat, Moved
from finishlog.core.shop.names import fitting
from finishlog.core.shop.things import (
    Part,
    Product,
    Project,
    Room,
    Schedule,
    Shop,
    ThingKind,
)
from finishlog.errors import NotFound, UsageFault
from finishlog.picking import pick_product, pick_project, pick_room, pick_schedule
from finishlog.store.log.ledger import Ledger
from finishlog.store.log.read_log import read_log
from finishlog.store.things.archive import PutAway, archive, put_away, restore
from finishlog.store.things.naming import rename
from finishlog.store.things.read_shop import read_schedules, read_shop


def open_rags_forbid(seen: Look, parts: Iterable[Part]) -> None:
    """Refuse to put parts away while rags of theirs are open: those must stay in sight."""
    pieces = {p.id for part in parts for p in part.pieces}
    for item in seen.bench.rags:
        if item.is_open and any(t.piece in pieces for t in item.targets):
            raise UsageFault(
                f"rags of {item.product} are still open on it", f"see to them first: {Do.RAGS()}"
            )


def in_use(kind: str, name: str, users: Collection[str]) -> None:
    """Refuse to put away what open work needs; say by what it is used."""
    if users:
        some = ", ".join(sorted(users)[:4]) + (" ..." if len(users) > 4 else "")
        raise UsageFault(
            f"{kind} {name} is in use by {some}", "finish those or put them away first"
        )


def _one_of(
    ledger: Ledger, shop: Shop, kind: ThingKind, typed: str
) -> Project | Product | Room | Schedule:
    match kind:
        case ThingKind.PROJECT:
            return pick_project(shop, typed)
        case ThingKind.PRODUCT:
            return pick_product(shop, typed)
        case ThingKind.ROOM:
            return pick_room(shop, typed)
        case _:
            return pick_schedule(shop, read_schedules(ledger.connection), typed)


def rename_one(context: Context, kind: ThingKind, typed: str, new: str) -> Made:
    """Give a project, product, room or finishing schedule another name; the old one finds it."""
    new = a_name(new, "set of steps" if kind is ThingKind.STEPS else kind.value)
    with context.writing(f"{kind.value} rename") as ledger:
        thing = _one_of(ledger, read_shop(ledger.connection, context.clock.now), kind, typed)
        rename(ledger, kind, thing.id, new)
    return Made(kind.value, new, f"{thing.name} still finds it")


def archive_one(context: Context, kind: ThingKind, typed: str) -> Made:
    """Put a project (with its parts), product, room or finishing schedule away.

    Refused while rags of the parts are open, or while open work needs it; parts keep their copies
    of a schedule.
    """
    with context.writing(f"{kind.value} archive") as ledger:
        shop = read_shop(ledger.connection, context.clock.now)
        thing, with_it = _one_of(ledger, shop, kind, typed), ""
        if kind is ThingKind.PROJECT:
            mine = [part for part in shop.parts if part.project == thing.id]
            open_rags_forbid(look(context, ledger.connection), mine)
            with_it = parts_with_it(len(mine))
        elif kind is ThingKind.PRODUCT:
            users = products_used(ledger, shop.parts).get(thing.id, set())
            users |= {
                f"steps {schedule.name}"
                for schedule in read_schedules(ledger.connection)
                if any(step.product == thing.id for step in schedule.steps)
            }
            in_use(kind.value, thing.name, users)
        elif kind is ThingKind.ROOM:
            users = rooms_used(ledger, shop.parts, shop).get(thing.id, set())
            in_use(kind.value, thing.name, users)
        archive(ledger, kind, thing.id, context.clock.now)
    return Shelved(f"put away: {kind.value}", thing.name, with_it)


def bring_back(context: Context, kind: ThingKind, typed: str) -> Made:
    """Bring back a project, product, room or finishing schedule that was put away."""
    with context.writing(f"{kind.value} restore") as ledger:
        thing = find_put_away(put_away(ledger.connection, kind), kind, typed)
        restore(ledger, kind, thing.id)
        with_it = ""
        if kind is ThingKind.PROJECT:
            shop = read_shop(ledger.connection, context.clock.now)
            mine = [part for part in shop.parts if part.project == thing.id]
            with_it = in_words(
                parts_with_it(len(mine)), what_they_need(ledger, context.clock, mine)
            )
    shown = "can" if kind is ThingKind.CONTAINER else kind.value
    return Shelved(f"back: {shown}", thing.name, with_it)


def parts_with_it(parts: int) -> str:
    """Say how many parts go with a project; nothing when there are none."""
    return f"{parts} {'part' if parts == 1 else 'parts'} with it" if parts else ""


def find_put_away(among: Iterable[PutAway], kind: ThingKind, typed: str) -> PutAway:
    """Find one thing that was put away; NotFound names those there are."""
    known = list(among)
    found = fitting(typed, known, lambda thing: thing.name)
    if len(found) == 1:
        return found[0]
    if found:
        names = ", ".join(thing.name for thing in found)
        raise NotFound(f"{typed!r} fits {len(found)} that were put away", f"type one of: {names}")
    names = ", ".join(thing.name for thing in known) or "none"
    raise NotFound(f"no {kind.value} called {typed!r} was put away", f"put away: {names}")


def what_they_need(ledger: Ledger, clock: Clock, parts: Sequence[Part]) -> str:
    """Bring back the products and rooms that parts need; say which."""
    brought = []
    away = {kind: put_away(ledger.connection, kind) for kind in (ThingKind.PRODUCT, ThingKind.ROOM)}
    shop = read_shop(ledger.connection, clock.now, include_archived=True)
    needed = {
        ThingKind.PRODUCT: products_used(ledger, parts),
        ThingKind.ROOM: rooms_used(ledger, parts, shop),
    }
    for kind, things in away.items():
        for thing in things:
            if thing.id in needed[kind]:
                restore(ledger, kind, thing.id)
                brought.append(f"{kind.value} {thing.name}")
    return f"also back: {', '.join(brought)}" if brought else ""


def products_used(ledger: Ledger, parts: Sequence[Part]) -> dict[int, set[str]]:
    """Return the products in the steps of parts and on them, each with the parts that use it."""
    used: dict[int, set[str]] = defaultdict(set)
    mine = {piece.id: part.path for part in parts for piece in part.pieces}
    for part in parts:
        for step in part.steps:
            if step.product is not None:
                used[step.product].add(part.path)
    for entry in read_log(ledger.connection, list(mine)).entries:
        if isinstance(entry, Coat):
            used[entry.product] |= {mine[t.piece] for t in entry.targets if t.piece in mine}
    return used


def rooms_used(ledger: Ledger, parts: Sequence[Part], shop: Shop) -> dict[int, set[str]]:
    """Return the rooms that parts stand or stood in; where none was said, the first there is."""
    used: dict[int, set[str]] = defaultdict(set)
    mine = {piece.id: part.path for part in parts for piece in part.pieces}
    first = min(shop.rooms, default=None)
    for part in parts:
        room = part.room if part.room is not None else first
        if room is not None:
            used[room].add(part.path)
    for entry in read_log(ledger.connection, list(mine)).entries:
        if isinstance(entry, Moved):
            used[entry.room] |= {mine[piece] for piece in entry.pieces if piece in mine}
    return used
