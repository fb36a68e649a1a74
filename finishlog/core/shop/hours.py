"""When the person can be in the shop: weekly hours, worked out in elapsed UTC time.

A shop interval is the set of instants whose local wall time lies in [open, close). So an opening
in the spring gap is the first instant after it, an opening in the autumn fold its first
occurrence, a closing in the fold its second. Touching intervals are one, and what the person is
away is cut out of them. Drying never stops at closing time; work always does.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

from msgspec import Struct

# Further than this nobody plans by opening hours; a search that finds nothing says None.
HORIZON = timedelta(days=60)

_DAY_MIN = 24 * 60
_LAST = datetime(9999, 12, 29, tzinfo=UTC)

Interval = tuple[datetime, datetime]


class WeeklyHours(Struct, frozen=True):
    """One opening a week: weekday (0 = Monday) and minutes after local midnight.

    `closes_min` at or below `opens_min` means that it ends on the next day.
    """

    weekday: int
    opens_min: int
    closes_min: int

    def __post_init__(self) -> None:
        if not 0 <= self.weekday <= 6:
            raise ValueError(f"weekday is 0 (Monday) to 6, not {self.weekday}")
        if not (0 <= self.opens_min < _DAY_MIN and 0 <= self.closes_min <= _DAY_MIN):
            raise ValueError("opening is 0 to 1439, closing 0 to 1440 minutes after midnight")

    @property
    def ends_min(self) -> int:
        """Minutes from the midnight before opening to closing."""
        return self.closes_min + (_DAY_MIN if self.closes_min <= self.opens_min else 0)


class ShopHours(Struct, frozen=True):
    """The weekly hours and since when each pattern holds (aware, ascending).

    No patterns: the hours are unknown. A pattern without hours: the shop is shut. `away` are spans
    [from, until) in which it is shut whatever the week says; they may overlap, in any order.
    """

    patterns: tuple[tuple[datetime, tuple[WeeklyHours, ...]], ...]
    time_zone: str
    away: tuple[Interval, ...] = ()

    def __post_init__(self) -> None:
        starts = [_utc(valid_from) for valid_from, _ in self.patterns]
        if starts != sorted(starts):
            raise ValueError("patterns of shop hours must be in the order of their dates")
        if any(_utc(until) < _utc(since) for since, until in self.away):
            raise ValueError("nobody comes back before going away")


def intervals(hours: ShopHours, start: datetime, end: datetime) -> tuple[Interval, ...]:
    """List the merged UTC intervals (open, close) within start and end, cut off at both.

    Empty when the hours are unknown. ValueError for a time without a zone.
    """
    return tuple(_openings(hours, _utc(start), _utc(end)))


def is_open(hours: ShopHours, moment: datetime) -> bool | None:
    """Say whether the shop is open at a moment; None when the hours then are unknown."""
    instant = _utc(moment)
    if any(_utc(since) <= instant < _utc(until) for since, until in hours.away):
        return False
    if not any(_utc(valid_from) <= instant for valid_from, _ in hours.patterns):
        return None
    return bool(intervals(hours, instant, instant + timedelta.resolution))


def next_opening(hours: ShopHours, moment: datetime) -> datetime | None:
    """Find when the shop opens next, later than `moment`; None when unknown or too far."""
    after = _utc(moment)
    return next((a for a, _ in _openings(hours, after, after + HORIZON) if a > after), None)


def open_minutes(hours: ShopHours, start: datetime, end: datetime) -> float:
    """Count the minutes between start and end in which the shop is open: slack in shop time."""
    spans = (b - a for a, b in intervals(hours, start, end))
    return sum(spans, timedelta()) / timedelta(minutes=1)


def _openings(hours: ShopHours, start: datetime, end: datetime) -> Iterator[Interval]:
    """Yield merged intervals less what is away, so that a search stops where it finds."""
    away = sorted((_utc(since), _utc(until)) for since, until in hours.away)
    for opening in _merged(hours, start, end):
        yield from _less(opening, away)


def _less(opening: Interval, away: Iterable[Interval]) -> Iterator[Interval]:
    """Yield what is left of an opening when the spans of being away are cut out of it."""
    opens, closes = opening
    for since, until in away:
        if since < closes and until > opens and since < until:
            if opens < since:
                yield opens, since
            opens = min(until, closes)
    if opens < closes:
        yield opens, closes


def _merged(hours: ShopHours, start: datetime, end: datetime) -> Iterator[Interval]:
    """Yield the intervals of the week one by one, touching ones as one."""
    current: Interval | None = None
    for opens, closes in _raw_openings(hours, start, end):
        if current is not None and opens <= current[1]:
            current = (current[0], max(current[1], closes))
            continue
        if current is not None:
            yield current
        current = (opens, closes)
    if current is not None:
        yield current


def _raw_openings(hours: ShopHours, start: datetime, end: datetime) -> Iterator[Interval]:
    """Yield each pattern's intervals by ascending opening, cut to where the pattern holds."""
    zone = _zone(hours.time_zone)
    starts = [_utc(valid_from) for valid_from, _ in hours.patterns]
    for (_, weekly), since, until in zip(hours.patterns, starts, [*starts, _LAST][1:], strict=True):
        low, high = max(start, since), min(end, until, _LAST)
        for opens, closes in _on_the_clock(weekly, low, high, zone):
            if max(opens, low) < min(closes, high):
                yield max(opens, low), min(closes, high)


def _on_the_clock(
    weekly: tuple[WeeklyHours, ...], low: datetime, high: datetime, zone: ZoneInfo
) -> Iterator[Interval]:
    """Yield the openings of every local day that touches low to high, as instants."""
    if low >= high:
        return
    in_order = sorted(weekly, key=lambda opening: opening.opens_min)
    # From the day before: an opening may run past midnight.
    day = low.astimezone(zone).date() - timedelta(days=1)
    last = high.astimezone(zone).date()
    while day <= last:
        midnight = datetime.combine(day, time())
        for opening in in_order:
            if opening.weekday == day.weekday():
                yield (
                    _instant(midnight + timedelta(minutes=opening.opens_min), zone, fold=0),
                    _instant(midnight + timedelta(minutes=opening.ends_min), zone, fold=1),
                )
        day += timedelta(days=1)


def _instant(wall: datetime, zone: ZoneInfo, *, fold: int) -> datetime:
    """Place a wall time in UTC; one that a clock change skips is the first instant after it."""
    instant = wall.replace(tzinfo=zone, fold=fold).astimezone(UTC)
    if instant.astimezone(zone).replace(tzinfo=None) == wall:
        return instant
    # PEP 495: in a gap fold=1 lands before the change and fold=0 after it.
    before = wall.replace(tzinfo=zone, fold=1).astimezone(UTC)
    after = wall.replace(tzinfo=zone, fold=0).astimezone(UTC)
    old = before.astimezone(zone).utcoffset()
    while after - before > timedelta(seconds=1):
        middle = before + timedelta(seconds=(after - before) // timedelta(seconds=2))
        if middle.astimezone(zone).utcoffset() == old:
            before = middle
        else:
            after = middle
    return after


def _zone(name: str) -> ZoneInfo:
    try:
        return ZoneInfo(name)
    except (KeyError, OSError) as error:
        raise ValueError(f"no time zone is named {name!r}") from error


def _utc(moment: datetime) -> datetime:
    if moment.tzinfo is None:
        raise ValueError("shop hours need times with a zone")
    return moment.astimezone(UTC)
