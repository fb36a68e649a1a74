"""How a group of zones stands, in plain values: what every question and every act answers with."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.asks.look.acts_behind import acts_behind
from finishlog.asks.look.look import Look
from finishlog.asks.look.went_wrong import FaultThere, faults_there
from finishlog.core.bench.milestones import Milestone, furthest
from finishlog.core.bench.state import BenchState
from finishlog.core.film.layers import ABRADES
from finishlog.core.film.old_finish import name_of
from finishlog.core.findings import Answer, Deed, Finding
from finishlog.core.finish.stage_time import StageTime
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import SetAside
from finishlog.core.log.shown_times import SHOWN_TO
from finishlog.core.log.words import Operation, Stripping
from finishlog.core.rules.near.kept import kept_early, look_at
from finishlog.core.rules.wood.prepared import Prepared, glue_face, prepared
from finishlog.core.shop.things import FaceKind, Part, Shop
from finishlog.core.verdict.due import coat_due, product_due
from finishlog.core.verdict.glue_up import GlueUp
from finishlog.core.verdict.usual_day_wanted import usual_would_move
from finishlog.core.zone.grouping import Group, Label, describe, groups
from finishlog.core.zone.kept import kept
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Verdict

# What comes off with a solvent leaves wood that is still to be prepared.
_LEAVES_IT_RAW = frozenset({Stripping.STRIP, Stripping.WASH})
# What the clock of a film answers.
_IN_TIME = frozenset({Answer.DRYING, Answer.TEST, Answer.DEAD_ZONE})


class LearntDate(Struct, frozen=True):
    """A recoat that your own pace moved: when it is by the label alone, and now; UTC.

    None: no date in this air. `factor` on the label's hours, as the coats of `acts` taught.
    """

    by_label: datetime | None
    now_is: datetime | None
    factor: float
    acts: tuple[int, ...]


class HoursThatBind(Struct, frozen=True):
    """The clock that decides: so many hours of a product or joint, low to high, since an act.

    `stage` is what is reached then; None: a joint, whose hours are real ones. `done_h` of them are
    over; `by_check`: the act of the check that settled it, None: none did.
    """

    product: str
    stage: Stage | None
    low_h: float
    high_h: float
    done_h: float
    since: datetime
    act: int
    by_check: int | None = None


class KeptThere(Struct, frozen=True):
    """How parts are kept, since when, in which rooms; by when they are looked at (None: no look).

    `deed` and `how` as the log has them (how None: not said); `look_for`: why a look, in words.
    """

    deed: str
    how: str | None
    since: datetime
    rooms: tuple[str, ...]
    act: int
    look_by: datetime | None = None
    look_for: str = ""


class Standing(Struct, frozen=True):
    """One line about parts that stand alike. Times are UTC; None: there is no such time.

    `operation` is the next step (empty: none), `product` what it puts on, or the next step that
    puts something on; `coat` of `coats` counts the coats of that product; `on_it` names the newest
    layer, `stopped` what that covered where it was broken off (None: it was finished); `layers`
    names the coats, oldest first, one that was broken off being none; `milestone` is what a
    finished part waits for; `deed` is what to do where it is not the next step; `faults` those that
    stand; `acts` are what it rests on, by their numbers in `history`; `next_time` is what was meant
    to come next when it was set aside; `binds` is the one of `findings` that decides, if one does;
    `fault` is the act of the one of `faults` that `because` speaks of (None: of none); `old_finish`
    is what was on it when it came in and still is (empty: nothing).
    """

    part: str
    label: Label
    pieces: tuple[int, ...]
    faces: tuple[str, ...]
    operation: str
    product: str
    coat: int
    coats: int
    on_it: str
    answer: Answer
    because: Finding
    low: datetime | None
    high: datetime | None
    closes: datetime | None
    findings: tuple[Finding, ...]
    scuff_first: bool = False
    layers: tuple[str, ...] = ()
    milestone: Milestone | None = None
    deed: Deed = Deed.NEXT_STEP
    faults: tuple[FaultThere, ...] = ()
    acts: tuple[int, ...] = ()
    next_time: str = ""
    binds: Finding | None = None
    learnt: LearntDate | None = None
    old_finish: str = ""
    # The room whose usual day, if it were told, would move its date by more than a day.
    usual_wanted: str = ""
    hours: HoursThatBind | None = None
    fault: int | None = None
    stopped: str | None = None
    # Bare wood before its first coat: how it was prepared, and until when that is good.
    prepared: Prepared | None = None
    # How it is kept while nothing is done to it; None: it stands free, or nobody said.
    kept: KeptThere | None = None


def standing_of(group: Group, seen: Look) -> Standing:
    """Put one group into plain values."""
    state = group.first
    verdict, step = state.verdict, state.progress.next
    operation = step.operation.value if step else ""
    product = step.product if step else None
    coat, coats = state.progress.coat_number(step) if step else (0, 0)
    top = state.top
    if step is None and not state.progress.steps and top:
        operation, product = Operation.COAT.value, product_due(state) or top.coat.product
        coat = sum(1 for layer in state.coats if layer.coat.product == product) + 1
    coat_step = state.progress.next_coat
    if step is not None and step.operation is not Operation.COAT and coat_step:
        product = coat_step.product
        coat, coats = state.progress.coat_number(coat_step)
    return Standing(
        part=group.part.path,
        label=group.label,
        pieces=group.pieces,
        faces=group.faces,
        operation=operation,
        product=product_name(product, seen.shop),
        coat=coat,
        coats=coats,
        on_it=top.coat.product_name if top else "",
        answer=verdict.answer,
        because=verdict.binds,
        low=verdict.low,
        high=verdict.high,
        closes=verdict.closes,
        findings=verdict.findings,
        scuff_first=verdict.scuff_first,
        layers=tuple(layer.coat.product_name for layer in state.coats),
        milestone=furthest(group.states, seen.bench.now)[1]
        if verdict.answer is Answer.DONE
        else None,
        deed=verdict.deed,
        faults=faults_there(state.faults),
        acts=acts_behind(group.states, seen.made),
        next_time=_next_time(state),
        learnt=_learnt(state, seen.bench),
        old_finish=name_of(state.old_finish) if state.old_finish else "",
        hours=_hours(verdict.wait, state, seen.bench),
        binds=None if verdict.binds.plain else verdict.binds,
        usual_wanted=_usual_wanted(state, seen.bench.now),
        fault=verdict.fault,
        stopped=top.coat.stopped if top else None,
        prepared=_prepared(state, seen),
        kept=_kept(state, seen),
    )


def _kept(state: ZoneState, seen: Look) -> KeptThere | None:
    at = kept(state)
    if at is None:
        return None
    look = look_at(state, seen.clock.now, seen.facts)
    by, words = (look[0], look[1].reason) if look else (None, "")
    if kept_early(state) is not None:
        by, words = at.since, "its film could not bear that yet"
    return KeptThere(at.deed, at.how, at.since, at.rooms, at.act, by, words)


def _prepared(state: ZoneState, seen: Look) -> Prepared | None:
    if state.face.kind is FaceKind.JOINT:
        return glue_face(state, seen.facts)
    step = state.progress.next
    if step is None or step.operation in ABRADES:
        return None
    over = coat_due(state, seen.shop, seen.facts).over
    was = prepared(state, over, seen.facts) if over is not None and state.entries else None
    return None if was is not None and was.deed in _LEAVES_IT_RAW else was


def _usual_wanted(state: ZoneState, now: datetime) -> str:
    in_time = state.verdict.answer in {*_IN_TIME, Answer.DONE}
    return state.room.name if in_time and usual_would_move(state, now) else ""


def _hours(
    wait: StageTime | None, state: ZoneState | None, bench: BenchState
) -> HoursThatBind | None:
    """Return the hours of the clock that decides; None where something else does."""
    if wait is None or wait.figure is None or state is None:
        return None
    figure, layer, now = wait.figure, bench.film(state, wait.coat), bench.now
    if layer is not None:
        layer = layer.as_counted(figure)
        early, needed = layer.needs_h(figure, wait.stage)
        return HoursThatBind(
            product=layer.coat.product_name,
            stage=wait.stage,
            low_h=early,
            high_h=needed,
            done_h=min(layer.done_h(figure, now), needed),
            since=layer.dries_since,
            act=layer.coat.act,
            by_check=wait.proved_by,
        )
    joint = state.joined_by
    if joint is None:
        return None
    closed = joint.when.latest
    done = min((now - closed) / timedelta(hours=1), figure.high_h)
    return HoursThatBind("the joint", None, figure.low_h, figure.high_h, done, closed, joint.act)


def _learnt(state: ZoneState, bench: BenchState) -> LearntDate | None:
    """Return how far its own pace moves what a film waits for; None where it does not."""
    wait = state.verdict.wait if state.verdict.answer in _IN_TIME else None
    of = bench.film(state, wait.coat) if wait else None
    if wait is None or of is None or of.pace is None or wait.figure is None:
        return None
    figure, now = wait.figure, bench.now
    by_label, now_is = of.label_waits(figure).high, of.waits(figure).high
    is_shown_alike = by_label == now_is or (
        by_label is not None and now_is is not None and now_is - by_label < SHOWN_TO
    )
    if is_shown_alike or (now_is is not None and now_is <= now):
        return None
    return LearntDate(by_label, now_is, of.factor, of.pace.acts)


def _next_time(state: ZoneState) -> str:
    """Return the words with which it was set aside; empty when it was not."""
    said = [e.reason for e in state.entries if isinstance(e, SetAside)]
    return said[-1] if state.set_aside and said else ""


def standings(states: Iterable[ZoneState], seen: Look) -> tuple[Standing, ...]:
    """Group zones and put each group into plain values."""
    return tuple(standing_of(group, seen) for group in groups(states))


def product_name(product: int | None, shop: Shop) -> str:
    """Name a product; empty when there is none."""
    return shop.products[product].name if product is not None else ""


def glue_up_standings(glue_ups: Iterable[GlueUp], seen: Look) -> tuple[Standing, ...]:
    """Put glue-ups into the same plain values, pieces with the same answer together."""
    alike: dict[tuple[int, Verdict], list[GlueUp]] = {}
    for each in glue_ups:
        alike.setdefault((each.part.id, each.verdict), []).append(each)
    return tuple(_glue_up(found, seen) for found in alike.values())


def _made(part: Part, seen: Look) -> tuple[int, ...]:
    return (seen.made[part.id],) if part.id in seen.made else ()


def _glue_up(glue_ups: Sequence[GlueUp], seen: Look) -> Standing:
    part, verdict = glue_ups[0].part, glue_ups[0].verdict
    members = {piece for glue in glue_ups for piece in glue.members}
    states = [z for z in seen.bench.zones if {z.piece.id, z.member_piece.id} & members]
    pieces = tuple(sorted(g.piece.number for g in glue_ups))
    return Standing(
        part=part.path,
        label=describe(part, pieces, ()),
        pieces=pieces,
        faces=(),
        operation=Operation.GLUE_UP.value,
        product="",
        coat=0,
        coats=0,
        on_it="",
        answer=verdict.answer,
        because=verdict.binds,
        low=verdict.low,
        high=verdict.high,
        closes=verdict.closes,
        findings=verdict.findings,
        acts=acts_behind(states, seen.made) or _made(part, seen),
        hours=_hours(verdict.wait, next(iter(states), None), seen.bench),
    )
