"""What every entry has, whatever its kind; and which entries touch some pieces."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping
from datetime import datetime
from functools import cache
from typing import Any, NamedTuple

from sqlalchemy import Column, Connection, Select, Subquery, func, select, union_all

from finishlog.core.log.entries import Target
from finishlog.core.log.kinds import KINDS, TakenBack, kind_of
from finishlog.core.log.when import Sureness, When
from finishlog.store.log import kept
from finishlog.store.log.in_force import Link, Withdrawal, withdrawn_acts
from finishlog.store.schema import tables
from finishlog.store.schema.asked import Question, ask, question
from finishlog.store.schema.entries import naming
from finishlog.store.schema.rows import rows_of


class Head(NamedTuple):
    """The common part of one entry."""

    id: int
    act: int
    kind: str
    when: When
    typed_at: datetime
    supersedes: int | None

    @property
    def link(self) -> Link:
        """Reduce to what decides whether the entry is in force."""
        return Link(self.id, self.act, self.supersedes)


@question(by=lambda: tables.entry.c.id)
def _heads_asked() -> Select[Any]:
    of, act = tables.entry.c, tables.act
    return select(
        of.id,
        of.act_id,
        of.kind,
        of.earliest_at,
        of.latest_at,
        of.sureness,
        of.tie,
        of.supersedes_id,
        act.c.typed_at,
    ).join_from(tables.entry, act)


def read_heads(connection: Connection, ids: Collection[int] | None) -> dict[int, Head]:
    """Read heads by id, and with them whole chains of amendments; None: the whole log."""
    heads: dict[int, Head] = {}
    wanted = ids
    while wanted is None or wanted:
        new = heads_of(connection, wanted)
        heads |= new
        wanted = _amending_or_amended(connection, new) - heads.keys() if wanted is not None else ()
    return heads


def heads_of(connection: Connection, ids: Collection[int] | None) -> dict[int, Head]:
    """Read the heads of some entries alone; None: of all."""
    if ids is None:
        return dict(_heads(connection, None))
    return kept.by_id(connection, "heads", ids, lambda missing: _heads(connection, missing))


def _heads(connection: Connection, ids: Collection[int] | None) -> Iterator[tuple[int, Head]]:
    for row in rows_of(connection, _heads_asked, ids):
        id_, act_id, kind, earliest, latest, sureness, tie, supersedes, typed_at = row
        when = When(earliest, latest, Sureness(sureness), tie)
        if kind not in KINDS:
            # Left out it would be lost without a word.
            raise ValueError(f"entry {id_} is of a kind that nobody knows: {kind!r}")
        yield id_, Head(id_, act_id, kind, when, typed_at, supersedes)


def _amending_or_amended(connection: Connection, heads: Mapping[int, Head]) -> set[int]:
    amended = {head.supersedes for head in heads.values() if head.supersedes is not None}
    amending = {link.entry for link in read_amendments(connection) if link.supersedes in heads}
    return amended | amending


@question()
def _amendments() -> Select[Any]:
    of = tables.entry.c
    return select(of.id, of.act_id, of.supersedes_id).where(of.supersedes_id > 0)


def read_amendments(connection: Connection) -> tuple[Link, ...]:
    """Read of every amendment what it corrects."""
    return kept.whole(
        connection, "amendments", lambda: tuple(Link(*r) for r in ask(connection, _amendments))
    )


def touching(connection: Connection, pieces: Collection[int]) -> set[int]:
    """Find the entries that reach some of the pieces, move them or join them."""
    return {row[0] for row in rows_of(connection, _naming(len(KINDS)), pieces)}


@cache
def _naming(kinds: int) -> Question:
    """Ask for the entries that reach or name pieces, of so many kinds as there are."""

    @cache
    def either() -> Subquery:
        reached = tables.entry_target.c
        columns = ((reached.entry_id, reached.piece_id), *naming("piece"))
        each = (
            select(entry_id.label("entry"), piece_id.label("piece"))
            for entry_id, piece_id in columns
        )
        return union_all(*each).subquery()

    def build() -> Select[Any]:
        return select(either().c.entry).distinct()

    return Question(f"naming pieces, of {kinds} kinds", build, by=lambda: either().c.piece)


def with_members(connection: Connection, pieces: Collection[int]) -> set[int]:
    """Add to some pieces those that were ever glued up into them, however deep."""
    return _followed(connection, pieces, _members)


def with_assemblies(connection: Connection, pieces: Collection[int]) -> set[int]:
    """Add to some pieces those that they were ever glued up into, however high."""
    return _followed(connection, pieces, _assemblies)


@question(by=lambda: tables.joined.c.into_piece_id)
def _members() -> Select[Any]:
    return _joins(tables.joined_member.c.piece_id)


@question(by=lambda: tables.joined_member.c.piece_id)
def _assemblies() -> Select[Any]:
    return _joins(tables.joined.c.into_piece_id)


def _joins(to: Column[int]) -> Select[Any]:
    into, member = tables.joined, tables.joined_member
    return select(to).join_from(into, member, into.c.entry_id == member.c.entry_id)


def _followed(connection: Connection, pieces: Collection[int], way: Question) -> set[int]:
    """Follow the glue-ups one way until nothing new is found."""
    found: set[int] = set()
    wanted = set(pieces)
    while wanted:
        found |= wanted
        wanted = {row[0] for row in rows_of(connection, way, wanted)} - found
    return found


def read_targets(
    connection: Connection, ids: Collection[int] | None
) -> dict[int, frozenset[Target]]:
    """Read the zones of pieces that entries reached, by entry.

    What reached a zone that was divided since reached each of its zones.
    """
    if ids is None:
        return _targets(connection, None)
    return kept.by_id(
        connection,
        "targets",
        ids,
        lambda missing: {**dict.fromkeys(missing, _NONE), **_targets(connection, missing)}.items(),
    )


_NONE: frozenset[Target] = frozenset()


@question(by=lambda: tables.entry_target.c.entry_id)
def _targets_asked() -> Select[Any]:
    on, was = tables.entry_target, tables.zone_was
    return select(
        on.c.entry_id, on.c.piece_id, func.coalesce(was.c.zone_id, on.c.zone_id)
    ).outerjoin_from(on, was, was.c.was_zone_id == on.c.zone_id)


def _targets(connection: Connection, ids: Collection[int] | None) -> dict[int, frozenset[Target]]:
    found: dict[int, set[Target]] = defaultdict(set)
    for entry_id, piece, zone in rows_of(connection, _targets_asked, ids):
        found[entry_id].add(Target(piece, zone))
    return {entry_id: frozenset(targets) for entry_id, targets in found.items()}


def read_withdrawals(connection: Connection) -> tuple[Withdrawal, ...]:
    """Read every act of taking back, in the order of typing."""
    return kept.whole(connection, "withdrawals", lambda: _withdrawals(connection))


@question()
def _withdrawals_asked() -> Select[Any]:
    entry, withdrawal = tables.entry, tables.withdrawal
    return (
        select(withdrawal.c.entry_id, entry.c.act_id, withdrawal.c.act_id)
        .join_from(withdrawal, entry, withdrawal.c.entry_id == entry.c.id)
        # By the kind first: there are few of these among many entries.
        .where(entry.c.kind == kind_of(TakenBack))
    )


def _withdrawals(connection: Connection) -> tuple[Withdrawal, ...]:
    found = (Withdrawal(*row) for row in ask(connection, _withdrawals_asked))
    return tuple(sorted(found, key=lambda each: each.by))


_LAST_ENTRIES = 20


@question()
def _last() -> Select[Any]:
    act, entry = tables.act, tables.entry
    newest = select(act.c.id, act.c.typed_at).join_from(entry, act).order_by(entry.c.id.desc())
    return newest.limit(_LAST_ENTRIES)


def newest_acts(connection: Connection, after: datetime) -> list[tuple[int, datetime]]:
    """Return the acts of the last entries that were typed after a moment and stand.

    What only set things up happened at no moment of the work, and tells nothing of the time.
    """
    found = [(number, typed) for number, typed in ask(connection, _last) if typed > after]
    if not found:
        return []
    withdrawn = withdrawn_acts(read_withdrawals(connection))
    return [(number, typed) for number, typed in found if number not in withdrawn]
