"""Safety notes and the figures for oily rags, as values.

They remind; the safety data sheet, local codes and licensed practice come first.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import chain, zip_longest

from finishlog.core.finishes import Limit


@dataclass(frozen=True, slots=True)
class SafetyNote:
    """One caution. `applies_to` is a hazard of a class (`hazards`) or of an act."""

    id: str
    applies_to: str
    text: str
    source: str


@dataclass(frozen=True, slots=True)
class RagsFigures:
    """The figures that decide when oily rags are overdue or may be called stiff.

    No figure here closes an item: only a logged deed does. `overdue_after_h`: hours after the
    last use, or on leaving, whichever is sooner, in air up to `overdue_reference_c` (°C); halved
    for each `overdue_halves_per_c` above, none from `overdue_at_once_from_c` on. `stiff_after_h`:
    hours flat and outdoors before stiff counts, `stiff_after_gel_h` those of the classes in
    `gels`; hours below `stiff_counts_from_c` (°C) do not count, and the classes in `never_stiff`
    never do. `film_counts_until_d`: days during which dust sanded off a film counts as rags.
    `ask_under_water_d`: days after which rags under water are asked for. `can_emptied_by`: until
    when a listed oily-waste can holds them.
    """

    overdue_after_h: Limit
    overdue_halves_per_c: Limit
    overdue_reference_c: Limit
    overdue_at_once_from_c: Limit
    stiff_after_h: Limit
    stiff_counts_from_c: Limit
    stiff_after_gel_h: Limit
    gels: frozenset[str]
    never_stiff: frozenset[str]
    film_counts_until_d: Limit
    ask_under_water_d: Limit
    can_emptied_by: str
    can_source: str


def notes_for(
    notes: Sequence[SafetyNote], hazards: Iterable[str], at_most: int = 3
) -> tuple[SafetyNote, ...]:
    """Choose the notes to show for `hazards`, in their order: the first of each, then the second.

    So no hazard goes unmentioned while another is mentioned twice. At most `at_most` notes.
    """
    by_hazard = [
        [note for note in notes if note.applies_to == hazard] for hazard in dict.fromkeys(hazards)
    ]
    in_turn = chain.from_iterable(zip_longest(*by_hazard))
    return tuple(note for note in in_turn if note is not None)[:at_most]
