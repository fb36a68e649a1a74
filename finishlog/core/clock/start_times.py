"""When may a coat go on so that the air stays fit for it until it is tack-free?

Only where somebody said how the room usually is, or when it is heated: a reading alone says nothing
of tonight. A film that gets cold, damp or hot while it is wet stands still, fogs or skins over.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from itertools import takewhile

from msgspec import Struct

from finishlog.core.air.met import AirMet, Leg
from finishlog.core.air.psychrometrics import dew_point_c
from finishlog.core.air.room import RoomAir
from finishlog.core.clock.air_to_come import NIGHT, every
from finishlog.core.clock.counting import Counting, outside
from finishlog.core.clock.reach import reach
from finishlog.core.finish.classes import Limits

_STEP = timedelta(minutes=30)
_LOOKS_AHEAD = timedelta(days=2)


class Starts(Struct, frozen=True):
    """The next stretch of times to begin in, in UTC.

    `tack_free`: when what was begun last in it is; `turns`: when the air then leaves the limits,
    None: not within the two days that are looked at. `wood_cold`: at the earliest the wood may
    still be so cold from the night that it sweats.
    """

    earliest: datetime
    latest: datetime
    tack_free: datetime
    turns: datetime | None
    wood_cold: bool


class Wanted(Struct, frozen=True):
    """What a coat asks of the air: `hours` to tack-free, as the label counts them by `counting`.

    `counting` is a wait's, with the limits of the class; `dew_margin_c`: how much warmer than the
    dew point the wood has to be, °C. `early_h`: the hours after which it may be so at the soonest.
    """

    hours: float
    counting: Counting
    dew_margin_c: float
    early_h: float = 0.0


def next_starts(room: RoomAir, now: datetime, wanted: Wanted) -> Starts | None:
    """Return when to begin, in steps of half an hour; None: at no time of the next two days."""
    times = [now, *every(_STEP, now, _LOOKS_AHEAD)]
    dry = [_tack_free(room, start, wanted) for start in times]
    first = next((n for n, end in enumerate(dry) if end is not None), None)
    if first is None:
        return None
    ends = list(takewhile(lambda end: end is not None, dry[first:]))
    last = ends[-1]
    assert last is not None
    turns = (t for t in times if t >= last and not _is_fit(room, t, t + _STEP, wanted))
    return Starts(
        earliest=times[first],
        latest=times[first + len(ends) - 1],
        tack_free=last,
        turns=next(turns, None),
        wood_cold=_sweats(room, times[first], wanted),
    )


def _tack_free(room: RoomAir, start: datetime, wanted: Wanted) -> datetime | None:
    """Return when a coat is tack-free; None: the air turns on it before that, or it may."""
    if not _is_fit(room, start, start + _STEP, wanted):
        return None
    dry = reach(wanted.hours, AirMet((Leg(room, start, None),)), wanted.counting).moment
    return dry if dry is not None and _is_fit(room, start, dry, wanted) else None


def _sweats(room: RoomAir, start: datetime, wanted: Wanted) -> bool:
    """Tell whether wood that is as cold as the night was is near the dew point of the air."""
    air = room.expected_at(start)
    night = (span.coldest_c for span in room.course.between(start - NIGHT, start))
    wood = min((c for c in night if c is not None), default=None)
    if air is None or wood is None:
        return True
    return min(wood, air.temperature_c) - dew_point_c(air) < wanted.dew_margin_c


def _is_fit(room: RoomAir, start: datetime, end: datetime, wanted: Wanted) -> bool:
    limits = wanted.counting.limits or Limits()
    return all(
        span.airs
        and not any(outside(limits, air.temperature_c, air.humidity_pct) for air in span.nearest)
        for span in room.course.between(start, end)
    )
