"""The warmth that young films still need: before the light goes out and the heater with it.

Waterborne, catalysed and two-part films are damaged for good by cold in their first hours; any
film stands still below its minimum until it is tack-free.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.core.clock.air_to_come import coldest_ahead
from finishlog.core.finish.classes import Limit
from finishlog.core.finish.stages import Stage
from finishlog.core.zone.state import ZoneState

# A film that stands still, and a can, are looked after until this time tomorrow.
A_NIGHT = timedelta(hours=24)


class HeatWanted(Struct, frozen=True):
    """One zone whose film wants at least `least.value` °C until a moment.

    `until` None: it stands still in this air, so there is no date. `expected_c`: the coldest that
    is expected there by then, None when nobody said how cold it gets. `harms`: cold would damage
    the film, not only hold it up.
    """

    state: ZoneState
    least: Limit
    until: datetime | None
    expected_c: float | None
    harms: bool

    @property
    def too_cold(self) -> bool:
        """Tell whether the cold that is expected is less than the film wants."""
        return self.expected_c is not None and self.expected_c < self.least.least


def heat_wanted(states: Iterable[ZoneState], now: datetime) -> tuple[HeatWanted, ...]:
    """Return every film that is still young enough to mind the cold, and does or may meet it."""
    found = (_wanted(state, now) for state in states)
    return tuple(w for w in found if w is not None and (w.too_cold or w.expected_c is None))


def _wanted(state: ZoneState, now: datetime) -> HeatWanted | None:
    top = state.top
    if top is None or top.of.limits.min_c is None:
        return None
    tack_free = state.stages.get(Stage.TACK_FREE)
    until = tack_free.high if tack_free else top.put_on
    harms = top.of.limits.warm_first_h is not None
    if top.of.limits.warm_first_h is not None and until is not None:
        until = max(until, top.put_on + timedelta(hours=top.of.limits.warm_first_h.value))
    if until is not None and until <= now:
        return None
    least, hours = top.of.limits.min_c, A_NIGHT if until is None else until - now
    return HeatWanted(state, least, until, coldest_ahead(state.room, now, hours, left=True), harms)
