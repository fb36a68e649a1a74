"""The air that a piece met and will meet, as consecutive spans.

Simple form: a reading holds for a day, and speaks for the few hours before it. Between two
readings the film met something between them, so both count: waits take the slower of the two,
windows the faster. Some hours after a reading the room may have fallen to its coldest night,
where the person gave one, and that counts too. What no reading covers is marked as not measured:
it is reckoned by the nearest air there is, and whoever asks must test before coating.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from finishlog.core.air import Air, saturation_pa
from finishlog.core.records import Reading

# Our own rules: yesterday's reading says nothing about tonight; this evening's stays true for some
# hours, and speaks for the few before it.
READING_HOLDS = timedelta(hours=24)
READING_STAYS = timedelta(hours=6)
READING_SPEAKS_FOR = timedelta(hours=4)


@dataclass(frozen=True, slots=True)
class AirSpan:
    """Air from `start` to `end` (None: for good).

    The first of `airs` is the nearest reading, the others are what it may have become; empty when
    the room was never read. `measured` tells whether a reading covers the span.
    """

    start: datetime
    end: datetime | None
    airs: tuple[Air, ...]
    measured: bool

    @property
    def length_h(self) -> float | None:
        """Length in hours, None when it has no end."""
        return None if self.end is None else (self.end - self.start) / timedelta(hours=1)


@dataclass(frozen=True, slots=True)
class RoomAir:
    """What is known of one room's air: its readings in order, and its coldest night (°C)."""

    readings: tuple[Reading, ...] = ()
    coldest_night_c: float | None = None
    id: int | None = None

    def measured_at(self, moment: datetime) -> Reading | None:
        """Return the reading that holds at a moment, None when there is none."""
        before = [r for r in self.readings if r.when.latest <= moment]
        if before and moment - before[-1].when.latest < READING_HOLDS:
            return before[-1]
        return None

    def read_lately(self, moment: datetime) -> Reading | None:
        """Return the reading that still says what the air is now: good enough to coat by."""
        reading = self.measured_at(moment)
        if reading and moment - reading.when.latest <= READING_STAYS:
            return reading
        return None


@dataclass(frozen=True, slots=True)
class Stay:
    """A piece stood in a room from a moment on."""

    since: datetime
    air: RoomAir


def cooled(air: Air, temperature_c: float) -> Air:
    """Cool air without taking water out: its humidity rises, to 100 % at the most."""
    vapour = saturation_pa(air.temperature_c) * air.humidity_pct / 100
    return Air(temperature_c, min(100.0, 100 * vapour / saturation_pa(temperature_c)))


def _whole_time(room: RoomAir) -> Iterator[tuple[datetime | None, tuple[Air, ...], bool]]:
    """Yield (end, airs, measured) from the beginning of time on, the last without an end."""
    if not room.readings:
        yield None, (), False
        return
    first = room.readings[0]
    yield first.when.latest - READING_SPEAKS_FOR, (first.air,), False
    yield first.when.latest, (first.air,), True
    for reading, following in zip(room.readings, [*room.readings[1:], None], strict=True):
        yield from _until_next(reading, following, room.coldest_night_c)


def _until_next(
    reading: Reading, following: Reading | None, coldest_c: float | None
) -> Iterator[tuple[datetime | None, tuple[Air, ...], bool]]:
    """Yield the spans from one reading to the next: as read, perhaps as cold as a night, as read.

    Beyond the day for which a reading holds, nothing covers the span.
    """
    since = reading.when.latest
    airs = (reading.air,) if following is None else (reading.air, following.air)
    colder = (*airs, *_night(reading.air, coldest_c))
    end = following.when.latest if following else None
    nears = end - READING_SPEAKS_FOR if end else None
    yield _earlier(since + READING_STAYS, end), airs, True
    yield _earlier(since + READING_HOLDS, nears), colder, True
    yield nears, colder, False
    if following is not None:
        yield end, (following.air, reading.air), True


def _earlier(one: datetime, other: datetime | None) -> datetime:
    return one if other is None else min(one, other)


def _night(air: Air, coldest_c: float | None) -> tuple[Air, ...]:
    if coldest_c is None or coldest_c >= air.temperature_c:
        return ()
    return (cooled(air, coldest_c),)


def room_spans(room: RoomAir, start: datetime) -> tuple[AirSpan, ...]:
    """Cut the time from `start` on into spans of constant air, the last without an end."""
    spans: list[AirSpan] = []
    since = start
    for end, airs, measured in _whole_time(room):
        if end is None or end > since:
            spans.append(AirSpan(since, end, airs, measured))
            since = end or since
    return tuple(spans)


def air_met(stays: Sequence[Stay], start: datetime) -> tuple[AirSpan, ...]:
    """Join the spans of the rooms that a piece stood in, from `start` on.

    `stays` are in order; time before the first is unknown, as is all of it when there are none.
    """
    here = [s for s in stays if s.since <= start][-1:]
    later = [s for s in stays if s.since > start]
    rooms = [Stay(start, here[0].air if here else RoomAir()), *later]
    spans: list[AirSpan] = []
    for stay, following in zip(rooms, [*rooms[1:], None], strict=True):
        leaves = following.since if following else None
        spans.extend(_until(room_spans(stay.air, stay.since), leaves))
    return tuple(spans)


def carried(spans: Sequence[AirSpan], room: RoomAir, moment: datetime) -> tuple[AirSpan, ...]:
    """Return the spans as they would be if the piece stood in another room from a moment on."""
    return (*_until(spans, moment), *room_spans(room, moment))


def _until(spans: Sequence[AirSpan], leaves: datetime | None) -> Iterator[AirSpan]:
    for span in spans:
        if leaves is None or (span.end is not None and span.end <= leaves):
            yield span
        elif span.start < leaves:
            yield AirSpan(span.start, leaves, span.airs, span.measured)
