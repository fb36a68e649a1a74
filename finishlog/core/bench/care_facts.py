"""What whoever gets a piece must know: what never to do to it, how to care for it, how to pack it.

Two lists that must not be mixed up: what comes true at a date (core.bench.milestones), and what
never does. The second depends on what is on the piece and what it is used for, never on its age.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime, timedelta
from enum import StrEnum

from msgspec import Struct

from finishlog.core.film.layers import Layer
from finishlog.core.finish.classes import FinishClass, Range
from finishlog.core.log.entries import Check, Found
from finishlog.core.shop.things import UsedFor
from finishlog.core.zone.state import ZoneState


class CareKind(StrEnum):
    """What a line of a care card is about."""

    # What one may do from a date on.
    USE = "use"
    NEVER = "never"
    CARE = "care"
    PACKING = "packing"
    TEST = "test"


class CareRule(Struct, frozen=True):
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

    def holds_on(self, of: FinishClass, used_for: UsedFor | None) -> bool:
        """Tell whether it is about this finish on a piece that is so used."""
        if self.used_for and used_for not in self.used_for:
            return False
        if not self.on and not self.film:
            return True
        return bool(self.on & {of.key, of.family}) or (self.film and of.builds_film)


class CareFigures(Struct, frozen=True):
    """The rules in the order of the card, and how long a piece for food or a child waits.

    `waits_d`: days after the last coat that advice runs over; the longer end is what counts.
    `names`: words in a name that say who will use a piece.
    """

    rules: tuple[CareRule, ...]
    waits_d: Range
    names: Mapping[UsedFor, Sequence[str]]

    def uses_of(self, name: str) -> tuple[UsedFor, ...]:
        """Tell by its name who will use a piece; empty where the name says nothing."""
        words = " ".join(re.findall(r"[^\W_]+", name.casefold()))
        return tuple(
            use
            for use, known in self.names.items()
            if any(re.search(rf"\b{re.escape(word)}s?\b", words) for word in known)
        )


def surface_of(layers: Sequence[Layer]) -> tuple[FinishClass, ...]:
    """Return what lies open to the world: from the top down to the first film that closes it.

    Wax over shellac is both; shellac under varnish is nobody's business any more.
    """
    open_to_it: list[FinishClass] = []
    for layer in reversed(layers):
        open_to_it.append(layer.of)
        if layer.of.builds_film and layer.of.topcoat:
            break
    return tuple({of.key: of for of in open_to_it}.values())


def rules_on(
    rules: Iterable[CareRule], layers: Sequence[Layer], used_for: UsedFor | None
) -> tuple[CareRule, ...]:
    """Choose the rules for one film, in the order of the card."""
    surface = surface_of(layers)
    return tuple(r for r in rules if any(r.holds_on(of, used_for) for of in surface))


def last_coat(states: Iterable[ZoneState]) -> datetime | None:
    """Return the latest moment of the last coat of the last part; None in the white."""
    return max((s.top.put_on for s in states if s.top), default=None)


def waits_until(states: Sequence[ZoneState], figures: CareFigures) -> datetime | None:
    """Return the end of the longest wait advised after the last coat; None in the white."""
    last = last_coat(states)
    return last + timedelta(days=figures.waits_d.high) if last else None


def smelt(states: Sequence[ZoneState]) -> Check | None:
    """Return the newest smell check since the last coat of the last part.

    A part that was not smelt says nothing of the others: every one with a film must have been.
    """
    last = last_coat(states)
    newest: list[Check] = []
    for state in (s for s in states if s.layers):
        checks = [c for c in state.checks if c.found in {Found.SMELLS, Found.NO_SMELL}]
        since = [c for c in checks if last and c.when.earliest >= last]
        if not since:
            return None
        newest.append(since[-1])
    bad = [c for c in newest if c.found is Found.SMELLS]
    return max(bad or newest, key=lambda c: c.when.order, default=None)
