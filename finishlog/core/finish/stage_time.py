"""When a film or a joint reaches a stage: a wait as a value, with what it counts."""

from __future__ import annotations

from datetime import datetime

from msgspec import field
from msgspec.structs import replace

from finishlog.core.air.course import Hours
from finishlog.core.finish.classes import Figure
from finishlog.core.finish.stages import Stage
from finishlog.core.measure.compared import Compared


class StageTime(Compared, frozen=True):
    """From when a stage may be reached (`low`) and by when it is (`high`), UTC.

    None: not in this air. `known`: the air on the way to `high` was read or is usual, none of it
    is unknown; `air_read`: there are readings near enough to reckon by. `proved_by`: the act of
    the check that settled it. `hours`: the real hours on the way, by how their air is known.
    `figure` of the coat `coat` (its entry) is what it counts, toward `stage`; no coat: a joint.
    """

    # Two films may be ready at the same time.
    aside = frozenset({"figure", "coat", "stage"})
    low: datetime | None
    high: datetime | None
    known: bool
    air_read: bool
    proved_by: int | None = None
    hours: Hours = field(default_factory=Hours)
    figure: Figure | None = None
    coat: int | None = None
    stage: Stage | None = None

    @property
    def from_its_low_end(self) -> StageTime:
        """The same wait with its early end for its end."""
        figure = self.figure and replace(
            self.figure, typical_h=self.figure.low_h, high_h=self.figure.low_h
        )
        return replace(self, high=self.low, figure=figure)


def later(one: StageTime, other: StageTime) -> StageTime:
    """Join two waits that must both be over."""
    low = None if one.low is None or other.low is None else max(one.low, other.low)
    high = None if one.high is None or other.high is None else max(one.high, other.high)
    governs = other if high == other.high else one
    return StageTime(
        low,
        high,
        one.known and other.known,
        one.air_read and other.air_read,
        governs.proved_by,
        governs.hours,
        governs.figure,
        governs.coat,
        governs.stage,
    )
