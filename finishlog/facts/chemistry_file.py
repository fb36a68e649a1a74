"""Read what names tell of a thing's chemistry, and what must never meet what."""

from __future__ import annotations

import re
from collections.abc import Iterable

from finishlog.core.findings import Level
from finishlog.core.mixing.chemistry import Chemistry, Clue, Conflict, Stranger, Substance
from finishlog.facts.table import Table, read


def read_chemistry(path: str) -> Chemistry:
    """Read chemistry.toml."""
    table = read(path)
    found = Chemistry(
        tuple(_clue(name, one) for name, one in table.named("substances").items()),
        tuple(_conflict(one) for one in table.tables("conflicts")),
        tuple(_stranger(one) for one in table.tables("strangers")),
    )
    table.nothing_else()
    return found


def _clue(name: str, table: Table) -> Clue:
    try:
        substance = Substance(name)
    except ValueError:
        raise table.bad("words", f"{name!r} is no substance known here") from None
    found = Clue(
        substance,
        tuple(_phrases(table.words("words"))),
        table.text("source"),
        frozenset(table.words("names")),
        frozenset(table.words("classes")),
        table.text("hazard", ""),
    )
    table.nothing_else()
    return found


def _phrases(typed: Iterable[str]) -> Iterable[tuple[str, ...]]:
    for phrase in typed:
        yield tuple(re.findall(r"[^\W_]+\*?", phrase.casefold()))


def _conflict(table: Table) -> Conflict:
    of = frozenset(table.choices("of", Substance))
    if len(of) != 2:
        raise table.bad("of", "two substances meet")
    found = Conflict(
        of,
        table.choice("level", Level),
        table.text("reason"),
        table.text("source"),
        table.flag("on_wood", False),
        table.flag("poison", False),
    )
    table.nothing_else()
    return found


def _stranger(table: Table) -> Stranger:
    found = Stranger(
        table.choice("substance", Substance),
        frozenset(table.words("unless")),
        table.choice("level", Level),
        table.text("reason"),
        table.text("remedy"),
        table.text("source"),
    )
    table.nothing_else()
    return found
