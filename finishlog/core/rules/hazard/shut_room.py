"""A chlorinated solvent in a room: no window and no cartridge holds it."""

from __future__ import annotations

from collections.abc import Iterator

from finishlog.core.air.place import PlaceKind
from finishlog.core.findings import Act, Answer, Finding, Level, also, finding
from finishlog.core.finish.hazard import Hazard
from finishlog.core.rules.reads import AIR_SUPPLY, COMES, STOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.safety.hazards import hazards_in
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_SOURCE = "40-cfr-751"


@rule(
    "chlorinated-indoors",
    binds=COAT | {Act.WIPE, Act.WORK, Act.RUB, Act.TAKE_OFF},
    source=_SOURCE,
    reads=f"{COMES} {STOOD} {AIR_SUPPLY} room.place",
)
def chlorinated(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Chlorinated stripper has killed people in shut rooms: it stays out of every room."""
    if asked.comes is None or Hazard.CHLORINATED not in hazards_in(asked.comes, around.facts):
        return
    found = finding("chlorinated-indoors", Level.STOP, _SOURCE, answer=Answer.BLOCKED)
    outdoors = zone.room.place.kind is PlaceKind.OUTDOORS
    if outdoors or around.breathes_through(Hazard.CHLORINATED):
        found = finding("chlorinated-indoors", Level.CAUTION, _SOURCE)
    yield also(found, in_room=zone.room.name, outdoors="yes" if outdoors else "")
