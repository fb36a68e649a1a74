"""What the faults that stand on a zone say to its next step."""

from __future__ import annotations

from datetime import datetime

from msgspec.structs import replace

from finishlog.core.film.faults import StandingFault
from finishlog.core.findings import Finding, Level
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Operation
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Answer, Deed, Verdict


def finding_of(of: StandingFault, now: datetime) -> Finding:
    """Put a fault and its remedy into a finding."""
    return Finding(
        of.known.level,
        f"{of.name} on {of.coat.product_name if of.coat else 'the wood'}: {of.known.means}",
        ", ".join(remedy.rstrip(".") for remedy in of.remedies(now)),
        of.known.source,
    )


def fault_findings(
    state: ZoneState, now: datetime, doing: Operation | None = None
) -> tuple[Finding, ...]:
    """Return every fault that stands on a zone; what is being done about it makes it a note."""
    return tuple(
        replace(finding_of(fault, now), level=Level.NOTE)
        if doing in fault.known.answered_by
        else finding_of(fault, now)
        for fault in state.faults
    )


def waits_for_repair(state: ZoneState) -> Verdict | None:
    """Return what has to be done again before any other step: an open joint."""
    fault = next((f for f in state.faults if f.known.waits_for), None)
    if fault is None:
        return None
    return Verdict(
        Answer.WAITS, f"{fault.name} since it was found", waits_for=fault.known.waits_for
    )


def blocked_by_fault(
    state: ZoneState, stage: Stage, now: datetime, doing: Operation | None = None
) -> Verdict | None:
    """Return the newest fault that keeps a zone from a stage; what answers it is never barred."""
    barred = [f for f in state.faults if stage in f.known.blocks]
    if doing is not None:
        barred = [f for f in barred if doing not in f.known.answered_by]
    if not barred:
        return None
    return _held_by(barred[-1], now)


def _held_by(fault: StandingFault, now: datetime) -> Verdict:
    return Verdict(
        Answer.BLOCKED,
        f"{fault.name}: {ends_with(fault, now)}",
        deed=Deed.CHECK_AGAIN if _by_check_alone(fault) else Deed.MEND,
        binds=finding_of(fault, now),
        fault=fault.fault.act,
    )


def ends_with(of: StandingFault, now: datetime) -> str:
    """Say in a few words what ends a fault."""
    if _by_check_alone(of):
        checks = " or ".join(sorted(f.value for f in of.known.answered_by_checks))
        return f"until a check finds {checks}"
    return of.remedies(now)[0]


def _by_check_alone(of: StandingFault) -> bool:
    return bool(of.known.answered_by_checks) and of.known.not_by_mending


def to_mend(state: ZoneState, now: datetime) -> Verdict | None:
    """Return what a zone whose steps are all behind still asks for: a fault to be mended."""
    left = [f for f in state.faults if f.known.level is Level.STOP]
    if not left:
        return None
    return _held_by(left[-1], now)
