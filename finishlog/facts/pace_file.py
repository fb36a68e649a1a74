"""Read how far a shop's pace may lie from a label's hours."""

from __future__ import annotations

from finishlog.core.clock.pace_posterior import PaceFigures
from finishlog.facts.table import Table, read


def read_pace(path: str) -> PaceFigures:
    """Read pace.toml."""
    table = read(path)
    found = PaceFigures(
        spread=_assumed(table, "spread_ln"),
        scatter=_assumed(table, "scatter_ln"),
        basis=tuple(table.table(key).text("basis") for key in ("spread_ln", "scatter_ln")),
    )
    table.nothing_else()
    return found


def _assumed(table: Table, key: str) -> float:
    """Read an assumption of our own, which must say so."""
    one = table.table(key)
    value, assumed = one.number("value"), one.flag("assumed")
    one.text("basis")
    one.nothing_else()
    if value <= 0 or not assumed:
        raise table.bad(key, "must be above 0 and say that it is assumed")
    return value
