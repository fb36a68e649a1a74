"""Everything that was ever typed, in order, with what was amended and what was undone.

Every line of every screen names the acts that it rests on; they are all found here.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from datetime import datetime
from typing import TYPE_CHECKING

from msgspec import Struct

from finishlog.asks.bench.open_cans import part_words
from finishlog.asks.look.entry_words import Named, Words
from finishlog.asks.look.meant import Wanted
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.log.entries import AnyEntry, Coat, ContainerEvent, Joined, Moved, Stripped
from finishlog.core.log.when import When
from finishlog.core.mixing.mixes import parts_of_text
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import Shop, ThingKind
from finishlog.errors import NotFound
from finishlog.store.log.heads import with_members
from finishlog.store.log.read_history import HistoryRow, read_acts, read_history, read_records
from finishlog.store.things.changes import ADDED, Change, read_changes
from finishlog.store.things.containers import PARTS
from finishlog.store.things.read_shop import read_shop

if TYPE_CHECKING:
    from sqlalchemy import Connection


class HistoryLine(Struct, frozen=True):
    """One act, or one entry of it: when it was typed, what it records and about which parts.

    `said` is what it records, in words; empty when it only changed the list of things: then
    `words` and `changes` tell.
    """

    act: int
    verb: str
    words: str
    typed_at: datetime
    time_zone: str
    kind: str
    said: str
    happened: When | None
    parts: tuple[str, ...]
    in_force: bool
    withdrawn_by: int | None
    amended_by: int | None
    amends: int | None
    withdraws: int | None
    # What it changed about a thing: `species: oak, was ash`.
    changes: tuple[str, ...] = ()


def history(context: Context, about: Wanted | None = None) -> tuple[HistoryLine, ...]:
    """Return the lines about some parts or pieces, with what an assembly is made of; else all."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now, include_archived=True)
        pieces = {p for each in about.parts for p in each.pieces} if about else set()
        rows = read_history(connection, with_members(connection, pieces) if about else None)
        changes = _changes(connection, shop, about.ids if about else ())
        known = {row.act for row in rows}
        rows += read_acts(connection, {change.act for change in changes} - known)
        return _lines(connection, rows, changes, shop, context.facts)


def one_act(context: Context, act: int) -> tuple[HistoryLine, ...]:
    """Return every line of one act; NotFound when there is no such act."""
    with context.reading() as connection:
        rows = read_history(connection)
        mine = [row for row in rows if row.act == act]
        if not mine:
            raise NotFound(f"there is no act {act}", f"{Do.HISTORY()} shows the numbers")
        shop = read_shop(connection, context.clock.now, include_archived=True)
        changes = read_changes(connection)
        return _lines(connection, mine, changes, shop, context.facts, rows)


def _changes(connection: Connection, shop: Shop, parts: Collection[int]) -> tuple[Change, ...]:
    """Read what was changed about these parts and their projects; about everything without any."""
    if not parts:
        return read_changes(connection)
    projects = {part.project for part in shop.parts if part.id in parts}
    return (
        *read_changes(connection, ThingKind.PART, parts),
        *read_changes(connection, ThingKind.PROJECT, projects),
    )


def _lines(
    connection: Connection,
    rows: Sequence[HistoryRow],
    changes: Iterable[Change],
    shop: Shop,
    facts: Facts,
    among: Sequence[HistoryRow] = (),
) -> tuple[HistoryLine, ...]:
    """Put rows into words; `among`: all the rows that may have amended them, if not they."""
    records = read_records(connection, rows)
    survivors = {e.survives for e in records.values() if isinstance(e, Stripped)} - records.keys()
    below = read_records(connection, [row for row in among if row.entry in survivors])
    known = (*records.values(), *below.values())
    coats = {e.id: e.product_name for e in known if isinstance(e, Coat)}
    words, named = Words(shop, facts, coats), Named(shop)
    acts = {row.entry: row.act for row in among or rows if row.entry}
    changed: dict[int, list[str]] = {}
    for change in changes:
        if change.what != ADDED:
            changed.setdefault(change.act, []).append(_words(change))
    lines = (_line(row, records.get(row.entry or 0), words, named, acts, changed) for row in rows)
    return tuple(sorted(lines, key=lambda line: line.act))


def _words(change: Change) -> str:
    """Say what a change changed; what was added says so in the words that were typed."""
    was, becomes = change.was, change.becomes
    if change.what == PARTS:
        was, becomes = (", ".join(map(part_words, parts_of_text(x))) for x in (was, becomes))
    return f"{change.what}: {becomes or 'none'}" + (f", was {was}" if was else "")


def _line(
    row: HistoryRow,
    record: AnyEntry | None,
    words: Words,
    named: Named,
    acts: Mapping[int, int],
    changed: Mapping[int, Sequence[str]],
) -> HistoryLine:
    said = f"takes act {row.withdraws} back" if row.withdraws else row.kind
    return HistoryLine(
        act=row.act,
        verb=row.verb,
        words=row.words,
        typed_at=row.typed_at,
        time_zone=row.time_zone,
        kind=row.kind,
        said=words.of(record) if record else said,
        happened=row.when,
        parts=_about(row, record, named, words.shop),
        in_force=row.in_force,
        withdrawn_by=row.withdrawn_by,
        amended_by=acts.get(row.superseded_by or 0),
        amends=acts.get(row.supersedes or 0),
        withdraws=row.withdraws,
        changes=tuple(changed.get(row.act, ())),
    )


def _about(row: HistoryRow, record: AnyEntry | None, named: Named, shop: Shop) -> tuple[str, ...]:
    if isinstance(record, ContainerEvent):
        return (shop.containers[record.container].name,)
    if isinstance(record, Moved):
        return named.pieces(record.pieces)
    if isinstance(record, Joined):
        return (*named.pieces({record.into}), *named.pieces(record.members))
    return named.zones(row.targets)
