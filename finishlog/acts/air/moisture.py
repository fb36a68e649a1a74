"""Log how moist the wood of parts is, as a meter shows it."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.asks.look.look import look
from finishlog.asks.look.standing import Standing, standings
from finishlog.asks.things.wood_air import WoodAir, rooms_of
from finishlog.context import Context
from finishlog.core.findings import Finding
from finishlog.core.finish.classes import Range
from finishlog.core.log.entries import PieceReading
from finishlog.core.log.when import When
from finishlog.core.rules.wood.too_wet import too_wet
from finishlog.picking import pick_zones


class Moist(Struct, frozen=True):
    """A moisture reading as recorded, the air of the rooms there, and what speaks against a coat.

    `meter`: between what a meter can be trusted; None: the reading lies there.
    """

    act: int
    at: When
    labels: tuple[str, ...]
    moisture_pct: float
    rooms: tuple[WoodAir, ...]
    warnings: tuple[Finding, ...]
    meter: Range | None
    standings: tuple[Standing, ...]


def log_moisture(
    context: Context, *, parts: Sequence[str], face: str | None, moisture_pct: float, at: When
) -> Moist:
    """Record the moisture (%) of the wood, on every zone of the parts, joints too."""
    with context.writing("moisture") as ledger:
        before = look(context, ledger.connection)
        picked = pick_zones(before.shop, before.bench, parts, face, joints_too=True)
        ledger.record(PieceReading(when=at, targets=picked.targets, moisture_pct=moisture_pct))
        after = before.after(ledger)
        states = [z for z in after.bench.zones if z.target in picked.targets]
        rooms = rooms_of(states, after)
        figures = context.facts.moisture
        found = (f for room in rooms for f in too_wet(moisture_pct, room.air, figures))
        trusted = figures.meter_pct.low <= moisture_pct <= figures.meter_pct.high
        return Moist(
            act=ledger.act_id,
            at=at,
            labels=picked.labels,
            moisture_pct=moisture_pct,
            rooms=rooms,
            warnings=tuple(dict.fromkeys(found)),
            meter=None if trusted else figures.meter_pct,
            standings=standings([s for s in states if s.layers or s.progress.next], after),
        )
