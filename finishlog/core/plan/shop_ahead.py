"""The shop as it will stand when planned work is done: the same bench, on a log with plans in it.

Planned coats, work and glue-ups are entries like any other, with ids below zero, so that the plan
runs on the one drying clock. Parts that are glued up with one another are worked out together.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping, Sequence
from datetime import datetime, tzinfo
from typing import Any

from msgspec import Struct, field
from msgspec.structs import replace

from finishlog.core.air.place import Place
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint
from finishlog.core.bench.cans import Cans
from finishlog.core.bench.state import bench_state, judge_zones
from finishlog.core.clock.pace import Paces
from finishlog.core.film.lessons import Lessons
from finishlog.core.log.entries import AnyEntry, Target
from finishlog.core.log.when import Sureness, When
from finishlog.core.log.words import Operation
from finishlog.core.plan.soft_films import Expected, entries, expected
from finishlog.core.published.facts import Facts
from finishlog.core.shop.respirators import masks_in
from finishlog.core.shop.things import Log, Part, Shop
from finishlog.core.verdict.edges import edges_of
from finishlog.core.verdict.fold import decide
from finishlog.core.verdict.glue_up import GlueUp
from finishlog.core.zone.around import Around, around
from finishlog.core.zone.asked import work_asked
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.stood_in import rooms_air
from finishlog.core.zone.verdict import Told, Verdict

# Planned entries count up from here, so that of two the later has the higher id.
_FIRST_ID = -1_000_000


class _Family(Struct):
    """Parts that may be glued up with one another, and what reached them."""

    shop: Shop
    entries: list[AnyEntry]
    zones: tuple[ZoneState, ...] = ()
    glue_ups: tuple[GlueUp, ...] = ()
    seen: datetime | None = None


class ShopAhead(Struct, dict=True):
    """What there is, and what has happened once the plan is carried out so far.

    The air of a room is expected to go on as it usually does; as it was read last where nobody
    said what is usual.
    """

    shop: Shop
    log: Log
    facts: Facts
    now: datetime
    zone: tzinfo
    # Counts what was carried out: two looks at the same count see the same.
    version: int = 0
    _families: list[_Family] = field(default_factory=list)
    _of_piece: dict[int, _Family] = field(default_factory=dict)
    _planned: int = 0
    paces: Paces = Paces.none
    lessons: Lessons = Lessons.none
    # The air of the rooms and what coats came from; worked out where they are not handed over.
    rooms: Mapping[int, RoomAir] = field(default_factory=dict)
    cans: Cans | None = None
    # The checks of soft films that it counts on.
    counted_on: list[Expected] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Sort parts and log into families, and look at each."""
        # What burns in a room is put out on the evening: no date waits for it (`plan` says so).
        if not self.rooms:
            rooms = rooms_air(self.shop, self.log, self.zone)
            self.rooms = {room: replace(air, place=Place(), near=()) for room, air in rooms.items()}
        # Nothing that is planned befalls a can.
        self.cans = self.cans or Cans(self.shop, self.log.entries, self.rooms, self.facts)
        for parts in families(self.shop.parts):
            pieces = {piece.id for part in parts for piece in part.pieces}
            entries = [
                e
                for e in self.log.entries
                if not e.targets or any(t.piece in pieces for t in e.targets)
            ]
            family = _Family(replace(self.shop, parts=tuple(parts)), entries)
            self._families.append(family)
            self._of_piece.update(dict.fromkeys(pieces, family))
            self._look(family, self.now)
            self._count_on_checks(family)

    def _count_on_checks(self, family: _Family) -> None:
        """Take what failed within its time to pass when its clock says so."""
        found = list(expected(family.zones, self.now))
        for each in found:
            head = self.head(each.at, each.at, {each.target})
            family.entries += entries(each, head)
        if found:
            self.counted_on += found
            self._look(family, self.now)

    def _look(self, family: _Family, moment: datetime) -> None:
        log = Log(tuple(family.entries))
        bench = bench_state(
            family.shop, log, self.facts, moment, self.zone, self.rooms, self.paces, self.cans
        )
        # What was handed over is no longer there to be worked on.
        family.zones = tuple(z for z in bench.zones if z.handed_over is None)
        family.glue_ups, family.seen = bench.glue_ups, moment

    @property
    def zones(self) -> list[ZoneState]:
        """Every zone as it stands; its verdict may be of an earlier moment."""
        return [zone for family in self._families for zone in family.zones]

    def zones_beside(self, target: Target) -> Sequence[ZoneState]:
        """Return the zones of every part that may be glued up with the one of a target."""
        return self._of_piece[target.piece].zones

    def zones_at(self, targets: Iterable[Target]) -> tuple[ZoneState, ...]:
        """Return some zones as they stand."""
        wanted = frozenset(targets)
        found = {id(f): f for f in (self._of_piece[t.piece] for t in wanted)}
        return tuple(z for f in found.values() for z in f.zones if z.target in wanted)

    def glue_ups(self, moment: datetime) -> tuple[GlueUp, ...]:
        """Return every glue-up still to be made, with its verdict as of a moment."""
        for family in self._families:
            if any(_may_have_changed(g, family, moment) for g in family.glue_ups):
                self._look(family, moment)
        return tuple(g for family in self._families for g in family.glue_ups)

    def around(self, moment: datetime, near: Iterable[Target] = ()) -> Around:
        """Return what is wet as of a moment: everywhere, or only beside some zones."""
        families = {id(f): f for f in (self._of_piece[t.piece] for t in near)}
        some = [zone for family in families.values() for zone in family.zones]
        states, masks = some or self.zones, masks_in(self.log.entries)
        return around(states, moment, self.facts, self.shop.products, self.lessons, masks)

    def judged(self, states: Sequence[ZoneState], near: Around) -> tuple[ZoneState, ...]:
        """Give zones their verdicts as of `near.now`, in the air that is expected then.

        The edges of a piece have a say. Of pieces that stand alike, one is asked for all.
        """
        by_piece: dict[int, list[ZoneState]] = {}
        for state in states:
            by_piece.setdefault(state.target.piece, []).append(state)
        alike: dict[Hashable, list[int]] = {}
        for piece, mine in by_piece.items():
            alike.setdefault(self._standing(piece, mine, near), []).append(piece)
        asked = [s for pieces in alike.values() for s in by_piece[pieces[0]]]
        verdicts = self._verdicts(asked, near)
        return tuple(
            replace(state, told=verdicts[pieces[0], state.zone.id])
            for pieces in alike.values()
            for piece in pieces
            for state in by_piece[piece]
        )

    def _standing(self, piece: int, states: Sequence[ZoneState], near: Around) -> Hashable:
        """Return what makes two pieces alike: all their zones stand as one another's."""
        every = near.by_piece.get(piece, ())
        return (
            states[0].part.id,
            tuple((s.zone.id, s.progress.done) for s in states),
            tuple((z.zone.id, id(z.stages), z.progress.done, z.set_aside) for z in every),
            states[0].joined_by,
            states[0].masked_since,
        )

    def _verdicts(self, states: Sequence[ZoneState], near: Around) -> dict[tuple[int, int], Told]:
        mine = {state.target for state in states}
        pieces = {state.target.piece for state in states}
        edges = [z for p in pieces for z in near.by_piece.get(p, ()) if z.target not in mine]
        rooms: dict[int | None, RoomAir] = {}
        expected = []
        for state in (*states, *edges):
            room = rooms.get(state.room.id)
            if room is None:
                room = rooms[state.room.id] = as_expected(state.room, near.now)
            expected.append(replace(state, room=room))
        judged = judge_zones(expected, near, self.shop)
        return {(z.target.piece, z.zone.id): z.told for z in judged}

    def verdict_on_work(self, state: ZoneState, operation: Operation, near: Around) -> Verdict:
        """Give the verdict on work that no step asks for."""
        return decide(state, work_asked(operation), near)

    def reaching(self, target: Target) -> list[AnyEntry]:
        """Return what reached a zone, logged or planned, in order."""
        return [e for e in self._of_piece[target.piece].entries if target in e.targets]

    def edges_of(self, targets: frozenset[Target]) -> frozenset[Target]:
        """Return the edges that work on some faces also reaches."""
        return edges_of(self.zones_beside(next(iter(targets))), targets)

    def of_members(self, due: GlueUp) -> frozenset[Target]:
        """Return the zones of the pieces that a glue-up joins."""
        members = frozenset(due.members)
        return frozenset(z.target for z in self.zones if {z.piece.id, z.member_piece.id} & members)

    def head(self, start: datetime, end: datetime, targets: Iterable[Target]) -> dict[str, Any]:
        """Return what every planned entry has: its id, its time from first to last piece."""
        self._planned += 1
        number = _FIRST_ID + self._planned
        when = When(start, end, Sureness.EXACT, self._planned)
        return {
            "id": number,
            "act": number,
            "when": when,
            "typed_at": self.now,
            "targets": frozenset(targets),
        }

    def put(self, *entries: AnyEntry) -> frozenset[Target]:
        """Carry out planned entries; return every zone that may stand otherwise since then."""
        self.version += 1
        touched = {}
        for entry in entries:
            for family in {
                id(f): f for f in (self._of_piece[t.piece] for t in entry.targets)
            }.values():
                family.entries.append(entry)
                family.entries.sort(key=lambda e: e.when.order)
                touched[id(family)] = family
        for family in touched.values():
            self._look(family, entries[-1].when.latest)
        return frozenset(z.target for family in touched.values() for z in family.zones)


def as_expected(room: RoomAir, moment: datetime) -> RoomAir:
    """Read the room once more at a moment, as it is to be expected then."""
    last = room.readings[-1] if room.readings else None
    if room.id is None or (last is not None and last.at >= moment):
        return room
    air = room.expected_at(moment) or (last.air if last else None)
    if air is None:
        return room
    again = AirPoint(moment, air.temperature_c, air.humidity_pct, _FIRST_ID)
    return replace(room, readings=(*room.readings, again), as_was=room)


def air_changes(room: RoomAir, after: datetime) -> datetime | None:
    """Return when the air to expect is next another than at a moment; None: it stays so."""
    course = room.course
    return course.spans[course.index(after)].end


def families(parts: Sequence[Part]) -> list[list[Part]]:
    """Sort parts into groups that need one another, in the order of the parts."""
    family: dict[int, list[Part]] = {part.id: [part] for part in parts}
    for part in parts:
        for need in part.needs:
            mine, other = family[part.id], family.get(need.part)
            if other is not None and other is not mine:
                mine.extend(other)
                family.update(dict.fromkeys((p.id for p in other), mine))
    order = {part.id: n for n, part in enumerate(parts)}
    distinct: Mapping[int, list[Part]] = {id(found): found for found in family.values()}
    return [sorted(found, key=lambda p: order[p.id]) for found in distinct.values()]


def _may_have_changed(due: GlueUp, family: _Family, moment: datetime) -> bool:
    high = due.verdict.high
    return high is not None and family.seen is not None and family.seen < high <= moment
