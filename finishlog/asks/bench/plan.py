"""What to do on which evening, and do the due dates hold?"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from datetime import datetime
from functools import partial

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.bench.open_cans import BeforeLine, Opens, before_work
from finishlog.asks.look.acts_behind import acts_behind
from finishlog.asks.look.air_there import air_of
from finishlog.asks.look.look import Look, look
from finishlog.asks.look.which_room import RoomPlace, place_of
from finishlog.context import Context
from finishlog.core.air.place import Lives
from finishlog.core.air.psychrometrics import Air
from finishlog.core.commands import Do
from finishlog.core.findings import Finding, Level
from finishlog.core.log.entries import Coat
from finishlog.core.plan.plan import plan as plan_ahead
from finishlog.core.plan.results import (
    Chore,
    Plan,
    PlannedSession,
    PlannedTask,
    ProjectPlan,
    Promise,
)
from finishlog.core.published.safety_notes import StaysOut
from finishlog.core.rules.air.coating_air import air_findings
from finishlog.core.safety.evening_air import EveningAir, OneCoat, evening_air
from finishlog.core.safety.ignition import lights, of_films
from finishlog.core.safety.oily_waste import heats
from finishlog.core.safety.people import (
    Out,
    figures_of,
    lives_near,
    reached,
    stays_out_after,
)
from finishlog.core.safety.room_takes import RoomTakes
from finishlog.core.safety.ventilation import Weighs
from finishlog.core.safety.whats_in import in_product
from finishlog.core.shop.names import called
from finishlog.core.shop.things import Part, Shop
from finishlog.errors import NotFound, Unknown, UsageFault
from finishlog.picking import pick_parts


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
    place: RoomPlace | None = None


class VapourAhead(Struct, frozen=True):
    """What is to be put out before a product's can is opened, and what the rooms' air takes."""

    lit: tuple[Finding, ...]
    takes: tuple[RoomTakes, ...]


class PeopleAhead(Struct, frozen=True):
    """Who stays out of a room from its first planned coat on (`since`), by the last one of a plan.

    `of`: where they stay and whom to ask, as it is published.
    """

    room: str
    since: datetime
    of: StaysOut
    out: Out


class PlanAnswer(Struct, frozen=True):
    """The plan of what was asked for; everything open shares the same two hands.

    `acts`: what a part (by its path) and a project (by its name) rest on, by the numbers of
    `history`. `rooms`: those whose air suits the next coat of a part that needs other air.
    `products`: by id the names of those that are worked with; `self_heating`: those of them whose
    rags may catch fire.
    """

    plan: Plan
    air: tuple[AirExpected, ...]
    acts: Mapping[str, tuple[int, ...]]
    rooms: Mapping[str, tuple[str, ...]]
    products: Mapping[int, str]
    self_heating: frozenset[int]
    hours_known: bool
    # Of projects that are late, by their ids: the same with every film taken as soon as it may be
    # tested.
    tested: Mapping[int, ProjectPlan]
    # By product: what burns where its vapour comes to, and what the air of its rooms takes of it.
    vapour: Mapping[int, VapourAhead]
    # What stands ready before the first cans of it are opened.
    before: tuple[BeforeLine, ...] = ()
    # Who stays out from the first coat on that is planned, by the last.
    people: tuple[PeopleAhead, ...] = ()
    # Rooms whose air that evening passes a limit, by what the same coats took before.
    evening: tuple[EveningAir, ...] = ()


def plan(context: Context, typed: Sequence[str] = (), due: datetime | None = None) -> PlanAnswer:
    """Plan everything open and answer for the projects and parts that were typed.

    `due` is asked for one project and comes before the date on record.
    """
    with context.reading() as connection:
        seen = look(context, connection)
    wanted = _wanted(seen.shop, typed)
    dues = {} if due is None else {_one_project(wanted): due}
    made_of = (seen.shop, seen.log, context.facts, context.clock.now, context.clock.zone, dues)
    ahead = partial(plan_ahead, *made_of, seen.paces, seen.bench.lessons)
    parts = frozenset(part.id for part in wanted)
    made = ahead()
    late = {each.project.id for each in made.projects if each.promise is Promise.LATE}
    late &= {part.project for part in wanted}
    tested = ahead(early=True).projects if late else ()
    return _answer(made, seen, parts, {p.project.id: p for p in tested if p.project.id in late})


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
        names = projects.values() or ("PROJECT",)
        either = [word for name in names for word in ("or", name)][1:]
        raise UsageFault(
            "a due date is asked for one project", f"say which: {Do.PLAN(*either, due='DATE')}"
        )
    return next(iter(projects))


def _answer(
    made: Plan, seen: Look, wanted: frozenset[int], tested: Mapping[int, ProjectPlan]
) -> PlanAnswer:
    shop = seen.shop
    mine = [part for part in shop.parts if part.id in wanted]
    projects = {part.project for part in mine}
    plan = replace(
        made,
        sessions=tuple(s for each in made.sessions if (s := _session(each, wanted))),
        parts=tuple(each for each in made.parts if each.part.id in wanted),
        projects=tuple(each for each in made.projects if each.project.id in projects),
        unplanned=tuple(each for each in made.unplanned if each.part.id in wanted),
        boards_passed=tuple(each for each in made.boards_passed if each[0].project in projects),
    )
    products = {t.product for s in plan.sessions for t in s.tasks if t.product is not None}
    boards = [board for board, _ in plan.boards_passed]
    members = {
        each.project.name: {part.id for part in shop.parts if part.project == each.project.id}
        for each in plan.projects
    }
    rooms = {z.room.id for z in seen.bench.zones if z.part.id in wanted}
    return PlanAnswer(
        plan=plan,
        air=tuple(_air(room, seen) for room in shop.rooms if room in rooms),
        acts={
            **{part.path: _acts(seen, {part.id}) for part in (*mine, *boards)},
            **{name: _acts(seen, parts) for name, parts in members.items()},
        },
        rooms={
            each.part.path: _rooms_that_suit(each.part, seen)
            for each in plan.unplanned
            if each.needs_air
        },
        products={product: shop.products[product].name for product in products},
        self_heating=frozenset(
            product for product in products if heats(in_product(shop.products[product]), seen.facts)
        ),
        hours_known=bool(shop.hours.patterns),
        tested=tested,
        vapour={product: _vapour(product, wanted, seen) for product in products},
        before=before_work(_opened_first(plan, seen), seen),
        evening=_evening(plan, seen),
        people=tuple(_people(plan, seen)),
    )


def _people(plan: Plan, seen: Look) -> Iterator[PeopleAhead]:
    """Yield who stays out of the rooms that are coated, where somebody lives who bears less."""
    rooms = {zone.part.id: zone.room for zone in seen.bench.in_the_shop}
    coats: dict[int, list[PlannedTask]] = {}
    lives: dict[int, set[Lives]] = {}
    for task in (task for session in plan.sessions for task in session.coats):
        room = rooms.get(task.part.id) if task.part is not None else None
        if room is None or room.id is None or task.product is None:
            continue
        there = lives_near(room, seen.bench.rooms)
        known = seen.shop.products[task.product]
        of = seen.facts.finish_class(known.class_key)
        if mine := reached(of, in_product(known), there, seen.facts) if there else ():
            coats.setdefault(room.id, []).append(task)
            lives.setdefault(room.id, set()).update(mine)
    for key, tasks in coats.items():
        room_of = seen.shop.rooms[key]
        for who in sorted(lives[key]):
            out = stays_out_after(tasks[-1].end, who, room_of.place, seen.facts)
            yield PeopleAhead(room_of.name, tasks[0].start, figures_of(who, seen.facts), out)


def _opened_first(plan: Plan, seen: Look) -> Iterator[Opens]:
    """Yield what is opened on the first evening of a plan on which anything is."""
    for room, task in _first_coats(plan, seen):
        assert task.product is not None
        yield Opens(task.product, room)


def _first_coats(plan: Plan, seen: Look) -> list[tuple[int | None, PlannedTask]]:
    """Return the coats of the first evening that has any, with the room of each."""
    coats = next((session.coats for session in plan.sessions if session.coats), ())
    rooms = {zone.part.id: zone.room.id for zone in seen.bench.in_the_shop}
    return [(rooms.get(task.part.id) if task.part is not None else None, task) for task in coats]


def _evening(plan: Plan, seen: Look) -> tuple[EveningAir, ...]:
    """Return what that evening comes to where its coats were measured before; else nothing."""
    there: dict[int, list[OneCoat]] = {}
    for room, task in _first_coats(plan, seen):
        coat = _as_measured(task, seen)
        if coat is not None and room is not None and room in seen.shop.rooms:
            there.setdefault(room, []).append(coat)
    # What was measured stands last: it is what may be less.
    ordered = (
        (r, sorted(c, key=lambda each: each.amount_ml is not None)) for r, c in there.items()
    )
    found = (evening_air(seen.shop.rooms[r], c, seen.shop, seen.facts) for r, c in ordered)
    return tuple(each for each in found if each is not None and each.air.weighs is not Weighs.UNDER)


def _as_measured(task: PlannedTask, seen: Look) -> OneCoat | None:
    """Return a planned coat with what the last one of it took on such a piece."""
    if task.part is None or task.product is None:
        return None
    alike = {piece.id for piece in task.part.pieces}
    mine = {target.piece for entry in task.entries for target in entry.targets}
    before = [
        entry
        for entry in seen.log.entries
        if isinstance(entry, Coat) and entry.product == task.product and entry.amount_ml
        if alike & {target.piece for target in entry.targets}
    ]
    amount = None
    if before and before[-1].amount_ml is not None:
        amount = before[-1].amount_ml / len({t.piece for t in before[-1].targets}) * len(mine)
    product = seen.shop.products[task.product]
    return OneCoat(product, task.start, amount, time=task.end - task.start, pieces=len(mine))


def _vapour(product: int, wanted: frozenset[int], seen: Look) -> VapourAhead:
    """Return what vapour of a product meets in the rooms that its parts stand in."""
    known, now = seen.shop.products[product], seen.bench.now
    film = seen.facts.finish_class(known.class_key), in_product(known)
    of = of_films((film,), seen.facts, now)
    rooms = {
        zone.room.id: zone.room
        for zone in seen.bench.in_the_shop
        if zone.part.id in wanted and zone.room.id in seen.shop.rooms
        if any(step.product == product for step in zone.progress.steps[zone.progress.done :])
    }
    lit = (f for room in rooms.values() for f in lights(of, room, now) if f.level is Level.STOP)
    takes = (air_of(seen, seen.shop.rooms[room], known) for room in rooms if room is not None)
    return VapourAhead(tuple(lit), tuple(each for each in takes if each is not None))


def _acts(seen: Look, parts: Collection[int]) -> tuple[int, ...]:
    """Return what a line about some parts rests on."""
    states = [z for z in seen.bench.zones if z.part.id in parts or z.member.id in parts]
    found = acts_behind(states, seen.made)
    return found or tuple(seen.made[part] for part in parts if part in seen.made)


def _session(session: PlannedSession, wanted: frozenset[int]) -> PlannedSession | None:
    """Keep of a visit what goes with the wanted parts."""
    work = [t for t in session.tasks if t.part is not None and t.part.id in wanted]
    products = {t.product for t in work if t.product is not None}
    kept = tuple(t for t in session.tasks if t in work or _goes_with(t, products))
    return replace(session, tasks=kept) if work else None


def _goes_with(task: PlannedTask, products: set[int]) -> bool:
    if task.chore is Chore.VACUUM:
        return True
    return task.chore is not Chore.WORK and task.product in products


def _rooms_that_suit(part: Part, seen: Look) -> tuple[str, ...]:
    """Name the rooms into which a part could be carried for its next coat, read of late."""
    states = [z for z in seen.bench.in_the_shop if z.part.id == part.id]
    coat = next((z.progress.next_coat for z in states if z.progress.next_coat), None)
    if coat is None or coat.product is None:
        return ()
    of, now = seen.facts.finish_class(seen.shop.products[coat.product].class_key), seen.bench.now
    here = {z.room.id for z in states}
    return tuple(
        seen.shop.rooms[room].name
        for room, air in seen.bench.rooms.items()
        if room not in here
        and air.read_lately(now)
        and not any(
            f.level is Level.STOP
            for f in air_findings(of, of.methods[0], air, now, seen.facts.drying)
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
        place_of(known, seen.shop, seen.clock.now),
    )
