"""A film that failed a check: why, and until when to take it off to keep a date."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta, tzinfo

from msgspec.structs import replace

from finishlog.core.film.checks import standing_failures
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Answer, Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check
from finishlog.core.log.words import ContainerDeed, Found, Operation
from finishlog.core.mixing.containers import ENDED
from finishlog.core.published.facts import Facts
from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.published.removal import removal_finding
from finishlog.core.published.species import rules_for_wood
from finishlog.core.rules.film.soft import soft_findings, still_soft, wait_until, waiting_helps
from finishlog.core.shop.things import Log, Shop
from finishlog.core.trouble.causes import as_found, asked_first, looked_into
from finishlog.core.trouble.suspect import Stands, Suspect
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Told, Verdict


def explained(
    state: ZoneState,
    zones: Sequence[ZoneState],
    shop: Shop,
    log: Log,
    facts: Facts,
    zone: tzinfo,
    now: datetime,
) -> ZoneState:
    """Add to a film that failed what may lie behind it and when to decide; leave others alone."""
    failures = standing_failures(state.top.checks) if state.top else ()
    if not failures or state.set_aside:
        return state
    failure = failures[-1]
    return replace(
        state, told=Told(lambda: _with_why(state, failure, zones, shop, log, facts, zone, now))
    )


def _with_why(
    state: ZoneState,
    failure: Check,
    zones: Sequence[ZoneState],
    shop: Shop,
    log: Log,
    facts: Facts,
    zone: tzinfo,
    now: datetime,
) -> Verdict:
    soft, found = still_soft(state.top), []
    likely: tuple[Suspect, ...] = ()
    differs: tuple[Finding, ...] = ()
    if soft is None or soft.is_late or soft.is_overdue:
        likely, differs = looked_into(failure, state, log, zones, facts)
    helps = not likely or likely[0].cause.time_helps or not likely[0].is_shown
    if soft is not None and state.verdict.answer is not Answer.STALLED:
        found += soft_findings(state, soft, now, facts, time_helps=helps)
    found += _why(likely, differs if likely else ())
    if soft is not None and soft.is_late:
        begins_again = soft.failure.found is Found.TACKY
        found += _begin_again(state, facts) if begins_again else []
        waits = state.top is not None and waiting_helps(state.top, soft, helps)
        found += _decide_by(state, shop, facts, zone, now, waits=waits)
    if state.verdict.answer is Answer.STALLED and state.top is not None:
        found += _mark_the_can(state.top, likely)
        found.append(removal_finding(state.top.of.family, facts.removals))
    return replace(state.verdict, findings=(*state.verdict.findings, *found))


def _mark_the_can(top: Layer, likely: Sequence[Suspect]) -> list[Finding]:
    """Ask that a can is marked that the log shows as the likeliest cause, while nobody did."""
    came = top.came_from
    if came is None or came.state is None or not likely or not likely[0].is_shown:
        return []
    if likely[0].cause.evidence is not Evidence.OLD_CONTAINER or any(came.condemned()):
        return []
    if any(came.later(came.state, deed) for deed in (*ENDED, ContainerDeed.TESTED)):
        return []
    return [finding("mark-the-can", Level.CAUTION, COMMON_PRACTICE, can=came.name)]


def _begin_again(state: ZoneState, facts: Facts) -> list[Finding]:
    """Say how a film that oily wood keeps soft is begun again: washed off, then a barrier."""
    wood = facts.species_named(state.species) if state.species else None
    if wood is None or not wood.oily:
        return []
    first = state.layers[0].of
    return [
        finding("begin-again", source=rule.source, wood=wood.name, remedy=rule.remedy)
        for rule in rules_for_wood(facts.wood_rules, wood, first)
        if rule.is_for_oily and first.key not in rule.barrier
    ]


def _why(likely: Sequence[Suspect], differences: Sequence[Finding]) -> list[Finding]:
    shown = as_found(each for each in likely if each.shows is not None)
    return [*differences, *shown, *asked_first(likely), *_open(likely), *_same(likely)]


def _same(likely: Sequence[Suspect]) -> list[Finding]:
    """Name what nobody logged, and what was the same where all is well, all in one."""
    same = [each for each in likely if each.stands is Stands.SHARED and each.shows is None]
    causes = tuple(each.cause.words for each in same)
    sound = same[0].sound if same else ""
    return [finding("causes-same", source=COMMON_PRACTICE, causes=causes, sound=sound)][: len(same)]


def _open(likely: Sequence[Suspect]) -> list[Finding]:
    """Name what cannot be ruled out, all in one."""
    left = [each for each in likely if each.stands is Stands.OPEN]
    causes = tuple(each.cause.words for each in left)
    missing = tuple(each.missing.value if each.missing else "" for each in left)
    said = finding("causes-open", source=COMMON_PRACTICE, causes=causes, missing=missing)
    return [said] if left else []


def _decide_by(
    state: ZoneState, shop: Shop, facts: Facts, zone: tzinfo, now: datetime, *, waits: bool
) -> list[Finding]:
    """Say until when to take it off so that doing it again still keeps the date, if there is one.

    Without one it is given the time in which its class may get fully hard, if it `waits`.
    """
    due = next((p.due for p in shop.projects if p.id == state.part.project), None)
    again = _again_h(state, shop, facts)
    until = wait_until(state.top) if state.top else None
    if waits and due is None and until is not None and until > now:
        found = state.top.coat.product_name if state.top else ""
        return [finding("give-it-until", by=_day(until, zone), of=found)]
    if due is None or again is None:
        return []
    last = due - timedelta(hours=again)
    return [
        finding(
            "too-late-to-begin-again" if last <= now else "take-off-by",
            Level.CAUTION,
            COMMON_PRACTICE,
            by=_day(last, zone),
            due=_day(due, zone),
            days=again / 24,
        )
    ]


def _again_h(state: ZoneState, shop: Shop, facts: Facts) -> float | None:
    """Return the label hours of all coats of its steps, else of those on it, to packing."""
    products = [s.product for s in state.progress.steps if s.operation is Operation.COAT]
    products = products or [each.coat.product for each in state.layers]
    known = [shop.products[p] for p in products if p is not None and p in shop.products]
    if not known:
        return None
    last = len(known) - 1
    hours = 0.0
    for n, product in enumerate(known):
        figures = {**facts.finish_class(product.class_key).stages, **product.label}
        figure = figures.get(Stage.PACK if n == last else Stage.RECOAT)
        hours += figure.high_h if figure else 0.0
    return hours


def _day(moment: datetime, zone: tzinfo) -> str:
    local = moment.astimezone(zone)
    return f"{local:%a} {local.day} {local:%b}"
