"""Every safety note there is, or those of a product, a project, a room, a wood or a topic."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.bench.vapour_there import PeopleLine, people_out
from finishlog.asks.look.look import Look, look
from finishlog.asks.look.which_room import RoomPlace, place_of
from finishlog.asks.things.own_words import less_than_its_class, own_words
from finishlog.asks.things.ventilation import NOT_ASKED, AskedOfAir, air_in
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.findings import Finding
from finishlog.core.finish.classes import Method
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.entries import Coat, Heated
from finishlog.core.mixing.chemistry import contents
from finishlog.core.published.care import UsedFor
from finishlog.core.published.chemistry import Substances
from finishlog.core.published.facts import Facts
from finishlog.core.published.safety_notes import SafetyNote
from finishlog.core.safety.hazards import hazards_in
from finishlog.core.safety.keeping import Kept, how_kept
from finishlog.core.safety.room_takes import RoomTakes
from finishlog.core.safety.what_leaves import solvents_of
from finishlog.core.safety.whats_in import in_product
from finishlog.core.shop.names import find
from finishlog.core.shop.own_rules import said_of_sheet
from finishlog.core.shop.things import Part, Product, ThingKind
from finishlog.errors import NotFound, UsageFault
from finishlog.store.things.pointed_to import is_there

# They come with whatever else is asked.
_ALWAYS = Hazard.GENERAL
# What else people call a hazard; a wood, a class or a product has names of its own.
_TOPICS = {
    "rags": (
        Hazard.SELF_HEATING,
        Hazard.OVERSPRAY_HEATS,
        Hazard.SCRAPINGS,
        Hazard.YOUNG_FILM,
    ),
    "fire": (
        Hazard.SELF_HEATING,
        Hazard.OVERSPRAY_HEATS,
        Hazard.FLAMMABLE,
        Hazard.SPRAY,
        Hazard.NITROCELLULOSE,
        Hazard.HEATER,
        Hazard.HEAT,
    ),
    "fumes": (Hazard.VAPOUR, Hazard.FORMALDEHYDE, Hazard.METHANOL, Hazard.ISOCYANATE),
    "mask": (
        Hazard.VAPOUR,
        Hazard.DUST,
        Hazard.FORMALDEHYDE,
        Hazard.ISOCYANATE,
        Hazard.METHANOL,
    ),
    "solvent": (Hazard.FLAMMABLE, Hazard.VAPOUR, Hazard.METHANOL),
    "paint": (Hazard.LEAD,),
    "stripping": (Hazard.STRIPPER, Hazard.LEAD, Hazard.SCRAPINGS),
    "sanding": (Hazard.DUST, Hazard.YOUNG_FILM, Hazard.LEAD),
    "wood": (
        Hazard.DUST,
        Hazard.OAK_OR_BEECH_DUST,
        Hazard.CEDAR_DUST,
        Hazard.SENSITISING_DUST,
    ),
    **dict.fromkeys(
        ("help", "first aid", "accident", "burn", "eye", "swallowed", "injection", "gas"),
        (Hazard.EMERGENCY,),
    ),
    "heating": (Hazard.HEATER, Hazard.HEAT),
    "crib": (Hazard.CHILDREN,),
    "cot": (Hazard.CHILDREN,),
    "toy": (Hazard.CHILDREN,),
    "hardener": (Hazard.ISOCYANATE, Hazard.FORMALDEHYDE),
    "poison": (
        Hazard.BLEACH,
        Hazard.STRIPPER,
        Hazard.ISOCYANATE,
        Hazard.AMMONIA,
        Hazard.METHANOL,
    ),
}
# Who uses a piece, and the notes that come with that.
_FOR = {UsedFor.CHILD: Hazard.CHILDREN, UsedFor.FOOD: Hazard.FOOD}


class Apart(Struct, frozen=True):
    """What must not meet what one has asked about, and why."""

    kept_from: str
    reason: str
    source: str


class SheetShown(Struct, frozen=True):
    """The safety data sheet of a product: where it lies, and what was told of it.

    `less`: what its class or its name has and the sheet rules out.
    """

    file: str
    is_there: bool
    says: tuple[str, ...]
    less: tuple[str, ...]


class SafetyShown(Struct, frozen=True):
    """Notes in the order of danger. `about`: what was asked about; empty: all of them."""

    about: str
    notes: tuple[SafetyNote, ...]
    apart: tuple[Apart, ...] = ()
    # Of a room: what its air takes of a finish, and what was told of it as a place.
    air: tuple[RoomTakes, ...] = ()
    place: RoomPlace | None = None
    # What lights the vapour there.
    lit: tuple[Finding, ...] = ()
    # Of a finish: how much of it a workplace keeps, by the flash point of its solvents.
    kept: Kept | None = None
    # Of a product: its sheet; None: nothing is known of one.
    sheet: SheetShown | None = None
    # Of a room: who stays out of it.
    people: tuple[PeopleLine, ...] = ()


class _Hazards(Struct, frozen=True):
    """What a thing brings: hazards by name, and what is in it; `product`: the one that it is."""

    names: frozenset[Hazard]
    holds: Substances = frozenset()
    kept: Kept | None = None
    product: Product | None = None


def safety(context: Context, typed: str, asked: AskedOfAir = NOT_ASKED) -> SafetyShown:
    """Answer; NotFound where a word is neither a thing, a wood, a class nor a topic.

    `asked`: what is asked of the air of a room; UsageFault where no room was named.
    """
    if not typed and not asked.is_asked:
        return SafetyShown("", context.facts.notes)
    with context.reading() as connection:
        seen = look(context, connection)
    rooms = list(seen.shop.rooms.values())
    named = find(typed, rooms, seen.shop.aliases, ThingKind.ROOM) if typed else rooms
    if asked.is_asked and len(named) != 1:
        raise UsageFault(
            f"which room? there are {', '.join(r.name for r in rooms) or 'none yet'}",
            f"name it: {Do.SAFETY('ROOM', of='PRODUCT', amount='AMOUNT')}",
        )
    if asked.is_asked:
        air, lit = air_in(named[0], asked, seen)
        return SafetyShown(
            named[0].name,
            (),
            air=air,
            place=place_of(named[0], seen.shop, context.clock.now),
            lit=lit,
        )
    known = {note.applies_to for note in context.facts.notes}
    mine = (_product, _project, _part, _room)
    others = (_hazard, _product, _class, _project, _part, _room, _wood, _topic)
    for about in (*mine, *others) if typed.casefold() in _own_names(seen) else others:
        found = about(typed, seen)
        if found is not None:
            wanted = found.names & known | {_ALWAYS}
            notes = tuple(note for note in context.facts.notes if note.applies_to in wanted)
            is_room = about is _room
            place = place_of(named[0], seen.shop, context.clock.now) if is_room else None
            air, lit = air_in(named[0], NOT_ASKED, seen) if is_room else ((), ())
            apart = tuple(_apart(found.holds, context.facts))
            sheet = _sheet(found.product, context.facts) if found.product else None
            people = people_out(seen, {named[0].id}, whole=True) if is_room else ()
            return SafetyShown(typed, notes, apart, air, place, lit, found.kept, sheet, people)
    topics = ", ".join(sorted({*_TOPICS, *known} - {_ALWAYS}))
    raise NotFound(f"nothing is known of {typed!r}", f"a thing of yours, a wood, or: {topics}")


def _sheet(product: Product, facts: Facts) -> SheetShown | None:
    says = tuple(own_words(rule, {}) for rule in said_of_sheet(product.own_rules))
    if not (product.sds or says):
        return None
    there = bool(product.sds) and is_there(Path(product.sds))
    return SheetShown(product.sds, there, says, less_than_its_class(product, facts))


def _apart(holds: Substances, facts: Facts) -> Iterator[Apart]:
    for conflict in facts.chemistry.conflicts:
        for mine in sorted(conflict.of & holds):
            (other,) = conflict.of - {mine}
            if other not in holds:
                yield Apart(other, conflict.reason, conflict.source)


def _hazard(typed: str, seen: Look) -> _Hazards | None:
    """Read a hazard by its name."""
    word = typed.casefold()
    known = word in _TOPICS or any(word == note.applies_to for note in seen.facts.notes)
    return _topic(typed, seen) if known else None


def _own_names(seen: Look) -> frozenset[str]:
    """Return what the person calls things: such a name, typed whole, is no word of ours."""
    shop = seen.shop
    things = (shop.products.values(), shop.projects, shop.parts, shop.rooms.values())
    return frozenset(thing.name.casefold() for kind in things for thing in kind)


def _product(typed: str, seen: Look) -> _Hazards | None:
    found = find(typed, list(seen.shop.products.values()), seen.shop.aliases, ThingKind.PRODUCT)
    if len(found) != 1:
        return None
    return replace(_of_product(found[0], seen.facts), product=found[0])


def _of_product(product: Product, facts: Facts) -> _Hazards:
    brings = in_product(product)
    of = facts.finish_class(product.class_key)
    spray = {Hazard.SPRAY} if Method.SPRAY in of.methods else set()
    kept = how_kept(solvents_of(product, facts), facts.storage)
    holds = contents(brings, facts.chemistry)
    return _Hazards(frozenset({*hazards_in(brings, facts), *spray}), holds, kept)


def _class(typed: str, seen: Look) -> _Hazards | None:
    keys = seen.facts.find_class(typed)
    if len(keys) != 1:
        return None
    return _of_product(Product(0, typed, keys[0]), seen.facts)


def _project(typed: str, seen: Look) -> _Hazards | None:
    found = find(typed, seen.shop.projects, seen.shop.aliases, ThingKind.PROJECT)
    if len(found) != 1:
        return None
    parts = _of_parts(lambda part: part.project == found[0].id, seen)
    use = found[0].used_for
    uses = [use] if use else seen.facts.care.uses_of(found[0].name)
    return _Hazards(parts.names | {_FOR[each] for each in uses}, parts.holds)


def _part(typed: str, seen: Look) -> _Hazards | None:
    word = typed.casefold()
    mine = [p for p in seen.shop.parts if word in {p.name.casefold(), p.path.casefold()}]
    return _of_parts(lambda part: part in mine, seen) if mine else None


def _room(typed: str, seen: Look) -> _Hazards | None:
    found = find(typed, list(seen.shop.rooms.values()), seen.shop.aliases, ThingKind.ROOM)
    if len(found) != 1:
        return None
    room = found[0]
    here = {z.part.id for z in seen.bench.in_the_shop if z.room.id == room.id}
    parts = _of_parts(lambda part: part.id in here or part.room == room.id, seen)
    heated = any(isinstance(e, Heated) and e.room == room.id for e in seen.log.entries)
    warm = heated or any(day.heated for day in room.usual)
    return _Hazards(parts.names | ({Hazard.HEATER, Hazard.HEAT} if warm else set()), parts.holds)


def _of_parts(mine: Callable[[Part], bool], seen: Look) -> _Hazards:
    """Join what the steps, the coats and the woods of some parts bring."""
    parts = [part for part in seen.shop.parts if mine(part)]
    pieces = {piece.id for part in parts for piece in part.pieces}
    planned = {step.product for part in parts for step in part.steps}
    on_it = {
        e.product
        for e in seen.log.entries
        if isinstance(e, Coat) and any(t.piece in pieces for t in e.targets)
    }
    known = [p for key in planned | on_it if key and (p := seen.shop.products.get(key))]
    brought = [_of_product(product, seen.facts) for product in known]
    woods = {zone.species or part.species for part in parts for f in part.faces for zone in f.zones}
    dusts = _dusts({wood for wood in woods if wood}, seen.facts)
    return _Hazards(
        frozenset().union(dusts, *(each.names for each in brought)),
        frozenset().union(*(each.holds for each in brought)),
    )


def _dusts(woods: Collection[str], facts: Facts) -> frozenset[Hazard]:
    known = (facts.species_named(wood) for wood in woods)
    return (
        frozenset({Hazard.DUST, *(wood.dust for wood in known if wood)}) if woods else frozenset()
    )


def _wood(typed: str, seen: Look) -> _Hazards | None:
    return _Hazards(_dusts([typed], seen.facts)) if seen.facts.species_named(typed) else None


def _topic(typed: str, seen: Look) -> _Hazards | None:
    """Read a hazard, what else it is called, a substance, or any word of the notes."""
    word = typed.casefold()
    known = {note.applies_to for note in seen.facts.notes}
    holds = seen.facts.chemistry.in_name(typed)
    named = {*_TOPICS.get(word, ()), *(known & {word}), *seen.facts.chemistry.hazards(holds)}
    said = {n.applies_to for n in seen.facts.notes if word in n.text.casefold()}
    names = frozenset(named or said)
    return _Hazards(names, holds) if names or holds else None
