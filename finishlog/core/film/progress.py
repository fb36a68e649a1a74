"""How far a zone has come along its finishing schedule."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import takewhile

from msgspec import Struct

from finishlog.core.film.attempts import what_stays
from finishlog.core.log.entries import AnyEntry, Coat, Work
from finishlog.core.log.words import Operation
from finishlog.core.shop.things import Behind, Face, FaceKind, Step, Zone


class Progress(Struct, frozen=True):
    """Which steps are behind, which is next. `aside`: what was done that no step asked for."""

    steps: tuple[Step, ...]
    done: int
    matched: frozenset[int]
    aside: tuple[AnyEntry, ...]

    @property
    def next(self) -> Step | None:
        """The step that is due; None when all are done or there are none."""
        return self.steps[self.done] if self.done < len(self.steps) else None

    @property
    def next_coat(self) -> Step | None:
        """The next step that puts something on."""
        left = self.steps[self.done :]
        return next((s for s in left if s.operation is Operation.COAT), None)

    def coat_number(self, step: Step) -> tuple[int, int]:
        """Return (which, of how many) coats of its product a step is."""
        same = [
            s for s in self.steps if s.operation is step.operation and s.product == step.product
        ]
        # Steps of a member and of its assembly may be equal: it is this one that counts.
        mine = (n for n, each in enumerate(same, 1) if each is step)
        return next(mine, same.index(step) + 1), len(same)


def steps_for(face: Face, steps: Iterable[Step], zone: Zone | None = None) -> tuple[Step, ...]:
    """Return the steps that touch a zone of a face; a step may name the face or the zone.

    Unless it is named a joint face is kept bare, and an edge has no steps of its own: it gets
    what its faces get.
    """
    mine = {face.name.casefold()}
    if zone is not None and zone.name:
        mine.add(f"{face.name}/{zone.name}".casefold())
    finished = face.kind in {FaceKind.SHOW, FaceKind.HIDDEN}
    return tuple(
        step
        for step in steps
        if (not mine.isdisjoint(f.casefold() for f in step.faces) if step.faces else finished)
    )


def after_glue_up(steps: Sequence[Step]) -> tuple[Step, ...]:
    """Return the steps that come after a glue-up; all of them where none is named."""
    at = max((n for n, s in enumerate(steps) if s.operation is Operation.GLUE_UP), default=-1)
    return tuple(steps[at + 1 :])


def until_glue_up(steps: Sequence[Step]) -> tuple[Step, ...]:
    """Return the steps that come before a glue-up; all of them where none is named."""
    return tuple(takewhile(lambda step: step.operation is not Operation.GLUE_UP, steps))


def progress(
    steps: Sequence[Step], entries: Iterable[AnyEntry], behind: Behind | None = None
) -> Progress:
    """Match what was done, in order, to the steps in order.

    A step that was passed over counts as behind: the person went on. Work by hand never passes
    over a coat, and what fits no step ahead is kept aside, so that a coat too many or a second
    scuffing never moves the schedule; nor does a coat that was broken off, whose step stays due.
    After a film was taken off the steps go on behind the coat that survives, or from the start on
    bare wood. Steps that go over a finish credit nothing that lies `behind` them.
    """
    done, matched, aside = 0, set[int](), list[AnyEntry]()
    for entry in what_stays(tuple(entries)):
        if not isinstance(entry, Coat | Work) or (isinstance(entry, Coat) and not entry.is_whole):
            continue
        lies_below = behind is not None and behind.holds(entry)
        found = None if lies_below else _step_ahead(steps, done, entry)
        if found is None:
            aside.append(entry)
            continue
        matched.add(found)
        done = found + 1
    return Progress(tuple(steps), done, frozenset(matched), tuple(aside))


def _step_ahead(steps: Sequence[Step], done: int, entry: Coat | Work) -> int | None:
    for n in range(done, len(steps)):
        if _fits(steps[n], entry):
            return n
        if isinstance(entry, Work) and steps[n].operation is Operation.COAT:
            return None
    return None


def _fits(step: Step, entry: Coat | Work) -> bool:
    if isinstance(entry, Coat):
        return step.operation is Operation.COAT and step.product == entry.product
    by_wool = step.operation is Operation.SCUFF and entry.operation is Operation.STEEL_WOOL
    return by_wool or step.operation is entry.operation
