"""Pieces that stand alike and come to be the same: one of them stands for all in a story."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.shop.things import Part, Piece
from finishlog.core.zone.state import ZoneState


class Alike(Struct, frozen=True):
    """Pieces of a part that stand alike; the first stands for all of them."""

    part: Part
    pieces: tuple[Piece, ...]


def alike(part: Part, zones: Iterable[ZoneState]) -> list[Alike]:
    """Sort the pieces of a part that is nobody's member by how their zones stand."""
    standing: dict[int, list[Hashable]] = {piece.id: [] for piece in part.pieces}
    for zone in zones:
        if zone.member_piece.id in standing:
            standing[zone.member_piece.id].append(_stands(zone))
    found: dict[Hashable, list[Piece]] = {}
    for piece in part.pieces:
        found.setdefault(tuple(standing[piece.id]), []).append(piece)
    return [Alike(part, tuple(pieces)) for pieces in found.values()]


def _stands(zone: ZoneState) -> Hashable:
    return (
        zone.zone.id,
        tuple(e.id for e in zone.entries),
        tuple((s.since, s.air.id) for s in zone.stays),
        zone.progress.done,
    )


def standing_for_all(part: Part, groups: Sequence[Alike]) -> Part:
    """Return a part of which one piece of each kind is there."""
    return replace(part, pieces=tuple(group.pieces[0] for group in groups))
