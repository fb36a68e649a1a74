"""What was done to the wood before its first coat: sanding and its papers, gluing up.

It is looked at for the wood under a film, and for bare wood that was found wanting.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.film.grip import grade_of
from finishlog.core.findings import finding
from finishlog.core.log.entries import Check, Coat, Joined, Work
from finishlog.core.log.words import Found, Operation
from finishlog.core.trouble.scene import Look, Missing
from finishlog.core.zone.state import ZoneState

_SANDS = frozenset({Operation.SAND, Operation.LEVEL})
# Our own rules: a finer paper takes out the scratches of one half as fine, of coarser ones hardly;
# one that is half as fine again does well, between the two what came out clean beside it tells.
_SKIPS, _AS_A_RULE = 2.0, 1.5


class Prepared(Struct, frozen=True):
    """How wood was prepared by a moment, in the order of the work."""

    sanded: tuple[Work, ...] = ()
    glued: Joined | None = None
    shaped: Work | None = None

    @property
    def since_shaped(self) -> tuple[Work, ...]:
        """The sandings since the planer or the saw last took the surface off."""
        last = self.shaped
        return tuple(w for w in self.sanded if last is None or w.when.order > last.when.order)

    @property
    def grits(self) -> tuple[Work, ...]:
        """Those of which the paper is on record."""
        return tuple(work for work in self.since_shaped if grade_of(work.grit) is not None)

    @property
    def since_glued(self) -> tuple[Work, ...]:
        """The sandings after it was glued up; all of them where it was not."""
        glued = self.glued
        return tuple(w for w in self.sanded if glued is None or w.when.order > glued.when.order)


def prepared(state: ZoneState, until: datetime) -> Prepared:
    """Read how wood was prepared before its first coat, as far as a moment."""
    coats = (e.when.latest for e in state.entries if isinstance(e, Coat))
    ends, glued = min((*coats, until)), state.joined_by
    mine = [e for e in state.entries if isinstance(e, Work) and e.when.latest <= ends]
    sanded = tuple(e for e in mine if e.operation in _SANDS)
    shaped = next((e for e in reversed(mine) if e.operation is Operation.SHAPE), None)
    return Prepared(sanded, glued if glued and glued.when.latest <= ends else None, shaped)


def left_by_glue(of: Prepared) -> Look:
    """It was glued up, and no sanding since is on record; sanded since speaks against it."""
    if of.glued is None or of.since_glued:
        return None
    return replace(finding("glued-not-sanded"), acts=(of.glued.act,))


def grit_left_out(of: Prepared, sound: Sequence[Prepared]) -> Look:
    """From one paper to the next it went more than twice as fine, at a step that is on record.

    Also at a lesser step, where a paper in between made sound wood clean; else that is mild.
    """
    if not of.grits:
        return Missing.GRIT
    between = [grade_of(work.grit) or 0 for each in sound for work in each.grits]
    steps: list[tuple[bool, float, Work, Work]] = []
    for one, two in pairwise(of.grits):
        coarse, fine = grade_of(one.grit) or 0, grade_of(two.grit) or 0
        surely = fine > _SKIPS * coarse or any(coarse < each < fine for each in between)
        if fine > _AS_A_RULE * coarse:
            steps.append((surely, fine / coarse, one, two))
    if not steps:
        return None
    surely, _, one, two = max(steps, key=lambda step: step[:2])
    mild = None if surely else "yes"
    found = finding("grit-left-out", here=one.grit, there=two.grit, mild=mild)
    return replace(found, acts=(one.act, two.act))


def began_finer(of: Prepared, sound: Sequence[Prepared], names: Sequence[str]) -> Look:
    """Sound wood was begun with a paper that is clearly coarser."""
    mine, theirs = _coarsest(of), [_coarsest(each) for each in sound]
    if not mine or not theirs or not all(theirs):
        return Missing.GRIT
    if mine < _AS_A_RULE * max(theirs):
        return None
    return finding("began-finer", here=f"P{mine}", there=f"P{max(theirs)}", sound=names[0])


def _coarsest(of: Prepared) -> int:
    return min((int(grade_of(work.grit) or 0) for work in of.grits), default=0)


def not_sanded(of: Prepared, sound: Sequence[Prepared]) -> Look:
    """No sanding is on record, and of sound wood one is; else nobody logs it here."""
    if of.since_shaped:
        return None
    if not any(each.since_shaped for each in sound):
        return Missing.SANDED
    if of.shaped is None or not of.sanded:
        return finding("no-sanding")
    return replace(finding("sanded-then-shaped"), acts=(of.sanded[-1].act, of.shaped.act))


def other_paper(of: Prepared, sound: Sequence[Prepared], names: Sequence[str]) -> Look:
    """Sound wood was sanded with another paper last."""
    mine, theirs = _last(of), [_last(each) for each in sound]
    if not mine or not theirs or not all(theirs):
        return Missing.GRIT
    if mine in theirs:
        return None
    return finding("another-grit", here=mine, there=theirs[0], sound=names[0])


def _last(of: Prepared) -> str:
    return str(of.since_shaped[-1].grit) if of.since_shaped else ""


def sound_wood(state: ZoneState, zones: Sequence[ZoneState]) -> list[ZoneState]:
    """Return other bare wood that was looked over and found clean."""
    return [
        other
        for other in zones
        if other.target != state.target
        and any(isinstance(e, Check) and e.found is Found.LOOKS_CLEAN for e in other.entries)
        and not other.faults
    ]
