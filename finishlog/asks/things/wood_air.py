"""The air that parts stand in, as wood sees it: its dew point, and what wood settles at in it."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from finishlog.asks.look.look import Look
from finishlog.core.air.psychrometrics import Air, dew_point_c
from finishlog.core.published.moisture import settles_pct
from finishlog.core.zone.state import ZoneState


class WoodAir(Struct, frozen=True):
    """One room as last read: `settles_pct` is the moisture of wood that has stood there long.

    None: it was not read lately. `room` is empty where nobody said in which one the parts stand.
    """

    room: str
    air: Air | None
    dew_point_c: float | None
    settles_pct: float | None


def wood_air(room: str, air: Air | None) -> WoodAir:
    """Put an air into plain values."""
    if air is None:
        return WoodAir(room, None, None, None)
    dew = dew_point_c(air) if air.humidity_pct > 0 else None
    return WoodAir(room, air, dew, settles_pct(air))


def rooms_of(states: Iterable[ZoneState], seen: Look) -> tuple[WoodAir, ...]:
    """Return the rooms that zones stand in, each once."""
    found: dict[int | None, WoodAir] = {}
    for state in states:
        point = state.room.measured_at(seen.clock.now)
        room = seen.shop.rooms.get(state.room.id or 0)
        found.setdefault(
            state.room.id, wood_air(room.name if room else "", point.air if point else None)
        )
    return tuple(found.values())
