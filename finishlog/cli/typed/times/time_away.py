"""Read how long nobody is in the shop: whole days, or hours."""

from __future__ import annotations

from datetime import datetime
from zoneinfo import ZoneInfo

from finishlog.cli.typed.times.moments import moment
from finishlog.core.log.when import Sureness, When
from finishlog.errors import UsageFault


def away_span(since: str, until: str | None, now: datetime, zone: ZoneInfo) -> When:
    """Read a span to come: from the start of its first day or hour to the end of its last.

    Without `until` it is that one day or part of a day. UsageFault when it ends before it begins.
    """
    first = moment(since, now, zone, future=True)
    if until is None and first.earliest == first.latest:
        raise UsageFault(
            f"away from {since!r}, until when?", "finishlog away 'Fri 18:00' 'Mon 18:00'"
        )
    last = moment(until, now, zone, future=True) if until is not None else first
    if last.latest <= first.earliest or last.latest <= now:
        raise UsageFault(
            f"away from {since!r} until {until or since!r} is over before it begins",
            "type the first day and then the last: finishlog away 'Sat 28 Nov' 'Sun 6 Dec'",
        )
    return When(first.earliest, last.latest, Sureness.EXACT)
