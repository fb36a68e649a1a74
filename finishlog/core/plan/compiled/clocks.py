"""What the clocks alone say of a task, at whatever hour the coat before it came to its end."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Sequence
from datetime import datetime, timedelta
from itertools import groupby

from msgspec import Struct

from finishlog.core.findings import Act, Answer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Coat, Joined, Target
from finishlog.core.log.words import Operation
from finishlog.core.plan.compiled.lags import Days, Quarters, lag_of
from finishlog.core.plan.compiled.minutes import Origin
from finishlog.core.plan.compiled.story import Deed, Story
from finishlog.core.plan.compiled.zone_then import moved
from finishlog.core.plan.search.shop import Lag
from finishlog.core.plan.waits import dry_by
from finishlog.core.rules.film import clocks, the_can
from finishlog.core.rules.near import joint
from finishlog.core.rules.rule import Rule
from finishlog.core.safety.whats_in import in_what_goes_on, in_work
from finishlog.core.shop.things import FaceKind, Shop
from finishlog.core.verdict.fold import fold
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked, coat_asked, work_asked
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT, Verdict

# The rules whose dates move with the coat; every other one was asked once, as the story was told.
OF_A_FILM: tuple[Rule, ...] = (
    clocks.film_clock,
    clocks.recoat_clock,
    clocks.may_wrinkle,
    the_can.coats_a_day,
)
OF_A_JOINT: tuple[Rule, ...] = (joint.joint_young,)

_CLAMPED = Asked(Act.CLAMP)
_ENDS_WITH_TIME = frozenset({Answer.DRYING, Answer.DEAD_ZONE, Answer.WAITS})
_YOUNG = frozenset({Answer.DRYING, Answer.DEAD_ZONE})
# Verdicts change with the hours, a few times at most: drying, a dead zone, hard.
_CHANGES = 8
_A_MINUTE = timedelta(minutes=1)


class Clocks(Struct):
    """The lags of one story, each worked out once: alike films share them."""

    story: Story
    shop: Shop
    origin: Origin
    at: Quarters
    days: dict[int | None, Days]
    # What is alike in several stories is worked out once: from which minute on, the lag.
    known: dict[Hashable, tuple[int, Lag]]

    def film(self, deed: Deed, target: Target, coat: Deed) -> Lag:
        """Return how long after a coat the film on a zone lets a task begin."""

        def reaches(moment: datetime) -> datetime | None:
            state, since = self._behind(deed, target, coat, moment)
            return self.ready(state, self.asked(deed, state), since, OF_A_FILM)

        return self._lag(("film", *self._task(deed, target, coat)), target, coat, reaches)

    def joint(self, deed: Deed, target: Target, glued: Deed) -> Lag:
        """Return how long after a glue-up the joint lets a task begin."""

        def reaches(moment: datetime) -> datetime | None:
            state, since = self._behind(deed, target, glued, moment)
            return self.ready(state, self.asked(deed, state), since, OF_A_JOINT)

        return self._lag(("joint", *self._task(deed, target, glued)), target, glued, reaches)

    def edge(self, deed: Deed, target: Target, coat: Deed) -> Lag:
        """Return how long after a coat the film on an edge lets a task on its faces begin."""

        def reaches(moment: datetime) -> datetime | None:
            state, since = self._behind(deed, target, coat, moment)
            return self.ready(state, self.asked(deed, state), since, OF_A_FILM, of_edge=True)

        return self._lag(("edge", *self._task(deed, target, coat)), target, coat, reaches)

    def turned(self, target: Target, coat: Deed) -> Lag:
        """Return how long after a coat its face bears lying on points."""
        return self._alone(target, coat, Stage.TURN)

    def dust_free(self, target: Target, coat: Deed) -> Lag:
        """Return how long after a coat its film takes dust."""
        return self._alone(target, coat, Stage.DUST_FREE)

    def reached(self, target: Target, coat: Deed, stage: Stage) -> Lag:
        """Return how long after a coat the film of a zone reaches a stage; no figure: at once."""
        reaches = self._stage(target, coat, stage)
        return self._lag((stage,), target, coat, reaches)

    def closes(self, deed: Deed, target: Target, coat: Deed) -> Lag | None:
        """Return how long after a coat the next one may begin unscuffed; None: for good."""
        state, since = self._behind(deed, target, coat, coat.task.end)
        if self._verdict(state, self.asked(deed, state), since, OF_A_FILM).closes is None:
            return None

        def reaches(moment: datetime) -> datetime | None:
            state, since = self._behind(deed, target, coat, moment)
            return self._verdict(state, self.asked(deed, state), since, OF_A_FILM).closes

        key = ("closes", *self._task(deed, target, coat))
        return self._lag(key, target, coat, reaches, closes=True)

    def closes_now(self, deed: Deed, state: ZoneState, now: datetime) -> datetime | None:
        """Return when the film that lies on a zone already wants scuffing; None: never."""
        return self._verdict(state, self.asked(deed, state), now, OF_A_FILM).closes

    def sands(self, deed: Deed, target: Target, coat: Deed) -> Lag:
        """Return how long after a coat its film may be scuffed to save the next one."""

        def reaches(moment: datetime) -> datetime | None:
            state, since = self._behind(deed, target, coat, moment)
            scuffed = self.ready(state, work_asked(Operation.SCUFF), since, OF_A_FILM)
            top = state.top
            if scuffed is None or top is None or top.of.wrinkles_when_late_source is None:
                return scuffed
            late = top.closes(since)
            if late is None:
                return scuffed
            asked, closed = self.asked(deed, state), max(late + _A_MINUTE, since)
            wrinkles = self.ready(state, asked, closed, (clocks.may_wrinkle,))
            return None if wrinkles is None else max(scuffed, wrinkles)

        return self._lag(("sands", *self._task(deed, target, coat)), target, coat, reaches)

    def asked(self, deed: Deed, state: ZoneState) -> Asked:
        """Return what a task asks of a zone."""
        step = state.progress.next
        note = step.note if step is not None and step.operation is deed.operation else ""
        product = deed.task.product
        if deed.operation is Operation.GLUE_UP:
            return _CLAMPED
        if product is not None:
            known = self.shop.products[product]
            of = self.story.zones.facts.finish_class(known.class_key)
            comes = in_what_goes_on(known, None, note, self.shop)
            return coat_asked(of, comes=comes, product=product)
        following = state.progress.next_coat
        then = following.product if following else None
        return work_asked(deed.operation, in_work(note), grit=note, then=then)

    def ready(
        self,
        state: ZoneState,
        asked: Asked,
        since: datetime,
        rules: Sequence[Rule],
        *,
        of_edge: bool = False,
    ) -> datetime | None:
        """Return from when on some rules let a task pass; None: they never do."""
        now = since
        for _ in range(_CHANGES):
            verdict = self._verdict(state, asked, now, rules)
            holds, until = _held(verdict, state, now, of_edge=of_edge)
            if not holds:
                return now
            if until is None or until <= now:
                return None
            now = until
        return None

    def _verdict(
        self, state: ZoneState, asked: Asked, now: datetime, rules: Sequence[Rule]
    ) -> Verdict:
        near = Around({}, {}, now, self.story.zones.facts, self.shop.products)
        found = [
            f for rule in rules if asked.act in rule.binds for f in rule.find(state, asked, near)
        ]
        return fold(tuple(dict.fromkeys(found)), asked)

    def _behind(
        self, deed: Deed, target: Target, coat: Deed, moment: datetime
    ) -> tuple[ZoneState, datetime]:
        """Return a zone before a task, the last coat at a moment; and when that zone is as it is.

        What was done between the coat and the task was done as soon as it could be.
        """
        planned, since = self.story.planned(coat, target), moment
        zones, tie = self.story.zones, 0
        for each in self.story.before(deed, target):
            if each.number < coat.number:
                continue
            if each.number > coat.number:
                state = zones.then(target, planned)
                asked = self.asked(each, state)
                since = self.ready(state, asked, since, OF_A_FILM) or since
            for entry in each.of(target):
                tie += 1
                planned.append(moved(entry, since, tie))
        return zones.then(target, planned), since

    def _stage(
        self, target: Target, coat: Deed, stage: Stage
    ) -> Callable[[datetime], datetime | None]:
        def reaches(moment: datetime) -> datetime | None:
            planned = self.story.planned(coat, target)
            planned += [moved(e, moment, n) for n, e in enumerate(coat.of(target))]
            return _reached(self.story.zones.then(target, planned), stage, moment)

        return reaches

    def _alone(self, target: Target, coat: Deed, stage: Stage) -> Lag:
        """Return when a coat by itself reaches a stage: what it lies on is dry by then.

        Where checks taught how it dries here a first coat is another than a second.
        """
        first = self.story.zones.first[target]
        if self.story.zones.paces.learnt:
            return self._lag((stage,), target, coat, self._stage(target, coat, stage))
        hidden = stage is Stage.TURN and first.face.kind is FaceKind.HIDDEN
        key = (stage, coat.task.product, hidden, first.room.id)
        if key not in self.known:

            def reaches(moment: datetime) -> datetime | None:
                entries = [moved(e, moment, n) for n, e in enumerate(coat.of(target))]
                return _reached(self.story.zones.bare(target, entries), stage, moment)

            lag = lag_of(reaches, self.days_of(first), self.at, 0)
            self.known[key] = 0, lag
        return self.known[key][1]

    def _lag(
        self,
        what: Hashable,
        target: Target,
        coat: Deed,
        reaches: Callable[[datetime], datetime | None],
        *,
        closes: bool = False,
    ) -> Lag:
        first = self.story.zones.first[target]
        key = (what, self._film(target, coat), first.face.kind, first.room.id)
        since = self.origin.down(coat.task.end)
        known = self.known.get(key)
        if known is None or known[0] > since:
            # Before it went on in its story it never does: what lies below is not dry by then.
            lag = lag_of(reaches, self.days_of(first), self.at, since, closes=closes)
            self.known[key] = known = since, lag
        return known[1]

    def _task(self, deed: Deed, target: Target, coat: Deed) -> Iterator[Hashable]:
        """Yield what a task asks of a film, and what is done to that between.

        What it is made of stands in its steps, and what its note tells counts there.
        """
        yield deed.operation
        yield deed.task.product
        yield tuple(s.note for s in self.story.zones.first[target].progress.steps if s.note)
        for each in self.story.before(deed, target):
            if each.number > coat.number:
                yield each.operation

    def _film(self, target: Target, coat: Deed) -> Hashable:
        """Return what makes the films alike that coats leave: all that a clock of one hangs on."""
        zones, of = self.story.zones, self.story.zones.first[target]
        planned = self.story.planned(coat, target)
        below = [y.coat.product for y in of.layers] + [
            e.product for e in planned if isinstance(e, Coat)
        ]
        told = of.species if not below and zones.paces.learnt else None
        rules = self.shop.products[coat.task.product].own_rules if coat.task.product else ()
        return (
            coat.task.product,
            # A coat a day is counted, all others say one thing.
            tuple(below) if rules else tuple(product for product, _ in groupby(below)),
            told,
            of.face.meets,
            tuple(f.fault.id for f in of.faults),
            id(of.stages) if any(y.checks for y in of.layers) else None,
        )

    def days_of(self, state: ZoneState) -> Days:
        """Return the days ahead of the room that a zone stands in."""
        room = state.room
        if room.id not in self.days:
            self.days[room.id] = Days(self.origin, room)
        return self.days[room.id]


def _reached(state: ZoneState, stage: Stage, since: datetime) -> datetime | None:
    """Return when a film reaches a stage; at once where no figure tells."""
    time = state.stages.get(stage)
    if time is None:
        return since
    if stage is Stage.TURN and state.face.kind is FaceKind.HIDDEN:
        time = time.from_its_low_end
    return time.high


def _held(
    verdict: Verdict, state: ZoneState, now: datetime, *, of_edge: bool
) -> tuple[bool, datetime | None]:
    """Tell whether a verdict holds a task up, and until when it surely does."""
    if of_edge and verdict.answer not in MAY_ACT:
        return verdict.answer in _YOUNG, verdict.high
    if verdict.answer in MAY_ACT:
        late = verdict.high if verdict.high is not None or of_edge else dry_by(state)
        holds = verdict.answer is Answer.TEST and late is not None and late > now
        return holds, late
    return True, verdict.high if verdict.answer in _ENDS_WITH_TIME else None


def last_coat(before: Sequence[Deed], target: Target) -> Deed | None:
    """Return the last coat that a story put on a zone; None: none."""
    return next((d for d in reversed(before) if _holds(d, target, Coat)), None)


def last_glued(before: Sequence[Deed], target: Target) -> Deed | None:
    """Return the last glue-up of a story that a zone was in; None: none."""
    return next((d for d in reversed(before) if _holds(d, target, Joined)), None)


def _holds(deed: Deed, target: Target, kind: type) -> bool:
    return any(isinstance(e, kind) for e in deed.of(target))
