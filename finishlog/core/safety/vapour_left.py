"""Until when a film gives off vapour: until it is tack-free, as its stages promise.

What it gave off hangs in the room until that was aired.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from math import e

from finishlog.core.air.place import Place, PlaceKind
from finishlog.core.finish.stages import Stage
from finishlog.core.safety.room_takes import vented_of
from finishlog.core.safety.ventilation import purge_h
from finishlog.core.zone.state import ZoneState

# Where its class has no figure for it.
_NO_FIGURE = timedelta(hours=24)
# Four changes of its air leave 1.8 % of what hung in a room (decay in mixed air, e to the -4).
_CHANGED = e**4
# Our own rule: nobody knows how fast a room airs whose exhaust was not measured.
_NOT_MEASURED = timedelta(hours=24)


def tack_free_at(state: ZoneState) -> datetime | None:
    """Return when the newest film of a zone ends giving off vapour, or did; None: no date ends it.

    What was found tacky, or stands still in its air, gives it off until it is found dry. KeyError
    where there is no film.
    """
    if state.top is None:
        raise KeyError(state.target)
    if Stage.TACK_FREE not in state.stages:
        return state.top.coat.when.latest + _NO_FIGURE
    dry = state.date_of(Stage.TACK_FREE)
    return dry.high if dry is not None else None


def hangs_until(dry: datetime, place: Place) -> datetime:
    """Return until when the log speaks of vapour in the room of a film that was dry then.

    That is no all-clear: no time is one.
    """
    if place.kind is PlaceKind.OUTDOORS:
        return dry
    room = vented_of(place)
    purged = purge_h(room, _CHANGED) if room is not None else None
    return dry + (timedelta(hours=purged) if purged is not None else _NOT_MEASURED)
