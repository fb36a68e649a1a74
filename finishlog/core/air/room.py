"""The air of one room as a course of spans: read, usual, unknown.

Readings at most two hours apart are joined by a straight line, as a logger's are. Further apart,
the film met something between them, so both count, and the room's usual day too: waits take the
slowest of them, windows the fastest. After the last reading the room goes on as it usually does;
without a usual day it may have fallen to its coldest night, where the person gave one. What
nothing covers is marked unknown: it is reckoned by the nearest air there is, and whoever asks must
test before coating.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Hashable, Iterator, Sequence
from datetime import UTC, datetime, timedelta, tzinfo
from functools import cached_property
from operator import attrgetter
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.course import Course
from finishlog.core.air.heater import HeaterKind
from finishlog.core.air.place import Opening, Place
from finishlog.core.air.psychrometrics import Air, cooled
from finishlog.core.air.span import AirPoint, AirSpan, Known, Ramp
from finishlog.core.air.supposed import DRAWN, Heat, heater_between, supposed
from finishlog.core.air.usual_day import UsualDay

# Our own rules: yesterday's reading says nothing about tonight; this evening's stays true for some
# hours, and speaks for the few before it. A logger reads often enough to be taken at its word.
READING_HOLDS = timedelta(hours=24)
READING_STAYS = timedelta(hours=6)
READING_SPEAKS_FOR = timedelta(hours=4)
JOINED_WITHIN = timedelta(hours=2)
# A house that falls no further than this when its heating stops is still the room that was read.
_HARDLY_FALLS_C = 3.0

_ALWAYS = datetime(1970, 1, 1, tzinfo=UTC)


class RoomAir(Struct, frozen=True, eq=False, dict=True):
    """What is known of one room's air, and its course. It equals only itself.

    `readings` in order of time. `coldest_night_c`: how cold (°C) it may get. `usual`: its usual
    days by season; `heats`: the heater that runs for once; `zone`: where its clock on the wall is;
    `name`: what the shop calls it; `heater`: what heats it, when that was said. `as_was`: the room
    whose course stays as it was, where the last reading is only supposed. `near`: the rooms that it
    leads to, and by what.
    """

    readings: tuple[AirPoint, ...] = ()
    coldest_night_c: float | None = None
    id: int | None = None
    usual: tuple[UsualDay, ...] = ()
    heats: tuple[Heat, ...] = ()
    zone: tzinfo = UTC
    name: str = ""
    heater: HeaterKind | None = None
    as_was: RoomAir | None = None
    place: Place = Place()
    near: tuple[tuple[Opening, RoomAir], ...] = ()

    def heater_between(self, start: datetime, end: datetime) -> Heat | None:
        """Return a heater on record that runs at some time between; None: none is."""
        return heater_between(self.usual, self.heats, self.zone, start, end)

    @cached_property
    def course(self) -> Course:
        """The air of all time."""
        return course_of(self) if self.as_was is None else self.as_was.course

    @cached_property
    def answered(self) -> dict[Hashable, Any]:
        """What was worked out of its air, by what was asked; it goes with the room of a look."""
        return {}

    @property
    def is_foretold(self) -> bool:
        """Tell whether anybody said how the room goes on: a usual day, a heater for once."""
        return bool(self.heats) or any(day.hours for day in self.usual)

    @cached_property
    def has_colder_nights(self) -> bool:
        """Tell whether its nights were called colder than any hour of its usual days."""
        night = self.coldest_night_c
        hours = [h.temperature_c for d in self.usual if d.replaced_at is None for h in d.hours]
        return bool(hours) and night is not None and night < min(hours)

    @cached_property
    def extremes(self) -> tuple[Air, ...]:
        """The coldest and the dampest air that it was ever read at."""
        if not self.readings:
            return ()
        coldest = min(self.readings, key=attrgetter("temperature_c"))
        dampest = max(self.readings, key=attrgetter("humidity_pct"))
        return (coldest.air, dampest.air)

    def measured_at(self, moment: datetime) -> AirPoint | None:
        """Return the reading that holds at a moment, None when there is none."""
        n = self._read_by(moment) - 1
        if n >= 0 and moment - self.readings[n].at < READING_HOLDS:
            return self.readings[n]
        return None

    def read_before(self, moment: datetime) -> AirPoint | None:
        """Return the last reading up to a moment, however old; None: there is none."""
        n = self._read_by(moment)
        return self.readings[n - 1] if n else None

    def since(self, moment: datetime) -> Sequence[AirPoint]:
        """Return the readings after a moment."""
        return self.readings[self._read_by(moment) :]

    def _read_by(self, moment: datetime) -> int:
        return bisect_right(self.readings, moment, key=attrgetter("at"))

    def read_lately(self, moment: datetime) -> AirPoint | None:
        """Return the reading that still says what the air is now: good enough to coat by.

        One from before a heater came on says nothing of the warm room.
        """
        reading = self.measured_at(moment)
        if reading is None or moment - reading.at > READING_STAYS:
            return None
        supposed = self.as_was is not None
        return reading if supposed or self._span_at(moment).measured else None

    def supposes_water(self, moment: datetime) -> bool:
        """Tell whether how damp the room is at a moment was supposed, and not read for hours."""
        n = self._read_by(moment)
        lately = self.readings[self._read_by(moment - READING_STAYS) : n]
        return n > 0 and self.readings[n - 1].supposed and all(r.supposed for r in lately)

    def expected_at(self, moment: datetime) -> Air | None:
        """Return the air to expect at a moment: as read lately, as usual, as last read."""
        return self._span_at(moment).air_at(moment)

    def _span_at(self, moment: datetime) -> AirSpan:
        return self.course.spans[self.course.index(moment)]

    def coldest_between(self, start: datetime, end: datetime) -> float | None:
        """Return the coldest (°C) that the room may be between two moments; None: unknown."""
        airs = (
            air.temperature_c
            for span in self.course.between(start, end)
            for air in (*span.airs, *span.ends)
        )
        return min(airs, default=None)


def course_of(room: RoomAir) -> Course:
    """Draw the course of a room; a run of tests keeps it between shops of the same air."""
    return Course(_whole_time(room))


def _whole_time(room: RoomAir) -> Iterator[AirSpan]:
    if not room.readings:
        yield from _never_read(room)
        return
    first = room.readings[0]
    speaks = first.at - READING_SPEAKS_FOR
    yield from _before(room, first, speaks)
    yield AirSpan(speaks, first.at, (first.air,), Known.MEASURED)
    for reading, following in zip(room.readings, [*room.readings[1:], None], strict=True):
        if following is not None and following.at - reading.at <= JOINED_WITHIN:
            if following.at > reading.at:
                airs, ends = (reading.air,), (following.air,)
                yield AirSpan(reading.at, following.at, airs, Known.MEASURED, ends)
        else:
            yield from _until_next(room, reading, following)


def _before(room: RoomAir, first: AirPoint, speaks: datetime) -> Iterator[AirSpan]:
    """Yield what to suppose until the first reading speaks: its usual days of the last two months.

    What was usual before the gauge was bought is better than nothing, and no reading undoes it.
    """
    drawn = speaks - DRAWN if any(day.hours for day in room.usual) else speaks
    yield AirSpan(_ALWAYS, drawn, (first.air,), Known.UNKNOWN)
    if drawn < speaks:
        for each in supposed(room.usual, room.heats, room.zone, drawn, speaks, None):
            yield each if each.airs else replace(each, airs=(first.air,))


def _never_read(room: RoomAir) -> Iterator[AirSpan]:
    """Yield what to suppose of a room that was never read.

    It is drawn for two months around the moment at which a usual day or a heater was told of;
    further off it is anything that the usual days know.
    """

    told = {heat.start for heat in room.heats}
    told |= {day.valid_from for day in room.usual if day.hours and day.valid_from is not None}
    if not told:
        yield from supposed(room.usual, (), room.zone, _ALWAYS, None, None)
        return
    bounds = [min(told) - DRAWN, *sorted({min(told), max(told)})]
    yield from supposed(room.usual, (), room.zone, _ALWAYS, bounds[0], None)
    for start, end in zip(bounds, [*bounds[1:], None], strict=True):
        yield from supposed(room.usual, room.heats, room.zone, start, end, None)


def _until_next(room: RoomAir, reading: AirPoint, following: AirPoint | None) -> Iterator[AirSpan]:
    """Yield the spans from one reading to the next one, or for good."""
    end = following.at if following else None
    # Where the readings on both sides stop speaking.
    marks = [reading.at + READING_STAYS, reading.at + READING_HOLDS]
    marks += [following.at - READING_SPEAKS_FOR] if following else []
    was_heated = gone = False
    for each in supposed(room.usual, room.heats, room.zone, reading.at, end, reading.air):
        heated = each.heated_since is not None
        was_heated = was_heated or (each.start == reading.at and heated)
        gone = gone or (was_heated and not heated)
        for part in each.cut_at(marks):
            cools = gone and _falls(part, reading.temperature_c)
            yield _with_readings(room, part, reading, following, gone=cools)


def _falls(part: AirSpan, read_c: float) -> bool:
    """Tell whether a room that was read warm falls without its heater, or nobody told that."""
    return part.coldest_c is None or part.coldest_c < read_c - _HARDLY_FALLS_C


def _with_readings(
    room: RoomAir,
    part: AirSpan,
    reading: AirPoint,
    following: AirPoint | None,
    *,
    gone: bool,
) -> AirSpan:
    """Lay readings and what is supposed beside each other, the nearest to the truth first.

    `gone`: the heater that the reading was taken with has stopped since; then, as where one came
    on since, the reading tells of another room than this.
    """
    age = part.start - reading.at
    nears = following is not None and following.at - part.start <= READING_SPEAKS_FOR
    came_on = part.heated_since is not None and part.heated_since > reading.at
    usual, read = list(part.ramps), _still(reading.air)
    then = _still(following.air) if following else []
    known = Known.USUAL
    if nears or (age < READING_STAYS and not came_on and not gone):
        # Where a usual day fills the hours between, a reading tells of its own end of them alone.
        near, far = (then, read) if nears else (read, then)
        ramps, known = [*near, *(usual or far)], Known.MEASURED if following else Known.HELD
    elif came_on:
        ramps = [*usual, *then]
    elif not usual:
        # It falls to its coldest night; where a heater stopped, nobody knows of the rest.
        night = _night(reading.air, room.coldest_night_c)
        ramps = [*then, *night, *read] if gone else [*read, *then, *night]
        tells = age < READING_HOLDS and (following is not None or not gone)
        told = Known.MEASURED if following else Known.HELD
        known = told if tells else Known.UNKNOWN
    elif gone:
        night = _night(reading.air, room.coldest_night_c) if room.has_colder_nights else []
        ramps = [*usual, *night, *then]
    else:
        # The reading still counts for a day: this may be colder weather than usual. So does a
        # night that the person called colder than any usual hour, unless a heater runs through it.
        nights = room.has_colder_nights and part.heated_since is None
        night = _night(usual[0][0], room.coldest_night_c) if nights else []
        ramps = [*usual, *night, *(read if age < READING_HOLDS else []), *then]
    return AirSpan.along(part.start, part.end, ramps, known, part.heated_since)


def _still(air: Air) -> list[Ramp]:
    return [(air, air)]


def _night(air: Air, coldest_c: float | None) -> list[Ramp]:
    """Return the coldest night, where it is colder than some air."""
    colder = coldest_c is not None and coldest_c < air.temperature_c
    return _still(cooled(air, coldest_c)) if coldest_c is not None and colder else []
