"""Log how warm the surface of parts is: the wood or the film, not the room."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.asks.look.look import look
from finishlog.asks.look.standing import Standing, standings
from finishlog.asks.things.wood_air import WoodAir, rooms_of
from finishlog.context import Context
from finishlog.core.log.entries import PieceReading
from finishlog.core.log.when import When
from finishlog.picking import pick_zones


class Surface(Struct, frozen=True):
    """A surface temperature as recorded, the air of the rooms there, and how things stand now.

    `over_dew_c`: how far above the dew point a surface has to be before a coat.
    """

    act: int
    at: When
    labels: tuple[str, ...]
    temperature_c: float
    rooms: tuple[WoodAir, ...]
    over_dew_c: float
    standings: tuple[Standing, ...]


def log_surface(
    context: Context, *, parts: Sequence[str], face: str | None, temperature_c: float, at: When
) -> Surface:
    """Record the temperature (°C) of the surface, on every zone of the parts, joints too."""
    with context.writing("surface") as ledger:
        before = look(context, ledger.connection)
        picked = pick_zones(before.shop, before.bench, parts, face, joints_too=True)
        ledger.record(PieceReading(when=at, targets=picked.targets, temperature_c=temperature_c))
        after = before.after(ledger)
        states = [z for z in after.bench.zones if z.target in picked.targets]
        return Surface(
            act=ledger.act_id,
            at=at,
            labels=picked.labels,
            temperature_c=temperature_c,
            rooms=rooms_of(states, after),
            over_dew_c=context.facts.drying.dew_margin_c.value,
            standings=standings([s for s in states if s.layers or s.progress.next], after),
        )
