"""Cans, jars and mixes: put on record, and read with what a mix is made of.

What is in a mix is never overwritten. An amended amount or a topping-up is a change beside its
act, and holds as long as that act stands.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from datetime import datetime
from typing import Any
from uuid import uuid4

from msgspec.structs import replace
from sqlalchemy import Connection, Row, Select, func, or_, select, update

from finishlog.core.log.entries import Coat
from finishlog.core.mixing.containers import Container, ContainerKind, MixPart
from finishlog.core.mixing.mixes import parts_of_text, parts_text
from finishlog.core.shop.things import Log, Shop, ThingKind
from finishlog.store.log.heads import read_withdrawals
from finishlog.store.log.in_force import withdrawn_acts
from finishlog.store.log.ledger import Ledger
from finishlog.store.schema import tables
from finishlog.store.schema.asked import among, ask, question
from finishlog.store.schema.rows import add_row, written
from finishlog.store.things.changes import ADDED, changed, read_changes

PARTS = "parts"
DRAWN_FROM = "drawn from"


def add_container(ledger: Ledger, new: Container) -> int:
    """Put a container on record with its parts; `new.id` is not looked at."""
    made = add_row(
        ledger.connection,
        tables.container,
        **written(tables.container, new),
        uuid=str(uuid4()),
    )
    changed(ledger, ThingKind.CONTAINER, made, ADDED, "", new.name)
    if new.drawn_from:
        changed(ledger, ThingKind.CONTAINER, made, DRAWN_FROM, "", new.drawn_from)
    for part in new.parts:
        add_row(
            ledger.connection, tables.mix_part, **written(tables.mix_part, part), container_id=made
        )
    return made


def change_parts(ledger: Ledger, of: Container, becomes: Iterable[MixPart]) -> None:
    """Keep what a mix is made of from now on; what it was stays beside it."""
    texts = parts_text(of.parts), parts_text(becomes)
    changed(ledger, ThingKind.CONTAINER, of.id, PARTS, *texts)


def next_mix_name(connection: Connection) -> str:
    """Return the next free name of a mix, `mix-7`; every mix ever made has counted."""
    mixes = tables.container.c.kind == ContainerKind.MIX.value
    number = (connection.scalar(select(func.count()).where(mixes)) or 0) + 1
    names = set(connection.scalars(select(func.lower(tables.container.c.name))))
    while f"mix-{number}" in names:
        number += 1
    return f"mix-{number}"


def put_away(ledger: Ledger, containers: Collection[int], moment: datetime) -> None:
    """Put containers away that ended by themselves: no change that anyone made."""
    ended = update(tables.container).where(tables.container.c.id.in_(containers))
    if containers:
        ledger.connection.execute(ended.values(archived_at=moment))


def read_containers(
    connection: Connection, also: Collection[int] = (), *, archived: bool = False
) -> dict[int, Container]:
    """Read the containers in use, and those with the ids in `also`; `archived`: all there are."""
    found_there = ask(connection, _all) if archived else ask(connection, _in_use, also=also)
    rows: dict[int, list[Row[Any]]] = defaultdict(list)
    for row in found_there:
        rows[row.id].append(row)
    found = {key: _container(mine) for key, mine in rows.items()}
    return _as_changed(connection, found) if any(c.parts for c in found.values()) else found


def with_containers_of(connection: Connection, shop: Shop, log: Log) -> Shop:
    """Add to a shop the containers that were put away and that coats in the log came from."""
    named = {e.container for e in log.entries if isinstance(e, Coat) and e.container is not None}
    missing = named - shop.containers.keys()
    if not missing:
        return shop
    return replace(shop, containers={**shop.containers, **read_containers(connection, missing)})


@question()
def _all() -> Select[Any]:
    container, part = tables.container, tables.mix_part
    columns = (part.c[name].label(f"part_{name}") for name in _OF_A_PART)
    return (
        select(container, *columns)
        .select_from(container.outerjoin(part, part.c.container_id == container.c.id))
        .order_by(container.c.id, part.c.id)
    )


_OF_A_PART = ("id", "product_id", "name", "parts", "volume_ml", "weight_g")


@question()
def _in_use() -> Select[Any]:
    of = tables.container.c
    all_there_are = _all.build()
    assert isinstance(all_there_are, Select)
    return all_there_are.where(or_(of.archived_at.is_(None), among(of.id, "also")))


def _container(rows: list[Row[Any]]) -> Container:
    row = rows[0]
    return Container(
        id=row.id,
        name=row.name,
        kind=ContainerKind(row.kind),
        product=row.product_id,
        made_at=row.made_at,
        use_by_at=row.use_by_at,
        amount_ml=row.amount_ml,
        batch=row.batch,
        note=row.note,
        parts=tuple(
            MixPart(
                each.part_name,
                each.part_parts,
                each.part_product_id,
                each.part_volume_ml,
                each.part_weight_g,
            )
            for each in rows
            if each.part_id is not None
        ),
        archived=row.archived_at is not None,
    )


def _as_changed(connection: Connection, found: Mapping[int, Container]) -> dict[int, Container]:
    """Lay the changes that stand over what was mixed first."""
    changes = read_changes(connection, ThingKind.CONTAINER, found)
    amended = any(change.what == PARTS for change in changes)
    undone = withdrawn_acts(read_withdrawals(connection)) if amended else {}
    stand = {(c.thing, c.what): c.becomes for c in changes if c.act not in undone}
    return {
        key: replace(
            each,
            parts=_parts(each, stand.get((key, PARTS))),
            drawn_from=stand.get((key, DRAWN_FROM), ""),
        )
        for key, each in found.items()
    }


def _parts(of: Container, text: str | None) -> tuple[MixPart, ...]:
    """Read what the parts became; which product a part is stays what it was."""
    if text is None:
        return of.parts
    products = {part.name.casefold(): part.product for part in of.parts}
    return tuple(replace(p, product=products.get(p.name.casefold())) for p in parts_of_text(text))


def pieces_coated_from(connection: Connection, of: int) -> set[int]:
    """Find the pieces that a coat from a container ever went on."""
    query = select(tables.entry_target.c.piece_id).distinct()
    query = query.join(tables.coat, tables.coat.c.entry_id == tables.entry_target.c.entry_id)
    return set(connection.scalars(query.where(tables.coat.c.container_id == of)))
