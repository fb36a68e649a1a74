"""The state of one zone, and the verdict on its next step."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from functools import reduce

from finishlog.core import checks as film_checks
from finishlog.core.book import Book
from finishlog.core.coating_air import air_findings
from finishlog.core.findings import Finding, Level
from finishlog.core.finishes import FinishClass, Method, WindowKind
from finishlog.core.layers import Layer, StageTime
from finishlog.core.progress import Progress
from finishlog.core.records import Found, Operation, Target
from finishlog.core.room_air import RoomAir
from finishlog.core.shop import Face, Part, Piece, Step, Zone
from finishlog.core.stages import Stage, shown
from finishlog.core.underneath import Underneath, later, look_through
from finishlog.core.verdicts import Answer, Verdict

# What a piece of work asks of the film under it; work not named asks nothing. common practice
NEEDS: Mapping[Operation, Stage] = {
    Operation.SCUFF: Stage.SAND,
    Operation.DENIB: Stage.SAND,
    Operation.SAND: Stage.SAND,
    Operation.MASK: Stage.CLAMP,
    Operation.UNTAPE: Stage.TACK_FREE,
    Operation.RUB: Stage.RUB,
    Operation.HARDWARE: Stage.STACK,
    Operation.GLUE_UP: Stage.CLAMP,
}


@dataclass(frozen=True, slots=True)
class ZoneState:
    """One zone of one piece: its layers, where it stands, what comes next and whether it may.

    `part` and `piece` are what the zone belongs to now: the assembly, once it is glued up into
    one. `member` and `member_piece` are what it was made as.
    """

    target: Target
    part: Part
    piece: Piece
    member: Part
    member_piece: Piece
    face: Face
    zone: Zone
    layers: tuple[Layer, ...]
    progress: Progress
    room: RoomAir
    set_aside: bool
    species: str | None
    stages: Mapping[Stage, StageTime] = field(default_factory=dict)
    verdict: Verdict = field(default_factory=lambda: Verdict(Answer.DONE, ""))

    @property
    def joined(self) -> bool:
        """Tell whether the piece is glued up into an assembly."""
        return self.piece.id != self.member_piece.id

    @property
    def top(self) -> Layer | None:
        """The newest layer; None in the white."""
        return self.layers[-1] if self.layers else None


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked of a zone: a step, or a product when the part has no steps."""

    step: Step | None
    over: FinishClass | None
    method: Method | None = None


def milestones(layers: Sequence[Layer]) -> dict[Stage, StageTime]:
    """Return when the whole film reaches each stage: every layer must have."""
    found: dict[Stage, StageTime] = {}
    for stage in Stage:
        times = [time for layer in layers if (time := layer.stage(stage))]
        top = layers[-1].stage(stage) if layers else None
        # What is done to the surface asks the top layer; a passed check speaks for all below it.
        if stage in {Stage.RECOAT, Stage.SAND} or (top and top.proved_by):
            times = [top] if top else []
        if times:
            found[stage] = reduce(later, times)
    return found


def decide(
    state: ZoneState, asked: Asked, wet_elsewhere: tuple[str, datetime | None] | None,
    now: datetime, book: Book,
) -> Verdict:
    """Give the verdict on what is asked. The first thing that binds decides."""
    stopped = _standing(state, now, book)
    if stopped:
        return stopped
    if asked.step is None and asked.over is None:
        return Verdict(Answer.DONE, "every step is behind" if state.progress.steps else "no steps")
    if asked.over is None:
        assert asked.step is not None
        return _work(state, asked.step.operation, now)
    return _coat(state, asked.over, asked.method, wet_elsewhere, now, book)


def _standing(state: ZoneState, now: datetime, book: Book) -> Verdict | None:
    """Return what holds whatever is asked next: set aside, a deadline, a suspect or dead film."""
    if state.set_aside:
        return Verdict(Answer.SET_ASIDE, "set aside")
    top = state.top
    if top is None:
        return None
    wipe_by = top.wipe_off_by()
    if wipe_by is not None and now < wipe_by:
        return Verdict(
            Answer.DEADLINE, f"wipe off the surplus {top.coat.product_name}", closes=wipe_by
        )
    cold = next((layer for layer in state.layers if layer.is_suspect()), None)
    if cold is not None:
        return Verdict(Answer.SUSPECT, "met air too cold for it while young", findings=(_cold(cold),))
    slow = timedelta(hours=book.drying.slow_after_h)
    if film_checks.stalled(top.checks, top.put_on, slow):
        failure = film_checks.standing_failures(top.checks)[-1]
        return Verdict(
            Answer.STALLED,
            f"still {failure.found.value}, and no better than before",
            findings=(
                Finding(
                    Level.STOP,
                    "no progress over repeated checks: more time alone may not cure it",
                    "warm and move the air; if it does not change, take it off",
                    book.drying.slow_source,
                ),
            ),
        )
    return None


def _cold(layer: Layer) -> Finding:
    span, limit = layer.suspect_because(), layer.of.limits.min_c
    assert span is not None
    assert limit is not None
    return Finding(
        Level.STOP,
        f"{layer.coat.product_name} met {span.airs[0].temperature_c:.0f} °C in its first hours, "
        f"below {limit.value:.0f} °C: it may feel dry and stay weak",
        "scratch a hidden spot; if it flakes, take it off",
        limit.source,
    )


def _blocked(state: ZoneState, stage: Stage) -> Verdict | None:
    top = state.top
    failure = film_checks.blocking(top.checks, stage) if top else None
    if failure is None:
        return None
    return Verdict(
        Answer.BLOCKED,
        f"{failure.test.value} failed: {failure.found.value}",
        findings=(
            Finding(
                Level.STOP,
                f"the {failure.test.value} check found it {failure.found.value}",
                "check again later; a failed check beats the clock",
            ),
        ),
    )


def _by_time(time: StageTime, now: datetime, what: str) -> Verdict | None:
    """Return the verdict while a wait runs; None once it is over and was measured."""
    if time.low is None or time.high is None:
        return Verdict(
            Answer.DRYING, "stands still: this air is outside its limits", time.low, time.high
        )
    if now < time.low:
        return Verdict(Answer.DRYING, f"drying: {what}", time.low, time.high)
    if now < time.high:
        return Verdict(
            Answer.TEST, f"{what} is possible, not promised before the later time", time.low,
            time.high,
        )
    if not time.measured:
        return Verdict(
            Answer.TEST, f"{what} by label time only: the air was not measured", time.low, time.high
        )
    return None


def _work(state: ZoneState, operation: Operation, now: datetime) -> Verdict:
    """Give the verdict on work by hand."""
    stage, top = NEEDS.get(operation), state.top
    if stage is None or top is None:
        return Verdict(Answer.GO, "nothing under it has to dry")
    blocked = _blocked(state, stage)
    if blocked:
        return blocked
    time = state.stages.get(stage)
    if time is None:
        return Verdict(Answer.TEST, f"no figure for {shown(stage)} of {top.of.name}")
    return _by_time(time, now, shown(stage)) or Verdict(
        Answer.GO, f"{shown(stage)} reached", time.low, time.high
    )


def _coat(
    state: ZoneState,
    over: FinishClass,
    method: Method | None,
    wet_elsewhere: tuple[str, datetime | None] | None,
    now: datetime,
    book: Book,
) -> Verdict:
    """Give the verdict on one more coat."""
    under = look_through(state.layers, over, state.species, book)
    air = air_findings(over, method, state.room, now, book.drying)
    findings = (*under.findings, *air)
    blocked = _blocked(state, Stage.RECOAT)
    if blocked:
        return _with(blocked, findings)
    if under.forbids:
        stop = next(f for f in findings if f.level is Level.STOP)
        return Verdict(Answer.UNDERNEATH, stop.sentence, findings=findings)
    timed = _timed(state, under, now)
    if timed.answer not in {Answer.GO, Answer.SCUFF, Answer.TEST}:
        return _with(timed, findings)
    if wet_elsewhere is not None:
        face, until = wet_elsewhere
        return Verdict(
            Answer.WAITS, f"{face} must bear turning first", high=until, closes=timed.closes,
            waits_for=face, findings=findings,
        )
    stops = [f for f in air if f.level is Level.STOP]
    if stops:
        return Verdict(
            Answer.NOT_IN_THIS_AIR, stops[0].sentence, timed.low, timed.high, timed.closes,
            findings=findings,
        )
    unsure = _unsure(state, under, air)
    if unsure and timed.answer is not Answer.TEST:
        return Verdict(
            Answer.TEST, unsure, timed.low, timed.high, timed.closes, findings=findings
        )
    return _with(timed, findings)


def _with(verdict: Verdict, findings: tuple[Finding, ...]) -> Verdict:
    return Verdict(
        verdict.answer, verdict.because, verdict.low, verdict.high, verdict.closes,
        verdict.waits_for, (*verdict.findings, *findings),
    )


def _unsure(state: ZoneState, under: Underneath, air: tuple[Finding, ...]) -> str:
    cautions = [f for f in air if f.level is Level.CAUTION]
    if under.wants_test:
        return "what is underneath is not sure to take it"
    if cautions:
        return cautions[0].sentence
    top = state.top
    prints = top and any(
        c.found is Found.PRINTS for c in film_checks.standing_failures(top.checks)
    )
    if prints and top and top.coat.figures.window.kind is not WindowKind.MELTS_IN:
        return "it still prints"
    return ""


def _timed(state: ZoneState, under: Underneath, now: datetime) -> Verdict:
    """Give the verdict of the clocks alone: the wait, the window, the dead zone."""
    top = state.top
    if top is None:
        return Verdict(Answer.GO, "in the white")
    if under.time is None:
        return Verdict(Answer.TEST, f"no recoat figure for {top.of.name}")
    binds = under.binds or top
    what = f"recoat over {binds.coat.product_name}"
    closes = top.closes()
    if not must_scuff(top, under, now):
        waiting = _by_time(under.time, now, what)
        answer = waiting or Verdict(Answer.GO, "dry enough to recoat", *_span(under.time))
        return _closing(answer, closes)
    both = _with_sanding(state, under.time)
    if both is None:
        return Verdict(Answer.TEST, f"needs scuffing; no sanding figure for {top.of.name}")
    waiting = _by_time(both, now, "scuff and recoat")
    missed = closes is not None and now > closes
    if missed and waiting and waiting.answer is Answer.DRYING:
        return Verdict(
            Answer.DEAD_ZONE, "too late to bond by itself, too soft to scuff", both.low, both.high
        )
    why = "the recoat window has closed" if missed else "scuff it every time"
    return waiting or Verdict(Answer.SCUFF, why, both.low, both.high)


def _span(time: StageTime) -> tuple[datetime | None, datetime | None]:
    return time.low, time.high


def _closing(verdict: Verdict, closes: datetime | None) -> Verdict:
    """Add when the window closes; a wait that outlasts it cannot rely on it."""
    if closes is None:
        return verdict
    outlasts = verdict.answer is Answer.DRYING and (verdict.high is None or verdict.high > closes)
    findings = (
        Finding(
            Level.CAUTION,
            "the window cannot be relied on in this cold: it closes before the wait is over",
            "scuff once it sands",
        ),
    ) if outlasts else ()
    return Verdict(
        verdict.answer, verdict.because, verdict.low, verdict.high, closes, verdict.waits_for,
        findings,
    )


def _with_sanding(state: ZoneState, recoat: StageTime) -> StageTime | None:
    sand = state.stages.get(Stage.SAND)
    return later(sand, recoat) if sand else None


def must_scuff(top: Layer, under: Underneath, now: datetime) -> bool:
    """Tell whether the next coat needs a scuffed film: not said to be done is not done."""
    if top.abraded:
        return False
    kind = top.coat.figures.window.kind
    closes = top.closes()
    return (
        under.scuffs
        or kind is WindowKind.ALWAYS_SCUFF
        or (closes is not None and now > closes)
    )
