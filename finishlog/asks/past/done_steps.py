"""The steps that were really done on a part: what a good finish is repeated by."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from finishlog.asks.look.look import Look
from finishlog.core.film.attempts import what_stays
from finishlog.core.film.layers import ABRADES
from finishlog.core.log.entries import AnyEntry, Coat, Joined, Work
from finishlog.core.log.words import Operation
from finishlog.core.shop.things import FaceKind, Step, zone_among
from finishlog.core.zone.state import ZoneState
from finishlog.picking import Zones

# Done once for a reason of that day, or with the piece after its finish: no step of a schedule.
_NO_STEP = frozenset(
    {Operation.MEND, Operation.USE, Operation.SUN, Operation.STACK, Operation.PACK}
)


def steps_done(seen: Look, picked: Zones) -> tuple[Step, ...]:
    """Return the coats and the work of one piece, in their order, with the faces that they reached.

    Of what was picked the piece with the most behind it stands for all. What came off again is
    left out. Of an assembly: its glue-up and what followed.
    """
    mine = [z for z in seen.bench.zones if z.target in picked.targets and _has_steps(z)]
    pieces: dict[int, list[ZoneState]] = {}
    for state in mine:
        owner = state.piece.id if state.piece.id in picked.pieces else state.member_piece.id
        pieces.setdefault(owner, []).append(state)
    if not pieces:
        return ()
    joins = [e for e in seen.log.entries if isinstance(e, Joined)]
    told = {piece: _told(states, joins, piece) for piece, states in pieces.items()}
    piece = max(told, key=lambda each: len(told[each]))
    steps = _with_scuffing(told[piece], pieces[piece])
    return tuple(replace(step, position=n) for n, step in enumerate(steps))


def _with_scuffing(told: Sequence[AnyEntry], states: Sequence[ZoneState]) -> list[Step]:
    """Turn entries into steps; a coat that was scuffed for had its scuffing, logged or not."""
    steps: list[Step] = []
    for entry in told:
        step = _step(entry, states)
        asked = isinstance(entry, Coat) and entry.scuffed_before
        if asked and not (steps and steps[-1].operation in ABRADES):
            steps.append(Step(0, Operation.SCUFF, None, step.faces))
        steps.append(step)
    return steps


def _has_steps(state: ZoneState) -> bool:
    return state.face.kind in {FaceKind.SHOW, FaceKind.HIDDEN}


def _told(states: Sequence[ZoneState], joins: Sequence[Joined], piece: int) -> list[AnyEntry]:
    """Collect what was done to the zones of one piece, each entry once, in its order."""
    of_assembly = any(s.joined and s.piece.id == piece for s in states)
    made = [j for j in joins if j.into == piece][:1]
    into = [j for j in joins if piece in j.members][:1]
    since = made[0].when.order if of_assembly and made else None
    until = into[0].when.order if into else None
    found = {
        entry.id: entry
        for state in states
        for entry in what_stays(state.entries)
        if _is_step(entry)
        and (since is None or entry.when.order > since)
        and (until is None or entry.when.order <= until)
    }
    in_order = sorted(found.values(), key=lambda e: e.when.order)
    return [*made, *in_order] if of_assembly else in_order


def _is_step(entry: AnyEntry) -> bool:
    if isinstance(entry, Work):
        return entry.operation not in _NO_STEP
    return isinstance(entry, Coat) and entry.is_whole


def _step(entry: AnyEntry, states: Sequence[ZoneState]) -> Step:
    match entry:
        case Coat():
            return Step(0, Operation.COAT, entry.product, _faces(entry, states), entry.note)
        case Work():
            note = ", ".join(x for x in (entry.grit, entry.note) if x)
            return Step(0, entry.operation, None, _faces(entry, states), note)
        case _:
            return Step(0, Operation.GLUE_UP)


def _faces(entry: AnyEntry, states: Sequence[ZoneState]) -> tuple[str, ...]:
    """Name the faces that an entry reached; none when it reached them all."""
    reached = [s for s in states if s.target in entry.targets]
    if len(reached) == len(states):
        return ()
    return tuple(dict.fromkeys(_face(s, reached) for s in reached))


def _face(state: ZoneState, reached: Sequence[ZoneState]) -> str:
    here = {s.zone.id for s in reached}
    return zone_among(state.face, state.zone, here)
