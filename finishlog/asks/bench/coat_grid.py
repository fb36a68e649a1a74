"""Which face of which piece has how many coats: many parts at one look."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.asks.look.acts_behind import acts_of
from finishlog.asks.look.look import look
from finishlog.asks.look.meant import Wanted
from finishlog.asks.look.standing import Standing, glue_up_standings
from finishlog.context import Context
from finishlog.core.log.words import Operation
from finishlog.core.shop.things import FaceKind, Part, zone_name
from finishlog.core.verdict.edges import follows_its_faces
from finishlog.core.zone.grouping import describe
from finishlog.core.zone.state import ZoneState


class GridCell(Struct, frozen=True):
    """One face: coats on it, coats that its steps still ask for (None: it has no steps)."""

    face: str
    coats: int
    to_come: int | None
    joint: bool
    taped: bool


class GridLine(Struct, frozen=True):
    """Pieces of a part with the same coats on the same faces; `within`: their assembly."""

    part: str
    label: str
    within: str
    cells: tuple[GridCell, ...]
    acts: tuple[int, ...]


class CoatGrid(Struct, frozen=True):
    """The pieces that are meant, and the glue-ups that wait for them or are them."""

    lines: tuple[GridLine, ...]
    glue_ups: tuple[Standing, ...]


def coat_grid(context: Context, wanted: Wanted) -> CoatGrid:
    """Answer for what is meant, part by part as it was made, also inside an assembly."""
    with context.reading() as connection:
        seen = look(context, connection)
    zones = [z for z in wanted.of(seen.bench.zones) if not follows_its_faces(z)]
    pieces = {z.member_piece.id for z in zones}
    mine = [g for g in seen.bench.glue_ups if g.part.id in wanted.ids or pieces & set(g.members)]
    return CoatGrid(_lines(zones), glue_up_standings(mine, seen))


def _lines(zones: Sequence[ZoneState]) -> tuple[GridLine, ...]:
    by_piece: dict[int, list[ZoneState]] = {}
    for state in zones:
        by_piece.setdefault(state.member_piece.id, []).append(state)
    alike: dict[tuple[int, str, tuple[GridCell, ...]], list[ZoneState]] = {}
    for states in by_piece.values():
        first = states[0]
        within = describe(first.part, [first.piece.number], ()) if first.joined else ""
        key = (first.member.id, within, tuple(_cell(s) for s in states))
        alike.setdefault(key, []).extend(states)
    return tuple(
        _line(states[0].member, within, cells, states)
        for (_, within, cells), states in alike.items()
    )


def _line(
    part: Part, within: str, cells: tuple[GridCell, ...], states: Sequence[ZoneState]
) -> GridLine:
    numbers = sorted({s.member_piece.number for s in states})
    return GridLine(part.path, describe(part, numbers, ()), within, cells, acts_of(states))


def _cell(state: ZoneState) -> GridCell:
    left = state.progress.steps[state.progress.done :]
    coats = sum(1 for step in left if step.operation is Operation.COAT)
    return GridCell(
        face=zone_name(state.face, state.zone),
        coats=len(state.coats),
        to_come=coats if state.progress.steps else None,
        joint=state.face.kind is FaceKind.JOINT,
        taped=state.masked_since is not None,
    )
