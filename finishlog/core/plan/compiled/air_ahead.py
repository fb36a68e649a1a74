"""The hours of the openings in which the air of a room forbids a coat of a class."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from datetime import datetime, timedelta

from msgspec import Struct, field

from finishlog.core.air.room import RoomAir
from finishlog.core.findings import Level
from finishlog.core.finish.classes import FinishClass, Method
from finishlog.core.plan.compiled.lags import Days
from finishlog.core.plan.search.shop import QUARTER, Span
from finishlog.core.plan.shop_ahead import as_expected
from finishlog.core.published.drying import DryingFigures
from finishlog.core.rules.air.coating_air import air_findings

_DAY_MIN = 24 * 60


class AirAhead(Struct):
    """Asks the rule of the evening's air once of every quarter hour whose day is another."""

    figures: DryingFigures
    openings: Sequence[Span]
    _known: dict[Hashable, tuple[Span, ...]] = field(default_factory=dict)

    def forbids(self, of: FinishClass, method: Method | None, days: Days) -> tuple[Span, ...]:
        """Return the spans in which a coat may not begin, ascending, apart."""
        if not of.dries:
            return ()
        key = (of.key, method, days.room.id)
        if key not in self._known:
            self._known[key] = tuple(_spans(self._forbidden(of, method, days)))
        return self._known[key]

    def _forbidden(
        self, of: FinishClass, method: Method | None, days: Days
    ) -> Iterator[tuple[Span, bool]]:
        known: dict[Hashable, bool] = {}
        for opens, closes in self.openings:
            for begins in range(opens // QUARTER * QUARTER, closes, QUARTER):
                # The night before is still in the wood.
                alike = (begins % _DAY_MIN, days.run(begins, begins))
                if alike not in known:
                    known[alike] = any(
                        self._is_out(of, method, days.room, moment)
                        for moment in _in_it(days.origin.at(max(begins, opens)))
                    )
                yield (begins, begins + QUARTER), known[alike]

    def _is_out(self, of: FinishClass, method: Method | None, room: RoomAir, now: datetime) -> bool:
        expected = as_expected(room, now)
        found = air_findings(of, method, expected, now, self.figures)
        return any(f.level is Level.STOP for f in found)


def _in_it(begins: datetime) -> Iterator[datetime]:
    """Yield the moments of a quarter hour at which the air is asked of: its first and its last."""
    yield begins
    yield begins + timedelta(minutes=QUARTER - 1)


def _spans(quarters: Iterator[tuple[Span, bool]]) -> Iterator[Span]:
    """Join the quarter hours that are forbidden."""
    begun: Span | None = None
    for span, forbidden in quarters:
        if begun is not None and (not forbidden or span[0] > begun[1]):
            yield begun
            begun = None
        if forbidden:
            begun = (begun[0] if begun else span[0], span[1])
    if begun is not None:
        yield begun
