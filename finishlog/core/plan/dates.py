"""From when planned parts may be clamped, stacked and packed, and whether due dates hold."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime, timedelta

from msgspec import Struct, field
from msgspec.structs import replace

from finishlog.core.bench.milestones import Milestone, milestone
from finishlog.core.findings import Finding, finding
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Coat, Target
from finishlog.core.log.words import Operation
from finishlog.core.plan.results import (
    CoatsByDue,
    PartDates,
    PlannedSession,
    ProjectPlan,
    Promise,
    Unplanned,
)
from finishlog.core.plan.shop_ahead import ShopAhead
from finishlog.core.shop.hours import intervals, open_minutes
from finishlog.core.shop.things import Project, Shop
from finishlog.core.zone.state import ZoneState

_HOUR = timedelta(hours=1)
# Further back nobody looks for the last evening before a due date.
_LOOK_BACK = timedelta(days=60)


class Dates(Struct):
    """Notes when parts are done: members as they are glued up, everything else at the end."""

    ahead: ShopAhead
    now: datetime
    _members: dict[int, PartDates] = field(default_factory=dict)

    def before_glue_up(self, members: Iterable[int]) -> None:
        """Note how far the members of a glue-up will have come."""
        pieces = frozenset(members)
        for part in {z.part.id for z in self.ahead.zones if z.piece.id in pieces}:
            if part not in self._members:
                states = [z for z in self.ahead.zones if z.part.id == part]
                self._members[part] = _dates(states, joins=True)

    def parts(self) -> tuple[PartDates, ...]:
        """Return the dates of every part with nothing left to do, in the order of the parts."""
        by_part: dict[int, list[ZoneState]] = {}
        for zone in self.ahead.zones:
            by_part.setdefault(zone.part.id, []).append(zone)
        found = dict(self._members)
        for part, states in by_part.items():
            if any(s.layers for s in states) and not any(s.progress.next for s in states):
                found[part] = _dates(states, joins=False)
        shown = (found[p.id] for p in self.ahead.shop.parts if p.id in found)
        return tuple(d for d in shown if not _is_behind(d, self.now))


def _dates(states: Sequence[ZoneState], *, joins: bool) -> PartDates:
    coated = [s.top.put_on for s in states if s.top is not None]
    return PartDates(
        part=states[0].part,
        coats_done=max(coated, default=None),
        clamp=milestone(states, Stage.CLAMP),
        stack=milestone(states, Stage.STACK),
        pack=milestone(states, Stage.PACK),
        cured=milestone(states, Stage.CURED),
        joins=joins,
        light_use=milestone(states, Stage.LIGHT_USE),
    )


def _is_behind(dates: PartDates, now: datetime) -> bool:
    """Tell whether a part had been packed long before anything was planned."""
    known = [m for m in (dates.clamp, dates.stack, dates.pack, dates.cured) if m]
    return bool(known) and all(m.reached(now) for m in known)


def after_their_work(
    parts: Sequence[PartDates], sessions: Sequence[PlannedSession]
) -> tuple[PartDates, ...]:
    """Stack, pack and use no part before the last work that is planned on it."""
    last: dict[int, datetime] = {}
    for task in (t for s in sessions for t in s.tasks if t.part):
        assert task.part is not None
        last[task.part.id] = max(task.end, last.get(task.part.id, task.end))
    return tuple(
        replace(
            dates,
            stack=_not_before(dates.stack, last.get(dates.part.id)),
            pack=_not_before(dates.pack, last.get(dates.part.id)),
            light_use=_not_before(dates.light_use, last.get(dates.part.id)),
        )
        for dates in parts
    )


def _not_before(found: Milestone | None, moment: datetime | None) -> Milestone | None:
    if found is None or found.high is None or moment is None or found.high >= moment:
        return found
    return replace(found, low=max(found.low or moment, moment), high=moment)


def project_plans(
    ahead: ShopAhead,
    due: Mapping[int, datetime],
    sessions: Sequence[PlannedSession],
    parts: Sequence[PartDates],
    left: Sequence[Unplanned],
) -> tuple[ProjectPlan, ...]:
    """Say of each project with open parts when it is packed and whether its due date holds."""
    shop = ahead.shop
    open_projects = {part.project for part in shop.parts}
    plans = (
        _project(p, shop, due.get(p.id), sessions, parts, left)
        for p in shop.projects
        if p.id in open_projects
    )
    return tuple(_with_what_fits(each, ahead.zones, sessions) for each in plans)


def _with_what_fits(
    of: ProjectPlan, zones: Sequence[ZoneState], sessions: Sequence[PlannedSession]
) -> ProjectPlan:
    """Say how far a project comes by a date that does not hold; in doubt, where coats are left."""
    if of.due is None or of.promise not in {Promise.LATE, Promise.UNKNOWN}:
        return of
    found = tuple(_by_due(zones, of.project.id, of.due, sessions))
    doubt = of.promise is Promise.UNKNOWN and all(each.on == each.of for each in found)
    return of if doubt else replace(of, by_due=found)


def _by_due(
    zones: Sequence[ZoneState], project: int, due: datetime, sessions: Sequence[PlannedSession]
) -> Iterator[CoatsByDue]:
    """Yield how far parts of a project have come by a date, by the zone with the fewest coats.

    `zones` are as the whole plan leaves them.
    """
    after: dict[Target, int] = {}
    for task in (t for s in sessions for t in s.tasks):
        for coat in (e for e in task.entries if isinstance(e, Coat) and e.when.latest > due):
            for target in coat.targets:
                after[target] = after.get(target, 0) + 1
    found: dict[int, CoatsByDue] = {}
    for zone in zones:
        steps = zone.progress.steps
        coats = [s.product for s in steps if s.operation is Operation.COAT]
        if zone.part.project != project or zone.part.is_board or not coats:
            continue
        done = sum(s.operation is Operation.COAT for s in steps[: zone.progress.done])
        on = max(done - after.get(zone.target, 0), 0)
        last = coats[on - 1] if on else None
        known = found.get(zone.part.id)
        if known is None or known.of - known.on < len(coats) - on:
            found[zone.part.id] = CoatsByDue(zone.part, on, len(coats), last)
    yield from found.values()


def _project(
    project: Project,
    shop: Shop,
    due: datetime | None,
    sessions: Sequence[PlannedSession],
    parts: Sequence[PartDates],
    left: Sequence[Unplanned],
) -> ProjectPlan:
    tasks = [t for s in sessions for t in s.tasks if t.part and t.part.project == project.id]
    starts = tasks[0].start if tasks else None
    missing = [u for u in left if u.part.project == project.id and not u.part.is_board]
    last = [d for d in parts if d.part.project == project.id and not (d.joins or d.part.is_board)]
    packed, why = _packed(last)
    if missing:
        why = finding("not-planned", label=missing[0].label)
        why = replace(why, because_of=missing[0].because)
    if why or packed is None:
        return ProjectPlan(project, Promise.UNKNOWN, packed, due, starts=starts, why=why)
    packed = max([packed, *(t.end for t in tasks if not (t.part and t.part.is_board))])
    if due is None:
        return ProjectPlan(project, Promise.NO_DUE, packed, starts=starts)
    held = _against(project, packed, due, starts, shop)
    tested, used = _light_use(last)
    return replace(held, light_use=used, light_use_tested=tested)


def _light_use(parts: Sequence[PartDates]) -> tuple[datetime | None, datetime | None]:
    """Return from when all of some parts may be used with care: tested, and without.

    None: of one of them it cannot be said.
    """
    known = [m for dates in parts if (m := dates.light_use) and not (m.blocked or m.missing)]
    ends = [(m.low, m.high) for m in known if m.low is not None and m.high is not None]
    if not ends or len(ends) < len(parts):
        return None, None
    return max(low for low, _ in ends), max(high for _, high in ends)


def _against(
    project: Project, packed: datetime, due: datetime, starts: datetime | None, shop: Shop
) -> ProjectPlan:
    """Hold what is packed against what it is due for; the last visit before it stays spare."""
    between = intervals(shop.hours, max(packed, due - _LOOK_BACK), due) if packed < due else ()
    whole = [visit for visit in between if visit[0] > packed]
    late = intervals(shop.hours, due, packed) if packed > due else ()
    promise = Promise.LATE if packed > due else Promise.HOLDS if whole else Promise.TIGHT
    return ProjectPlan(
        project=project,
        promise=promise,
        packed=packed,
        due=due,
        slack_shop_min=open_minutes(shop.hours, packed, due) if packed < due else 0.0,
        slack_h=(due - packed) / _HOUR,
        late_openings=len(late),
        spare=whole[-1] if whole else None,
        starts=starts,
    )


def _packed(parts: Sequence[PartDates]) -> tuple[datetime | None, Finding | None]:
    """Return when all of some parts may be packed, and of which of them that cannot be said."""
    moments: list[datetime] = []
    whys: list[Finding] = []
    for dates in parts:
        pack = dates.pack
        if pack is None or pack.missing:
            whys.append(finding("no-figure-to-pack", part=dates.part.called))
        elif pack.blocked:
            blocked = finding("part-blocked", part=dates.part.called)
            whys.append(replace(blocked, because_of=pack.blocked))
        elif pack.high is None:
            whys.append(finding("dries-not", part=dates.part.called))
        else:
            moments.append(pack.high)
    nothing = None if parts else finding("nothing-to-plan")
    return max(moments, default=None), whys[0] if whys else nothing
