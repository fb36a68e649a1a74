"""The cans, jars and mixes there are, and everything about one of them."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from enum import StrEnum

from msgspec import Struct

from finishlog.asks.bench.open_cans import against, mixed_words
from finishlog.asks.bench.rags import parts_of
from finishlog.asks.look.entry_words import deed_words
from finishlog.asks.look.look import look
from finishlog.context import Context
from finishlog.core.air.room import RoomAir
from finishlog.core.bench.cans import events_of, state_of
from finishlog.core.commands import Do
from finishlog.core.findings import Finding
from finishlog.core.log.entries import Coat, ContainerEvent
from finishlog.core.log.when import When
from finishlog.core.log.words import ContainerDeed
from finishlog.core.mixing.containers import (
    Container,
    ContainerKind,
    ContainerState,
    MixPart,
)
from finishlog.core.mixing.mixes import thinned_solids
from finishlog.core.published.facts import Facts
from finishlog.core.shop.names import find, old_names
from finishlog.core.shop.things import Log, Shop, ThingKind
from finishlog.core.zone.stood_in import rooms_air
from finishlog.errors import Ambiguous, NotFound
from finishlog.store.log.read_log import read_log
from finishlog.store.things.containers import pieces_coated_from
from finishlog.store.things.read_shop import read_shop


class CanHow(StrEnum):
    """How a container stands, in a word or two."""

    OPEN = "open"
    CLOSED = "closed"
    DO_NOT_USE = "do not use"
    EMPTIED = "emptied"
    THROWN_OUT = "thrown out"
    PUT_AWAY = "put away"
    NEVER_MIXED = "undone: never mixed"


_HOW = {
    ContainerDeed.CONDEMNED: CanHow.DO_NOT_USE,
    ContainerDeed.EMPTIED: CanHow.EMPTIED,
    ContainerDeed.THROWN_OUT: CanHow.THROWN_OUT,
}
_EMPTY = frozenset({CanHow.EMPTIED, CanHow.THROWN_OUT})


class CanLine(Struct, frozen=True):
    """One container. Times are UTC, amounts in ml; None: not on record, or no such time.

    `ratio`: `10:1` or a cut.
    """

    name: str
    kind: ContainerKind
    product: str
    ratio: str
    batch: str
    made_at: datetime | None
    opened_at: datetime | None
    use_by: datetime | None
    overdue: bool
    how: CanHow
    amount_ml: float | None
    findings: tuple[Finding, ...]
    old_names: tuple[str, ...]


class CanEventLine(Struct, frozen=True):
    """Something done with a container, or that befell it."""

    what: str
    at: When
    note: str
    act: int


class CoatFrom(Struct, frozen=True):
    """One coat that came from it."""

    parts: tuple[str, ...]
    at: When
    act: int
    # None: not said.
    stirred: bool | None = None


class CanShown(Struct, frozen=True):
    """Everything about one container. `solids_pct`: by volume, low and high, once thinned."""

    line: CanLine
    parts: tuple[MixPart, ...]
    drawn_from: str
    solids_pct: tuple[float, float] | None
    note: str
    events: tuple[CanEventLine, ...]
    coats: tuple[CoatFrom, ...]


def can_list(context: Context, *, archived: bool = False) -> tuple[CanLine, ...]:
    """List the containers in use, or those that were put away; what is empty comes last."""
    with context.reading() as connection:
        if archived:
            shop, log = read_shop(connection, context.clock.now, include_archived=True), Log(())
        else:
            seen = look(context, connection)
            shop, log = seen.shop, seen.log
    rooms, events = rooms_air(shop, log), events_of(log.entries, shop, context.facts)
    found = [
        _state(each, events.get(each.id, []), shop, context.facts, rooms)
        for each in shop.containers.values()
        if each.archived is archived
    ]
    lines = [_line(context, state, shop) for state in found if state.was_made]
    return tuple(sorted(lines, key=lambda line: line.how in _EMPTY))


def can_show(context: Context, typed: str) -> CanShown:
    """Show one container, also one that was put away, with every coat that came from it."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now, include_archived=True)
        can = _pick(shop, typed)
        pieces = pieces_coated_from(connection, can.id)
        log = read_log(connection, None if can.archived else pieces)
    events = events_of(log.entries, shop, context.facts).get(can.id, [])
    state = _state(can, events, shop, context.facts, rooms_air(shop, log))
    solids = state.of.solids_vol_pct
    thinned = thinned_solids(solids, can.parts) if solids else None
    return CanShown(
        line=_line(context, state, shop),
        parts=can.parts,
        drawn_from=can.drawn_from,
        solids_pct=(thinned.low, thinned.high) if thinned else None,
        note=can.note,
        events=tuple(CanEventLine(deed_words(e.deed), e.when, e.note, e.act) for e in events),
        coats=tuple(
            CoatFrom(parts_of(e.targets, shop), e.when, e.act, e.stirred)
            for e in log.entries
            if isinstance(e, Coat) and e.container == can.id
        ),
    )


def _pick(shop: Shop, typed: str) -> Container:
    """Find a container, the living ones first."""
    for archived in (False, True):
        among = [c for c in shop.containers.values() if c.archived is archived]
        found = find(typed, among, shop.aliases, ThingKind.CONTAINER)
        if len(found) == 1:
            return found[0]
        if found:
            names = tuple(each.name for each in found)
            hint = f"type one of: {', '.join(names)}"
            raise Ambiguous(f"{typed!r} fits {len(found)} cans or mixes", hint, typed, names)
    raise NotFound(f"no can or mix is called {typed!r}", f"{Do.CAN_LIST()} shows what there is")


def _state(
    can: Container,
    events: Sequence[ContainerEvent],
    shop: Shop,
    facts: Facts,
    rooms: dict[int, RoomAir],
) -> ContainerState:
    return state_of(can, events, shop, rooms, facts)


def _line(context: Context, state: ContainerState, shop: Shop) -> CanLine:
    can = state.container
    ended = state.ended is not None or can.archived
    return CanLine(
        name=can.name,
        kind=can.kind,
        product=shop.products[can.product].name,
        ratio=mixed_words(can, context.facts),
        batch=can.batch,
        made_at=state.made,
        opened_at=state.opened,
        use_by=state.use_by,
        overdue=not ended and state.use_by is not None and context.clock.now > state.use_by,
        how=_how(state),
        amount_ml=can.amount_ml,
        findings=() if ended else against(state, context.clock.now, context.facts),
        old_names=old_names(shop.aliases, ThingKind.CONTAINER, can.id),
    )


def _how(state: ContainerState) -> CanHow:
    if state.container.archived:
        return CanHow.PUT_AWAY
    if not state.was_made:
        return CanHow.NEVER_MIXED
    last = state.ended or state.last(ContainerDeed.CONDEMNED)
    if last is not None:
        return _HOW[last.deed]
    is_open = state.container.kind is ContainerKind.MIX or state.opened is not None
    return CanHow.OPEN if is_open else CanHow.CLOSED
