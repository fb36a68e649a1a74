"""What goes on a care card, and what is said of faces that carry unequal coats."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import timedelta
from enum import StrEnum

from finishlog.core.finish.classes import FinishClass, Limit, Published, Range
from finishlog.core.finish.hazard import Hazard


class UsedFor(StrEnum):
    """Who will use a piece, where that decides how hard and how free of smell it must be."""

    FOOD = "food"
    CHILD = "child"


class CareKind(StrEnum):
    """What a line of a care card is about."""

    # What one may do from a date on.
    USE = "use"
    NEVER = "never"
    CARE = "care"
    PACKING = "packing"
    TEST = "test"


class CareRule(Published, frozen=True):
    """One thing to do or never to do, for what it holds, and who says so.

    `on` names families or keys of classes, `film` every finish that builds a film; with neither it
    holds for all. `used_for` empty: whatever the piece is used for.
    """

    kind: CareKind
    text: str
    source: str
    on: frozenset[str] = frozenset()
    film: bool = False
    used_for: frozenset[UsedFor] = frozenset()
    # Only where something of this went on, wherever in the film.
    hazards: frozenset[Hazard] = frozenset()

    def holds_on(
        self, of: FinishClass, used_for: UsedFor | None, there: frozenset[Hazard] = frozenset()
    ) -> bool:
        """Tell whether it is about this finish so used; `there`: what is in any layer of it."""
        if self.hazards and not self.hazards & there:
            return False
        if self.used_for and used_for not in self.used_for:
            return False
        if not self.on and not self.film:
            return True
        return bool(self.on & {of.key, of.family}) or (self.film and of.builds_film)


class CareFigures(Published, frozen=True):
    """The rules in the order of the card, and how long a piece for food or a child waits.

    `waits_d`: days after the last coat that advice runs over; the longer end is what counts.
    `names`: words in a name that say who will use a piece.
    """

    rules: tuple[CareRule, ...]
    waits_d: Range
    names: Mapping[UsedFor, tuple[str, ...]]

    def wait_of(self, of: FinishClass) -> timedelta:
        """Return how long after its last coat food and a child wait: of what dries, the longest."""
        return timedelta(days=self.waits_d.high if of.dries else self.waits_d.low)

    def uses_of(self, name: str) -> tuple[UsedFor, ...]:
        """Tell by its name who will use a piece; empty where the name says nothing."""
        words = " ".join(re.findall(r"[^\W_]+", name.casefold()))
        return tuple(
            use
            for use, known in self.names.items()
            if any(re.search(rf"\b{re.escape(word)}s?\b", words) for word in known)
        )


class Said(Published, frozen=True):
    """A sentence, and who says so."""

    text: str
    source: str


class BalanceFigures(Published, frozen=True):
    """How long one face may be ahead (hours), why it may not, and who holds otherwise."""

    ahead_h: Limit
    alike: Said
    dissent: Said
