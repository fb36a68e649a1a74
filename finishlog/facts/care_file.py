"""Read what goes on a care card."""

from __future__ import annotations

from finishlog.core.bench.care_facts import CareFigures, CareKind, CareRule
from finishlog.core.shop.things import UsedFor
from finishlog.facts.table import Table, between, read


def read_care(path: str) -> CareFigures:
    """Read care.toml."""
    table = read(path)
    names = table.table("names")
    found = CareFigures(
        rules=tuple(_rule(one) for one in table.tables("rules")),
        waits_d=between(table.table("waits_d")),
        names={use: names.words(use) for use in UsedFor},
    )
    names.nothing_else()
    table.nothing_else()
    return found


def _rule(table: Table) -> CareRule:
    found = CareRule(
        kind=table.choice("kind", CareKind),
        text=table.text("text"),
        source=table.text("source"),
        on=frozenset(table.words("on")),
        film=table.flag("film", default=False),
        used_for=frozenset(table.choices("used_for", UsedFor)),
    )
    table.nothing_else()
    return found
