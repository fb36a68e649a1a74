"""An act as it was recorded, and what follows: the answer of `log`."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from finishlog.asks.look import Look, look
from finishlog.asks.rags import RagsLine, open_rags
from finishlog.asks.standing import Standing, standings
from finishlog.clock import Clock
from finishlog.core.bench import bench_state
from finishlog.core.findings import Finding
from finishlog.core.finishes import Method
from finishlog.core.milestones import Milestone, furthest
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
class AfterIt:
    """How a group stands after the act, and its next milestone when its coats are done."""

    standing: Standing
    coat: int
    next_milestone: Milestone | None


@dataclass(frozen=True, slots=True)
class Logged:
    """An act as recorded, what comes next, and what to heed."""

    act: int
    operation: Operation
    product: str
    at: When
    labels: tuple[str, ...]
    after: tuple[AfterIt, ...]
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
    return Logged(
        act=ledger.act_id,
        operation=operation,
        product=product,
        at=typed.at,
        labels=picked.labels,
        after=_after(after, picked, product, clock.now),
        warnings=warnings,
        rags=open_rags(after, facts, clock),
        notes=notes,
        late=bool(later),
        entries_after_it=len(later),
    )


def _after(after: Look, picked: Zones, product: str, now: datetime) -> tuple[AfterIt, ...]:
    states = [z for z in after.bench.zones if z.target in picked.targets]
    lines = []
    for line in standings(states, after.shop):
        mine = [z for z in states if z.part.path == line.part and z.piece.number in line.pieces]
        coats = max(
            (sum(1 for x in z.layers if x.coat.product_name == product) for z in mine), default=0
        )
        coming = furthest(mine, now)[1] if not line.operation else None
        lines.append(AfterIt(line, coats, coming))
    return tuple(lines)
