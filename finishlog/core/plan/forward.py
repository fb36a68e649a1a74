"""The plan made forward: opening by opening, the most urgent that fits, on the one drying clock."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta, tzinfo

from msgspec import Struct, field

from finishlog.core.air.room import RoomAir
from finishlog.core.bench.cans import Cans
from finishlog.core.clock.pace import Paces
from finishlog.core.film.lessons import Lessons
from finishlog.core.findings import Finding, finding
from finishlog.core.log.entries import Work
from finishlog.core.plan.dates import Dates, after_their_work, project_plans
from finishlog.core.plan.jobs import DUSTY
from finishlog.core.plan.jobs_that_fit import Hands
from finishlog.core.plan.results import Plan, PlannedSession, Unplanned
from finishlog.core.plan.session import Floor, Visit
from finishlog.core.plan.shop_ahead import ShopAhead
from finishlog.core.plan.unplanned import unplanned
from finishlog.core.plan.urgency import Urgency
from finishlog.core.plan.waits import Waiting
from finishlog.core.published.facts import Facts
from finishlog.core.shop.hours import Interval, intervals
from finishlog.core.shop.things import Log, Shop

# Our own bounds: further ahead no air and no evening is known.
HORIZON = timedelta(days=180)
MOST_TASKS = 400


class Behind(Struct, frozen=True):
    """Work that is planned already: until when, and what it makes of the shop."""

    until: datetime
    dates: Dates


class Forward(Struct, dict=True):
    """The shop as far as it is planned, and the visits so far."""

    shop: Shop
    log: Log
    facts: Facts
    now: datetime
    zone: tzinfo
    due: Mapping[int, datetime]
    paces: Paces
    lessons: Lessons
    early: bool = False
    # The air of the rooms and what coats came from, where they are known already.
    rooms: Mapping[int, RoomAir] = field(default_factory=dict)
    cans: Cans | None = None
    # The shop ahead of work that is planned already, and when that ends; None: nothing is.
    behind: Behind | None = None
    sessions: list[PlannedSession] = field(default_factory=list)
    stopped: Finding | None = None

    def __post_init__(self) -> None:
        """Look at the shop as it is."""
        ahead = self.behind.dates.ahead if self.behind else self.again()
        self.rooms, self.cans = ahead.rooms, ahead.cans
        self.waiting = Waiting(ahead, early=self.early)
        self.urgency = Urgency(self.shop, self.facts, self.due)
        self.dates = self.behind.dates if self.behind else Dates(ahead, self.now)
        self.last: Visit | None = None

    def again(self) -> ShopAhead:
        """Look at the shop as it is once more, with nothing carried out."""
        return ShopAhead(
            self.shop,
            self.log,
            self.facts,
            self.now,
            self.zone,
            paces=self.paces,
            lessons=self.lessons,
            rooms=self.rooms,
            cans=self.cans,
        )

    def from_(self, behind: Behind, sessions: Sequence[PlannedSession]) -> Forward:
        """Return what plans on behind some visits."""
        return Forward(
            self.shop,
            self.log,
            self.facts,
            self.now,
            self.zone,
            self.due,
            self.paces,
            self.lessons,
            self.early,
            behind=behind,
            sessions=[*sessions],
        )

    def run(self) -> None:
        """Fill one opening after another until nothing is left to do or to wait for."""
        begins = self.behind.until if self.behind else self.now
        openings = intervals(self.shop.hours, begins, self.now + HORIZON)
        longest = max((b - a for a, b in openings), default=timedelta()) / timedelta(minutes=1)
        floor = self._floor()
        for n, opening in enumerate(openings):
            self.waiting.forget_undated()
            following = openings[n + 1][0] if n + 1 < len(openings) else None
            self.last = self._visit(opening, following, floor, longest)
            self.last.fill()
            if self.last.tasks:
                self.sessions.append(PlannedSession(*opening, tuple(self.last.tasks)))
            if self._stops(opening):
                break
        if openings and not self.stopped and self._is_left(openings[-1][1]):
            self.stopped = finding("plan-too-far", days=float(HORIZON.days))

    def _visit(
        self, opening: Interval, following: datetime | None, floor: Floor, longest: float
    ) -> Visit:
        return Visit(
            waiting=self.waiting,
            urgency=self.urgency,
            hands=Hands(self.shop, self.facts),
            floor=floor,
            now=opening[0],
            closes=opening[1],
            longest_min=longest,
            following=following,
            at_most=MOST_TASKS - self._tasks(),
            dates=self.dates,
        )

    def _tasks(self) -> int:
        return sum(len(session.tasks) for session in self.sessions)

    def _stops(self, opening: Interval) -> bool:
        """Tell whether it ends here: all is done, or there is too much of it."""
        if not self._is_left(opening[1]):
            return True
        if self._tasks() >= MOST_TASKS:
            self.stopped = finding("plan-full", tasks=float(self._tasks()))
        return self.stopped is not None

    def _is_left(self, moment: datetime) -> bool:
        """Tell whether something may be done later that was not done yet."""
        if self.waiting.next_change(moment) is not None:
            return True
        never = {job.targets for job in self.last.never_fit} if self.last else set()
        return any(job.targets not in never for job in self.waiting.jobs(moment))

    def _floor(self) -> Floor:
        """Return where dust is still in the air from what was logged lately."""
        hands = Hands(self.shop, self.facts)
        room = {z.target: z.room.id for z in self.waiting.ahead.zones}
        floor = Floor()
        for entry in self.log.entries:
            if isinstance(entry, Work) and entry.operation in DUSTY:
                down = entry.when.latest + timedelta(minutes=hands.dust())
                if down > self.now:
                    floor.settled.update({room[t]: down for t in entry.targets if t in room})
        return floor

    def left(self) -> tuple[Unplanned, ...]:
        """Return what found no place."""
        return unplanned(self.waiting, self.last, self.shop, self.stopped)

    def plan(self) -> Plan:
        """Return what was found."""
        boards = self.waiting.hopeless_boards
        left = self.left()
        parts = after_their_work(self.dates.parts(), self.sessions)
        return Plan(
            now=self.now,
            sessions=tuple(self.sessions),
            parts=parts,
            projects=project_plans(self.waiting.ahead, self.due, self.sessions, parts, left),
            unplanned=left,
            boards_passed=tuple((p, boards[p.id]) for p in self.shop.parts if p.id in boards),
            counted_on=tuple(self.waiting.ahead.counted_on),
            stopped=self.stopped,
        )
