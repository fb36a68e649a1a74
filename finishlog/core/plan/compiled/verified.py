"""What the search found, held against the bench task by task, and written as the log will have it.

Nothing is shown that the bench would not say: where it disagrees it says by which rule, and from
when on it would agree.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from msgspec import Struct, field

from finishlog.core.findings import Answer, Finding, plainly
from finishlog.core.log.words import Operation
from finishlog.core.plan.compiled.cast import Doing
from finishlog.core.plan.compiled.shop import Compiled
from finishlog.core.plan.dates import Dates
from finishlog.core.plan.jobs import Job, after_solvent_wipe, scuffing, step_due
from finishlog.core.plan.jobs_that_fit import Hands
from finishlog.core.plan.planned_entries import by_hand, coat, task_of
from finishlog.core.plan.results import PlannedTask
from finishlog.core.plan.search.shop import Plan, closes
from finishlog.core.plan.shop_ahead import ShopAhead
from finishlog.core.plan.waits import held_up
from finishlog.core.shop.things import Step
from finishlog.core.verdict.glue_up import GlueUp
from finishlog.core.zone.around import Around
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT, Verdict

# The bench has another step due than the search; a film scuffed first.
_OUT_OF_STEP = plainly("out-of-step", Answer.WAITS)
_TO_SCUFF = plainly("to-scuff-first", Answer.SCUFF)


class Begun(Struct, frozen=True, order=True):
    """A task that begins, at a minute; `after`: the task itself, not the scuffing before it."""

    start: int
    after: bool
    task: int


class Disagreement(Struct, frozen=True):
    """What the bench has against a task that begins; until when (None: no date)."""

    of: Begun
    because: Finding
    until: datetime | None


class Verified(Struct):
    """The work of a plan in order, and what the bench has against it."""

    tasks: list[PlannedTask] = field(default_factory=list)
    against: list[Disagreement] = field(default_factory=list)


def in_order(found: Plan) -> list[Begun]:
    """Return what begins in a plan, in the order of time; what found no place is left out."""
    placed = [(n, start) for n, start in enumerate(found.starts) if start >= 0]
    scuffed = [(n, start) for n, start in found.abrades if found.starts[n] >= 0]
    every = [Begun(start, True, n) for n, start in placed]
    return sorted([*every, *(Begun(start, False, n) for n, start in scuffed)])


class Bench(Struct):
    """Carries a plan out on the shop ahead, and is asked before each task.

    `dates`: noted as members are glued up; `ends`: of the tasks so far.
    """

    compiled: Compiled
    ahead: ShopAhead
    hands: Hands
    dates: Dates | None = None
    ends: dict[int, int] = field(default_factory=dict)

    def verify(self, found: Plan) -> Verified:
        """Ask of every task of a plan, and carry it out."""
        done = Verified()
        for each in in_order(found):
            against = self.against(each, self.compiled.origin.at(each.start))
            if against is not None:
                done.against.append(against)
            made = self.carry_out(each)
            if made is not None:
                done.tasks.append(made)
        return done

    def against(self, begun: Begun, moment: datetime) -> Disagreement | None:
        """Return what the bench has against a task that would begin at a moment."""
        doing = self.compiled.doings[begun.task]
        if doing.deed.operation is Operation.GLUE_UP:
            return self._against_glue_up(begun, doing, moment)
        near = self.ahead.around(moment)
        for state in self._states(begun, near):
            found = self._against(begun, doing, state, near)
            if found is not None:
                return found
        return None

    def _against(
        self, begun: Begun, doing: Doing, state: ZoneState, near: Around
    ) -> Disagreement | None:
        if not begun.after or (doing.is_price and not _wants_scuffing(state)):
            # No step asks for it: it is the price of the coat behind it.
            verdict = self.ahead.verdict_on_work(state, Operation.SCUFF, near)
            return _unless_it_may(begun, verdict, near.now)
        step = step_due(state) if state.progress.next is not None else None
        if step is None or (step.operation, step.product) != (doing.operation, doing.product):
            return Disagreement(begun, _OUT_OF_STEP, None)
        held = held_up(state, near)
        if held is not None:
            return Disagreement(begun, held.because, held.until)
        is_coat = doing.operation is Operation.COAT
        return (
            Disagreement(begun, _TO_SCUFF, None) if is_coat and state.verdict.scuff_first else None
        )

    def _states(self, begun: Begun, near: Around) -> tuple[ZoneState, ...]:
        """Return the zones of a task, with their verdicts."""
        doing = self.compiled.doings[begun.task]
        zones = self.ahead.zones_at(doing.on)
        if begun.after and doing.operation is Operation.COAT:
            zones = tuple(after_solvent_wipe(z) or z for z in zones)
        return self.ahead.judged(zones, near)

    def carry_out(self, begun: Begun) -> PlannedTask | None:
        """Do a task, whatever the bench says to it; None: there is nothing to glue up."""
        origin, task = self.compiled.origin, self.compiled.shop.tasks[begun.task]
        start, long = origin.at(begun.start), task.minutes
        if not begun.after and task.window is not None:
            long = task.window.abrade
        job = self._job(begun, start)
        if job is None:
            return None
        end = origin.at(begun.start + long)
        if begun.after:
            self.ends[begun.task] = begun.start + long
        if job.operation is Operation.COAT:
            entries = coat(self.ahead, job, start, end, self.hands)
        else:
            entries = by_hand(self.ahead, job, start, end)
        if self.dates is not None:
            for due in job.glue_ups:
                self.dates.before_glue_up(due.members)
        made = task_of(job, start, end, entries, self._missed(begun, job))
        self.ahead.put(*entries)
        return made

    def _missed(self, begun: Begun, job: Job) -> datetime | None:
        """Return when the window closed that a scuffing makes up for; None: wood has none."""
        window = self.compiled.shop.tasks[begun.task].window
        if begun.after or window is None or job.states[0].top is None:
            return None
        end = 0 if window.task is None else self.ends[window.task]
        return self.compiled.origin.at(closes(window.closes, end))

    def _job(self, begun: Begun, start: datetime) -> Job | None:
        doing = self.compiled.doings[begun.task]
        if doing.operation is Operation.GLUE_UP:
            return self._gluing(doing, start)
        states = self._states(begun, self.ahead.around(start))
        now = {z.target: z.progress.done for z in self.ahead.zones_at(doing.on)}
        job = Job(
            doing.part,
            _step(doing, states),
            states,
            states[0].verdict,
            doing.deed.task.coat,
            wiped_first=any(now[s.target] < s.progress.done for s in states),
        )
        return job if begun.after else scuffing(job)

    def _gluing(self, doing: Doing, start: datetime) -> Job | None:
        due = self._glue_ups(doing, start)
        if not due:
            return None
        members = {member for each in due for member in each.members}
        states = [z for z in self.ahead.zones if {z.piece.id, z.member_piece.id} & members]
        step = Step(0, Operation.GLUE_UP)
        return Job(doing.part, step, tuple(states), due[0].verdict, glue_ups=tuple(due))

    def _glue_ups(self, doing: Doing, start: datetime) -> list[GlueUp]:
        return [g for g in self.ahead.glue_ups(start) if g.part.id == doing.part.id]

    def _against_glue_up(self, begun: Begun, doing: Doing, moment: datetime) -> Disagreement | None:
        due = self._glue_ups(doing, moment)
        found = (_unless_it_may(begun, each.verdict, moment) for each in due)
        none = None if due else Disagreement(begun, _OUT_OF_STEP, None)
        return next(filter(None, found), none)


def _wants_scuffing(state: ZoneState) -> bool:
    return state.progress.next is not None and step_due(state).operation is Operation.SCUFF


def _unless_it_may(begun: Begun, verdict: Verdict, now: datetime) -> Disagreement | None:
    late = verdict.high is not None and verdict.high > now
    if verdict.answer in MAY_ACT and not late:
        return None
    return Disagreement(begun, verdict.binds, verdict.high)


def _step(doing: Doing, states: Sequence[ZoneState]) -> Step:
    """Return the step that a task is: the one that is due, else one that no steps ask for."""
    due = (s.progress.next for s in states)
    mine = (doing.operation, doing.product)
    same = (s for s in due if s is not None and (s.operation, s.product) == mine)
    return next(same, Step(0, *mine))
