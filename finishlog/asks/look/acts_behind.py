"""Which acts stand behind a line of an answer: `history` finds every one of them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from finishlog.core.log.entries import (
    AnyEntry,
    Check,
    Coat,
    Fault,
    HandedOver,
    PieceReading,
    RagsEvent,
    Resumed,
    SetAside,
    Stripped,
    Work,
)
from finishlog.core.safety.rags import RagsItem
from finishlog.core.shop.things import Log
from finishlog.core.zone.state import ZoneState

# What a verdict rests on; notes, reviews and photos change none.
_WEIGHS = Coat | Work | Check | Fault | Stripped | SetAside | Resumed | HandedOver | PieceReading


def acts_of(states: Iterable[ZoneState]) -> tuple[int, ...]:
    """Return the acts that tell of some zones, glue-ups too, in the order of typing."""
    found: set[int] = set()
    for state in states:
        found.update(entry.act for entry in state.entries if isinstance(entry, _WEIGHS))
        if state.joined_by is not None:
            found.add(state.joined_by.act)
    return tuple(sorted(found))


def acts_behind(states: Iterable[ZoneState], made: Mapping[int, int]) -> tuple[int, ...]:
    """Return what tells of some zones; in the white, the acts that put their parts on record."""
    known = list(states)
    parts = {z.part.id for z in known} | {z.member.id for z in known}
    return acts_of(known) or tuple(sorted({act for part, act in made.items() if part in parts}))


def acts_of_rags(item: RagsItem, log: Log) -> tuple[int, ...]:
    """Return the acts that wetted some rags, and what was done with them since."""
    return tuple(sorted({e.act for e in log.entries if _about(e, item)}))


def _about(entry: AnyEntry, item: RagsItem) -> bool:
    if isinstance(entry, RagsEvent):
        named = entry.item in item.entries
        return named or (entry.item is None and entry.when.latest >= item.opened)
    return entry.id in item.entries
