"""Who stays out of the air of a drying film, and when at the earliest somebody comes and smells.

Counted behind the last coat on the film's own clock, so that cold lengthens it; twice as long where
no exhaust was measured. No day is called safe: the nose of somebody who comes in from outdoors and
a doctor or vet decide.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.core.air.place import Lives, Place, PlaceKind
from finishlog.core.air.psychrometrics import STANDARD_AIR
from finishlog.core.air.room import RoomAir
from finishlog.core.film.layers import Layer
from finishlog.core.finish.classes import Figure, FinishClass
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.stages import Stage
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.published.facts import Facts
from finishlog.core.published.safety_notes import StaysOut
from finishlog.core.safety.hazards import hazards_in

# The hazards of what leaves for people to breathe.
GIVES_OFF = frozenset({Hazard.FLAMMABLE, Hazard.VAPOUR, Hazard.FORMALDEHYDE, Hazard.ISOCYANATE})
# Birds bear less than anybody: what dries by giving anything off reaches them. common practice
_NOTHING = "none"
_DAY = timedelta(days=1)
# Counted slower than the label's hours by so much, it is said to be slow.
_SLOW = 1.05


class Out(Struct, frozen=True):
    """Who stays out for a film. `who` None: whom nobody told of. Times UTC.

    `last`: the last coat; `look`: the earliest at which somebody may come and smell, no promise;
    None: no date in this air. `advised_d`: how many days advice runs over, from and to. `slow`: the
    air lengthens it; `shut`: that no exhaust was measured does.
    """

    who: Lives | None
    last: datetime
    look: datetime | None
    advised_d: tuple[float, float]
    slow: bool = False
    shut: bool = False

    @property
    def order(self) -> tuple[bool, datetime]:
        """Sort: what has no date last."""
        return self.look is None, self.look or self.last


def figures_of(who: Lives | None, facts: Facts) -> StaysOut:
    """Return who stays out where, and whom to ask."""
    return facts.people.others if who is None else facts.people.lives[who]


def lives_near(room: RoomAir, rooms: Mapping[int, RoomAir]) -> tuple[Lives, ...]:
    """Return who lives in a room or wherever its air comes to, through any number of openings."""
    found: dict[Lives, None] = {}
    known: set[int | None] = set()
    ahead = [room]
    while ahead:
        here = ahead.pop(0)
        if here.id in known:
            continue
        known.add(here.id)
        found |= dict.fromkeys(here.place.lives)
        # What a room leads to is known of the room itself, not of it as a neighbour.
        leads = rooms[here.id].near if here.id is not None and here.id in rooms else here.near
        ahead += [beside for _, beside in leads]
    return tuple(found)


def reached(
    over: FinishClass, what: Ingredient, lives: Iterable[Lives], facts: Facts
) -> tuple[Lives, ...]:
    """Return whom of those who live there a film reaches."""
    if GIVES_OFF.intersection(hazards_in(what, facts)):
        return tuple(lives)
    gives_off = over.dries and over.carrier != _NOTHING
    return tuple(each for each in lives if each is Lives.BIRD and gives_off)


def is_shut(place: Place) -> bool:
    """Tell whether it was told that no exhaust there was measured."""
    return place.exhaust_m3_h == 0 and place.kind is not PlaceKind.OUTDOORS


def stays_out(layer: Layer, who: Lives | None, place: Place, facts: Facts) -> Out:
    """Say for how long somebody stays out for the topmost film of a zone."""
    of = figures_of(who, facts)
    hours = _hours(of, place, facts)
    tack_free = layer.coat.figures.stages.get(Stage.TACK_FREE)
    at = tack_free.at if tack_free is not None else STANDARD_AIR
    waits = layer.waits(Figure(hours, hours, hours, of.source, at))
    last, look = layer.put_on, waits.high
    return Out(
        who,
        last,
        look,
        (of.advised_d.low, of.advised_d.high),
        look is None or look - last > _SLOW * timedelta(hours=hours),
        is_shut(place),
    )


def stays_out_after(last: datetime, who: Lives | None, place: Place, facts: Facts) -> Out:
    """Say the same of a coat that is only meant, in the air of its label: no sooner."""
    of = figures_of(who, facts)
    look = last + timedelta(hours=_hours(of, place, facts))
    return Out(who, last, look, (of.advised_d.low, of.advised_d.high), shut=is_shut(place))


def _hours(of: StaysOut, place: Place, facts: Facts) -> float:
    times = facts.people.shut_factor.value if is_shut(place) else 1.0
    return of.look_after_d * (_DAY / timedelta(hours=1)) * times


def together(found: Iterable[Out]) -> tuple[Out, ...]:
    """Return of each who stays out the longest; whom nobody told of last."""
    by: dict[Lives | None, Out] = {}
    for each in found:
        mine = by.get(each.who)
        by[each.who] = each if mine is None else max(mine, each, key=lambda out: out.order)
    return tuple(sorted(by.values(), key=lambda out: (out.who is None, out.who or "")))
