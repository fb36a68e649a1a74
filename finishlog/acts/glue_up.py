"""Log a glue-up: which pieces became one piece of an assembly."""

from __future__ import annotations

from finishlog.acts.logged import Logged, ToLog, logged
from finishlog.asks.look import Look
from finishlog.clock import Clock
from finishlog.core.findings import Finding, Level
from finishlog.core.glue_up import GlueUp
from finishlog.core.records import Operation, Target
from finishlog.core.verdicts import Answer
from finishlog.errors import UsageFault
from finishlog.facts.load import Facts
from finishlog.picking import Zones
from finishlog.store.ledger import Ledger


def glue_up(
    ledger: Ledger,
    facts: Facts,
    clock: Clock,
    now: Look,
    then: Look,
    picked: Zones,
    typed: ToLog,
) -> Logged:
    """Record it for every picked piece of an assembly that is not glued up yet."""
    due = [g for g in then.bench.glue_ups if g.piece.id in picked.pieces]
    if not due:
        raise UsageFault(
            f"{', '.join(picked.labels)}: nothing is left to glue up",
            "an assembly says what it is made of: finishlog part new PROJECT/NAME --of side:2",
        )
    targets: set[Target] = set()
    for each in due:
        zones = {
            z.target
            for z in then.bench.zones
            if {z.piece.id, z.member_piece.id} & set(each.members)
        }
        ledger.joined(typed.at, zones, into=each.piece.id, members=each.members)
        targets |= zones
    whole = Zones(
        targets=frozenset(targets), parts=picked.parts, pieces=picked.pieces, labels=picked.labels
    )
    warnings = tuple(f for each in due for f in _warnings(each))
    return logged(ledger, facts, clock, now, whole, Operation.GLUE_UP, "", typed, warnings, ())


def _warnings(due: GlueUp) -> list[Finding]:
    verdict = due.verdict
    found = list(verdict.findings)
    if verdict.answer is not Answer.GO:
        found.append(
            Finding(
                Level.STOP,
                f"{due.part.name}: {verdict.because} ({verdict.waits_for})",
                "look for prints from the cauls when they come off",
            )
        )
    return found
