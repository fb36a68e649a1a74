"""Vapour that burns, of a coat, a cloth or a stripper, and the heater on record in its room."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.findings import Act, Answer, Finding, Level
from finishlog.core.log.words import Operation, Stripping
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.rules.reads import COMES, HEATED, STOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.safety.ignition import Vapour, lit_by, of_a_cloth, of_films
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# A coat, and what is done with a cloth or takes a film off.
_OPENS_A_CAN = COAT | {Act.WIPE, Act.WORK, Act.RUB, Act.TAKE_OFF}
# Where nobody said what is used for it.
_BY_HAND = {Operation.SOLVENT_WIPE: "the solvent"}
_OFF = {Stripping.STRIP: "the stripper", Stripping.WASH: "the solvent"}


@rule(
    "heater",
    binds=_OPENS_A_CAN,
    source="niosh-pocket-guide",
    reads=f"{STOOD} {HEATED} {COMES} room.usual room.heater",
)
def heater(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What burns or glows in the room is put out before the can is opened."""
    vapour = _gives_off(asked, around)
    if vapour is None:
        return
    room = zone.room
    heat = room.heater_between(around.now, vapour.until)
    found = lit_by(vapour, room.heater, heat, room.name)
    if found is not None and found.level is Level.STOP:
        found = replace(found, answer=Answer.WAITS, high=heat.end if heat else None)
    if found is not None:
        yield found


def _gives_off(asked: Asked, around: Around) -> Vapour | None:
    """Return what gives off vapour: the film that goes on, what is on the cloth, the stripper."""
    if asked.over is not None:
        what = asked.comes or Ingredient(asked.over.name, asked.over.key)
        return of_films(((asked.over, what),), around.facts, around.now)
    told = _BY_HAND.get(asked.operation, "") if asked.operation else ""
    if asked.act is Act.TAKE_OFF:
        told = _OFF.get(asked.stripping or Stripping.STRIP, "")
    return of_a_cloth(asked.comes, told, around.facts.chemistry, around.now)
