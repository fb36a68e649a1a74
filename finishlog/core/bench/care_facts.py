"""What whoever gets a piece must know: what never to do to it, how to care for it, how to pack it.

Two lists that must not be mixed up: what comes true at a date (core.bench.milestones), and what
never does. The second depends on what is on the piece and what it is used for, never on its age.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime

from finishlog.core.film.layers import Layer
from finishlog.core.finish.classes import FinishClass
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.entries import Check
from finishlog.core.log.words import Found
from finishlog.core.published.care import CareFigures, CareRule, UsedFor
from finishlog.core.zone.state import ZoneState


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
    rules: Iterable[CareRule],
    layers: Sequence[Layer],
    used_for: UsedFor | None,
    there: frozenset[Hazard] = frozenset(),
) -> tuple[CareRule, ...]:
    """Choose the rules for one film, in the order of the card; `there`: what is in any layer."""
    surface = surface_of(layers)
    return tuple(r for r in rules if any(r.holds_on(of, used_for, there) for of in surface))


def last_coat(states: Iterable[ZoneState]) -> datetime | None:
    """Return the latest moment of the last coat of the last part; None in the white."""
    return max((s.top.put_on for s in states if s.top), default=None)


def waits_until(states: Sequence[ZoneState], figures: CareFigures) -> datetime | None:
    """Return the end of the longest wait advised after the last coat; None in the white."""
    tops = (s.top for s in states if s.top)
    return max((top.put_on + figures.wait_of(top.of) for top in tops), default=None)


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
