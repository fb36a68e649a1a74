"""The air that a piece met and will meet: the rooms that it stood in, one after the other."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Sequence
from datetime import datetime, timedelta
from typing import TypeVar

from msgspec import Struct

from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint, AirSpan


class Stay(Struct, frozen=True):
    """A piece stood in a room from a moment on."""

    since: datetime
    air: RoomAir


class Leg(Struct, frozen=True):
    """A stay as far as it counts: from `start` to `end`, None for good."""

    room: RoomAir
    start: datetime
    end: datetime | None


T = TypeVar("T")

_NOWHERE = RoomAir()


class AirMet(Struct, frozen=True):
    """The air from a moment on; legs follow each other, the last has no end."""

    legs: tuple[Leg, ...]

    @property
    def start(self) -> datetime:
        """The moment from which on it is counted."""
        return self.legs[0].start

    def upto(self, moment: datetime | None) -> Iterator[Leg]:
        """Yield the stays as far as they lie before a moment; None: all of them."""
        for leg in self.legs:
            if moment is not None and leg.start >= moment:
                return
            ends = leg.end is not None and (moment is None or leg.end < moment)
            yield leg if ends else Leg(leg.room, leg.start, moment)

    def until(self, end: datetime | None) -> Iterator[AirSpan]:
        """Yield the spans up to a moment; None: all of them."""
        for leg in self.upto(end):
            yield from leg.room.course.between(leg.start, leg.end)

    def mean_pct(self, end: datetime) -> float:
        """Return the humidity until a moment where it was read, by how long it was so; else 0."""
        pct = hours = 0.0
        for span in self.until(end):
            if span.end is not None and span.measured:
                long = (span.end - span.start) / timedelta(hours=1)
                (a, b), hours = next(span.ramps), hours + long
                pct += long * (a.humidity_pct + b.humidity_pct) / 2
        return pct / hours if hours else 0.0

    def span_at(self, moment: datetime) -> AirSpan:
        """Return the span from a moment on."""
        leg = next(leg for leg in self.legs if leg.end is None or moment < leg.end)
        return next(leg.room.course.between(moment, leg.end))

    def carried(self, room: RoomAir, moment: datetime) -> AirMet:
        """Return the air if the piece stood in another room from a moment on."""
        return AirMet((*self.upto(moment), Leg(room, max(moment, self.start), None)))


def remembered(met: AirMet, asked: Hashable, work_out: Callable[[], T]) -> T:
    """Return what was asked of an air that was met, worked out once; its last room keeps it."""
    answered, key = met.legs[-1].room.answered, (met, asked)
    if key not in answered:
        answered[key] = work_out()
    found: T = answered[key]
    return found


def air_met(stays: Sequence[Stay], start: datetime) -> AirMet:
    """Return the air of a piece from `start` on; `stays` are in order.

    Time before the first stay is unknown, as is all of it when there are none.
    """
    here = [s for s in stays if s.since <= start][-1:]
    later = [s for s in stays if s.since > start]
    rooms = [Stay(start, here[0].air if here else _NOWHERE), *later]
    ends = [*(stay.since for stay in later), None]
    return AirMet(tuple(Leg(s.air, s.since, end) for s, end in zip(rooms, ends, strict=True)))


def carried_from(met: AirMet, moment: datetime) -> list[tuple[AirPoint, datetime]]:
    """Return the rooms that were left up to a moment, as they were read then, and when."""
    left = [(leg.room, leg.end) for leg in met.legs if leg.end is not None and leg.end <= moment]
    found = ((room.measured_at(at), at) for room, at in left)
    return [(reading, at) for reading, at in found if reading is not None]
