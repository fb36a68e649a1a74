"""A plan as values: sessions with their tasks, when parts may be handled, whether dates hold.

Every instant is aware UTC. Whatever finds the plan, this is what it answers with.
"""

from __future__ import annotations

from datetime import datetime
from enum import StrEnum

from msgspec import Struct

from finishlog.core.bench.milestones import Milestone
from finishlog.core.findings import Answer, Finding
from finishlog.core.log.entries import AnyEntry
from finishlog.core.log.words import Operation
from finishlog.core.plan.soft_films import Expected
from finishlog.core.shop.things import Part, Project
from finishlog.core.zone.grouping import Label


class Chore(StrEnum):
    """What a task is: work on parts, or what has to be done around it."""

    WORK = "work"
    SET_UP = "set up"
    CLEAN_UP = "clean up"
    VACUUM = "vacuum"


class PlannedTask(Struct, frozen=True):
    """One thing to do. Only work has parts, an operation and entries.

    `label` names pieces and faces; `coat` is (which, of how many). `ready_since`: when the clocks
    allow it (None: at any time). `closes`: the end of the recoat window; `missed`: when it closed,
    where this scuffing is the price; `because`: what else asks for it. `test`: what to try before;
    None: nothing. `lesson`: what went wrong before with the same coat. `wiped`: the surplus comes
    off as you go. `entries` are what the log will hold.
    """

    chore: Chore
    start: datetime
    end: datetime
    operation: Operation | None = None
    product: int | None = None
    part: Part | None = None
    label: Label = Label("")
    coat: tuple[int, int] = (0, 0)
    ready_since: datetime | None = None
    closes: datetime | None = None
    missed: datetime | None = None
    because: Finding | None = None
    test: Finding | None = None
    lesson: Finding | None = None
    wiped: bool = False
    entries: tuple[AnyEntry, ...] = ()


class PlannedSession(Struct, frozen=True):
    """One visit to the shop, between an opening and its closing."""

    opens: datetime
    closes: datetime
    tasks: tuple[PlannedTask, ...]

    @property
    def start(self) -> datetime:
        """When the first task begins."""
        return self.tasks[0].start

    @property
    def end(self) -> datetime:
        """When the last task is done."""
        return self.tasks[-1].end

    @property
    def coats(self) -> tuple[PlannedTask, ...]:
        """The coats of it: the work for which something is opened."""
        return tuple(t for t in self.tasks if t.part is not None and t.product is not None)


class PartDates(Struct, frozen=True):
    """When a part's coats are done, and from when it may be clamped, stacked, packed, used hard.

    None: nothing on it has a figure for that. `joins`: the part is glued up into others.
    """

    part: Part
    coats_done: datetime | None
    clamp: Milestone | None
    stack: Milestone | None
    pack: Milestone | None
    cured: Milestone | None
    joins: bool = False
    light_use: Milestone | None = None


class Promise(StrEnum):
    """Whether a project's due date holds."""

    HOLDS = "holds"
    TIGHT = "holds, but no evening is spare"
    LATE = "late"
    NO_DUE = "no due date"
    UNKNOWN = "cannot be said"


class CoatsByDue(Struct, frozen=True):
    """How many of the coats of a part's steps are on by the due date, on its zone with the fewest.

    `last`: the coat that is the last by then, by its product's id; None: none is on.
    """

    part: Part
    on: int
    of: int
    last: int | None


class ProjectPlan(Struct, frozen=True):
    """One project: packed when, due when, and what lies between.

    `slack_shop_min` are the minutes that the shop is open from packed to due; `slack_h` the elapsed
    hours, below zero when late. `late_openings`: how many visits too late. `spare` is the last
    visit before the due date: it is held for a coat that fails. `starts`: the first task of the
    plan; `why`: what is missing where nothing can be said, and `packed` is then of all the rest.
    `light_use`: from when all of it may be used with care, `light_use_tested`: where a test finds
    it hard enough; None: that cannot be said. `by_due`: of one that is late or cannot be said, how
    far each of its parts has come by the due date.
    """

    project: Project
    promise: Promise
    packed: datetime | None = None
    due: datetime | None = None
    slack_shop_min: float | None = None
    slack_h: float | None = None
    late_openings: int = 0
    spare: tuple[datetime, datetime] | None = None
    starts: datetime | None = None
    why: Finding | None = None
    light_use: datetime | None = None
    light_use_tested: datetime | None = None
    by_due: tuple[CoatsByDue, ...] = ()


class Unplanned(Struct, frozen=True):
    """What could not be planned: which zones, the step that is due, and why not."""

    part: Part
    label: Label
    operation: Operation | None
    answer: Answer | None
    because: Finding
    needs_air: bool = False


class Plan(Struct, frozen=True):
    """Dated work for everything that is open. `stopped`: why it ends before everything is done."""

    now: datetime
    sessions: tuple[PlannedSession, ...]
    parts: tuple[PartDates, ...]
    projects: tuple[ProjectPlan, ...]
    unplanned: tuple[Unplanned, ...]
    boards_passed: tuple[tuple[Part, Finding], ...] = ()
    # The checks that it counts on: of films that were soft within their time.
    counted_on: tuple[Expected, ...] = ()
    stopped: Finding | None = None

    @property
    def missed(self) -> int:
        """Count the recoat windows that close while the shop is shut, or too soon."""
        return sum(1 for s in self.sessions for t in s.tasks if t.missed is not None)
