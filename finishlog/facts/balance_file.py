"""Read what is said of faces that carry unequal coats."""

from __future__ import annotations

from finishlog.core.bench.balance import BalanceFigures
from finishlog.facts.table import limit, read


def read_balance(path: str) -> BalanceFigures:
    """Read balance.toml."""
    table = read(path)
    alike, dissent = table.table("alike"), table.table("dissent")
    found = BalanceFigures(
        ahead_h=limit(table.table("ahead_h")),
        text=alike.text("text"),
        source=alike.text("source"),
        dissent=dissent.text("text"),
        dissent_source=dissent.text("source"),
    )
    for read_out in (alike, dissent, table):
        read_out.nothing_else()
    return found
