"""Safety notes come with the act that needs them, and each hazard once an evening."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from finishlog.asks.look import Look
from finishlog.clock import Clock
from finishlog.core.finishes import FinishClass, Method
from finishlog.core.layers import ABRADES
from finishlog.core.oily_waste import Waste
from finishlog.core.old_finish import HAZARD, still_on
from finishlog.core.rags import evening_of
from finishlog.core.records import (
    AnyEntry,
    Coat,
    ContainerDeed,
    ContainerEvent,
    Stripped,
    Stripping,
    Work,
)
from finishlog.core.safety_notes import SafetyNote, notes_for
from finishlog.core.shop import FaceKind
from finishlog.facts.load import Facts

_DUST = ("young-film", "dust")
_OF_STRIPPING = {
    Stripping.STRIP: ("stripper", "vapour"),
    Stripping.WASH: ("flammable", "vapour"),
    Stripping.SCRAPE: ("dust",),
    Stripping.SAND_THROUGH: ("young-film", "dust"),
}
# Mixing wets no rags to speak of, sprays nothing and leaves no overspray.
_NOT_WHILE_MIXING = frozenset({"self-heating", "spray", "nitrocellulose"})
_MIXING = frozenset({ContainerDeed.MIXED, ContainerDeed.TOPPED_UP})


def notes_of_the_evening(
    of: FinishClass, method: Method | None, seen: Look, facts: Facts, clock: Clock
) -> tuple[SafetyNote, ...]:
    """Choose the notes of a coat: at most three, and a hazard once an evening."""
    return _unsaid(hazards_of(of, method), _said_tonight(seen, facts, clock), facts)


def notes_of_mixing(
    of: FinishClass, seen: Look, facts: Facts, clock: Clock
) -> tuple[SafetyNote, ...]:
    """Choose the notes of a mix, in the same way."""
    return _unsaid(hazards_of_mixing(of), _said_tonight(seen, facts, clock), facts)


def _said_tonight(seen: Look, facts: Facts, clock: Clock) -> frozenset[str]:
    """Return the hazards that were really said this evening, with coats and mixes."""
    tonight = evening_of(clock.now, clock.zone)
    said: frozenset[str] = frozenset()
    for entry in sorted(seen.log.entries, key=lambda e: e.act):
        if evening_of(entry.typed_at, clock.zone) == tonight:
            new = _unsaid(_hazards_that_came_with(entry, seen, facts), said, facts)
            said |= {note.applies_to for note in new}
    return said


def _hazards_that_came_with(entry: AnyEntry, seen: Look, facts: Facts) -> tuple[str, ...]:
    if isinstance(entry, Coat):
        return hazards_of(facts.finish_class(entry.figures.class_key), entry.method)
    old = (HAZARD,) if meets_an_old_finish(entry, seen) else ()
    if isinstance(entry, Stripped):
        heats = _heats(entry.id, seen)
        return (*old, *hazards_of_stripping(entry, unknown_film=False, heats=heats))
    if old:
        return old
    if any(entry.id in i.entries and Waste.DUST in i.made_of for i in seen.bench.rags):
        return _DUST
    if isinstance(entry, ContainerEvent) and entry.deed in _MIXING:
        container = seen.shop.containers.get(entry.container)
        product = seen.shop.products[container.product] if container else None
        return hazards_of_mixing(facts.finish_class(product.class_key)) if product else ()
    return ()


def notes_of_stripping(
    of: Stripped, seen: Look, after: Look, facts: Facts, clock: Clock, *, unknown_film: bool
) -> tuple[SafetyNote, ...]:
    """Choose the notes of taking a film off; `unknown_film`: nobody knows what it was."""
    heats = _heats(of.id, after)
    old = meets_an_old_finish(of, after)
    hazards = hazards_of_stripping(of, unknown_film=unknown_film and not old, heats=heats)
    if old:
        hazards = (HAZARD, *hazards)
    return _unsaid(hazards, _said_tonight(seen, facts, clock), facts)


def meets_an_old_finish(entry: AnyEntry, seen: Look) -> bool:
    """Tell whether an entry sanded or took off what a part had on it when it came in."""
    abrades = isinstance(entry, Work) and entry.operation in ABRADES
    if not (abrades or isinstance(entry, Stripped)):
        return False
    return any(
        zone.face.kind is not FaceKind.JOINT
        and still_on(
            zone.member.old_finish, (e for e in zone.told if e.when.order < entry.when.order)
        )
        for zone in seen.bench.zones
        if zone.target in entry.targets and zone.member.old_finish
    )


def _heats(entry: int, seen: Look) -> bool:
    """Tell whether what an entry left behind heats like oily rags."""
    return any(entry in item.entries for item in seen.bench.rags)


def notes_of_dust(entry: int, after: Look, facts: Facts, clock: Clock) -> tuple[SafetyNote, ...]:
    """Choose the notes of sanding: an old finish, a film that still heats, the sander's bag."""
    heats = any(entry in item.entries and Waste.DUST in item.made_of for item in after.bench.rags)
    before = replace(after, log=after.log.only(lambda e: e.id != entry))
    sanded = next((e for e in after.log.entries if e.id == entry), None)
    old = (HAZARD,) if sanded and meets_an_old_finish(sanded, after) else ()
    hazards = (*old, *(_DUST if heats else ()))
    return _unsaid(hazards, _said_tonight(before, facts, clock), facts)


def _unsaid(hazards: Iterable[str], said: frozenset[str], facts: Facts) -> tuple[SafetyNote, ...]:
    return notes_for(facts.notes, [h for h in hazards if h not in said])


def hazards_of(of: FinishClass, method: Method | None) -> tuple[str, ...]:
    """Name what can hurt, first what is worst: rags, spraying (when it was sprayed), the rest."""
    sprayed = (method or of.methods[0]) is Method.SPRAY
    first = [h for h in ("self-heating", "spray") if h in of.hazards or (h == "spray" and sprayed)]
    rest = [h for h in of.hazards if h not in {"self-heating", "spray"}]
    return tuple(h for h in (*first, *rest) if h != "spray" or sprayed)


def hazards_of_mixing(of: FinishClass) -> tuple[str, ...]:
    """Name what can hurt while mixing."""
    return tuple(h for h in of.hazards if h not in _NOT_WHILE_MIXING)


def hazards_of_stripping(of: Stripped, *, unknown_film: bool, heats: bool) -> tuple[str, ...]:
    """Name what can hurt when a film comes off: an old one may hold lead, a young oil one heats."""
    lead = ("lead",) if unknown_film else ()
    heap = ("scrapings",) if heats and of.operation is not Stripping.SAND_THROUGH else ()
    return (*lead, *heap, *_OF_STRIPPING[of.operation])
