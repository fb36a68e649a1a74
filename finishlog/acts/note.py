"""Log words about a part: a note, or how the finish turned out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from finishlog.asks.look import look
from finishlog.clock import Clock
from finishlog.core.records import When
from finishlog.errors import UsageFault
from finishlog.facts.load import Facts
from finishlog.picking import pick_zones
from finishlog.store.database import Database


@dataclass(frozen=True, slots=True)
class Noted:
    """A note as recorded."""

    act: int
    labels: tuple[str, ...]
    text: str
    outcome: bool
    at: When


def log_note(
    database: Database,
    facts: Facts,
    clock: Clock,
    words: str,
    *,
    parts: Sequence[str],
    text: str,
    outcome: bool,
    at: When,
) -> Noted:
    """Record a note on every zone of the parts, joints too."""
    if not text.strip():
        raise UsageFault("a note needs words", "-t 'what there is to remember'")
    with database.writing("note", words, clock.now, clock.zone.key) as ledger:
        seen = look(ledger.connection, facts, clock)
        picked = pick_zones(seen.shop, seen.bench, parts, None, joints_too=True)
        ledger.note(at, picked.targets, text=text, outcome=outcome)
        return Noted(ledger.act_id, picked.labels, text, outcome, at)
