"""What may be done at a moment of the plan, what waits, for what, and until when."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime

from msgspec import Struct, field

from finishlog.core.findings import Answer, Deed, Finding, plainly
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Target
from finishlog.core.log.words import Operation
from finishlog.core.plan.jobs import (
    DUSTY,
    Job,
    after_solvent_wipe,
    jobs_of,
    step_due,
    to_wipe_off,
    whole_pieces,
)
from finishlog.core.plan.shop_ahead import ShopAhead, air_changes
from finishlog.core.rules.near.wet_nearby import after
from finishlog.core.shop.things import Step
from finishlog.core.verdict.edges import follows_its_faces
from finishlog.core.verdict.glue_up import GlueUp
from finishlog.core.zone.around import Around
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT, Verdict

# Nothing says when a film bears the work: then all of these must be behind.
_DRY = (Stage.TACK_FREE, Stage.RECOAT, Stage.SAND)
_RUNS = frozenset({Answer.DRYING, Answer.DEAD_ZONE, Answer.WAITS})


class Held(Struct, frozen=True):
    """Why nothing may be done to a zone, and until when; None: no date, whatever time goes by."""

    until: datetime | None
    because: Finding

    @property
    def answer(self) -> Answer:
        """The answer that it gives."""
        assert self.because.answer is not None
        return self.because.answer


class Waiting(Struct):
    """Remembers until when each zone waits, so that it is not asked again before."""

    ahead: ShopAhead
    # Every film is taken as soon as it may be tested.
    early: bool = False
    held: dict[Target, Held] = field(default_factory=dict)
    # Sample boards that cannot be ready first, with the reason; nothing waits for them.
    hopeless_boards: dict[int, Finding] = field(default_factory=dict)
    _unwiped: set[Target] = field(default_factory=set)
    _seen: tuple[datetime, int] | None = None
    _found: list[Job] = field(default_factory=list)

    def jobs(self, now: datetime) -> list[Job]:
        """Return everything that may be done at a moment."""
        seen = (now, self.ahead.version)
        if self._seen != seen:
            self._seen, self._found = seen, self._all_jobs(now)
        return self._found

    def _all_jobs(self, now: datetime) -> list[Job]:
        near = self.ahead.around(now)
        unmade = {g.piece.id for g in self.ahead.glue_ups(now)}
        awake = [z for z in self.ahead.zones if z.piece.id not in unmade and self._is_awake(z, now)]
        may = [z for z in self._judged(awake, near) if self._may(z, near)]
        return [*self._jobs(may, now), *self._glue_ups(now)]

    def _jobs(self, may: Sequence[ZoneState], now: datetime) -> Iterator[Job]:
        figures = self.ahead.facts.hands_on
        of_pieces = [s for s in may if figures.each(step_due(s).operation).per_piece]
        if of_pieces:
            whole = whole_pieces(of_pieces, self.ahead.zones)
            apart = {s.target for s in of_pieces} - {s.target for s in whole}
            may = [s for s in may if s.target not in apart]
        for job in jobs_of(may, self._unwiped):
            if not self._board_first(job, now) and not self._another_face_first(job):
                yield job

    def _glue_ups(self, now: datetime) -> Iterator[Job]:
        """Yield the glue-ups that may be made, those of one assembly together."""
        by_part: dict[int, list[GlueUp]] = {}
        for due in self.ahead.glue_ups(now):
            if due.verdict.answer in MAY_ACT:
                by_part.setdefault(due.part.id, []).append(due)
        for found in by_part.values():
            members = {member for due in found for member in due.members}
            states = [z for z in self.ahead.zones if {z.piece.id, z.member_piece.id} & members]
            step, part, verdict = Step(0, Operation.GLUE_UP), found[0].part, found[0].verdict
            yield Job(part, step, tuple(states), verdict, glue_ups=tuple(found))

    def _is_awake(self, state: ZoneState, now: datetime) -> bool:
        running = state.top is not None and state.top.wipe_off_by() is not None
        if state.progress.next is None and not running:
            return False
        held = self.held.get(state.target)
        return held is None or (held.until is not None and held.until <= now)

    def _judged(self, states: Sequence[ZoneState], near: Around) -> tuple[ZoneState, ...]:
        """Give zones their verdicts; of a coat where the wood is wiped with solvent first."""
        mine = {state.target for state in states}
        wiped = {s.target: after for s in states if (after := after_solvent_wipe(s)) is not None}
        self._unwiped = (self._unwiped - mine) | wiped.keys()
        return self.ahead.judged([wiped.get(s.target, s) for s in states], near)

    def _may(self, state: ZoneState, near: Around) -> bool:
        if not is_asked(state):
            return False
        held = held_up(state, near, early=self.early)
        if held is None:
            self.held.pop(state.target, None)
            return True
        self.held[state.target] = held
        if state.part.is_board and held.until is None and held.answer is not Answer.WAITS:
            self.hopeless_boards[state.part.id] = held.because
        return False

    def still_may(self, job: Job, now: datetime) -> Job | None:
        """Look at a job again at the moment of doing it; None when it may not be done then."""
        # Only dust asks what is wet everywhere in the room.
        near = self.ahead.around(now, () if job.is_dusty else job.targets)
        judged = self._judged(self.ahead.zones_at(job.targets), near)
        if not judged or not all(map(is_asked, judged)):
            return None
        if any(held_up(s, near, early=self.early) for s in judged):
            return None
        again = jobs_of(judged, self._unwiped)
        if len(again) != 1 or again[0].step != job.step or again[0].wiped_first != job.wiped_first:
            return None
        return again[0]

    def may_work(self, job: Job, now: datetime) -> Verdict | None:
        """Return the verdict on work that no step asks for; None when it may not be done."""
        verdict, near = None, self.ahead.around(now)
        for state in self.ahead.zones_at(job.targets):
            verdict = self.ahead.verdict_on_work(state, job.operation, near)
            late = verdict.high is not None and verdict.high > now
            if verdict.answer not in MAY_ACT or (late and not self.early):
                return None
        return verdict

    def forget(self, touched: Iterable[Target]) -> None:
        """Ask zones again: something was done to them, or beside them."""
        for target in touched:
            self.held.pop(target, None)

    def forget_undated(self) -> None:
        """Ask what has no date again: something else may have changed since."""
        for target in [t for t, held in self.held.items() if held.until is None]:
            del self.held[target]

    def next_change(self, after: datetime) -> datetime | None:
        """Return the next moment at which something that waits may be done."""
        moments = [h.until for h in self.held.values() if h.until is not None and h.until > after]
        moments += [
            g.verdict.high
            for g in self.ahead.glue_ups(after)
            if g.verdict.high is not None and g.verdict.high > after
        ]
        return min(moments, default=None)

    def _board_first(self, job: Job, now: datetime) -> bool:
        """Hold the first coat of a product until the project's sample board has had its own."""
        if job.operation is not Operation.COAT or job.part.is_board or job.coat[0] > 1:
            return False
        boards = [
            z
            for z in self.ahead.zones
            if z.part.is_board
            and z.part.project == job.part.project
            and z.part.id not in self.hopeless_boards
        ]
        until = [m for z in boards if (m := _board_dry(z, job.step.product, now)) is not None]
        pending = [z for z in boards if _board_wants(z, job.step.product)]
        if not until and not pending:
            return False
        for target in job.targets:
            moment = None if pending else max(until)
            board = (pending or boards)[0].part.called
            self.held[target] = Held(moment, plainly("board-first", Answer.WAITS, board=board))
        return True

    def _another_face_first(self, job: Job) -> bool:
        """Hold a coat until every face of the pieces has had the product that comes before.

        Their edges get the coats of all faces: no stain goes over the varnish that ran round them.
        """
        if job.operation is not Operation.COAT:
            return False
        pieces = {state.member_piece.id for state in job.states}
        of_pieces = [z for z in self.ahead.zones if z.member_piece.id in pieces]
        edged = {z.member_piece.id for z in of_pieces if follows_its_faces(z)}
        return any(
            z.member_piece.id in edged and _wants_before(z, job.step)
            for z in of_pieces
            if z.target not in job.targets
        )


def _wants_before(zone: ZoneState, coat: Step) -> bool:
    """Tell whether a zone is still to get another product before some coat of its steps."""
    left = zone.progress.steps[zone.progress.done :]
    return any(
        s.operation is Operation.COAT and s.position < coat.position and s.product != coat.product
        for s in left
    )


def is_asked(state: ZoneState) -> bool:
    """Tell whether a zone asks for anything: a step, or its surplus off."""
    return state.progress.next is not None or to_wipe_off(state)


def held_up(state: ZoneState, near: Around, *, early: bool = False) -> Held | None:
    """Return why a zone may not be worked on, by its verdict; None when it may.

    Between the low and the high end of a figure a person may test; a plan waits for the high end,
    an early one for the low.
    """
    verdict, now = state.verdict, near.now
    if to_wipe_off(state):
        return None
    if verdict.answer in MAY_ACT:
        late = verdict.high if verdict.high is not None else dry_by(state)
        if verdict.answer is Answer.TEST and late is not None and late > now and not early:
            return Held(late, verdict.binds)
        return _dust(state, near)
    if verdict.answer is Answer.DEADLINE:
        coat = verdict.deed is Deed.COAT and step_due(state).operation is Operation.COAT
        return None if coat else Held(verdict.closes, verdict.binds)
    until = verdict.high if verdict.answer in _RUNS else None
    if early and verdict.answer is Answer.DRYING:
        until = verdict.low or until
    if verdict.answer is Answer.NOT_IN_THIS_AIR:
        until = verdict.high or air_changes(state.room, now)
    return Held(until if until and until > now else None, verdict.binds)


def dry_by(state: ZoneState) -> datetime | None:
    """Return when a film is dry by every figure that there is."""
    times = [state.stages[stage].high for stage in _DRY if stage in state.stages]
    return max((t for t in times if t is not None), default=None)


def _dust(state: ZoneState, near: Around) -> Held | None:
    """Hold dusty work that the verdict lets pass while films in the room are wet."""
    wet = near.spoilt_by_dust(state) if step_due(state).operation in DUSTY else None
    if wet is None:
        return None
    return Held(wet.until, after(wet, "dust-on-wet"))


def _board_wants(board: ZoneState, product: int | None) -> bool:
    """Tell whether a board is still to get a product."""
    left = board.progress.steps[board.progress.done :]
    return any(s.operation is Operation.COAT and s.product == product for s in left)


def _board_dry(board: ZoneState, product: int | None, now: datetime) -> datetime | None:
    """Return until when a board's newest coat cannot be judged; None when it can."""
    if board.top is None or board.top.coat.product != product:
        return None
    touch = board.stages.get(Stage.TOUCH)
    return touch.high if touch and touch.high is not None and touch.high > now else None
