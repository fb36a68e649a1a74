"""What names tell of a thing, and what must never meet what: names know little."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from enum import StrEnum
from functools import cached_property
from itertools import product as pairs
from typing import Annotated

import msgspec

from finishlog.core.findings import Level
from finishlog.core.finish.classes import FinishClass, Published
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.overcoat import named_by


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
    CHROMATE = "chromate"
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
    NUT_OIL = "nut oil"
    TURPENTINE = "turpentine"
    CITRUS = "citrus"
    PETROLEUM = "petroleum"
    HEAVY_OIL = "heavy oil"
    PETROL = "petrol"
    LACQUER_THINNER = "lacquer thinner"
    SILICONE = "silicone"
    # Something that no word here knows.
    OTHER = "something else"


class InAFlame(StrEnum):
    """What a vapour does that meets a flame or a glowing wire."""

    BURNS = "burns"
    POISON = "turns to poison"


Substances = frozenset[Substance]
# A phrase, and what it speaks of.
_Reading = tuple[tuple[str, ...], Substance]
NOTHING: Substances = frozenset()

_CLAUSE = re.compile(r"[,;.:()!?/]|\bbut\b")
_NOT = frozenset({"no", "not", "never", "without", "nor", "instead", "non"})
_FREE = "free"


class Clue(Published, frozen=True):
    """How a substance is known: phrases of a text, whole names, keys of classes.

    In a phrase a word that ends in `*` stands for all that begin so. `hazards`: which notes it
    brings; `in_a_flame`: what its vapour does there.
    """

    words: tuple[str, ...]
    source: str
    names: frozenset[str] = frozenset()
    classes: frozenset[str] = frozenset()
    hazards: tuple[Hazard, ...] = ()
    in_a_flame: InAFlame | None = None


class Conflict(Published, frozen=True):
    """Two substances that must not meet. `on_wood`: also where one of them lies in the wood."""

    of: Annotated[Substances, msgspec.Meta(min_length=2, max_length=2)]
    level: Level
    reason: str
    source: str
    on_wood: bool = False
    # Whoever stands there has to get out.
    poison: bool = False


class Stranger(Published, frozen=True):
    """What does not belong in a finish, but for the families of `unless`."""

    substance: Substance
    level: Level
    reason: str
    remedy: str
    source: str
    unless: frozenset[str] = frozenset()


class Thinning(Published, frozen=True):
    """What thins some classes or families, in words, and what does not mix with them."""

    classes: tuple[str, ...]
    by: str
    never: Substances
    source: str


class Leftover(Published, frozen=True):
    """What a tool had in it last that harms what goes in now: by class or family, or by name."""

    now: tuple[str, ...]
    reason: str
    clean: str
    source: str
    had: tuple[str, ...] = ()
    substances: Substances = NOTHING


class Chemistry(Published, frozen=True, dict=True, gc=True):
    """Everything that is known of what names mean and of what must not meet."""

    substances: Mapping[Substance, Clue]
    conflicts: tuple[Conflict, ...]
    strangers: tuple[Stranger, ...]
    leftovers: tuple[Leftover, ...]
    thinnings: tuple[Thinning, ...]

    @cached_property
    def _by_letter(self) -> Mapping[str, Sequence[_Reading]]:
        """The phrases by the first letter of their first word: names are read often."""
        by_letter: dict[str, list[_Reading]] = defaultdict(list)
        for substance, clue in self.substances.items():
            for typed in clue.words:
                phrase = tuple(re.findall(r"[^\W_]+\*?", typed.casefold()))
                by_letter[phrase[0][0]].append((phrase, substance))
        return by_letter

    @cached_property
    def _by_class(self) -> Mapping[str, Substances]:
        return _turned((s, clue.classes) for s, clue in self.substances.items())

    @cached_property
    def _by_name(self) -> Mapping[str, Substances]:
        return _turned((s, clue.names) for s, clue in self.substances.items())

    def of_class(self, key: str) -> Substances:
        """Return what a class of finish holds."""
        return self._by_class.get(key, NOTHING)

    def in_name(self, name: str, *, classed: bool = False) -> Substances:
        """Return what a name speaks of; the mere word `varnish` of no more than its class says."""
        whole = "" if classed else name.strip().casefold()
        return self._by_name.get(whole, NOTHING) | self._in_words(tuple(_words(name)))

    def in_note(self, text: str) -> Substances:
        """Return what a note speaks of as being there: `no vinegar` speaks of none."""
        found = NOTHING
        for clause in _CLAUSE.split(text.casefold()) if text else ():
            words = _words(clause)
            end = next((n for n, word in enumerate(words) if word in _NOT), len(words))
            found |= self._in_words(tuple(words[:end]))
        return found

    def hazards(self, of: Substances) -> tuple[Hazard, ...]:
        """Name the notes that substances bring."""
        found = (h for s, clue in self.substances.items() if s in of for h in clue.hazards)
        return tuple(dict.fromkeys(found))

    def in_a_flame(self, of: Substances) -> Mapping[Substance, InAFlame]:
        """Return what the vapour of some substances does in a flame, of those that give off any."""
        does = ((s, clue.in_a_flame) for s, clue in self.substances.items() if s in of)
        return {substance: each for substance, each in does if each is not None}

    def meeting(self, one: Substances, other: Substances) -> tuple[Conflict, ...]:
        """Return what speaks against two things meeting; which is which makes no difference."""
        met = {frozenset(pair) for pair in pairs(one, other)}
        return tuple(c for c in self.conflicts if c.of in met)

    def thinning(self, of: FinishClass) -> Thinning | None:
        """Return what thins a class, and what does not; None: nothing known."""
        return next((t for t in self.thinnings if named_by(t.classes, of) is not None), None)

    def left_by(
        self, had: FinishClass, holds: Substances, now: FinishClass, *, by_class: bool
    ) -> Leftover | None:
        """Return what a tool that had a finish in it does to another; None: nothing known.

        `by_class`: also by its class, and not only by what its name tells.
        """
        rows = (row for row in self.leftovers if named_by(row.now, now) is not None)
        for row in rows:
            of_class = by_class and had.key != now.key and named_by(row.had, had) is not None
            if of_class or row.substances & holds:
                return row
        return None

    @cached_property
    def _read(self) -> dict[tuple[str, ...], Substances]:
        """The words read so far: a shop asks for the same names again and again."""
        return {}

    def _in_words(self, words: tuple[str, ...]) -> Substances:
        if words not in self._read:
            self._read[words] = self._from_left(words)
        return self._read[words]

    def _from_left(self, words: tuple[str, ...]) -> Substances:
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
            if words[at + longest : at + longest + 1] != (_FREE,):
                found |= {substance for length, substance in fits if length == longest}
            at += longest
        return frozenset(found)


def meant_by(hazards: Collection[Hazard]) -> Substances:
    """Return the substances that hazards are called by: isocyanate, chlorinated (solvent)."""
    words = tuple(hazard.value.replace("-", " ") for hazard in hazards)
    return frozenset(s for s in Substance if words and s.value.startswith(words))


def _turned(told: Iterable[tuple[Substance, Iterable[str]]]) -> Mapping[str, Substances]:
    """Return which substances each word stands for."""
    by_word: dict[str, Substances] = {}
    for substance, words in told:
        for word in words:
            by_word[word] = by_word.get(word, NOTHING) | {substance}
    return by_word


def _words(text: str) -> list[str]:
    return re.findall(r"[^\W_]+", text.casefold())


def _fits(phrase: Sequence[str], words: Sequence[str]) -> bool:
    return len(phrase) == len(words) and all(map(_means, phrase, words))


def _means(meant: str, word: str) -> bool:
    if meant.endswith("*"):
        return word.startswith(meant[:-1])
    return word in {meant, f"{meant}s"}
