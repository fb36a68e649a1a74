"""Warmth that rises under a wet film: open pores breathe out, and it bubbles."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from finishlog.core.findings import Finding, celsius, finding
from finishlog.core.finish.classes import FinishClass
from finishlog.core.rules.reads import LAYERS, MEASURED, STOOD, WOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_SLOW = frozenset({"oil", "oil-varnish"})
_LATELY = timedelta(hours=3)
_STAYS_WET = timedelta(hours=12)


@rule(
    "warms-under-film",
    binds=COAT,
    source="facts: preparation",
    reads=f"{LAYERS} {WOOD} {STOOD} {MEASURED} product.class_key",
)
def warms_under_film(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Oil and varnish on open-pored wood go on while the air cools: said where readings rise."""
    wood = around.facts.species_named(zone.species) if zone.species else None
    since = _since(zone, asked.over, around.now)
    if wood is None or not wood.has_open_pores or since is None:
        return
    until = min(around.now, since + _STAYS_WET)
    read = [r.temperature_c for r in zone.room.readings if since - _LATELY <= r.at <= until]
    rises, least = max(read, default=0.0) - read[0] if read else 0.0, around.facts.preparation
    if rises >= least.warms_c.value:
        yield finding(
            "warms-under-film",
            source=least.warms_c.source,
            measured=celsius(max(read)),
            rises=rises,
            wood=wood.name,
            wet="wet" if zone.top and zone.top.put_on == since else "",
        )


def _since(zone: ZoneState, over: FinishClass | None, now: datetime) -> datetime | None:
    """Return since when warmth tells: since the coat that is wet, or now; None: it does not."""
    top = zone.top
    if top is not None and top.of.family in _SLOW:
        return top.put_on
    return now if over is not None and over.family in _SLOW and top is None else None
