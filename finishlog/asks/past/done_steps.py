"""The steps that were really done on a part: what a good finish is repeated by."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from finishlog.asks.bench.open_cans import mixed_of
from finishlog.asks.look.look import Look
from finishlog.asks.past.recipe import wiped_after_min
from finishlog.core.film.attempts import what_stays
from finishlog.core.film.layers import ABRADES
from finishlog.core.finish.classes import WindowKind
from finishlog.core.log.entries import AnyEntry, Coat, Joined, Work
from finishlog.core.log.words import Operation
from finishlog.core.shop.things import FaceKind, Step, zone_among
from finishlog.core.zone.state import ZoneState
from finishlog.picking import Zones

# Done once for a reason of that day, or with the piece after its finish: no step of a schedule.
_NO_STEP = frozenset(
    {
        Operation.MEND,
        Operation.USE,
        Operation.SUN,
        Operation.STACK,
        Operation.PACK,
        Operation.STORE,
    }
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
    steps = _with_scuffing(told[piece], pieces[piece], seen)
    return tuple(replace(step, position=n) for n, step in enumerate(steps))


def steps_over(seen: Look, picked: Zones) -> tuple[Step, ...]:
    """Return how the last finish of some zones goes on once more over what is on them.

    Wax is washed off first and comes back last; what needs tooth is scuffed. Nothing of it begins
    at bare wood, and no face gets it but those that were picked.
    """
    done = steps_done(seen, picked)
    classes = {
        n: seen.facts.finish_class(seen.shop.products[step.product].class_key)
        for n, step in enumerate(done)
        if step.product is not None
    }
    finishes = [n for n, of in classes.items() if not of.goes_on_last]
    if not finishes:
        return ()
    last = finishes[-1]
    behind = done[last + 1 :]
    waxed = [step for n, step in enumerate(done) if n > last and n in classes]
    wiped = [step for step in behind if step.operation is Operation.WIPE][:1]
    melts = classes[last].window.kind is WindowKind.MELTS_IN
    scuffs = [] if melts else [Step(0, Operation.SCUFF)]
    wash = Step(0, Operation.SOLVENT_WIPE, note="wax off")
    steps = [*([wash, wash] if waxed else []), *scuffs, done[last], *wiped, *waxed[-1:]]
    faces = _named(seen, picked) or done[last].faces
    return tuple(replace(s, position=n, faces=faces) for n, s in enumerate(steps))


def _named(seen: Look, picked: Zones) -> tuple[str, ...]:
    """Name the faces that were picked; none when they are all that is finished of the piece."""
    pieces = {target.piece for target in picked.targets}
    mine = [z for z in seen.bench.zones if z.target.piece in pieces and _has_steps(z)]
    here = [z for z in mine if z.target in picked.targets]
    if len(here) == len(mine):
        return ()
    return tuple(dict.fromkeys(_face(z, here) for z in here))


def _with_scuffing(told: Sequence[AnyEntry], states: Sequence[ZoneState], seen: Look) -> list[Step]:
    """Turn entries into steps; a coat that was scuffed for had its scuffing, logged or not."""
    steps: list[Step] = []
    for n, entry in enumerate(told):
        step = _step(entry, told[:n], states, seen)
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


def _step(
    entry: AnyEntry, before: Sequence[AnyEntry], states: Sequence[ZoneState], seen: Look
) -> Step:
    """Turn an entry into a step, with what makes its result: the mix, the grit, the minutes."""
    match entry:
        case Coat():
            mix = seen.shop.containers.get(entry.container) if entry.container else None
            said = (mixed_of(mix, seen.facts) if mix else "", _laid(entry), entry.note)
            return Step(0, Operation.COAT, entry.product, _faces(entry, states), _joined(said))
        case Work():
            said = (entry.grit, _after(entry, before), entry.note)
            return Step(0, entry.operation, None, _faces(entry, states), _joined(said))
        case _:
            return Step(0, Operation.GLUE_UP)


def _joined(said: Sequence[str]) -> str:
    return ", ".join(each for each in said if each)


def _laid(coat: Coat) -> str:
    """Say how it was laid, where that was said."""
    return {True: "flooded", False: "thin", None: ""}[coat.flooded]


def _after(work: Work, before: Sequence[AnyEntry]) -> str:
    """Say how long the surplus stood before it was wiped off, the first time."""
    coats = [n for n, each in enumerate(before) if isinstance(each, Coat)]
    coat = before[coats[-1]] if coats else None
    if work.operation is not Operation.WIPE or not isinstance(coat, Coat):
        return ""
    since = [*before[coats[-1] + 1 :], work]
    if any(isinstance(e, Work) and e.operation is Operation.WIPE for e in since[:-1]):
        return ""
    minutes = wiped_after_min(coat, since)
    if not minutes:
        return ""
    return f"after {minutes:.0f} min" if minutes >= 1 else f"after {minutes * 60:.0f} s"


def _faces(entry: AnyEntry, states: Sequence[ZoneState]) -> tuple[str, ...]:
    """Name the faces that an entry reached; none when it reached them all."""
    reached = [s for s in states if s.target in entry.targets]
    if len(reached) == len(states):
        return ()
    return tuple(dict.fromkeys(_face(s, reached) for s in reached))


def _face(state: ZoneState, reached: Sequence[ZoneState]) -> str:
    here = {s.zone.id for s in reached}
    return zone_among(state.face, state.zone, here)
