"""What if it were carried into another room now: when would its wait be over there?"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from functools import reduce

from finishlog.core.around import Around
from finishlog.core.book import Book
from finishlog.core.judge import decide
from finishlog.core.layers import Layer, later
from finishlog.core.room_air import RoomAir
from finishlog.core.stages import Stage
from finishlog.core.still_soft import still_soft
from finishlog.core.verdicts import Answer
from finishlog.core.zone import Asked, FilmStages, ZoneState

_TO_RECOAT = (Stage.TACK_FREE, Stage.SAND, Stage.RECOAT)

# Less than this is not worth carrying wet work. Our own rule.
_WORTH_IT = timedelta(hours=1)


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """A room in which a wait would be over sooner: from when to test, and by when it is."""

    room: RoomAir
    low: datetime | None
    high: datetime


def sooner_elsewhere(
    state: ZoneState, asked: Asked, rooms: Iterable[RoomAir], near: Around, book: Book
) -> tuple[Elsewhere, ...]:
    """Return the rooms, soonest first, that a wet film would be dry in sooner than where it is.

    Only rooms whose air was read lately count: an estimate on a guess helps nobody.
    """
    here = _wait(state, asked, near, book)
    if state.top is None or here is None or (here[1] is not None and here[1] <= near.now):
        return ()
    found = []
    for room in rooms:
        if room.id == state.room.id or room.read_lately(near.now) is None:
            continue
        there = _wait(_moved(state, room, near.now), asked, near, book)
        if there is None or there[1] is None:
            continue
        if here[1] is None or here[1] - there[1] >= _WORTH_IT:
            found.append(Elsewhere(room, there[0], there[1]))
    return tuple(sorted(found, key=lambda e: e.high))


def _moved(state: ZoneState, room: RoomAir, now: datetime) -> ZoneState:
    layers = tuple(_carried(layer, room, now) for layer in state.layers)
    return replace(state, layers=layers, stages=FilmStages(layers), room=room)


def _carried(layer: Layer, room: RoomAir, now: datetime) -> Layer:
    again = layer.air_again.carried(room, now) if layer.air_again else None
    return replace(layer, air=layer.air.carried(room, now), air_again=again)


def _wait(
    state: ZoneState, asked: Asked, near: Around, book: Book
) -> tuple[datetime | None, datetime | None] | None:
    """Return from when and by when a wait is over; None when it is not drying that binds.

    Of a film that failed a check within its time: when it may be sanded and recoated by the clocks.
    """
    verdict = decide(state, asked, near, book)
    if verdict.answer is Answer.DRYING:
        return verdict.low, verdict.high
    top, soft = state.top, still_soft(state.top)
    if top is None or soft is None or soft.is_late or verdict.answer is not Answer.BLOCKED:
        return None
    figures = (top.coat.figures.stages.get(stage) for stage in _TO_RECOAT)
    times = [top.waits(figure) for figure in figures if figure]
    time = reduce(later, times) if times else None
    return (time.low, time.high) if time else None
