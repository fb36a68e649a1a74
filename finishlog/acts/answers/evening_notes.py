"""Safety notes come with the act that needs them: a hazard once an evening, its notes in turn."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from datetime import date, datetime, timedelta

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.look.look import Look
from finishlog.core.film.attempts import what_stays
from finishlog.core.film.layers import ABRADES
from finishlog.core.film.old_finish import lead_test, still_on
from finishlog.core.finish.classes import FinishClass, Method
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.entries import AnyEntry, Coat, ContainerEvent, Stripped, Target, Work
from finishlog.core.log.words import ContainerDeed, Found, Operation, Stripping
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.published.facts import Facts
from finishlog.core.published.safety_notes import SafetyNote, notes_for
from finishlog.core.safety.hazards import hazards_in, hazards_of
from finishlog.core.safety.oily_waste import Waste, hazards_of_coating
from finishlog.core.safety.rags import evening_of
from finishlog.core.safety.whats_in import in_coat, in_container, in_work
from finishlog.core.shop.things import FaceKind, Shop

# A note that was read so long ago may come again before one that never came.
_LATELY = timedelta(days=30)

_OF_STRIPPING = {
    Stripping.STRIP: (Hazard.STRIPPER, Hazard.VAPOUR),
    Stripping.WASH: (Hazard.FLAMMABLE, Hazard.VAPOUR),
    Stripping.SCRAPE: (Hazard.DUST,),
    Stripping.SAND_THROUGH: (Hazard.DUST,),
}
# So many notes at a time, and so many of them of who will use the piece.
_AT_MOST, _OF_USE = 3, 2
# Mixing wets no rags to speak of, sprays nothing and leaves no overspray.
_NOT_WHILE_MIXING = frozenset({Hazard.SELF_HEATING, Hazard.SPRAY, Hazard.NITROCELLULOSE})
_MIXING = frozenset({ContainerDeed.MIXED, ContainerDeed.TOPPED_UP})
# What hardens a film, and hurts as dust of it until it has.
_OF_HARDENERS = frozenset({Hazard.ISOCYANATE, Hazard.AMINE, Hazard.FORMALDEHYDE})

# A project and a wood of it.
_Wood = tuple[int, str]


class Said(Struct, frozen=True):
    """What was said already: hazards this evening, notes by id lately, woods that were sanded."""

    tonight: frozenset[Hazard] = frozenset()
    lately: frozenset[str] = frozenset()
    woods: frozenset[_Wood] = frozenset()


def notes_of_the_evening(
    of: FinishClass, method: Method | None, brings: Ingredient, seen: Look, uses: Collection[Hazard]
) -> tuple[SafetyNote, ...]:
    """Choose the notes of a coat, by its class and by what is in it.

    `uses`: what its first coat asks of who will use the piece: that has its place among them.
    """
    own = notes_for(seen.facts.notes, uses, at_most=_OF_USE) if uses else ()
    brought = hazards_of_coating(of, method, brings, seen.facts)
    rest = _unsaid((h for h in brought if h not in uses), said(seen), seen.facts)
    return (*rest[: _AT_MOST - len(own)], *own)


def notes_of_mixing(holds: Ingredient, seen: Look) -> tuple[SafetyNote, ...]:
    """Choose the notes of a mix, in the same way."""
    return _unsaid(hazards_of_mixing(holds, seen.facts), said(seen), seen.facts)


def said(seen: Look) -> Said:
    """Work out from the log what was said, act by act, as it was chosen then."""
    tonight, until_now = evening_of(seen.clock.now, seen.clock.zone), Said()
    woods = woods_of(seen.shop)
    evening: date | None = None
    for entry in sorted(seen.log.entries, key=lambda e: e.act):
        sanded = until_now.woods | _sanded(entry, woods)
        if entry.typed_at > seen.clock.now - _LATELY:
            if evening != (evening := evening_of(entry.typed_at, seen.clock.zone)):
                until_now = replace(until_now, tonight=frozenset())
            hazards = _hazards_that_came_with(entry, seen, until_now, woods)
            new = _unsaid(hazards, until_now, seen.facts)
            until_now = Said(
                until_now.tonight | {note.applies_to for note in new},
                until_now.lately | {note.id for note in new},
            )
        until_now = replace(until_now, woods=sanded)
    return until_now if evening == tonight else replace(until_now, tonight=frozenset())


def _hazards_that_came_with(
    entry: AnyEntry, seen: Look, before: Said, woods: Mapping[Target, _Wood]
) -> tuple[Hazard, ...]:
    if isinstance(entry, Coat):
        of = seen.facts.finish_class(entry.figures.class_key)
        return hazards_of_coating(of, entry.method, in_coat(entry, seen.shop), seen.facts)
    if isinstance(entry, Stripped):
        return _hazards_of_stripping(entry, seen)
    if isinstance(entry, Work):
        return _hazards_of_sanding(entry, seen, before, woods)
    if isinstance(entry, ContainerEvent) and entry.deed in _MIXING:
        container = seen.shop.containers.get(entry.container)
        if container is not None and container.product in seen.shop.products:
            return hazards_of_mixing(in_container(container, seen.shop), seen.facts)
    return ()


def notes_of_stripping(of: Stripped, seen: Look, after: Look) -> tuple[SafetyNote, ...]:
    """Choose the notes of taking a film off."""
    return _unsaid(_hazards_of_stripping(of, after), said(seen), seen.facts)


def _hazards_of_stripping(of: Stripped, seen: Look) -> tuple[Hazard, ...]:
    """Name what can hurt when a film comes off: an old one may hold lead, a young oil one heats."""
    if meets_an_old_finish(of, seen):
        lead: tuple[Hazard, ...] = (Hazard.OLD_FINISH,)
    else:
        lead = () if _film_on_record(of, seen) or _holds_no_lead(of, seen) else (Hazard.LEAD,)
    sanded = of.operation is Stripping.SAND_THROUGH
    heap = (Hazard.YOUNG_FILM if sanded else Hazard.SCRAPINGS,) if _heats(of.id, seen) else ()
    told = in_work(of.note)
    said = hazards_in(told, seen.facts) if told is not None else ()
    return (*lead, *heap, *_OF_STRIPPING[of.operation], *said)


def _holds_no_lead(of: Stripped, seen: Look) -> bool:
    """Tell whether all that it reached was tested for lead, and none was found."""
    return all(lead_test(seen.log.reaching(target)) is Found.NO_LEAD for target in of.targets)


def _film_on_record(of: Stripped, seen: Look) -> bool:
    """Tell whether what came off was put on here; else nobody knows what it was."""
    for target in of.targets:
        before = [e for e in seen.log.reaching(target) if _place(e) < _place(of)]
        if any(isinstance(entry, Coat) for entry in what_stays(before)):
            return True
    return False


def _place(of: AnyEntry) -> tuple[tuple[datetime, int], int]:
    return of.when.order, of.id


def _heats(entry: int, seen: Look) -> bool:
    """Tell whether what an entry left behind heats like oily rags."""
    return any(entry in item.entries for item in seen.bench.rags)


def notes_of_sanding(entry: int, after: Look) -> tuple[SafetyNote, ...]:
    """Choose the notes of sanding: a film that still heats, and the wood, once a project."""
    before = replace(after, log=after.log.only(lambda e: e.id != entry))
    mine = next(e for e in after.log.entries if e.id == entry and isinstance(e, Work))
    known = said(before)
    hazards = _hazards_of_sanding(mine, after, known, woods_of(after.shop))
    return _unsaid(hazards, known, after.facts)


def _hazards_of_sanding(
    entry: Work, seen: Look, before: Said, woods: Mapping[Target, _Wood]
) -> tuple[Hazard, ...]:
    heats = any(entry.id in i.entries and Waste.DUST in i.made_of for i in seen.bench.rags)
    young = (Hazard.YOUNG_FILM, Hazard.DUST) if heats else ()
    hardens = _in_young_films(entry, seen) if entry.operation in ABRADES else ()
    new = sorted(_sanded(entry, woods) - before.woods)
    old = (Hazard.OLD_FINISH,) if meets_an_old_finish(entry, seen) else ()
    return (*old, *hardens, *young, *(dust_of(wood, seen.facts) for _, wood in new))


def _in_young_films(entry: Work, seen: Look) -> tuple[Hazard, ...]:
    """Name what of their hardeners is in the dust of films that were not hard when it was made."""
    found = {
        hazard
        for zone in seen.bench.zones
        if zone.target in entry.targets
        for layer in zone.layers
        if layer.coat.when.order < entry.when.order and not layer.is_hard_by(entry.when.latest)
        for hazard in hazards_of(layer.coat, seen.shop, seen.facts)
    }
    return tuple(hazard for hazard in Hazard if hazard in found & _OF_HARDENERS)


def meets_an_old_finish(entry: AnyEntry, seen: Look) -> bool:
    """Tell whether an entry sanded or took off what a part had on it when it came in."""
    abrades = isinstance(entry, Work) and entry.operation in ABRADES
    if not (abrades or isinstance(entry, Stripped)):
        return False
    return any(
        zone.face.kind is not FaceKind.JOINT
        and still_on(
            zone.member.old_finish, (e for e in zone.entries if e.when.order < entry.when.order)
        )
        and lead_test(zone.entries) is not Found.NO_LEAD
        for zone in seen.bench.zones
        if zone.target in entry.targets and zone.member.old_finish
    )


def dust_of(species: str, facts: Facts) -> Hazard:
    """Name the hazard of a wood's dust; of a wood that is not known, that of any."""
    wood = facts.species_named(species) if species else None
    return wood.dust if wood else Hazard.DUST


def woods_of(shop: Shop) -> dict[Target, _Wood]:
    """Return project and wood of every zone; an unknown wood is ''."""
    return {
        Target(piece.id, zone.id): (part.project, (zone.species or part.species or "").casefold())
        for part in shop.parts
        for piece in part.pieces
        for face in part.faces
        for zone in face.zones
    }


def _sanded(entry: AnyEntry, woods: Mapping[Target, _Wood]) -> frozenset[_Wood]:
    if not isinstance(entry, Work) or entry.operation is not Operation.SAND:
        return frozenset()
    return frozenset(woods[target] for target in entry.targets if target in woods)


def _unsaid(hazards: Iterable[Hazard], known: Said, facts: Facts) -> tuple[SafetyNote, ...]:
    new = [h for h in hazards if h not in known.tonight]
    return notes_for(facts.notes, new, lately=known.lately) if new else ()


def hazards_of_mixing(holds: Ingredient, facts: Facts) -> tuple[Hazard, ...]:
    """Name what can hurt while mixing."""
    return tuple(h for h in hazards_in(holds, facts) if h not in _NOT_WHILE_MIXING)
