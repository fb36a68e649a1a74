"""Read what there is, as the core's values."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Collection, Iterable, Sequence
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Integer, Row, Select, cast, exists, select

from finishlog.core.air.heater import HeaterKind
from finishlog.core.air.place import Fixture, Join, Lives, Opening, Place, PlaceKind
from finishlog.core.air.usual_day import UsualDay
from finishlog.core.finish.classes import Sheen
from finishlog.core.log.words import Operation
from finishlog.core.published.care import UsedFor
from finishlog.core.shop.things import (
    Behind,
    Face,
    FaceKind,
    Meets,
    Need,
    OldFinish,
    Part,
    Piece,
    Product,
    Project,
    Room,
    Schedule,
    Shop,
    Step,
    ThingKind,
    Zone,
)
from finishlog.store.schema import tables
from finishlog.store.schema.asked import Question, ask, question
from finishlog.store.schema.rows import in_use, rows_of, whole
from finishlog.store.things.changes import BEHIND
from finishlog.store.things.containers import read_containers
from finishlog.store.things.labels import read_label_figures, read_label_windows, read_own_rules
from finishlog.store.things.naming import read_aliases
from finishlog.store.things.usual import read_shop_hours, read_usual_days

_STEPS, _PRODUCTS, _JOINS = whole("step"), whole("product"), whole("room_join")
# By whether also what was put away is read.
_PROJECTS, _ROOMS = ({True: whole(name), False: in_use(name)} for name in ("project", "room"))
_OF_PARTS = {
    name: whole(name, by="part_id") for name in ("piece", "face", "part_step", "assembly_need")
}


def read_shop(connection: Connection, now: datetime, include_archived: bool = False) -> Shop:
    """Read everything there is, with the labels and usual days that hold at `now`.

    Products that were put away are there and say so: a coat of theirs may still be on an open part.
    """
    projects = _projects(connection, include_archived)
    return Shop(
        projects=projects,
        parts=_parts(connection, projects, include_archived),
        products=_products(connection, now),
        rooms=read_rooms(connection, now, include_archived),
        hours=read_shop_hours(connection),
        aliases=read_aliases(connection),
        containers=read_containers(connection, archived=include_archived),
    )


def read_schedules(connection: Connection, include_archived: bool = False) -> tuple[Schedule, ...]:
    """Read the named finishing schedules, by name."""
    found = _by(ask(connection, _STEPS), "steps_id")
    query = select(tables.steps).order_by(tables.steps.c.name)
    if not include_archived:
        query = query.where(tables.steps.c.archived_at.is_(None))
    return tuple(
        Schedule(row.id, row.name, _steps(found[row.id]), row.note)
        for row in connection.execute(query)
    )


def _projects(connection: Connection, include_archived: bool) -> tuple[Project, ...]:
    rows = ask(connection, _PROJECTS[include_archived])
    return tuple(sorted(map(_project, rows), key=_id))


def _project(row: Row[Any]) -> Project:
    used_for = UsedFor(row.used_for) if row.used_for else None
    return Project(row.id, row.name, row.due_at, row.note, used_for)


def _parts(
    connection: Connection, projects: tuple[Project, ...], include_archived: bool
) -> tuple[Part, ...]:
    names = {project.id: project.name for project in projects}
    rows = sorted(rows_of(connection, _PARTS[include_archived], names), key=_id)
    inside = _Inside(connection, {row.id for row in rows})
    bearers = Counter(row.name.casefold() for row in rows)
    return tuple(
        inside.part(row, names[row.project_id], namesake=bearers[row.name.casefold()] > 1)
        for row in rows
    )


def _with_behind(every: bool) -> Question:
    """Ask for parts, each with the act that its steps begin behind and when that was typed."""

    def build() -> Select[Any]:
        part, change, act = tables.part, tables.thing_change.c, tables.act.c
        of_it = (change.kind == ThingKind.PART, change.thing_id == part.c.id)
        newest = select(change.becomes).where(*of_it, change.what == BEHIND)
        newest = newest.order_by(change.id.desc()).limit(1).correlate(part)
        behind = cast(newest.scalar_subquery(), Integer)
        both = (act.id.label("behind_act"), act.typed_at.label("behind_at"))
        parts = select(part, *both).outerjoin_from(part, tables.act, act.id == behind)
        return parts if every else parts.where(part.c.archived_at.is_(None))

    name = "parts" if every else "parts in use"
    return Question(name, build, by=lambda: tables.part.c.project_id)


_PARTS = {every: _with_behind(every) for every in (True, False)}


@question(by=lambda: tables.face.c.part_id)
def _zones() -> Select[Any]:
    """Ask for the zones that were not divided since."""
    zone, face, was = tables.zone, tables.face, tables.zone_was
    divided = select(was.c.was_zone_id).where(
        was.c.was_zone_id == zone.c.id, was.c.zone_id != zone.c.id
    )
    return select(zone, face.c.part_id).join_from(zone, face).where(~exists(divided))


class _Inside:
    """What parts are made of, read for all of them together."""

    def __init__(self, connection: Connection, parts: Collection[int]) -> None:
        def of_parts(table: str) -> dict[int, list[Row[Any]]]:
            return _by(rows_of(connection, _OF_PARTS[table], parts), "part_id")

        self.pieces = of_parts("piece")
        self.faces = of_parts("face")
        self.zones = _by(rows_of(connection, _zones, parts), "face_id")
        self.steps = of_parts("part_step")
        self.needs = of_parts("assembly_need")

    def part(self, row: Row[Any], project_name: str, *, namesake: bool) -> Part:
        """Put one part together."""
        pieces = sorted(self.pieces[row.id], key=lambda piece: piece.number)
        needs = sorted(self.needs[row.id], key=_id)
        return Part(
            id=row.id,
            project=row.project_id,
            project_name=project_name,
            name=row.name,
            species=row.species,
            pieces=tuple(Piece(piece.id, piece.number) for piece in pieces),
            faces=tuple(self._face(face) for face in sorted(self.faces[row.id], key=_position)),
            steps=_steps(self.steps[row.id]),
            steps_name=row.steps_name,
            # A row is a tuple and has a `count` of its own.
            needs=tuple(Need(n.member_part_id, n._mapping["count"]) for n in needs),
            room=row.room_id,
            is_board=row.is_board,
            note=row.note,
            old_finish=OldFinish(row.old_finish) if row.old_finish else None,
            has_namesake=namesake,
            behind=Behind(row.behind_at, row.behind_act) if row.behind_act else None,
        )

    def _face(self, row: Row[Any]) -> Face:
        zones = sorted(self.zones[row.id], key=_position)
        of_it = tuple(Zone(zone.id, zone.name, zone.species) for zone in zones)
        meets = Meets(row.meets) if row.meets else None
        return Face(row.id, row.name, FaceKind(row.kind), of_it, meets)


def _steps(rows: Iterable[Row[Any]]) -> tuple[Step, ...]:
    return tuple(
        Step(row.position, Operation(row.operation), row.product_id, row.faces, row.note)
        for row in sorted(rows, key=_position)
    )


def _products(connection: Connection, now: datetime) -> dict[int, Product]:
    figures = read_label_figures(connection, now)
    windows = read_label_windows(connection, now)
    said = read_own_rules(connection, now)
    rows = sorted(ask(connection, _PRODUCTS), key=_id)
    return {
        row.id: Product(
            row.id,
            row.name,
            row.class_key,
            dict(figures.get(row.id, {})),
            windows.get(row.id),
            note=row.note,
            archived=row.archived_at is not None,
            sheen=Sheen(row.sheen) if row.sheen else None,
            own_rules=said.get(row.id, ()),
            sds=row.sds,
        )
        for row in rows
    }


def read_rooms(
    connection: Connection, now: datetime, include_archived: bool = False
) -> dict[int, Room]:
    """Read the rooms, with the usual days that hold at `now`."""
    usual = read_usual_days(connection, now)
    rows = sorted(ask(connection, _ROOMS[include_archived]), key=_id)
    joins: dict[int, list[Join]] = defaultdict(list)
    if len(rows) > 1:
        for row in ask(connection, _JOINS):
            opening = Opening(row.opening)
            joins[row.room_id].append(Join(row.to_room_id, opening))
            joins[row.to_room_id].append(Join(row.room_id, opening))
    return {row.id: _room(row, usual.get(row.id, ()), joins[row.id]) for row in rows}


def _room(row: Row[Any], usual: tuple[UsualDay, ...], joins: Sequence[Join]) -> Room:
    nights = next((day.coldest_c for day in usual if day.season is None), None)
    heater = HeaterKind(row.heater) if row.heater else None
    place = Place(
        has=tuple(map(Fixture, row.has.split())) if row.has is not None else None,
        kind=PlaceKind(row.kind) if row.kind else None,
        volume_m3=row.volume_m3,
        exhaust_m3_h=row.exhaust_m3_h,
        mixing=row.mixing,
        lives=tuple(map(Lives, row.lives.split())),
        joins=tuple(joins),
        out=tuple(map(Fixture, row.put_out.split())),
        out_at=row.out_at,
    )
    return Room(row.id, row.name, nights, row.note, usual, heater, place)


def _by(rows: Iterable[Row[Any]], column: str) -> dict[int, list[Row[Any]]]:
    found: dict[int, list[Row[Any]]] = defaultdict(list)
    for row in rows:
        found[getattr(row, column)].append(row)
    return found


def _id(row: Row[Any] | Project) -> int:
    return int(row.id)


def _position(row: Row[Any]) -> int:
    return int(row.position)
