"""How the bare wood was prepared for its first coat, and how long ago.

What is not on record is not known, and no reproach.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.film.attempts import what_stays
from finishlog.core.film.grip import grade_of
from finishlog.core.film.layers import ABRADES
from finishlog.core.findings import (
    GLUE_FACE_OLD,
    Act,
    Answer,
    Figured,
    Finding,
    In,
    Level,
    finding,
    hours,
    plainly,
)
from finishlog.core.finish.classes import COMMON_PRACTICE, FinishClass, Limit
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.overcoat import WORKS_ON_WOOD
from finishlog.core.log.entries import AnyEntry, Check, Fault, Stripped, Work
from finishlog.core.log.words import FaultKind, Operation, Test
from finishlog.core.published.facts import Facts
from finishlog.core.published.species import WoodKind
from finishlog.core.rules.reads import BARE, LAYERS, OPEN_WOOD, WOOD
from finishlog.core.rules.rule import ABRADING, COAT, rule
from finishlog.core.rules.wood.bare_wood import kind_of_wood, solvent_wiped
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_RAISES = frozenset({Operation.RAISE_GRAIN, Operation.RINSE})
# Gives bare wood the face that a coat, or glue, meets.
_FACES = ABRADES | _RAISES | {Operation.LEVEL, Operation.SHAPE}
_IN_HOURS = timedelta(days=3)
_PREPARED = "work.operation work.when stripped.operation stripped.when"
# What a look at the wood finds, logged as a fault.
_SEEN = frozenset({FaultKind.GLUE_SPOT, FaultKind.SCRATCHES, FaultKind.SNIPE})


def _in_the_white(zone: ZoneState) -> bool:
    """Tell whether nothing but a bleach was put on the wood, or into its holes."""
    aside = (y.of.family in WORKS_ON_WOOD or y.of.fills_spots for y in zone.layers)
    return zone.old_finish is None and all(aside)


def _worked(zone: ZoneState, operations: frozenset[Operation]) -> Work | None:
    """Return the last of some work on what is there now."""
    done = (e for e in what_stays(zone.entries) if isinstance(e, Work))
    return next((e for e in reversed(list(done)) if e.operation in operations), None)


class Prepared(Struct, frozen=True):
    """Bare wood as it was prepared for a coat or for glue: by which act, and until when it is good.

    `deed`: a work, or how a film came off, in a word; times in UTC.
    """

    deed: str
    grit: str
    since: datetime
    until: datetime
    act: int
    source: str


def prepared(zone: ZoneState, over: FinishClass, facts: Facts) -> Prepared | None:
    """Return how bare wood was prepared for a coat of a class; None: nothing of it is on record.

    Oily wood is good for the hour after its solvent wipe; grain that was raised is not prepared.
    """
    if not _in_the_white(zone):
        return None
    if _is_oily(zone, facts):
        wiped = _wiped(zone)
        return _good_for(wiped, facts.drying.solvent_wipe_h, hours=1) if wiped else None
    last = _laid_bare(zone)
    if last is None or last.operation in _RAISES:
        return None
    return _good_for(last, facts.preparation.sanding_holds(over), hours=24)


def glue_face(zone: ZoneState, facts: Facts) -> Prepared | None:
    """Return how a bare glue face was last worked; None: not on record, or it is glued."""
    if not zone.is_bare_joint or zone.joined:
        return None
    oily, figures = _is_oily(zone, facts), facts.preparation
    last = (_wiped(zone) if oily else None) or _laid_bare(zone)
    holds = figures.oily_glue_face_h if oily else figures.glue_face_h
    return _good_for(last, holds, hours=1) if last else None


def _good_for(last: Work | Stripped, holds: Limit, *, hours: int) -> Prepared:
    """Count what holds so long from a deed on; `hours`: in one of the figure's unit."""
    grit, since = last.grit if isinstance(last, Work) else "", last.when.latest
    until = since + timedelta(hours=holds.value * hours)
    return Prepared(last.operation.value, grit, since, until, last.act, holds.source)


def _is_oily(zone: ZoneState, facts: Facts) -> bool:
    return kind_of_wood(zone.species, facts) is WoodKind.OILY


def _wiped(zone: ZoneState) -> Work | None:
    """Return the last solvent wipe, if nothing opened the wood since."""
    wiped = _worked(zone, frozenset({Operation.SOLVENT_WIPE}))
    return wiped if solvent_wiped(zone) is not None else None


def _laid_bare(zone: ZoneState) -> Work | Stripped | None:
    """Return what last gave the wood the face that it has: sanding, wetting, a film taken off."""
    done = (
        e
        for e in what_stays(zone.entries)
        if isinstance(e, Stripped) or (isinstance(e, Work) and e.operation in _FACES)
    )
    return next(reversed(list(done)), None)


@rule(
    "sanded-long-ago",
    binds=COAT,
    source="facts: preparation",
    reads=f"{BARE} {WOOD} {_PREPARED} product.class_key work.grit",
)
def sanded_long_ago(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A sanding has an age: wood that stood since is sanded lightly by hand before its first coat.

    So has wood that a film came off. Oily wood is wiped with solvent instead, within the hour
    (bare_wood.solvent_wipe).
    """
    was = prepared(zone, asked.over, around.facts) if asked.over is not None else None
    if was is None or around.now <= was.until or _is_oily(zone, around.facts):
        return
    found = finding(
        "sanded-long-ago",
        Level.CAUTION,
        was.source,
        measured=_long(around.now - was.since),
        wanted=_long(was.until - was.since),
        answer=Answer.SCUFF,
        deed=was.deed,
    )
    yield replace(found, scuff=True, acts=(was.act,))


def _long(age: timedelta) -> Figured:
    """Figure an age: in hours of the first days, then in whole days."""
    return hours(age / timedelta(hours=1)) if age < _IN_HOURS else Figured(age.days, In.DAYS)


@rule(
    GLUE_FACE_OLD,
    binds=frozenset({Act.GLUE_UP, Act.CLAMP}),
    source="facts: preparation",
    reads=f"{LAYERS} {WOOD} {_PREPARED} work.grit face.kind face.name",
)
def glue_face_old(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A glue face holds best on wood that was worked that day; of oily wood within hours."""
    was = glue_face(zone, around.facts)
    if was is None or around.now <= was.until:
        return
    found = finding(
        GLUE_FACE_OLD,
        Level.CAUTION,
        was.source,
        measured=_long(around.now - was.since),
        wanted=_long(was.until - was.since),
        answer=Answer.TEST,
        face=zone.face.name,
        oily="oily" if _is_oily(zone, around.facts) else "",
    )
    yield replace(found, acts=(was.act,))


@rule(
    "look-first",
    binds=COAT,
    source="facts: preparation",
    reads=f"{OPEN_WOOD} fault.what check.test",
)
def look_first(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Before colour goes on bare wood it is asked once whether anybody looked it over.

    A note: what a look finds holds the colour as the fault that it is.
    """
    row = around.facts.preparation.look_before(asked.over) if asked.over else None
    if row is not None and zone.wood_lies_open and not any(map(_looked, zone.entries)):
        yield finding("look-first", source=row.source)


def _looked(entry: AnyEntry) -> bool:
    if isinstance(entry, Check):
        return entry.test is Test.LOOK
    return isinstance(entry, Fault) and entry.what in _SEEN


@rule(
    "wood-wetted",
    binds=COAT | ABRADING | {Act.WORK},
    source="facts: hands_on",
    reads=f"{BARE} product.class_key work.operation work.when",
)
def wood_wetted(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Wood that was just wetted, to raise its grain or to rinse it, dries first.

    It may be wetted again.
    """
    wetted = _worked(zone, _RAISES) if _in_the_white(zone) else None
    if wetted is None or asked.operation in _RAISES:
        return
    dry = wetted.when.latest + timedelta(minutes=around.facts.hands_on.wet_wood_min.high)
    if around.now < dry:
        found = plainly("wood-wetted", Answer.WAITS)
        yield replace(found, high=dry, acts=(wetted.act,))


@rule(
    "grain-raised",
    binds=COAT,
    source=COMMON_PRACTICE,
    reads=f"{BARE} work.operation product.class_key",
)
def grain_raised(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Grain that water raised is sanded off before the first coat."""
    # Dichromate is never sanded: raised grain stays under the sealer.
    never = any(Hazard.CHROMATE in layer.of.hazards for layer in zone.layers)
    if asked.over is None or never or not _in_the_white(zone):
        return
    last = _worked(zone, ABRADES | _RAISES)
    if last is not None and last.operation in _RAISES:
        found = finding(
            "grain-raised",
            Level.CAUTION,
            COMMON_PRACTICE,
            answer=Answer.SCUFF,
            by=last.operation.value,
        )
        yield replace(found, scuff=True, acts=(last.act,))


@rule(
    "last-grit",
    binds=COAT,
    source="facts: preparation",
    reads=f"{BARE} work.operation work.grit product.class_key",
)
def last_grit(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The last paper was coarser, or finer, than is usual before this class."""
    last = _worked(zone, ABRADES) if _in_the_white(zone) else None
    grit = grade_of(last.grit) if last else None
    usual = around.facts.preparation.grit_before(asked.over) if asked.over else None
    if last is None or grit is None or usual is None:
        return
    if not usual.low <= grit <= usual.high:
        found = finding(
            "last-grit",
            source=usual.source,
            grit=grit,
            low=usual.low,
            high=usual.high,
            finer="finer" if grit > usual.high else "",
        )
        yield replace(found, acts=(last.act,))
