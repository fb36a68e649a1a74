"""What a thing is, as hazards: by every class in it, and by what its parts are called.

A class says what its kind is by itself; what was poured into it says the rest. Names know little:
the safety data sheet comes before all of this.
"""

from __future__ import annotations

from msgspec.structs import replace

from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.sheet import NO_SHEET
from finishlog.core.log.entries import Coat
from finishlog.core.mixing.chemistry import Ingredient, classes_in, contents, read_each
from finishlog.core.published.chemistry import Chemistry, InAFlame, Substance, Substances
from finishlog.core.published.facts import Facts
from finishlog.core.safety.whats_in import in_coat
from finishlog.core.shop.things import Shop

# What was noted of a coat may speak of the wood, or of last year: no fire comes of words alone.
_BY_ITS_PARTS = frozenset({Hazard.SELF_HEATING, Hazard.FLAMMABLE, Hazard.VAPOUR})
# A little of these in water does not burn. common practice
_DROWNS = frozenset({Substance.ALCOHOL, Substance.METHANOL, Substance.ACETONE})
_WATER = "water"


def hazards_in(what: Ingredient, facts: Facts) -> tuple[Hazard, ...]:
    """Name what can hurt in a product, a mix or what is on a cloth, each hazard once."""
    if what not in facts.hazards_found:
        facts.hazards_found[what] = _found(what, facts)
    return facts.hazards_found[what]


def spared_by_sheet(what: Ingredient, facts: Facts) -> tuple[Hazard, ...]:
    """Name what its class or its name has, and its safety data sheet says is not in it."""
    if not what.sheet.free_of:
        return ()
    there = hazards_in(what, facts)
    unread = hazards_in(replace(what, sheet=NO_SHEET), facts)
    return tuple(h for h in unread if h in what.sheet.free_of and h not in there)


def _found(what: Ingredient, facts: Facts) -> tuple[Hazard, ...]:
    classes = [facts.finish_class(key) for key in sorted(classes_in(what))]
    by_class = [hazard for of in classes for hazard in of.hazards]
    chemistry = facts.chemistry
    parts = _by_itself(what, chemistry)
    held = contents(what, chemistry) if what.note else parts
    noted = (h for h in chemistry.hazards(held) if h not in _BY_ITS_PARTS)
    by_part = [h for h in chemistry.hazards(parts) if h in _BY_ITS_PARTS]
    if classes and all(of.carrier == _WATER for of in classes) and not burning_in(what, facts):
        by_part = [h for h in by_part if h is not Hazard.FLAMMABLE]
    return _by_their_sheets((*by_class, *by_part, *noted), what, facts)


def _by_their_sheets(
    found: tuple[Hazard, ...], what: Ingredient, facts: Facts
) -> tuple[Hazard, ...]:
    """Leave out what every thing that would bring it denies by its sheet; add what sheets name.

    What was noted of a thing stands: its sheet knows nothing of what was poured in.
    """
    things = read_each(what, facts.chemistry)
    denied = frozenset(h for thing, _ in things for h in thing.sheet.free_of)
    named = sorted(h for thing, _ in things for h in thing.sheet.holds)
    for thing, holds in things if denied else ():
        by_class = facts.finish_class(thing.class_key).hazards if thing.class_key else ()
        by_name = facts.chemistry.hazards(holds)
        denied -= {*by_class, *by_name} - thing.sheet.free_of
        denied -= {*facts.chemistry.hazards(facts.chemistry.in_note(thing.note))}
    return tuple(dict.fromkeys((*(h for h in found if h not in denied), *named)))


def hazards_of(coat: Coat, shop: Shop, facts: Facts) -> tuple[Hazard, ...]:
    """Name what can hurt in a coat that went on."""
    return hazards_in(in_coat(coat, shop), facts)


def burning_in(what: Ingredient, facts: Facts) -> tuple[Substance, ...]:
    """Name the parts whose vapour burns, but for what water drowns."""
    does = facts.chemistry.in_a_flame(_by_itself(what, facts.chemistry))
    return tuple(s for s, how in does.items() if how is InAFlame.BURNS and s not in _DROWNS)


def _by_itself(what: Ingredient, chemistry: Chemistry) -> Substances:
    """Return what it holds whatever was noted of it."""
    return contents(replace(what, note="") if what.note else what, chemistry)
