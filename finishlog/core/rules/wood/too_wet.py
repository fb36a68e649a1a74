"""Is the wood dry enough to finish?

Moisture content is % of the weight of the dry wood.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.air.psychrometrics import Air
from finishlog.core.findings import Answer, Finding, Level, finding, pct
from finishlog.core.log.entries import AnyEntry, PieceReading
from finishlog.core.published.moisture import MoistureFigures, settles_pct
from finishlog.core.rules.reads import BARE, MEASURED, STOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_JUST_NOW = timedelta()


def measured_moisture(told: Sequence[AnyEntry]) -> PieceReading | None:
    """Return the newest moisture reading among what reached a zone."""
    read = (e for e in told if isinstance(e, PieceReading) and e.moisture_pct is not None)
    return max(read, key=lambda e: e.when.order, default=None)


@rule(
    "wood-too-wet",
    binds=COAT,
    source="facts: moisture",
    reads=f"{BARE} {STOOD} {MEASURED} piece-reading.when piece-reading.moisture_pct",
)
def wood_too_wet(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Wood in the white that was measured too wet to finish in this air.

    Nothing where it was not measured, and nothing once a coat lies on it.
    """
    read = measured_moisture(zone.entries) if zone.is_bare_wood else None
    if asked.over is None or read is None or read.moisture_pct is None:
        return
    point, age = zone.room.measured_at(around.now), around.now - read.when.latest
    for found in too_wet(
        read.moisture_pct, point.air if point else None, around.facts.moisture, age
    ):
        yield replace(found, answer=Answer.TEST, acts=(read.act,))


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
