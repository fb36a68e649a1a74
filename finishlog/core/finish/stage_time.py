"""When a film or a joint reaches a stage: a wait as a value, with what it counts."""

from __future__ import annotations

from datetime import datetime

from msgspec import field
from msgspec.structs import replace

from finishlog.core.air.course import Hours
from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import Figure
from finishlog.core.finish.stages import Stage
from finishlog.core.measure.compared import Compared


class StageTime(Compared, frozen=True):
    """From when a stage may be reached (`low`) and by when it is (`high`), UTC.

    None: not in this air. `known`: the air on the way to `high` was read or is usual, none of it
    is unknown; `air_read`: there are readings near enough to reckon by. `sure`: by when it is even
    if the unknown air was as slow as it may have been, which is `slowest`; None: never, or all of
    it is known. `proved_by`: the act of the check that settled it. `hours`: the real hours on the
    way, by how their air is known. `figure` of the coat `coat` (its entry) is what it counts,
    toward `stage`; no coat: a joint.
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
    sure: datetime | None = None
    slowest: Air | None = None

    @property
    def surely(self) -> datetime | None:
        """By when it is whatever the air was that nobody measured; None: nobody can say."""
        return self.high if self.known else self.sure

    def is_sure(self, now: datetime) -> bool:
        """Tell whether it is over whatever the air was that nobody measured."""
        return self.surely is not None and self.surely <= now

    @property
    def reckoned(self) -> StageTime:
        """The same wait as it is told of handling: by the nearest readings, where there are any."""
        return replace(self, known=self.known or self.air_read)

    @property
    def from_its_low_end(self) -> StageTime:
        """The same wait with its early end for its end."""
        return replace(self, high=self.low, figure=self.figure and self.figure.low_end)


def later(one: StageTime, other: StageTime) -> StageTime:
    """Join two waits that must both be over."""
    low = None if one.low is None or other.low is None else max(one.low, other.low)
    high = None if one.high is None or other.high is None else max(one.high, other.high)
    governs = other if high == other.high else one
    known = one.known and other.known
    surely = (one.surely, other.surely)
    return StageTime(
        low,
        high,
        known,
        one.air_read and other.air_read,
        governs.proved_by,
        governs.hours,
        governs.figure,
        governs.coat,
        governs.stage,
        None if known or None in surely else max(filter(None, surely)),
        governs.slowest or one.slowest or other.slowest,
    )
