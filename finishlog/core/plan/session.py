"""One visit to the shop: scuff and sand first, vacuum, hidden faces, show faces, clean up.

One person does one thing at a time, and everything fits between opening and closing. Each job is
looked at once more at the moment when its brush is wet: a plan says nothing that the bench would
not say then.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime

from msgspec import Struct, field
from msgspec.structs import replace

from finishlog.core.log.words import Operation
from finishlog.core.plan.dates import Dates
from finishlog.core.plan.jobs import Job, closes_first, in_batches, scuffing
from finishlog.core.plan.jobs_that_fit import (
    Hands,
    choose,
    in_order,
    minutes,
    that_fit,
    whole_minute,
)
from finishlog.core.plan.planned_entries import by_hand, coat, task_of
from finishlog.core.plan.results import Chore, PlannedTask
from finishlog.core.plan.urgency import NEVER, Urgency
from finishlog.core.plan.waits import Waiting
from finishlog.core.zone.state import ZoneState

# The rooms where dust lies, and from when it is down in each.
Room = int | None


class Floor(Struct):
    """Dust in the shop, from one visit to the next."""

    dirty: set[Room] = field(default_factory=set)
    settled: dict[Room, datetime] = field(default_factory=dict)

    def down(self, rooms: Iterable[Room], moment: datetime) -> datetime:
        """Return when the dust is down in some rooms, not before a moment."""
        return max([moment, *(self.settled[r] for r in rooms if r in self.settled)])


class Visit(Struct):
    """One opening being filled. `at_most` tasks; `following`: when the shop opens next."""

    waiting: Waiting
    urgency: Urgency
    hands: Hands
    floor: Floor
    now: datetime
    closes: datetime
    longest_min: float
    following: datetime | None
    at_most: int
    dates: Dates
    never_fit: list[Job] = field(default_factory=list)
    tasks: list[PlannedTask] = field(default_factory=list)
    wet: int | None = None
    _mixed_at: datetime | None = None

    def fill(self) -> None:
        """Do what can be done, wait for what comes free, and leave the shop clean."""
        while len(self.tasks) < self.at_most:
            if self._round():
                continue
            soonest = self.waiting.next_change(self.now)
            if soonest is None or soonest >= self.closes:
                break
            self._wait(soonest)
        self._scuff_before_it_closes()
        if self.floor.dirty:
            self._vacuum()
        self._put_away()

    def _round(self) -> bool:
        """Take on what fits now; tell whether anything was done."""
        jobs, self.never_fit = that_fit(self.waiting.jobs(self.now), self.longest_min, self.hands)
        dirty, left = bool(self.floor.dirty), self._left()
        taken = choose(jobs, left, self.wet, self.hands, self.urgency, dirty=dirty)
        taken = [job for job in taken if job.cannot_wait] or taken
        taken = taken[: self.at_most - len(self.tasks)]
        before = self._worked()
        self._dusty_work(taken)
        if self._worked() > before:
            # What was sanded or scuffed may be coated tonight: look again.
            return True
        coats = [job for job in taken if job.operation is Operation.COAT]
        if self.floor.dirty & {room for job in coats for room in job.rooms}:
            self._vacuum()
        for job in taken:
            if job.operation is not Operation.COAT and not job.is_dusty:
                self._work(job)
        for job in in_order(coats, self.wet, self.urgency):
            self._coat(job)
        return self._worked() > before

    def _worked(self) -> int:
        return sum(task.chore is Chore.WORK for task in self.tasks)

    def _dusty_work(self, taken: Sequence[Job]) -> None:
        """Take surplus off that may not stay; then sand and scuff, before anything is wet."""
        late = self._too_late_unscuffed(taken)
        for job in taken:
            if job.operation is Operation.WIPE:
                self._work(job)
        for job in taken:
            if job.is_dusty:
                self._work(job)
            elif self.hands.scuff(job) or job in late:
                self._scuff(job, job.verdict.closes)

    def _too_late_unscuffed(self, taken: Sequence[Job]) -> list[Job]:
        """Return the coats whose window closes tonight before their turn comes."""
        dusty = sum(self.hands.at(j) if j.is_dusty else self.hands.scuff(j) for j in taken)
        settling = self.hands.dust() if dusty or self.floor.dirty else 0
        clock, wet = self.now + minutes(dusty + settling), self.wet
        late: list[Job] = []
        coats = [job for job in taken if job.operation is Operation.COAT]
        for job in in_order(coats, self.wet, self.urgency):
            if job.step.product != wet:
                clock += minutes(self.hands.clean_up(wet) + self.hands.set_up(job.step.product))
                wet = job.step.product
            if job.verdict.closes is not None and job.verdict.closes < clock:
                late.append(job)
            clock += minutes(self.hands.at(job))
        return late

    def _left(self) -> float:
        """Return the minutes left once the wet brush is washed."""
        left = self.closes - self.now - minutes(self.hands.clean_up(self.wet))
        return left / minutes(1)

    def _fits(self, length_min: float) -> bool:
        return length_min <= self._left()

    def _wait(self, moment: datetime) -> None:
        """Wait; a brush that would stand longer than washing it takes is washed."""
        in_time = moment + minutes(self.hands.clean_up(self.wet)) <= self.closes
        if not in_time or moment - self.now > minutes(self._around(self.wet)):
            self._put_away()
        self.now = max(self.now, moment)

    def _around(self, product: int | None) -> float:
        return self.hands.set_up(product) + self.hands.clean_up(product)

    def _put_away(self) -> None:
        """Wash the brush, see to the rags."""
        if self.wet is None:
            return
        end = self.now + minutes(self.hands.clean_up(self.wet))
        self.tasks.append(PlannedTask(Chore.CLEAN_UP, self.now, end, product=self.wet))
        self.now, self.wet = end, None

    def _vacuum(self) -> None:
        """Take up the dust where it lies; what is in the air then settles."""
        figures = self.hands.facts.hands_on
        if not self._fits(figures.vacuum_min.high):
            return
        end = self.now + minutes(figures.vacuum_min.high)
        self.tasks.append(PlannedTask(Chore.VACUUM, self.now, end))
        self.now = end
        down = end + minutes(figures.settle_min.high)
        self.floor.settled.update(dict.fromkeys(self.floor.dirty, down))
        self.floor.dirty.clear()

    def _scuff(self, job: Job, missed: datetime | None = None) -> None:
        """Scuff what a coat asks to have scuffed."""
        work = scuffing(job)
        if self.waiting.may_work(work, whole_minute(self.now)) is not None:
            closed = [c for s in job.states if (c := _closed(s, self.now)) is not None]
            self._do(work, min(closed, default=missed))

    def _scuff_before_it_closes(self) -> None:
        """Scuff tonight what would be too late, unscuffed, at the next opening."""
        if self.following is None:
            return
        for job in self.waiting.jobs(self.now):
            closes, product = job.verdict.closes, job.step.product
            if job.operation is not Operation.COAT or closes is None or job.verdict.scuff_first:
                continue
            if self.following + minutes(self.hands.set_up(product)) > closes:
                self._scuff(job, closes)

    def _work(self, job: Job) -> None:
        """Do work by hand."""
        again = job if job.glue_ups else self.waiting.still_may(job, whole_minute(self.now))
        if again is not None:
            self._do(again)

    def _do(self, job: Job, missed: datetime | None = None) -> None:
        if not self._fits(self.hands.at(job)):
            return
        if self.hands.at(job) > self._around(self.wet):
            self._put_away()
        start = whole_minute(self.now)
        end = start + minutes(self.hands.at(job))
        if end + minutes(self.hands.clean_up(self.wet)) > self.closes:
            return
        for due in job.glue_ups:
            self.dates.before_glue_up(due.members)
        entries = by_hand(self.waiting.ahead, job, start, end)
        self._done(task_of(job, start, end, entries, missed))
        if job.is_dusty:
            self.floor.dirty |= job.rooms

    def _coat(self, job: Job) -> None:
        """Put a coat on, from set-up to the last piece; not when it may not be done by then."""
        product = job.step.product
        assert product is not None
        if self.floor.dirty & job.rooms:
            return
        is_wet = self._is_wet(product)
        ready = self.now + minutes(0 if is_wet else self._changing_to(product))
        start = whole_minute(self.floor.down(job.rooms, ready))
        end = start + minutes(self.hands.at(job))
        if end + minutes(self.hands.clean_up(product)) > self.closes:
            return
        again = self.waiting.still_may(job, start)
        if again is None or again.verdict.scuff_first:
            return
        again = self._before_it_closes(again, start)
        end = start + minutes(self.hands.at(again))
        if not is_wet:
            self._put_away()
            set_up = start - minutes(self.hands.set_up(product))
            self.tasks.append(PlannedTask(Chore.SET_UP, set_up, start, product=product))
            self.wet, self._mixed_at = product, start
        entries = coat(self.waiting.ahead, again, start, end, self.hands)
        self._done(task_of(again, start, end, entries))

    def _before_it_closes(self, job: Job, start: datetime) -> Job:
        """Take as many pieces as are coated before a window closes; the first one in any case."""
        closes = closes_first(job)
        if closes is None or start + minutes(self.hands.at(job)) <= closes:
            return job
        each = self.hands.at(job) / len({state.piece.id for state in job.states})
        soonest = sorted(job.states, key=lambda state: state.verdict.closes or NEVER)
        job = replace(job, states=tuple(soonest))
        return in_batches(job, max(1, int((closes - start) / minutes(each))))[0]

    def _is_wet(self, product: int) -> bool:
        """Tell whether the brush is wet with a product, and the mix still good."""
        of = self.hands.product_class(product)
        if self.wet != product or of is None or self._mixed_at is None:
            return False
        pot_life = of.pot_life_h
        return pot_life is None or self.now < self._mixed_at + minutes(60 * pot_life.low_h)

    def _changing_to(self, product: int) -> float:
        return self.hands.clean_up(self.wet) + self.hands.set_up(product)

    def _done(self, task: PlannedTask) -> None:
        self.tasks.append(task)
        self.now = task.end
        self.waiting.forget(self.waiting.ahead.put(*task.entries))
        if task.part is not None and task.part.is_board:
            self.waiting.forget_undated()


def _closed(state: ZoneState, now: datetime) -> datetime | None:
    """Return when the recoat window of a film closed; None when it has none or is open."""
    closes = state.top.closes(now) if state.top else None
    return closes if closes is not None and closes < now else None
