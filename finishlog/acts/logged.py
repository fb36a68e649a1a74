"""An act as it was recorded, and what follows: the answer of `log`."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime

from finishlog.acts.warn import THIS_ACT
from finishlog.asks.look import Look, look
from finishlog.asks.rags import RagsLine, open_rags
from finishlog.asks.standing import Standing, standings
from finishlog.clock import Clock
from finishlog.core.bench import bench_state
from finishlog.core.findings import Finding
from finishlog.core.finishes import Method
from finishlog.core.records import Operation, When
from finishlog.core.safety_notes import SafetyNote
from finishlog.core.shop import Log
from finishlog.facts.load import Facts
from finishlog.picking import Zones
from finishlog.store.ledger import Ledger


@dataclass(frozen=True, slots=True)
class ToLog:
    """What was typed: `words` are parts and then, perhaps, what was done; when and how."""

    words: tuple[str, ...]
    at: When
    face: str | None = None
    method: Method | None = None
    scuffed: bool | None = None
    grit: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Logged:
    """An act as recorded, what comes next, and what to heed."""

    act: int
    operation: Operation
    product: str
    at: When
    labels: tuple[str, ...]
    after: tuple[Standing, ...]
    warnings: tuple[Finding, ...]
    rags: tuple[RagsLine, ...]
    notes: tuple[SafetyNote, ...]
    late: bool
    entries_after_it: int


def as_of(seen: Look, moment: datetime, facts: Facts, clock: Clock) -> Look:
    """Look back: the shop as the log leaves it at a moment."""
    if moment >= clock.now:
        return seen
    log = Log(tuple(e for e in seen.log.entries if e.when.latest <= moment))
    return Look(seen.shop, log, bench_state(seen.shop, log, facts, moment, clock.zone))


def logged(
    ledger: Ledger,
    facts: Facts,
    clock: Clock,
    before: Look,
    picked: Zones,
    operation: Operation,
    product: str,
    typed: ToLog,
    warnings: tuple[Finding, ...],
    notes: tuple[SafetyNote, ...],
) -> Logged:
    """Look again, and say how things stand after an act."""
    after = look(ledger.connection, facts, clock)
    later = [
        e
        for e in before.log.entries
        if e.targets & picked.targets and e.when.earliest > typed.at.latest
    ]
    mine = [z for z in after.bench.zones if z.target in picked.targets]
    return Logged(
        act=ledger.act_id,
        operation=operation,
        product=product,
        at=typed.at,
        labels=picked.labels,
        after=standings([z for z in mine if not z.is_bare_joint] or mine, after),
        warnings=tuple(
            replace(w, remedy=w.remedy.replace(THIS_ACT, str(ledger.act_id))) for w in warnings
        ),
        rags=open_rags(after, facts, clock),
        notes=notes,
        late=bool(later),
        entries_after_it=len(later),
    )
