"""A film that a check found soft: within its time, or late; and whether it gets on.

A slow film is not a failed one: as long as it gets better it is waited for. Whoever asks for a date
gets the clock's; when that is over, there is none but the next check.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.core.air.room import RoomAir
from finishlog.core.film.checks import no_better, standing_failures
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Finding, Level
from finishlog.core.finish.classes import COMMON_PRACTICE, Figure
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check
from finishlog.core.log.shown_times import length_words, wait_words
from finishlog.core.log.words import Found
from finishlog.core.measure.quantities import celsius
from finishlog.core.published.facts import Facts
from finishlog.core.zone.state import ZoneState

# What a label promises in vain when a film is still so. common practice
PROMISED: Mapping[Found, tuple[Stage, ...]] = {
    Found.TACKY: (Stage.TACK_FREE, Stage.RECOAT),
    Found.GUMS: (Stage.SAND, Stage.RECOAT),
    Found.PRINTS: (Stage.CLAMP,),
}


_IT_IS_SLOW = (
    "as long as it gets better it is only slow: wait in moving, warm air, no flame or glowing wire "
    "in the vapour, and check again; neither coat it nor strip it yet"
)
_IT_IS_HOT = (
    "do not heat it: heat closes the skin over what is soft below; cool the room to about "
    f"{celsius(21)} and move dry air over it day and night, with a little let out, and check "
    "again; neither coat it nor strip it yet"
)
# Oil that was not wiped off is a film that was never meant to be one. common practice
_OIL_ON_TOP = (
    "what stands on the wood and shines stays soft for good: rub it off with its own solvent, then "
    "thin coats, each wiped off; no wax over it"
)


class Soft(Struct, frozen=True):
    """The newest check that found the top film soft, the one before, and its time.

    `promised`: the shortest figure that it breaks; `due`: when that was over by the clock. None: no
    figure, or no date in this air.
    """

    failure: Check
    before: Check | None
    promised: Figure | None
    due: datetime | None

    @property
    def is_late(self) -> bool:
        """Tell whether it failed when its time was over."""
        return self.due is not None and self.failure.when.earliest >= self.due

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
    due, figure = min(timed, key=lambda t: t[0], default=(None, None))
    return Soft(soft[-1], failed[-1] if failed else None, figure, due)


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


def soft_findings(state: ZoneState, soft: Soft, now: datetime, facts: Facts) -> list[Finding]:
    """Say of a soft film whether it is late, and whether it gets on."""
    top = state.top
    assert top is not None
    if not soft.is_late or soft.promised is None:
        return [_again(soft, now)] if soft.due is not None else []
    age = length_words(_rounded_down(soft.failure.when.earliest - top.dries_since))
    promised = length_words(timedelta(hours=soft.promised.high_h))
    progress = (
        f"; it gets on: {soft.before.found.value}, then {soft.failure.found.value}"
        if soft.before is not None and soft.gets_on
        else ""
    )
    slow, source = _IT_IS_SLOW, facts.drying.slow_after_h.source
    if is_hot(state.room, now, facts):
        slow, source = _IT_IS_HOT, COMMON_PRACTICE
    return [
        Finding(
            Level.CAUTION,
            f"late: still {soft.failure.found.value} {age} after the coat, its label hours are "
            f"{promised}{progress}",
            slow if top.of.builds_film else _OIL_ON_TOP,
            source if top.of.builds_film else COMMON_PRACTICE,
        )
    ]


def is_hot(room: RoomAir, now: datetime, facts: Facts) -> bool:
    """Tell whether a room is as hot, by its reading, that more heat would only harm a soft film."""
    reading = room.measured_at(now)
    return reading is not None and reading.temperature_c > facts.drying.hot_c.value


def _again(soft: Soft, now: datetime) -> Finding:
    assert soft.due is not None
    found = f"the last check found it {soft.failure.found.value}"
    if soft.due <= now:
        return Finding(Level.NOTE, f"{found}, but its time is over since", "check it again now")
    return Finding(
        Level.NOTE,
        f"{found}, and its time is not over: {wait_words(soft.due - now)} still to go",
        "check it again after that",
    )


def _rounded_down(length: timedelta) -> timedelta:
    """Round to the hour, and beyond three days to the day."""
    if length >= timedelta(days=3):
        return timedelta(days=length.days)
    return timedelta(hours=length // timedelta(hours=1))
