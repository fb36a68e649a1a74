"""Read the rules: what may go over what, and what a wood does to a finish."""

from __future__ import annotations

from finishlog.core.overcoat import OvercoatAnswer, OvercoatRule
from finishlog.core.species import Pores, Species, Tannin, WantsFiller, WoodRule
from finishlog.facts.table import Table, read, wait


def read_overcoats(path: str) -> tuple[OvercoatRule, ...]:
    """Read overcoats.toml."""
    table = read(path)
    found = tuple(_overcoat(rule) for rule in table.tables("rules"))
    table.nothing_else()
    return found


def _overcoat(table: Table) -> OvercoatRule:
    found = OvercoatRule(
        id=table.text("id"),
        under=table.words("under"),
        over=table.words("over"),
        answer=table.choice("answer", OvercoatAnswer),
        reason=table.text("reason"),
        source=table.text("source"),
        wait=wait(table),
        barrier=table.words("barrier"),
        remedy=table.text("remedy", ""),
    )
    table.nothing_else()
    return found


def read_species(path: str) -> tuple[Species, ...]:
    """Read the woods of species.toml."""
    return tuple(_species(wood) for wood in read(path).tables("species"))


def read_wood_rules(path: str) -> tuple[WoodRule, ...]:
    """Read the rules of species.toml."""
    return tuple(_wood_rule(rule) for rule in read(path).tables("rules"))


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
        note=table.text("note", ""),
    )
    table.nothing_else()
    return found


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
        steel_wool=table.flag("steel_wool", default=False),
        wait=wait(table),
    )
    table.nothing_else()
    return found
