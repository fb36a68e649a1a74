"""What a joint still asks for after a glue-up: time in cauls, time before stress, before levelling.

The hours of the glue stand in facts/data/glues.toml. Which glue it was need not be said:
then the cautious one stands in for it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import datetime

from msgspec.structs import replace

from finishlog.core.air.met import air_met
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.span import AirSpan
from finishlog.core.findings import Act, Answer, Finding, Level, celsius, finding
from finishlog.core.finish.classes import COMMON_PRACTICE, Figure
from finishlog.core.finish.stage_time import StageTime
from finishlog.core.log.entries import Check, Joined
from finishlog.core.log.words import Found, Operation
from finishlog.core.published.facts import Facts
from finishlog.core.published.glues import Glue, clamp_until, finish_from, level_from
from finishlog.core.rules.reads import AIR, LAYERS
from finishlog.core.rules.rule import EVERY, LOADED, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

NOT_SAID = "any"

# From glue, closing time, air and factor to when the joint has come so far (core.published.glues).
_Stage = Callable[[Glue, datetime, Air | None, float], datetime | None]

# What may be done while a joint is young: nothing that loads or heats it.
_GENTLE = frozenset({Operation.MASK, Operation.UNTAPE})


def glue_of(joined: Joined, facts: Facts) -> Glue:
    """Return the glue of a joint; the cautious one when it was not said or is not known."""
    glue = facts.glue_named(joined.glue or NOT_SAID) or facts.glue_named(NOT_SAID)
    assert glue is not None
    return glue


@rule(
    "joint-young",
    binds=EVERY,
    source="facts: glues",
    reads=f"{AIR} joined.when joined.members joined.glue",
)
def joint_young(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A young joint: in cauls, then without stress, and longer before it is levelled."""
    gently = asked.act in {Act.REST, Act.TURN}
    operation = asked.operation or (Operation.MASK if gently else Operation.COAT)
    found = held_by_glue(zone, operation, around.now, around.facts)
    if found is not None:
        yield found


def held_by_glue(
    zone: ZoneState, operation: Operation, now: datetime, facts: Facts
) -> Finding | None:
    """Return what a young joint says to a piece of work; None when nothing holds it up.

    What it must still reach first is the reason, what it reaches last is the date.
    """
    if zone.joined_by is None:
        return None
    glue, closed = glue_of(zone.joined_by, facts), zone.joined_by.when.latest
    asked = [
        (_reached(stage, zone, closed, glue, facts)[0], figure, reason)
        for stage, figure, reason in _asked(operation, glue)
    ]
    left = [(until, figure, reason) for until, figure, reason in asked if now < until]
    if not left:
        return None
    high, figure, _ = max(left, key=lambda each: each[0])
    wait = StageTime(high, high, known=False, air_read=False, figure=figure)
    found = finding(left[0][2], answer=Answer.WAITS, glue=glue.name)
    return replace(found, high=high, wait=wait, plain=True, acts=(zone.joined_by.act,))


def _asked(operation: Operation, glue: Glue) -> Iterator[tuple[_Stage, Figure, str]]:
    """Yield what a joint must have reached for a piece of work, its figure, and what to say."""
    yield clamp_until, glue.clamp, "in-cauls"
    if operation not in _GENTLE:
        yield finish_from, glue.before_finish, "no-stress-yet"
    if operation is Operation.LEVEL:
        yield level_from, glue.level or glue.before_finish, "joint-swollen"


def _reached(
    stage: _Stage, state: ZoneState, closed: datetime, glue: Glue, facts: Facts
) -> tuple[datetime, Air | None]:
    """Return when a joint reaches a stage, by the coldest air that it was read in on the way.

    Below its least temperature it gains nothing and may never hold: it is held as long as at that
    temperature, which is longer than anywhere warmer, and then asked for a test (`cold_joint`).
    """
    coldest: Air | None = None
    until = _at(stage, glue, closed, None, facts)
    for span in air_met(state.stays, closed).until(None):
        if span.start >= until:
            break
        air = min(span.nearest, key=_warmth, default=None) if span.measured else None
        if air is not None and (coldest is None or air.temperature_c < coldest.temperature_c):
            coldest = air
            until = _at(stage, glue, closed, air, facts)
    return until, coldest


def _at(stage: _Stage, glue: Glue, closed: datetime, air: Air | None, facts: Facts) -> datetime:
    """Return when a stage is reached in one air; air too cold counts as the coldest that sets."""
    factor, least = facts.factor_per_10c, glue.min_c
    if air is not None and least is not None:
        air = Air(max(air.temperature_c, least.value), air.humidity_pct)
    until = stage(glue, closed, air, factor)
    assert until is not None, "no air is too cold here"
    return until


def _warmth(air: Air) -> float:
    return air.temperature_c


@rule(
    "glued-on-finish",
    binds=LOADED,
    source=COMMON_PRACTICE,
    reads=f"{LAYERS} joined.when joined.members check.when check.found product.name",
)
def glued_on_finish(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Glue that met finish on a joint may let go at any time: it is tried before it is loaded."""
    joined, coated = zone.joined_by, around.glued_on_finish.get(zone.piece.id, ())
    if joined is None or all(_holds_since(z, joined) for z in coated):
        return
    found = finding(
        "glued-on-finish",
        Level.CAUTION,
        COMMON_PRACTICE,
        answer=Answer.TEST,
        coats=tuple(dict.fromkeys(z.layers[-1].coat.product_name for z in coated)),
    )
    acts = sorted({layer.coat.act for z in coated for layer in z.layers})
    yield replace(found, by_test=True, acts=(*acts, joined.act))


def _holds_since(zone: ZoneState, joined: Joined) -> bool:
    return any(
        isinstance(e, Check) and e.found is Found.HOLDS and e.when.order > joined.when.order
        for e in zone.entries
    )


@rule(
    "cold-joint",
    binds=EVERY,
    source="facts: glues",
    reads=f"{AIR} joined.when joined.members joined.glue",
)
def cold_joint(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The cold that a joint met while it set: no date mends that, only trying it."""
    found = cold_while_it_set(zone, around.facts)
    if found is not None:
        yield found


def air_while_it_set(zone: ZoneState, joined: Joined, facts: Facts) -> Iterator[AirSpan]:
    """Yield the air that a joint met until it could come out of its clamps."""
    closed = joined.when.latest
    until, _ = _reached(clamp_until, zone, closed, glue_of(joined, facts), facts)
    return air_met(zone.stays, closed).until(until)


def cold_while_it_set(zone: ZoneState, facts: Facts) -> Finding | None:
    """Return that a joint met air too cold for its glue, by its own hours; None: it did not."""
    if zone.joined_by is None:
        return None
    glue = glue_of(zone.joined_by, facts)
    _, air = _reached(clamp_until, zone, zone.joined_by.when.latest, glue, facts)
    if air is None or glue.min_c is None or air.temperature_c >= glue.min_c.least:
        return None
    found = finding(
        "cold-joint",
        Level.CAUTION,
        glue.min_c.source,
        measured=celsius(air.temperature_c),
        wanted=celsius(glue.min_c.value),
        answer=Answer.TEST,
        glue=glue.name,
    )
    return replace(found, by_test=True, acts=(zone.joined_by.act,))
