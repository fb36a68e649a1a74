"""What an act among others changes besides itself: dates that moved, work now judged otherwise."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.answers.warn import warnings_before
from finishlog.asks.look.look import Look
from finishlog.asks.look.pace import top_pace
from finishlog.core.findings import Finding, Level
from finishlog.core.log.entries import Coat, Heated, Target, Work
from finishlog.core.safety.whats_in import in_coat, in_work
from finishlog.core.zone.grouping import groups
from finishlog.core.zone.state import ZoneState
from finishlog.picking import Zones


class MovedDate(Struct, frozen=True):
    """What may be done next was reckoned for `was` and is now for `now_is`, UTC; None: no date.

    `pace`: what was learnt of how its film dries here, in words; empty: nothing.
    """

    label: str
    was: datetime | None
    now_is: datetime | None
    pace: str = ""


def moved_dates(before: Look, after: Look, but: Collection[Target] = ()) -> tuple[MovedDate, ...]:
    """Return the waits that end at another time now, alike ones together; what is past is not.

    `but`: zones to leave out.
    """
    were = {z.target: z.verdict.high for z in before.bench.zones}
    moved: dict[datetime | None, list[ZoneState]] = {}
    for state in (z for z in after.bench.zones if z.target not in but):
        was = were.get(state.target, state.verdict.high)
        ends = [m for m in (was, state.verdict.high) if m is not None]
        if was != state.verdict.high and max(ends) > after.bench.now:
            moved.setdefault(was, []).append(state)
    return tuple(
        MovedDate(
            group.label.full,
            was,
            group.first.verdict.high,
            top_pace(group.first, after.shop),
        )
        for was, states in moved.items()
        for group in groups(states)
    )


class Renumbered(Struct, frozen=True):
    """A coat that is another in the row of coats now: `was` and `now_is` count from 1."""

    label: str
    act: int
    was: int
    now_is: int


def renumbered(before: Look, after: Look, touched: frozenset[Target]) -> tuple[Renumbered, ...]:
    """Return the coats of some zones whose number is another now, parts that are alike together."""
    were = {z.target: _numbers(z) for z in before.bench.zones}
    states = [z for z in after.bench.zones if z.target in touched]
    return tuple(
        Renumbered(group.label.full, act, was, n)
        for group in groups(states)
        for act, n in _numbers(group.first).items()
        if (was := were.get(group.first.target, {}).get(act, n)) != n
    )


def _numbers(state: ZoneState) -> dict[int, int]:
    """Number coats by their acts, as `on` does; of several of one act the last."""
    counted = state.layers[len(state.earlier) :]
    return {layer.coat.act: n for n, layer in enumerate(counted, 1)}


def now_judged(
    before: Look, after: Look, touched: frozenset[Target], since: datetime, acts: Mapping[int, int]
) -> tuple[Finding, ...]:
    """Judge coats and work on some zones again, from a moment on; return what was not said before.

    `acts`: by the number of an amended act that of the amendment.
    """
    known = set(_judged(before, touched, since, acts))
    fresh = (f for f in _judged(after, touched, since, acts) if f not in known)
    return tuple(dict.fromkeys(fresh))


def _judged(
    seen: Look, touched: frozenset[Target], since: datetime, acts: Mapping[int, int]
) -> Iterator[Finding]:
    for done in seen.log.entries:
        if not isinstance(done, Coat | Work):
            continue
        if done.when.latest < since or not done.targets & touched:
            continue
        what = done.product_name if isinstance(done, Coat) else done.operation.value
        act = acts.get(done.act, done.act)
        for finding in _as_it_was_done(seen, done, act, touched):
            if finding.level is not Level.NOTE:
                yield replace(finding, about=f"act {act}, {what}")


def _as_it_was_done(
    seen: Look, done: Coat | Work, act: int, touched: frozenset[Target]
) -> tuple[Finding, ...]:
    """Return the warnings that a coat or work gets by the log as it was right before it."""
    moment = done.when.latest
    mine = (done.when.order, done.id)
    # A heater that was on its way stays, though it runs later.
    log = seen.log.as_of(moment).only(
        lambda e: isinstance(e, Heated) or (e.when.order, e.id) < mine
    )
    then = seen.by(log, moment)
    on = Zones(targets=done.targets & touched)
    if isinstance(done, Work):
        comes = in_work(done.note)
        how = done.operation
        return warnings_before(
            then, on, act, operation=how, comes=comes, grit=done.grit, kept=done.kept
        )
    return warnings_before(
        then,
        on,
        act,
        over=seen.facts.finish_class(done.figures.class_key),
        method=done.method,
        scuffed=done.scuffed_before,
        comes=in_coat(done, seen.shop),
        product=done.product,
    )
