"""May one finish go over another, does a schedule go through, on this wood, in this air?"""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.bench.open_cans import BeforeLine, before_steps
from finishlog.asks.bench.why import Option, options
from finishlog.asks.look.lessons import lessons
from finishlog.asks.look.look import look
from finishlog.asks.look.look_back import look_back
from finishlog.asks.past.compared import CoatMeant, Compared, coats_meant, compared
from finishlog.asks.things.classes import class_key
from finishlog.asks.things.species import pick_wood
from finishlog.context import Context
from finishlog.core.air.room import RoomAir
from finishlog.core.bench.imagined import Board, Imagined, Laid, Walked
from finishlog.core.findings import Answer, Finding
from finishlog.core.finish.classes import Figure, Method
from finishlog.core.finish.overcoat import BARE_WOOD
from finishlog.core.finish.stages import Stage
from finishlog.core.shop.things import Product, Room, Shop
from finishlog.core.zone.stood_in import rooms_air
from finishlog.errors import UnknownProduct
from finishlog.picking import pick_product, pick_room, pick_schedule, pick_zones
from finishlog.store.log.read_log import read_log
from finishlog.store.things.read_shop import read_schedules, read_shop

if TYPE_CHECKING:
    from sqlalchemy import Connection

# What no product has on record.
_OF_A_CLASS = -1
_NOWHERE = RoomAir(id=0)


class Over(Struct, frozen=True):
    """The answer once the lower coat is dry, if it went on now; and once it is hard.

    `at`, `hard_at`: UTC; None: no date in this air. `label`: the hours that are counted. `wood` and
    `room`: as they were named; empty: none. `options`: where sources differ on the wait. `air`:
    what a room that was asked about says to the upper coat, were it put on there now.
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
    air: tuple[Finding, ...] = ()


class StepChecked(Struct, frozen=True):
    """One step of a schedule: what the bench says of it, and from when after the first (hours).

    A step whose faces are told apart has a line of each: `topcoat@back`.

    `after_h` None: no date lets it be done, and the steps after it were not looked at. `wait`: the
    label hours that it waited for; None: it could be done at once.
    """

    number: int
    step: str
    answer: Answer
    after_h: float | None
    scuff: bool
    binds: Finding
    findings: tuple[Finding, ...]
    wait: Figure | None


class StepsChecked(Struct, frozen=True):
    """A schedule walked through, each step as soon as it may be done.

    `shines`: its last coat, which makes the sheen; None: it has none, or none was told of it.
    """

    name: str
    wood: str
    room: str
    steps: tuple[StepChecked, ...]
    left: int
    like: Compared | None
    shines: CoatMeant | None
    # What stands ready before its cans are opened.
    before: tuple[BeforeLine, ...] = ()


def check_steps(
    context: Context, name: str, *, wood: str | None, room: str | None, like: str | None = None
) -> StepsChecked:
    """Walk through a schedule on a board that nobody coated yet, beside what was done on a part."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now)
        schedule = pick_schedule(shop, read_schedules(connection), name)
        known = pick_wood(context.facts, wood).key if wood else None
        board, where = _board(context, connection, shop, room, known)
        before = before_steps(schedule.steps, look(context, connection, shop=shop))
        beside = None
        if like is not None:
            seen, typed = look_back(context, connection, [like])
            beside = compared(seen, pick_zones(seen.shop, seen.bench, typed, None), schedule.steps)
    walked = board.walk(schedule.steps, known)
    lines = tuple(
        StepChecked(
            number=schedule.steps.index(w.step) + 1,
            step=_step(w, shop),
            answer=w.verdict.answer,
            after_h=(w.at - board.now) / timedelta(hours=1) if w.at else None,
            scuff=w.verdict.scuff_first,
            binds=w.verdict.binds,
            findings=w.verdict.findings,
            wait=w.held_by.figure if w.held_by else None,
        )
        for w in walked
    )
    last = coats_meant(schedule.steps, shop)[-1:]
    return StepsChecked(
        schedule.name,
        known or "",
        where,
        lines,
        len(schedule.steps) - (lines[-1].number if lines else 0),
        beside,
        next((coat for coat in last if coat.sheen), None),
        before,
    )


def _step(walked: Walked, shop: Shop) -> str:
    """Name a step as it is typed, with the faces that it is said of."""
    step = walked.step
    name = shop.products[step.product].name if step.product else step.operation.value
    return f"{name}@{','.join(walked.faces)}" if walked.faces else name


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
        board, where = _board(context, connection, shop, room, known)
    more = {product.id: product for product in (above, below) if product is not None}
    board = replace(board, products={**shop.products, **more})
    laid = Laid(above, below, known, method)
    told = board.over(laid)
    figure = told.dry.wait.figure if told.dry.wait else None
    said = options(told.under, figure, Stage.RECOAT, context.facts) if told.under and figure else ()
    found = _answer(told, above, below, known or "", where)
    return replace(found, options=said, air=board.in_its_air(laid) if room else ())


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


def _board(
    context: Context, connection: Connection, shop: Shop, room: str | None, wood: str | None
) -> tuple[Board, str]:
    """Return a board in a room: named, the only one, or none, in standard air; and its name."""
    where = pick_room(shop, room) if room else _only(shop)
    clock, air = context.clock, _NOWHERE
    if where is not None:
        air = rooms_air(shop, read_log(connection, ()), clock.zone)[where.id]
    learnt = lessons(context, connection, {wood or ""})
    board = Board(air, shop.products, learnt, context.facts, clock.zone, clock.now)
    return board, where.name if where else ""


def _only(shop: Shop) -> Room | None:
    return next(iter(shop.rooms.values())) if len(shop.rooms) == 1 else None


def _product(context: Context, shop: Shop, typed: str, of_class: int) -> Product:
    """Return a product of the person's, or a class as one without a label."""
    try:
        return pick_product(shop, typed)
    except UnknownProduct:
        of = context.facts.finish_class(class_key(context.facts, typed))
        return Product(of_class, of.name, of.key)
