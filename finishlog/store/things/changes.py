"""What an act changed about a thing: an edit never silently overwrites."""

from __future__ import annotations

from collections.abc import Collection
from datetime import datetime
from functools import cache
from typing import Any

from msgspec import Struct
from sqlalchemy import Connection, Select, select

from finishlog.core.shop.things import ThingKind
from finishlog.store.log import kept
from finishlog.store.log.ledger import Ledger
from finishlog.store.schema import tables
from finishlog.store.schema.asked import Question
from finishlog.store.schema.rows import add_row, rows_of

# What an act does to a thing that is new.
ADDED = "added"
# What a schedule keeps of the part over whose finish it goes; the act that a part's steps begin
# behind ("": they credit whatever was done).
OVER, BEHIND = "over", "begins behind act"


class Change(Struct, frozen=True):
    """One thing that an act changed."""

    act: int
    kind: ThingKind
    thing: int
    what: str
    was: str
    becomes: str


def changed(ledger: Ledger, kind: ThingKind, thing: int, what: str, was: str, becomes: str) -> None:
    """Keep what an act changed: `species` was `ash`, becomes `oak`."""
    # An entry that was read may have named the thing.
    kept.forget(ledger.connection, "records")
    add_row(
        ledger.connection,
        tables.thing_change,
        act_id=ledger.act_id,
        kind=kind,
        thing_id=thing,
        what=what,
        was=was,
        becomes=becomes,
    )


@cache
def _of_kind(kind: ThingKind | None) -> Question:
    def build() -> Select[Any]:
        of = tables.thing_change.c
        query = select(of.act_id, of.kind, of.thing_id, of.what, of.was, of.becomes).order_by(of.id)
        return query if kind is None else query.where(of.kind == kind)

    name = "changes" if kind is None else f"changes of a {kind}"
    return Question(name, build, by=lambda: tables.thing_change.c.thing_id)


def read_changes(
    connection: Connection, kind: ThingKind | None = None, things: Collection[int] | None = None
) -> tuple[Change, ...]:
    """Read the changes of things of one kind, or all, in the order of typing."""
    rows = rows_of(connection, _of_kind(kind), things)
    found = (Change(act, ThingKind(k), *rest) for act, k, *rest in rows)
    return tuple(sorted(found, key=lambda change: change.act))


def read_added_since(connection: Connection, kind: ThingKind, since: datetime) -> tuple[int, ...]:
    """Return the things of a kind that were put on record since a moment, as they were typed."""
    change, act = tables.thing_change.c, tables.act.c
    query = (
        select(change.thing_id)
        .join_from(tables.thing_change, tables.act, act.id == change.act_id)
        .where(change.kind == kind, change.what == ADDED, act.typed_at >= since)
        .order_by(change.id)
    )
    return tuple(connection.scalars(query))
