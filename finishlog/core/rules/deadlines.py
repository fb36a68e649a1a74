"""Hard deadlines that run on a zone: no scuffing buys them off.

Surplus to be wiped off, a blush that only a mist within hours opens again, oily wood after its
solvent wipe. They count from the earliest moment.
"""

from __future__ import annotations

from datetime import datetime

from finishlog.core.film.checks import failed
from finishlog.core.findings import Finding, Level
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.published.facts import Facts
from finishlog.core.rules.bare_wood import wiped_until
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT, Answer, Deed, Verdict


def running(state: ZoneState, now: datetime) -> Verdict | None:
    """Return the deadline of what is on the zone that ends first; None when none runs."""
    if state.set_aside:
        return None
    found = [d for d in (_surplus(state), *_to_mend(state, now)) if _runs(d, now)]
    return min((d for d in found if d), key=lambda d: d.closes or now, default=None)


def _runs(deadline: Verdict | None, now: datetime) -> bool:
    return deadline is not None and deadline.closes is not None and now < deadline.closes


def _surplus(state: ZoneState) -> Verdict | None:
    wipe_by = state.top.wipe_off_by() if state.top else None
    if state.top is None or wipe_by is None:
        return None
    surplus = f"wipe off the surplus {state.top.coat.product_name}"
    return Verdict(Answer.DEADLINE, surplus, closes=wipe_by, deed=Deed.WIPE_OFF)


def _to_mend(state: ZoneState, now: datetime) -> list[Verdict]:
    """Return the deadlines of faults, each with its remedy in words."""
    return [
        Verdict(
            Answer.DEADLINE,
            f"{fault.name}: {fault.remedies(now)[0]}",
            closes=fault.deadline,
            deed=Deed.MEND,
            fault=fault.fault.act,
        )
        for fault in state.faults
        if fault.deadline is not None
    ]


def surplus_doubt(state: ZoneState, now: datetime) -> Finding | None:
    """Ask whether surplus was wiped off in time, where nothing on record says so."""
    top = state.top
    wipe_by = top.wipe_off_by() if top else None
    if top is None or wipe_by is None or now < wipe_by:
        return None
    if any(not failed(check.found) for check in top.checks):
        return None
    return Finding(
        Level.CAUTION,
        f"was the surplus {top.coat.product_name} wiped off in time? It is not on record",
        "test that it is not sticky, or log the wipe",
        COMMON_PRACTICE,
    )


def coat_while_wiped(state: ZoneState, verdict: Verdict, now: datetime, facts: Facts) -> Verdict:
    """Turn a coat that may go on, or any, into a deadline while a solvent wipe is good for it."""
    until = wiped_until(state, facts)
    if until is None or now >= until or verdict.answer not in MAY_ACT | {Answer.DONE}:
        return verdict
    return Verdict(
        Answer.DEADLINE,
        "wiped with solvent, its oil comes back: coat it",
        verdict.low,
        verdict.high,
        until,
        findings=verdict.findings,
        deed=Deed.COAT,
    )
