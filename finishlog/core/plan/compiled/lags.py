"""How long after its end a task lets another begin, by the quarter hour at which it ends.

The clock is asked of every quarter hour of an opening; where the air of some days was there before,
the answer is as long as it was then.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta
from functools import cached_property
from itertools import accumulate

from msgspec import Struct, field

from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirSpan
from finishlog.core.plan.compiled.minutes import Origin
from finishlog.core.plan.search.shop import NEVER, QUARTER, Lag, Span

_DAY = timedelta(days=1)
_DAY_MIN = 24 * 60
# So many days more are compared: what begins at the end of a plan dries behind it.
_BEHIND = 90
# When something is reached that began at a moment; None: never.
Reaches = Callable[[datetime], datetime | None]
# A stretch of a day: from which minute, its air, how that is known.
_Stretch = tuple[int, AirSpan]


class Days(Struct, dict=True):
    """The days ahead of one room by their air: two of one number are alike hour by hour."""

    origin: Origin
    room: RoomAir

    @cached_property
    def numbers(self) -> tuple[int, ...]:
        """Return a number for each day from the one before the origin on."""
        known: dict[tuple[_Stretch, ...], int] = {}
        count = self.origin.minutes // _DAY_MIN + _BEHIND
        return tuple(known.setdefault(self._stretches(n), len(known)) for n in range(count))

    def _stretches(self, n: int) -> tuple[_Stretch, ...]:
        begins = self.origin.moment + (n - 1) * _DAY
        found = self.room.course.between(begins, begins + _DAY)
        return tuple(
            ((s.start - begins) // timedelta(minutes=1), _anywhen(s, begins)) for s in found
        )

    def run(self, first: int, last: int) -> tuple[int, ...]:
        """Return the numbers of the days that some minutes from the origin lie in, one before."""
        return self.numbers[first // _DAY_MIN : last // _DAY_MIN + 2]

    @property
    def ends(self) -> int:
        """The minute up to which the days are known."""
        return (len(self.numbers) - 1) * _DAY_MIN


def _anywhen(span: AirSpan, begins: datetime) -> AirSpan:
    """Return a stretch as it is on any day."""
    heated = _ALWAYS if span.heated_since is not None else None
    return AirSpan(_ALWAYS, None, span.airs, span.known, span.ends, heated)


_ALWAYS = datetime(1970, 1, 1, tzinfo=UTC)


class Quarters(Struct, frozen=True):
    """The quarter hours at which a task may end, as places in a table, opening by opening.

    `length`: of the table.
    """

    length: int
    openings: tuple[range, ...]


def quarters(openings: Sequence[Span], origin: Origin) -> Quarters:
    """Return the quarter hours in and right behind the openings."""
    length = origin.minutes // QUARTER + 1
    found = (range(a // QUARTER, min(length, -(-b // QUARTER) + 1)) for a, b in openings)
    return Quarters(length, tuple(filter(None, found)))


def lag_of(reaches: Reaches, days: Days, at: Quarters, since: int, *, closes: bool = False) -> Lag:
    """Return a lag by what is reached from each quarter hour on at which a task may end.

    `since`: the minute before which it cannot. `closes`: it is no wait but a window: down to the
    minute, and never too late.
    """
    first = max(0, since // QUARTER)
    asked = _Asked(reaches, days, closes=closes)
    found: dict[int, int] = {}
    for opening in at.openings:
        if opening[-1] >= first:
            asked.fill(found, max(first, opening[0]), opening[-1])
    if not found:
        return 0
    longest, shortest = max(found.values()), min(found.values())
    if longest - shortest <= 1:
        return shortest if closes else longest
    return _table(found, at, closes=closes)


# Where the air changes evenly a lag goes straight for so many quarter hours: the clock is asked
# in their middle. Of what takes days some minutes are nothing, and any stretch will do.
_STRAIGHT = 8
_DAYS, _WITHIN = 2 * _DAY_MIN, 5


class _Asked(Struct):
    """What passes after a quarter hour; known where all days since are as they were before."""

    reaches: Reaches
    days: Days
    closes: bool
    # From here on it is never reached.
    never: int | None = None
    _of_day: dict[int, list[tuple[int, int]]] = field(default_factory=dict)

    def fill(self, found: dict[int, int], first: int, last: int) -> None:
        """Find what passes from some quarter hours on, both ends and all between."""
        a, b = self._at(found, first), self._at(found, last)
        if last - first < 2:
            return
        middle = (first + last) // 2
        between = self._at(found, middle)
        takes_days = min(a, b) > _DAYS
        within = _WITHIN if takes_days else 1
        straight = max(a, b, between) < NEVER and (takes_days or last - first <= _STRAIGHT)
        if straight and abs(_between(first, a, last, b, middle) - between) <= within:
            by = 0 if a == between == b else -within if self.closes else within
            for q in range(first + 1, last):
                way = (first, a, middle, between) if q <= middle else (middle, between, last, b)
                found.setdefault(q, _between(*way, q) + by)
            return
        self.fill(found, first, middle)
        self.fill(found, middle, last)

    def _at(self, found: dict[int, int], q: int) -> int:
        if q not in found:
            found[q] = self._passes(q * QUARTER)
        return found[q]

    def _passes(self, minute: int) -> int:
        if self.never is not None and minute >= self.never:
            return NEVER
        of_day = self._of_day.setdefault(minute % _DAY_MIN, [])
        passed = self._as_before(of_day, minute)
        if passed is None:
            origin = self.days.origin
            moment = self.reaches(origin.at(minute))
            if moment is None:
                # What begins later is reached no sooner.
                self.never = minute if self.never is None else min(minute, self.never)
                passed = NEVER
            else:
                passed = (origin.down(moment) if self.closes else origin.up(moment)) - minute
            of_day.append((minute, passed))
        return passed

    def _as_before(self, found: Sequence[tuple[int, int]], minute: int) -> int | None:
        """Return what passed from the same time of an earlier day, all days since being alike."""
        days = self.days
        for before, passed in found:
            end = minute + passed
            if end < days.ends and days.run(before, before + passed) == days.run(minute, end):
                return passed
        return None


def _between(first: int, a: int, last: int, b: int, q: int) -> int:
    return a + (b - a) * (q - first) // (last - first)


def _table(found: dict[int, int], at: Quarters, *, closes: bool) -> tuple[int, ...]:
    """Lay what passes out by the quarter hour; between the openings the next one answers."""
    last, table = NEVER, [NEVER] * at.length
    for q in reversed(range(at.length)):
        passed = found.get(q)
        if passed is not None:
            last = min(NEVER, q * QUARTER + passed)
        table[q] = last
    # Behind the last quarter hour that was asked the same passes as from there.
    end = max(found)
    for q in range(end + 1, at.length):
        table[q] = min(NEVER, q * QUARTER + found[end])
    return tuple(table) if closes else tuple(accumulate(table, max))
