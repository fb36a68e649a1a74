"""How a piece is kept while nothing is done to it: since when, and in which rooms.

It is kept so from a stacking, packing, storing or setting aside on, until it is worked on, coated,
glued up or taken up again.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.log.entries import Coat, Resumed, SetAside, Stripped, Work
from finishlog.core.log.words import Keeping, Operation
from finishlog.core.zone.state import ZoneState

# How it is kept by what was done, where that was not said.
# Said of what was set aside, where nobody said how it is kept.
ASIDE = "set-aside"
_KEPT: Mapping[Operation, Keeping | None] = {
    Operation.STACK: Keeping.STACKED,
    Operation.PACK: Keeping.WRAPPED,
    Operation.STORE: None,
}


class Kept(Struct, frozen=True):
    """A part is kept since a moment, by a deed and its act; `how` None: it was not said.

    `deed`: a work in a word, or that it was set aside.
    """

    deed: str
    how: Keeping | None
    since: datetime
    act: int
    rooms: tuple[str, ...] = ()


class Spell(Struct, frozen=True):
    """How a part was kept, and until when; `until` None: it still is."""

    kept: Kept
    until: datetime | None


def spells(zone: ZoneState) -> Iterator[Spell]:
    """Yield how a zone was kept, one time after the other; what was worked on stands free again."""
    at: Kept | None = None
    for entry in zone.entries:
        if isinstance(entry, SetAside):
            at = at or Kept(ASIDE, None, entry.when.latest, entry.act)
            continue
        if not isinstance(entry, Work | Coat | Stripped | Resumed):
            continue
        if at is not None:
            yield Spell(at, entry.when.earliest)
        at = None
        if isinstance(entry, Work) and entry.operation in _KEPT:
            how = entry.kept or _KEPT[entry.operation]
            at = Kept(entry.operation.value, how, entry.when.latest, entry.act)
    glued = zone.joined_by.when if zone.joined_by is not None else None
    if at is not None and glued is not None and glued.earliest > at.since:
        yield Spell(at, glued.earliest)
    elif at is not None:
        yield Spell(replace(at, rooms=_rooms_since(zone, at.since)), None)


def kept(zone: ZoneState) -> Kept | None:
    """Return how a zone is kept now; None: it stands free, or nobody said."""
    return next((spell.kept for spell in spells(zone) if spell.until is None), None)


def _rooms_since(zone: ZoneState, moment: datetime) -> tuple[str, ...]:
    """Name the rooms that a piece has stood in since a moment."""
    left = [stay.since for stay in zone.stays[1:] if stay.since <= moment]
    return tuple(dict.fromkeys(stay.air.name for stay in zone.stays[len(left) :]))
