"""What a piece weighed, the newest last: the series that tells of its wood."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from msgspec import Struct

from finishlog.core.log.entries import AnyEntry
from finishlog.core.published.facts import Facts
from finishlog.core.rules.wood.weighed import Trend, weights

# So many of them tell enough where something else is asked about.
LAST = 4


class Weighing(Struct, frozen=True):
    """One weight of a series, and the act that logged it."""

    at: datetime
    weight_g: float
    act: int


class Series(Struct, frozen=True):
    """Weights that belong together, oldest first, and how they follow each other.

    `least_g`, `most_g`: of the last ones that are alike, which cover `over_d` days.
    """

    weights: tuple[Weighing, ...]
    trend: Trend
    least_g: float
    most_g: float
    over_d: float

    @property
    def is_ready(self) -> bool:
        """Tell whether the wood has come to rest."""
        return self.trend is Trend.STEADY


def series_of(told: Sequence[AnyEntry], facts: Facts) -> Series | None:
    """Return the series that tells of what reached a zone; None: it was never weighed."""
    found = weights(told, facts.moisture.weighed)
    if found is None:
        return None
    return Series(
        tuple(Weighing(e.when.latest, e.weight_g or 0.0, e.act) for e in found.readings),
        found.trend,
        found.least_g,
        found.most_g,
        round(found.over.total_seconds() / 86400, 1),
    )
