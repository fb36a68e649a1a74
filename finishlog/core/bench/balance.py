"""Do the faces of a panel carry about the same? One coated and one bare take up moisture unequally.

Every coat slows moisture and none stops it, so a panel with more on one face may cup. What counts
is how many coats lie on each face now, not what the steps say: what was never meant to be coated
cups as well. Joints stay bare, edges go with their faces, and what is glued up is held by it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.core.film.layers import Layer
from finishlog.core.published.care import BalanceFigures
from finishlog.core.shop.things import FaceKind
from finishlog.core.zone.state import ZoneState

_FINISHED = (FaceKind.SHOW, FaceKind.HIDDEN)


class Uneven(Struct, frozen=True):
    """One piece whose faces carry unequal coats: (face, coats) of the fullest and the barest.

    `since`: when the coat went on that put the one ahead of the other.
    """

    states: tuple[ZoneState, ...]
    ahead: tuple[str, int]
    behind: tuple[str, int]
    since: datetime


def uneven(states: Iterable[ZoneState]) -> tuple[Uneven, ...]:
    """Return the pieces with more on one face than on another, in the order they come."""
    pieces: dict[int, list[ZoneState]] = {}
    for state in states:
        if _counts(state):
            pieces.setdefault(state.piece.id, []).append(state)
    found = (_of_piece(each) for each in pieces.values())
    return tuple(one for one in found if one is not None)


def may_cup(one: Uneven, now: datetime, figures: BalanceFigures) -> bool:
    """Tell whether faces are so unequal, or were so for so long, that it is worth a word.

    A bare face is behind at once where the other has two coats or more, and where it has one, when
    that one was ahead for longer than may be. A face that has something on it is behind when it
    lacks two coats for as long.
    """
    more, is_bare = one.ahead[1] - one.behind[1], one.behind[1] == 0
    if is_bare and more > 1:
        return True
    long_ahead = now - one.since >= timedelta(hours=figures.ahead_h.value)
    return long_ahead and (is_bare or more > 1)


def _counts(state: ZoneState) -> bool:
    """Tell whether a face can make its piece cup: it lies free, and work on it goes on."""
    part = state.part
    if part.is_board or part.needs or state.joined or state.set_aside:
        return False
    return state.face.kind in _FINISHED


def _of_piece(states: Sequence[ZoneState]) -> Uneven | None:
    """Compare the fullest face of a piece with the barest."""
    faces: dict[str, Sequence[Layer]] = {}
    for state in states:
        coats = _coats(state)
        known = faces.get(state.face.name)
        if known is None or len(coats) < len(known):
            faces[state.face.name] = coats
    ahead = max(faces, key=lambda face: len(faces[face]))
    behind = min(faces, key=lambda face: len(faces[face]))
    most, least = len(faces[ahead]), len(faces[behind])
    if most == least:
        return None
    since = faces[ahead][least].coat.when.earliest
    return Uneven(tuple(states), (ahead, most), (behind, least), since)


def _coats(state: ZoneState) -> Sequence[Layer]:
    """Return the layers that hold moisture back; a stain or dye does not."""
    return [layer for layer in state.coats if layer.of.builds_film or layer.of.topcoat]
