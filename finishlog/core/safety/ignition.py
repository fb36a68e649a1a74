"""What burns or glows in a room where something gives off vapour, as far as it is on record.

Vapour leaves a film until it is tack-free; a heater that runs by then meets it. No figure is
published for when a room is aired: the nose proves nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.core.air.heater import HeaterKind
from finishlog.core.air.place import BURNS, MAY_SPARK, Fixture, Opening
from finishlog.core.air.room import RoomAir
from finishlog.core.air.supposed import Heat
from finishlog.core.findings import FLAME, HEATER_UNTOLD, SPARKS, Finding, Level, also, finding
from finishlog.core.finish.classes import FinishClass
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.stages import Stage
from finishlog.core.mixing.chemistry import Ingredient, contents
from finishlog.core.published.chemistry import NOTHING, Chemistry, InAFlame, Substance
from finishlog.core.published.facts import Facts
from finishlog.core.safety.hazards import burning_in, hazards_in

_SOURCE = "niosh-pocket-guide"
# Where a class has no figure for it.
_WET = timedelta(hours=24)
# Our own rule: by then what a cloth brought, or a stripper, is off and aired.
_ON_A_CLOTH = timedelta(hours=1)


class Vapour(Struct, frozen=True):
    """What gives off vapour that no flame may meet, by its names, and until when (UTC)."""

    names: tuple[str, ...]
    until: datetime
    does: InAFlame = InAFlame.BURNS


def of_films(
    films: Iterable[tuple[FinishClass, Ingredient]], facts: Facts, now: datetime
) -> Vapour | None:
    """Return the vapour of coats that go on now, each by its class and what went into it."""
    burn = [each for each in films if Hazard.FLAMMABLE in hazards_in(each[1], facts)]
    if not burn:
        return None
    names = dict.fromkeys(name for of, what in burn for name in _burning(of, what, facts))
    return Vapour(tuple(names), max(vapour_until(of, now) for of, _ in burn))


def _burning(of: FinishClass, what: Ingredient, facts: Facts) -> Iterable[str]:
    """Name what burns: the finish, or what was poured into one that does not by itself."""
    thinned = () if Hazard.FLAMMABLE in of.hazards else burning_in(what, facts)
    return [f"{of.name} with {substance.value}" for substance in thinned] or [of.name]


def of_a_cloth(
    comes: Ingredient | None, untold: str, chemistry: Chemistry, now: datetime
) -> Vapour | None:
    """Return the vapour of what is brought by hand; `untold`: what it is where nobody said."""
    held = contents(comes, chemistry) - {Substance.OTHER} if comes is not None else NOTHING
    does = chemistry.in_a_flame(held)
    names = tuple(substance.value for substance in does) if held else (untold,) if untold else ()
    burns = InAFlame.BURNS in does.values() or not does
    how = InAFlame.BURNS if burns else InAFlame.POISON
    return Vapour(names, now + _ON_A_CLOTH, how) if names else None


def vapour_until(over: FinishClass, now: datetime) -> datetime:
    """Return until when a coat that goes on now gives off vapour, by the class."""
    dry = over.stages.get(Stage.TACK_FREE)
    return now + (timedelta(hours=dry.high_h) if dry else _WET)


def reached_from(room: RoomAir) -> Iterator[tuple[Opening | None, RoomAir]]:
    """Yield where vapour of a room comes to: the room itself, then those that it leads to."""
    yield None, room
    yield from room.near


def standing_in(
    vapour: Vapour, room: RoomAir, moment: datetime, through: Opening | None = None
) -> Iterator[Finding]:
    """Say what stands in a room where vapour comes to, and burns, glows or sparks.

    `through`: what leads there; None: it is where the vapour comes from, and only there sparks are
    told of. A heater whose hours are on record burns in those alone (`lit_by`).
    """
    told = room.place.lit_at(moment, room.heater)
    runs_by_the_log = bool(room.heats) or any(day.heated for day in room.usual)
    if runs_by_the_log and Fixture.HEATER in (room.place.has or ()):
        told = room.place.lit_at(moment, HeaterKind.SEALED)
    lights = (
        (BURNS, finding(FLAME, Level.STOP, _SOURCE)),
        (_UNTOLD, finding(HEATER_UNTOLD, Level.CAUTION, _SOURCE)),
        (MAY_SPARK if through is None else frozenset(), finding(SPARKS, Level.CAUTION, _SOURCE)),
    )
    for kinds, found in lights:
        what = tuple(fixture.value for fixture in told if fixture in kinds)
        if what:
            leads = through.value if through else ""
            told_of = also(found, what=what, names=vapour.names, in_room=room.name)
            yield also(told_of, does=vapour.does, through=leads)


def lights(vapour: Vapour | None, room: RoomAir, moment: datetime) -> Iterator[Finding]:
    """Say all that burns, glows or sparks where vapour of a room comes to."""
    for through, beside in reached_from(room) if vapour is not None else ():
        assert vapour is not None
        heat = beside.heater_between(moment, vapour.until)
        running = lit_by(vapour, beside.heater, heat, beside.name)
        if running is not None:
            yield running
        yield from standing_in(vapour, beside, moment, through)


_UNTOLD = frozenset({Fixture.HEATER})


def lit_by(
    vapour: Vapour | None, kind: HeaterKind | None, heat: Heat | None, room: str
) -> Finding | None:
    """Say what a heater that runs while something gives off vapour means; None: nothing."""
    if heat is None or kind is HeaterKind.SEALED or vapour is None:
        return None
    level = Level.CAUTION if kind in {None, HeaterKind.FAN} else Level.STOP
    found = finding("heater", level, _SOURCE, kind=kind)
    found = found if kind is not None else finding(HEATER_UNTOLD, level, _SOURCE)
    return also(found, names=vapour.names, in_room=room, does=vapour.does)
