"""Add what there is: projects, parts, finishing schedules, products, rooms.

Every function works inside the transaction of an act (`Ledger.connection`).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime

from msgspec import Struct
from sqlalchemy import ColumnElement, Connection, Table, delete, func, insert, select, update

from finishlog.core.shop.things import FaceKind, Meets, Need, OldFinish, Step
from finishlog.errors import UsageFault
from finishlog.store.schema import tables
from finishlog.store.schema.rows import add_row, written


class NewZone(Struct, frozen=True):
    """An area of a face; `species` None: the wood of the part."""

    name: str = ""
    species: str | None = None


class NewFace(Struct, frozen=True):
    """A side that is coated by itself, with its zones."""

    name: str
    kind: FaceKind = FaceKind.SHOW
    zones: tuple[NewZone, ...] = (NewZone(),)
    meets: Meets | None = None


class NewPart(Struct, frozen=True):
    """A part to add: how many pieces, which faces, which steps (copied to it)."""

    name: str
    pieces: int = 1
    species: str | None = None
    faces: tuple[NewFace, ...] = (NewFace("all"),)
    steps: tuple[Step, ...] = ()
    steps_name: str = ""
    needs: tuple[Need, ...] = ()
    room: int | None = None
    is_board: bool = False
    note: str = ""
    old_finish: OldFinish | None = None


def add_project(
    connection: Connection,
    name: str,
    added_at: datetime,
    *,
    due: datetime | None = None,
    note: str = "",
    used_for: str = "",
) -> int:
    """Add a project; UsageFault when the name is taken (`naming.lend_name` frees one)."""
    _free(connection, tables.project, "project", name)
    values = {"name": name, "due_at": due, "note": note, "used_for": used_for}
    return add_row(connection, tables.project, **values, added_at=added_at)


def add_part(connection: Connection, project: int, new: NewPart, added_at: datetime) -> int:
    """Add a part with its pieces, faces, zones, needs and steps; UsageFault for a taken name."""
    within = tables.part.c.project_id == project
    _free(connection, tables.part, "part of this project", new.name, within)
    part = add_row(
        connection,
        tables.part,
        **written(tables.part, new),
        project_id=project,
        added_at=added_at,
    )
    _add_pieces(connection, part, new.pieces)
    _add_faces(connection, part, new.faces)
    _add_needs(connection, part, new.needs)
    copy_steps(connection, tables.part_step, {"part_id": part}, new.steps)
    return part


def assign_steps(
    connection: Connection, part: int, steps: Sequence[Step], steps_name: str = ""
) -> None:
    """Copy steps to a part, in place of those that it had."""
    connection.execute(delete(tables.part_step).where(tables.part_step.c.part_id == part))
    copy_steps(connection, tables.part_step, {"part_id": part}, steps)
    named = update(tables.part).where(tables.part.c.id == part).values(steps_name=steps_name)
    connection.execute(named)


def add_steps(connection: Connection, name: str, steps: Sequence[Step], note: str = "") -> int:
    """Add a finishing schedule under a name; UsageFault when it is taken."""
    _free(connection, tables.steps, "finishing schedule", name)
    added = add_row(connection, tables.steps, name=name, note=note)
    copy_steps(connection, tables.step, {"steps_id": added}, steps)
    return added


def add_product(
    connection: Connection,
    name: str,
    class_key: str,
    added_at: datetime,
    *,
    note: str = "",
    sheen: str | None = None,
) -> int:
    """Add a product of a generic class; UsageFault when the name is taken."""
    _free(connection, tables.product, "product", name)
    values = {"name": name, "class_key": class_key, "note": note, "added_at": added_at}
    values |= {"sheen": sheen} if sheen else {}
    return add_row(connection, tables.product, **values)


def add_room(connection: Connection, name: str, *, note: str = "") -> int:
    """Add a room; UsageFault when the name is taken."""
    _free(connection, tables.room, "room", name)
    return add_row(connection, tables.room, name=name, note=note)


def _free(
    connection: Connection,
    table: Table,
    what: str,
    name: str,
    within: ColumnElement[bool] | None = None,
) -> None:
    """Refuse a name that is taken, in words: the constraint behind it has none."""
    query = select(table.c.id).where(func.lower(table.c.name) == name.lower())
    if within is not None:
        query = query.where(within)
    if connection.scalar(query) is not None:
        raise UsageFault(
            f"there is already a {what} called {name!r}",
            "give it another name",
        )


def _add_pieces(connection: Connection, part: int, count: int) -> None:
    rows = [{"part_id": part, "number": number} for number in range(1, count + 1)]
    if rows:
        connection.execute(insert(tables.piece), rows)


def _add_faces(connection: Connection, part: int, faces: Iterable[NewFace]) -> None:
    for position, face in enumerate(faces, start=1):
        values = written(tables.face, face)
        added = add_row(connection, tables.face, **values, part_id=part, position=position)
        add_zones(connection, added, face.zones)


def add_zones(connection: Connection, face: int, zones: Iterable[NewZone], last: int = 0) -> None:
    """Add zones to a face, behind the `last` that it has."""
    rows = [
        {**written(tables.zone, zone), "face_id": face, "position": place}
        for place, zone in enumerate(zones, last + 1)
    ]
    if rows:
        connection.execute(insert(tables.zone), rows)


def _add_needs(connection: Connection, part: int, needs: Iterable[Need]) -> None:
    rows = [{"part_id": part, "member_part_id": need.part, "count": need.count} for need in needs]
    if rows:
        connection.execute(insert(tables.assembly_need), rows)


def copy_steps(
    connection: Connection, table: Table, owner: dict[str, int], steps: Iterable[Step]
) -> None:
    """Write steps as those of one owner: a schedule or a part."""
    rows = [{**owner, **written(table, step)} for step in steps]
    if rows:
        connection.execute(insert(table), rows)
