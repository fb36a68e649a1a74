"""From what was typed to parts, pieces, faces and zones, or one clear refusal."""

from __future__ import annotations

import shlex
from collections.abc import Collection, Iterable, Mapping, Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from finishlog.core.bench.state import BenchState
from finishlog.core.commands import Do
from finishlog.core.log.entries import Target
from finishlog.core.log.words import Operation
from finishlog.core.shop.names import find, old_names
from finishlog.core.shop.selectors import (
    Chosen,
    Known,
    NoSuch,
    Picked,
    Resolved,
    Several,
    faces_meant,
    faces_near,
    parse,
    resolve_with_old,
)
from finishlog.core.shop.things import (
    FaceKind,
    Part,
    Product,
    Project,
    Room,
    Schedule,
    Shop,
    ThingKind,
    zone_name,
)
from finishlog.core.verdict.edges import edges_of
from finishlog.core.zone.grouping import describe, typed_as
from finishlog.core.zone.state import ZoneState
from finishlog.errors import (
    Ambiguous,
    MisnamedPart,
    NotFound,
    UnknownPart,
    UnknownProduct,
    UsageFault,
)


class Zones(Struct, frozen=True):
    """What an act is about: zones, the parts they belong to, and how to name them.

    `wood` holds, by the piece that was named, all of its zones that were meant.
    """

    targets: frozenset[Target]
    parts: tuple[Part, ...] = ()
    labels: tuple[str, ...] = ()
    wood: Mapping[int, frozenset[Target]] = field(default_factory=dict)
    face_named: bool = False

    @property
    def pieces(self) -> frozenset[int]:
        """Return the pieces that were named, by id."""
        return frozenset(self.wood)

    def reached_by(self, targets: frozenset[Target]) -> int:
        """Count the pieces that were named and have some of the zones."""
        return sum(1 for mine in self.wood.values() if mine & targets)


def known_parts(shop: Shop) -> tuple[Known, ...]:
    """List the parts as selectors know them."""
    return tuple(_known(part) for part in shop.parts)


def _known(part: Part) -> Known:
    return Known(
        part.path,
        tuple(p.number for p in part.pieces),
        tuple(face.name for face in part.faces),
        tuple(zone_name(face, z) for face in part.faces for z in face.zones if z.name),
    )


def _old_paths(shop: Shop) -> list[tuple[Known, str]]:
    """List the parts by every path that they had before, each with the one that they have now."""
    if not shop.aliases:
        return []
    found = []
    for part in shop.parts:
        projects = old_names(shop.aliases, ThingKind.PROJECT, part.project)
        names = old_names(shop.aliases, ThingKind.PART, part.id)
        paths = [f"{p}/{n}" for p in (part.project_name, *projects) for n in (part.name, *names)]
        found += [(replace(_known(part), path=p), part.path) for p in paths if p != part.path]
    return found


def _resolved(shop: Shop, text: str) -> Resolved:
    return resolve_with_old(parse(text), known_parts(shop), _old_paths(shop))


def pick_parts(shop: Shop, typed: Iterable[str]) -> tuple[tuple[Part, Chosen], ...]:
    """Resolve selectors to parts; NotFound, Ambiguous or Unknown when that fails."""
    by_path = {part.path: part for part in shop.parts}
    found: dict[Chosen, Part] = {}
    for text in typed:
        try:
            resolved = _resolved(shop, text)
        except ValueError as fault:
            raise UsageFault(str(fault)) from None
        match resolved:
            case Picked(chosen):
                found.update({c: by_path[c.path] for c in chosen})
            case NoSuch(near=near):
                raise _no_part(text, near)
            case Several(candidates=candidates):
                raise Ambiguous(
                    f"{text!r} fits {len(candidates)} parts",
                    f"type one of: {', '.join(candidates)}",
                    text,
                    candidates,
                )
    return tuple((part, chosen) for chosen, part in found.items())


def pick_whole(shop: Shop, typed: Iterable[str]) -> tuple[Part, ...]:
    """Resolve selectors to whole parts; UsageFault for one that names less than there is."""
    found: dict[int, Part] = {}
    for text in typed:
        for part, chosen in pick_parts(shop, [text]):
            if chosen.faces or len(chosen.pieces) < len(part.pieces):
                its_own = Do.PART_NEW(f"{part.project_name}/NAME", like=part.path)
                raise UsageFault(
                    f"{text} is not the whole of {part.path}, and all of it would change",
                    f"type {part.path}; pieces that go their own way are a part: {its_own}",
                )
            found[part.id] = part
    return tuple(found.values())


def _no_part(text: str, near: Sequence[str]) -> NotFound:
    if near:
        hint = f"did you mean {' or '.join(near)}?"
        return MisnamedPart(f"no part is called {text!r}", hint, text, tuple(near))
    if any(sign in text for sign in ":@*,"):
        return NotFound(f"no part is called {text!r}", f"{Do.PART_LIST()} shows what there is")
    path = text if "/" in text else f"PROJECT/{text}"
    return UnknownPart(
        f"no part is called {text!r}", f"put it on record: {Do.PART_NEW(path)}", text
    )


def pick_zones(
    shop: Shop,
    bench: BenchState,
    typed: Iterable[str],
    face: str | None,
    *,
    joints_too: bool = False,
) -> Zones:
    """Resolve selectors to zones: every face that is finished, or the one that is named."""
    picked = pick_parts(shop, typed)
    states: dict[Target, ZoneState] = {}
    labels: list[str] = []
    wood: dict[int, frozenset[Target]] = {}
    for part, chosen in picked:
        numbers = set(chosen.pieces)
        mine = [z for z in _zones_of(part, bench) if _number(z, part, bench) in numbers]
        if chosen.faces and face and face not in chosen.faces:
            raise UsageFault(
                f"{part.name}@{','.join(chosen.faces)} and {Do.LOG.option(face=face)}",
                f"name them all on the part: {part.name}@{','.join((*chosen.faces, face))}",
            )
        faces = chosen.faces or (_face_of(part, mine, face) if face else ())
        wanted = [z for z in mine if _meant(z, faces, joints_too=joints_too)]
        by_number: dict[int, set[Target]] = {}
        for zone in wanted:
            by_number.setdefault(_number(zone, part, bench), set()).add(zone.target)
        reached = by_number.keys()
        if reached != numbers and not _goes_as_its_members(part, reached, picked):
            raise _not_reached(part, numbers, reached, mine, faces)
        if not reached:
            continue
        states.update({z.target: z for z in wanted})
        for piece in (p for p in part.pieces if p.number in reached):
            wood[piece.id] = wood.get(piece.id, frozenset()) | by_number[piece.number]
        once = f" (once called {chosen.once})" if chosen.once else ""
        labels.append(describe(part, sorted(reached), faces) + once)
    return Zones(
        frozenset(states),
        tuple(p for p, _ in picked),
        tuple(labels),
        wood,
        face_named=bool(face) or any(c.faces for _, c in picked),
    )


def _goes_as_its_members(
    part: Part, reached: Collection[int], picked: Sequence[tuple[Part, Chosen]]
) -> bool:
    """Tell whether an assembly that is not made yet is here by the parts it will be made of."""
    named = {each.id for each, _ in picked}
    return bool(part.needs) and not reached and all(n.part in named for n in part.needs)


def _not_reached(
    part: Part,
    numbers: Collection[int],
    reached: Collection[int],
    zones: Sequence[ZoneState],
    faces: Sequence[str],
) -> UsageFault:
    """Refuse pieces on which there is nothing that was meant: none is left out in silence."""
    left = describe(part, sorted(set(numbers) - set(reached)), ())
    these = shlex.quote(typed_as(part, reached))
    there = [f"name those that have it: {these}"] if reached else []
    if faces:
        return UsageFault(f"{left} has no {', '.join(faces)}", *there)
    if part.needs:
        there = there or ["name the parts that it will be made of"]
        return UsageFault(f"{left}: nothing of it is made yet", *there)
    names = ",".join(dict.fromkeys(z.face.name for z in zones))
    hint = f"name the face: {shlex.quote(f'{part.path}@{names}')}"
    return UsageFault(f"{left} has only glue faces, which are kept bare", hint)


def _face_of(part: Part, zones: Sequence[ZoneState], typed: str) -> tuple[str, ...]:
    """Read `--face`: faces or zones of a part, of an assembly those of its members."""
    faces = dict.fromkeys(z.face.name for z in zones)
    named = dict.fromkeys(zone_name(z.face, z.zone) for z in zones if z.zone.name)
    known = Known(part.path, (), tuple(faces), tuple(named))
    found: list[str] = []
    for each in typed.split(","):
        fits = faces_meant(each, known)
        if not fits:
            names = ", ".join(faces_near(each, known))
            raise NotFound(f"{part.path} has no face {each.strip()!r}", f"its faces: {names}")
        if len(fits) > 1:
            raise NotFound(
                f"{each.strip()!r} fits {len(fits)} faces of {part.path}",
                f"type one of: {', '.join(fits)}",
            )
        found += fits
    return tuple(dict.fromkeys(found))


def with_edges(bench: BenchState, picked: Zones) -> Zones:
    """Add the edges that a coat or work on these faces also reaches."""
    edges = edges_of(bench.zones, picked.targets) - picked.targets
    return replace(picked, targets=picked.targets | edges)


def without_edges(bench: BenchState, picked: Zones) -> Zones:
    """Leave the edges out, unless they are what was named."""
    faces = picked.targets - edges_of(bench.zones, picked.targets)
    return replace(picked, targets=faces or picked.targets)


def _zones_of(part: Part, bench: BenchState) -> tuple[ZoneState, ...]:
    """Return the zones of a part; of an assembly, those of the members it is or will be made of."""
    if not part.needs:
        return tuple(z for z in bench.zones if z.member.id == part.id)
    joined = bench.of_part(part.id)
    waiting = {m for g in bench.glue_ups if g.part.id == part.id for m in g.members}
    return (*joined, *(z for z in bench.zones if {z.piece.id, z.member_piece.id} & waiting))


def _number(zone: ZoneState, part: Part, bench: BenchState) -> int:
    """Return the number of the part's piece that a zone belongs to."""
    if not part.needs:
        return zone.member_piece.number
    if zone.part.id == part.id:
        return zone.piece.number
    glue_ups = (g for g in bench.glue_ups if g.part.id == part.id)
    mine = {zone.piece.id, zone.member_piece.id}
    return next(g.piece.number for g in glue_ups if mine & set(g.members))


def _meant(zone: ZoneState, faces: Sequence[str], *, joints_too: bool) -> bool:
    if faces:
        return zone.face.name in faces or zone_name(zone.face, zone.zone) in faces
    return joints_too or zone.face.kind is not FaceKind.JOINT


def operation_word(typed: str) -> Operation | None:
    """Read a kind of work; None when it is none of ours. `coat` is not one: a product is."""
    word = typed.strip().casefold().replace(" ", "-")
    found = next((o for o in Operation if o.value == word), None)
    return None if found is Operation.COAT else found


def pick_product(shop: Shop, typed: str) -> Product:
    """Find a product by name or unique beginning."""
    found = find(typed, _living(shop), shop.aliases, ThingKind.PRODUCT)
    if len(found) == 1:
        return found[0]
    if found:
        names = tuple(p.name for p in found)
        raise Ambiguous(
            f"{typed!r} fits {len(found)} products",
            f"type one of: {', '.join(names)}",
            typed,
            names,
        )
    gone = [
        p for p in shop.products.values() if p.archived and p.name.casefold() == typed.casefold()
    ]
    if gone:
        raise NotFound(
            f"product {gone[0].name} was put away",
            f"to have it back: {Do.PRODUCT_RESTORE(gone[0].name)}",
        )
    near = _near(typed, [p.name for p in _living(shop)])
    raise UnknownProduct(
        f"no product is called {typed!r}",
        f"put it on record: {Do.PRODUCT_NEW(typed, class_='CLASS')} "
        f"({Do.CLASS_LIST()} shows the classes)",
        typed,
        near,
    )


def _near(typed: str, names: Sequence[str]) -> tuple[str, ...]:
    """Return the names that are nearly so, the nearest first."""
    from difflib import get_close_matches

    by_fold = {name.casefold(): name for name in names}
    near = get_close_matches(typed.casefold(), by_fold, n=3, cutoff=0.6)
    return tuple(by_fold[name] for name in near)


def pick_room(shop: Shop, typed: str) -> Room:
    """Find a room by name or unique beginning."""
    found = find(typed, shop.rooms.values(), shop.aliases, ThingKind.ROOM)
    if len(found) == 1:
        return found[0]
    names = ", ".join(sorted(r.name for r in shop.rooms.values())) or "none yet"
    raise NotFound(f"no room is called {typed!r}", f"there are: {names}; {Do.ROOM_NEW(typed)}")


def pick_project(shop: Shop, typed: str) -> Project:
    """Find a project by name or unique beginning."""
    found = find(typed, shop.projects, shop.aliases, ThingKind.PROJECT)
    if len(found) == 1:
        return found[0]
    names = ", ".join(p.name for p in shop.projects) or "none yet"
    raise NotFound(f"no project is called {typed!r}", f"there are: {names}")


def pick_schedule(shop: Shop, known: Sequence[Schedule], typed: str) -> Schedule:
    """Find a finishing schedule by name or unique beginning."""
    found = find(typed, known, shop.aliases, ThingKind.STEPS)
    if len(found) == 1:
        return found[0]
    names = ", ".join(sorted(s.name for s in known)) or "none yet"
    raise NotFound(f"no steps are called {typed!r}", f"there are: {names}")


def _living(shop: Shop) -> list[Product]:
    return [product for product in shop.products.values() if not product.archived]


def paths_of(shop: Shop, typed: str) -> tuple[str, ...]:
    """Return the parts that a word names or may name; empty when it names none."""
    try:
        match _resolved(shop, typed):
            case Picked(chosen):
                return tuple(dict.fromkeys(c.path for c in chosen))
            case Several(candidates=candidates):
                return candidates
    except ValueError:
        pass
    return ()


def names_a_product(shop: Shop, typed: str) -> bool:
    """Tell whether a word is a product, or the beginning of some."""
    return bool(find(typed, _living(shop), shop.aliases, ThingKind.PRODUCT))
