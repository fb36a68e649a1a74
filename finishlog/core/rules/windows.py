"""The clocks of one more coat: the wait, the recoat window, the dead zone between them.

A window that has closed asks for scuffing, and scuffing waits for the film to sand. Where it
closes first, the film is too late to bond by itself and too soft to scuff: the dead zone, which
begins on the window's clock and ends on the wait's.
"""

from __future__ import annotations

from datetime import datetime

from msgspec.structs import replace

from finishlog.core.film.layers import Layer
from finishlog.core.finish.stage_time import StageTime, later
from finishlog.core.film.old_finish import name_of
from finishlog.core.findings import Finding, Level
from finishlog.core.finish.classes import FinishClass, WindowKind
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Operation
from finishlog.core.rules.underneath import Underneath
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Answer, Verdict


def by_time(time: StageTime, now: datetime, what: str) -> Verdict | None:
    """Return the verdict while a wait runs; None once it is over and was measured."""
    if time.low is None or time.high is None:
        return _timed(Answer.DRYING, "stands still: this air is outside its limits", time)
    if now < time.low:
        return _timed(Answer.DRYING, f"{what} not reached", time)
    if now < time.high:
        return _timed(Answer.TEST, f"{what} may be reached, not promised yet", time)
    if not time.known:
        return _timed(Answer.TEST, f"{what} by {_reckoned(time)}", time)
    return None


def _timed(answer: Answer, because: str, time: StageTime) -> Verdict:
    return Verdict(answer, because, time.low, time.high, wait=time)


def _reckoned(time: StageTime) -> str:
    if time.air_read:
        return "the nearest readings: not all of its air was measured"
    return "label time only: the air was not measured"


def by_the_clocks(state: ZoneState, over: FinishClass, under: Underneath, now: datetime) -> Verdict:
    """Give the verdict of the clocks alone: the wait, the window, the dead zone, wrinkling.

    What needs no tooth has a wait and nothing else.
    """
    if not over.needs_tooth and state.top is not None and under.time is not None:
        return _by_wait(state.top, under, under.time, now)
    verdict = _by_wait_and_window(state, under, now)
    wrinkles = _may_wrinkle(state, now)
    if wrinkles is None or verdict.answer not in {Answer.GO, Answer.SCUFF}:
        return verdict
    hard = state.stages.get(Stage.CURED)
    return replace(
        verdict,
        answer=Answer.TEST,
        because=wrinkles.sentence,
        high=hard.high if hard else None,
        wait=hard,
        findings=(*verdict.findings, wrinkles),
        binds=wrinkles,
    )


def _may_wrinkle(state: ZoneState, now: datetime) -> Finding | None:
    """Tell of a film too late to recoat that scuffing does not save: only hardness or a test."""
    top, hard = state.top, state.stages.get(Stage.CURED)
    closes = top.closes() if top and top.of.wrinkles_when_late_source else None
    if top is None or closes is None or now <= closes:
        return None
    if hard and hard.high and now >= hard.high:
        return None
    return Finding(
        Level.CAUTION,
        "too late in its cure: even a scuffed film may wrinkle until it is fully hard",
        "scuff a spot and coat it first, or wait until it is fully hard",
        top.of.wrinkles_when_late_source or "",
    )


def _by_wait_and_window(state: ZoneState, under: Underneath, now: datetime) -> Verdict:
    top = state.top
    if top is None:
        old = state.old_finish
        return Verdict(Answer.GO, f"over {name_of(old)}" if old else "in the white")
    if under.time is None:
        return Verdict(Answer.TEST, f"no recoat figure for {top.of.name}")
    closes = top.closes()
    if not must_scuff(top, under, now):
        closes = None if was_scuffed(top) else closes
        return _closing(_by_wait(top, under, under.time, now), closes)
    both = _with_sanding(state, under.time)
    if both is None:
        return Verdict(Answer.TEST, f"needs scuffing; no sanding figure for {top.of.name}")
    waiting = by_time(both, now, "scuff and recoat")
    missed = closes is not None and now > closes
    if missed and (both.high is None or now < both.high):
        return _timed(Answer.DEAD_ZONE, "too late to bond by itself, too soft to scuff", both)
    why = "the recoat window has closed" if missed else "scuff it every time"
    return replace(waiting or _timed(Answer.SCUFF, why, both), scuff_first=True)


def _by_wait(top: Layer, under: Underneath, time: StageTime, now: datetime) -> Verdict:
    what = f"recoat over {(under.binds or top).coat.product_name}"
    return by_time(time, now, what) or _timed(Answer.GO, "dry enough to recoat", time)


def _closing(verdict: Verdict, closes: datetime | None) -> Verdict:
    """Add when the window closes; a wait that outlasts it cannot rely on it."""
    if closes is None:
        return verdict
    outlasts = verdict.answer is Answer.DRYING and (verdict.high is None or verdict.high > closes)
    findings = (
        (
            Finding(
                Level.CAUTION,
                "the window cannot be relied on in this air: it closes before the wait is over",
                "scuff once it sands",
            ),
        )
        if outlasts
        else ()
    )
    return replace(verdict, closes=closes, findings=findings)


def _with_sanding(state: ZoneState, recoat: StageTime) -> StageTime | None:
    sand = state.stages.get(Stage.SAND)
    return later(sand, recoat) if sand else None


def must_scuff(top: Layer, under: Underneath, now: datetime) -> bool:
    """Tell whether the next coat needs a scuffed film: not said to be done is not done."""
    if was_scuffed(top):
        return False
    kind = top.coat.figures.window.kind
    closes = top.closes()
    return under.scuffs or kind is WindowKind.ALWAYS_SCUFF or (closes is not None and now > closes)


def was_scuffed(top: Layer) -> bool:
    """Tell whether a film was scuffed or sanded when it could be; denibbing gives no grip."""
    sand = top.stage(Stage.SAND)
    since = sand.low if sand else top.put_on
    if since is None:
        return False
    off = top.was_abraded_off
    return (off is not None and off.when.latest >= since) or any(
        work.operation in {Operation.SCUFF, Operation.SAND} and work.when.latest >= since
        for work in top.abraded
    )
