"""Does the clock lie behind what is on record? Then it was set back, or was wrong before."""

from __future__ import annotations

from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.context import Context
from finishlog.store.log.heads import newest_acts

# Two machines, or a clock that is put right by the network, may differ by so much.
_SLACK = timedelta(minutes=5)


class NewerAct(Struct, frozen=True):
    """The newest act that stands, typed at a moment that is still to come for our clock."""

    act: int
    typed_at: datetime


def newer_than_now(context: Context) -> NewerAct | None:
    """Return the act that the clock lies behind; None when it goes on from what is on record.

    Only the last entries are looked at: what was typed while the clock was wrong stays on record.
    """
    with context.database.glancing() as connection:
        acts = newest_acts(connection, after=context.clock.now + _SLACK)
    found = max(acts, key=lambda each: each[1], default=None)
    return NewerAct(*found) if found else None
