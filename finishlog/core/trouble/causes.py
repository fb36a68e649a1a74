"""Likely causes of trouble, held against the log and against sound films beside it.

First what the log shows here and not where all is well; then what it shows where nothing can be
compared; then what nobody logged, or no log can show; last what the sound ones share. Struck out
is only what evidence that can see it speaks against.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import timedelta
from enum import IntEnum

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.film.faults import StandingFault
from finishlog.core.findings import Finding, In, also, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.entries import Check
from finishlog.core.log.words import FaultKind, Found
from finishlog.core.published.facts import Facts
from finishlog.core.published.fault_kinds import Cause, Evidence
from finishlog.core.rules.near.joint import cold_while_it_set
from finishlog.core.shop.things import Log
from finishlog.core.trouble.controls import (
    alike_in_wood,
    differences,
    is_tried,
    name_of,
    with_sound_films,
)
from finishlog.core.trouble.evidence import LOOKS
from finishlog.core.trouble.in_the_film import coated_joints
from finishlog.core.trouble.scene import Missing, Scene
from finishlog.core.zone.state import ZoneState

# A check that finds what is a fault in other words.
_AS_FAULT = {Found.FLAKES: FaultKind.PEEL, Found.CUPPED: FaultKind.CUPPED}


# Our own rule: by so much more a figure tells two films apart. These count from no nothing.
_CLEARLY = 1.5
_ON_A_SCALE = frozenset({In.CELSIUS, In.PCT})


_MERELY_ANOTHER = frozenset({Evidence.OTHER_CAN, Evidence.OTHER_GRIT})


class Stands(IntEnum):
    """How a cause stands, the likeliest first."""

    APART = 0
    SHOWN = 1
    OPEN = 2
    SHARED = 3


class Suspect(Struct, frozen=True):
    """One cause: how it stands, what the log shows, what is missing, where all is well with it."""

    cause: Cause
    stands: Stands
    shows: Finding | None = None
    missing: Missing | None = None
    sound: str = ""

    @property
    def sorts(self) -> tuple[Stands, bool, bool, bool]:
        """What it is sorted by: of those that the log shows first what no time mends.

        What is only another thing than where it is sound, and air that is within the limits of
        the class, come after what is known to do harm.
        """
        shown = self.is_shown
        merely = self.cause.evidence in _MERELY_ANOTHER
        mild = shown and self.shows is not None and _in_limits(self.shows)
        return self.stands, shown and merely, mild, shown and self.cause.time_helps

    @property
    def is_shown(self) -> bool:
        """Tell whether the log shows it, and not where all is well too."""
        return self.stands in {Stands.APART, Stands.SHOWN}


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
        at, kind, until = len(state.layers) - 1 if state.layers else None, shown, of.when.latest
    if at is None:
        found = _of_no_film(likely, state, zones, facts) if isinstance(of, StandingFault) else ()
        return found, ()
    film, below = state.layers[at], state.layers[:at]
    scene = with_sound_films(Scene(film, below, until, state, log, zones, facts, kind))
    held = (_suspect(cause, scene) for cause in likely)
    found = tuple(sorted((each for each in held if each), key=lambda each: each.sorts))
    return found, tuple(differences(scene))


def asked_first(of: Sequence[Suspect]) -> tuple[Finding, ...]:
    """Return the one question that would tell most where the log shows no cause.

    What most of the causes lack; where they lack nothing that a log holds, the first of them.
    """
    if any(each.is_shown for each in of) or not of:
        return ()
    left = [each for each in of if each.stands is Stands.OPEN] or of
    lacks = [each.missing for each in left if each.missing]
    if not lacks:
        first = left[0].cause
        return (finding("ask-first", source=first.source, cause=first.words),)
    most = max(lacks, key=lacks.count)
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
    return replace(found, because_of=of.shows, acts=of.shows.acts if of.shows else ())


def _of_no_film(
    likely: Sequence[Cause], state: ZoneState, zones: Sequence[ZoneState], facts: Facts
) -> tuple[Suspect, ...]:
    """Hold causes against a joint: what is on its faces, and the cold that it set in itself."""
    coated, met = coated_joints(state, zones), cold_while_it_set(state, facts)
    shows: dict[Evidence, Finding | None] = {
        Evidence.GLUE_FACE_COATED: finding("joint-coated", where=coated) if coated else None,
        Evidence.COLD: met and finding("shows-cold", measured=met.measured, wanted=met.wanted),
    }
    found = (
        Suspect(cause, Stands.SHOWN, shown)
        if (shown := shows.get(cause.evidence))
        else Suspect(cause, Stands.OPEN)
        for cause in likely
    )
    return tuple(sorted(found, key=lambda each: each.stands))


def _suspect(cause: Cause, scene: Scene) -> Suspect | None:
    look = LOOKS.get(cause.evidence)
    if look is None:
        return Suspect(cause, Stands.OPEN)
    shows = look(scene)
    if shows is None:
        return None
    if isinstance(shows, Missing):
        sound = _same_there(shows, scene)
        stands = Stands.OPEN if sound is None else Stands.SHARED
        return Suspect(cause, stands, missing=shows, sound=name_of(sound) if sound else "")
    named = shows.value("sound")
    if isinstance(named, str):
        return Suspect(cause, Stands.APART, shows, sound=named)
    without: list[Scene] = []
    for other in scene.sound:
        if cause.evidence is Evidence.OIL_BELOW and not alike_in_wood(scene, other):
            continue
        there = look(replace(other, sound=()))
        if isinstance(there, Finding) and not _is_worse(shows, there):
            # What should never have been done may show there next.
            if not _in_limits(shows) and not is_tried(other):
                continue
            return Suspect(cause, Stands.SHARED, shows, sound=name_of(other))
        if there is None or isinstance(there, Finding):
            without.append(other)
    if without:
        return Suspect(cause, Stands.APART, shows, sound=name_of(without[0]))
    return Suspect(cause, Stands.SHOWN, shows)


# Of damp only what is over no limit: it wants nothing.
_OVER_A_LIMIT = frozenset({"shows-damp"})
_MERELY_SLOW = frozenset({"shows-slow-cold", "shows-damp"})


def _in_limits(shown: Finding) -> bool:
    """Tell whether it is air that only makes a film slow."""
    label = shown.wanted if shown.rule in _OVER_A_LIMIT else None
    return shown.rule in _MERELY_SLOW and label is None


# Our own rule: what went on within it in one room met one air.
_ONE_AIR = timedelta(hours=1)
_OF_A_CAN = frozenset({Missing.CAN, Missing.SAME_CAN})


def _same_there(missing: Missing, scene: Scene) -> Scene | None:
    """Find a sound film that had the same, though nobody logged what that was.

    One act took from one can; what went on together in one room met one air.
    """
    coat, legs = scene.layer.coat, scene.layer.air.legs
    for other in scene.sound:
        there = other.layer.coat
        together = abs(there.when.earliest - coat.when.earliest) <= _ONE_AIR
        in_one_air = together and [leg.room.name for leg in other.layer.air.legs] == [
            leg.room.name for leg in legs
        ]
        if (missing is Missing.AIR and in_one_air) or (
            missing in _OF_A_CAN and there.act == coat.act
        ):
            return other
    return None


def _is_worse(here: Finding, there: Finding) -> bool:
    """Tell whether what is measured here is clearly further from what is wanted than there.

    By half as far again; of what is counted from nothing up, also by half as little or as much.
    """
    if here.measured is None or there.measured is None or here.wanted is None:
        return False
    one, other, wanted = here.measured.value, there.measured.value, here.wanted.value
    if abs(one - wanted) > _CLEARLY * abs(other - (there.wanted or here.wanted).value):
        return True
    if here.measured.unit in _ON_A_SCALE:
        return False
    return one * _CLEARLY < other if one < wanted else one > _CLEARLY * other
