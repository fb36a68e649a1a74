"""What is there: projects, parts, finishing schedules, products, rooms, the shop."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from finishlog.asks.on import step_words
from finishlog.clock import Clock
from finishlog.core.air import Air
from finishlog.core.bench import rooms_air
from finishlog.core.finishes import Figure, FinishClass, RecoatWindow
from finishlog.core.shop import Part, Product, Project, Shop
from finishlog.core.shop_hours import WeeklyHours
from finishlog.core.stages import Stage
from finishlog.errors import NotFound
from finishlog.facts.load import Facts
from finishlog.picking import pick_product, pick_project, pick_room
from finishlog.store.database import Database
from finishlog.store.read_log import read_log
from finishlog.store.read_shop import read_shop, read_steps


@dataclass(frozen=True, slots=True)
class ProjectLine:
    """A project and its parts."""

    name: str
    due: datetime | None
    note: str
    parts: tuple[PartLine, ...]


@dataclass(frozen=True, slots=True)
class PartLine:
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


@dataclass(frozen=True, slots=True)
class ScheduleLine:
    """A finishing schedule."""

    name: str
    steps: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ProductLine:
    """A product with the figures that hold: the class's, the label's laid over them."""

    name: str
    class_key: str
    class_name: str
    stages: tuple[tuple[Stage, Figure], ...]
    window: RecoatWindow
    self_heating: bool
    of: FinishClass


@dataclass(frozen=True, slots=True)
class RoomReading:
    """One reading."""

    at: datetime
    air: Air
    act: int


@dataclass(frozen=True, slots=True)
class RoomLine:
    """A room with its readings, newest first."""

    name: str
    coldest_night_c: float | None
    readings: tuple[RoomReading, ...]


@dataclass(frozen=True, slots=True)
class TheShop:
    """The shop's hours, zone and database."""

    time_zone: str
    week: tuple[WeeklyHours, ...]
    database: str
    open_parts: int


def _shop(database: Database, clock: Clock) -> Shop:
    with database.reading() as connection:
        return read_shop(connection, clock.now)


def projects(database: Database, clock: Clock) -> tuple[ProjectLine, ...]:
    """List the open projects."""
    shop = _shop(database, clock)
    return tuple(_project(p, shop) for p in shop.projects)


def one_project(database: Database, clock: Clock, name: str) -> ProjectLine:
    """Show one project."""
    shop = _shop(database, clock)
    return _project(pick_project(shop, name), shop)


def _project(project: Project, shop: Shop) -> ProjectLine:
    mine = tuple(_part(p, shop) for p in shop.parts if p.project == project.id)
    return ProjectLine(project.name, project.due, project.note, mine)


def parts(database: Database, clock: Clock) -> tuple[PartLine, ...]:
    """List the open parts."""
    shop = _shop(database, clock)
    return tuple(_part(p, shop) for p in shop.parts)


def _part(part: Part, shop: Shop) -> PartLine:
    names = {p.id: p.name for p in shop.parts}
    return PartLine(
        id=part.id,
        path=part.path,
        pieces=len(part.pieces),
        species=part.species or "",
        faces=tuple(
            f.name if f.kind.value == "show" else f"{f.name}:{f.kind.value}" for f in part.faces
        ),
        room=shop.rooms[part.room].name if part.room is not None else "",
        steps_name=part.steps_name,
        steps=tuple(step_words(s, shop) for s in part.steps),
        made_of=tuple(f"{names[n.part]}:{n.count}" for n in part.needs),
        is_board=part.is_board,
    )


def schedules(database: Database, clock: Clock) -> tuple[ScheduleLine, ...]:
    """List the finishing schedules."""
    with database.reading() as connection:
        shop, known = read_shop(connection, clock.now), read_steps(connection)
    return tuple(
        ScheduleLine(name, tuple(step_words(s, shop) for s in steps))
        for name, steps in known.items()
    )


def one_schedule(database: Database, clock: Clock, name: str) -> ScheduleLine:
    """Show one finishing schedule."""
    known = schedules(database, clock)
    found = [s for s in known if s.name.casefold() == name.casefold()]
    if not found:
        names = ", ".join(s.name for s in known) or "none yet"
        raise NotFound(f"no steps are called {name!r}", f"there are: {names}")
    return found[0]


def products(database: Database, facts: Facts, clock: Clock) -> tuple[ProductLine, ...]:
    """List the products."""
    return tuple(_product(p, facts) for p in _shop(database, clock).products.values())


def one_product(database: Database, facts: Facts, clock: Clock, name: str) -> ProductLine:
    """Show one product."""
    return _product(pick_product(_shop(database, clock), name), facts)


def _product(product: Product, facts: Facts) -> ProductLine:
    of = facts.finish_class(product.class_key)
    stages = {**of.stages, **product.label}
    return ProductLine(
        name=product.name,
        class_key=of.key,
        class_name=of.name,
        stages=tuple((stage, stages[stage]) for stage in Stage if stage in stages),
        window=product.label_window or of.window,
        self_heating=of.self_heating,
        of=of,
    )


def rooms(database: Database, clock: Clock) -> tuple[RoomLine, ...]:
    """List the rooms."""
    with database.reading() as connection:
        shop, log = read_shop(connection, clock.now), read_log(connection)
    known = rooms_air(shop, log)
    return tuple(
        RoomLine(
            room.name,
            room.coldest_night_c,
            tuple(
                RoomReading(r.when.latest, r.air, r.act) for r in reversed(known[room.id].readings)
            ),
        )
        for room in shop.rooms.values()
    )


def one_room(database: Database, clock: Clock, name: str) -> RoomLine:
    """Show one room."""
    found = pick_room(_shop(database, clock), name)
    return next(r for r in rooms(database, clock) if r.name == found.name)


def the_shop(database: Database, clock: Clock) -> TheShop:
    """Show the shop."""
    shop = _shop(database, clock)
    week = [w for since, w in shop.hours.patterns if since <= clock.now]
    return TheShop(clock.zone.key, week[-1] if week else (), str(database.path), len(shop.parts))
