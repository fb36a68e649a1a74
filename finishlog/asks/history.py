"""Everything that was ever typed, in order, with what was amended and what was undone."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from finishlog.asks.rags import parts_of
from finishlog.clock import Clock
from finishlog.core.records import When
from finishlog.core.shop import Shop
from finishlog.store.database import Database
from finishlog.store.read_history import HistoryRow, read_history
from finishlog.store.read_shop import read_shop


@dataclass(frozen=True, slots=True)
class HistoryLine:
    """One act, or one entry of it. `late`: typed well after it happened."""

    act: int
    verb: str
    words: str
    typed_at: datetime
    kind: str
    happened: When | None
    parts: tuple[str, ...]
    in_force: bool
    withdrawn_by: int | None
    amended_by: int | None
    amends: int | None
    withdraws: int | None


def history(database: Database, clock: Clock, parts: Iterable[int]) -> tuple[HistoryLine, ...]:
    """Return the lines about the parts with these ids; about everything when there are none."""
    wanted = frozenset(parts)
    with database.reading() as connection:
        shop = read_shop(connection, clock.now, include_archived=True)
        pieces = [p.id for part in shop.parts if part.id in wanted for p in part.pieces]
        rows = read_history(connection, pieces if wanted else None)
    return tuple(_line(row, rows, shop) for row in rows)


def _line(row: HistoryRow, rows: Sequence[HistoryRow], shop: Shop) -> HistoryLine:
    act_of = {r.entry: r.act for r in rows if r.entry}
    return HistoryLine(
        act=row.act,
        verb=row.verb,
        words=row.words,
        typed_at=row.typed_at,
        kind=str(row.kind) if row.kind else "",
        happened=row.when,
        parts=parts_of(row.targets, shop),
        in_force=row.in_force,
        withdrawn_by=row.withdrawn_by,
        amended_by=act_of.get(row.superseded_by or 0),
        amends=act_of.get(row.supersedes or 0),
        withdraws=row.withdraws,
    )
