"""Where films still give off vapour that burns, until when, and what must stay out meanwhile."""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct

from finishlog.asks.look.look import Look
from finishlog.core.findings import Finding, Level
from finishlog.core.finish.hazard import Hazard
from finishlog.core.safety.ignition import Vapour, lights, of_films, reached_from
from finishlog.core.safety.vapour_left import gives_off_until
from finishlog.core.safety.whats_in import in_coat
from finishlog.core.zone.state import ZoneState


class VapourLine(Struct, frozen=True):
    """One room in which films give off vapour until about `until` (UTC), by what they are.

    `lit`: what burns or glows where it comes to, and is not out; `out`: what was put out, by room.
    """

    room: str
    products: tuple[str, ...]
    until: datetime
    lit: tuple[Finding, ...] = ()
    out: tuple[tuple[str, tuple[str, ...]], ...] = ()


def vapour_there(seen: Look) -> tuple[VapourLine, ...]:
    """Return the rooms with films that are not tack-free and whose vapour burns."""
    now = seen.clock.now
    wet: dict[int, list[tuple[ZoneState, datetime]]] = {}
    for zone in seen.bench.in_the_shop:
        if zone.room.id is None or not _may_burn(zone):
            continue
        until = gives_off_until(zone, now)
        if until is not None and _film(zone, seen) is not None:
            wet.setdefault(zone.room.id, []).append((zone, until))
    return tuple(_line(found, seen) for found in wet.values())


def _may_burn(state: ZoneState) -> bool:
    """Tell whether a film is of what burns, or came from a mix that may hold some."""
    top = state.top
    return top is not None and (
        Hazard.FLAMMABLE in top.of.hazards or top.coat.container is not None
    )


def _film(state: ZoneState, seen: Look) -> Vapour | None:
    assert state.top is not None
    film = state.top.of, in_coat(state.top.coat, seen.shop)
    return of_films((film,), seen.facts, seen.clock.now)


def _line(found: list[tuple[ZoneState, datetime]], seen: Look) -> VapourLine:
    room, now = found[0][0].room, seen.clock.now
    tops = [zone.top for zone, _ in found if zone.top is not None]
    films = ((top.of, in_coat(top.coat, seen.shop)) for top in tops)
    lit = lights(of_films(films, seen.facts, now), room, now)
    near = (beside for _, beside in reached_from(room))
    out = ((b.name, b.place.out_now(now)) for b in near)
    return VapourLine(
        room.name,
        tuple(dict.fromkeys(top.coat.product_name for top in tops)),
        max(until for _, until in found),
        tuple(f for f in lit if f.level is Level.STOP),
        tuple((name, what) for name, what in out if what),
    )
