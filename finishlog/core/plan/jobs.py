"""Jobs: what can be done in one go, because the zones stand alike and ask for the same thing."""

from __future__ import annotations

from collections.abc import Container, Hashable, Iterable, Sequence
from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.film.layers import SCRATCHES
from finishlog.core.findings import Answer, Deed
from finishlog.core.finish.classes import Method
from finishlog.core.log.entries import Target
from finishlog.core.log.words import Operation
from finishlog.core.published.hands_on import HandsOn
from finishlog.core.shop.things import Face, FaceKind, Part, Step
from finishlog.core.verdict.glue_up import GlueUp
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Verdict

# Makes dust that spoils a wet film, and is vacuumed up before a coat (common practice).
DUSTY = SCRATCHES | {Operation.LEVEL}

_FINISHED = (FaceKind.HIDDEN, FaceKind.SHOW)


class Job(Struct, frozen=True):
    """One thing to do to zones of one part that stand alike.

    `turn`: which face of its piece comes off the points first, hidden ones before show ones.
    `wiped_first`: the wood is wiped with solvent right before this coat. `glue_ups`: what a glue-up
    makes; its `states` are the members' zones.
    """

    part: Part
    step: Step
    states: tuple[ZoneState, ...]
    verdict: Verdict
    coat: tuple[int, int] = (0, 0)
    turn: int = 0
    wiped_first: bool = False
    glue_ups: tuple[GlueUp, ...] = ()

    @property
    def operation(self) -> Operation:
        """What is done."""
        return self.step.operation

    @property
    def targets(self) -> frozenset[Target]:
        """The zones that it is done to."""
        return frozenset(state.target for state in self.states)

    @property
    def cannot_wait(self) -> bool:
        """Tell whether a deadline runs: wood wiped with solvent wants its coat within minutes."""
        return self.verdict.answer is Answer.DEADLINE and self.operation is Operation.COAT

    @property
    def is_show(self) -> bool:
        """Tell whether it is done to a face that is seen."""
        return any(state.face.kind is FaceKind.SHOW for state in self.states)

    @property
    def is_dusty(self) -> bool:
        """Tell whether it makes dust."""
        return self.operation in DUSTY

    @property
    def then(self) -> Job | None:
        """The coat that may follow the same evening; None when no coat comes right after."""
        progress = self.states[0].progress
        following = progress.steps[progress.done + 1 :][:1]
        if not self.is_dusty or progress.next is not self.step or not following:
            return None
        is_coat = following[0].operation is Operation.COAT
        return replace(self, step=following[0], glue_ups=()) if is_coat else None

    @property
    def rooms(self) -> frozenset[int | None]:
        """The rooms that it is done in."""
        return frozenset(state.room.id for state in self.states)


def jobs_of(states: Iterable[ZoneState], unwiped: Container[Target] = ()) -> list[Job]:
    """Put zones that may be worked on into jobs, in the order they come.

    Their verdicts must be of one moment. `unwiped`: the wood there is wiped with solvent first.
    """
    alike: dict[Hashable, list[ZoneState]] = {}
    for state in states:
        step, wipe = step_due(state), state.target in unwiped
        key = (state.part.id, step.operation, step.product, wipe, *_only_a_coat_asks(state, step))
        alike.setdefault(key, []).append(state)
    return [_job(found, found[0].target in unwiped) for found in alike.values()]


def _only_a_coat_asks(state: ZoneState, step: Step) -> tuple[Hashable, ...]:
    """Coats differ by face, by how many there are, and by whether they are scuffed first."""
    if step.operation is not Operation.COAT:
        return ()
    turn = turn_of(state.member.faces, state.face)
    return turn, state.progress.coat_number(step), state.verdict.scuff_first


def _job(states: Sequence[ZoneState], wipe: bool) -> Job:
    first = states[0]
    step = step_due(first)
    is_coat = step.operation is Operation.COAT
    return Job(
        part=first.part,
        step=step,
        states=tuple(states),
        verdict=first.verdict,
        coat=first.progress.coat_number(step) if step in first.progress.steps else (0, 0),
        turn=turn_of(first.member.faces, first.face) if is_coat else 0,
        wiped_first=wipe,
    )


def step_due(state: ZoneState) -> Step:
    """Return what is to be done next; surplus comes off first, whatever the steps say."""
    step = state.progress.next
    if to_wipe_off(state):
        return step if step and step.operation is Operation.WIPE else Step(0, Operation.WIPE)
    assert step is not None
    return step


def after_solvent_wipe(state: ZoneState) -> ZoneState | None:
    """Return a zone as it stands once it is wiped with solvent, when the coat is to follow at once.

    None when that is not what comes next.
    """
    left = state.progress.steps[state.progress.done :]
    if [s.operation for s in left[:2]] != [Operation.SOLVENT_WIPE, Operation.COAT]:
        return None
    return replace(state, progress=replace(state.progress, done=state.progress.done + 1))


def to_wipe_off(state: ZoneState) -> bool:
    """Tell whether the surplus of a coat has to come off before its deadline."""
    return state.verdict.answer is Answer.DEADLINE and state.verdict.deed is Deed.WIPE_OFF


def scuffing(job: Job) -> Job:
    """Return the scuffing that a coat asks for."""
    return replace(job, step=Step(0, Operation.SCUFF), coat=(0, 0), turn=0)


def turn_of(faces: Sequence[Face], face: Face) -> int:
    """Return when a face is coated among those of its piece: hidden ones first, then as listed."""
    kinds = [f for kind in _FINISHED for f in faces if f.kind is kind]
    return kinds.index(face) if face in kinds else len(kinds)


def minutes_at(job: Job, figures: HandsOn, method: Method | None) -> float:
    """Return the minutes at the pieces, without set-up and clean-up."""
    each = figures.each(job.operation, method)
    if job.glue_ups:
        return each.each_min.high * len(job.glue_ups)
    if each.per_piece:
        return each.each_min.high * len({s.piece.id for s in job.states})
    surfaces = {(s.member_piece.id, s.face.id) for s in job.states}
    return each.each_min.high * len(surfaces)


def whole_pieces(states: Sequence[ZoneState], beside: Iterable[ZoneState]) -> list[ZoneState]:
    """Drop the zones of a piece whose other zones have not come as far as a work on the piece."""
    here = {state.target for state in states}
    wanted = {(s.piece.id, step_due(s).operation) for s in states}
    behind = {
        (other.piece.id, operation)
        for other in beside
        for operation in {o for piece, o in wanted if piece == other.piece.id}
        if other.target not in here
        and any(s.operation is operation for s in other.progress.steps[other.progress.done :])
    }
    return [s for s in states if (s.piece.id, step_due(s).operation) not in behind]


def in_batches(job: Job, at_most: int) -> list[Job]:
    """Split a job into even ones of at most so many pieces; glue-ups one after another anyway."""
    if job.glue_ups:
        return [job]
    by_piece: dict[int, list[ZoneState]] = {}
    for state in job.states:
        by_piece.setdefault(state.piece.id, []).append(state)
    pieces = list(by_piece)
    batches = -(-len(pieces) // at_most)
    size = -(-len(pieces) // batches)
    return [
        replace(job, states=tuple(s for piece in pieces[n : n + size] for s in by_piece[piece]))
        for n in range(0, len(pieces), size)
    ]


def closes_first(job: Job) -> datetime | None:
    """Return when the first of its recoat windows closes; None when none does."""
    return min((s.verdict.closes for s in job.states if s.verdict.closes), default=None)


def some_of(job: Job, glue_ups: int) -> Job:
    """Return the first so many glue-ups of a job."""
    first = job.glue_ups[: max(glue_ups, 0)]
    members = {member for due in first for member in due.members}
    states = tuple(s for s in job.states if {s.piece.id, s.member_piece.id} & members)
    return replace(job, glue_ups=first, states=states)
