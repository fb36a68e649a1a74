"""What if it were carried into another room now, or this one were warmed: when would it be dry?"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta
from math import inf

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.met import Stay
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint
from finishlog.core.film.layers import Layer
from finishlog.core.findings import WOOD_WARMS_UP, Answer, Finding, finding
from finishlog.core.finish.classes import COMMON_PRACTICE, Mechanism
from finishlog.core.finish.stages import Stage
from finishlog.core.rules.film.soft import dry_again, still_soft
from finishlog.core.verdict.fold import decide
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import FilmStages, ZoneState

# Less than this is not worth carrying wet work. Our own rule.
_WORTH_IT = timedelta(hours=1)


class Elsewhere(Struct, frozen=True):
    """A room in which a wait would be over sooner: from when to test, and by when it is.

    `caution`: why it is not offered without a condition.
    """

    room: RoomAir
    low: datetime | None
    high: datetime
    caution: Finding | None = None


# A film gives off what it was thinned with, and oil its own vapours, for days.
NOT_AMONG_PEOPLE = finding("not-among-people", source=COMMON_PRACTICE)
_STILL_WET = finding("carried-wet", source=COMMON_PRACTICE)


def sooner_elsewhere(
    state: ZoneState, asked: Asked, rooms: Iterable[RoomAir], near: Around
) -> tuple[Elsewhere, ...]:
    """Return the rooms, soonest first, that a wet film would be dry in sooner than where it is.

    Only rooms whose air was read lately count: an estimate on a guess helps nobody.
    """
    here = _wait(state, asked, near)
    if state.top is None or here is None or (here[1] is not None and here[1] <= near.now):
        return ()
    found = []
    for room in rooms:
        if room.id == state.room.id or room.read_lately(near.now) is None:
            continue
        there = _wait(_carried_over(state, room, near.now), asked, near)
        if there is None or there[1] is None:
            continue
        if here[1] is None or here[1] - there[1] >= _WORTH_IT:
            caution = _carried_in(state, near.now)
            found.append(Elsewhere(room, there[0], there[1], caution))
    return tuple(sorted(found, key=lambda e: e.high))


def _carried_in(state: ZoneState, now: datetime) -> Finding | None:
    """Say on what condition a film may be carried among people; None: on none.

    Only what was thinned with water, and only once it is dust-free.
    """
    top, dust_free = state.top, state.stages.get(Stage.DUST_FREE)
    if top is None or top.of.mechanism is not Mechanism.WATER:
        return NOT_AMONG_PEOPLE
    if dust_free is None or dust_free.high is None or dust_free.high > now:
        return _STILL_WET
    return None


def sooner_warmed(state: ZoneState, asked: Asked, near: Around) -> Elsewhere | None:
    """Return when the wait would be over if this room were kept at the label's air from now on.

    A room that is warmer than that stays so, and is only dried; a hot one is cooled for a film that
    a check found soft. None where that is no gain, or another thing than drying binds.
    """
    top, here = state.top, _wait(state, asked, near)
    figure = top.coat.figures.stages.get(Stage.RECOAT) if top else None
    if figure is None or here is None or (here[1] is not None and here[1] <= near.now):
        return None
    reading, most = state.room.measured_at(near.now), top.of.limits.max_c if top else None
    warm_c = max(figure.at.temperature_c, reading.temperature_c if reading else -inf)
    if most is not None:
        warm_c = min(warm_c, most.value)
    if warm_c > near.facts.drying.hot_c.value and still_soft(top) is not None:
        warm_c = figure.at.temperature_c
    point = AirPoint(near.now, warm_c, figure.at.humidity_pct)
    warm = RoomAir((point,), id=state.room.id)
    there = _wait(_moved(state, warm, near.now), asked, near)
    if there is None or there[1] is None:
        return None
    gain = here[1] is None or here[1] - there[1] >= _WORTH_IT
    return Elsewhere(warm, there[0], there[1]) if gain else None


def _moved(state: ZoneState, room: RoomAir, now: datetime) -> ZoneState:
    layers = tuple(_carried(layer, room, now) for layer in state.layers)
    return replace(
        state,
        layers=layers,
        stages=FilmStages(layers, shuts=state.face.meets is not None),
        room=room,
    )


def _carried_over(state: ZoneState, room: RoomAir, now: datetime) -> ZoneState:
    """Return a zone as carried into a room: its wood has yet to warm up where it came from cold."""
    return replace(_moved(state, room, now), stays=(*state.stays, Stay(now, room)))


def _carried(layer: Layer, room: RoomAir, now: datetime) -> Layer:
    again = layer.air_again.carried(room, now) if layer.air_again else None
    return replace(layer, air=layer.air.carried(room, now), air_again=again)


def _wait(
    state: ZoneState, asked: Asked, near: Around
) -> tuple[datetime | None, datetime | None] | None:
    """Return from when and by when a wait is over; None when it is not drying that binds.

    Of a film that failed a check within its time: when it may be sanded and recoated by the clocks.
    """
    verdict = decide(state, asked, near)
    if verdict.answer is Answer.DRYING or verdict.binds.rule == WOOD_WARMS_UP:
        return verdict.low, verdict.high
    time = dry_again(state.top) if verdict.answer is Answer.BLOCKED else None
    return (time.low, time.high) if time else None
