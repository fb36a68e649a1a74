"""What burns or glows in the room of a coat whose vapour burns, as far as it is on record.

Vapour leaves a film until it is tack-free; a heater that runs by then meets it. No figure is
published for when a room is aired: the nose proves nothing.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from finishlog.core.air.heater import HeaterKind
from finishlog.core.air.supposed import Heat
from finishlog.core.findings import HEATER_UNTOLD, Finding, Level, finding
from finishlog.core.finish.classes import FinishClass
from finishlog.core.finish.stages import Stage

FLAMMABLE = "flammable"
_SOURCE = "niosh-pocket-guide"
# Where a class has no figure for it.
_WET = timedelta(hours=24)


def vapour_until(over: FinishClass, now: datetime) -> datetime:
    """Return until when a coat that goes on now gives off vapour, by the class."""
    dry = over.stages.get(Stage.TACK_FREE)
    return now + (timedelta(hours=dry.high_h) if dry else _WET)


def lit_by(
    films: Iterable[FinishClass], kind: HeaterKind | None, heat: Heat | None, room: str
) -> Finding | None:
    """Say what a heater that runs while films give off vapour means for them; None: nothing."""
    names = list(dict.fromkeys(of.name for of in films if FLAMMABLE in of.hazards))
    if heat is None or kind is HeaterKind.SEALED or not names:
        return None
    if kind is None:
        return finding(HEATER_UNTOLD, Level.CAUTION, _SOURCE, names=tuple(names), in_room=room)
    level = Level.CAUTION if kind is HeaterKind.FAN else Level.STOP
    return finding("heater", level, _SOURCE, names=tuple(names), in_room=room, kind=kind)
