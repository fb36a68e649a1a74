"""Glues: how long a joint may stay open, stay in clamps, and wait for plane, finish and load.

Hours are elapsed hours. The cautious end of a range is the promise: the shortest open time, the
longest wait. No source says what the cold does to a glue; as for two-part coatings (UFGS-09971,
pot life) the pace is taken to halve for each 10 °C, an assumption. It never shortens a wait.
"""

from __future__ import annotations

from datetime import datetime, timedelta

from finishlog.core.air.psychrometrics import Air
from finishlog.core.findings import Finding, Level, celsius, finding
from finishlog.core.finish.classes import Figure, Limit, Mechanism, Published
from finishlog.core.finish.rate_law import RateLaw, rate


class Glue(Published, frozen=True):
    """One kind of glue and its published hours, at the air of each figure.

    `open`: from spreading to closed joint. `before_finish`: before sanding, finishing or stress.
    `level`: before a joint is planed or sanded flush; water-based glue swells the wood beside it,
    and a joint levelled too early sinks. `min_c`: colder it does not hold. `wood_c`: what the wood
    should have.
    """

    key: str
    name: str
    aliases: tuple[str, ...]
    water_based: bool
    open: Figure
    clamp: Figure
    cure: Figure
    before_finish: Figure
    level: Figure | None = None
    min_c: Limit | None = None
    wood_c: Limit | None = None
    notes: tuple[str, ...] = ()


def clamp_until(
    glue: Glue, closed: datetime, air: Air | None = None, factor_per_10c: float = 2.0
) -> datetime | None:
    """Return how long the clamps stay on; None in air too cold for the glue."""
    return _after(glue, glue.clamp, closed, air, factor_per_10c)


def finish_from(
    glue: Glue, closed: datetime, air: Air | None = None, factor_per_10c: float = 2.0
) -> datetime | None:
    """Return when the joint bears sanding, finish and load; None in air too cold."""
    return _after(glue, glue.before_finish, closed, air, factor_per_10c)


def level_from(
    glue: Glue, closed: datetime, air: Air | None = None, factor_per_10c: float = 2.0
) -> datetime | None:
    """Return when the joint may be planed or sanded flush; None in air too cold."""
    ready = finish_from(glue, closed, air, factor_per_10c)
    if glue.level is None or ready is None:
        return ready
    return max(ready, closed + timedelta(hours=glue.level.high_h))


def temperature_findings(glue: Glue, air: Air) -> tuple[Finding, ...]:
    """Return what the cold does to the joint: it may never hold, or only the wood is too cold."""
    if _too_cold(glue, air):
        assert glue.min_c is not None
        return (
            finding(
                "glue-too-cold",
                Level.STOP,
                glue.min_c.source,
                measured=celsius(air.temperature_c),
                wanted=celsius(glue.min_c.value),
                glue=glue.name,
            ),
        )
    if glue.wood_c and air.temperature_c < glue.wood_c.value:
        return (
            finding(
                "glue-wants-warm-wood",
                Level.NOTE,
                glue.wood_c.source,
                measured=celsius(air.temperature_c),
                wanted=celsius(glue.wood_c.value),
                glue=glue.name,
            ),
        )
    return ()


def _too_cold(glue: Glue, air: Air) -> bool:
    return glue.min_c is not None and air.temperature_c < glue.min_c.least


def _after(
    glue: Glue, figure: Figure, closed: datetime, air: Air | None, factor_per_10c: float
) -> datetime | None:
    if air is not None and _too_cold(glue, air):
        return None
    k = min(1.0, _pace(figure, air, factor_per_10c))
    return closed + timedelta(hours=figure.high_h / k)


def _pace(figure: Figure, air: Air | None, factor_per_10c: float) -> float:
    """Return how fast it sets against its figure; 1 where no air is known."""
    law = RateLaw(Mechanism.CROSS_LINKING, figure.at, factor_per_10c)
    return rate(law, air) if air is not None else 1.0
