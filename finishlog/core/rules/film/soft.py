"""A film that a check found soft: within its time, or late; whether it gets on, or was dry late.

A slow film is not a failed one: as long as it gets better it is waited for. Whoever asks for a date
gets the clock's; when that is over, there is none but the next check.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import datetime, timedelta
from functools import reduce

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.room import RoomAir
from finishlog.core.film import checks as film_checks
from finishlog.core.film.checks import no_better, standing_failures
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Answer, Deed, Finding, Level, finding, hours
from finishlog.core.finish.classes import COMMON_PRACTICE, Figure
from finishlog.core.finish.stage_time import StageTime, later
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check
from finishlog.core.log.words import Found
from finishlog.core.published.facts import Facts
from finishlog.core.rules.reads import STAGE
from finishlog.core.rules.rule import COAT, EVERY, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# What a label promises in vain when a film is still so. common practice
PROMISED: Mapping[Found, tuple[Stage, ...]] = {
    Found.TACKY: (Stage.TACK_FREE, Stage.RECOAT),
    Found.GUMS: (Stage.SAND, Stage.RECOAT),
    Found.PRINTS: (Stage.CLAMP,),
}


_TO_RECOAT = (Stage.TACK_FREE, Stage.SAND, Stage.RECOAT)


class Soft(Struct, frozen=True):
    """The newest check that found the top film soft, the one before, and its time.

    `promised`: the shortest figure that it breaks, if there is any; `due`: when that was over by
    the clock, None: no date in this air; `age`: how old the film was then.
    """

    failure: Check
    before: Check | None
    promised: Figure | None
    due: datetime | None
    age: timedelta

    @property
    def is_late(self) -> bool:
        """Tell whether it failed when its time was over, by the calendar where no clock runs."""
        if self.due is None:
            return self.promised is not None and self.age >= timedelta(hours=self.promised.high_h)
        return self.failure.when.earliest >= self.due

    @property
    def is_overdue(self) -> bool:
        """Tell whether twice its label hours were over, however slow the air made them.

        Else the worse the air, the less would be said: its hours never pass there.
        """
        return self.promised is not None and self.age >= timedelta(hours=2 * self.promised.high_h)

    @property
    def gets_on(self) -> bool:
        """Tell whether the newest check shows progress since the one before."""
        return self.before is not None and not no_better(self.before.found, self.failure.found)


def still_soft(top: Layer | None) -> Soft | None:
    """Return how soft a top film is by its checks; None when no check stands against it."""
    if top is None or not top.checks:
        return None
    soft = [c for c in standing_failures(top.checks) if c.found in PROMISED]
    if not soft:
        return None
    failed = [c for c in top.checks if c.found in PROMISED and c.when.order < soft[-1].when.order]
    stages = top.coat.figures.stages
    figures = [stages[s] for s in PROMISED[soft[-1].found] if s in stages]
    timed = [(high, f) for f in figures if (high := top.label_waits(f).high) is not None]
    shortest = min(figures, key=lambda f: f.high_h, default=None)
    due, figure = min(timed, key=lambda t: t[0], default=(None, shortest))
    age = soft[-1].when.earliest - top.dries_since
    return Soft(soft[-1], failed[-1] if failed else None, figure, due, age)


def dry_again(top: Layer | None) -> StageTime | None:
    """Return when a film that failed within its time may be sanded and recoated by the clocks.

    None: nothing stands against it, it is late, or it has no figure.
    """
    soft = still_soft(top)
    if top is None or soft is None or soft.is_late:
        return None
    figures = (top.coat.figures.stages.get(stage) for stage in _TO_RECOAT)
    times = [top.waits(figure) for figure in figures if figure]
    return reduce(later, times) if times else None


def soft_until(top: Layer | None, now: datetime) -> datetime | None:
    """Return until when a film that a check found soft is within its time; None: it is not."""
    soft = still_soft(top)
    if soft is None or soft.is_late or soft.due is None:
        return None
    return soft.due if soft.due > now else None


def past_hope(top: Layer) -> bool:
    """Tell whether a film is soft when it might be fully hard: time alone is unlikely to help.

    Tacky or gumming counts from the low end of full hardness, printing from the high end, on the
    wait's clock. A film that gets on is only slow. common practice
    """
    soft, hard = still_soft(top), top.coat.figures.stages.get(Stage.CURED)
    if soft is None or hard is None or soft.gets_on:
        return False
    time = top.label_waits(hard)
    due = time.high if soft.failure.found is Found.PRINTS else time.low
    return due is not None and soft.failure.when.earliest >= due


def wait_until(top: Layer) -> datetime | None:
    """Return until when a soft film is given time: then its class may be fully hard.

    By the clock; where the air gives none, by its hours themselves. None: its class has no figure.
    """
    hard = top.coat.figures.stages.get(Stage.CURED)
    if hard is None:
        return None
    return top.label_waits(hard).low or top.dries_since + timedelta(hours=hard.low_h)


# What shows that a film which dried late is sound all through.
_SOUND = frozenset({Found.POWDER, Found.NO_PRINT, Found.HOLDS, Found.RESISTS})


class DriedLate(Struct, frozen=True):
    """A film that took far longer than its hours (`figure`) before it passed: `after` its coat."""

    layer: Layer
    passed: Check
    after: timedelta
    figure: Figure


def dried_late(layer: Layer) -> DriedLate | None:
    """Tell whether a film passed a light touch long after it should; None: not that is known.

    A check that passed late tells nothing by itself: it was soft before, by a check, or was said to
    have been until then. Slow air excuses it. Twice its hours is far longer: our own rule.
    """
    touched = [c for c in layer.checks if Stage.TACK_FREE in film_checks.PROVES.get(c.found, ())]
    figure = layer.coat.figures.stages.get(Stage.TACK_FREE)
    if figure is None or not touched or any(c.found in _SOUND for c in layer.checks):
        return None
    passed = touched[0]
    before = (c for c in layer.checks if c.when.order < passed.when.order)
    soft = [c for c in (passed,) if c.only_now] or [c for c in before if c.found in PROMISED]
    wait = layer.label_waits(figure)
    met = layer.drying_air.until(passed.when.earliest)
    if wait.high is None and all(span.measured for span in met):
        return None
    due = wait.high or layer.dries_since + timedelta(hours=figure.high_h)
    late = [c for c in soft if c.when.earliest - layer.dries_since >= 2 * (due - layer.dries_since)]
    if not late:
        return None
    return DriedLate(layer, passed, late[-1].when.earliest - layer.dries_since, figure)


@rule(
    "dried-late",
    binds=COAT,
    source=COMMON_PRACTICE,
    reads=f"{STAGE} check.only_now product.name",
    mended_by="off",
)
def dried_late_below(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What kept a film soft for long may keep the coat over it soft: it is tried first."""
    if asked.over is None:
        return
    for late in filter(None, map(dried_late, reversed(zone.layers))):
        found = finding(
            "dried-late",
            Level.CAUTION,
            COMMON_PRACTICE,
            measured=hours(round(late.after / timedelta(hours=1))),
            wanted=hours(late.figure.high_h),
            answer=Answer.TEST,
            of=late.layer.coat.product_name,
            least=late.figure.low_h,
            least_so="" if late.passed.only_now else "least",
        )
        acts = (late.layer.coat.act, late.passed.act)
        yield replace(found, acts=acts, by_test=True)
        return


@rule("stalled", binds=EVERY, source="facts: drying", reads=f"{STAGE} check.place", mended_by="off")
def stalled(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film that failed again when it was long due, and no better, is not slow: it has stopped."""
    top, facts = zone.top, around.facts
    checks = [c for c in top.checks if c.found not in film_checks.NO_TIME_MENDS] if top else ()
    failures = film_checks.standing_failures(checks)
    if top is None or not failures:
        return
    found = failures[-1].found
    if past_hope(top):
        age = _rounded_down(failures[-1].when.earliest - top.dries_since)
        over = finding(
            "past-hope", Level.STOP, COMMON_PRACTICE, answer=Answer.STALLED, found=found, age=age
        )
        yield replace(over, acts=(failures[-1].act,))
        return
    slow = timedelta(hours=facts.drying.slow_after_h.value)
    figure = top.coat.figures.stages.get(film_checks.DENIES[found][0])
    due = top.label_waits(figure).high if figure else top.put_on
    if due is None or not film_checks.stalled(checks, max(due, top.put_on + slow), slow):
        return
    stopped = finding(
        "stalled",
        Level.STOP,
        facts.drying.slow_after_h.source,
        answer=Answer.STALLED,
        found=found,
        hot="hot" if is_hot(zone.room, around.now, facts) else "",
    )
    yield replace(stopped, acts=tuple(check.act for check in failures))


def soft_findings(
    zone: ZoneState, soft: Soft, now: datetime, facts: Facts, *, time_helps: bool = True
) -> list[Finding]:
    """Say of a soft film whether it is late, and whether it gets on.

    `time_helps`: whether what most likely keeps it soft ends by waiting.
    """
    top = zone.top
    assert top is not None
    found = soft.failure.found.value
    if not soft.is_late or soft.promised is None:
        if soft.due is None:
            return []
        left = soft.due - now
        over = left <= timedelta()
        return [finding("check-again" if over else "still-in-time", found=found, left=left)]
    hot = is_hot(zone.room, now, facts)
    gets_on = soft.before is not None and soft.gets_on
    how = "oil-on-top" if not top.of.builds_film else "hot" if hot else "slow"
    if not time_helps and not gets_on:
        sample = film_checks.last_sample(zone.entries)
        how = "sampled" if sample and sample.found is Found.SAMPLE_SOFT else "no-time"
    late = finding(
        "late",
        Level.CAUTION,
        facts.drying.slow_after_h.source if how == "slow" else COMMON_PRACTICE,
        wanted=hours(soft.promised.high_h),
        found=found,
        age=_rounded_down(soft.age),
        before=soft.before.found.value if soft.before and gets_on else None,
        how=how,
    )
    return [late if waiting_helps(top, soft, time_helps) else replace(late, deed=Deed.MEND)]


def waiting_helps(top: Layer, soft: Soft, time_helps: bool) -> bool:
    """Tell whether a late film is waited for.

    Oil that stands on the wood ends by no waiting; a place of a film that is else dry may.
    """
    gets_on = soft.before is not None and soft.gets_on
    return top.of.builds_film and (time_helps or gets_on or bool(soft.failure.place))


def is_hot(room: RoomAir, now: datetime, facts: Facts) -> bool:
    """Tell whether a room is as hot, by its reading, that more heat would only harm a soft film."""
    reading = room.measured_at(now)
    return reading is not None and reading.temperature_c > facts.drying.hot_c.value


def _rounded_down(length: timedelta) -> timedelta:
    """Round to the hour, and beyond three days to the day."""
    if length >= timedelta(days=3):
        return timedelta(days=length.days)
    return timedelta(hours=length // timedelta(hours=1))
