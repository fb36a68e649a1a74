"""A film that stays soft, slow or stalled: why, and until when to take it off to keep a date."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta, tzinfo

from msgspec.structs import replace

from finishlog.core.findings import Answer, Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found, Operation
from finishlog.core.published.facts import Facts
from finishlog.core.published.removal import removal_finding
from finishlog.core.published.species import rules_for_wood
from finishlog.core.rules.film.soft import Soft, soft_findings, still_soft
from finishlog.core.shop.things import Log, Shop
from finishlog.core.trouble.causes import causes_of_a_stall
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
    """Add to a soft film what may lie behind it and when to decide; leave any other alone."""
    soft = still_soft(state.top)
    if soft is None or state.set_aside:
        return state
    return replace(
        state, told=Told(lambda: _with_why(state, soft, zones, shop, log, facts, zone, now))
    )


def _with_why(
    state: ZoneState,
    soft: Soft,
    zones: Sequence[ZoneState],
    shop: Shop,
    log: Log,
    facts: Facts,
    zone: tzinfo,
    now: datetime,
) -> Verdict:
    found = [] if state.verdict.answer is Answer.STALLED else soft_findings(state, soft, now, facts)
    if soft.is_late:
        found += _why(state, zones, log, facts)
    if soft.is_late and soft.failure.found is Found.TACKY:
        found += _begin_again(state, facts)
    if soft.is_late:
        found += _decide_by(state, shop, facts, zone, now)
    if state.verdict.answer is Answer.STALLED and state.top is not None:
        found.append(removal_finding(state.top.of.family, facts.removals))
    return replace(state.verdict, findings=(*state.verdict.findings, *found))


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


def _why(state: ZoneState, zones: Sequence[ZoneState], log: Log, facts: Facts) -> list[Finding]:
    likely = causes_of_a_stall(state, log, zones, facts)
    seen = tuple(c.words for c in likely if c.spoken_for)
    unseen = tuple(c.words for c in likely if not c.spoken_for)
    said = (("causes-seen", seen), ("causes-open", unseen))
    return [finding(rule, source=COMMON_PRACTICE, causes=words) for rule, words in said if words]


def _decide_by(
    state: ZoneState, shop: Shop, facts: Facts, zone: tzinfo, now: datetime
) -> list[Finding]:
    """Say until when to take it off so that doing it again still keeps the date."""
    due = next((p.due for p in shop.projects if p.id == state.part.project), None)
    again = _again_h(state, shop, facts)
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
    """Return the label hours of all coats of its steps, to packing; None without steps."""
    products = [s.product for s in state.progress.steps if s.operation is Operation.COAT]
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
