"""What binds an act, as a warning: with what has been waited of what is wanted, and why."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from msgspec.structs import replace

from finishlog.asks.look.look import Look
from finishlog.core.film.layers import Layer
from finishlog.core.findings import (
    NO_SCUFFING,
    PAIR,
    Answer,
    Finding,
    In,
    Level,
    also,
    finding,
    hours,
)
from finishlog.core.finish.classes import WindowKind
from finishlog.core.log.entries import Work
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Verdict


def answered(verdict: Verdict, state: ZoneState, then: Look, too_early: str) -> Finding:
    """Return what binds as a caution or a stop.

    `too_early`: what happens to a film too young for it; empty: as by a coat.
    """
    level = Level.CAUTION if verdict.answer is Answer.TEST else Level.STOP
    binds = verdict.binds
    film = then.bench.film(state, verdict.wait.coat) if verdict.wait else None
    if film is not None:
        binds = _so_far(binds, film, then.bench.now)
    pair = _why_it_waits(verdict, film) if verdict.answer is Answer.DRYING else None
    if pair is not None:
        binds = also(binds, reason=pair.value("reason"))
    found = finding("answered", level, answer_is=verdict.answer, too_early=too_early)
    return replace(also(found, lift=pair.value("remedy") if pair else ""), because_of=binds)


def _so_far(binds: Finding, film: Layer, now: datetime) -> Finding:
    """Tell how many of its label hours a wait has done, where they are not over."""
    figure = binds.wait.figure if binds.wait else None
    if binds.wait is None or figure is None or binds.measured is not None:
        return binds
    done, (_, needed) = (
        film.as_counted(figure).done_h(figure, now),
        film.needs_h(figure, binds.wait.stage),
    )
    return replace(binds, measured=hours(done), wanted=hours(needed)) if done < needed else binds


def _why_it_waits(verdict: Verdict, film: Layer | None) -> Finding | None:
    """Return the published pair that makes a coat wait for this film."""
    return next(
        (
            f
            for f in verdict.findings
            if f.rule == PAIR
            and f.value("waits")
            and film is not None
            and f.value("under") == film.of.name
        ),
        None,
    )


def too_young(scuff: Work, act: int) -> Finding:
    """Say that the scuffing on record came while the film was too young; `act` logs the coat."""
    found = finding("scuffed-too-young", Level.CAUTION, act=act, scuff=scuff.act)
    return replace(found, acts=(scuff.act,))


def not_scuffed(state: ZoneState, now: datetime, act: int) -> Finding:
    """Say that no scuffing is on record, and how long the window was over that asks for it.

    `act` logs the coat.
    """
    found = finding(NO_SCUFFING, Level.CAUTION, act=act)
    top = state.top
    window, closed = (top.coat.figures.window, top.closes()) if top else (None, None)
    if top is None or window is None or closed is None or now <= closed:
        return found
    if window.kind is not WindowKind.CLOSES or window.closes is None:
        return found
    since = (now - top.first_on) / timedelta(hours=1)
    return replace(found, measured=hours(since), wanted=hours(window.closes.low_h))


def once_each(found: Iterable[tuple[Finding, ZoneState]]) -> dict[Finding, list[ZoneState]]:
    """Put zones together that are told one thing, though one waited a little longer.

    The figure that stands is that of the shortest wait.
    """
    told: dict[Finding, tuple[Finding, list[ZoneState]]] = {}
    for each, state in found:
        first, states = told.setdefault(_without_hours(each), (each, []))
        states.append(state)
        if _waited(each) < _waited(first):
            told[_without_hours(each)] = each, states
    return dict(told.values())


def _without_hours(of: Finding) -> Finding:
    if of.rule == NO_SCUFFING:
        return replace(of, measured=None)
    cause = of.because_of
    return of if cause is None else replace(of, because_of=replace(cause, measured=None))


def _waited(of: Finding) -> float:
    figure = of.because_of.measured if of.because_of else of.measured
    return figure.value if figure is not None and figure.unit is In.HOURS else 0.0
