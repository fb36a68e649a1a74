"""A coat whose vapour burns, and the heater that is on record in its room."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.findings import Answer, Finding, Level
from finishlog.core.rules.reads import HEATED, STOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.safety.ignition import lit_by, vapour_until
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState


@rule(
    "heater",
    binds=COAT,
    source="niosh-pocket-guide",
    reads=f"{STOOD} {HEATED} room.usual room.heater",
)
def heater(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What burns or glows in the room is put out before the can is opened."""
    if asked.over is None:
        return
    room = zone.room
    heat = room.heater_between(around.now, vapour_until(asked.over, around.now))
    found = lit_by((asked.over,), room.heater, heat, room.name)
    if found is not None and found.level is Level.STOP:
        found = replace(found, answer=Answer.WAITS, high=heat.end if heat else None)
    if found is not None:
        yield found
