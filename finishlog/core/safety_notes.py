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
    coat, or on leaving, whichever is sooner. `stiff_after_h`: hours flat and outdoors before
    stiff counts, `stiff_after_thick_h` those of the classes in `thick`. `film_counts_until_d`:
    days during which dust sanded off a film counts as rags. `can_emptied_by`: until when a listed
    oily-waste can holds them.
    """

    overdue_after_h: Limit
    stiff_after_h: Limit
    stiff_after_thick_h: Limit
    thick: frozenset[str]
    film_counts_until_d: Limit
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
