"""Is the wood dry enough to finish?

Moisture content is % of the weight of the dry wood.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from finishlog.core.air.psychrometrics import Air
from finishlog.core.commands import Do
from finishlog.core.findings import Finding, Level
from finishlog.core.log.entries import AnyEntry, PieceReading
from finishlog.core.published.facts import Facts
from finishlog.core.published.moisture import MoistureFigures, settles_pct
from finishlog.core.zone.state import ZoneState


def measured_moisture(told: Sequence[AnyEntry]) -> PieceReading | None:
    """Return the newest moisture reading among what reached a zone."""
    read = (e for e in told if isinstance(e, PieceReading) and e.moisture_pct is not None)
    return max(read, key=lambda e: e.when.order, default=None)


def moisture_findings(state: ZoneState, now: datetime, facts: Facts) -> tuple[Finding, ...]:
    """Return what the wood's moisture says against a coat on wood in the white.

    Nothing where it was not measured, and nothing once a coat lies on it.
    """
    read = measured_moisture(state.entries) if state.is_bare_wood else None
    if read is None or read.moisture_pct is None:
        return ()
    point = state.room.measured_at(now)
    age = (now - read.when.latest).days
    return too_wet(
        read.moisture_pct,
        point.air if point else None,
        facts.moisture,
        f"measured {age} d ago" if age > 0 else "",
    )


def too_wet(
    moisture_pct: float, air: Air | None, figures: MoistureFigures, when: str = ""
) -> tuple[Finding, ...]:
    """Return why wood of a moisture content (%) is too wet to finish in an air; empty: it is not.

    `air` None: it was not read lately. `when` goes with the moisture: `measured 3 d ago`.
    """
    most, over = figures.at_most_pct, figures.over_air_pct
    settles = None if air is None else settles_pct(air)
    reasons: list[tuple[str, str]] = []
    if moisture_pct > most.value:
        reasons.append((f"over the {most.value:g} % to finish at", most.source))
    if settles is not None and moisture_pct - settles > over.value:
        points = f"{moisture_pct - settles:.1f} points over the {settles:.1f} % of this air"
        reasons.append((points, over.source))
    if not reasons:
        return ()
    said = f"wood at {moisture_pct:.3g} % moisture" + (f", {when}" if when else "")
    return (
        Finding(
            Level.CAUTION,
            f"{said}: {', '.join(reason for reason, _ in reasons)}",
            "it would dry on under the finish: let it stand in the room, air on all sides, and "
            f"measure again: {Do.MOISTURE('PART', '10%')}",
            reasons[0][1],
        ),
    )
