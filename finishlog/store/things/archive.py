"""Put things away, and bring them back: nothing is deleted, its history stays."""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct
from sqlalchemy import Connection, select, update

from finishlog.core.shop.things import ThingKind
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.changes import changed
from finishlog.store.things.naming import table_of


class PutAway(Struct, frozen=True):
    """Something that was put away; `project` is that of a part, else None."""

    id: int
    name: str
    archived_at: datetime
    project: int | None = None


def archive(ledger: Ledger, kind: ThingKind, thing: int, moment: datetime) -> None:
    """Put a thing away: it leaves the daily screens and is no longer offered."""
    table = table_of(kind)
    ledger.connection.execute(update(table).where(table.c.id == thing).values(archived_at=moment))
    changed(ledger, kind, thing, "put away", "", "yes")


def restore(ledger: Ledger, kind: ThingKind, thing: int) -> None:
    """Bring a thing back."""
    table = table_of(kind)
    ledger.connection.execute(update(table).where(table.c.id == thing).values(archived_at=None))
    changed(ledger, kind, thing, "put away", "", "no")


def put_away(connection: Connection, kind: ThingKind) -> tuple[PutAway, ...]:
    """Read what was put away, oldest first."""
    table = table_of(kind)
    rows = connection.execute(
        select(table).where(table.c.archived_at.is_not(None)).order_by(table.c.archived_at)
    )
    of_a_part = kind is ThingKind.PART
    return tuple(
        PutAway(row.id, row.name, row.archived_at, row.project_id if of_a_part else None)
        for row in rows
    )
