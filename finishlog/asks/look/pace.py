"""Your own pace with a product: what the checks of its newest coats taught."""

from __future__ import annotations

from collections.abc import Collection
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.look.entry_words import PUT_ON
from finishlog.clock import Clock
from finishlog.context import Context
from finishlog.core.bench.cans import Cans
from finishlog.core.clock.pace import PaceLearnt, Paces
from finishlog.core.finish.classes import Method
from finishlog.core.log.entries import Coat, Moved
from finishlog.core.pace.learnt import learn
from finishlog.core.pace.seen import films, observed
from finishlog.core.published.species import WoodKind
from finishlog.core.shop.things import Log, Part, Piece, Shop
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.stood_in import rooms_air
from finishlog.store.log.heads import with_assemblies
from finishlog.store.log.pace_coats import (
    Gone,
    checked_coats,
    failed_lately,
    rooms_given,
    what_is_gone,
    woods_given,
)
from finishlog.store.log.read_log import read_log
from finishlog.store.things.containers import read_containers
from finishlog.store.things.read_shop import read_rooms

if TYPE_CHECKING:
    from sqlalchemy import Connection

# Our own rule: what a product did three tins ago tells little of how it dries now.
NEWEST = 24


class PaceLine(Struct, frozen=True):
    """What was learnt of first or later coats, in figures and in words.

    `median`, `low`, `high` are multiples of the label's hours; `factor` is what waits are
    lengthened by. No method and no container: all coats together.
    """

    first: bool
    method: Method | None
    container: str
    median: float
    low: float
    high: float
    factor: float
    coats: int
    acts: tuple[int, ...]
    words: str


def products_in_hand(shop: Shop, log: Log) -> set[int]:
    """Return the products that are on open parts, or come next there."""
    on_it = {e.product for e in log.entries if isinstance(e, Coat)}
    return on_it | {s.product for part in shop.parts for s in part.steps if s.product is not None}


def paces(context: Context, connection: Connection, shop: Shop, log: Log) -> Paces:
    """Return what lengthens waits of what is on open parts, or comes next there.

    A product whose films were never found soft when checked cannot be slower than its label.
    """
    gone = what_is_gone(connection)
    slow = failed_lately(connection, products_in_hand(shop, log), gone)
    return learnt(context, connection, shop, slow, gone) if slow else Paces.none


def learnt(
    context: Context,
    connection: Connection,
    shop: Shop,
    products: Collection[int],
    gone: Gone | None = None,
) -> Paces:
    """Learn from the newest coats of some products that were checked, also of parts put away."""
    coats = checked_coats(connection, products, NEWEST, gone)
    if not coats:
        return Paces.none
    zones = {target for coat in coats for target in coat.targets}
    pieces = with_assemblies(connection, {target.piece for target in zones})
    log = read_log(connection, pieces, [(coat.start, coat.end) for coat in coats])
    then = _as_they_stood(connection, shop, pieces, log, context.clock)
    woods = woods_given(connection, zones)
    rooms = rooms_air(then, log, context.clock.zone)
    cans = Cans(then, log.entries, rooms, context.facts)
    stacks = films(then, log, context.clock.zone, woods, context.facts, cans.came_from)
    return learn(
        observed(stacks, context.facts, only={coat.entry for coat in coats}), context.facts.pace
    )


def _as_they_stood(
    connection: Connection, shop: Shop, pieces: Collection[int], log: Log, clock: Clock
) -> Shop:
    """Return a shop of some pieces, each in its room, be it one that there is no more."""
    first, given = min(shop.rooms, default=None), rooms_given(connection, pieces)
    parts = tuple(
        Part(piece, 0, "", "", None, (Piece(piece, 1),), (), room=first if room is None else room)
        for piece, room in sorted(given.items())
    )
    stood_in = {room for room in given.values() if room is not None}
    stood_in |= {entry.room for entry in log.entries if isinstance(entry, Moved)}
    if shop.rooms and stood_in <= shop.rooms.keys():
        return replace(shop, parts=parts)
    return replace(
        shop, parts=parts, rooms=read_rooms(connection, clock.now, include_archived=True)
    )


def pace_lines(
    context: Context, connection: Connection, shop: Shop, product: int
) -> tuple[PaceLine, ...]:
    """Return all that was learnt of one product."""
    found = learnt(context, connection, shop, [product]).of(product)
    cans = read_containers(connection, {f.key.container for f in found if f.key.container})
    return tuple(_line(each, cans[c].name if (c := each.key.container) else "") for each in found)


def _line(of: PaceLearnt, container: str) -> PaceLine:
    key = of.key
    return PaceLine(
        first=key.first,
        method=key.method,
        container=container,
        median=of.median,
        low=of.low,
        high=of.high,
        factor=of.factor,
        coats=of.coats,
        acts=of.acts,
        words=pace_line(of, container),
    )


def top_pace(state: ZoneState, shop: Shop) -> str:
    """Say what checks taught of how the top coat dries here; empty: nothing yet."""
    learnt = state.top.pace if state.top else None
    if learnt is None:
        return ""
    can = shop.containers.get(learnt.key.container) if learnt.key.container else None
    return pace_line(learnt, can.name if can else "")


def pace_line(of: PaceLearnt, container: str = "") -> str:
    """Say what was learnt: `1.36 × the label's hours (1.05–1.78), later coats, …: act 41`."""
    acts = ", ".join(str(act) for act in of.acts)
    coats = f"{of.coats} {'coat' if of.coats == 1 else 'coats'}: "
    coats += "act" if len(of.acts) == 1 else "acts"
    wood = "bare wood" if of.key.wood is WoodKind.OTHER else f"bare {of.key.wood} wood"
    ways = (
        f"first coats on {wood}" if of.key.first else "later coats",
        PUT_ON[of.key.method] if of.key.method else "",
        f"from {container}" if container else "",
        "in air not read" if of.key.unread else "",
    )
    which = ", ".join(way for way in ways if way)
    if of.factor == 1:
        return f"no slower than the label's hours so far, {which}, from {coats} {acts}"
    most = f"; other coats wait {of.carried:g} × at most" if of.median > of.factor else ""
    took = ""
    if of.took:
        how = "dry after" if of.took.seen else "soft for"
        took = f"; the last was {how} {of.took.hours:.1f} label hours"
    damp = f"; in air over {of.damp_pct:.0f} % slower still, an assumption" if of.damp_pct else ""
    return (
        f"{of.median:.2f} × the label's hours ({of.low:.2f}–{of.high:.2f}), {which}, "
        f"from {coats} {acts}{most}{took}{damp}"
    )
