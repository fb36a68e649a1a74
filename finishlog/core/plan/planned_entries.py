"""What the log will hold once a planned job is done, and how the job is shown."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime

from finishlog.core.film.damage import perhaps_too_cold
from finishlog.core.findings import Answer, Finding, Level, celsius, finding, is_lesson
from finishlog.core.finish.classes import judged_by
from finishlog.core.log.entries import AnyEntry, Coat, Joined, Work
from finishlog.core.log.words import Operation
from finishlog.core.plan.jobs import Job
from finishlog.core.plan.jobs_that_fit import Hands, minutes
from finishlog.core.plan.results import Chore, PlannedTask
from finishlog.core.plan.shop_ahead import ShopAhead
from finishlog.core.zone.grouping import Label, describe, group_of


def by_hand(ahead: ShopAhead, job: Job, start: datetime, end: datetime) -> list[AnyEntry]:
    """Return the entries of work by hand: one, or one for each piece that is glued up."""
    if not job.glue_ups:
        targets = job.targets | ahead.edges_of(job.targets)
        return [Work(**ahead.head(start, end, targets), operation=job.operation)]
    return [
        Joined(
            **ahead.head(start, end, ahead.of_members(due)),
            into=due.piece.id,
            members=frozenset(due.members),
        )
        for due in job.glue_ups
    ]


def coat(
    ahead: ShopAhead, job: Job, start: datetime, end: datetime, hands: Hands
) -> list[AnyEntry]:
    """Return the entries of a coat: solvent on the wood before it, its surplus off after it."""
    product = ahead.shop.products[job.step.product or 0]
    of = ahead.facts.finish_class(product.class_key)
    targets = job.targets | ahead.edges_of(job.targets)
    entries: list[AnyEntry] = []
    if job.wiped_first:
        wiped = start + minutes(hands.solvent_wipe(job))
        head = ahead.head(start, wiped, targets)
        entries.append(Work(**head, operation=Operation.SOLVENT_WIPE))
        start = wiped
    on = end - minutes(hands.wipe_off(job))
    entries.append(
        Coat(
            **ahead.head(start, on, targets),
            product=product.id,
            product_name=product.name,
            figures=judged_by(of, product.label, product.label_window, ""),
        )
    )
    if of.wipe_off_h is not None:
        entries.append(Work(**ahead.head(on, end, targets), operation=Operation.WIPE))
    return entries


def task_of(
    job: Job,
    start: datetime,
    end: datetime,
    entries: Sequence[AnyEntry],
    missed: datetime | None = None,
) -> PlannedTask:
    """Return a job as a task; `missed`: when the window closed that this scuffing makes up for."""
    ready, is_coat = job.verdict.high, job.operation is Operation.COAT
    return PlannedTask(
        chore=Chore.WORK,
        start=start,
        end=end,
        operation=job.operation,
        product=job.step.product,
        part=job.part,
        label=_label(job),
        coat=job.coat,
        ready_since=ready if ready is not None and _worked_last(job) <= ready <= start else None,
        closes=job.verdict.closes if is_coat else None,
        missed=missed,
        because=None if missed or is_coat else _asks_for_it(job),
        test=_test(job),
        lesson=next((f for f in job.verdict.findings if is_lesson(f)), None),
        wiped=is_coat and any(_is_wipe(entry) for entry in entries),
        entries=tuple(entries),
    )


def _asks_for_it(job: Job) -> Finding | None:
    """Return what asks for a scuffing that no step asks for."""
    price = job.operation is Operation.SCUFF and job.step not in job.states[0].progress.steps
    return next((f for f in job.verdict.findings if f.scuff), None) if price else None


def _worked_last(job: Job) -> datetime:
    """Return when a job's zones were last worked on: before that nothing was ready for it."""
    done = (e.when.latest for s in job.states for e in s.entries if isinstance(e, Work))
    return max(done, default=datetime.min.replace(tzinfo=UTC))


def _is_wipe(entry: AnyEntry) -> bool:
    return isinstance(entry, Work) and entry.operation is Operation.WIPE


def _test(job: Job) -> Finding | None:
    """Return what a person should try before; None when time alone decides."""
    verdict = job.verdict
    for state in job.states:
        for layer in state.layers:
            cold = perhaps_too_cold(layer)
            if cold is not None:
                return finding("first-night-cold", measured=celsius(cold))
    if verdict.answer is not Answer.TEST:
        return None
    if not verdict.binds.plain:
        return verdict.binds
    cautions = [f for f in verdict.findings if f.level is Level.CAUTION and not is_lesson(f)]
    return cautions[0] if cautions else (verdict.binds if verdict.high is None else None)


def _label(job: Job) -> Label:
    if job.glue_ups:
        return describe(job.part, [due.piece.number for due in job.glue_ups], ())
    return group_of(job.states).label
