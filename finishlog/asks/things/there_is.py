"""What is there: projects, parts, finishing schedules, products, rooms, the shop."""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct
from msgspec.structs import asdict

from finishlog.asks.bench.on import step_words
from finishlog.asks.look.pace import PaceLine, pace_lines
from finishlog.asks.look.which_room import RoomPlace, place_of
from finishlog.asks.things.own_words import SaysLine, says_lines
from finishlog.context import Context
from finishlog.core.air.psychrometrics import Air
from finishlog.core.film.old_finish import name_of
from finishlog.core.finish.classes import Figure, FinishClass, RecoatWindow, Sheen, judged_by
from finishlog.core.finish.stages import Stage
from finishlog.core.published.facts import Facts
from finishlog.core.safety.oily_waste import heats
from finishlog.core.safety.whats_in import in_product
from finishlog.core.shop.hours import WeeklyHours
from finishlog.core.shop.names import old_names
from finishlog.core.shop.things import (
    Part,
    Product,
    Project,
    Schedule,
    Shop,
    ThingKind,
    face_words,
)
from finishlog.core.zone.stood_in import rooms_air
from finishlog.picking import pick_product, pick_project, pick_room, pick_schedule
from finishlog.store.log.read_log import read_log
from finishlog.store.things.archive import put_away
from finishlog.store.things.read_shop import read_schedules, read_shop


class ProjectLine(Struct, frozen=True):
    """A project and its parts."""

    name: str
    due: datetime | None
    note: str
    parts: tuple[PartLine, ...]
    old_names: tuple[str, ...]


class PartLine(Struct, frozen=True):
    """A part: pieces, wood, faces with their kinds, steps as typed, what it is made of."""

    id: int
    path: str
    pieces: int
    species: str
    faces: tuple[str, ...]
    room: str
    steps_name: str
    steps: tuple[str, ...]
    made_of: tuple[str, ...]
    is_board: bool
    note: str
    old_names: tuple[str, ...]
    # What was on it when it came in; empty: bare wood.
    old_finish: str = ""


class ScheduleLine(Struct, frozen=True):
    """A finishing schedule."""

    name: str
    steps: tuple[str, ...]
    note: str
    old_names: tuple[str, ...]


class ProductLine(Struct, frozen=True):
    """A product with the figures that hold: the class's, the label's laid over them."""

    name: str
    class_key: str
    class_name: str
    stages: tuple[tuple[Stage, Figure], ...]
    window: RecoatWindow
    self_heating: bool
    of: FinishClass
    note: str
    old_names: tuple[str, ...]
    # What the person says of it beyond its label.
    says: tuple[SaysLine, ...]
    sheen: Sheen | None


class OneProduct(ProductLine, frozen=True):
    """A product with what its checks taught of its pace here."""

    pace: tuple[PaceLine, ...]


class RoomReading(Struct, frozen=True):
    """One reading."""

    at: datetime
    air: Air
    act: int


class RoomLine(Struct, frozen=True):
    """A room with its readings, newest first."""

    name: str
    coldest_night_c: float | None
    readings: tuple[RoomReading, ...]
    note: str
    old_names: tuple[str, ...]
    place: RoomPlace


class TheShop(Struct, frozen=True):
    """The shop's hours, zone and database."""

    time_zone: str
    week: tuple[WeeklyHours, ...]
    database: str
    open_parts: int


def _shop(context: Context) -> Shop:
    with context.reading() as connection:
        return read_shop(connection, context.clock.now)


def _put_away(context: Context, kind: ThingKind) -> tuple[Shop, set[int]]:
    """Read everything, and the ids of what of one kind was put away."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now, include_archived=True)
        return shop, {thing.id for thing in put_away(connection, kind)}


def projects(context: Context, *, archived: bool = False) -> tuple[ProjectLine, ...]:
    """List the open projects, or those that were put away."""
    if archived:
        everything, away = _put_away(context, ThingKind.PROJECT)
        return tuple(_project(p, everything) for p in everything.projects if p.id in away)
    shop = _shop(context)
    return tuple(_project(p, shop) for p in shop.projects)


def one_project(context: Context, name: str) -> ProjectLine:
    """Show one project."""
    shop = _shop(context)
    return _project(pick_project(shop, name), shop)


def _project(project: Project, shop: Shop) -> ProjectLine:
    mine = tuple(_part(p, shop) for p in shop.parts if p.project == project.id)
    old = old_names(shop.aliases, ThingKind.PROJECT, project.id)
    return ProjectLine(project.name, project.due, project.note, mine, old)


def parts(context: Context, *, archived: bool = False) -> tuple[PartLine, ...]:
    """List the open parts, or those that were put away one by one."""
    if archived:
        everything, away = _put_away(context, ThingKind.PART)
        return tuple(_part(p, everything) for p in everything.parts if p.id in away)
    shop = _shop(context)
    return tuple(_part(p, shop) for p in shop.parts)


def _part(part: Part, shop: Shop) -> PartLine:
    names = {p.id: p.name for p in shop.parts}
    return PartLine(
        id=part.id,
        path=part.path,
        pieces=len(part.pieces),
        species=part.species or "",
        faces=tuple(face_words(face) for face in part.faces),
        room=_room_of(part, shop),
        steps_name=part.steps_name,
        steps=tuple(step_words(s, shop) for s in part.steps),
        made_of=tuple(f"{names.get(n.part, 'put away')}:{n.count}" for n in part.needs),
        is_board=part.is_board,
        note=part.note,
        old_names=old_names(shop.aliases, ThingKind.PART, part.id),
        old_finish=name_of(part.old_finish) if part.old_finish else "",
    )


def _room_of(part: Part, shop: Shop) -> str:
    room = shop.rooms.get(part.room) if part.room is not None else None
    return room.name if room else ""


def schedules(context: Context, *, archived: bool = False) -> tuple[ScheduleLine, ...]:
    """List the finishing schedules, or those that were put away."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now)
        away = {thing.id for thing in put_away(connection, ThingKind.STEPS)}
        known = read_schedules(connection, include_archived=archived)
    return tuple(_schedule(s, shop) for s in known if (s.id in away) is archived)


def one_schedule(context: Context, name: str) -> ScheduleLine:
    """Show one finishing schedule."""
    with context.reading() as connection:
        shop, known = read_shop(connection, context.clock.now), read_schedules(connection)
    return _schedule(pick_schedule(shop, known, name), shop)


def _schedule(schedule: Schedule, shop: Shop) -> ScheduleLine:
    steps = tuple(step_words(s, shop) for s in schedule.steps)
    old = old_names(shop.aliases, ThingKind.STEPS, schedule.id)
    return ScheduleLine(schedule.name, steps, schedule.note, old)


def products(context: Context, *, archived: bool = False) -> tuple[ProductLine, ...]:
    """List the products, or those that were put away."""
    shop = _shop(context)
    return tuple(
        _product(p, shop, context.facts) for p in shop.products.values() if p.archived is archived
    )


def one_product(context: Context, name: str) -> OneProduct:
    """Show one product."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now)
        product = pick_product(shop, name)
        pace = pace_lines(context, connection, shop, product.id)
    line = _product(product, shop, context.facts)
    return OneProduct(**asdict(line), pace=pace)


def _product(product: Product, shop: Shop, facts: Facts) -> ProductLine:
    of = facts.finish_class(product.class_key)
    judged = judged_by(of, product.label, product.label_window, facts.version)
    stages = judged.stages
    return ProductLine(
        name=product.name,
        class_key=of.key,
        class_name=of.name,
        stages=tuple((stage, stages[stage]) for stage in Stage if stage in stages),
        window=judged.window,
        self_heating=heats(in_product(product), facts),
        of=of,
        note=product.note,
        sheen=product.sheen,
        old_names=old_names(shop.aliases, ThingKind.PRODUCT, product.id),
        says=says_lines(product, shop.products),
    )


def rooms(context: Context, *, archived: bool = False) -> tuple[RoomLine, ...]:
    """List the rooms, or those that were put away."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now, include_archived=True)
        away = {thing.id for thing in put_away(connection, ThingKind.ROOM)}
        log = read_log(connection)
    known = rooms_air(shop, log)
    return tuple(
        RoomLine(
            room.name,
            room.coldest_night_c,
            tuple(RoomReading(r.at, r.air, r.act) for r in reversed(known[room.id].readings)),
            room.note,
            old_names(shop.aliases, ThingKind.ROOM, room.id),
            place_of(room, shop, context.clock.now),
        )
        for room in shop.rooms.values()
        if (room.id in away) is archived
    )


def one_room(context: Context, name: str) -> RoomLine:
    """Show one room."""
    found = pick_room(_shop(context), name)
    return next(r for r in rooms(context) if r.name == found.name)


def the_shop(context: Context) -> TheShop:
    """Show the shop."""
    shop = _shop(context)
    week = [w for since, w in shop.hours.patterns if since <= context.clock.now]
    return TheShop(
        context.clock.zone.key,
        week[-1] if week else (),
        str(context.database.path),
        len(shop.parts),
    )
