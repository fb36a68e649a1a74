"""What a person looks for in the past: a wood, a product, a class, steps, a piece, or words."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from enum import StrEnum

from msgspec import Struct

from finishlog.core.air.psychrometrics import Air
from finishlog.core.log.entries import (
    AnyEntry,
    Check,
    Coat,
    Fault,
    Joined,
    Note,
    Photo,
    Review,
    Stripped,
    Work,
)
from finishlog.core.published.facts import Facts
from finishlog.core.published.find import find_called
from finishlog.core.published.species import face_wood
from finishlog.core.shop.names import find
from finishlog.core.shop.things import Part, Shop, ThingKind


class Sought(StrEnum):
    """As what a word was understood."""

    WOOD = "wood"
    PRODUCT = "product"
    CLASS = "class"
    STEPS = "steps"
    PIECE = "piece"
    MAKING = "how it was made"
    WORDS = "words"


class Story(Struct, frozen=True):
    """What reached some zones of one wood of a part."""

    part: Part
    species: str
    entries: tuple[AnyEntry, ...]
    # The air in which its coats went on, where that was read.
    airs: tuple[Air, ...] = ()


Fits = Callable[[Story], bool]


class Search(Struct, frozen=True):
    """One word as understood; a story fits when any of the meanings does."""

    word: str
    read_as: tuple[Sought, ...]
    meanings: tuple[Fits, ...]

    def fits(self, story: Story) -> bool:
        """Tell whether a story is about it."""
        return any(fits(story) for fits in self.meanings)


def search(word: str, shop: Shop, stories: Sequence[Story], facts: Facts) -> Search:
    """Understand one word; a wood on record or a whole product is only that, words come last."""
    found: Mapping[Sought, Fits | None] = {
        Sought.WOOD: _wood(word, stories, facts),
        Sought.PRODUCT: _product(word, shop),
        Sought.CLASS: _class(word, stories, facts),
        Sought.STEPS: _steps(word, stories),
        Sought.PIECE: _piece(word, stories),
    }
    known = {sought: fits for sought, fits in found.items() if fits is not None}
    whole = any(p.name.casefold() == word.casefold() for p in shop.products.values())
    for only in (Sought.WOOD, *([Sought.PRODUCT] if whole else [])):
        if only in known:
            known = {only: known[only]}
    made = _made(word, facts)
    known = known or ({Sought.MAKING: made} if made else {Sought.WORDS: _said(word)})
    return Search(word, tuple(known), tuple(known.values()))


def is_wood(word: str, facts: Facts) -> Callable[[str], bool]:
    """Return what tells whether a wood is meant by a word: "oak" is white oak and red oak too."""
    known = facts.species_named(word)
    names = {_plain(word)}
    if known:
        names |= {_plain(n) for n in (known.key, known.name, *known.aliases)}

    def is_meant(species: str) -> bool:
        for wood in (_plain(species), face_wood(species)):
            if wood in names or any(wood.endswith(f" {name}") for name in names):
                return True
        return False

    return is_meant


def _wood(word: str, stories: Iterable[Story], facts: Facts) -> Fits | None:
    is_meant = is_wood(word, facts)

    def fits(story: Story) -> bool:
        return is_meant(story.species)

    return fits if any(map(fits, stories)) else None


def _plain(wood: str) -> str:
    return " ".join(wood.casefold().replace("-", " ").replace(",", " ").split())


def _product(word: str, shop: Shop) -> Fits | None:
    ids = {p.id for p in find(word, shop.products.values(), shop.aliases, ThingKind.PRODUCT)}

    def fits(story: Story) -> bool:
        return any(isinstance(e, Coat) and e.product in ids for e in story.entries)

    return fits if ids else None


def _class(word: str, stories: Iterable[Story], facts: Facts) -> Fits | None:
    on_record = {e.figures.class_key for s in stories for e in s.entries if isinstance(e, Coat)}
    classes = [facts.finish_class(key) for key in sorted(on_record)]
    keys = set(find_called(word, classes))
    keys |= {c.key for c in classes if c.family == word.casefold()}

    def fits(story: Story) -> bool:
        return any(isinstance(e, Coat) and e.figures.class_key in keys for e in story.entries)

    return fits if keys else None


def _steps(word: str, stories: Iterable[Story]) -> Fits | None:
    def fits(story: Story) -> bool:
        return story.part.steps_name.casefold() == word.casefold()

    return fits if any(map(fits, stories)) else None


def _piece(word: str, stories: Iterable[Story]) -> Fits | None:
    low = word.casefold()

    def fits(story: Story) -> bool:
        part = story.part
        return low in {part.path.casefold(), part.name.casefold(), part.project_name.casefold()}

    return fits if any(map(fits, stories)) else None


# Solid or a sheet that shows a wood; coloured or coated before or after it was glued up; the air.
_WOOD_IS = re.compile(r"(solid|veneer(?:ed)?|sheet)(?: \w+)?")
_AFTER = re.compile(
    r"(?:(stained|dyed|coloured|colored|finished|coated) )?(before|after) (?:the )?"
    r"(?:assembly|glue up|gluing)"
)
# A figure that is a humidity by the word before it, or by its sign.
_DAMP = re.compile(
    r"(?:(?:rh|humidity|air) (?P<named>over|above|under|below) (?P<pct>\d+) ?(?:%|rh|% rh)?"
    r"|(?P<bare>over|above|under|below) (?P<with_sign>\d+) ?(?:%|rh|% rh))"
)
_OVER = frozenset({"over", "above"})
_ONLY_COLOUR = frozenset({"stained", "dyed", "coloured", "colored"})


def _made(word: str, facts: Facts) -> Fits | None:
    """Read how it was made: `solid panels`, `stained after assembly`, `rh over 60%`."""
    said = _plain(word)
    if found := _WOOD_IS.fullmatch(said):
        return _is_solid if found[1] == "solid" else _is_a_sheet
    if found := _AFTER.fullmatch(said):
        return _joined_after(found[2] == "before", found[1] in _ONLY_COLOUR, facts)
    if found := _DAMP.fullmatch(said):
        over = (found["named"] or found["bare"]) in _OVER
        pct = float(found["pct"] or found["with_sign"])
        return lambda story: any((air.humidity_pct > pct) is over for air in story.airs)
    return None


def _is_solid(story: Story) -> bool:
    return bool(story.species) and face_wood(story.species) == _plain(story.species)


def _is_a_sheet(story: Story) -> bool:
    return bool(story.species) and not _is_solid(story)


def _joined_after(coated_first: bool, only_colour: bool, facts: Facts) -> Fits:
    """Tell whether the first coat, or the first colour, went on before it was glued up, or after.

    What was never glued up here is neither.
    """

    def fits(story: Story) -> bool:
        coats = (e for e in story.entries if isinstance(e, Coat))
        mine = (
            c for c in coats if not only_colour or facts.finish_class(c.figures.class_key).is_colour
        )
        first = next(mine, None)
        joined = next((e for e in story.entries if isinstance(e, Joined)), None)
        if first is None or joined is None:
            return False
        return (first.when.order < joined.when.order) is coated_first

    return fits


def _said(word: str) -> Fits:
    low = word.casefold()

    def fits(story: Story) -> bool:
        return any(low in said.casefold() for e in story.entries for said in _sayings(e))

    return fits


def _sayings(entry: AnyEntry) -> tuple[str, ...]:
    """Return the words of an entry that a person may remember."""
    match entry:
        case Note() | Review():
            return (entry.text,)
        case Fault():
            return (entry.what.value, entry.place, entry.remedy)
        case Check():
            return (entry.found.value, entry.place, entry.note)
        case Work():
            return (entry.operation.value, entry.place, entry.note)
        case Coat() | Stripped() | Photo():
            return (entry.note,)
        case _:
            return ()
