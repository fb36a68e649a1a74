"""The drying clock: equivalent hours at the label's air.

A label says "recoat after 4 h" at its reference air. In other air the film gains k equivalent
hours an hour, and a stage is reached when they add up to the label's hours: the maturity method
of ASTM C1074 carried to films. How k follows from air stands in core.finish.rate_law, how a
stretch of air counts in core.clock.counting, the sums in core.air.course; here the hours of the
rooms that a piece stood in become moments.
"""

from __future__ import annotations

from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.core.air.course import Hours
from finishlog.core.air.met import AirMet
from finishlog.core.clock.counting import Clock, Counting
from finishlog.core.finish.classes import Figure
from finishlog.core.finish.rate_law import Printed, slower_by


class Reached(Struct, frozen=True):
    """When a clock reaches its hours in some air; `moment` None: not in it."""

    moment: datetime | None
    met: AirMet

    @property
    def hours(self) -> Hours:
        """The real hours on the way by how their air is known; of one without end, all that end."""
        legs = self.met.upto(self.moment)
        ways = (leg.room.course.hours(leg.start, leg.end) for leg in legs)
        return Hours(*map(sum, zip(*ways, strict=True)))


def gained(met: AirMet, counting: Counting, until: datetime) -> float:
    """Return the equivalent hours from the beginning of `met` to `until`."""
    total = 0.0
    for leg in met.upto(until):
        sums = leg.room.course.sum_of(counting)
        # From its beginning first: the sum begins there.
        begun = sums.at(leg.start)
        total += sums.at(leg.end or until) - begun
    return total


def reach(hours: float, met: AirMet, counting: Counting, since: datetime | None = None) -> Reached:
    """Add up equivalent hours until there are `hours` of them.

    From the beginning of `met`, or from a later moment `since`; the hours on the way always count
    from the beginning.
    """
    left = max(hours, 0.0)
    since = since or met.start
    for leg in met.legs:
        if leg.end is not None and leg.end <= since:
            continue
        sums, begins = leg.room.course.sum_of(counting), max(leg.start, since)
        begun = sums.at(begins)
        here = None if leg.end is None else sums.at(leg.end) - begun
        if here is None or here >= left:
            return Reached(sums.when(begun + left, begins) if left else begins, met)
        left -= here
    raise ValueError("the last stay must have no end")


def least_printed(figure: Figure, met: AirMet) -> datetime:
    """Return when the least hours of a label are over: in colder air those that it gives there."""
    if not figure.colder:
        return met.start + timedelta(hours=figure.low_h)
    low = figure.low_end
    printed = Counting(Printed(low.at, slower_by(low)), Clock.WAIT)
    return reach(low.low_h, met, printed).moment or met.start
