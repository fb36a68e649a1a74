"""Read the sources that figures name."""

from __future__ import annotations

from enum import StrEnum

from msgspec import Struct

from finishlog.facts.table import Table, read


class Seen(StrEnum):
    """How a source was seen by whoever copied its figures."""

    READ = "read"
    SECOND_HAND = "read second-hand"
    MEMORY = "memory"


TIERS = {
    1: "government, standard or university",
    2: "trade book of the period",
    3: "trade press or trade page",
}


class Source(Struct, frozen=True):
    """Where a figure comes from. `tier`: a key of `TIERS`; `seen`: how it was seen."""

    id: str
    tier: int
    title: str
    seen: Seen
    note: str = ""


def read_sources(path: str) -> dict[str, Source]:
    """Read sources.toml."""
    table = read(path)
    found = {key: _source(key, one) for key, one in table.named("sources").items()}
    table.nothing_else()
    return found


def _source(key: str, table: Table) -> Source:
    tier = int(table.number("tier"))
    if tier not in TIERS:
        raise table.bad("tier", f"{tier} is no tier")
    found = Source(
        key, tier, table.text("title"), table.choice("seen", Seen), table.text("note", "")
    )
    table.nothing_else()
    return found
