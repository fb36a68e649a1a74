"""The clock lies behind what is on record: say so, and take no "now" from it unasked."""

from __future__ import annotations

import re
from datetime import datetime
from typing import TYPE_CHECKING

from finishlog.cli.terminal.talk import ask, at_a_terminal
from finishlog.core.log.when import When, at
from finishlog.errors import UsageFault

if TYPE_CHECKING:
    from finishlog.asks.look.clock_set_back import NewerAct
    from finishlog.clock import Clock

_WHOLE_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


def behind(newer: NewerAct, clock: Clock) -> str:
    """Say that an act on record is newer than now."""
    now, then = (_said(moment, clock) for moment in (clock.now, newer.typed_at))
    return f"the clock says {now}, and act {newer.act} on record is of {then}"


def moment_all_the_same(typed: str | None, newer: NewerAct, clock: Clock) -> When:
    """Read when work was done while the clock is wrong: by its whole date, or as a person says.

    UsageFault in a script that says no date, and for words that only a right clock can tell.
    """
    said = behind(newer, clock)
    remedy = (
        f"type --at '{_said(newer.typed_at, clock)}' with the right date, or set the clock; if "
        f"that act is wrong: finishlog undo {newer.act}"
    )
    if typed is None:
        if at_a_terminal() and ask(f"{said}. Is the clock right? [y/N]").lower()[:1] == "y":
            return at(clock.now)
        raise UsageFault(f"{said}: when was it done?", remedy)
    if not _WHOLE_DATE.search(typed):
        raise UsageFault(f"{typed!r} cannot be told: {said}", remedy)
    from finishlog.cli.typed.times.moments import moment

    return moment(typed, newer.typed_at, clock.zone, future=True)


def _said(moment: datetime, clock: Clock) -> str:
    return f"{moment.astimezone(clock.zone):%Y-%m-%d %H:%M}"
