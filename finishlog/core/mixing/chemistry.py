"""What a thing is, chemically, as far as class and name tell; and what must never meet what.

Names know little: the safety data sheet comes first. What a name leaves open is taken for the
more dangerous of what it may be.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import reduce

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.findings import Finding, finding
from finishlog.core.finish.sheet import NO_SHEET, Sheet
from finishlog.core.published.chemistry import (
    NOTHING,
    Chemistry,
    Conflict,
    Substance,
    Substances,
    meant_by,
)

# What a hardener may say of itself, or its class of it: then nobody has to fear the worst.
_SAYS_WHAT_HARDENS = frozenset(
    {
        Substance.ACID,
        Substance.PEROXIDE,
        Substance.ORGANIC_PEROXIDE,
        Substance.CAUSTIC,
        Substance.HYPOCHLORITE,
        Substance.FORMALDEHYDE,
        Substance.AMINE,
    }
)
_HARDENS = frozenset({Substance.HARDENER, Substance.ISOCYANATE, Substance.ORGANIC_PEROXIDE})
_BLEACHES = frozenset(
    {Substance.HYPOCHLORITE, Substance.PEROXIDE, Substance.CAUSTIC, Substance.ACID}
)
# Neither of them is something else beside a bleach.
_NO_OTHER = frozenset(
    {Substance.WATER, Substance.HYPOCHLORITE, Substance.BLEACH, Substance.CAUSTIC}
)
# They give off gas for as long as they are wet.
_GASES = frozenset({Substance.HYPOCHLORITE, Substance.PEROXIDE})

LEAVE_NOW = "leave now, call from outside"


class Ingredient(Struct, frozen=True):
    """One thing that went into something: its name, its class if it is a finish, words about it.

    `made_of`: what a mix was made of that went in as a whole. `sheet`: what its safety data sheet
    says, which outranks class and name, but not what was noted or poured in besides.
    """

    name: str
    class_key: str = ""
    note: str = ""
    made_of: tuple[Ingredient, ...] = ()
    sheet: Sheet = NO_SHEET


def contents(of: Ingredient, chemistry: Chemistry) -> Substances:
    """Return all that a thing holds; neither the order nor the nesting of its parts matters.

    A bleach that does not say which is the one that the mix is anyway, if no part but water stands
    beside it; else it is taken for the chlorine bleach of every household.
    """
    read = read_each(of, chemistry)
    classed = _all(chemistry.of_class(thing.class_key) for thing, _ in read)
    found = _all(substances for _, substances in read)
    if Substance.BLEACH not in found:
        return found
    beside = _all(substances for thing, substances in read if not thing.class_key)
    own = bool(classed & _BLEACHES) and beside <= {Substance.BLEACH, Substance.WATER}
    return found - {Substance.BLEACH} | (NOTHING if own else {Substance.HYPOCHLORITE})


def read_each(of: Ingredient, chemistry: Chemistry) -> list[tuple[Ingredient, Substances]]:
    """Return each thing that went into it with what it holds by itself.

    A sheet that knows of no isocyanate speaks of the whole that it is the sheet of: no hardener in
    it is then supposed to be one.
    """
    things = list(_flat(of))
    classed = _all(chemistry.of_class(thing.class_key) for thing in things)
    supposed = frozenset({Substance.ISOCYANATE}) - meant_by(of.sheet.free_of)
    return [(thing, _read(thing, classed, supposed, chemistry)) for thing in things]


def classes_in(of: Ingredient) -> frozenset[str]:
    """Return the keys of the classes of all that went into it."""
    return frozenset(thing.class_key for thing in _flat(of) if thing.class_key)


def _flat(of: Ingredient) -> Iterator[Ingredient]:
    yield of
    for part in of.made_of:
        yield from _flat(part)


def _all(found: Iterable[Substances]) -> Substances:
    return reduce(frozenset.union, found, NOTHING)


def _read(
    of: Ingredient, classed: Substances, supposed: Substances, chemistry: Chemistry
) -> Substances:
    """Read one ingredient by itself; `classed`: what the classes in the whole mix hold.

    `supposed`: what a hardener is taken for that says nothing of itself.
    """
    by_class = chemistry.of_class(of.class_key)
    found = by_class | chemistry.in_name(of.name, classed=bool(of.class_key))
    if by_class & _BLEACHES:
        found -= {Substance.BLEACH}
    if Substance.HARDENER in found and not (found | classed) & _SAYS_WHAT_HARDENS:
        found |= supposed
    found = found - meant_by(of.sheet.free_of) | meant_by(of.sheet.holds)
    # A mix that says nothing of itself is what its parts are.
    if found - _NO_OTHER or not (found or of.made_of):
        found |= {Substance.OTHER}
    return found | chemistry.in_note(of.note)


def hardens(of: Substances) -> bool:
    """Tell whether something in it makes the rest react."""
    return bool(of & _HARDENS) or gasses(of)


def gasses(of: Substances) -> bool:
    """Tell whether it gives off gas in the pot: a closed one may burst."""
    return bool(of & _GASES)


def mixed_findings(
    of: Substances, family: str, chemistry: Chemistry, *, done: bool = True
) -> tuple[Finding, ...]:
    """Return what speaks against what is together in a pot; `done`: it is, and not only asked."""
    met = chemistry.meeting(of, of)[:1]
    strange = [
        finding("stranger-in-the-pot", s.level, s.source, reason=s.reason, remedy=s.remedy)
        for s in chemistry.strangers
        if s.substance in of and family not in s.unless
    ]
    return (*(meeting_finding(c, done=done) for c in met), *strange)


def meeting_finding(met: Conflict, *, done: bool = True) -> Finding:
    """Say that two things met, or would; whoever stands in the gas first has to get out."""
    if not met.poison:
        return finding("reacts", met.level, met.source, reason=met.reason)
    found = finding(
        "poison-made" if done else "makes-poison", met.level, met.source, reason=met.reason
    )
    return replace(found, get_out=done)
