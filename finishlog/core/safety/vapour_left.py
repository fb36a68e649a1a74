"""Until when a film gives off vapour: until it is tack-free, as its stages promise."""

from __future__ import annotations

from datetime import datetime, timedelta

from finishlog.core.finish.stages import Stage
from finishlog.core.zone.state import ZoneState

# Where a film has no date for it.
_NO_DATE = timedelta(hours=24)


def gives_off_until(state: ZoneState, now: datetime) -> datetime | None:
    """Return until when the newest film of a zone gives off vapour; None: it is over, or dry."""
    if state.top is None:
        return None
    dry = state.stages.get(Stage.TACK_FREE)
    until = dry.high if dry is not None else state.top.coat.when.latest + _NO_DATE
    if until is None:
        until = max(state.top.coat.when.latest, now) + _NO_DATE
    return until if until > now else None
