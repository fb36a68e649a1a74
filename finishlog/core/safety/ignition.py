"""What burns or glows in the room of a coat whose vapour burns, as far as it is on record.

Vapour leaves a film until it is tack-free; a heater that runs by then meets it. No figure is
published for when a room is aired: the nose proves nothing.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from finishlog.core.air.heater import WHAT, HeaterKind
from finishlog.core.air.supposed import Heat
from finishlog.core.commands import Do
from finishlog.core.findings import Finding, Level, Rule
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
    burns = f"{' and '.join(names)} {'give' if names[1:] else 'gives'} off vapour that burns"
    if kind is None:
        return Finding(
            Level.CAUTION,
            f"a heater is on record in {room} while {burns}, and not of what kind: nothing that "
            "burns or glows",
            f"{Do.ROOM_EDIT(room, heater='sealed')}, fan, glow or flame",
            _SOURCE,
            rule=Rule.HEATER_UNTOLD,
        )
    return Finding(
        Level.CAUTION if kind is HeaterKind.FAN else Level.STOP,
        f"{WHAT[kind]} heats {room} while {burns}",
        "warm the room first, put it out and air the room; on again only when the film is "
        "tack-free, and no smell is no proof",
        _SOURCE,
        rule=Rule.HEATER,
    )
