"""A stretch of air: what it was at its beginning and its end, and how that is known."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime
from enum import StrEnum
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.psychrometrics import Air

# An air, and the one to which it goes on a straight way.
Ramp = tuple[Air, Air]


class Known(StrEnum):
    """How the air of an hour is known."""

    MEASURED = "measured"
    # Read a few hours ago, and taken to stay.
    HELD = "held"
    USUAL = "usual"
    UNKNOWN = "unknown"


class AirPoint(NamedTuple):
    """One reading of a room: °C, % RH, and the act that logged it. A logger gives thousands.

    `supposed`: only a thermometer was read, and the humidity is what it was taken to be.
    """

    at: datetime
    temperature_c: float
    humidity_pct: float
    act: int = 0
    supposed: bool = False

    @property
    def air(self) -> Air:
        """The air that was read."""
        return Air(self.temperature_c, self.humidity_pct)


class AirSpan(Struct, frozen=True):
    """Air from `start` to `end` (None: for good).

    It may have been any of `airs`: the first is the nearest to the truth, the others are what it
    may have become; empty: nothing is known. Each goes straight to its fellow in `ends`; without
    `ends` it stays as it is. `heated_since`: when the heater came on that is supposed to run
    through it.
    """

    start: datetime
    end: datetime | None
    airs: tuple[Air, ...]
    known: Known
    ends: tuple[Air, ...] = ()
    heated_since: datetime | None = None

    @classmethod
    def along(
        cls,
        start: datetime,
        end: datetime | None,
        ramps: Sequence[Ramp],
        known: Known,
        heated_since: datetime | None = None,
    ) -> AirSpan:
        """Build a span from its airs, each with what it goes to."""
        airs, ends = tuple(a for a, _ in ramps), tuple(b for _, b in ramps)
        return cls(start, end, airs, known, () if airs == ends else ends, heated_since)

    @property
    def measured(self) -> bool:
        """Tell whether a reading covers the span, also one that is taken to stay."""
        return self.known in {Known.MEASURED, Known.HELD}

    @property
    def ramps(self) -> Iterator[Ramp]:
        """Pair every air with what it goes to."""
        return zip(self.airs, self.ends or self.airs, strict=True)

    @property
    def is_steady(self) -> bool:
        """Tell whether the air stays as it is throughout."""
        return not self.ends or self.ends == self.airs

    @property
    def nearest(self) -> tuple[Air, ...]:
        """The nearest air at both ends; empty when nothing is known."""
        return self.airs[:1] + self.ends[:1]

    @property
    def coldest_c(self) -> float | None:
        """The coldest that the nearest air gets, °C; None when nothing is known."""
        return min((air.temperature_c for air in self.nearest), default=None)

    @property
    def dampest_pct(self) -> float | None:
        """The dampest that the nearest air gets, % RH; None when nothing is known."""
        return max((air.humidity_pct for air in self.nearest), default=None)

    def cut(self, start: datetime, end: datetime | None) -> AirSpan:
        """Return the part of the span between two moments inside it."""
        if start == self.start and end == self.end:
            return self
        if self.is_steady or self.end is None:
            return replace(self, start=start, end=end)
        length = self.end - self.start
        since, until = (start - self.start) / length, ((end or self.end) - self.start) / length
        ramps = [(between(a, b, since), between(a, b, until)) for a, b in self.ramps]
        return AirSpan.along(start, end, ramps, self.known, self.heated_since)

    def cut_at(self, moments: Iterable[datetime]) -> Iterator[AirSpan]:
        """Yield its pieces between some moments; those outside it do not matter."""
        end = self.end
        inside = sorted({m for m in moments if self.start < m and (end is None or m < end)})
        if not inside:
            yield self
            return
        for since, until in zip([self.start, *inside], [*inside, end], strict=True):
            yield self.cut(since, until)

    def air_at(self, moment: datetime) -> Air | None:
        """Return the nearest air at a moment inside the span; None when nothing is known."""
        if not self.airs:
            return None
        return self.cut(moment, self.end).airs[0]


def between(one: Air, other: Air, share: float) -> Air:
    """Return the air on the straight way from one to another; `share` 0 to 1."""
    return Air(
        one.temperature_c + (other.temperature_c - one.temperature_c) * share,
        one.humidity_pct + (other.humidity_pct - one.humidity_pct) * share,
    )
