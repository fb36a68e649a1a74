"""Vapour that burns, of a coat, a cloth or a stripper, and what burns where it comes to."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.air.place import AT_HOME as AT_HOME_KINDS
from finishlog.core.air.room import RoomAir
from finishlog.core.findings import (
    AT_HOME,
    FLAME,
    PLACE_UNTOLD,
    Act,
    Answer,
    Finding,
    Level,
    also,
    finding,
)
from finishlog.core.finish.classes import FinishClass, Method
from finishlog.core.log.words import Operation, Stripping
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.published.facts import Facts
from finishlog.core.rules.reads import COMES, HEATED, STOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.safety.hazards import hazards_in
from finishlog.core.safety.ignition import (
    Vapour,
    lit_by,
    of_a_cloth,
    of_films,
    reached_from,
    standing_in,
)
from finishlog.core.safety.people import GIVES_OFF
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
    reads=f"{STOOD} {HEATED} {COMES} room.usual room.heater room.place",
)
def heater(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A heater that runs by the log is put out before the can is opened, beside the room too."""
    vapour = _gives_off(asked, around)
    if vapour is None:
        return
    for _, room in reached_from(zone.room):
        heat = room.heater_between(around.now, vapour.until)
        found = lit_by(vapour, room.heater, heat, room.name)
        if found is not None and found.level is Level.STOP:
            found = replace(found, answer=Answer.WAITS, high=heat.end if heat else None)
        if found is not None:
            yield found


@rule(
    FLAME,
    binds=_OPENS_A_CAN,
    source="niosh-pocket-guide",
    reads=f"{STOOD} {HEATED} {COMES} room.usual room.heater room.place",
)
def flame(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What stands there and burns is put out before the can is opened, beside the room too."""
    vapour = _gives_off(asked, around)
    if vapour is None:
        return
    for through, room in reached_from(zone.room):
        for found in standing_in(vapour, room, around.now, through):
            stops = found.level is Level.STOP
            yield replace(found, answer=Answer.WAITS) if stops else found


@rule(
    PLACE_UNTOLD,
    binds=COAT,
    source="niosh-pocket-guide",
    reads=f"{STOOD} {COMES} room.place",
)
def place_untold(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What burns in the room of a coat that gives off vapour, and how big it is, was not told."""
    vapour = _gives_off(asked, around)
    if vapour is not None and zone.room.id is not None and zone.room.place.has is None:
        size = "" if zone.room.place.volume_m3 is not None else "untold"
        yield finding(PLACE_UNTOLD, in_room=zone.room.name, size=size)


@rule(
    AT_HOME,
    binds=COAT,
    source="niosh-pocket-guide",
    reads=f"{STOOD} {COMES} room.place",
)
def at_home(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Vapour of a basement, a room of a house or a garage built onto it goes to who lives there."""
    if asked.over is not None:
        what = _brings(asked.over, asked)
        yield from lives_there(asked.over, what, asked.method, zone.room, around.facts)


def lives_there(
    over: FinishClass, what: Ingredient, method: Method | None, room: RoomAir, facts: Facts
) -> Iterator[Finding]:
    """Say to whom the vapour of a coat goes, where the room is a home or leads to people."""
    place = room.place
    if not GIVES_OFF.intersection(hazards_in(what, facts)):
        return
    lives = dict.fromkeys(who for _, near in reached_from(room) for who in near.place.lives)
    if lives or place.kind in AT_HOME_KINDS:
        sprayed = (method or over.methods[0]) is Method.SPRAY
        found = finding(AT_HOME, Level.CAUTION, "niosh-pocket-guide", in_room=room.name)
        yield also(
            found,
            of=over.name,
            kind=place.kind.value if place.kind else "",
            lives=tuple(each.value for each in lives),
            sprayed="sprayed" if sprayed else "",
        )


def _brings(over: FinishClass, asked: Asked) -> Ingredient:
    return asked.comes or Ingredient(over.name, over.key)


def _gives_off(asked: Asked, around: Around) -> Vapour | None:
    """Return what gives off vapour: the film that goes on, what is on the cloth, the stripper."""
    if asked.over is not None:
        what = _brings(asked.over, asked)
        return of_films(((asked.over, what),), around.facts, around.now)
    told = _BY_HAND.get(asked.operation, "") if asked.operation else ""
    if asked.act is Act.TAKE_OFF:
        told = _OFF.get(asked.stripping or Stripping.STRIP, "")
    return of_a_cloth(asked.comes, told, around.facts.chemistry, around.now)
