"""Which parts, pieces, faces and zones does a person mean?"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.look.look_back import with_whole_projects
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.shop.selectors import Chosen
from finishlog.core.shop.things import Part, Shop, zone_name
from finishlog.core.zone.state import ZoneState
from finishlog.errors import Ambiguous, NotFound, UsageFault
from finishlog.picking import pick_parts, pick_whole
from finishlog.store.things.read_shop import read_shop

_ALL = frozenset({"all", "everything"})


class WantedPart(Struct, frozen=True):
    """One part: some of its pieces by id; some of its zones by id, or all (None)."""

    part: int
    pieces: frozenset[int]
    zones: frozenset[int] | None

    def has(self, state: ZoneState) -> bool:
        """Tell whether a zone is meant; of an assembly, the zones that its members brought."""
        if self.part not in {state.part.id, state.member.id}:
            return False
        here = not self.pieces.isdisjoint({state.piece.id, state.member_piece.id})
        return here and (self.zones is None or state.zone.id in self.zones)


class Wanted(Struct, frozen=True):
    """What is meant, and which of it was typed by the name it had before: (typed, now)."""

    parts: tuple[WantedPart, ...]
    renamed: tuple[tuple[str, str], ...] = ()

    @property
    def ids(self) -> tuple[int, ...]:
        """The parts by id."""
        return tuple(dict.fromkeys(each.part for each in self.parts))

    def of(self, states: Iterable[ZoneState]) -> list[ZoneState]:
        """Return the zones that are meant."""
        return [state for state in states if any(each.has(state) for each in self.parts)]


def wanted(
    context: Context, typed: Sequence[str], *, archived: bool = False, projects: bool = False
) -> Wanted:
    """Resolve selectors to parts, pieces and zones; `projects`: a whole one may be named too."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now, include_archived=archived)
    picked = pick_parts(shop, _spelled_out(shop, typed) if projects else typed)
    old = tuple((chosen.once, part.path) for part, chosen in picked if chosen.once)
    return Wanted(tuple(_wanted(part, chosen) for part, chosen in picked), old)


def _spelled_out(shop: Shop, typed: Sequence[str]) -> tuple[str, ...]:
    """Write whole projects, and `all`, as parts, unless a part is called so."""
    words = with_whole_projects(shop, typed)
    names = {part.name.casefold() for part in shop.parts}
    if len(words) == 1 and words[0].casefold() in _ALL - names:
        return tuple(part.path for part in shop.parts)
    return words


def _wanted(part: Part, chosen: Chosen) -> WantedPart:
    zones = frozenset(
        zone.id
        for face in part.faces
        for zone in face.zones
        if face.name in chosen.faces or zone_name(face, zone) in chosen.faces
    )
    pieces = frozenset(p.id for p in part.pieces if p.number in chosen.pieces)
    return WantedPart(part.id, pieces, zones if chosen.faces else None)


def put_away_since(context: Context, typed: str) -> tuple[str, str] | None:
    """Find a part that was put away: its path, and what to type to have it back."""
    with context.reading() as connection:
        everything = read_shop(connection, context.clock.now, include_archived=True)
        living = read_shop(connection, context.clock.now)
    open_parts = {part.id for part in living.parts}
    gone = tuple(part for part in everything.parts if part.id not in open_parts)
    try:
        part = pick_parts(replace(everything, parts=gone), [typed])[0][0]
    except (NotFound, UsageFault):
        return None
    if part.project not in {project.id for project in living.projects}:
        return part.path, Do.PROJECT_RESTORE(part.project_name)
    return part.path, Do.PART_RESTORE(part.path)


def whole_ids(context: Context, typed: Sequence[str]) -> tuple[int, ...]:
    """Resolve selectors to the ids of whole parts, for what changes all of a part."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now)
    return tuple(part.id for part in pick_whole(shop, typed))


def part_ids(context: Context, typed: Sequence[str], *, projects: bool = False) -> tuple[int, ...]:
    """Resolve selectors to the ids of parts."""
    return wanted(context, typed, projects=projects).ids


def names_a_part(context: Context, typed: str) -> bool:
    """Tell whether a word names one part, or may name several."""
    try:
        wanted(context, (typed,))
    except Ambiguous:
        return True
    except (NotFound, UsageFault):
        return False
    return True
