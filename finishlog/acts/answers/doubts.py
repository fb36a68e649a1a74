"""What is hardly meant: recorded with a caution in a script, asked about at a terminal first.

Another step was due on some of what was named; the same coat twice within minutes; a check in the
minute of its coat.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import timedelta

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.meant.due import selectors, step_words
from finishlog.asks.look.look import Look
from finishlog.core.findings import Deed, Finding, Level, finding
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.when import When
from finishlog.core.log.words import Operation
from finishlog.core.shop.things import Product, Shop, Step
from finishlog.core.verdict.edges import follows_its_faces
from finishlog.core.zone.grouping import labels_of
from finishlog.core.zone.state import ZoneState
from finishlog.errors import Doubtful
from finishlog.picking import Zones

# No class of finish is recoated so soon (tests/facts). Our own rule.
SAME_COAT = timedelta(minutes=10)
# A film that went on this minute tells nothing yet. Our own rule.
SAME_MINUTE = timedelta(minutes=2)


class Doubt(Struct, frozen=True):
    """What may be a slip: how it is said, and the question for a person.

    `finding` None: another warning says it.
    """

    finding: Finding | None
    question: str


def findings_of(doubts: Iterable[Doubt], *, sure: bool) -> tuple[Finding, ...]:
    """Return the doubts as cautions; Doubtful, with their questions, where nobody is sure yet."""
    found = tuple(doubts)
    if found and not sure:
        raise Doubtful(" ".join(dict.fromkeys(doubt.question for doubt in found)))
    return tuple(doubt.finding for doubt in found if doubt.finding)


def of_the_step(
    then: Look, picked: Zones, operation: Operation, product: Product | None, scuffed: bool | None
) -> Iterator[Doubt]:
    """Doubt an act on parts where another step was due.

    Work by hand that is passed over on all of them is a habit of not logging it; on some of them
    it is a question. A coat that is passed over always is.
    """
    mine = [z for z in _of(then, picked) if not follows_its_faces(z)]
    passed: dict[tuple[Operation, int | None], tuple[Step, list[ZoneState]]] = {}
    for state in mine:
        step = _passed_over(state, operation, product)
        if step is not None:
            passed.setdefault((step.operation, step.product), (step, []))[1].append(state)
    pieces = {z.piece.id for z in mine}
    for step, states in passed.values():
        whole = {z.piece.id for z in states} == pieces
        scuffs = step.operation is Operation.SCUFF
        if step.operation is Operation.COAT or not (whole or (scuffs and scuffed)):
            yield _another_step(step, states, then.shop, said=scuffs and product is not None)


def _passed_over(state: ZoneState, operation: Operation, product: Product | None) -> Step | None:
    """Return the step that was due, where something of a later step is done instead."""
    done = (operation, product.id if product else None)
    due, left = state.progress.next, state.progress.steps[state.progress.done :]
    if due is None or (due.operation, due.product) == done or _is_asked_for(state, operation):
        return None
    if product is not None:
        # One coat more of what is on it is a choice.
        more = state.top is not None and state.top.coat.product == product.id
        return None if more and due.operation is Operation.COAT else due
    return due if any((s.operation, s.product) == done for s in left) else None


def _is_asked_for(state: ZoneState, operation: Operation) -> bool:
    """Tell whether the film asks for it before the step: surplus off, or a scuff."""
    scuffs = state.verdict.scuff_first and operation in {Operation.SCUFF, Operation.SAND}
    wipes = state.verdict.deed is Deed.WIPE_OFF and operation is Operation.WIPE
    return scuffs or wipes


def _another_step(step: Step, states: Sequence[ZoneState], shop: Shop, *, said: bool) -> Doubt:
    words = step_words(step, shop)
    on = labels_of(states)
    due = finding("another-due", Level.CAUTION, step=words, parts=selectors(states))
    question = f"{', '.join(on)}: {words} was due. Record this all the same?"
    # That no scuffing is on record is a warning of every coat.
    return Doubt(None if said and all(z.layers for z in states) else replace(due, on=on), question)


def of_the_same_coat(
    now: Look, picked: Zones, product: Product, at: When, act: int
) -> Iterator[Doubt]:
    """Doubt a coat, which is `act`, that stands on record already, minutes away."""

    def apart(state: ZoneState) -> timedelta | None:
        coats = (x.coat for x in state.layers if x.coat.product == product.id)
        return min((abs(at.latest - coat.when.latest) for coat in coats), default=None)

    for length, states in _within(now, picked, apart, SAME_COAT):
        on, words = labels_of(states), length_words(length)
        again = finding("same-coat", Level.CAUTION, of=product.name, apart=length, act=act)
        yield Doubt(
            replace(again, on=on),
            f"{', '.join(on)}: {product.name} is on record {words} from this. The same coat again?",
        )


def of_a_check_too_soon(now: Look, picked: Zones, at: When, act: int) -> Iterator[Doubt]:
    """Doubt a check, which is `act`, of a film that went on in the same minute."""

    def apart(state: ZoneState) -> timedelta | None:
        coats = (x.coat.when.latest for x in state.layers if x.coat.when.latest <= at.latest)
        return min((at.latest - coated for coated in coats), default=None)

    for _, states in _within(now, picked, apart, SAME_MINUTE):
        on = labels_of(states)
        yield Doubt(
            replace(finding("checked-at-once", Level.CAUTION, act=act), on=on),
            f"{', '.join(on)}: coated in this very minute. A check of that coat?",
        )


def _within(
    seen: Look, picked: Zones, apart: Callable[[ZoneState], timedelta | None], limit: timedelta
) -> Iterator[tuple[timedelta, list[ZoneState]]]:
    """Yield the least time apart of those zones that are too near, by length, with the zones."""
    by_length: dict[timedelta, list[ZoneState]] = {}
    for state in _of(seen, picked):
        length = apart(state)
        if length is not None and length < limit:
            by_length.setdefault(length, []).append(state)
    yield from sorted(by_length.items(), key=lambda each: each[0])


def _of(seen: Look, picked: Zones) -> list[ZoneState]:
    return [z for z in seen.bench.zones if z.target in picked.targets]
