"""Why a joint opened, or bare wood was found wanting: causes without a film to look at."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.met import air_met
from finishlog.core.findings import Finding, finding, hours, pct
from finishlog.core.log.entries import Joined, Work
from finishlog.core.log.words import FaultKind, Operation
from finishlog.core.published.facts import Facts
from finishlog.core.published.fault_kinds import Cause, Evidence
from finishlog.core.published.moisture import settles_pct
from finishlog.core.rules.near.joint import air_while_it_set, cold_while_it_set, held_by_glue
from finishlog.core.shop.things import FaceKind
from finishlog.core.trouble.controls import label_of
from finishlog.core.trouble.in_the_film import coated_joints
from finishlog.core.trouble.in_the_wood import wet_by
from finishlog.core.trouble.preparation import (
    Prepared,
    began_finer,
    grit_left_out,
    left_by_glue,
    not_sanded,
    other_paper,
    prepared,
    sound_wood,
)
from finishlog.core.trouble.scene import Look, Missing, is_read_through, read_of
from finishlog.core.trouble.suspect import Stands, Suspect, in_limits, is_worse
from finishlog.core.zone.state import ZoneState

_OF_THE_WOOD = frozenset(
    {
        Evidence.GLUED_UP,
        Evidence.GRIT_LEFT_OUT,
        Evidence.NOT_SANDED,
        Evidence.OTHER_GRIT,
        Evidence.BEGAN_FINER,
    }
)
# What pulls at a joint.
_LOADS = frozenset(
    {
        Operation.USE,
        Operation.STACK,
        Operation.PACK,
        Operation.SHAPE,
        Operation.HARDWARE,
        Operation.LEVEL,
    }
)
# What is wrong with a joint that holds, too. An oily wood may be glued.
_NEVER_RIGHT = frozenset(
    {Evidence.GLUE_FACE_COATED, Evidence.COLD, Evidence.WET_WOOD, Evidence.HANDLED_EARLY}
)
_HOUR = timedelta(hours=1)


class _At(Struct, frozen=True):
    """A zone as it was looked at, in its shop."""

    state: ZoneState
    until: datetime
    zones: Sequence[ZoneState]
    facts: Facts


def of_no_film(
    likely: Sequence[Cause],
    state: ZoneState,
    until: datetime,
    zones: Sequence[ZoneState],
    facts: Facts,
) -> tuple[Suspect, ...]:
    """Hold causes against a joint, and against bare wood beside wood that was found clean."""
    at = _At(state, until, zones, facts)
    held = (
        (_on_the_wood if cause.evidence in _OF_THE_WOOD else _at_the_joint)(cause, at)
        for cause in likely
    )
    return tuple(sorted(filter(None, held), key=lambda each: each.sorts))


def _on_the_wood(cause: Cause, at: _At) -> Suspect | None:
    """Look at what was done to the wood, and to wood beside it that was found clean."""
    sound = [(prepared(each, at.until), label_of(each)) for each in sound_wood(at.state, at.zones)]
    shows = _of_the_wood(cause.evidence, prepared(at.state, at.until), sound)
    if shows is None or (isinstance(shows, Missing) and cause.seldom):
        return None
    if isinstance(shows, Missing):
        return Suspect(cause, Stands.OPEN, missing=shows)
    if isinstance(shows.value("sound"), str):
        return Suspect(cause, Stands.SHOWN, shows)
    for wood, name in sound:
        there = _of_the_wood(cause.evidence, wood, [])
        if isinstance(there, Finding) and not is_worse(shows, there):
            return Suspect(cause, Stands.SHARED, shows, sound=name)
    return Suspect(cause, Stands.SHOWN, shows)


def _of_the_wood(evidence: Evidence, mine: Prepared, sound: Sequence[tuple[Prepared, str]]) -> Look:
    theirs, names = [wood for wood, _ in sound], [name for _, name in sound]
    match evidence:
        case Evidence.GLUED_UP:
            return left_by_glue(mine)
        case Evidence.GRIT_LEFT_OUT:
            return grit_left_out(mine, theirs)
        case Evidence.NOT_SANDED:
            return not_sanded(mine, theirs)
        case Evidence.OTHER_GRIT:
            return other_paper(mine, theirs, names)
        case Evidence.BEGAN_FINER:
            return began_finer(mine, theirs, names)
    return None


def _at_the_joint(cause: Cause, at: _At) -> Suspect | None:
    """Look at a joint, and at joints that hold beside it."""
    shows = _of_a_joint(cause.evidence, at)
    if shows is None:
        return None
    if isinstance(shows, Missing):
        missing = None if shows is Missing.UNSEEN else shows
        return None if cause.seldom else Suspect(cause, Stands.OPEN, missing=missing)
    without = ""
    for other in _that_hold(at):
        there = _of_a_joint(cause.evidence, other)
        if isinstance(there, Finding) and not is_worse(shows, there):
            # No joint is tried: what should never have been done may open this one next.
            if cause.evidence in _NEVER_RIGHT and not in_limits(shows):
                continue
            return Suspect(cause, Stands.SHARED, shows, sound=label_of(other.state))
        without = without or ("" if isinstance(there, Missing) else label_of(other.state))
    return Suspect(cause, Stands.APART if without else Stands.SHOWN, shows, sound=without)


def _that_hold(at: _At) -> list[_At]:
    """Return the other assemblies that were glued up, of which no joint opened, by one zone."""
    failed = {z.piece.id for z in at.zones if any(_is_open(f.known.kind) for f in z.faults)}
    glued = {z.piece.id: z for z in at.zones if z.joined_by and z.piece.id not in failed}
    own = at.state.piece.id
    return [replace(at, state=zone) for piece, zone in glued.items() if piece != own]


def _is_open(kind: FaultKind) -> bool:
    return kind is FaultKind.OPEN_JOINT


def _of_a_joint(evidence: Evidence, at: _At) -> Look:
    joined = at.state.joined_by
    if evidence is Evidence.GLUE_FACE_COATED:
        return _glue_face(at)
    if joined is None:
        return Missing.UNSEEN
    match evidence:
        case Evidence.COLD:
            return _cold_glue(at, joined)
        case Evidence.WET_WOOD:
            return wet_by(joined.when.latest, at.state, at.facts)
        case Evidence.OILY_WOOD:
            wood = at.facts.species_named(at.state.species) if at.state.species else None
            if wood is None:
                return Missing.WOOD
            oily = finding("wood-is-oily", source=wood.oily_source, wood=wood.name)
            return oily if wood.oily else None
        case Evidence.HANDLED_EARLY:
            return _loaded(at, joined)
        case Evidence.OTHER_AIR:
            return _moved(at, joined)
    return Missing.UNSEEN


def _glue_face(at: _At) -> Look:
    """Name the glue faces with finish on them; those on record without any speak against it."""
    if coated := coated_joints(at.state, at.zones):
        return finding("joint-coated", where=coated)
    piece = at.state.piece.id
    kept = any(z.piece.id == piece and z.face.kind is FaceKind.JOINT for z in at.zones)
    return None if kept else Missing.UNSEEN


def _cold_glue(at: _At, joined: Joined) -> Look:
    """Say that the glue was too cold as it set; air that was read then speaks against it."""
    if met := cold_while_it_set(at.state, at.facts):
        return finding("shows-cold", measured=met.measured, wanted=met.wanted)
    read = is_read_through(air_while_it_set(at.state, joined, at.facts))
    return None if read else Missing.AIR


def _loaded(at: _At, joined: Joined) -> Look:
    """Say that it was loaded before its glue bore that."""
    for entry in at.state.entries:
        since = entry.when.earliest - joined.when.latest
        if not isinstance(entry, Work) or entry.operation not in _LOADS or since < timedelta():
            continue
        if held_by_glue(at.state, entry.operation, entry.when.earliest, at.facts):
            deed = entry.operation.value
            found = finding("joint-loaded", measured=hours(since / _HOUR), deed=deed)
            return replace(found, acts=(joined.act, entry.act))
    return Missing.HANDLING


def _moved(at: _At, joined: Joined) -> Look:
    """Say that it was carried, glued up, into air in which wood settles elsewhere."""
    met = air_met(at.state.stays, joined.when.latest)
    if len(met.legs) < 2:
        return None
    airs = [air for span in read_of(met.until(at.until)) for air in span.nearest]
    settles = [settles_pct(air) for air in airs]
    if not settles:
        return Missing.AIR
    if max(settles) - min(settles) < at.facts.moisture.apart_pct.value:
        return None
    return finding("carried-into-other-air", measured=pct(settles[-1]), wanted=pct(settles[0]))
