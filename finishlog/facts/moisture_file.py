"""Read how wet wood may be, what air it settles in, and between what it moves evenly."""

from __future__ import annotations

from finishlog.core.wood.moisture import MoistureFigures
from finishlog.facts.table import between, limit, read


def read_moisture(path: str) -> MoistureFigures:
    """Read moisture.toml."""
    table = read(path)
    found = MoistureFigures(
        at_most_pct=limit(table.table("at_most_pct")),
        over_air_pct=limit(table.table("over_air_pct")),
        air_rh_pct=between(table.table("air_rh_pct")),
        air_least_c=limit(table.table("air_least_c")),
        air_most_c=limit(table.table("air_most_c")),
        moves_pct=between(table.table("moves_pct")),
        saturated_pct=limit(table.table("saturated_pct")),
        meter_pct=between(table.table("meter_pct")),
    )
    table.nothing_else()
    return found
