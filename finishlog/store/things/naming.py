"""Names of things: free or taken, renamed, and the old ones that still find them.

A name belongs to one living thing. What was put away lends its name to a new thing and is called
by its year from then on (`stools-2025`), so that every name stays the name of one thing.
"""

from __future__ import annotations

from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, Select, Table, delete, func, insert, select, update

from finishlog.core.commands import Do
from finishlog.core.shop.things import Alias, ThingKind
from finishlog.errors import UsageFault
from finishlog.store.log.ledger import Ledger
from finishlog.store.schema import tables
from finishlog.store.schema.asked import ask, question
from finishlog.store.things.changes import changed

_NAMED = {do.name: do for do in Do}
_EDITED = {kind: do for kind in ThingKind if (do := _NAMED.get(f"{kind.name}_EDIT"))}


def table_of(kind: ThingKind) -> Table:
    """Return the table of a kind of thing."""
    return {
        ThingKind.PROJECT: tables.project,
        ThingKind.PART: tables.part,
        ThingKind.PRODUCT: tables.product,
        ThingKind.ROOM: tables.room,
        ThingKind.STEPS: tables.steps,
        ThingKind.CONTAINER: tables.container,
    }[kind]


_CALLED = {ThingKind.PART: "part of this project", ThingKind.STEPS: "finishing schedule"}


@question()
def _aliases() -> Select[Any]:
    of = tables.alias.c
    return select(of.kind, of.old_name, of.thing_id)


def read_aliases(connection: Connection) -> tuple[Alias, ...]:
    """Read every name that a thing had before, in the order they were given up."""
    rows = ask(connection, _aliases)
    return tuple(Alias(ThingKind(kind), name, thing) for kind, name, thing in rows)


def rename(ledger: Ledger, kind: ThingKind, thing: int, new: str) -> None:
    """Give a thing another name; the old one still finds it.

    UsageFault when the new name is another living thing's, or finds another one as its old name.
    """
    table = table_of(kind)
    old = ledger.connection.execute(select(table).where(table.c.id == thing)).one()
    if old.name == new:
        raise UsageFault(f"it is called {new!r} already", "give it another name")
    within = old.project_id if kind is ThingKind.PART else None
    lend_name(ledger, kind, new, within, but=thing)
    _refuse_alias_of_another(ledger.connection, kind, new, thing, within)
    ledger.connection.execute(update(table).where(table.c.id == thing).values(name=new))
    alias = tables.alias
    mine = (alias.c.kind == kind) & (alias.c.thing_id == thing)
    ledger.connection.execute(delete(alias).where(mine & alias.c.old_name.in_([new, old.name])))
    ledger.connection.execute(insert(alias).values(kind=kind, thing_id=thing, old_name=old.name))
    changed(ledger, kind, thing, "name", old.name, new)


def lend_name(
    ledger: Ledger, kind: ThingKind, name: str, within: int | None = None, but: int | None = None
) -> str:
    """Free a name that something put away still has; return what that is called from now on.

    Empty when the name is free. UsageFault when a living thing has it. `within` is the project of
    a part, `but` the thing that is to have the name.
    """
    holder = _holder(ledger.connection, kind, name, within)
    if holder is None or holder.id == but:
        return ""
    if holder.archived_at is None:
        what = _CALLED.get(kind, kind.value)
        raise UsageFault(
            f"there is already a {what} called {holder.name!r}",
            f"give it another name; to change that one: {_EDITED[kind](holder.name)}"
            if kind in _EDITED
            else "give it another name",
        )
    free = _with_its_year(ledger.connection, kind, holder, within)
    table = table_of(kind)
    ledger.connection.execute(update(table).where(table.c.id == holder.id).values(name=free))
    changed(ledger, kind, holder.id, "name", holder.name, free)
    return free


def _named(kind: ThingKind, name: str, within: int | None) -> Select[Any]:
    table = table_of(kind)
    query = select(table).where(func.lower(table.c.name) == name.lower())
    return query if within is None else query.where(table.c.project_id == within)


def _holder(
    connection: Connection, kind: ThingKind, name: str, within: int | None
) -> Row[Any] | None:
    return connection.execute(_named(kind, name, within)).first()


def _with_its_year(
    connection: Connection, kind: ThingKind, holder: Row[Any], within: int | None
) -> str:
    put_away: datetime = holder.archived_at
    name = f"{holder.name}-{put_away.year}"
    number = 2
    while _holder(connection, kind, name, within) is not None:
        name = f"{holder.name}-{put_away.year}-{number}"
        number += 1
    return name


def _refuse_alias_of_another(
    connection: Connection, kind: ThingKind, name: str, thing: int, within: int | None
) -> None:
    alias, table = tables.alias, table_of(kind)
    query = (
        select(table.c.name)
        .join(alias, alias.c.thing_id == table.c.id)
        .where(alias.c.kind == kind, func.lower(alias.c.old_name) == name.lower())
        .where(table.c.id != thing)
    )
    if within is not None:
        query = query.where(table.c.project_id == within)
    other = connection.scalar(query)
    if other is not None:
        raise UsageFault(
            f"{name!r} is what {other!r} was called before, and still finds it",
            "give it another name",
        )
