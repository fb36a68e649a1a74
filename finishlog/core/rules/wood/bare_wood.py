"""What the bare wood says to the first coat: its kind, its oil, the iron of steel wool in it.

Oily wood is wiped with solvent and coated within minutes: its oil comes back (common practice).
Steel wool leaves iron, which water and tannin, or an acid catalyst, turn dark.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from msgspec.structs import replace

from finishlog.core.film.attempts import what_stays
from finishlog.core.film.grip import answered
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Act, Answer, Finding, Level, also, finding, hours
from finishlog.core.log.entries import Fault, Work
from finishlog.core.log.when import When
from finishlog.core.log.words import FaultKind, Found, Operation
from finishlog.core.published.facts import Facts
from finishlog.core.published.species import Condition, WoodKind, WoodRule, rules_for_wood
from finishlog.core.rules.film.underneath import WEIGHS, as_you_said
from finishlog.core.rules.reads import BARE, OPEN_WOOD, SAYS, WOOD
from finishlog.core.rules.rule import COAT, LOADED, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# What shows that oil of the wood did not keep a film soft.
_HARD = frozenset({Found.NO_PRINT, Found.POWDER, Found.HOLDS})
# Bares fresh wood, with fresh oil in it.
_OPENS_THE_WOOD = frozenset({Operation.SAND, Operation.RAISE_GRAIN, Operation.LEVEL})

_ENDS = frozenset({"end", "ends", "endgrain"})
_KNOTS = frozenset({"knot", "knots"})

# A fresh solvent wipe softens what oily wood forbids or doubts.
_SOFTER: dict[Level, tuple[Level, Answer | None]] = {
    Level.STOP: (Level.CAUTION, Answer.TEST),
    Level.CAUTION: (Level.NOTE, None),
    Level.NOTE: (Level.NOTE, None),
}


def solvent_wiped(zone: ZoneState) -> When | None:
    """Return when bare wood was last wiped with solvent, if nothing opened it since."""
    if not zone.wood_lies_open:
        return None
    done = [e for e in what_stays(zone.entries) if isinstance(e, Work)]
    last = [e for e in done if e.operation in _OPENS_THE_WOOD | {Operation.SOLVENT_WIPE}][-1:]
    return last[0].when if last and last[0].operation is Operation.SOLVENT_WIPE else None


def wiped_until(zone: ZoneState, facts: Facts) -> datetime | None:
    """Return until when a solvent wipe of oily wood is good for; None when there was none."""
    wiped = solvent_wiped(zone)
    if wiped is None or not _is_oily(zone, facts):
        return None
    return wiped.earliest + timedelta(hours=facts.drying.solvent_wipe_h.value)


def kind_of_wood(species: str | None, facts: Facts) -> WoodKind:
    """Return what kind of wood a first coat lies on; one that nobody knows is taken as other."""
    wood = facts.species_named(species) if species else None
    return wood.kind if wood is not None else WoodKind.OTHER


def _is_oily(zone: ZoneState, facts: Facts) -> bool:
    return kind_of_wood(zone.species, facts) is WoodKind.OILY


def _is_freshly_wiped(zone: ZoneState, around: Around) -> bool:
    until = wiped_until(zone, around.facts)
    return until is not None and around.now < until


@rule(
    "wood",
    binds=COAT,
    source="facts: wood_rules",
    reads=f"{OPEN_WOOD} {WOOD} work.when work.operation {SAYS}",
)
def wood(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What a wood does to the first coat on it; covered wood has had its say."""
    facts, over = around.facts, asked.over
    species = facts.species_named(zone.species) if zone.species else None
    if species is None or over is None or not zone.wood_lies_open:
        return
    wiped = _is_freshly_wiped(zone, around)
    for row in rules_for_wood(facts.wood_rules, species, over):
        weighs = how_it_weighs(row)
        word = around.overruled(asked.product, row.id)
        if weighs is not None and word is not None:
            yield as_you_said(word, row.reason)
        elif weighs is not None:
            level, answer = _SOFTER[weighs[0]] if wiped and row.is_for_oily else weighs
            yield said_of_wood(row, "wood", level, answer, species.name)


def how_it_weighs(row: WoodRule) -> tuple[Level, Answer | None] | None:
    """Return how much a row weighs and what it answers; None: it is silent."""
    weighs = WEIGHS[row.answer]
    if weighs is None or row.weighs is None:
        return weighs
    answers = {Level.STOP: Answer.UNDERNEATH, Level.CAUTION: Answer.TEST, Level.NOTE: None}
    return row.weighs, answers[row.weighs]


def said_of_wood(
    row: WoodRule, rule_: str, level: Level, answer: Answer | None, species: str
) -> Finding:
    """Say what a row of facts about woods asks of a coat."""
    return finding(
        rule_,
        level,
        row.source,
        answer=answer,
        row=row.id,
        reason=row.reason,
        remedy=row.remedy,
        wood=species,
    )


def _conditions(zone: ZoneState, around: Around) -> frozenset[Condition]:
    """Return what its names, a fault that was on it, and what stands beside it tell of its wood."""
    names = f"{zone.face.name} {zone.zone.name}".casefold().replace("-", " ").split()
    found = {
        Condition.END_GRAIN: not _ENDS.isdisjoint(names),
        Condition.KNOTS: not _KNOTS.isdisjoint(names),
        Condition.SILICONE: any(
            isinstance(e, Fault) and e.what is FaultKind.FISHEYE for e in zone.entries
        ),
        Condition.PALE_BESIDE: any(_is_pale(each, around) for each in _in_one_piece(zone, around)),
    }
    return frozenset(condition for condition, holds in found.items() if holds)


def _in_one_piece(zone: ZoneState, around: Around) -> Iterator[ZoneState]:
    """Yield the other zones of its piece, once it is glued up those of the assembly."""
    for zones in around.by_piece.values():
        yield from (z for z in zones if z.piece.id == zone.piece.id and z.target != zone.target)


def _is_pale(zone: ZoneState, around: Around) -> bool:
    """Tell whether it is a wood that colour from another shows on: one that gives none off."""
    species = around.facts.species_named(zone.species) if zone.species else None
    if species is None or not zone.wood_lies_open:
        return False
    gives = (r for r in around.facts.wood_rules if r.only_with is Condition.PALE_BESIDE)
    return not any(species.traits & set(row.wood) for row in gives)


@rule(
    "oily-wood-below",
    binds=COAT | LOADED | {Act.RUB},
    source="facts: wood_rules",
    reads=f"{BARE} {WOOD} {SAYS} coat.product product.name product.class_key work.operation"
    " work.when check.test check.when check.found",
)
def oily_wood_below(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What went on oily wood against its rule may stay soft: tested before a coat, load or use."""
    facts, first = around.facts, zone.layers[0] if zone.layers else None
    species = facts.species_named(zone.species) if zone.species else None
    if first is None or species is None or not species.oily or zone.old_finish is not None:
        return
    if answered(zone.layers, _HARD) or _was_wiped_before(first, zone, facts):
        return
    for row in rules_for_wood(facts.wood_rules, species, first.of):
        weighs = how_it_weighs(row)
        stops = row.is_for_oily and weighs is not None and weighs[0] is Level.STOP
        if stops and around.overruled(first.coat.product, row.id) is None:
            found = said_of_wood(row, "oily-wood-below", Level.CAUTION, Answer.TEST, species.name)
            yield replace(
                also(found, of=first.coat.product_name), acts=(first.coat.act,), by_test=True
            )
            return


def _was_wiped_before(first: Layer, zone: ZoneState, facts: Facts) -> bool:
    good_for = timedelta(hours=facts.drying.solvent_wipe_h.value)
    return any(
        isinstance(e, Work)
        and e.operation is Operation.SOLVENT_WIPE
        and first.first_on - good_for <= e.when.earliest <= first.first_on
        for e in zone.entries
    )


@rule(
    "on-the-wood",
    binds=COAT,
    source="facts: wood_rules",
    reads=f"{OPEN_WOOD} {WOOD} face.name zone.name fault.what",
)
def on_the_wood(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """End grain and knots that a zone is named by; silicone that made a finish crawl here before.

    A standing fault says so itself; what seals it is no offence.
    """
    facts, over = around.facts, asked.over
    species = facts.species_named(zone.species) if zone.species else None
    if species is None or over is None or not zone.wood_lies_open:
        return
    known, how = _conditions(zone, around), asked.method or over.methods[0]
    for row in rules_for_wood(facts.wood_rules, species, over, known):
        weighs, is_so = how_it_weighs(row), not row.methods or how in row.methods
        if row.only_with in known and weighs is not None and is_so and over.key not in row.barrier:
            yield said_of_wood(row, "on-the-wood", *weighs, species.name)


@rule(
    "solvent-wipe",
    binds=COAT,
    source="facts: drying",
    reads=f"{OPEN_WOOD} {WOOD} work.when work.operation",
)
def solvent_wipe(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Oily wood wants a solvent wipe right before its first coat."""
    oily = asked.over is not None and zone.wood_lies_open and _is_oily(zone, around.facts)
    if not oily or _is_freshly_wiped(zone, around):
        return
    wiped = solvent_wiped(zone)
    yield finding(
        "oil-is-back" if wiped else "not-solvent-wiped",
        Level.CAUTION,
        around.facts.drying.solvent_wipe_h.source,
        wanted=hours(around.facts.drying.solvent_wipe_h.value) if wiped else None,
        ago=around.now - wiped.earliest if wiped else None,
    )
