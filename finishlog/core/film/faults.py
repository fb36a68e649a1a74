"""Faults of a film: which of them stand on a zone, what they hold up, until what answers them.

What a kind of fault means, and what mends it, stands in facts/data. Nothing here refuses a
coat: it is recorded, and the fault stays in sight.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from itertools import takewhile

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.film.attempts import what_stays
from finishlog.core.film.checks import denied
from finishlog.core.finish.classes import FinishClass
from finishlog.core.finish.overcoat import OvercoatAnswer, OvercoatRule, rule_for
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Check, Coat, Fault, Joined, Stripped, Work
from finishlog.core.log.where import in_brackets, reaches
from finishlog.core.log.words import FaultKind, Found, Operation
from finishlog.core.published.facts import Facts
from finishlog.core.published.fault_kinds import FamilyRemedy, KnownFault, Outlives

# What a check of the wood finds, as the fault that it is.
_AS_FAULT = {
    Found.CUPPED: FaultKind.CUPPED,
    Found.GLUE: FaultKind.GLUE_SPOT,
    Found.SCRATCHES: FaultKind.SCRATCHES,
    Found.SNIPE: FaultKind.SNIPE,
}


class StandingFault(Struct, frozen=True):
    """A fault that nothing has answered yet, and the coat it was found on (None: on the wood)."""

    fault: Fault
    known: KnownFault
    coat: Coat | None
    special: FamilyRemedy | None = None
    # Colour lay below, and is put back before any other coat.
    wants_colour: bool = False
    # Paint lay below, which holds on nothing that lies over it here: the row that says so.
    shut_in: OvercoatRule | None = None
    # A check found it hard since: it bears what is laid on it.
    bears: bool = False

    @property
    def name(self) -> str:
        """Name it with its place: `run (left edge)`."""
        return self.known.name + in_brackets(self.fault.place)

    @property
    def deadline(self) -> datetime | None:
        """Until when its remedy works, from the earliest moment of its coat; None: no deadline."""
        if self.coat is None or self.special is None or self.special.deadline is None:
            return None
        hours = self.special.deadline.low_h
        return self.coat.when.earliest + timedelta(hours=hours)

    def left_to_stand(self, now: datetime) -> tuple[timedelta, timedelta] | None:
        """Return for how long, at least and at most, it is left alone yet; None: no longer."""
        figure = self.known.stands_h
        if figure is None:
            return None
        ends = (self.fault.when.latest + timedelta(hours=h) for h in (figure.low_h, figure.high_h))
        low, high = (max(end - now, timedelta()) for end in ends)
        return (low, high) if high else None

    def ends_with(self, over: FinishClass) -> bool:
        """Tell whether a coat of this class answers it."""
        return self.known.answered_by_coat and (over.is_colour or not self.wants_colour)

    def keeps_from(self, stage: Stage) -> bool:
        """Tell whether it keeps the film from a stage."""
        if self.bears:
            return stage in self.known.blocks
        return stage in barred_by(self.known, self.coat)

    def remedies(self, now: datetime) -> tuple[str, ...]:
        """Say what to do about it now, in order."""
        if self.shut_in is not None:
            return self.shut_in.reason, self.shut_in.remedy
        if self.special is None:
            return self.known.remedies
        return (self.special.too_late,) if self._is_late(now) else self.special.remedies

    def puts_on(self, now: datetime) -> Coat | None:
        """Return the coat in whose air its remedy is done now; None: it puts nothing on."""
        wets = self.special is not None and self.special.puts_on and self.shut_in is None
        return self.coat if wets and not self._is_late(now) else None

    def _is_late(self, now: datetime) -> bool:
        closes = self.deadline
        return closes is not None and now >= closes


def barred_by(known: KnownFault, coat: Coat | None) -> frozenset[Stage]:
    """Return the stages that a kind of fault keeps a coat from; None: the wood."""
    figures = coat.figures.stages if coat else {}
    return known.blocks | (denied(known.shows, figures) if known.shows else frozenset())


def standing_faults(entries: Sequence[AnyEntry], facts: Facts) -> tuple[StandingFault, ...]:
    """Return the faults of a zone, oldest first, that nothing has answered.

    `entries`: what reached the zone, in the order of the work.
    """
    if not any(as_fault(e) for e in entries):
        return ()
    found: list[StandingFault] = []
    for n, entry in enumerate(entries):
        fault = as_fault(entry)
        if fault is not None:
            found.append(_standing(fault, entries[:n], facts))
        elif isinstance(entry, Stripped):
            coats = [e.id for e in what_stays(entries[: n + 1]) if isinstance(e, Coat)]
            found = [f for f in found if not _gone_with_the_film(f, coats)]
        else:
            found = [_since(entry, f) for f in found if not _is_answered(f, entry, facts)]
    return tuple(found)


def as_fault(entry: AnyEntry) -> Fault | None:
    """Return the fault that an entry tells of: what a straightedge or a look shows is one."""
    if isinstance(entry, Fault):
        return entry
    if not isinstance(entry, Check) or entry.found not in _AS_FAULT:
        return None
    return Fault(
        id=entry.id,
        act=entry.act,
        when=entry.when,
        typed_at=entry.typed_at,
        targets=entry.targets,
        what=_AS_FAULT[entry.found],
        place=entry.place,
    )


def _is_answered(of: StandingFault, entry: AnyEntry, facts: Facts) -> bool:
    if isinstance(entry, Coat):
        return entry.is_whole and of.ends_with(facts.finish_class(entry.figures.class_key))
    early = of.left_to_stand(entry.when.latest) if isinstance(entry, Work) else None
    return (early is None or not early[0]) and _answers(entry, of.known, of.fault.place)


def _since(entry: AnyEntry, of: StandingFault) -> StandingFault:
    if isinstance(entry, Check) and entry.found in of.known.bears_after:
        return replace(of, bears=of.bears or reaches(entry.place, of.fault.place))
    return of


def puts_colour_back(coat: Coat, told: Sequence[AnyEntry], facts: Facts) -> bool:
    """Tell whether a coat was colour for a bare spot, not one over the film around it."""
    if not any(isinstance(e, Fault) for e in told):
        return False
    if not facts.finish_class(coat.figures.class_key).is_colour:
        return False
    before = tuple(takewhile(lambda entry: entry is not coat, told))
    return any(f.wants_colour for f in standing_faults(before, facts))


def _standing(fault: Fault, before: Sequence[AnyEntry], facts: Facts) -> StandingFault:
    known = facts.fault_known(fault.what)
    coat = next(reversed(_coats(before)), None)
    if coat is None:
        return StandingFault(fault, known, None)
    of = facts.finish_class(coat.figures.class_key)
    below = [facts.finish_class(e.figures.class_key) for e in _coats(before)]
    wants_colour = known.colour_first and any(each.is_colour for each in below)
    paint = next((c for c in reversed(below) if c.is_paint), None) if known.colour_first else None
    shut_in = cannot_follow(of, paint, facts) if paint else None
    special = known.for_class(of.key, of.family)
    return StandingFault(fault, known, coat, special, wants_colour, shut_in)


def cannot_follow(under: FinishClass, over: FinishClass, facts: Facts) -> OvercoatRule | None:
    """Return the row by which one class should never go over another; None: none says so."""
    row = rule_for(facts.overcoats_between(under, over), under, over)
    return row if row is not None and row.answer is OvercoatAnswer.AVOID else None


def _coats(entries: Sequence[AnyEntry]) -> list[Coat]:
    return [e for e in what_stays(entries) if isinstance(e, Coat)]


def _answers(entry: AnyEntry, known: KnownFault, place: str) -> bool:
    """Tell whether an entry that is no coat ends a fault of this kind at a place."""
    match entry:
        case Work() | Check() if not reaches(entry.place, place):
            return False
        case Work():
            mended = entry.operation is Operation.MEND and not known.not_by_mending
            return mended or entry.operation in known.answered_by
        case Check():
            return entry.found in known.answered_by_checks
        case Joined():
            return Operation.GLUE_UP in known.answered_by
        case _:
            return False


def _gone_with_the_film(of: StandingFault, coats_left: Sequence[int]) -> bool:
    """Tell whether a stripping ends a fault: its coat is gone, and so is what it may come from."""
    if of.coat is not None and of.coat.id in coats_left:
        return False
    if of.known.outlives is Outlives.WOOD or of.known.waits_for:
        return False
    return not (of.known.outlives is Outlives.FILM and coats_left)


def patch_due(entries: Sequence[AnyEntry], facts: Facts) -> Fault | None:
    """Return the fault after which a small patch is tried before the next coat, if it was not.

    A scratch that holds, a coat, or taking all film off settles it.
    """
    due: Fault | None = None
    for n, entry in enumerate(entries):
        match entry:
            case Fault() if facts.fault_known(entry.what).patch_first:
                due = entry
            case Coat() if entry.is_whole:
                due = None
            case Check() if entry.found is Found.HOLDS:
                due = None
            case Stripped() if not any(isinstance(e, Coat) for e in what_stays(entries[: n + 1])):
                due = None
    return due


def rewetted(entries: Sequence[AnyEntry], coat: Coat, facts: Facts) -> Iterator[Work]:
    """Yield the mending that dissolved a coat again: its film dries from then on.

    `entries`: what followed the coat on its zone, up to the next one.
    """
    open_faults: list[tuple[KnownFault, str]] = []
    for entry in entries:
        if isinstance(entry, Fault):
            known = facts.fault_known(entry.what)
            of = facts.finish_class(coat.figures.class_key)
            if known.rewets and known.for_class(of.key, of.family):
                open_faults.append((known, entry.place))
        elif isinstance(entry, Work):
            left = [each for each in open_faults if not _answers(entry, *each)]
            if entry.operation is Operation.MEND and len(left) < len(open_faults):
                yield entry
            open_faults = left
