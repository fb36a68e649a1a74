"""Read the glues: all of them, or the one that a joint needs."""

from __future__ import annotations

from finishlog.core.finish.classes import Figure
from finishlog.core.published.glues import Glue, named_glue
from finishlog.facts.blocks import block, blocks
from finishlog.facts.table import Table, figure, limit, read, read_top


def read_glues(path: str) -> tuple[Glue, ...]:
    """Read glues.toml; the rule for sunken joints goes with every water-based glue."""
    table = read(path)
    level = figure(table.table("sunken_joint"))
    found = tuple(_glue(one, level) for one in table.tables("glues"))
    table.nothing_else()
    return found


def read_glue_named(path: str, name: str) -> Glue | None:
    """Read the one glue of glues.toml that has this key, name or alias; None when none has."""
    wanted = _letters(name)
    level = figure(read_top(path).table("sunken_joint"))
    found = [
        _glue(block(path, "glues", number, text), level)
        for number, text in enumerate(blocks(path, "glues"))
        if wanted in _letters(text.partition("\nwater_based")[0])
    ]
    return named_glue(found, name)


def _letters(text: str) -> str:
    return "".join(letter for letter in text.casefold() if letter.isalnum())


def _glue(table: Table, level: Figure) -> Glue:
    water_based = table.flag("water_based")
    found = Glue(
        key=table.text("key"),
        name=table.text("name"),
        aliases=table.words("aliases"),
        water_based=water_based,
        open=figure(table.table("open")),
        clamp=figure(table.table("clamp")),
        cure=figure(table.table("cure")),
        before_finish=figure(table.table("before_finish")),
        level=level if water_based else None,
        min_c=limit(table.table("min_c")) if "min_c" in table else None,
        wood_c=limit(table.table("wood_c")) if "wood_c" in table else None,
        notes=table.words("notes"),
    )
    table.nothing_else()
    return found
