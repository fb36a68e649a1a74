"""The clocks of a film: the wait, the recoat window, the dead zone between them.

A window that has closed asks for scuffing, and scuffing waits for the film to sand. Where it
closes first, the film is too late to bond by itself and too soft to scuff: the dead zone, which
begins on the window's clock and ends on the wait's.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from msgspec.structs import replace

from finishlog.core.film.faults import StandingFault
from finishlog.core.film.grip import has_edge, wants_scuffing, was_scuffed
from finishlog.core.film.layers import Layer
from finishlog.core.findings import (
    Act,
    Answer,
    Finding,
    Level,
    also,
    celsius,
    finding,
    hours,
    pct,
    plainly,
)
from finishlog.core.finish.classes import WindowKind
from finishlog.core.finish.stage_time import StageTime, later
from finishlog.core.finish.stages import Stage
from finishlog.core.rules.film.underneath import Below, below, puts_colour_back
from finishlog.core.rules.reads import FAULTS, OPEN_WOOD, SAYS, STAGE
from finishlog.core.rules.rule import BY_HAND, COAT, HANDLED, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState


def clock(answer: Answer, rule_: str, time: StageTime | None = None, **says: str) -> Finding:
    """Return what a clock says: the answer tells it, it is listed nowhere else."""
    found = plainly(rule_, answer, **says)
    if time is None:
        return found
    return replace(found, low=time.low, high=time.high, wait=time)


def by_time(time: StageTime, now: datetime, film: Layer, **says: str) -> Finding | None:
    """Return what a clock says while a wait runs; None once it is over and was measured.

    What nobody measured is in doubt no longer than its slowest air may have kept it.
    """
    if not time.known and time.is_sure(now):
        is_over = time.high is not None and time.high <= now
        return None if is_over else clock(Answer.TEST, "perhaps-still", time, **says)
    if time.low is None or time.high is None:
        return _stands_still(clock(Answer.DRYING, "stands-still", time, **says), film, now)
    if now < time.low:
        return clock(Answer.DRYING, "not-reached", time, **says)
    if now < time.high:
        return clock(Answer.TEST, "may-be-reached", time, **says)
    if not time.known:
        reckoned = "air-reckoned" if time.air_read else "air-not-measured"
        return clock(Answer.TEST, reckoned, time, **says)
    return None


def _stands_still(found: Finding, film: Layer, now: datetime) -> Finding:
    """Say what of the air holds a film up, and the limit that it is beyond."""
    air = next(iter(film.drying_air.span_at(max(now, film.dries_since)).nearest), None)
    limits = film.of.limits
    if air is None:
        return found
    warm, damp = air.temperature_c, air.humidity_pct
    if limits.min_c and warm < limits.min_c.least:
        return replace(found, measured=celsius(warm), wanted=celsius(limits.min_c.value))
    if limits.max_c and warm > limits.max_c.most:
        found = replace(found, measured=celsius(warm), wanted=celsius(limits.max_c.value))
        return also(found, most="most")
    if limits.max_rh_pct and damp > limits.max_rh_pct.value:
        found = replace(found, measured=pct(damp), wanted=pct(limits.max_rh_pct.value))
        return also(found, most="most")
    return found


@rule("film-clock", binds=BY_HAND | HANDLED, source="the label, or its class", reads=STAGE)
def film_clock(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Work by hand and handling wait for the stage of the film that they need."""
    stage, top = asked.stage, zone.top
    if stage is None or top is None:
        yield clock(Answer.GO, "nothing-to-dry")
        return
    time = zone.stages.get(stage)
    if time is None:
        yield clock(Answer.TEST, "no-figure", stage=stage.value, of=top.of.name)
        return
    told = time.reckoned if asked.act in HANDLED | {Act.RUB} else time
    running = by_time(told, around.now, top, stage=stage.value)
    yield running or clock(Answer.GO, "stage-reached", time, stage=stage.value)


@rule(
    "recoat-clock",
    binds=COAT,
    source="the label, or its class",
    reads=f"{STAGE} {OPEN_WOOD} {FAULTS} fault.when product.name product.label_window {SAYS}",
)
def recoat_clock(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A coat waits for what lies below; late it wants a scuffed film; what needs no tooth waits."""
    if asked.over is None:
        return
    top, under = zone.top, below(zone, asked, around)
    if top is None:
        old = zone.old_finish
        yield clock(Answer.GO, "over-old-finish" if old else "in-the-white", of=old or "")
    elif under.time is None:
        yield clock(Answer.TEST, "no-figure", stage=Stage.RECOAT.value, of=top.of.name)
    elif not asked.over.needs_tooth or puts_colour_back(zone, asked):
        yield _by_wait(top, under, under.time, around.now)
    else:
        time = under.time.from_its_low_end if _window_ends_it(top, under) else under.time
        yield from _by_wait_and_window(zone, top, under, time, around.now)


def _window_ends_it(top: Layer, under: Below) -> bool:
    """Tell whether a window is over, by its own figure, no later than the wait for the next coat.

    The figures of a class span its systems: what closes soonest may be coated soonest. So the low
    end of the wait is the promise, else no moment would be right. common practice
    """
    window, wait = top.coat.figures.window, under.time.figure if under.time else None
    if under.slowest is not top or wait is None or window.kind is not WindowKind.CLOSES:
        return False
    return window.closes is not None and wait.low_h < window.closes.low_h <= wait.high_h


def _by_wait_and_window(
    zone: ZoneState, top: Layer, under: Below, recoat: StageTime, now: datetime
) -> Iterator[Finding]:
    closes, again = top.closes(now), top.opens_again()
    if again is not None and closes is not None and now > closes and not top.is_open_again(now):
        scuffed = top.coat.figures.window.again
        how = "scuff and recoat" if scuffed is not None and scuffed.scuffed else "recoat"
        yield clock(Answer.DEAD_ZONE, "between-windows", later(again, recoat), then=how)
        return
    if not must_scuff(zone, under, now):
        closes = None if was_scuffed(top) else closes
        wait = _by_wait(top, under, recoat, now)
        yield replace(wait, closes=closes)
        if wait.answer is Answer.DRYING and closes and (wait.high is None or wait.high > closes):
            yield finding("window-unreliable", Level.CAUTION)
        return
    sand = zone.stages.get(Stage.SAND)
    if sand is None:
        yield clock(Answer.TEST, "no-sanding-figure", of=top.of.name)
        return
    both = later(sand, recoat)
    missed = _is_late(zone, now)
    if missed and (both.high is None or now < both.high):
        yield clock(Answer.DEAD_ZONE, "dead-zone", both, then="scuff and recoat")
        return
    uneven = next((f.known.name for f in zone.faults if _wants_evening(f, top)), None)
    why = (
        "window-closed"
        if missed
        else "even-first"
        if uneven
        else "edge-first"
        if has_edge(top)
        else "scuff-always"
        if again is None
        else "scuff-now"
    )
    due = clock(Answer.SCUFF, why, both, **({"fault": uneven} if uneven and not missed else {}))
    if missed and top.coat.figures.window.closes is not None:
        due = replace(due, wanted=hours(top.coat.figures.window.closes.low_h))
    yield replace(by_time(both, now, top, what="scuff") or due, scuff=True)


def _by_wait(top: Layer, under: Below, time: StageTime, now: datetime) -> Finding:
    film = under.slowest or top
    return by_time(time, now, film, over=film.coat.product_name) or clock(
        Answer.GO, "dry-enough", time
    )


def must_scuff(zone: ZoneState, under: Below, now: datetime) -> bool:
    """Tell whether the next coat needs a scuffed film: not said to be done is not done."""
    top = zone.top
    if top is None:
        return False
    if any(_wants_evening(fault, top) for fault in zone.faults):
        return True
    if was_scuffed(top):
        return False
    meets = any(wants_scuffing(layer, now) for layer in zone.lying_open)
    return under.scuffs or has_edge(top) or meets


def _is_late(zone: ZoneState, now: datetime) -> bool:
    """Tell whether the window of a film is over that the next coat meets somewhere."""
    closes = (layer.closes(now) for layer in zone.lying_open)
    return any(moment is not None and now > moment for moment in closes)


def _wants_evening(fault: StandingFault, top: Layer) -> bool:
    """Tell whether nibs, bubbles or marks of a brush are sanded off before the next coat."""
    since = [w for w in top.abraded if w.when.order > fault.fault.when.order]
    return fault.known.evened_first and not since


def scuffs_first(zone: ZoneState, asked: Asked, around: Around) -> bool:
    """Tell whether a coat that is asked has to be scuffed for first."""
    if asked.over is None or zone.top is None or not asked.over.needs_tooth:
        return False
    return must_scuff(zone, below(zone, asked, around), around.now)


@rule("may-wrinkle", binds=COAT, source="the class", reads=f"{STAGE} product.label_window")
def may_wrinkle(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film too late to recoat that scuffing does not save: only hardness or a test does."""
    top = zone.top
    window = top.coat.figures.window.closes if top else None
    closes = top.closes(around.now) if top and top.of.wrinkles_when_late_source else None
    if top is None or window is None or closes is None or around.now <= closes:
        return
    if asked.over is None or not asked.over.needs_tooth:
        return
    hard = zone.date_of(Stage.CURED)
    if hard and hard.high and around.now >= hard.high:
        return
    source = top.of.wrinkles_when_late_source or ""
    late = hours(window.low_h)
    found = finding("may-wrinkle", Level.CAUTION, source, wanted=late, answer=Answer.TEST)
    yield replace(found, high=hard.high, wait=hard) if hard else found


@rule(
    "steps-behind",
    binds=frozenset({Act.REST}),
    source="the steps",
    reads="coat.product work.operation step.operation step.product step.faces",
)
def steps_behind(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Nothing is asked: the steps are behind, or there are none."""
    yield clock(Answer.DONE, "steps-behind" if zone.progress.steps else "no-steps")
