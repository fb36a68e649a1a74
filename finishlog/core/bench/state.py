"""The one function that turns log, steps, facts and air into the state of the whole shop.

Every screen asks it; nothing it finds is stored.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from datetime import datetime, tzinfo

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.met import Stay, air_met
from finishlog.core.air.room import RoomAir
from finishlog.core.bench.cans import Cans
from finishlog.core.bench.hand_over import glue_ups_here, without_what_left
from finishlog.core.clock.pace import Paces
from finishlog.core.film.faults import standing_faults
from finishlog.core.film.layers import Layer
from finishlog.core.film.laying import build
from finishlog.core.film.lessons import Lessons
from finishlog.core.film.progress import (
    Progress,
    after_glue_up,
    progress,
    steps_for,
    until_glue_up,
)
from finishlog.core.finish.classes import FinishClass, Method
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Joined, Resumed, SetAside, Stripped, Target, Work
from finishlog.core.log.when import When
from finishlog.core.log.words import Keeping, Operation
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.published.facts import Facts
from finishlog.core.published.species import WoodKind
from finishlog.core.rules.wood.bare_wood import kind_of_wood
from finishlog.core.safety import rags
from finishlog.core.shop.respirators import Mask, masks_in
from finishlog.core.shop.things import Face, Log, Part, Piece, Product, Shop, Step, Zone
from finishlog.core.trouble.stalled import explained
from finishlog.core.verdict import glue_up
from finishlog.core.verdict.due import asked_of, coat_due, product_due
from finishlog.core.verdict.edges import with_edges
from finishlog.core.verdict.fold import decide
from finishlog.core.verdict.handling import Handling
from finishlog.core.zone.around import Around, around
from finishlog.core.zone.asked import coat_asked, work_asked
from finishlog.core.zone.state import FilmStages, ZoneState
from finishlog.core.zone.stood_in import ALWAYS, LogIndex, index_of, rooms_air, stays_of
from finishlog.core.zone.verdict import Verdict


class BenchState(Struct, frozen=True):
    """Every zone, every glue-up that is due, every rags item, as of `now`."""

    now: datetime
    zones: tuple[ZoneState, ...]
    glue_ups: tuple[glue_up.GlueUp, ...]
    rags: tuple[rags.RagsItem, ...]
    rooms: Mapping[int, RoomAir]
    cans: Cans
    products: Mapping[int, Product] = {}
    lessons: Lessons = Lessons.none
    masks: tuple[Mask, ...] = ()

    def around(self, facts: Facts) -> Around:
        """Return what is around each of its zones."""
        return around(self.zones, self.now, facts, self.products, self.lessons, self.masks)

    @property
    def in_the_shop(self) -> tuple[ZoneState, ...]:
        """Return the zones of what was not handed over: what the day is about."""
        return tuple(z for z in self.zones if z.is_here)

    @property
    def rooms_in_use(self) -> frozenset[int]:
        """Return the rooms whose air matters: something there is to be coated or not yet hard."""
        found: set[int] = set()
        for state in self.in_the_shop:
            room = state.room.id
            if room is not None and room not in found and _minds_the_air(state, self.now):
                found.add(room)
        return frozenset(found)

    def film(self, state: ZoneState, coat: int | None) -> Layer | None:
        """Return the layer of a coat that a zone waits for: its own, its piece's, or any."""
        if coat is None:
            return None
        of_the_piece = (z for z in self.zones if z.member_piece.id == state.member_piece.id)
        where = (state, *of_the_piece, *self.zones)
        return next((y for z in where for y in z.layers if y.coat.id == coat), None)

    def of_part(self, part: int) -> tuple[ZoneState, ...]:
        """Return the zones of a part: its own, or those of the members it was glued up from."""
        return tuple(z for z in self.zones if z.part.id == part)


def _minds_the_air(state: ZoneState, now: datetime) -> bool:
    if state.set_aside or state.is_bare_joint:
        return False
    if state.progress.next is not None or not state.layers:
        return state.progress.next is not None
    hard = state.date_of(Stage.CURED)
    return hard is None or hard.high is None or hard.high > now


# A moment of the work, and the entry: at one instant what was typed later comes later.
_Since = tuple[datetime, int]
_Films = dict[Hashable, tuple[tuple[Layer, ...], FilmStages]]


def bench_state(
    shop: Shop,
    log: Log,
    facts: Facts,
    now: datetime,
    zone: tzinfo,
    rooms: Mapping[int, RoomAir] | None = None,
    paces: Paces = Paces.none,
    cans: Cans | None = None,
    lessons: Lessons = Lessons.none,
) -> BenchState:
    """Work out the state of every zone, assembly and rags item.

    `rooms`: their air where it is known already, with the sums over it; `paces`: how products dry
    here, by what checks taught; `cans`: what coats came from, where it is known already; `lessons`:
    how finishes came out here.
    """
    index = index_of(log)
    rooms = rooms_air(shop, log, zone) if rooms is None else rooms
    cans = cans or Cans(shop, log.entries, rooms, facts)
    parts = {piece.id: part for part in shop.parts for piece in part.pieces}
    films: _Films = {}
    states = [
        _zone_state(part, piece, face, area, index, rooms, parts, films, facts, paces, cans)
        for part in shop.parts
        for piece in part.pieces
        for face in part.faces
        for area in face.zones
    ]
    uses = {project.id: project.used_for for project in shop.projects if project.used_for}
    if uses:
        states = [replace(s, used_for=uses.get(s.part.project)) for s in states]
    stood = {state.member_piece.id: state.stays for state in states}
    states = without_what_left(states)
    masks = masks_in(log.entries)
    near = around(states, now, facts, shop.products, lessons, masks)
    judged = judge_zones(states, near, shop)
    judged = tuple(explained(s, judged, shop, log, facts, zone, now) for s in judged)
    return BenchState(
        now=now,
        zones=judged,
        glue_ups=glue_ups_here(glue_up.due(shop.parts, judged, index.joined, near), judged),
        rags=rags.rags_items(log.entries, facts, zone, shop, stood, rooms.values()),
        rooms=rooms,
        products=shop.products,
        cans=cans,
        lessons=lessons,
        masks=masks,
    )


def judge_zones(states: Sequence[ZoneState], near: Around, shop: Shop) -> tuple[ZoneState, ...]:
    """Give zones their verdicts as of `near.now`; with a zone come the edges of its piece."""
    states = [replace(state, handling=Handling(state, near)) for state in states]
    here = [state for state in states if state.is_here]
    judged = with_edges(
        here,
        lambda state: asked_of(state, shop, near.facts),
        lambda state: coat_due(state, shop, near.facts),
        near,
    )
    if len(here) == len(states):
        return judged
    by_target = {state.target: state for state in judged}
    return tuple(by_target.get(state.target, state) for state in states)


def _owner(
    part: Part, piece: Piece, index: LogIndex, parts: Mapping[int, Part]
) -> tuple[Part, Piece, _Since, Joined | None]:
    """Follow a piece into the assembly that it is part of, and the glue-up that put it there."""
    since, seen, by = (ALWAYS, 0), {piece.id}, None
    while (join := index.joined.get(piece.id)) and join.into in parts and join.into not in seen:
        first = index.first_joined[piece.id]
        part = parts[join.into]
        piece = next(p for p in part.pieces if p.id == join.into)
        since, by = (first.when.latest, first.id), join
        seen.add(piece.id)
    return part, piece, since, by


def _zone_state(
    part: Part,
    piece: Piece,
    face: Face,
    area: Zone,
    index: LogIndex,
    rooms: Mapping[int, RoomAir],
    parts: Mapping[int, Part],
    films: _Films,
    facts: Facts,
    paces: Paces,
    cans: Cans,
) -> ZoneState:
    target = Target(piece.id, area.id)
    entries = index.by_target.get(target, ())
    owner, owned, since, glued = _owner(part, piece, index, parts)
    stays = stays_of(part, piece, index, rooms)
    species = area.species or part.species
    wood = kind_of_wood(species, facts) if entries and paces.learnt else WoodKind.OTHER
    shuts = face.meets is not None
    layers, stages = _film(entries, stays, facts, films, paces, wood, cans, shuts=shuts)
    return ZoneState(
        target=target,
        part=owner,
        piece=owned,
        member=part,
        member_piece=piece,
        face=face,
        zone=area,
        layers=layers,
        progress=_progress(part, owner, face, area, entries, since, parts),
        room=stays[-1].air if stays else RoomAir(),
        set_aside=_is_set_aside(entries),
        species=species,
        joined_by=glued,
        masked_since=_masked_since(entries),
        entries=entries,
        faults=standing_faults(entries, facts),
        stays=stays,
        stages=stages,
    )


def _film(
    entries: Sequence[AnyEntry],
    stays: Sequence[Stay],
    facts: Facts,
    films: _Films,
    paces: Paces,
    wood: WoodKind,
    cans: Cans,
    *,
    shuts: bool,
) -> tuple[tuple[Layer, ...], FilmStages]:
    """Build the film of a zone; a batch with one story in one place shares it."""
    story = (tuple(e.id for e in entries), tuple((s.since, s.air.id) for s in stays), wood, shuts)
    if story not in films:
        layers = build(
            entries, facts, lambda start: air_met(stays, start), paces, wood, cans.came_from
        )
        films[story] = layers, FilmStages(layers, shuts=shuts)
    return films[story]


def _progress(
    part: Part,
    owner: Part,
    face: Face,
    area: Zone,
    entries: Sequence[AnyEntry],
    since: _Since,
    parts: Mapping[int, Part],
) -> Progress:
    """Match what was done to the steps: its own, and once it is glued up those of the assembly.

    What a member's steps name after its glue-up, or what was left of them then, goes on on the
    assembly. What came off an assembly may take the member's own coats with it: then all are due.
    """
    mine = _steps_of(part.steps, face, area)
    if owner.id == part.id:
        first = until_glue_up(part.steps) if _is_member(part, parts) else part.steps
        return progress(_steps_of(first, face, area), entries, part.behind)
    left = _steps_of(after_glue_up(owner.steps), face, area)
    after = [e for e in entries if (e.when.latest, e.id) > since]
    behind = owner.behind or part.behind
    if any(isinstance(e, Stripped) for e in after):
        return progress((*mine, *left), entries, behind)
    own = progress(mine, [e for e in entries if (e.when.latest, e.id) <= since], part.behind)
    if own.next:
        return progress((*mine, *left), entries, behind)
    return progress(left, after, owner.behind)


def _is_member(part: Part, parts: Mapping[int, Part]) -> bool:
    """Tell whether a part whose steps name a glue-up goes into another one."""
    named = any(step.operation is Operation.GLUE_UP for step in part.steps)
    return named and any(n.part == part.id for other in parts.values() for n in other.needs)


def _steps_of(steps: Sequence[Step], face: Face, area: Zone) -> tuple[Step, ...]:
    mine = steps_for(face, steps, area)
    return tuple(s for s in mine if s.operation is not Operation.GLUE_UP)


def _masked_since(entries: Sequence[AnyEntry]) -> When | None:
    tape = {Operation.MASK, Operation.UNTAPE}
    last = [e for e in entries if isinstance(e, Work) and e.operation in tape][-1:]
    return last[0].when if last and last[0].operation is Operation.MASK else None


def _is_set_aside(entries: Sequence[AnyEntry]) -> bool:
    last = [e for e in entries if isinstance(e, SetAside | Resumed)][-1:]
    return bool(last) and isinstance(last[0], SetAside)


def verdict_on(
    state: ZoneState,
    bench: BenchState,
    over: FinishClass,
    method: Method | None,
    facts: Facts,
    comes: Ingredient | None = None,
    product: int | None = None,
    film_um: float | None = None,
) -> Verdict:
    """Give the verdict on one named product, whatever the steps say comes next.

    Putting it on raises no dust: only scuffing, which is logged by itself, minds wet films.
    """
    near = replace(bench.around(facts), wet_films={})
    asked = coat_asked(over, method, comes, done=True, product=product, film_um=film_um)
    return decide(state, asked, near)


def verdict_on_work(
    state: ZoneState,
    bench: BenchState,
    operation: Operation,
    facts: Facts,
    comes: Ingredient | None = None,
    grit: str = "",
    kept: Keeping | None = None,
) -> Verdict:
    """Give the verdict on one named piece of work, that is being done."""
    asked = work_asked(operation, comes, grit=grit, done=True, then=product_due(state), kept=kept)
    return decide(state, asked, bench.around(facts))
