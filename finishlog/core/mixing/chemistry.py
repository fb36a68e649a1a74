"""What a thing is, chemically, as far as class and name tell; and what must never meet what.

Names know little: the safety data sheet comes first. What a name leaves open is taken for the
more dangerous of what it may be.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from functools import reduce
from itertools import product as pairs

from msgspec import Struct

from finishlog.core.findings import Finding, Level


class Substance(StrEnum):
    """What something is or holds."""

    WATER = "water"
    HYPOCHLORITE = "hypochlorite"
    BLEACH = "bleach not named"
    ACID = "acid"
    AMMONIA = "ammonia"
    PEROXIDE = "peroxide"
    ORGANIC_PEROXIDE = "organic peroxide"
    CAUSTIC = "caustic"
    OXIDIZER = "oxidizer"
    ALCOHOL = "alcohol"
    METHANOL = "methanol"
    ACETONE = "acetone"
    CHLORINATED = "chlorinated solvent"
    ISOCYANATE = "isocyanate"
    FORMALDEHYDE = "formaldehyde"
    AMINE = "amine"
    HARDENER = "hardener"
    ACCELERATOR = "accelerator"
    DRYING_OIL = "drying oil"
    TURPENTINE = "turpentine"
    CITRUS = "citrus"
    PETROLEUM = "petroleum"
    PETROL = "petrol"
    LACQUER_THINNER = "lacquer thinner"
    # Something that no word here knows.
    OTHER = "something else"


Substances = frozenset[Substance]
# A phrase, and what it speaks of.
_Reading = tuple[tuple[str, ...], Substance]
NOTHING: Substances = frozenset()

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

_CLAUSE = re.compile(r"[,;.:()!?/]|\bbut\b")
_NOT = frozenset({"no", "not", "never", "without", "nor", "instead", "non"})
_FREE = "free"

LEAVE_NOW = "leave now, call from outside"
_STAY_OUT = (
    "keep everybody out and say what met what; pour nothing into it, carry nothing out, wash "
    "whom it touched with plenty of water"
)


class Clue(Struct, frozen=True):
    """How a substance is known: phrases of a text, whole names, keys of classes.

    A phrase is a row of words; a word that ends in `*` stands for all that begin so. `hazard`:
    which notes it brings.
    """

    substance: Substance
    phrases: tuple[tuple[str, ...], ...]
    source: str
    names: frozenset[str] = frozenset()
    classes: frozenset[str] = frozenset()
    hazard: str = ""


class Conflict(Struct, frozen=True):
    """Two substances that must not meet. `on_wood`: also where one of them lies in the wood."""

    of: frozenset[Substance]
    level: Level
    reason: str
    source: str
    on_wood: bool = False
    # Whoever stands there has to get out.
    poison: bool = False


class Stranger(Struct, frozen=True):
    """What does not belong in a finish, but for the families of `unless`."""

    substance: Substance
    unless: frozenset[str]
    level: Level
    reason: str
    remedy: str
    source: str


@dataclass(frozen=True, slots=True)
class Chemistry:
    """Everything that is known of what names mean and of what must not meet."""

    clues: tuple[Clue, ...]
    conflicts: tuple[Conflict, ...]
    strangers: tuple[Stranger, ...]
    # By the first letter of their first word: names are read often.
    _by_letter: Mapping[str, Sequence[_Reading]] = field(init=False, compare=False)

    def __post_init__(self) -> None:
        """Sort the phrases by their first letter."""
        by_letter: dict[str, list[_Reading]] = defaultdict(list)
        for clue in self.clues:
            for phrase in clue.phrases:
                by_letter[phrase[0][0]].append((phrase, clue.substance))
        object.__setattr__(self, "_by_letter", by_letter)

    def of_class(self, key: str) -> Substances:
        """Return what a class of finish holds."""
        return frozenset(c.substance for c in self.clues if key in c.classes)

    def in_name(self, name: str) -> Substances:
        """Return what a name speaks of."""
        whole = name.strip().casefold()
        found = frozenset(c.substance for c in self.clues if whole in c.names)
        return found | self._in_words(_words(name))

    def in_note(self, text: str) -> Substances:
        """Return what a note speaks of as being there: `no vinegar` speaks of none."""
        found = NOTHING
        for clause in _CLAUSE.split(text.casefold()):
            words = _words(clause)
            end = next((n for n, word in enumerate(words) if word in _NOT), len(words))
            found |= self._in_words(words[:end])
        return found

    def hazards(self, of: Substances) -> tuple[str, ...]:
        """Name the notes that substances bring."""
        found = (c.hazard for c in self.clues if c.substance in of and c.hazard)
        return tuple(dict.fromkeys(found))

    def meeting(self, one: Substances, other: Substances) -> tuple[Conflict, ...]:
        """Return what speaks against two things meeting; which is which makes no difference."""
        met = {frozenset(pair) for pair in pairs(one, other)}
        return tuple(c for c in self.conflicts if c.of in met)

    def _in_words(self, words: Sequence[str]) -> Substances:
        """Read words from left to right, at each place the longest phrase that fits."""
        found: set[Substance] = set()
        at = 0
        while at < len(words):
            fits = [
                (len(phrase), substance)
                for phrase, substance in self._by_letter.get(words[at][0], ())
                if _fits(phrase, words[at : at + len(phrase)])
            ]
            longest = max((length for length, _ in fits), default=1)
            if words[at + longest : at + longest + 1] != [_FREE]:
                found |= {substance for length, substance in fits if length == longest}
            at += longest
        return frozenset(found)


def _words(text: str) -> list[str]:
    return re.findall(r"[^\W_]+", text.casefold())


def _fits(phrase: Sequence[str], words: Sequence[str]) -> bool:
    return len(phrase) == len(words) and all(map(_means, phrase, words))


def _means(meant: str, word: str) -> bool:
    if meant.endswith("*"):
        return word.startswith(meant[:-1])
    return word in {meant, f"{meant}s"}


class Ingredient(Struct, frozen=True):
    """One thing that went into something: its name, its class if it is a finish, words about it.

    `made_of`: what a mix was made of that went in as a whole.
    """

    name: str
    class_key: str = ""
    note: str = ""
    made_of: tuple[Ingredient, ...] = ()


def contents(of: Ingredient, chemistry: Chemistry) -> Substances:
    """Return all that a thing holds; neither the order nor the nesting of its parts matters.

    A bleach that does not say which is the one that the mix is anyway, if no part but water stands
    beside it; else it is taken for the chlorine bleach of every household.
    """
    things = list(_flat(of))
    classed = _all(chemistry.of_class(thing.class_key) for thing in things)
    read = [(thing, _read(thing, classed, chemistry)) for thing in things]
    found = _all(substances for _, substances in read)
    if Substance.BLEACH not in found:
        return found
    beside = _all(substances for thing, substances in read if not thing.class_key)
    own = bool(classed & _BLEACHES) and beside <= {Substance.BLEACH, Substance.WATER}
    return found - {Substance.BLEACH} | (NOTHING if own else {Substance.HYPOCHLORITE})


def classes_in(of: Ingredient) -> frozenset[str]:
    """Return the keys of the classes of all that went into it."""
    return frozenset(thing.class_key for thing in _flat(of) if thing.class_key)


def _flat(of: Ingredient) -> Iterator[Ingredient]:
    yield of
    for part in of.made_of:
        yield from _flat(part)


def _all(found: Iterable[Substances]) -> Substances:
    return reduce(frozenset.union, found, NOTHING)


def _read(of: Ingredient, classed: Substances, chemistry: Chemistry) -> Substances:
    """Read one ingredient by itself; `classed`: what the classes in the whole mix hold."""
    by_class = chemistry.of_class(of.class_key)
    found = by_class | chemistry.in_name(of.name)
    if by_class & _BLEACHES:
        found -= {Substance.BLEACH}
    if Substance.HARDENER in found and not (found | classed) & _SAYS_WHAT_HARDENS:
        found |= {Substance.ISOCYANATE}
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
        Finding(s.level, s.reason, s.remedy, s.source)
        for s in chemistry.strangers
        if s.substance in of and family not in s.unless
    ]
    return (*(meeting_finding(c, done=done) for c in met), *strange)


def meeting_finding(met: Conflict, *, done: bool = True) -> Finding:
    """Say that two things met, or would; whoever stands in the gas first has to get out."""
    if not met.poison:
        return Finding(met.level, met.reason, "goggles and gloves, a little at a time", met.source)
    if done:
        sentence = f"{LEAVE_NOW}: {met.reason}"
        return Finding(met.level, sentence, _STAY_OUT, met.source, get_out=True)
    return Finding(
        met.level, f"do not: {met.reason}", f"if it is done: {LEAVE_NOW}; {_STAY_OUT}", met.source
    )
