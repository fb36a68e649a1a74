"""Read the history: every act and entry ever typed, with what was taken back or corrected."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable
from datetime import datetime
from typing import Any

from msgspec import Struct
from sqlalchemy import Connection, Row

from finishlog.core.log.entries import AnyEntry, Target
from finishlog.core.log.kinds import OF_THE_WORK
from finishlog.core.log.when import When
from finishlog.store.log.heads import Head, read_heads, read_targets, read_withdrawals, touching
from finishlog.store.log.in_force import Fate, Withdrawal, fates, withdrawn_acts
from finishlog.store.log.rows import read_entries
from finishlog.store.schema.rows import rows_of, whole

_ACTS = whole("act", by="id")


class HistoryRow(Struct, frozen=True, kw_only=True):
    """One entry of one act, or an act without entries (`entry` is None).

    `withdraws` and `withdrawn_by` are acts; `supersedes` is the entry that this one corrects,
    `superseded_by` the one that is in force in its place.
    """

    act: int
    verb: str
    words: str
    typed_at: datetime
    time_zone: str
    entry: int | None = None
    kind: str = ""
    when: When | None = None
    targets: frozenset[Target] = frozenset()
    withdraws: int | None = None
    supersedes: int | None = None
    withdrawn_by: int | None = None
    superseded_by: int | None = None

    @property
    def in_force(self) -> bool:
        """Tell whether it still holds."""
        return self.withdrawn_by is None and self.superseded_by is None


def read_history(
    connection: Connection, pieces: Collection[int] | None = None
) -> tuple[HistoryRow, ...]:
    """Read everything in the order of typing.

    With `pieces`: the entries that touch one of them, their amendments, and what took them back.
    """
    withdrawals = read_withdrawals(connection)
    ids = None if pieces is None else touching(connection, pieces)
    heads = read_heads(connection, ids)
    if ids is not None:
        heads |= read_heads(connection, _taken_back(heads, withdrawals))
    acts = None if ids is None else {head.act for head in heads.values()}
    rows = _Rows(connection, heads, withdrawals, None if ids is None else heads)
    return tuple(
        row
        for typed in sorted(rows_of(connection, _ACTS, acts), key=lambda a: a.id)
        for row in rows.of(typed)
    )


def read_acts(connection: Connection, acts: Collection[int]) -> tuple[HistoryRow, ...]:
    """Read some acts alone: what they changed about things stands in `changes`."""
    rows = rows_of(connection, _ACTS, acts)
    return tuple(HistoryRow(**_act(typed)) for typed in rows)


def read_records(connection: Connection, rows: Iterable[HistoryRow]) -> dict[int, AnyEntry]:
    """Read what the entries of some rows record, in force or not, by entry."""
    heads = [
        Head(row.entry, row.act, row.kind, row.when, row.typed_at, row.supersedes)
        for row in rows
        if row.entry is not None and row.when and row.kind in OF_THE_WORK
    ]
    targets = {row.entry: row.targets for row in rows if row.entry is not None}
    return {entry.id: entry for entry in read_entries(connection, heads, targets)}


def _taken_back(heads: dict[int, Head], withdrawals: tuple[Withdrawal, ...]) -> set[int]:
    """Find the entries that withdraw these acts, and those that withdraw the withdrawing."""
    acts = {head.act for head in heads.values()}
    entries = set()
    for found in withdrawals:
        if found.act in acts:
            acts.add(found.by)
            entries.add(found.entry)
    return entries


class _Rows:
    """Builds the rows of one act after the other."""

    def __init__(
        self,
        connection: Connection,
        heads: dict[int, Head],
        withdrawals: tuple[Withdrawal, ...],
        ids: Collection[int] | None,
    ) -> None:
        self.withdrawn = withdrawn_acts(withdrawals)
        self.withdraws = {found.entry: found.act for found in withdrawals}
        self.fates = fates((head.link for head in heads.values()), self.withdrawn)
        self.targets = read_targets(connection, ids)
        self.by_act: dict[int, list[Head]] = defaultdict(list)
        for head in sorted(heads.values(), key=lambda head: head.id):
            self.by_act[head.act].append(head)

    def of(self, typed: Row[Any]) -> list[HistoryRow]:
        """Build the rows of one act."""
        heads = self.by_act[typed.id]
        if heads:
            return [self._entry(typed, head, self.fates[head.id]) for head in heads]
        return [HistoryRow(**_act(typed), withdrawn_by=self.withdrawn.get(typed.id))]

    def _entry(self, typed: Row[Any], head: Head, fate: Fate) -> HistoryRow:
        return HistoryRow(
            **_act(typed),
            entry=head.id,
            kind=head.kind,
            when=head.when,
            targets=self.targets.get(head.id, frozenset()),
            withdraws=self.withdraws.get(head.id),
            supersedes=head.supersedes,
            withdrawn_by=fate.withdrawn_by,
            superseded_by=fate.superseded_by,
        )


def _act(typed: Row[Any]) -> dict[str, Any]:
    return {
        "act": typed.id,
        "verb": typed.verb,
        "words": typed.words,
        "typed_at": typed.typed_at,
        "time_zone": typed.time_zone,
    }
