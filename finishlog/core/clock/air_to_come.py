"""The air that a room is to come into from now on: the one place that every forecast asks.

`ready`'s night, the cold that `log` and `leave` warn of, what a plan expects and the date from
which a coat may go on all follow from the room's course: readings, its usual day, the heaters on
record, the coldest night. What nobody told of is unknown, and is asked for.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import UTC, datetime, timedelta

from msgspec import Struct

from finishlog.core.air.as_read import as_read
from finishlog.core.air.psychrometrics import Air, dew_point_c
from finishlog.core.air.room import READING_STAYS, RoomAir
from finishlog.core.air.span import AirSpan, Known
from finishlog.core.clock.counting import outside
from finishlog.core.finish.classes import Limits

# Wood follows the air slowly: last night's cold is still in it.
NIGHT = timedelta(hours=12)
_DAY = timedelta(days=1)
_LOOKS_AHEAD = 2 * _DAY
_STEP = timedelta(minutes=15)
_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)


def coldest_ahead(
    room: RoomAir, now: datetime, ahead: timedelta, *, left: bool = False
) -> float | None:
    """Return the coldest (°C) to expect within a time; None: of some hour of it nobody told.

    Every air that may be true counts: a warm reading does not hide the night that follows it.
    `left`: the shop is left, and with whoever was there goes what kept the room as it was read.
    """
    spans = list(room.course.between(now, now + ahead))
    cold = [air.temperature_c for span in spans for air in (*span.airs, *span.ends)]
    untold = [s for s in spans if not _is_told(room, s, left=left)]
    night = room.coldest_night_c
    if untold and night is None:
        night = None if any(s.heated_since for s in spans) else _night_as_read(room, now)
        if night is None:
            return None
    if night is not None and (untold or _may_be_colder(room, spans)):
        cold.append(night)
    return min(cold, default=None)


def _may_be_colder(room: RoomAir, spans: Sequence[AirSpan]) -> bool:
    """Tell whether a night colder than usual may fall among some stretches."""
    return room.has_colder_nights and any(span.heated_since is None for span in spans)


def _night_as_read(room: RoomAir, now: datetime) -> float | None:
    """Return the coldest (°C) of the last day, where readings tell of its night; else None."""
    read = room.since(now - _DAY)
    return min(r.temperature_c for r in read) if as_read(read, room.zone).is_enough else None


def _is_told(room: RoomAir, span: AirSpan, *, left: bool) -> bool:
    """Tell whether somebody told of a stretch: a usual day, a heater, a reading of its hours."""
    if span.known is Known.USUAL or span.heated_since is not None:
        return True
    reading = None if left else room.measured_at(span.start)
    return span.measured and reading is not None and span.start - reading.at < READING_STAYS


def wood_c(room: RoomAir, moment: datetime, air: Air) -> float:
    """Return the temperature (°C) of wood that nobody measured, in a room that has this air now.

    The colder of the room and of the night before, as far as anybody told of it.
    """
    night = room.course.between(moment - NIGHT, moment)
    told = (span.coldest_c for span in night if span.known is not Known.UNKNOWN)
    return min([air.temperature_c, *(c for c in told if c is not None)])


class Felt(Struct, frozen=True):
    """The temperature of the wood (°C) as it was measured, and until when that tells of it."""

    since: datetime
    until: datetime
    celsius: float


def allowed_from(
    limits: Limits,
    dew_margin_c: float,
    room: RoomAir,
    now: datetime,
    felt: tuple[Felt, ...] = (),
) -> datetime | None:
    """Return the next quarter hour at which air and wood are within limits and clear of dew.

    Within two days; None: not within them, or they are so now. `dew_margin_c`: how much warmer
    than the dew point the wood has to be, °C; `felt`: what was measured of it, oldest first.
    The pieces of a batch ask the same: the room keeps what it answered.
    """
    asked = (limits, dew_margin_c, now, felt)
    if asked not in room.answered:
        room.answered[asked] = _allowed_from(limits, dew_margin_c, room, now, felt)
    found: datetime | None = room.answered[asked]
    return found


def _allowed_from(
    limits: Limits, dew_margin_c: float, room: RoomAir, now: datetime, felt: tuple[Felt, ...]
) -> datetime | None:
    def fit(moment: datetime) -> bool:
        air = room.expected_at(moment)
        if air is None or outside(limits, air.temperature_c, air.humidity_pct):
            return False
        measured = [f.celsius for f in felt if f.since <= moment <= f.until]
        wood = measured[-1] if measured else wood_c(room, moment, air)
        return wood - dew_point_c(air) >= dew_margin_c

    if fit(now):
        return None
    return next((moment for moment in every(_STEP, now, _LOOKS_AHEAD) if fit(moment)), None)


def every(step: timedelta, now: datetime, ahead: timedelta) -> Iterator[datetime]:
    """Yield every quarter hour, half hour … of the clock after now, within a time."""
    first = now + step - (now - _EPOCH) % step
    yield from (first + n * step for n in range(ahead // step + 1))
