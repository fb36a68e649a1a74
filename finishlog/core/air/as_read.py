"""A room's usual day from its readings: the median of every hour of the day."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from datetime import tzinfo

from msgspec import Struct

from finishlog.core.air.span import AirPoint
from finishlog.core.air.usual_day import UsualHour

# Our own rule: fewer hours, or none of the night, say nothing about the coldest part of the day.
LEAST_HOURS = 8
NIGHT_H = range(6)


class AsRead(Struct, frozen=True):
    """Points on the half hours, from how many readings, and the hours that had none."""

    hours: tuple[UsualHour, ...]
    readings: int
    without: tuple[int, ...]

    @property
    def is_enough(self) -> bool:
        """Tell whether they may stand for a whole day."""
        night = any(hour not in self.without for hour in NIGHT_H)
        return len(self.hours) >= LEAST_HOURS and night


def as_read(readings: Iterable[AirPoint], zone: tzinfo) -> AsRead:
    """Take the median temperature and humidity of each hour of the clock in `zone`.

    An hour without readings has no point: the straight line between its neighbours passes it.
    """
    by_hour: dict[int, list[AirPoint]] = defaultdict(list)
    for reading in readings:
        by_hour[reading.at.astimezone(zone).hour].append(reading)
    hours = tuple(
        UsualHour(
            hour * 60 + 30,
            round(_median(r.temperature_c for r in by_hour[hour]), 1),
            round(_median(r.humidity_pct for r in by_hour[hour]), 1),
        )
        for hour in sorted(by_hour)
    )
    without = tuple(hour for hour in range(24) if hour not in by_hour)
    return AsRead(hours, sum(map(len, by_hour.values())), without)


def _median(found: Iterable[float]) -> float:
    """Return the middle; the standard library's would load fractions at every start."""
    row = sorted(found)
    return (row[len(row) // 2] + row[~(len(row) // 2)]) / 2
