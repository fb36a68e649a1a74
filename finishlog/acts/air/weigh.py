"""Log what pieces weigh, and say what their weights tell of the wood."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.asks.look.look import look
from finishlog.asks.look.standing import Standing, standings
from finishlog.asks.look.weighings import Series, series_of
from finishlog.context import Context
from finishlog.core.findings import Finding
from finishlog.core.log.entries import PieceReading
from finishlog.core.log.when import When
from finishlog.core.log.words import Operation
from finishlog.core.rules.all import findings_of
from finishlog.core.rules.wood.weighed import TOLD
from finishlog.core.zone.asked import work_asked
from finishlog.errors import UsageFault
from finishlog.picking import pick_zones


class Weighed(Struct, frozen=True):
    """A weight as recorded, the series that it ends, and what that tells.

    `pieces`: how many were on the scale together.
    """

    act: int
    at: When
    labels: tuple[str, ...]
    weight_g: float
    pieces: int
    series: Series | None
    findings: tuple[Finding, ...]
    standings: tuple[Standing, ...]


def log_weight(context: Context, *, parts: Sequence[str], weight_g: float, at: When) -> Weighed:
    """Record what whole pieces weigh (g), several of them together."""
    with context.writing("weigh") as ledger:
        before = look(context, ledger.connection)
        picked = pick_zones(before.shop, before.bench, parts, None, joints_too=True)
        if picked.face_named:
            raise UsageFault("a face is not weighed by itself", "name the part or its pieces")
        ledger.record(PieceReading(when=at, targets=picked.targets, weight_g=weight_g))
        after = before.after(ledger)
        states = [z for z in after.bench.zones if z.target in picked.targets]
        near = after.bench.around(context.facts)
        found = findings_of(states[0], work_asked(Operation.SHAPE), near)
        return Weighed(
            act=ledger.act_id,
            at=at,
            labels=picked.labels,
            weight_g=weight_g,
            pieces=len({target.piece for target in picked.targets}),
            series=series_of(states[0].entries, context.facts),
            findings=tuple(f for f in found if f.rule in TOLD),
            standings=standings([s for s in states if s.layers or s.progress.next], after),
        )
