"""What a joint still asks for after a glue-up: time in cauls, time before stress, before levelling.

The hours of the glue stand in facts/glues.toml (core.glues). Which glue it was need not be said:
then the cautious one stands in for it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import datetime

from finishlog.core.air import Air
from finishlog.core.book import Book
from finishlog.core.findings import Finding, Level
from finishlog.core.glues import Glue, clamp_until, finish_from, level_from
from finishlog.core.quantities import celsius
from finishlog.core.records import Joined, Operation
from finishlog.core.verdicts import Answer, Verdict
from finishlog.core.zone import ZoneState

NOT_SAID = "any"

# From glue, closing time, air and factor to when the joint has come so far (core.glues).
_Stage = Callable[[Glue, datetime, Air | None, float], datetime | None]

# What may be done while a joint is young: nothing that loads or heats it.
_GENTLE = frozenset({Operation.MASK, Operation.UNTAPE})


def glue_of(joined: Joined, book: Book) -> Glue:
    """Return the glue of a joint; the cautious one when it was not said or is not known."""
    glue = book.glue_named(joined.glue or NOT_SAID) or book.glue_named(NOT_SAID)
    assert glue is not None
    return glue


def held_by_glue(
    state: ZoneState, operation: Operation, now: datetime, book: Book
) -> Verdict | None:
    """Return what a young joint says to a piece of work; None when nothing holds it up."""
    if state.joined_by is None:
        return None
    glue = glue_of(state.joined_by, book)
    for stage, because in _asked(operation, glue):
        closed = state.joined_by.when.latest
        until, _ = _reached(stage, state, closed, glue, book)
        # Too cold to set has no date; the clamps stay on for the published hours all the same.
        until = until or stage(glue, closed, None, book.drying.factor_per_10c)
        if until is not None and now < until:
            return Verdict(Answer.WAITS, because, high=until, waits_for="the joint")
    return None


def _asked(operation: Operation, glue: Glue) -> Iterator[tuple[_Stage, str]]:
    """Yield what a joint must have reached for a piece of work, and what to say until then."""
    yield clamp_until, f"in cauls: {glue.name}"
    if operation not in _GENTLE:
        yield finish_from, f"{glue.name} bears no stress yet"
    if operation is Operation.LEVEL:
        yield level_from, "the wood is still swollen by the glue: a joint levelled now sinks"


def _reached(
    stage: _Stage, state: ZoneState, closed: datetime, glue: Glue, book: Book
) -> tuple[datetime | None, Air | None]:
    """Return when a joint reaches a stage, by the coldest air that it met on the way."""
    factor = book.drying.factor_per_10c
    first = state.room.measured_at(closed)
    air = first.air if first else None
    until = stage(glue, closed, air, factor)
    for reading in state.room.since(closed):
        if until is None or reading.at >= until:
            break
        if reading.at > closed and (air is None or reading.air.temperature_c < air.temperature_c):
            air = reading.air
            until = stage(glue, closed, air, factor)
    return until, air


def cold_joint(state: ZoneState, book: Book) -> Finding | None:
    """Return the cold that a joint met while it set: no date mends that."""
    if state.joined_by is None:
        return None
    glue = glue_of(state.joined_by, book)
    until, air = _reached(clamp_until, state, state.joined_by.when.latest, glue, book)
    if until is not None or air is None or glue.min_c is None:
        return None
    return Finding(
        Level.CAUTION,
        f"the joint met {celsius(air.temperature_c)} while it set; {glue.name} wants "
        f"{celsius(glue.min_c.value)}",
        "try whether it holds before anything is put on it",
        glue.min_c.source,
    )
