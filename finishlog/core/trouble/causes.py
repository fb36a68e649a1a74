"""Likely causes of trouble, held against the log and against sound films beside it.

First what the log shows here and not where all is well; then what it shows where nothing can be
compared; then what nobody logged, or no log can show; last what the sound ones share. Struck out
is only what evidence that can see it speaks against.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.film.faults import StandingFault
from finishlog.core.findings import Finding, also, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.entries import Check
from finishlog.core.log.words import FaultKind, Found
from finishlog.core.published.facts import Facts
from finishlog.core.published.fault_kinds import Cause, Evidence
from finishlog.core.shop.things import Log
from finishlog.core.trouble.controls import (
    alike_in_wood,
    differences,
    is_tried,
    lower_scenes,
    name_of,
    with_sound_films,
)
from finishlog.core.trouble.evidence import LOOKS
from finishlog.core.trouble.in_the_film import is_shut_off
from finishlog.core.trouble.scene import Missing, Scene
from finishlog.core.trouble.suspect import Stands, Suspect, in_limits, is_worse
from finishlog.core.trouble.without_film import of_no_film
from finishlog.core.zone.state import ZoneState

# A check that finds what is a fault in other words.
_AS_FAULT = {
    Found.FLAKES: FaultKind.PEEL,
    Found.CUPPED: FaultKind.CUPPED,
    Found.GLUE: FaultKind.GLUE_SPOT,
    Found.SCRATCHES: FaultKind.SCRATCHES,
    Found.SNIPE: FaultKind.SNIPE,
}
# What a sample on a scrap of the same wood shares with the piece: nothing that lies below, and no
# work by hand.
_OF_A_SAMPLE = frozenset(
    {
        Evidence.OLD_CONTAINER,
        Evidence.DOUBTFUL_CAN,
        Evidence.OTHER_CAN,
        Evidence.ADDED,
        Evidence.OILY_WOOD,
        Evidence.RESINOUS_WOOD,
        Evidence.WET_WOOD,
        Evidence.COLD,
        Evidence.HUMID,
        Evidence.UNSEEN,
    }
)


def looked_into(
    of: StandingFault | Check, state: ZoneState, log: Log, zones: Sequence[ZoneState], facts: Facts
) -> tuple[tuple[Suspect, ...], tuple[Finding, ...]]:
    """Return the likely causes of a fault, or of a failed check, and what stands apart.

    The likeliest cause first; apart: in what the film differs from the sound one most like it.
    """
    kind: FaultKind | None
    if isinstance(of, StandingFault):
        likely, kind = of.known.causes, of.known.kind
        at = next((n for n, x in enumerate(state.layers) if x.coat is of.coat), None)
        until = of.fault.when.latest
    else:
        # As of the fault that it shows, or why it stays soft.
        shown = _AS_FAULT.get(of.found)
        likely = facts.stall_causes if shown is None else facts.fault_known(shown).causes
        if of.found is Found.SAMPLE_SOFT:
            likely = tuple(cause for cause in likely if cause.evidence in _OF_A_SAMPLE)
        at, kind, until = len(state.layers) - 1 if state.layers else None, shown, of.when.latest
    if at is None or kind is FaultKind.OPEN_JOINT:
        return of_no_film(likely, state, until, zones, facts), ()
    film, below = state.layers[at], state.layers[:at]
    seen = of.found if isinstance(of, Check) else None
    scene = with_sound_films(Scene(film, below, until, state, log, zones, facts, kind, seen))
    lower = {each: tuple(lower_scenes(scene, each)) for each in {c.lower for c in likely}}
    held = (_wherever(cause, scene, lower[cause.lower]) for cause in likely)
    found = sorted((each for each in held if each), key=lambda each: each.sorts)
    return tuple(_once(found)), tuple(differences(scene))


def _once(found: Iterable[Suspect]) -> Iterator[Suspect]:
    """What the log shows is one cause's, the first's; another would ask for another remedy."""
    seen: list[Finding] = []
    for each in found:
        if each.shows is not None and each.shows in seen:
            continue
        seen += [each.shows] if each.shows is not None else []
        yield each


def asked_first(of: Sequence[Suspect]) -> tuple[Finding, ...]:
    """Return the one question that would tell most where the log shows no cause.

    What most of the causes lack; where none is lacked twice what the first of them lacks, or that
    itself, if no log holds what would tell.
    """
    if any(each.is_shown for each in of) or not of:
        return ()
    left = [each for each in of if each.stands is Stands.OPEN] or of
    lacks = [each.missing for each in left if each.missing]
    most = max(lacks, key=lacks.count, default=None)
    if most is None or lacks.count(most) == 1:
        first, most = left[0].cause, left[0].missing
        if most is None:
            return (finding("ask-first", source=first.source, cause=first.words),)
    return (finding("ask-first", source=COMMON_PRACTICE, missing=most.value),)


def as_found(of: Iterable[Suspect]) -> tuple[Finding, ...]:
    """Return a finding for each cause: the published words, and what the log says to them."""
    return tuple(map(_finding, of))


def _finding(of: Suspect) -> Finding:
    cause = of.cause
    match of.stands:
        case Stands.APART:
            found = finding("cause-apart", source=cause.source, sound=of.sound)
        case Stands.SHOWN:
            found = finding("cause-shown", source=cause.source)
        case Stands.OPEN:
            missing = of.missing.value if of.missing else None
            found = finding("cause-open", source=cause.source, missing=missing)
        case Stands.SHARED if of.missing:
            missing = of.missing.value
            found = finding("cause-same", source=cause.source, sound=of.sound, missing=missing)
        case Stands.SHARED:
            found = finding("cause-shared", source=cause.source, sound=of.sound)
    helps = "time" if cause.time_helps else None
    found = also(found, cause=cause.words, then=cause.then or None, helps=helps)
    found = also(found, lower=of.lower or None)
    return replace(found, because_of=of.shows, acts=of.shows.acts if of.shows else ())


def _wherever(cause: Cause, scene: Scene, lower: Sequence[Scene]) -> Suspect | None:
    """Hold a cause against the film, and against what it may sit in below, which asks nobody.

    Air that only made a coat below slow was over before the next.
    """
    found = [each for each in (_suspect(cause, scene),) if each]
    for other in lower:
        below = _suspect(cause, other)
        if below and below.shows and below.is_shown and not in_limits(below.shows):
            found.append(replace(below, lower=other.layer.coat.product_name))
    return min(found, key=lambda each: each.sorts, default=None)


def _suspect(cause: Cause, scene: Scene) -> Suspect | None:
    look = LOOKS.get(cause.evidence)
    if look is None:
        return Suspect(cause, Stands.OPEN)
    shows = look(scene)
    if shows is None:
        return None
    if isinstance(shows, Missing):
        if cause.seldom:
            return None
        sound = _same_there(cause.evidence, shows, scene)
        stands = Stands.OPEN if sound is None else Stands.SHARED
        # Sun may fall on one of two; on the one alone it seldom does.
        less = shows is Missing.SUN and any(_in_one_air(scene, each) for each in scene.sound)
        beside = name_of(sound) if sound else ""
        return Suspect(cause, stands, missing=shows, sound=beside, less=less)
    if cause.seldom and shows.value("alike"):
        return None
    named = shows.value("sound")
    if isinstance(named, str):
        return Suspect(cause, Stands.APART, shows, sound=named)
    without: list[Scene] = []
    for other in scene.sound:
        of_oil = cause.evidence is Evidence.OIL_BELOW
        if of_oil and not alike_in_wood(scene, other):
            continue
        kept_off = of_oil and is_shut_off(other) and not is_shut_off(scene)
        there = None if kept_off else look(replace(other, sound=()))
        if isinstance(there, Finding) and not is_worse(shows, there):
            # What should never have been done may show there next.
            if not in_limits(shows) and not is_tried(other):
                continue
            return Suspect(cause, Stands.SHARED, shows, sound=name_of(other))
        if there is None or isinstance(there, Finding):
            without.append(other)
    if without:
        return Suspect(cause, Stands.APART, shows, sound=name_of(without[0]))
    return Suspect(cause, Stands.SHOWN, shows)


# Our own rule: what went on within it in one room met one air.
_ONE_AIR = timedelta(hours=1)
_OF_A_CAN = frozenset({Missing.CAN, Missing.SAME_CAN})


def _same_there(evidence: Evidence, missing: Missing, scene: Scene) -> Scene | None:
    """Find a sound film that had the same, though nobody logged what that was.

    One act took from one can; what went on together in one room met what was in it.
    """
    coat = scene.layer.coat
    for other in scene.sound:
        there = other.layer.coat
        in_one_air = _in_one_air(scene, other)
        of_the_room = missing is Missing.AIR or evidence is Evidence.DUSTY
        if (of_the_room and in_one_air) or (missing in _OF_A_CAN and there.act == coat.act):
            return other
    return None


def _in_one_air(scene: Scene, other: Scene) -> bool:
    one, two = scene.layer, other.layer
    together = abs(one.coat.when.earliest - two.coat.when.earliest) <= _ONE_AIR
    rooms, theirs = ([leg.room.name for leg in layer.air.legs] for layer in (one, two))
    return together and rooms == theirs
