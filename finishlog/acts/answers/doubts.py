"""What is hardly meant: recorded with a caution in a script, asked about at a terminal first.

Another step was due on some of what was named; the same coat twice within minutes; a check in the
minute of its coat, or one that passed when the film cannot have been so far.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import timedelta

from msgspec.structs import replace

from finishlog.acts.meant.due import selectors, step_words
from finishlog.asks.look.look import Look
from finishlog.core.film.checks import passes_share
from finishlog.core.findings import PASSED_TOO_SOON, Deed, Finding, Level, finding, hours, minutes
from finishlog.core.finish.classes import FROM_MEMORY
from finishlog.core.log.when import When
from finishlog.core.log.words import Found, Operation
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


def findings_of(doubts: Iterable[Finding], *, sure: bool) -> tuple[Finding, ...]:
    """Return the doubts as cautions; Doubtful, with all of them, where nobody is sure yet.

    A note is only asked: where it is recorded another warning says it.
    """
    found = tuple(dict.fromkeys(doubts))
    if found and not sure:
        raise Doubtful(found)
    return tuple(doubt for doubt in found if doubt.level is not Level.NOTE)


def of_the_step(
    then: Look, picked: Zones, operation: Operation, product: Product | None, scuffed: bool | None
) -> Iterator[Finding]:
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


def _another_step(step: Step, states: Sequence[ZoneState], shop: Shop, *, said: bool) -> Finding:
    # That no scuffing is on record is a warning of every coat.
    level = Level.NOTE if said and all(z.layers for z in states) else Level.CAUTION
    words = step_words(step, shop)
    due = finding("another-due", level, step=words, parts=selectors(states))
    return replace(due, on=labels_of(states))


def of_the_same_coat(
    now: Look, picked: Zones, product: Product, at: When, act: int
) -> Iterator[Finding]:
    """Doubt a coat, which is `act`, that stands on record already, minutes away."""

    def apart(state: ZoneState) -> timedelta | None:
        coats = (x.coat for x in state.layers if x.coat.product == product.id)
        return min((abs(at.latest - coat.when.latest) for coat in coats), default=None)

    for length, states in _within(now, picked, apart, SAME_COAT):
        again = finding("same-coat", Level.CAUTION, of=product.name, apart=length, act=act)
        yield replace(again, on=labels_of(states))


def of_a_check_too_soon(
    now: Look, picked: Zones, found: Found, at: When, act: int
) -> Iterator[Finding]:
    """Doubt a check, which is `act`, of a film that went on in the same minute, or was too young.

    What passes then tells nothing (core.film.checks), and lifts no wait.
    """
    share = now.facts.pace.passes_share
    told: dict[Finding, list[ZoneState]] = {}
    for state in _of(now, picked):
        coats = (x.coat for x in state.layers if x.coat.when.latest <= at.latest)
        coat = max(coats, key=lambda coat: coat.when.latest, default=None)
        if coat is None:
            continue
        age, least = at.latest - coat.when.earliest, passes_share(found, coat, share)
        if at.latest - coat.when.latest < SAME_MINUTE:
            doubt = finding("checked-at-once", Level.CAUTION, act=act)
        elif least is not None and age < least:
            doubt = finding(
                PASSED_TOO_SOON,
                Level.CAUTION,
                FROM_MEMORY,
                measured=minutes(round(age / timedelta(minutes=1))),
                wanted=hours(least / share / timedelta(hours=1)),
                of=coat.product_name,
                found=found.value,
                act=act,
            )
        else:
            continue
        told.setdefault(doubt, []).append(state)
    for doubt, states in told.items():
        yield replace(doubt, on=labels_of(states))


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
