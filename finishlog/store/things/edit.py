"""Change what there is: values, pieces, faces, zones, steps. Coats that are on stay as they are.

Every change is kept beside the act that made it (`store.things.changes`).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec.structs import replace
from sqlalchemy import Connection, delete, exists, func, insert, or_, select, update

from finishlog.core.air.place import Opening
from finishlog.core.shop.things import (
    Face,
    FaceKind,
    Meets,
    Part,
    Step,
    ThingKind,
    Zone,
    zone_name,
)
from finishlog.store.log import kept
from finishlog.store.log.heads import touching
from finishlog.store.log.ledger import Ledger
from finishlog.store.schema import tables
from finishlog.store.schema.rows import add_row, written
from finishlog.store.things.add import NewFace, NewZone, add_zones, assign_steps, copy_steps
from finishlog.store.things.changes import changed
from finishlog.store.things.naming import table_of


def set_value(
    ledger: Ledger,
    kind: ThingKind,
    thing: int,
    column: str,
    value: object,
    shown: tuple[str, str],
    what: str = "",
) -> None:
    """Set one value of a thing; `shown` is how it was and becomes, as a person reads it."""
    table = table_of(kind)
    put = update(table).where(table.c.id == thing).values({table.c[column]: value})
    ledger.connection.execute(put)
    changed(ledger, kind, thing, what or column, *shown)


def set_joins(connection: Connection, room: int, to: Mapping[int, Opening]) -> None:
    """Say which rooms one leads to, by their ids, in place of those that it led to."""
    of = tables.room_join.c
    connection.execute(
        delete(tables.room_join).where(or_(of.room_id == room, of.to_room_id == room))
    )
    rows = [{"room_id": room, "to_room_id": other, "opening": by} for other, by in to.items()]
    if rows:
        connection.execute(insert(tables.room_join), rows)


def add_pieces(ledger: Ledger, part: int, was: int, becomes: int) -> None:
    """Add pieces to a part, in the white."""
    rows = [{"part_id": part, "number": number} for number in range(was + 1, becomes + 1)]
    ledger.connection.execute(insert(tables.piece), rows)
    changed(ledger, ThingKind.PART, part, "pieces", str(was), str(becomes))


def take_pieces_off(ledger: Ledger, part: int, was: int, pieces: Sequence[int]) -> None:
    """Take pieces off a part that nothing was logged on (`pieces_on_record`)."""
    of = tables.piece.c
    ledger.connection.execute(delete(tables.piece).where(of.id.in_(pieces)))
    changed(ledger, ThingKind.PART, part, "pieces", str(was), str(was - len(pieces)))


def pieces_on_record(connection: Connection, pieces: Sequence[int]) -> bool:
    """Tell whether anything was ever logged on some pieces, also if it was withdrawn since."""
    return bool(touching(connection, pieces))


def add_face(ledger: Ledger, part: int, new: NewFace) -> None:
    """Add a face to a part, in the white."""
    of = tables.face.c
    last = ledger.connection.scalar(select(func.max(of.position)).where(of.part_id == part)) or 0
    values = written(tables.face, new)
    added = add_row(ledger.connection, tables.face, **values, part_id=part, position=last + 1)
    add_zones(ledger.connection, added, new.zones)
    changed(ledger, ThingKind.PART, part, "face", "", f"{new.name}:{new.kind.value}")


def set_meets(ledger: Ledger, part: int, face: Face, meets: Meets | None) -> None:
    """Say whether a face slides or shuts against another."""
    put = update(tables.face).where(tables.face.c.id == face.id).values(meets=meets or "")
    ledger.connection.execute(put)
    shown = (str(face.meets or ""), str(meets or ""))
    changed(ledger, ThingKind.PART, part, f"face {face.name} slides or shuts", *shown)


def set_face_kind(ledger: Ledger, part: int, face: int, name: str, kind: FaceKind) -> None:
    """Say what a face is for."""
    was = ledger.connection.scalar(select(tables.face.c.kind).where(tables.face.c.id == face))
    put = update(tables.face).where(tables.face.c.id == face).values(kind=kind)
    ledger.connection.execute(put)
    changed(ledger, ThingKind.PART, part, f"face {name}", str(was), kind.value)


def add_zones_to(ledger: Ledger, part: int, face: Face, zones: Sequence[NewZone]) -> None:
    """Add zones to a face of named ones, in the white."""
    add_zones(ledger.connection, face.id, zones, _last_zone(ledger.connection, face))
    was = [zone.name for zone in face.zones]
    _zones_changed(ledger, part, face.name, was, [*was, *(zone.name for zone in zones)])


def divide_zone(
    ledger: Ledger, part: Part, face: Face, zone: Zone, into: Sequence[NewZone]
) -> None:
    """Divide a zone, or a face that was one whole: each of its zones has all of its record.

    Nothing is written into the log: what was logged on the zone is read as of each of them.
    """
    connection, was = ledger.connection, tables.zone_was
    told_as = connection.scalars(select(was.c.was_zone_id).where(was.c.zone_id == zone.id)).all()
    place = _make_room(connection, zone, len(into) - 1)
    # One of the new zones may take its name over.
    name = f"{zone.id}={','.join(each.name for each in into)}"
    connection.execute(delete(was).where(was.c.zone_id == zone.id))
    was_it = update(tables.zone).where(tables.zone.c.id == zone.id)
    connection.execute(was_it.values(name=name, species=None))
    for position, new in enumerate(into, place):
        values = {**written(tables.zone, new), "species": new.species or zone.species}
        added = add_row(connection, tables.zone, **values, face_id=face.id, position=position)
        rows = [{"zone_id": added, "was_zone_id": told} for told in {added, zone.id, *told_as}]
        connection.execute(insert(was), rows)
    kept.forget(connection, "targets", "records")
    _renamed_in_steps(connection, part, face, zone, into)
    _zones_changed(ledger, part.id, zone_name(face, zone), [], [each.name for each in into])


def _make_room(connection: Connection, behind: Zone, places: int) -> int:
    """Let the zones behind one stand so many places further back; return its own place."""
    of = tables.zone.c
    here = connection.execute(select(of.face_id, of.position).where(of.id == behind.id)).one()
    after = (of.face_id == here.face_id) & (of.position > here.position)
    moved = update(tables.zone).where(after).values(position=of.position + places)
    connection.execute(moved)
    return int(here.position)


def _last_zone(connection: Connection, face: Face) -> int:
    of = tables.zone.c
    return connection.scalar(select(func.max(of.position)).where(of.face_id == face.id)) or 0


def _renamed_in_steps(
    connection: Connection, part: Part, face: Face, zone: Zone, into: Sequence[NewZone]
) -> None:
    """Let steps that name a zone which was divided name its zones; those of a face stay."""
    was = zone_name(face, zone).casefold()
    names = tuple(f"{face.name}/{each.name}" for each in into)
    if zone.name and any(was == name.casefold() for step in part.steps for name in step.faces):
        steps = [
            replace(step, faces=tuple(n for f in step.faces for n in _named_now(f, was, names)))
            for step in part.steps
        ]
        assign_steps(connection, part.id, steps, part.steps_name)


def _named_now(name: str, was: str, names: tuple[str, ...]) -> tuple[str, ...]:
    return names if name.casefold() == was else (name,)


def _zones_changed(
    ledger: Ledger, part: int, of: str, was: Sequence[str], becomes: Sequence[str]
) -> None:
    what = f"zones of {of}"
    changed(ledger, ThingKind.PART, part, what, ",".join(was), ",".join(becomes))


def zones_on_record(connection: Connection, face: int) -> bool:
    """Tell whether anything was ever logged on a face."""
    zones = select(tables.zone.c.id).where(tables.zone.c.face_id == face)
    return bool(connection.scalar(select(exists().where(tables.entry_target.c.zone_id.in_(zones)))))


def replace_steps(
    ledger: Ledger, schedule: int, steps: Sequence[Step], shown: tuple[str, str]
) -> None:
    """Replace the steps of a finishing schedule; parts keep the copies that they were given."""
    ledger.connection.execute(delete(tables.step).where(tables.step.c.steps_id == schedule))
    copy_steps(ledger.connection, tables.step, {"steps_id": schedule}, steps)
    changed(ledger, ThingKind.STEPS, schedule, "steps", *shown)


def product_has_coats(connection: Connection, product: int) -> bool:
    """Tell whether a coat of a product was ever logged."""
    return bool(connection.scalar(select(exists().where(tables.coat.c.product_id == product))))
