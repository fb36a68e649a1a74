"""Would a date move if somebody told what the room is like on a usual day?

One reading and the coldest night leave a film that dries for days between the two: a wait takes the
slower, and its date comes out weeks late. It is asked only where the answer would change something.
"""

from __future__ import annotations

from datetime import datetime, timedelta

from msgspec.structs import replace

from finishlog.core.air.met import AirMet
from finishlog.core.air.room import READING_HOLDS, RoomAir
from finishlog.core.air.usual_day import UsualDay, UsualHour
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Answer
from finishlog.core.finish.stages import Stage
from finishlog.core.zone.state import ZoneState

# Our own rules: a smaller difference is not worth a question; of more readings than two days of a
# logger it is not worked out; a day as it may be is coldest at six and as warm as read at three.
_WORTH_ASKING = timedelta(days=1)
_MANY = 300
_COLDEST, _WARMEST = 6 * 60, 15 * 60


def usual_would_move(state: ZoneState, now: datetime) -> bool:
    """Tell whether a usual day of its room may move the date of a film by more than a day.

    The date is that of its recoat, and of packing once no coat is to come.
    """
    top, room = state.top, state.room
    stage = Stage.PACK if state.verdict.answer is Answer.DONE else Stage.RECOAT
    figure = top.coat.figures.stages.get(stage) if top else None
    if top is None or figure is None:
        return False
    supposed = _with_a_usual_day(room, top.dries_since, now)
    here = top.waits(figure).high
    if supposed is None or (here is not None and here <= now):
        return False
    then = _in(top, room, supposed).waits(figure).high
    if here is None or then is None:
        return here is not then
    return abs(here - then) > _WORTH_ASKING


def _with_a_usual_day(room: RoomAir, since: datetime, now: datetime) -> RoomAir | None:
    """Return a room as it may usually be, by its reading and its coldest night; None: unknown."""
    readings = tuple(room.since(since - READING_HOLDS))
    reading, night = room.measured_at(now), room.coldest_night_c
    told = any(day.hours for day in room.usual)
    if told or reading is None or night is None or len(readings) > _MANY:
        return None
    hours = (
        UsualHour(_COLDEST, min(night, reading.temperature_c)),
        UsualHour(_WARMEST, reading.temperature_c, reading.humidity_pct),
    )
    usual = tuple(replace(day, hours=hours) for day in room.usual) or (UsualDay(hours),)
    return replace(room, readings=readings, usual=usual)


def _in(layer: Layer, room: RoomAir, supposed: RoomAir) -> Layer:
    """Return a film as if one of its rooms were as supposed."""

    def air(met: AirMet) -> AirMet:
        return AirMet(
            tuple(replace(leg, room=supposed) if leg.room is room else leg for leg in met.legs)
        )

    again = air(layer.air_again) if layer.air_again else None
    return replace(layer, air=air(layer.air), air_again=again)
