"""May one finish go over another, on this wood, in this shop's air?"""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.bench.why import Option, options
from finishlog.asks.look.lessons import lessons
from finishlog.asks.things.classes import class_key
from finishlog.asks.things.species import pick_wood
from finishlog.context import Context
from finishlog.core.air.room import RoomAir
from finishlog.core.bench.imagined import Board, Imagined, Laid
from finishlog.core.findings import Answer, Finding
from finishlog.core.finish.classes import Figure, Method
from finishlog.core.finish.overcoat import BARE_WOOD
from finishlog.core.finish.stages import Stage
from finishlog.core.shop.things import Product, Room, Shop
from finishlog.core.zone.stood_in import rooms_air
from finishlog.errors import UnknownProduct
from finishlog.picking import pick_product, pick_room
from finishlog.store.log.read_log import read_log
from finishlog.store.things.read_shop import read_shop

# What no product has on record.
_OF_A_CLASS = -1
_NOWHERE = RoomAir(id=0)


class Over(Struct, frozen=True):
    """The answer once the lower coat is dry, if it went on now; and once it is hard.

    `at`, `hard_at`: UTC; None: no date in this air. `label`: the hours that are counted. `wood` and
    `room`: as they were named; empty: none. `options`: where sources differ on the wait.
    """

    over: str
    under: str
    wood: str
    room: str
    answer: Answer
    at: datetime | None
    label: Figure | None
    scuff: bool
    binds: Finding
    findings: tuple[Finding, ...]
    hard_at: datetime | None
    hard: Answer | None
    options: tuple[Option, ...]


def over(
    context: Context,
    *,
    under: str,
    upper: str,
    wood: str | None,
    method: Method | None,
    room: str | None,
) -> Over:
    """Ask the bench of a board that nobody coated yet; products of the person before classes."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now)
        known = pick_wood(context.facts, wood).key if wood else None
        above = _product(context, shop, upper, _OF_A_CLASS)
        below = None if under == BARE_WOOD else _product(context, shop, under, _OF_A_CLASS - 1)
        learnt = lessons(context, connection, {known or ""})
        where = pick_room(shop, room) if room else _only(shop)
        air = _NOWHERE
        if where is not None:
            air = rooms_air(shop, read_log(connection, ()), context.clock.zone)[where.id]
    products = {**shop.products, **{p.id: p for p in (above, below) if p is not None}}
    board = Board(air, products, learnt, context.facts, context.clock.zone, context.clock.now)
    told = board.asked(Laid(above, below, known, method))
    figure = told.dry.wait.figure if told.dry.wait else None
    said = options(told.under, figure, Stage.RECOAT, context.facts) if told.under and figure else ()
    found = _answer(told, above, below, known or "", where.name if where else "")
    return replace(found, options=said)


def _answer(told: Imagined, above: Product, below: Product | None, wood: str, room: str) -> Over:
    dry = told.dry
    return Over(
        over=above.name,
        under=below.name if below else BARE_WOOD,
        wood=wood,
        room=room,
        answer=dry.answer,
        at=told.dry_at,
        label=dry.wait.figure if dry.wait else None,
        scuff=dry.scuff_first,
        binds=dry.binds,
        findings=dry.findings,
        hard_at=told.hard_at,
        hard=told.hard.answer if told.hard else None,
        options=(),
    )


def _only(shop: Shop) -> Room | None:
    return next(iter(shop.rooms.values())) if len(shop.rooms) == 1 else None


def _product(context: Context, shop: Shop, typed: str, of_class: int) -> Product:
    """Return a product of the person's, or a class as one without a label."""
    try:
        return pick_product(shop, typed)
    except UnknownProduct:
        of = context.facts.finish_class(class_key(context.facts, typed))
        return Product(of_class, of.name, of.key)
