"""Read how films come off."""

from __future__ import annotations

from finishlog.core.published.removal import Removal
from finishlog.facts.table import Table, read


def read_removals(path: str) -> tuple[Removal, ...]:
    """Read removal.toml; ValueError when no entry is for any other family."""
    table = read(path)
    found = tuple(_removal(one) for one in table.tables("removal"))
    if sum(not each.families for each in found) != 1:
        raise table.bad("removal", "one entry, and only one, is for any other family")
    table.nothing_else()
    return found


def _removal(table: Table) -> Removal:
    found = Removal(
        families=table.words("families"),
        ladder=table.words("ladder"),
        again=table.text("again"),
        source=table.text("source"),
    )
    table.nothing_else()
    return found
