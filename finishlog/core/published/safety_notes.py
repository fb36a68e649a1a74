"""Safety notes, and the figures for oily rags and respirators, as values.

They remind; the safety data sheet, local codes and licensed practice come first.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from itertools import chain, zip_longest

from finishlog.core.air.place import Lives
from finishlog.core.findings import Level
from finishlog.core.finish.classes import Limit, Published, Range
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.words import Filter


class SafetyNote(Published, frozen=True):
    """One caution about a hazard of a class, a substance, a wood or an act."""

    id: str
    applies_to: Hazard
    text: str
    source: str


class Before(Published, frozen=True):
    """What stands ready before a can with a hazard is opened, in a few words, and how it weighs."""

    hazard: Hazard
    text: str
    source: str
    level: Level = Level.NOTE


class Classes(Published, frozen=True):
    """Keys of classes for which something holds, and who says so."""

    classes: frozenset[str]
    source: str


class LimitFor(Limit, frozen=True):
    """A bound that holds for some classes, by their keys."""

    classes: frozenset[str]


class OilyWasteCan(Published, frozen=True):
    """Until when a listed oily-waste can holds rags."""

    emptied_by: str
    source: str


class RagsFigures(Published, frozen=True):
    """The figures that decide when oily rags are overdue or may be called stiff.

    No figure here closes an item: only a logged deed does. `overdue_after_h`: hours after the
    last use, or on leaving, whichever is sooner, in air up to `overdue_reference_c` (°C); halved
    for each `overdue_halves_per_c` above, none from `overdue_at_once_from_c` on. `stiff_after_h`:
    hours flat and outdoors before stiff counts, `stiff_after_gel_h` those of gels; hours
    below `stiff_counts_from_c` (°C) do not count, and what is `never_stiff` never does.
    `film_counts_until_d`: days during which dust sanded off a film counts as rags.
    `ask_under_water_d`: days after which rags under water are asked for.
    """

    overdue_after_h: Limit
    overdue_halves_per_c: Limit
    overdue_reference_c: Limit
    overdue_at_once_from_c: Limit
    stiff_after_h: Limit
    stiff_counts_from_c: Limit
    stiff_after_gel_h: LimitFor
    never_stiff: Classes
    film_counts_until_d: Limit
    ask_under_water_d: Limit
    can: OilyWasteCan


class StaysOut(Published, frozen=True):
    """Who stays out of the air of a drying film, and where; whom to ask.

    Days behind the last coat, on the film's clock: `advised_d` is how far advice runs, and
    `look_after_d` the earliest at which it is worth to come and smell. No day is called safe.
    """

    who: str
    out: str
    asks: str
    look_after_d: float
    advised_d: Range
    source: str

    def __post_init__(self) -> None:
        if not self.advised_d.low <= self.look_after_d <= self.advised_d.high:
            raise ValueError(f"{self.who}: {self.look_after_d} d is not within what is advised")


class PeopleFigures(Published, frozen=True):
    """Who stays out, by who lives there; `others`: whom nobody told of.

    `shut_factor`: how many times the days count where no exhaust was measured.
    """

    lives: Mapping[Lives, StaysOut]
    others: StaysOut
    shut_factor: Limit


class FilterKind(Published, frozen=True):
    """One kind: `name` in words, `made_for`: hazards that it is for, `never`: that pass it.

    `cartridge`: it fills with what it holds, from the day on which its seal is broken.
    """

    name: str
    made_for: frozenset[Hazard]
    source: str
    never: frozenset[Hazard] = frozenset()
    cartridge: bool = False


class RespiratorFigures(Published, frozen=True):
    """The kinds, and after how many days open a cartridge is named before the work.

    `named_after_d`: it is asked whether a new one is due; `old_after_d`: it is a caution. Neither
    says that one which is younger holds.
    """

    kinds: Mapping[Filter, FilterKind]
    named_after_d: Limit
    old_after_d: Limit
    # How it is worn, whichever it is.
    wear: str
    wear_source: str

    def is_held(self, hazard: Hazard, there: Iterable[Filter | None]) -> bool:
        """Tell whether what is there is made for a hazard; never that it is enough."""
        return not frozenset(there).isdisjoint(self.made_for(hazard))

    def made_for(self, hazard: Hazard) -> tuple[Filter, ...]:
        """Return the kinds that are made for a hazard, the plainest first."""
        return tuple(f for f, kind in self.kinds.items() if hazard in kind.made_for)


def notes_for(
    notes: Sequence[SafetyNote],
    hazards: Iterable[Hazard],
    at_most: int = 3,
    lately: Collection[str] = (),
) -> tuple[SafetyNote, ...]:
    """Choose the notes to show for `hazards`: the first of each, then the second.

    `notes` stand in the order of danger, and so do those chosen. The most dangerous always comes;
    after it those said `lately` (by id) give way to those that were not, so that in time each has
    its turn. At most `at_most` notes, and no hazard twice while another has one to say.
    """
    wanted = frozenset(hazards)
    by_hazard: dict[Hazard, list[SafetyNote]] = {}
    for note in notes:
        if note.applies_to in wanted:
            by_hazard.setdefault(note.applies_to, []).append(note)
    worst = next(iter(by_hazard.values()), [])[:1]
    new = [[n for n in of if n in worst or n.id not in lately] for of in by_hazard.values()]
    old = [[n for n in of if n not in worst and n.id in lately] for of in by_hazard.values()]
    chosen = [*_in_turn(new), *_in_turn(old)][:at_most]
    return tuple(note for note in notes if note in chosen)


def _in_turn(by_hazard: Iterable[Sequence[SafetyNote]]) -> list[SafetyNote]:
    """Return the first of each, then the second."""
    return [n for n in chain.from_iterable(zip_longest(*by_hazard)) if n is not None]
