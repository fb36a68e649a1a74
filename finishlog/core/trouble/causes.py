"""Likely causes of trouble, in the order a finisher looks, each held against what the log shows.

What the log speaks against is left out; what nobody logged is named, since it stays possible.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.core.film.faults import StandingFault
from finishlog.core.log.words import FaultKind
from finishlog.core.published.facts import Facts
from finishlog.core.published.fault_kinds import Cause, Evidence
from finishlog.core.shop.things import Log
from finishlog.core.trouble.evidence import LOOKS, Scene, coated_joints
from finishlog.core.zone.state import ZoneState


class SeenCause(Struct, frozen=True):
    """A cause in words. `spoken_for`: the log shows it; else it only cannot be ruled out."""

    words: str
    spoken_for: bool


def causes(
    fault: StandingFault, state: ZoneState, log: Log, zones: Sequence[ZoneState], facts: Facts
) -> tuple[SeenCause, ...]:
    """Return the likely causes of a fault on a zone: first what the log shows, in their order."""
    at = next((n for n, x in enumerate(state.layers) if x.coat is fault.coat), None)
    if at is None:
        return _of_no_film(fault.known.causes, state, zones)
    scene = Scene(
        state.layers[at],
        state.layers[:at],
        fault.fault.when.latest,
        state,
        log,
        zones,
        facts,
        from_below=fault.known.kind is FaultKind.WRINKLE,
    )
    return _held_against_the_log(fault.known.causes, scene)


def _of_no_film(
    likely: Sequence[Cause], state: ZoneState, zones: Sequence[ZoneState]
) -> tuple[SeenCause, ...]:
    """Name the causes of what is no film's fault; of a joint the log shows what is on its faces."""
    coated = coated_joints(state, zones)
    found = (
        SeenCause(f"{c.words}: {coated}", spoken_for=True)
        if coated and c.evidence is Evidence.GLUE_FACE_COATED
        else SeenCause(c.words, spoken_for=False)
        for c in likely
    )
    return tuple(sorted(found, key=lambda c: not c.spoken_for))


def causes_of_a_stall(
    state: ZoneState, log: Log, zones: Sequence[ZoneState], facts: Facts
) -> tuple[SeenCause, ...]:
    """Return why the newest film may stay soft, in the same order."""
    top = state.top
    if top is None:
        return ()
    until = top.checks[-1].when.latest if top.checks else top.put_on
    scene = Scene(top, state.layers[:-1], until, state, log, zones, facts)
    return _held_against_the_log(facts.stall_causes, scene)


def _held_against_the_log(likely: Sequence[Cause], scene: Scene) -> tuple[SeenCause, ...]:
    found = (_held_against(cause, scene) for cause in likely)
    return tuple(sorted((c for c in found if c), key=lambda c: not c.spoken_for))


def _held_against(cause: Cause, scene: Scene) -> SeenCause | None:
    look = LOOKS.get(cause.evidence)
    if look is None:
        return SeenCause(cause.words, spoken_for=False)
    shows, missing = look(scene)
    if shows is None:
        return SeenCause(f"{cause.words} (not logged: {missing})", spoken_for=False)
    return SeenCause(f"{cause.words}: {shows}", spoken_for=True) if shows else None
