"""A plan held against the bench: at every planned start the log would say that it may be done.

Written apart from the planner: it takes the planned entries as if they had been logged and asks the
bench, and looks at the clock on the wall for the rest.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import UTC, datetime, timedelta

from msgspec.structs import replace

from finishlog.core.bench.state import BenchState, bench_state, verdict_on_work
from finishlog.core.findings import Answer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Coat, Joined, Work
from finishlog.core.log.words import Operation
from finishlog.core.plan.plan import plan
from finishlog.core.plan.results import Chore, Plan, PlannedTask
from finishlog.core.published.facts import Facts
from finishlog.core.published.hands_on import HandsOn
from finishlog.core.shop.hours import ShopHours, WeeklyHours, intervals
from finishlog.core.shop.things import FaceKind, Log, Part, Project, Shop
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT, Verdict
from tests.shop_of import FACTS, Story, at

DUSTY = {
    Operation.SAND,
    Operation.SCUFF,
    Operation.DENIB,
    Operation.LEVEL,
    Operation.STEEL_WOOL,
}
ALWAYS = datetime(2020, 1, 1, tzinfo=UTC)


def open_from(*openings: tuple[int, str, str], zone: str = "UTC") -> ShopHours:
    """Build weekly hours: weekday (0 = Monday), opening, closing."""

    def minute(text: str) -> int:
        return int(text[:2]) * 60 + int(text[3:])

    return ShopHours(
        ((ALWAYS, tuple(WeeklyHours(d, minute(a), minute(b)) for d, a, b in openings)),), zone
    )


# Monday to Friday 18:00-21:00 and Saturday 09:00-17:00.
EVENINGS = open_from(*((day, "18:00", "21:00") for day in range(5)), (5, "09:00", "17:00"))


def shop_with(story: Story, hours: ShopHours = EVENINGS, due: datetime | None = None) -> Shop:
    """Return the shop of a story, with its hours and the due date of its project."""
    return replace(story.shop, hours=hours, projects=(Project(1, "cabinet", due),))


def plan_of(
    story: Story,
    hour: float = 0.0,
    hours: ShopHours = EVENINGS,
    due: datetime | None = None,
    facts: Facts = FACTS,
) -> Plan:
    """Plan a story as of an hour."""
    return plan(shop_with(story, hours, due), story.log(hour), facts, at(hour), story.zone)


def tasks_of(made: Plan) -> list[PlannedTask]:
    """Return all tasks in order."""
    return [task for session in made.sessions for task in session.tasks]


def work_of(made: Plan, operation: Operation | None = None) -> list[PlannedTask]:
    """Return the work, without set-up and clean-up; of one operation when it is named."""
    work = [t for t in tasks_of(made) if t.chore is Chore.WORK]
    return [t for t in work if operation is None or t.operation is operation]


def replayed(
    made: Plan, shop: Shop, log: Log, facts: Facts = FACTS
) -> Iterator[tuple[PlannedTask, BenchState]]:
    """Yield each piece of work with the bench as it will stand at its start."""
    entries: list[AnyEntry] = list(log.entries)
    for task in work_of(made):
        yield task, bench_state(shop, Log(tuple(entries)), facts, task.start, UTC)
        entries += task.entries


def last_bench(made: Plan, shop: Shop, log: Log, facts: Facts = FACTS) -> BenchState:
    """Return the bench once all of a plan is done."""
    entries = [*log.entries, *(e for t in work_of(made) for e in t.entries)]
    end = max([made.now, *(s.end for s in made.sessions)])
    return bench_state(shop, Log(tuple(entries)), facts, end, UTC)


def check_hours(made: Plan, hours: ShopHours) -> None:
    """Hold a plan against the clock on the wall: shop hours, two hands, order."""
    free = made.now
    for session in made.sessions:
        whole = intervals(hours, session.opens, session.closes)
        assert whole == ((session.opens, session.closes),), "a visit is one opening"
        for task in session.tasks:
            assert free <= task.start <= task.end, "one thing at a time"
            assert session.opens <= task.start
            assert task.end <= session.closes
            free = task.end


def check_bench(made: Plan, shop: Shop, log: Log, facts: Facts = FACTS) -> None:
    """Hold every piece of work against what the bench says at its start."""
    for task, bench in replayed(made, shop, log, facts):
        assert task.part is not None
        states = _reached(task, bench)
        assert states, task
        if task.operation is Operation.GLUE_UP:
            _check_glue_up(task, bench, states)
            continue
        assert not any(s.face.kind is FaceKind.JOINT and not s.progress.steps for s in states)
        for state in states:
            _check_zone(task, state, bench, facts)
        if task.operation in DUSTY:
            _check_no_wet_film(task, states, bench)


def _reached(task: PlannedTask, bench: BenchState) -> list[ZoneState]:
    targets = {t for e in task.entries for t in e.targets}
    edges_too = [z for z in bench.zones if z.target in targets]
    return [z for z in edges_too if z.face.kind is not FaceKind.EDGE]


def _check_glue_up(task: PlannedTask, bench: BenchState, states: Sequence[ZoneState]) -> None:
    verdicts = {g.piece.id: g.verdict for g in bench.glue_ups}
    for entry in task.entries:
        assert isinstance(entry, Joined)
        assert verdicts[entry.into].answer in MAY_ACT, verdicts[entry.into]
    for state in states:
        assert state.is_bare_joint or state.face.kind is not FaceKind.JOINT
        clamp = state.stages.get(Stage.CLAMP)
        assert clamp is None or (clamp.high is not None and clamp.high <= task.start)


def _check_zone(task: PlannedTask, state: ZoneState, bench: BenchState, facts: Facts) -> None:
    step, verdict = state.progress.next, state.verdict
    operations = [e.operation for e in task.entries if isinstance(e, Work)]
    if task.operation is Operation.SCUFF and (step is None or step.operation is not task.operation):
        verdict = verdict_on_work(state, bench, Operation.SCUFF, facts)
    elif task.operation is Operation.WIPE and verdict.answer is Answer.DEADLINE:
        return
    elif operations[:1] == [Operation.SOLVENT_WIPE] and task.operation is Operation.COAT:
        assert step is not None
        assert step.operation is Operation.SOLVENT_WIPE
    else:
        assert step is not None
        assert (step.operation, step.product) == (task.operation, task.product)
    _check_verdict(task, verdict)
    if task.operation is Operation.COAT:
        assert not verdict.scuff_first, "an unscuffed film that needs it"
        assert sum(isinstance(e, Coat) for e in task.entries) == 1


def _check_verdict(task: PlannedTask, verdict: Verdict) -> None:
    if verdict.answer is Answer.DEADLINE and task.operation is Operation.COAT:
        assert verdict.deed == "coat"
        return
    assert verdict.answer in MAY_ACT, (task.label, task.operation, verdict)
    if verdict.answer is Answer.TEST:
        # Never between the low and the high end: a test only for air not read yet, or a caution.
        assert verdict.high is None or verdict.high <= task.start


def _check_no_wet_film(task: PlannedTask, states: Sequence[ZoneState], bench: BenchState) -> None:
    rooms = {s.room.id for s in states}
    pieces = {s.member_piece.id for s in states}
    for other in bench.zones:
        if other.room.id not in rooms or other.member_piece.id in pieces or not other.top:
            continue
        dry = other.stages.get(Stage.DUST_FREE)
        if dry and other.top.of.builds_film:
            assert dry.high is not None, "a film that stands still"
            assert dry.high <= task.start, (task.label, other.part.name)


def check_dust(made: Plan, hands: HandsOn, rooms: int = 1) -> None:
    """Hold coats against the dust: vacuumed and settled since the last dusty work."""
    assert rooms == 1
    dirty_since: datetime | None = None
    clean_from: datetime | None = None
    for task in tasks_of(made):
        if task.chore is Chore.VACUUM:
            dirty_since, clean_from = None, task.end + timedelta(minutes=hands.settle_min.high)
        elif task.operation in DUSTY:
            dirty_since = task.end
        elif task.operation is Operation.COAT:
            assert dirty_since is None, "nobody vacuumed"
            assert clean_from is None or clean_from <= task.start, "the dust has not settled"


def check_nothing_vanished(made: Plan, shop: Shop, log: Log, facts: Facts = FACTS) -> None:
    """Hold what is left at the end against what the plan says that it left."""
    said = {u.part.id for u in made.unplanned}
    bench = last_bench(made, shop, log, facts)
    unmade = {g.piece.id for g in bench.glue_ups}
    for state in bench.zones:
        if state.progress.next is not None and state.piece.id not in unmade:
            assert state.part.id in said, (state.part.name, state.progress.next)
    for due in bench.glue_ups:
        assert due.part.id in said, due.part.name


def shop_read(celsius: float = 21.0, rh: float = 50.0, hour: float = -0.5) -> Story:
    """Begin a story in a room that was read half an hour ago."""
    story = Story()
    story.read(hour, celsius, rh)
    return story


def doings(made: Plan, part: Part) -> list[str]:
    """Return what is done to a part in order: `sand`, `coat our shellac-2lb`."""
    return [
        " ".join([t.operation.value, *_products(t.entries)])
        for t in work_of(made)
        if t.part == part and t.operation
    ]


def _products(entries: Sequence[AnyEntry]) -> list[str]:
    return [e.product_name for e in entries if isinstance(e, Coat)]


def first(made: Plan, part: Part, operation: Operation) -> PlannedTask:
    """Return the first task of an operation on a part."""
    return next(t for t in work_of(made, operation) if t.part == part)


def holds(story: Story, made: Plan, hours: ShopHours = EVENINGS) -> None:
    """Hold a plan against the bench and the clock on the wall."""
    shop = shop_with(story, hours)
    check_hours(made, hours)
    check_bench(made, shop, story.log(0))
    check_dust(made, FACTS.hands_on)
    check_nothing_vanished(made, shop, story.log(0))
