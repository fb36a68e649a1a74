"""Read what mixing and keeping a finish ask for."""

from __future__ import annotations

from finishlog.core.finish.classes import Limit
from finishlog.core.mixing.keeping import ContainerTest, Frost, KeepingFigures
from finishlog.core.mixing.mixes import MixingFigures
from finishlog.facts.rate_files import Rate
from finishlog.facts.table import Table, limit, read


def read_mixing(path: str, pot_life: Rate) -> MixingFigures:
    """Read the figures of mixing.toml, with the factor of pot life from rates.toml."""
    return MixingFigures(
        volume_per_lb_cut_pct=limit(read(path).table("volume_per_lb_cut_pct")),
        pot_life_per_10c=Limit(pot_life.factor_per_10c, pot_life.source),
    )


def read_keeping(path: str) -> KeepingFigures:
    """Read the tests of mixing.toml, and what frost does."""
    table = read(path)
    table.table("volume_per_lb_cut_pct")
    frost = table.table("frost")
    found = KeepingFigures(
        tests=tuple(_test(one) for one in table.tables("tests")),
        frost_on_water=_frost(frost.table("water")),
        frost_on_others=_frost(frost.table("others")),
        keep_above_c=limit(table.table("keep_above_c")),
    )
    frost.nothing_else()
    table.nothing_else()
    return found


def _test(table: Table) -> ContainerTest:
    found = ContainerTest(table.words("families"), table.text("test"), table.text("source"))
    table.nothing_else()
    return found


def _frost(table: Table) -> Frost:
    found = Frost(
        table.flag("stops"), table.text("reason"), table.text("remedy"), table.text("source")
    )
    table.nothing_else()
    return found
