"""What to suppose of a room's air where nobody read it: its usual day, and its heater.

The usual day is drawn straight between its points, in the time of the clock on the wall. Heating
lifts the temperature and leaves the water in the air as it is. Two months ahead no day is drawn
any more: then the air may be anything from the coldest to the warmest of the usual days.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from itertools import groupby, pairwise
from operator import itemgetter

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.psychrometrics import Air, cooled
from finishlog.core.air.span import AirSpan, Known
from finishlog.core.air.usual_day import UsualDay, UsualHour

DRAWN = timedelta(days=60)
_DAY = timedelta(days=1)
# Our own assumption where nobody said how damp it is: the coldest hour is this damp.
_DAMP_PCT = 75.0


class Heat(Struct, frozen=True):
    """A heater that runs for once; `temperature_c` None: as warm as the room gets when heated."""

    start: datetime
    end: datetime
    temperature_c: float | None = None


def one_heat(heats: Iterable[Heat]) -> list[Heat]:
    """Join heats of one warmth that touch: what was put on record twice is one heat."""
    joined: dict[float | None, list[Heat]] = {}
    for heat in sorted(heats, key=lambda h: h.start):
        alike = joined.setdefault(heat.temperature_c, [])
        if alike and heat.start <= alike[-1].end:
            alike[-1] = replace(alike[-1], end=max(alike[-1].end, heat.end))
        else:
            alike.append(heat)
    return sorted((h for alike in joined.values() for h in alike), key=lambda h: h.start)


def supposed(
    usual: Sequence[UsualDay],
    heats: Sequence[Heat],
    zone: tzinfo,
    start: datetime,
    end: datetime | None,
    read: Air | None,
) -> list[AirSpan]:
    """Return what to suppose from `start` to `end` (None: for good); `read`: the last reading."""
    days = [day for day in usual if day.hours]
    until = end if end is not None else max([start, *(h.end for h in heats)]) + DRAWN
    if days and end is not None:
        until = min(end, start + DRAWN)
    drawn = list(_drawn(days, heats, zone, start, until, read))
    if end is not None and until == end:
        return drawn
    if not days and not any(each.airs for each in drawn):
        return [_stretch(start, end)]
    return [*drawn, _stretch(until, end, _anything(days, read))]


def _stretch(
    start: datetime,
    end: datetime | None,
    airs: tuple[Air, ...] = (),
    ends: tuple[Air, ...] = (),
) -> AirSpan:
    """Build a stretch of what is usual; without air nothing is known."""
    return AirSpan(start, end, airs, Known.USUAL if airs else Known.UNKNOWN, ends)


def _drawn(
    days: Sequence[UsualDay],
    heats: Sequence[Heat],
    zone: tzinfo,
    start: datetime,
    end: datetime,
    read: Air | None,
) -> Iterator[AirSpan]:
    """Draw the days that held, one set after the other, and the heaters over them."""
    replaced = {day.replaced_at for day in days if day.replaced_at is not None}
    bounds = [start, *sorted(at for at in replaced if start < at < end), end]
    for since, until in pairwise(bounds):
        held = _held_at(days, since)
        usual = _usual_heating(held, zone, since, until)
        if since > start:
            usual = (Heat(max(h.start, since), h.end, h.temperature_c) for h in usual)
        once = (h for h in heats if h.start < until and h.end > since)
        yield from _overlaid(
            _days(held, zone, since, until, read), _warm(once, usual, held, read), read
        )


def _held_at(days: Sequence[UsualDay], moment: datetime) -> list[UsualDay]:
    """Return what held at a moment: of a season the first that was not replaced by then."""
    found: dict[tuple[int, int] | None, UsualDay] = {}
    for day in days:
        known = found.get(day.season)
        if moment < _until(day) and (known is None or _until(day) < _until(known)):
            found[day.season] = day
    return list(found.values())


def _until(day: UsualDay) -> datetime:
    return day.replaced_at or datetime.max.replace(tzinfo=UTC)


def _anything(days: Sequence[UsualDay], read: Air | None) -> tuple[Air, ...]:
    """Return the coldest and the warmest air of the usual days."""
    days = [day for day in days if day.replaced_at is None]
    airs = [air for day in days for _, air in _points(day, read)]
    airs += [cooled(max(airs, key=_warmth), d.heated_c) for d in days if d.heated_c is not None]
    return (min(airs, key=_warmth), max(airs, key=_warmth)) if airs else ()


def _warmth(air: Air) -> float:
    return air.temperature_c


def _points(day: UsualDay, read: Air | None) -> list[tuple[int, Air]]:
    """Return the points of a day; where no humidity is given, the water before it stays."""
    water = next((_air(h) for h in reversed(day.hours) if h.humidity_pct is not None), None)
    if water is None:
        coldest = min(h.temperature_c for h in day.hours)
        water = read or Air(coldest, _DAMP_PCT)
    found = []
    for hour in day.hours:
        water = _air(hour) if hour.humidity_pct is not None else cooled(water, hour.temperature_c)
        found.append((hour.minute, water))
    return found


def _air(hour: UsualHour) -> Air:
    assert hour.humidity_pct is not None
    return Air(hour.temperature_c, hour.humidity_pct)


def _days(
    days: Sequence[UsualDay], zone: tzinfo, start: datetime, end: datetime, read: Air | None
) -> Iterator[AirSpan]:
    """Draw the usual days from `start` to `end`; where a season tells of none, nothing."""
    points = {day: _points(day, read) for day in days}
    dates = _dates(start - _DAY, end + _DAY, zone)
    for _, alike in groupby(dates, key=lambda on: usual_on(days, on) is None):
        run = list(alike)
        since = max(start, _moment(run[0], 0, zone))
        until = min(end, _moment(run[-1] + _DAY, 0, zone))
        told = ((on, usual_on(days, on)) for on in run)
        knots = [(_moment(on, at, zone), air) for on, day in told if day for at, air in points[day]]
        if since < until:
            yield from _straight(knots, since, until) if knots else [_stretch(since, until)]


def _straight(
    knots: list[tuple[datetime, Air]], start: datetime, end: datetime
) -> Iterator[AirSpan]:
    """Join points by straight lines; before the first and after the last it stays as there.

    Where the clock is put on, a time that does not occur falls behind those that follow it.
    """
    knots = sorted(knots, key=itemgetter(0))
    knots = [(start, knots[0][1]), *knots] if knots[0][0] > start else knots
    knots = [*knots, (end, knots[-1][1])] if knots[-1][0] < end else knots
    for (since, air), (until, then) in pairwise(knots):
        if since < until and since < end and until > start:
            whole = _stretch(since, until, (air,), (then,))
            yield whole.cut(max(since, start), min(until, end))


def usual_on(days: Iterable[UsualDay], on: date) -> UsualDay | None:
    """Return the usual day of a date: of its season, or the one for all the year."""
    always = None
    for day in days:
        if day.season is None:
            always = day
        elif _within(day.season, on.month):
            return day
    return always


def _within(season: tuple[int, int], month: int) -> bool:
    first, last = season
    return first <= month <= last if first <= last else month >= first or month <= last


def _dates(start: datetime, end: datetime, zone: tzinfo) -> Iterator[date]:
    on, last = start.astimezone(zone).date(), end.astimezone(zone).date()
    while on <= last:
        yield on
        on += _DAY


def _moment(on: date, minute: int, zone: tzinfo) -> datetime:
    """Return the instant of a minute of the day on the wall."""
    wall = datetime.combine(on, time(), zone) + timedelta(minutes=minute)
    return wall.astimezone(UTC)


def heater_between(
    usual: Sequence[UsualDay],
    heats: Sequence[Heat],
    zone: tzinfo,
    start: datetime,
    end: datetime,
) -> Heat | None:
    """Return a heater that runs at some time between, for once or as usual: the last to end."""
    known = [heat for heat in heats if heat.start < end and heat.end > start]
    known += _usual_heating(_held_at(usual, start), zone, start, end)
    return max(known, key=lambda heat: heat.end, default=None)


def _usual_heating(
    days: Sequence[UsualDay], zone: tzinfo, start: datetime, end: datetime
) -> Iterator[Heat]:
    """Yield when the heater runs as usual at some time between."""
    if not any(day.heated for day in days):
        return
    for on in _dates(start - _DAY, end, zone):
        day = usual_on(days, on)
        if day is None or day.heated is None or on.weekday() not in day.heated_days:
            continue
        begins, ends = day.heated
        since = _moment(on, begins, zone)
        until = _moment(on + _DAY if ends <= begins else on, ends, zone)
        if since < end and until > start:
            yield Heat(since, until, day.heated_c)


def _warm(
    once: Iterable[Heat], usual: Iterable[Heat], days: Sequence[UsualDay], read: Air | None
) -> list[Heat]:
    """Return heaters with how warm it gets where nobody said it: as by another, as on a day."""
    warmest = max((a.temperature_c for d in days for _, a in _points(d, read)), default=None)
    heated = max((d.heated_c for d in days if d.heated_c is not None), default=warmest)
    told = [(heat, heated) for heat in once] + [(heat, warmest) for heat in usual]
    warm = [(h, celsius if h.temperature_c is None else h.temperature_c) for h, celsius in told]
    return [Heat(h.start, h.end, celsius) for h, celsius in warm if celsius is not None]


def _overlaid(
    plain: Iterable[AirSpan], heats: Sequence[Heat], read: Air | None
) -> Iterator[AirSpan]:
    """Lift the temperature where a heater runs."""
    if not heats:
        yield from plain
        return
    marks = sorted({moment for h in heats for moment in (h.start, h.end)})
    running = [[h for h in heats if h.start <= mark < h.end] for mark in marks]
    for each in plain:
        assert each.end is not None
        inside = marks[bisect_right(marks, each.start) : bisect_left(marks, each.end)]
        for part in each.cut_at(inside):
            n = bisect_right(marks, part.start)
            on = running[n - 1] if n else []
            yield _lifted(part, on, read) if on else part


def _lifted(part: AirSpan, heats: Sequence[Heat], read: Air | None) -> AirSpan:
    """Warm a stretch to the warmest of the heaters that run through it, where it is colder."""
    least_c = max(h.temperature_c for h in heats if h.temperature_c is not None)
    told = list(part.ramps) or ([(read, read)] if read is not None else [])
    warm = [(_at_least(a, least_c), _at_least(b, least_c)) for a, b in told]
    known = Known.USUAL if warm else Known.UNKNOWN
    return AirSpan.along(part.start, part.end, warm, known, min(h.start for h in heats))


def _at_least(air: Air, celsius: float) -> Air:
    return cooled(air, max(air.temperature_c, celsius))
