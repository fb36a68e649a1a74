"""Read the rules: what may go over what, and what a wood does to a finish.

A start needs a few rules and woods of many, so those are read one by one.
"""

from __future__ import annotations

import re
from collections.abc import Collection
from functools import cache

from finishlog.core.findings import Level
from finishlog.core.finish.classes import Limit, Method
from finishlog.core.finish.overcoat import BARE_WOOD, LiftedBy, OvercoatAnswer, OvercoatRule
from finishlog.core.wood.species import (
    Condition,
    Pores,
    Species,
    Tannin,
    WantsFiller,
    WoodRule,
    named,
)
from finishlog.facts.blocks import block, blocks
from finishlog.facts.table import Table, limit, read, wait


def read_overcoats(path: str) -> tuple[OvercoatRule, ...]:
    """Read overcoats.toml."""
    table = read(path)
    found = tuple(_overcoat(rule) for rule in table.tables("rules"))
    table.nothing_else()
    return found


@cache
def read_overcoats_naming(
    path: str, under: Collection[str], over: Collection[str] | None = None
) -> tuple[OvercoatRule, ...]:
    """Read the rules of overcoats.toml that name a word of `under` and, if given, of `over`."""
    return tuple(
        _overcoat_block(path, number, text)
        for number, (below, above, text) in enumerate(_overcoat_blocks(path))
        if not below.isdisjoint(under) and (over is None or not above.isdisjoint(over))
    )


@cache
def _overcoat_blocks(path: str) -> tuple[tuple[frozenset[str], frozenset[str], str], ...]:
    return tuple(
        (_words(text, "under"), _words(text, "over"), text) for text in blocks(path, "rules")
    )


def _words(text: str, key: str) -> frozenset[str]:
    line = re.search(rf"^{key} = (.*)$", text, re.MULTILINE)
    return frozenset(re.findall(r'"([^"]*)"', line[1])) if line else frozenset()


@cache
def _overcoat_block(path: str, number: int, text: str) -> OvercoatRule:
    return _overcoat(block(path, "rules", number, text))


def _overcoat(table: Table) -> OvercoatRule:
    under = table.words("under")
    buried = under != (BARE_WOOD,)
    found = OvercoatRule(
        id=table.text("id"),
        under=under,
        over=table.words("over"),
        answer=table.choice("answer", OvercoatAnswer),
        reason=table.text("reason"),
        source=table.text("source"),
        wait=wait(table),
        barrier=table.words("barrier"),
        remedy=table.text("remedy", ""),
        methods=table.choices("methods", Method),
        lifted_by=table.choice("lifted_by", LiftedBy) if buried else LiftedBy.NOTHING,
    )
    table.nothing_else()
    return found


def read_species(path: str) -> tuple[Species, ...]:
    """Read the woods of species.toml."""
    table = read(path)
    found = tuple(_species(wood) for wood in table.tables("species"))
    table.nothing_else()
    return found


def read_species_named(path: str, name: str) -> Species | None:
    """Read the one wood of species.toml that has this key, name or alias; None when none has."""
    wanted = f'"{" ".join(name.casefold().split())}"'
    found = [
        _species(block(path, "species", number, text))
        for number, text in enumerate(blocks(path, "species"))
        if wanted in text.casefold()
    ]
    return named(found, name)


def read_wood_rules(path: str) -> tuple[WoodRule, ...]:
    """Read wood_rules.toml."""
    table = read(path)
    found = tuple(_wood_rule(rule) for rule in table.tables("rules"))
    table.nothing_else()
    return found


def _species(table: Table) -> Species:
    found = Species(
        key=table.text("key"),
        name=table.text("name"),
        aliases=table.words("aliases"),
        pores=table.choice("pores", Pores),
        pores_source=table.text("pores_source"),
        wants_filler=table.choice("wants_filler", WantsFiller),
        wants_filler_source=table.text("wants_filler_source"),
        tannin=table.choice("tannin", Tannin),
        tannin_source=table.text("tannin_source"),
        oily=table.flag("oily"),
        oily_source=table.text("oily_source"),
        blotches=table.flag("blotches"),
        blotches_source=table.text("blotches_source"),
        pitchy=table.flag("pitchy"),
        pitchy_source=table.text("pitchy_source"),
        radial_per_pct=_value(table, "radial_per_pct"),
        tangential_per_pct=_value(table, "tangential_per_pct"),
        note=table.text("note", ""),
        dust=table.text("dust", "dust"),
    )
    table.nothing_else()
    return found


def _value(table: Table, key: str) -> Limit | None:
    return limit(table.table(key)) if key in table else None


def _wood_rule(table: Table) -> WoodRule:
    found = WoodRule(
        id=table.text("id"),
        wood=table.words("wood"),
        over=table.words("over"),
        answer=table.choice("answer", OvercoatAnswer),
        reason=table.text("reason"),
        source=table.text("source"),
        remedy=table.text("remedy", ""),
        barrier=table.words("barrier"),
        only_with=table.choice("only_with", Condition) if "only_with" in table else None,
        wait=wait(table),
        weighs=table.choice("weighs", Level) if "weighs" in table else None,
    )
    table.nothing_else()
    return found
