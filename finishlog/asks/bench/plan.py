"""What to do on which evening, and do the due dates hold?"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from datetime import datetime

from msgspec import Struct

from finishlog.asks.look.acts_behind import acts_behind
from finishlog.asks.look.look import Look, look
from finishlog.asks.look.standing import product_name
from finishlog.clock import Clock
from finishlog.core.air.psychrometrics import Air
from finishlog.core.bench.milestones import Milestone
from finishlog.core.findings import Level
from finishlog.core.plan.plan import plan as plan_ahead
from finishlog.core.plan.results import (
    Chore,
    PartDates,
    Plan,
    PlannedSession,
    PlannedTask,
    ProjectPlan,
    Promise,
    Unplanned,
)
from finishlog.core.published.facts import Facts
from finishlog.core.rules.coating_air import air_findings
from finishlog.core.shop.names import called
from finishlog.core.shop.things import Part, Shop
from finishlog.core.zone.grouping import describe
from finishlog.errors import NotFound, Unknown, UsageFault
from finishlog.picking import pick_parts
from finishlog.store.database import Database


class AirExpected(Struct, frozen=True):
    """The air that the plan counts on in one room: as read last; None: it was never read.

    `as_usual`: from then on as the room usually goes on.
    """

    room: str
    air: Air | None
    read_at: datetime | None
    coldest_night_c: float | None
    acts: tuple[int, ...] = ()
    as_usual: bool = False


class TaskLine(Struct, frozen=True):
    """One thing to do. Times are UTC; None: there is no such time.

    `self_heating`: what it puts on or cleans up makes rags that may catch fire.
    """

    chore: Chore
    start: datetime
    end: datetime
    operation: str
    product: str
    part: str
    label: str
    coat: int
    coats: int
    ready_since: datetime | None
    closes: datetime | None
    missed: datetime | None
    test: str
    wiped: bool
    self_heating: bool
    # What it rests on, by the numbers of `history`; set-up and clean-up rest on nothing.
    acts: tuple[int, ...] = ()


class SessionLine(Struct, frozen=True):
    """One visit to the shop."""

    opens: datetime
    closes: datetime
    start: datetime
    end: datetime
    tasks: tuple[TaskLine, ...]


class HandlingDate(Struct, frozen=True):
    """From when a stage may be counted on; `why` says what stands against a date."""

    at: datetime | None
    why: str


class PartLine(Struct, frozen=True):
    """When a part's coats are done and from when it may be handled; None: no figure for that."""

    part: str
    label: str
    joins: bool
    coats_done: datetime | None
    clamp: HandlingDate | None
    stack: HandlingDate | None
    pack: HandlingDate | None
    fully_hard: HandlingDate | None
    acts: tuple[int, ...] = ()


class ProjectLine(Struct, frozen=True):
    """Whether one project's due date holds; where that cannot be said, `packed` is the rest's.

    `light_use`: from when all of it may be used with care; None: that cannot be said.
    """

    project: str
    promise: Promise
    starts: datetime | None
    packed: datetime | None
    due: datetime | None
    slack_shop_min: float | None
    slack_h: float | None
    late_openings: int
    spare_opens: datetime | None
    spare_closes: datetime | None
    why: str
    light_use: datetime | None = None
    acts: tuple[int, ...] = ()


class LeftLine(Struct, frozen=True):
    """What is not in the plan, and why; `needs_air`: only other air would help.

    `rooms`: those whose air suits its next coat now.
    """

    part: str
    label: str
    operation: str
    because: str
    needs_air: bool
    acts: tuple[int, ...] = ()
    rooms: tuple[str, ...] = ()


class PlanAnswer(Struct, frozen=True):
    """The plan of what was asked for; everything open shares the same two hands."""

    now: datetime
    air: tuple[AirExpected, ...]
    projects: tuple[ProjectLine, ...]
    sessions: tuple[SessionLine, ...]
    parts: tuple[PartLine, ...]
    unplanned: tuple[LeftLine, ...]
    boards_passed: tuple[LeftLine, ...]
    missed_windows: int
    hours_known: bool
    stopped: str


def plan(
    database: Database,
    facts: Facts,
    clock: Clock,
    typed: Sequence[str] = (),
    due: datetime | None = None,
) -> PlanAnswer:
    """Plan everything open and answer for the projects and parts that were typed.

    `due` is asked for one project and comes before the date on record.
    """
    with database.reading() as connection:
        seen = look(connection, facts, clock)
    wanted = _wanted(seen.shop, typed)
    dues = {} if due is None else {_one_project(wanted): due}
    made = plan_ahead(seen.shop, seen.log, facts, clock.now, clock.zone, dues, seen.paces)
    return _answer(made, seen, facts, frozenset(part.id for part in wanted))


def _wanted(shop: Shop, typed: Sequence[str]) -> tuple[Part, ...]:
    """Return the parts that were typed, those of a project by its name; all without a word."""
    if not typed:
        return shop.parts
    found: dict[int, Part] = {}
    for word in typed:
        projects = called(word, shop.projects, lambda project: project.name)
        parts = [p for p in shop.parts if any(p.project == each.id for each in projects)]
        found |= {part.id: part for part in parts or _parts(shop, word)}
    return tuple(found.values())


def _parts(shop: Shop, word: str) -> list[Part]:
    try:
        return [part for part, _ in pick_parts(shop, [word])]
    except Unknown:
        there_are = ", ".join(dict.fromkeys(p.project_name for p in shop.parts)) or "none yet"
        raise NotFound(f"no project or part is called {word!r}", f"projects: {there_are}") from None


def _one_project(parts: Sequence[Part]) -> int:
    projects = {part.project: part.project_name for part in parts}
    if len(projects) != 1:
        names = " or ".join(projects.values()) or "PROJECT"
        raise UsageFault(
            "a due date is asked for one project",
            f"say which: finishlog plan {names} --due DATE",
        )
    return next(iter(projects))


def _answer(made: Plan, seen: Look, facts: Facts, wanted: frozenset[int]) -> PlanAnswer:
    shop = seen.shop
    projects = {part.project for part in shop.parts if part.id in wanted}
    sessions = tuple(s for each in made.sessions if (s := _session(each, seen, facts, wanted)))
    rooms = {z.room.id for z in seen.bench.zones if z.part.id in wanted}
    return PlanAnswer(
        now=made.now,
        air=tuple(_air(room, seen) for room in shop.rooms if room in rooms),
        projects=tuple(_project(p, seen) for p in made.projects if p.project.id in projects),
        sessions=sessions,
        parts=tuple(_part(d, seen) for d in made.parts if d.part.id in wanted),
        unplanned=tuple(_left(u, seen, facts) for u in made.unplanned if u.part.id in wanted),
        boards_passed=tuple(
            LeftLine(board.path, board.name, "", why, False, _acts(seen, {board.id}))
            for board, why in made.boards_passed
            if board.project in projects
        ),
        missed_windows=sum(1 for s in sessions for t in s.tasks if t.missed),
        hours_known=bool(shop.hours.patterns),
        stopped=made.stopped,
    )


def _acts(seen: Look, parts: Collection[int]) -> tuple[int, ...]:
    """Return what a line about some parts rests on."""
    states = [z for z in seen.bench.zones if z.part.id in parts or z.member.id in parts]
    found = acts_behind(states, seen.made)
    return found or tuple(seen.made[part] for part in parts if part in seen.made)


def _session(
    session: PlannedSession, seen: Look, facts: Facts, wanted: frozenset[int]
) -> SessionLine | None:
    """Put a visit into plain values, with what goes with the wanted parts."""
    work = [t for t in session.tasks if t.part is not None and t.part.id in wanted]
    if not work:
        return None
    products = {t.product for t in work if t.product is not None}
    kept = [t for t in session.tasks if t in work or _goes_with(t, products)]
    return SessionLine(
        session.opens,
        session.closes,
        kept[0].start,
        kept[-1].end,
        tuple(_task(t, seen, facts) for t in kept),
    )


def _goes_with(task: PlannedTask, products: set[int]) -> bool:
    if task.chore is Chore.VACUUM:
        return True
    return task.chore is not Chore.WORK and task.product in products


def _task(task: PlannedTask, seen: Look, facts: Facts) -> TaskLine:
    shop = seen.shop
    product = shop.products.get(task.product) if task.product is not None else None
    return TaskLine(
        chore=task.chore,
        start=task.start,
        end=task.end,
        operation=task.operation.value if task.operation else "",
        product=product_name(task.product, shop),
        part=task.part.path if task.part else "",
        label=task.label,
        coat=task.coat[0] if task.product is not None else 0,
        coats=task.coat[1] if task.product is not None else 0,
        ready_since=task.ready_since,
        closes=task.closes,
        missed=task.missed,
        test=task.test,
        wiped=task.wiped,
        self_heating=product is not None and facts.finish_class(product.class_key).self_heating,
        acts=_acts(seen, {task.part.id}) if task.part else (),
    )


def _part(dates: PartDates, seen: Look) -> PartLine:
    part = dates.part
    return PartLine(
        part=part.path,
        label=describe(part, [p.number for p in part.pieces], ()),
        joins=dates.joins,
        coats_done=dates.coats_done,
        clamp=_handling(dates.clamp),
        stack=_handling(dates.stack),
        pack=_handling(dates.pack),
        fully_hard=_handling(dates.cured),
        acts=_acts(seen, {part.id}),
    )


def _handling(milestone: Milestone | None) -> HandlingDate | None:
    if milestone is None:
        return None
    if milestone.blocked:
        return HandlingDate(None, milestone.blocked)
    if milestone.missing:
        return HandlingDate(None, f"no figure for {', '.join(milestone.missing)}")
    why = "" if milestone.high else "not in this air"
    return HandlingDate(milestone.high, why if milestone.air_read else "by label time only")


def _project(each: ProjectPlan, seen: Look) -> ProjectLine:
    parts = {part.id for part in seen.shop.parts if part.project == each.project.id}
    opens, closes = each.spare or (None, None)
    return ProjectLine(
        project=each.project.name,
        promise=each.promise,
        starts=each.starts,
        packed=each.packed,
        due=each.due,
        slack_shop_min=each.slack_shop_min,
        slack_h=each.slack_h,
        late_openings=each.late_openings,
        spare_opens=opens,
        spare_closes=closes,
        why=each.why,
        light_use=each.light_use,
        acts=_acts(seen, parts),
    )


def _left(each: Unplanned, seen: Look, facts: Facts) -> LeftLine:
    return LeftLine(
        part=each.part.path,
        label=each.label,
        operation=each.operation.value if each.operation else "",
        because=each.because,
        needs_air=each.needs_air,
        acts=_acts(seen, {each.part.id}),
        rooms=_rooms_that_suit(each.part, seen, facts) if each.needs_air else (),
    )


def _rooms_that_suit(part: Part, seen: Look, facts: Facts) -> tuple[str, ...]:
    """Name the rooms into which a part could be carried for its next coat, read of late."""
    states = [z for z in seen.bench.in_the_shop if z.part.id == part.id]
    coat = next((z.progress.next_coat for z in states if z.progress.next_coat), None)
    if coat is None or coat.product is None:
        return ()
    of, now = facts.finish_class(seen.shop.products[coat.product].class_key), seen.bench.now
    here = {z.room.id for z in states}
    return tuple(
        seen.shop.rooms[room].name
        for room, air in seen.bench.rooms.items()
        if room not in here
        and air.read_lately(now)
        and not any(
            f.level is Level.STOP for f in air_findings(of, of.methods[0], air, now, facts.drying)
        )
    )


def _air(room: int, seen: Look) -> AirExpected:
    known, readings = seen.shop.rooms[room], seen.bench.rooms[room].readings
    last = readings[-1] if readings else None
    return AirExpected(
        known.name,
        last.air if last else None,
        last.at if last else None,
        known.coldest_night_c,
        (last.act,) if last else (),
        seen.bench.rooms[room].is_foretold,
    )
