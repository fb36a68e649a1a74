"""Where vapour that burns hangs, until when, and what and who must stay out meanwhile.

It leaves a film until that is tack-free; where something stands that lights it, it is told of
until the room was aired, too.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.asks.look.look import Look
from finishlog.core.air.place import Lives
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Finding, Level
from finishlog.core.finish.hazard import Hazard
from finishlog.core.published.safety_notes import StaysOut
from finishlog.core.safety.ignition import Vapour, lights, of_films, reached_from
from finishlog.core.safety.people import (
    Out,
    figures_of,
    lives_near,
    reached,
    stays_out,
    together,
)
from finishlog.core.safety.vapour_left import hangs_until, tack_free_at
from finishlog.core.safety.whats_in import in_coat
from finishlog.core.zone.state import ZoneState

# Somebody comes and smells within it; then the line has said what it can.
_A_DAY = timedelta(days=1)


class VapourLine(Struct, frozen=True):
    """One room in which films give off vapour until about `until` (UTC), by what they are.

    None: no date ends it, one was found tacky or stands still.

    `lit`: what burns or glows where it comes to, and is not out; `out`: what was put out, by room.
    `dry`: the films are tack-free, and their vapour is not aired yet by what is known.
    """

    room: str
    products: tuple[str, ...]
    until: datetime | None
    lit: tuple[Finding, ...] = ()
    out: tuple[tuple[str, tuple[str, ...]], ...] = ()
    dry: bool = False


def vapour_there(seen: Look) -> tuple[VapourLine, ...]:
    """Return the rooms with films whose vapour burns: not tack-free, or not aired since."""
    lines = (_line(found, seen) for found in hanging(seen).values())
    return tuple(line for line in lines if not line.dry or line.lit or line.out)


def hanging(seen: Look) -> dict[int, list[tuple[ZoneState, datetime | None]]]:
    """Return by room the films whose vapour burns and hangs there, and when each is tack-free.

    None: no date ends it.
    """
    now = seen.clock.now
    hangs: dict[int, list[tuple[ZoneState, datetime | None]]] = {}
    for zone in seen.bench.in_the_shop:
        if zone.room.id is None or not _may_burn(zone, seen):
            continue
        dry = tack_free_at(zone)
        if dry is not None and hangs_until(dry, zone.room.place) <= now:
            continue
        if _film(zone, seen) is not None:
            hangs.setdefault(zone.room.id, []).append((zone, dry))
    return hangs


def _may_burn(state: ZoneState, seen: Look) -> bool:
    """Tell whether a film is of what burns, or its mix or its sheet may say that it does."""
    top = state.top
    if top is None:
        return False
    known = seen.shop.products.get(top.coat.product)
    by_sheet = known is not None and Hazard.FLAMMABLE in known.sheet.holds
    return by_sheet or Hazard.FLAMMABLE in top.of.hazards or top.coat.container is not None


def _film(state: ZoneState, seen: Look) -> Vapour | None:
    assert state.top is not None
    film = state.top.of, in_coat(state.top.coat, seen.shop)
    return of_films((film,), seen.facts, seen.clock.now)


def _line(found: list[tuple[ZoneState, datetime | None]], seen: Look) -> VapourLine:
    room, now = found[0][0].room, seen.clock.now
    wet = [(zone, dry) for zone, dry in found if dry is None or dry > now]
    found = wet or found
    dates = [dry for _, dry in found if dry is not None]
    last = max(dates) if len(dates) == len(found) else None
    tops = [zone.top for zone, _ in found if zone.top is not None]
    films = ((top.of, in_coat(top.coat, seen.shop)) for top in tops)
    lit = lights(of_films(films, seen.facts, now), room, now)
    near = (beside for _, beside in reached_from(room))
    out = ((b.name, b.place.out_now(now)) for b in near)
    return VapourLine(
        room.name,
        tuple(dict.fromkeys(top.coat.product_name for top in tops)),
        last if wet or last is None else hangs_until(last, room.place),
        tuple(f for f in lit if f.level is Level.STOP),
        tuple((name, what) for name, what in out if what),
        dry=not wet,
    )


class PeopleLine(Struct, frozen=True):
    """Who stays out of a room, and where its air comes to, for films of some products.

    `of`: where they stay and whom to ask, as it is published.
    """

    room: str
    products: tuple[str, ...]
    of: StaysOut
    out: Out


def people_out(
    seen: Look, only: Collection[int] | None = None, *, whole: bool = False
) -> tuple[PeopleLine, ...]:
    """Return who stays out of which room: until a day behind the earliest to come and smell.

    Only where somebody is told to live who bears less. `only`: rooms by their ids; `whole`: as long
    as any advice runs.
    """
    films: dict[int, list[tuple[Layer, tuple[Lives, ...]]]] = {}
    for zone in seen.bench.in_the_shop:
        room = zone.room.id
        if not zone.layers or room is None or (only is not None and room not in only):
            continue
        there = lives_near(zone.room, seen.bench.rooms)
        # What is buried gives off on its way through what lies on it.
        for layer in zone.layers if there else ():
            what = in_coat(layer.coat, seen.shop)
            if lives := reached(layer.of, what, there, seen.facts):
                films.setdefault(room, []).append((layer, lives))
    return tuple(
        line for room, tops in films.items() for line in _of_room(room, tops, seen, whole=whole)
    )


def _of_room(
    room: int, tops: Sequence[tuple[Layer, tuple[Lives, ...]]], seen: Look, *, whole: bool
) -> Iterator[PeopleLine]:
    known = seen.shop.rooms[room]
    found = together(
        stays_out(layer, who, known.place, seen.facts)
        for layer, lives in tops
        for who in (*lives, None)
    )
    names = tuple(dict.fromkeys(layer.coat.product_name for layer, _ in tops))
    for out in found:
        ends = out.look + _A_DAY if out.look is not None else None
        if whole:
            ends = max(ends or out.last, out.last + timedelta(days=out.advised_d[1]))
        if ends is None or seen.clock.now < ends:
            yield PeopleLine(known.name, names, figures_of(out.who, seen.facts), out)
