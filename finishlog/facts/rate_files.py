"""Read what the drying clock needs: carriers' vapour pressures, factors, general figures."""

from __future__ import annotations

from msgspec import Struct

from finishlog.core.finish.rate_law import Carrier
from finishlog.core.published.facts import DryingFigures
from finishlog.facts.table import Table, limit, read


class Rate(Struct, frozen=True):
    """A factor on a pace for each 10 °C. `assumed`: the source prints it for something else."""

    factor_per_10c: float
    source: str
    assumed: bool
    basis: str


def read_carriers(path: str) -> dict[str, Carrier]:
    """Read carriers.toml: Antoine coefficients for log10 of Pa, °C."""
    table = read(path)
    found = {key: _carrier(key, one) for key, one in table.named("carriers").items()}
    table.nothing_else()
    return found


def _carrier(key: str, table: Table) -> Carrier:
    found = Carrier(
        key=key,
        name=table.text("name"),
        a=table.number("a_log10_pa"),
        b=table.number("b_c"),
        c=table.number("c_c"),
        source=table.text("source"),
    )
    table.text("note", "")
    table.nothing_else()
    return found


def read_rates(path: str) -> dict[str, Rate]:
    """Read the factors of rates.toml, by mechanism or by what they are for."""
    return {key: _rate(one) for key, one in read(path).named("rates").items()}


def _rate(table: Table) -> Rate:
    found = Rate(
        table.number("factor_per_10c"),
        table.text("source"),
        table.flag("assumed"),
        table.text("basis"),
    )
    table.nothing_else()
    return found


def read_drying(path: str) -> DryingFigures:
    """Read the figures of rates.toml that hold for every class."""
    table = read(path)
    margin = limit(table.table("dew_margin_c"))
    slow = limit(table.table("slow_after_h"))
    wiped = limit(table.table("solvent_wipe_h"))
    hot = limit(table.table("hot_c"))
    return DryingFigures(
        factor_per_10c=_rate(table.table("rates").table("oxidation")).factor_per_10c,
        dew_margin_c=margin.value,
        dew_margin_source=margin.source,
        slow_after_h=slow.value,
        slow_source=slow.source,
        solvent_wipe_h=wiped.value,
        solvent_wipe_source=wiped.source,
        hot_c=hot.value,
        hot_source=hot.source,
    )
