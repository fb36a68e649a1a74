"""Change what there is: values, pieces, faces, zones, steps. Coats that are on stay as they are.

Every change is kept beside the act that made it (`store.things.changes`).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sqlalchemy import Connection, delete, exists, func, insert, select, update

from finishlog.core.shop.things import FaceKind, Step, ThingKind
from finishlog.store.log.ledger import Ledger
from finishlog.store.schema import things as tables
from finishlog.store.schema.log import coat, entry_target, naming_pieces
from finishlog.store.schema.rows import add_row
from finishlog.store.things.add import NewZone, add_zones, copy_steps
from finishlog.store.things.changes import changed
from finishlog.store.things.naming import TABLE_OF


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
    table = TABLE_OF[kind]
    put = update(table).where(table.c.id == thing).values({table.c[column]: value})
    ledger.connection.execute(put)
    changed(ledger, kind, thing, what or column, *shown)


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
    columns = (piece for _, piece in naming_pieces())
    return any(connection.scalar(select(exists().where(column.in_(pieces)))) for column in columns)


def add_face(
    ledger: Ledger, part: int, name: str, kind: FaceKind, zones: Iterable[NewZone]
) -> None:
    """Add a face to a part, in the white."""
    of = tables.face.c
    last = ledger.connection.scalar(select(func.max(of.position)).where(of.part_id == part)) or 0
    added = add_row(
        ledger.connection, tables.face, part_id=part, position=last + 1, name=name, kind=kind
    )
    add_zones(ledger.connection, added, zones)
    changed(ledger, ThingKind.PART, part, "face", "", f"{name}:{kind.value}")


def set_face_kind(ledger: Ledger, part: int, face: int, name: str, kind: FaceKind) -> None:
    """Say what a face is for."""
    was = ledger.connection.scalar(select(tables.face.c.kind).where(tables.face.c.id == face))
    put = update(tables.face).where(tables.face.c.id == face).values(kind=kind)
    ledger.connection.execute(put)
    changed(ledger, ThingKind.PART, part, f"face {name}", str(was), kind.value)


def divide_face(ledger: Ledger, part: int, face: int, name: str, zones: Sequence[NewZone]) -> None:
    """Divide a face into zones, or add zones to it, in the white.

    A face that was one whole keeps its record as the first of them.
    """
    of = tables.zone.c
    known = ledger.connection.execute(select(tables.zone).where(of.face_id == face)).all()
    whole = next((zone for zone in known if not zone.name), None)
    left = list(zones)
    if whole is not None:
        first = left.pop(0)
        put = update(tables.zone).where(of.id == whole.id)
        ledger.connection.execute(put.values(name=first.name, species=first.species))
    add_zones(ledger.connection, face, left, max(zone.position for zone in known))
    was = ",".join(zone.name for zone in known if zone.name)
    becomes = ",".join(filter(None, [was, *(zone.name for zone in zones)]))
    changed(ledger, ThingKind.PART, part, f"zones of {name}", was, becomes)


def zones_on_record(connection: Connection, face: int) -> bool:
    """Tell whether anything was ever logged on a face."""
    zones = select(tables.zone.c.id).where(tables.zone.c.face_id == face)
    return bool(connection.scalar(select(exists().where(entry_target.c.zone_id.in_(zones)))))


def replace_steps(
    ledger: Ledger, schedule: int, steps: Sequence[Step], shown: tuple[str, str]
) -> None:
    """Replace the steps of a finishing schedule; parts keep the copies that they were given."""
    ledger.connection.execute(delete(tables.step).where(tables.step.c.steps_id == schedule))
    copy_steps(ledger.connection, tables.step, {"steps_id": schedule}, steps)
    changed(ledger, ThingKind.STEPS, schedule, "steps", *shown)


def product_has_coats(connection: Connection, product: int) -> bool:
    """Tell whether a coat of a product was ever logged."""
    return bool(connection.scalar(select(exists().where(coat.c.product_id == product))))
