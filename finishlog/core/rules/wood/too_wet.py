"""Is the wood dry enough to finish, to glue and to pack?

Moisture content is % of the weight of the dry wood. What was measured too wet waits without a
date: how fast it dries only the next reading tells.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.air.psychrometrics import Air
from finishlog.core.findings import Act, Answer, Finding, Level, also, finding, pct
from finishlog.core.log.entries import AnyEntry, PieceReading
from finishlog.core.published.moisture import MoistureFigures, settles_pct
from finishlog.core.rules.reads import MEASURED, OPEN_WOOD, STOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_JUST_NOW = timedelta()
_LEAVES = frozenset({Act.PACK, Act.STORE, Act.HAND_OVER})
_JOINS = frozenset({Act.GLUE_UP, Act.CLAMP})


def moisture_readings(told: Sequence[AnyEntry]) -> list[PieceReading]:
    """Return the moisture readings among what reached a zone, oldest first."""
    read = [e for e in told if isinstance(e, PieceReading) and e.moisture_pct is not None]
    return sorted(read, key=lambda e: e.when.order)


def measured_moisture(told: Sequence[AnyEntry]) -> PieceReading | None:
    """Return the newest moisture reading among what reached a zone."""
    return next(reversed(moisture_readings(told)), None)


def trend(told: Sequence[AnyEntry]) -> tuple[float, timedelta] | None:
    """Return by how much (points) the newest reading differs from the one before, and the time.

    None: there are no two of different days.
    """
    read = moisture_readings(told)
    apart = [r for r in read if read[-1].when.latest - r.when.latest >= timedelta(hours=12)]
    if not apart:
        return None
    last, before = read[-1], apart[-1]
    change = (last.moisture_pct or 0.0) - (before.moisture_pct or 0.0)
    return change, last.when.latest - before.when.latest


@rule(
    "wood-too-wet",
    binds=COAT | _LEAVES | _JOINS,
    source="facts: moisture",
    reads=f"{OPEN_WOOD} {STOOD} {MEASURED} piece-reading.when piece-reading.moisture_pct",
)
def wood_too_wet(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Wood that was measured too wet for what is asked; nothing where it was not measured.

    A coat asks after wood in the white, a joint after its glue face. Packed wood is asked after
    under its film too, while the reading is fresh.
    """
    read, figures = measured_moisture(zone.entries), around.facts.moisture
    if read is None or read.moisture_pct is None:
        return
    age = around.now - read.when.latest
    leaves = asked.act in _LEAVES
    if (leaves and age.days >= figures.reading_holds_d.value) or not (
        leaves or zone.wood_lies_open
    ):
        return
    point = zone.room.measured_at(around.now)
    for found in too_wet(read.moisture_pct, point.air if point else None, figures, age):
        waits = found.wanted is not None and not leaves
        answer = Answer.WAITS if waits else Answer.TEST
        went = trend(zone.entries)
        said = also(found, change=went[0], over=went[1]) if went else found
        yield replace(said, answer=answer, acts=(read.act,))


def too_wet(
    moisture_pct: float, air: Air | None, figures: MoistureFigures, age: timedelta = _JUST_NOW
) -> tuple[Finding, ...]:
    """Return why wood of a moisture content (%) is too wet to finish in an air; empty: it is not.

    `air` None: it was not read lately. `age`: how long ago it was measured.
    """
    most, over = figures.at_most_pct, figures.over_air_pct
    settles = None if air is None else settles_pct(air)
    too_much = moisture_pct > most.value
    over_air = settles is not None and moisture_pct - settles > over.value
    if not (too_much or over_air):
        return ()
    return (
        finding(
            "wood-too-wet",
            Level.CAUTION,
            most.source if too_much else over.source,
            measured=pct(moisture_pct),
            wanted=pct(most.value) if too_much else None,
            settles=settles if over_air else None,
            days=float(age.days),
        ),
    )
