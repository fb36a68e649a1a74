"""The heaters that run or are to run; what was put on record twice is one."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.asks.look.look import Look
from finishlog.core.log.entries import Heated
from finishlog.core.log.when import Sureness, When


class HeatLine(Struct, frozen=True):
    """A heater that runs, or is to run. `temperature_c` None: as warm as the room usually gets.

    `also`: further acts that put the same heat on record.
    """

    act: int
    room: str
    span: When
    temperature_c: float | None
    also: tuple[int, ...] = ()


def heaters(seen: Look) -> tuple[HeatLine, ...]:
    """Return the heaters that run or are to run, the soonest first."""
    alike: dict[tuple[int, float | None], list[list[Heated]]] = {}
    heats = [e for e in seen.log.entries if isinstance(e, Heated) and e.room in seen.shop.rooms]
    for heat in sorted(heats, key=lambda e: (e.when.earliest, e.act)):
        lots = alike.setdefault((heat.room, heat.temperature_c), [])
        if lots and heat.when.earliest <= max(e.when.latest for e in lots[-1]):
            lots[-1].append(heat)
        else:
            lots.append([heat])
    lines = [_line(lot, seen) for lots in alike.values() for lot in lots]
    ahead = [line for line in lines if line.span.latest > seen.clock.now]
    return tuple(sorted(ahead, key=lambda line: line.span.earliest))


def _line(lot: Sequence[Heated], seen: Look) -> HeatLine:
    first, ends = lot[0], max(e.when.latest for e in lot)
    acts = sorted(e.act for e in lot)
    span = When(first.when.earliest, ends, Sureness.EXACT)
    name = seen.shop.rooms[first.room].name
    return HeatLine(acts[0], name, span, first.temperature_c, tuple(acts[1:]))
