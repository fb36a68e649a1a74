"""When a whole part may be handled: every piece, every face, no failed check in the way."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime
from functools import reduce

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.film.layers import PacksLonger
from finishlog.core.findings import Answer, Finding
from finishlog.core.finish.stage_time import StageTime, later
from finishlog.core.finish.stages import HANDLING, Stage
from finishlog.core.verdict.fold import UNDATED
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Verdict

# What a person waits for after the last coat; the earlier stages speak for themselves.
AFTER_THE_COATS = (Stage.CLAMP, Stage.STACK, Stage.PACK, Stage.CURED)
# What a carrier asks of a film: it is wrapped and pressed, shut in for days, handled by strangers.
_SHIPPED = (Stage.PACK, Stage.CLOSE, Stage.LIGHT_USE)
# What else than the film may put off: a joint in its cauls, food and a child.
_WAIT_FOR_MORE = frozenset({*HANDLING, Stage.LIGHT_USE, Stage.RECOAT})
# What the next coat lies on is not reckoned by the nearest readings.
_BY_READINGS_ALONE = frozenset({Stage.RECOAT, Stage.SAND})
_ASKS = frozenset({Answer.TEST, Answer.NOT_IN_THIS_AIR})


class Milestone(Struct, frozen=True):
    """One stage of a part: `low` and `high` (UTC), or the check that blocks it.

    `missing` names the products that have no figure for it: then the times speak only for the
    rest, and nothing is promised. `dead_zone`: a recoat that is past and not yet again, until then.
    `air_read`: its air was read near enough, for a recoat or sanding all the way; else it is
    promised from `sure` on, whatever the air was. `asks`: what the coat that is due waits for, or
    has tested first, though the film is ready for it. `better`: when the usual hours of rubbing
    out are over, between its two ends. `longer`: what makes it later than its figure.
    """

    stage: Stage
    low: datetime | None
    high: datetime | None
    air_read: bool
    blocked: Finding | None = None
    missing: tuple[str, ...] = ()
    dead_zone: bool = False
    sure: datetime | None = None
    asks: Finding | None = None
    better: datetime | None = None
    longer: tuple[PacksLonger, ...] = ()

    def is_over(self, now: datetime) -> bool:
        """Tell whether its clock is over, by the air as far as it is known."""
        return self.high is not None and self.high <= now

    def by_label_only(self, now: datetime) -> bool:
        """Tell whether its clock is over by air that nobody measured, and might be wrong."""
        told = self.air_read or (self.sure is not None and self.sure <= now)
        return self.is_over(now) and not told

    def reached(self, now: datetime) -> bool:
        """Tell whether the stage is behind: promised, reckoned by readings and not blocked."""
        settled = not (self.blocked or self.missing or self.dead_zone or self.asks)
        return settled and self.is_over(now) and not self.by_label_only(now)


def milestone(states: Sequence[ZoneState], stage: Stage) -> Milestone | None:
    """Return one stage of the zones together; None when nothing on them has a figure for it.

    A recoat is asked by the coat that is due, as its verdict is.
    """
    coated = [s for s in states if s.layers]
    clocks = [_clock(s, stage) for s in coated]
    times = [time for time in clocks if time is not None]
    if not times:
        return None
    time = reduce(later, times)
    held = [v for s in coated if (v := _verdict(s, stage)) is not None]
    blocked = next((f for v in held if (f := _bars(v)) is not None), None)
    told = time.known if stage in _BY_READINGS_ALONE else time.air_read
    missing = {s.layers[-1].coat.product_name for s, c in zip(coated, clocks, strict=True) if not c}
    found = Milestone(
        stage, time.low, time.high, told, blocked, tuple(sorted(missing)), sure=time.sure
    )
    if stage is Stage.RECOAT:
        dead = any(v.answer is Answer.DEAD_ZONE for v in held)
        found = replace(found, dead_zone=dead, asks=next(filter(None, map(_asks, held)), None))
    longer = {why for s in coated for why in s.layers[-1].packs_longer(stage)}
    found = replace(found, longer=tuple(sorted(longer)))
    if stage is Stage.RUB:
        return replace(found, better=_better(coated, stage))
    if stage in _WAIT_FOR_MORE:
        return _not_before(found, [v.high for v in held if v.answer is Answer.WAITS])
    return found


def _clock(state: ZoneState, stage: Stage) -> StageTime | None:
    due = state.recoat.clock if stage is Stage.RECOAT else None
    return due or state.stages.get(stage)


def _verdict(state: ZoneState, stage: Stage) -> Verdict | None:
    return state.recoat if stage is Stage.RECOAT else state.handling.get(stage)


def _asks(of: Verdict) -> Finding | None:
    """Return what a coat is held up by that is not the clock of the film."""
    by_clock = of.wait is not None and of.wait == of.clock
    return of.binds if of.answer in _ASKS and not by_clock else None


def to_ship(states: Sequence[ZoneState]) -> Milestone | None:
    """Return when a part may go by carrier: the last of what it then has to bear."""
    line = [m for stage in _SHIPPED if (m := milestone(states, stage))]
    if not line:
        return None
    last = max(
        line,
        key=lambda m: (bool(m.blocked), m.high is None, m.high or datetime.min.replace(tzinfo=UTC)),
    )
    lows, highs = [m.low for m in line], [m.high for m in line]
    return replace(
        last,
        low=None if None in lows else max(filter(None, lows)),
        high=None if None in highs else max(filter(None, highs)),
        air_read=all(m.air_read for m in line),
        missing=tuple(sorted({name for m in line for name in m.missing})),
        longer=(),
    )


def _bars(verdict: Verdict) -> Finding | None:
    """Return what no date ends: a stop, or the test of a film that may never get there."""
    undated = verdict.answer is Answer.WAITS and verdict.high is None
    if verdict.answer in UNDATED or undated:
        return verdict.binds
    return next((f for f in verdict.findings if f.by_test), None)


def _better(states: Sequence[ZoneState], stage: Stage) -> datetime | None:
    """Return when the usual hours of a stage are over on the top films; None: at one of its ends.

    A film that goes on shrinking draws the scratches of the rubbing out open again.
    """
    usual: list[datetime] = []
    for top in (state.layers[-1] for state in states):
        figure = top.coat.figures.stages.get(stage)
        if figure is None or not figure.low_h < figure.typical_h < figure.high_h:
            continue
        usual.extend(filter(None, [top.waits(figure.usual, stage).high]))
    return max(usual, default=None)


def _not_before(found: Milestone, waits: Sequence[datetime | None]) -> Milestone:
    """Put a stage off to what else it waits for."""
    last = max((moment for moment in waits if moment is not None), default=None)
    if last is None or found.high is None:
        return found
    return replace(found, low=max(found.low or last, last), high=max(found.high, last))


def furthest(
    states: Sequence[ZoneState], now: datetime
) -> tuple[Milestone | None, Milestone | None]:
    """Return the last of the milestones after the coats that is reached, and the next."""
    line = [m for stage in AFTER_THE_COATS if (m := milestone(states, stage))]
    reached: Milestone | None = None
    for each in line:
        if not each.reached(now):
            return reached, each
        reached = each
    return reached, None
