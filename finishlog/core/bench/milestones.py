"""When a whole part may be handled: every piece, every face, no failed check in the way."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.findings import Answer, Finding
from finishlog.core.finish.stage_time import StageTime, later
from finishlog.core.finish.stages import HANDLING, Stage
from finishlog.core.verdict.fold import UNDATED
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Verdict

# What a person waits for after the last coat; the earlier stages speak for themselves.
AFTER_THE_COATS = (Stage.CLAMP, Stage.STACK, Stage.PACK, Stage.CURED)
# What else than the film may put off: a joint in its cauls, food and a child.
_WAIT_FOR_MORE = frozenset({*HANDLING, Stage.LIGHT_USE})


class Milestone(Struct, frozen=True):
    """One stage of a part: `low` and `high` (UTC), or the check that blocks it.

    `missing` names the products that have no figure for it: then the times speak only for the
    rest, and nothing is promised. `dead_zone`: a recoat that is past and not yet again, until then.
    """

    stage: Stage
    low: datetime | None
    high: datetime | None
    air_read: bool
    blocked: Finding | None = None
    missing: tuple[str, ...] = ()
    dead_zone: bool = False

    def reached(self, now: datetime) -> bool:
        """Tell whether the stage is behind: promised, reckoned by readings and not blocked."""
        settled = not (self.blocked or self.missing or self.dead_zone)
        return settled and self.air_read and self.high is not None and self.high <= now


def milestone(states: Sequence[ZoneState], stage: Stage) -> Milestone | None:
    """Return one stage of the zones together; None when nothing on them has a figure for it."""
    coated = [s for s in states if s.layers]
    times = [s.stages[stage] for s in coated if stage in s.stages]
    if not times:
        return None
    time: StageTime = times[0]
    for other in times[1:]:
        time = later(time, other)
    held = [s.handling[stage] for s in coated if stage in s.handling]
    blocked = next((f for v in held if (f := _bars(v)) is not None), None)
    found = Milestone(stage, time.low, time.high, time.air_read, blocked, _missing(coated, stage))
    dead = [s.verdict.wait for s in coated if s.verdict.answer is Answer.DEAD_ZONE]
    if stage is Stage.RECOAT and dead and dead[0] is not None:
        return replace(found, low=dead[0].low, high=dead[0].high, dead_zone=True)
    if stage not in _WAIT_FOR_MORE:
        return found
    return _not_before(found, [v.high for v in held if v.answer is Answer.WAITS])


def _bars(verdict: Verdict) -> Finding | None:
    """Return what no date ends: a stop, or the test of a film that may never get there."""
    undated = verdict.answer is Answer.WAITS and verdict.high is None
    if verdict.answer in UNDATED or undated:
        return verdict.binds
    return next((f for f in verdict.findings if f.by_test), None)


def _not_before(found: Milestone, waits: Sequence[datetime | None]) -> Milestone:
    """Put a stage off to what else it waits for."""
    last = max((moment for moment in waits if moment is not None), default=None)
    if last is None or found.high is None:
        return found
    return replace(found, low=max(found.low or last, last), high=max(found.high, last))


def _missing(states: Iterable[ZoneState], stage: Stage) -> tuple[str, ...]:
    names = {s.layers[-1].coat.product_name for s in states if stage not in s.stages}
    return tuple(sorted(names))


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
