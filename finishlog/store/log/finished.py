"""Find finishes that went wrong, or that somebody spoke of, and read what reached their zones."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator
from functools import cache
from typing import Any, NamedTuple

from sqlalchemy import ColumnElement, CompoundSelect, Connection, Select, func, select, union_all

from finishlog.core.film.lessons import Finished
from finishlog.core.log.entries import AnyEntry, Target
from finishlog.core.log.words import FaultKind, Found, Outcome
from finishlog.core.shop.things import OldFinish
from finishlog.store.log import kept
from finishlog.store.log.read_log import read_log
from finishlog.store.schema import tables
from finishlog.store.schema.asked import Question, ask, question
from finishlog.store.schema.rows import rows_of

# So many of the newest are looked through: years of a busy shop.
LOOK_BACK = 250


class Spoken(NamedTuple):
    """An entry that tells how the finish of a piece came out, and the wood; None: not told."""

    entry: int
    piece: int
    wood: str | None


def went_wrong(connection: Connection, blamed: Collection[FaultKind]) -> list[Spoken]:
    """Find failed reviews, faults of some kinds, films that let go or were taken off."""
    return kept.whole(
        connection,
        "went wrong",
        lambda: [Spoken(*row) for row in ask(connection, _wrong(frozenset(blamed)))],
    )


def reviewed(connection: Connection) -> list[Spoken]:
    """Find the newest reviews of what did not fail."""
    return kept.whole(
        connection, "reviewed", lambda: [Spoken(*row) for row in ask(connection, _reviewed)]
    )


def read_finished(connection: Connection, pieces: Collection[int]) -> Iterator[Finished]:
    """Read all that reached the zones of some pieces."""
    by_target: dict[Target, list[AnyEntry]] = defaultdict(list)
    for entry in read_log(connection, pieces, within=()).entries:
        for target in entry.targets:
            by_target[target].append(entry)
    for piece_id, zone_id, wood, board, old in rows_of(connection, _zones, pieces):
        entries = by_target.get(Target(piece_id, zone_id))
        if entries:
            yield Finished(wood, board, OldFinish(old) if old else None, tuple(entries))


def _wood() -> ColumnElement[Any]:
    return func.coalesce(tables.zone.c.species, tables.part.c.species)


@question(by=lambda: tables.piece.c.id)
def _zones() -> Select[Any]:
    piece, part, face, zone = tables.piece, tables.part, tables.face, tables.zone
    return select(piece.c.id, zone.c.id, _wood(), part.c.is_board, part.c.old_finish).select_from(
        piece.join(part).join(face, face.c.part_id == part.c.id).join(zone)
    )


def _of_woods(told: Select[Any] | CompoundSelect[Any]) -> Select[Any]:
    """Select the pieces that the newest of some entries reached, each with its wood."""
    on, was, zone = tables.entry_target, tables.zone_was, tables.zone
    every = told.subquery()
    newest = select(every.c.entry_id).order_by(every.c.entry_id.desc()).limit(LOOK_BACK)
    return (
        select(on.c.entry_id, on.c.piece_id, _wood())
        .outerjoin_from(on, was, was.c.was_zone_id == on.c.zone_id)
        # Divided since: each of its zones is of its own wood.
        .join(zone, zone.c.id == func.coalesce(was.c.zone_id, on.c.zone_id))
        .join(tables.face, tables.face.c.id == zone.c.face_id)
        .join(tables.part, tables.part.c.id == tables.face.c.part_id)
        # Not joined: all that was ever reached would be gone through.
        .where(on.c.entry_id.in_(newest))
        .distinct()
    )


@cache
def _wrong(blamed: frozenset[FaultKind]) -> Question:
    """Ask for what went wrong; the faults that count are the published ones."""
    kinds = sorted(blamed)
    return Question(
        f"went wrong: {' '.join(kinds)}",
        lambda: _of_woods(_told_of(kinds)),
    )


def _told_of(kinds: Collection[FaultKind]) -> CompoundSelect[Any]:
    """Select what tells that a film went wrong."""
    fault, review, check = tables.fault, tables.review, tables.film_check
    return union_all(
        select(fault.c.entry_id).where(fault.c.what.in_(kinds)),
        select(review.c.entry_id).where(review.c.outcome == Outcome.FAILED),
        select(check.c.entry_id).where(check.c.found == Found.FLAKES),
        select(tables.stripped.c.entry_id),
    )


@question()
def _reviewed() -> Select[Any]:
    review = tables.review
    return _of_woods(select(review.c.entry_id).where(review.c.outcome != Outcome.FAILED))
