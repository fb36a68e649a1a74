"""How the bare wood was prepared for its first coat, and how long ago.

What is not on record is not known, and no reproach.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.film.attempts import what_stays
from finishlog.core.film.grip import grade_of
from finishlog.core.film.layers import ABRADES
from finishlog.core.findings import Act, Answer, Figured, Finding, In, Level, finding, plainly
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.entries import AnyEntry, Check, Fault, Work
from finishlog.core.log.words import FaultKind, Operation, Test
from finishlog.core.published.species import WoodKind
from finishlog.core.rules.reads import BARE, OPEN_WOOD, WOOD
from finishlog.core.rules.rule import ABRADING, COAT, rule
from finishlog.core.rules.wood.bare_wood import kind_of_wood
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_RAISES = frozenset({Operation.RAISE_GRAIN, Operation.RINSE})
# What a look at the wood finds, logged as a fault.
_SEEN = frozenset({FaultKind.GLUE_SPOT, FaultKind.SCRATCHES, FaultKind.SNIPE})


def _in_the_white(zone: ZoneState) -> bool:
    """Tell whether nothing but a bleach was put on the wood, or into its holes."""
    aside = (y.of.family == "bleach" or y.of.fills_spots for y in zone.layers)
    return zone.old_finish is None and all(aside)


def _worked(zone: ZoneState, operations: frozenset[Operation]) -> Work | None:
    """Return the last of some work on what is there now."""
    done = (e for e in what_stays(zone.entries) if isinstance(e, Work))
    return next((e for e in reversed(list(done)) if e.operation in operations), None)


@rule(
    "sanded-long-ago",
    binds=COAT,
    source="facts: preparation",
    reads=f"{BARE} {WOOD} work.operation work.when product.class_key",
)
def sanded_long_ago(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A sanding has an age: wood that stood since is sanded lightly by hand before its first coat.

    Oily wood is wiped with solvent instead, within the hour (bare_wood.solvent_wipe).
    """
    if asked.over is None or not _in_the_white(zone):
        return
    last = _worked(zone, ABRADES | _RAISES)
    if last is None or last.operation in _RAISES:
        return
    if kind_of_wood(zone.species, around.facts) is WoodKind.OILY:
        return
    holds, age = around.facts.preparation.sanding_holds(asked.over), around.now - last.when.latest
    if age > timedelta(days=holds.value):
        found = finding(
            "sanded-long-ago",
            Level.CAUTION,
            holds.source,
            measured=Figured(age.days, In.DAYS),
            wanted=Figured(holds.value, In.DAYS),
            answer=Answer.SCUFF,
        )
        yield replace(found, scuff=True, acts=(last.act,))


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
    if asked.over is None or not _in_the_white(zone):
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
