"""What a plan could not take in, and why: nothing vanishes silently."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from datetime import timedelta

from finishlog.core.film.progress import after_glue_up
from finishlog.core.findings import Answer, Finding, finding, hours
from finishlog.core.plan.results import Unplanned
from finishlog.core.plan.session import Visit
from finishlog.core.plan.waits import Held, Waiting
from finishlog.core.shop.things import Part, Shop
from finishlog.core.zone.grouping import describe, group_of
from finishlog.core.zone.state import ZoneState

NO_HOURS = finding("no-hours")
SHUT = finding("shop-shut")
NO_STEPS = finding("no-steps-to-plan")


def unplanned(
    waiting: Waiting, last: Visit | None, shop: Shop, stopped: Finding | None
) -> tuple[Unplanned, ...]:
    """Return everything with steps left, alike ones together, and parts that have no steps."""
    too_long = {t: job for job in (last.never_fit if last else ()) for t in job.targets}
    alike: dict[Hashable, list[ZoneState]] = {}
    unmade = {g.piece.id for g in waiting.ahead.glue_ups(waiting.ahead.now)}
    for zone in waiting.ahead.zones:
        if zone.progress.next is None or zone.piece.id in unmade:
            continue
        held = waiting.held.get(zone.target)
        reason = (
            _too_long(last)
            if zone.target in too_long and last
            else _reason(held, last, shop, stopped)
        )
        alike.setdefault((zone.part.id, zone.progress.next.operation, reason), []).append(zone)
    found = [_unplanned(states, key[2], waiting) for key, states in alike.items()]  # type: ignore[index]
    return (*found, *_glue_ups(waiting), *_without_steps(waiting, shop))


def _unplanned(states: Sequence[ZoneState], reason: Finding, waiting: Waiting) -> Unplanned:
    first = states[0]
    held = waiting.held.get(first.target)
    step = first.progress.next
    return Unplanned(
        part=first.part,
        label=group_of(states).label,
        operation=step.operation if step else None,
        answer=held.answer if held else None,
        because=reason,
        needs_air=held is not None and _needs_air(held),
    )


def _reason(held: Held | None, last: Visit | None, shop: Shop, stopped: Finding | None) -> Finding:
    if last is None:
        return SHUT if shop.hours.patterns else NO_HOURS
    if held is not None:
        return held.because
    return stopped or finding("no-place")


def _needs_air(held: Held) -> bool:
    still = held.answer is Answer.DRYING and held.until is None
    return held.answer is Answer.NOT_IN_THIS_AIR or still


def _too_long(last: Visit) -> Finding:
    return finding("too-long", wanted=hours(last.longest_min / 60))


def _glue_ups(waiting: Waiting) -> Iterator[Unplanned]:
    by_part: dict[int, list[int]] = {}
    why: dict[int, tuple[Part, Answer, Finding]] = {}
    far = waiting.ahead.now + timedelta(days=366)
    for due in waiting.ahead.glue_ups(far):
        verdict = due.verdict
        by_part.setdefault(due.part.id, []).append(due.piece.number)
        why.setdefault(due.part.id, (due.part, verdict.answer, verdict.binds))
    for part, numbers in by_part.items():
        of, answer, because = why[part]
        yield Unplanned(of, describe(of, numbers, ()), None, answer, because)


def _without_steps(waiting: Waiting, shop: Shop) -> Iterator[Unplanned]:
    """Yield the parts that nothing is planned for: no steps, nor any on what they become."""
    finished_whole = {
        need.part for part in shop.parts if after_glue_up(part.steps) for need in part.needs
    }
    here = {zone.member.id for zone in waiting.ahead.zones}
    for part in shop.parts:
        if part.id in here and not (part.steps or part.needs or part.id in finished_whole):
            numbers = [piece.number for piece in part.pieces]
            yield Unplanned(part, describe(part, numbers, ()), None, None, NO_STEPS)
