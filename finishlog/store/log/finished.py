"""Find finishes that went wrong, or that somebody spoke of, and read what reached their zones."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator
from functools import cache
from typing import Any, NamedTuple

from sqlalchemy import CompoundSelect, Connection, Select, func, select, union_all

from finishlog.core.film.lessons import Finished
from finishlog.core.log.entries import AnyEntry, Target
from finishlog.core.log.words import FaultKind, Found, Outcome
from finishlog.core.shop.things import OldFinish
from finishlog.store.log import kept
from finishlog.store.log.read_log import read_log
from finishlog.store.schema.asked import ask
from finishlog.store.schema.log import entry_target, fault, film_check, review, stripped
from finishlog.store.schema.rows import rows_of
from finishlog.store.schema.things import face, part, piece, zone, zone_was

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
        connection, "reviewed", lambda: [Spoken(*row) for row in ask(connection, _REVIEWED)]
    )


def read_finished(connection: Connection, pieces: Collection[int]) -> Iterator[Finished]:
    """Read all that reached the zones of some pieces."""
    by_target: dict[Target, list[AnyEntry]] = defaultdict(list)
    for entry in read_log(connection, pieces, within=()).entries:
        for target in entry.targets:
            by_target[target].append(entry)
    for piece_id, zone_id, wood, board, old in rows_of(connection, _ZONES, piece.c.id, pieces):
        entries = by_target.get(Target(piece_id, zone_id))
        if entries:
            yield Finished(wood, board, OldFinish(old) if old else None, tuple(entries))


_WOOD = func.coalesce(zone.c.species, part.c.species)
_ZONES = select(piece.c.id, zone.c.id, _WOOD, part.c.is_board, part.c.old_finish).select_from(
    piece.join(part).join(face, face.c.part_id == part.c.id).join(zone)
)


def _of_woods(told: Select[Any] | CompoundSelect[Any]) -> Select[Any]:
    """Select the pieces that the newest of some entries reached, each with its wood."""
    every = told.subquery()
    newest = select(every.c.entry_id).order_by(every.c.entry_id.desc()).limit(LOOK_BACK)
    return (
        select(entry_target.c.entry_id, entry_target.c.piece_id, _WOOD)
        .outerjoin_from(entry_target, zone_was, zone_was.c.was_zone_id == entry_target.c.zone_id)
        # Divided since: each of its zones is of its own wood.
        .join(zone, zone.c.id == func.coalesce(zone_was.c.zone_id, entry_target.c.zone_id))
        .join(face, face.c.id == zone.c.face_id)
        .join(part, part.c.id == face.c.part_id)
        # Not joined: all that was ever reached would be gone through.
        .where(entry_target.c.entry_id.in_(newest))
        .distinct()
    )


@cache
def _wrong(blamed: frozenset[FaultKind]) -> Select[Any]:
    return _of_woods(
        union_all(
            select(fault.c.entry_id).where(fault.c.what.in_(sorted(blamed))),
            select(review.c.entry_id).where(review.c.outcome == Outcome.FAILED),
            select(film_check.c.entry_id).where(film_check.c.found == Found.FLAKES),
            select(stripped.c.entry_id),
        )
    )


_REVIEWED = _of_woods(select(review.c.entry_id).where(review.c.outcome != Outcome.FAILED))
