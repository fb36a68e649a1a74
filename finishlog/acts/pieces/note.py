"""Log words about a part: a note, or how the finish turned out."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.look.look import look
from finishlog.context import Context
from finishlog.core.findings import Finding
from finishlog.core.log.entries import Note
from finishlog.core.log.when import When
from finishlog.core.published.facts import Facts
from finishlog.core.rules.wood.bleached import met_in_the_wood
from finishlog.core.safety.whats_in import in_work
from finishlog.core.zone.grouping import labels_of
from finishlog.core.zone.state import ZoneState
from finishlog.errors import UsageFault
from finishlog.picking import pick_zones


class Noted(Struct, frozen=True):
    """A note as recorded; `warnings`: what it speaks of must not meet what is in the wood."""

    act: int
    labels: tuple[str, ...]
    text: str
    outcome: bool
    at: When
    warnings: tuple[Finding, ...] = ()


def log_note(
    context: Context,
    *,
    parts: Sequence[str],
    text: str,
    outcome: bool,
    at: When,
    next_time: bool = False,
) -> Noted:
    """Record a note on every zone of the parts, joints too.

    `next_time`: it goes into the steps of whatever is done as this was.
    """
    if not text.strip():
        raise UsageFault("a note needs words", "-t 'what there is to remember'")
    with context.writing("note") as ledger:
        seen = look(context, ledger.connection)
        picked = pick_zones(seen.shop, seen.bench, parts, None, joints_too=True)
        said = Note(when=at, targets=picked.targets, text=text, outcome=outcome)
        ledger.record(replace(said, next_time=True) if next_time else said)
        states = [z for z in seen.bench.zones if z.target in picked.targets]
        warnings = _poison(states, text, context.facts)
        return Noted(ledger.act_id, picked.labels, text, outcome, at, warnings)


def _poison(states: Iterable[ZoneState], text: str, facts: Facts) -> tuple[Finding, ...]:
    """Stop what is noted, done or only meant, before it meets a bleach that is in the wood."""
    comes = in_work(text)
    found: dict[Finding, list[ZoneState]] = {}
    for state in states:
        met = met_in_the_wood(state.entries, comes, facts, done=False) if comes else None
        if met is not None:
            found.setdefault(met, []).append(state)
    return tuple(replace(met, on=labels_of(on)) for met, on in found.items())
