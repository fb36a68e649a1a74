"""What burns or glows in a room where something gives off vapour, as far as it is on record.

Vapour leaves a film until it is tack-free; a heater that runs by then meets it. No figure is
published for when a room is aired: the nose proves nothing.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.core.air.heater import HeaterKind
from finishlog.core.air.supposed import Heat
from finishlog.core.findings import HEATER_UNTOLD, Finding, Level, also, finding
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
