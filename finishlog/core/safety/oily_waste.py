"""What a self-heating finish leaves behind, by what was touched, and with what.

Cloths are wetted by coats and wipes; wool and pads by rubbing a young film; dust, scrapings and
what a stripper lifts come off one. They are dealt with in different ways, so they are kept apart.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime, timedelta
from enum import StrEnum

from msgspec import Struct

from finishlog.core.film.attempts import what_stays
from finishlog.core.film.checks import last_of_each_place
from finishlog.core.finish.classes import FinishClass, Method
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.entries import AnyEntry, Check, Coat, Stripped, Target, Work
from finishlog.core.log.words import Found, Operation, Stripping
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.published.facts import Facts
from finishlog.core.safety.hazards import hazards_in
from finishlog.core.safety.whats_in import in_coat
from finishlog.core.shop.things import Shop


class Waste(StrEnum):
    """What an item is made of: all of it heats like rags."""

    RAGS = "rags"
    PADS = "pads and steel wool"
    DUST = "dust and sander bag"
    SCRAPINGS = "scrapings"
    STRIPPINGS = "stripped finish, pads, cloths"
    # What a gun left beside the piece.
    OVERSPRAY = "filters, masking paper, overspray"


class Handling(StrEnum):
    """What may be done with it: who spreads dust has a heap, and wool stays wet within."""

    # Cloths, paper, gloves: spread, water or can; stiff in time.
    CLOTHS = "cloths"
    # Pads, mops, wool: water or can; they stay wet within.
    PADS = "pads"
    # Dust, bags, scrapings: water or can; a heap is never spread.
    HEAP = "heap"


HANDLED = {
    Waste.RAGS: Handling.CLOTHS,
    Waste.PADS: Handling.PADS,
    Waste.DUST: Handling.HEAP,
    Waste.SCRAPINGS: Handling.HEAP,
    Waste.STRIPPINGS: Handling.HEAP,
    Waste.OVERSPRAY: Handling.HEAP,
}

# What work on a film leaves: of the topmost alone, or of whatever lies below it too.
_ON_TOP = {
    Operation.WIPE: Waste.RAGS,
    Operation.SOLVENT_WIPE: Waste.RAGS,
    Operation.BUFF: Waste.RAGS,
    Operation.STEEL_WOOL: Waste.PADS,
    Operation.RUB: Waste.PADS,
}
_THROUGH = {Operation.SAND: Waste.DUST, Operation.LEVEL: Waste.DUST}
# A few strokes by hand: dust on a cloth, and no bag.
_BY_HAND = frozenset({Operation.SCUFF, Operation.DENIB})
# How a film came off, and what that leaves.
_LEAVES = {
    Stripping.SCRAPE: Waste.SCRAPINGS,
    Stripping.SAND_THROUGH: Waste.DUST,
    Stripping.STRIP: Waste.STRIPPINGS,
    Stripping.WASH: Waste.STRIPPINGS,
}
_SOFT = frozenset({Found.TACKY, Found.GUMS})


class Stiffens(StrEnum):
    """How what is wet comes to be stiff right through, spread in one layer."""

    IN_DAYS = "in days"
    # A gel skins over first.
    LATER = "later"
    # A paste stays wet within.
    NEVER = "never"


class Wetting(Struct, frozen=True):
    """Something got wet: `moment` at the earliest, `latest` at the latest.

    `by_hand`: a hand scuff, whose dust and cloth go into the water can without an item.
    """

    entry: int
    product: str
    moment: datetime
    latest: datetime
    targets: frozenset[Target]
    waste: Waste
    soft: bool = False
    stiffens: Stiffens = Stiffens.IN_DAYS
    by_hand: bool = False


# What reached each zone so far: coats, checks and strippings.
_Told = dict[Target, list[AnyEntry]]


class _Hot(Struct, frozen=True):
    """Which coats heat in rags: by their class, or by what else is in the mix they came from."""

    shop: Shop | None
    facts: Facts
    known: dict[tuple[str, int, int | None], bool]

    def heats(self, coat: Coat) -> bool:
        key = (coat.figures.class_key, coat.product, coat.container)
        if key not in self.known:
            self.known[key] = (
                heats(in_coat(coat, self.shop), self.facts)
                if self.shop is not None
                else self.facts.finish_class(key[0]).self_heating
            )
        return self.known[key]


def heats(what: Ingredient, facts: Facts) -> bool:
    """Tell whether rags wet with it heat: by a class in it, or by what its parts are called."""
    return Hazard.SELF_HEATING in hazards_in(what, facts)


def what_wets(
    entries: Iterable[AnyEntry], facts: Facts, shop: Shop | None = None
) -> Iterator[Wetting]:
    """Yield what coats that heat wetted, and what work on a young film of them left.

    `shop` tells what is in the mixes; without it a coat is what its class is.
    """
    told: _Told = {}
    hot = _Hot(shop, facts, {})
    for entry in entries:
        if isinstance(entry, Coat):
            if entry.scuffed_before:
                yield from _left(entry, Waste.DUST, told, hot, on_top=True, by_hand=True)
            if hot.heats(entry):
                waste = Waste.RAGS if takes_a_cloth(entry, facts) else Waste.OVERSPRAY
                yield _wetting(entry, entry, entry.targets, waste, facts)
        elif isinstance(entry, Stripped):
            yield from _left(entry, _LEAVES[entry.operation], told, hot)
        elif isinstance(entry, Work):
            yield from _of_work(entry, told, hot)
        if isinstance(entry, Coat | Check | Stripped):
            for target in entry.targets:
                told.setdefault(target, []).append(entry)


def takes_a_cloth(coat: Coat, facts: Facts) -> bool:
    """Tell whether a coat wets cloths: one that was sprayed does where its surplus is wiped off.

    A cloth that cleaned the gun is none on record: `leave` asks after it. common practice
    """
    of = facts.finish_class(coat.figures.class_key)
    return not is_sprayed(coat.method, of) or of.wipe_off_h is not None


def overspray_heats(coat: Coat, shop: Shop, facts: Facts) -> bool:
    """Tell whether it was sprayed, and what lies in filters and on paper heats like rags."""
    of = facts.finish_class(coat.figures.class_key)
    return is_sprayed(coat.method, of) and _Hot(shop, facts, {}).heats(coat)


def is_sprayed(method: Method | None, of: FinishClass) -> bool:
    """Tell whether a coat is sprayed: as its class is, where nothing was said."""
    return (method or of.methods[0]) is Method.SPRAY


def hazards_of_coating(
    of: FinishClass, method: Method | None, brings: Ingredient, facts: Facts
) -> tuple[Hazard, ...]:
    """Name what can hurt: by what is in it, and spraying when it was sprayed."""
    found = hazards_in(brings, facts)
    sprayed = is_sprayed(method, of)
    if sprayed and of.wipe_off_h is None:
        heats = {Hazard.SELF_HEATING: Hazard.OVERSPRAY_HEATS}
        found = tuple(heats.get(hazard, hazard) for hazard in found)
    return (*(h for h in found if h is not Hazard.SPRAY), *((Hazard.SPRAY,) if sprayed else ()))


def may_scuff(entry: AnyEntry) -> bool:
    """Tell whether an act is, or began with, a scuffing by hand."""
    if isinstance(entry, Coat):
        return bool(entry.scuffed_before)
    return isinstance(entry, Work) and entry.operation in _BY_HAND


def _of_work(entry: Work, told: _Told, hot: _Hot) -> Iterator[Wetting]:
    if entry.operation in _ON_TOP:
        yield from _left(entry, _ON_TOP[entry.operation], told, hot, on_top=True)
    elif entry.operation in _THROUGH:
        yield from _left(entry, _THROUGH[entry.operation], told, hot)
    elif entry.operation in _BY_HAND:
        yield from _left(entry, Waste.DUST, told, hot, on_top=True, by_hand=True)


def _left(
    entry: Work | Coat | Stripped,
    waste: Waste,
    told: _Told,
    hot: _Hot,
    *,
    on_top: bool = False,
    by_hand: bool = False,
) -> Iterator[Wetting]:
    """Yield what an act on a film left, by product, where that film heats and is young."""
    young = timedelta(days=hot.facts.rags.film_counts_until_d.value)
    by_product: dict[str, tuple[Coat, set[Target]]] = {}
    soft: set[str] = set()
    for target in entry.targets & told.keys():
        story = what_stays(told[target])
        coat = _newest_hot(story, hot, on_top=on_top)
        if coat and entry.when.earliest - coat.when.latest < young:
            by_product.setdefault(coat.product_name, (coat, set()))[1].add(target)
            if _is_soft(story):
                soft.add(coat.product_name)
    for product, (coat, targets) in by_product.items():
        yield _wetting(
            entry,
            coat,
            frozenset(targets),
            waste,
            hot.facts,
            soft=product in soft,
            by_hand=by_hand,
        )


def _newest_hot(story: Sequence[AnyEntry], hot: _Hot, *, on_top: bool) -> Coat | None:
    coats = [e for e in reversed(story) if isinstance(e, Coat)]
    return next((coat for coat in coats[: 1 if on_top else None] if hot.heats(coat)), None)


def _is_soft(story: Sequence[AnyEntry]) -> bool:
    """Tell whether the last check found the film soft, at any of its places."""
    last = last_of_each_place([e for e in story if isinstance(e, Check)])
    return any(check.found in _SOFT for check in last)


def _wetting(
    entry: Coat | Work | Stripped,
    of: Coat,
    targets: frozenset[Target],
    waste: Waste,
    facts: Facts,
    *,
    soft: bool = False,
    by_hand: bool = False,
) -> Wetting:
    when, figures = entry.when, facts.rags
    stiffens = Stiffens.IN_DAYS
    if HANDLED[waste] is not Handling.CLOTHS or of.figures.class_key in figures.never_stiff.classes:
        stiffens = Stiffens.NEVER
    elif of.figures.class_key in figures.stiff_after_gel_h.classes:
        stiffens = Stiffens.LATER
    return Wetting(
        entry=entry.id,
        product=of.product_name,
        moment=when.earliest,
        latest=when.latest,
        targets=targets,
        waste=waste,
        soft=soft,
        stiffens=stiffens,
        by_hand=by_hand,
    )
