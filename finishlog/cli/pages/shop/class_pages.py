"""The pages of the published classes."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import groupby
from typing import TYPE_CHECKING

from finishlog.cli.pages.shop.figure_rows import (
    figure_row,
    figures,
    hours_at,
    limits,
    named_sources,
)
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.core.finish.classes import FinishClass, Range
from finishlog.core.measure.quantities import celsius
from finishlog.core.measure.units import sign, to_base

if TYPE_CHECKING:
    from finishlog.asks.things.classes import ClassLine
    from finishlog.cli.pages.shop.figure_rows import Sources
    from finishlog.core.measure.units import Units

Words = Callable[[Range], str]


def classes_page(lines: Sequence[ClassLine]) -> Page:
    """List the classes by their families, with the air in which they may go on."""
    page = Page()
    in_order = sorted(lines, key=lambda line: (line.family, line.key))
    for family, members in groupby(in_order, key=lambda line: line.family):
        section = page.section(family.upper())
        for line in members:
            rags = "rags self-heat" if line.self_heating else ""
            section.row(line.key, line.name, _air(line), rags)
    return page


def _air(line: ClassLine) -> str:
    """Say in which air it may go on: `from 10 °C, to 75 %`."""
    bits = []
    if line.min_c is not None:
        bits.append(f"from {celsius(line.min_c, 1)}")
    if line.max_rh_pct is not None:
        bits.append(f"to {line.max_rh_pct:.0f} %")
    return ", ".join(bits)


def class_page(of: FinishClass, sources: Sources, units: Units) -> Page:
    """Show one class: every figure with its range, its basis and its source."""
    page = Page().line(f"{of.name} ({of.key})", Tone.HEAD)
    _what_it_is(page.section("WHAT IT IS"), of)
    figures(page, of.stages, of.window, sources)
    beside = page.section("PUBLISHED BESIDE THESE")
    for name, figure in of.readings.items():
        figure_row(beside, name, figure, hours_at, sources)
    _in_use(page.section("THE CAN AND THE FILM"), of, sources, units)
    limits(page, of, sources)
    named_sources(page, (of.coats, of.abrade, of.window.note, *of.notes), sources)
    return page


def _what_it_is(section: Section, of: FinishClass) -> None:
    section.row("also called", ", ".join(of.aliases))
    section.row("family", of.family)
    leaves = "" if of.carrier == "none" else f" ({of.carrier.replace('-', ' ')})"
    section.row("dries by", of.mechanism.value + leaves)
    film = "builds a film" if of.builds_film else "builds no film"
    section.row("leaves", film if of.topcoat else f"{film}; no topcoat")
    section.row("put on by", ", ".join(of.methods))
    if of.left_on_top is not None:
        section.row("on its film", f"{of.left_on_top.name}: {of.left_on_top.wash}")
    section.row("coats", of.coats)
    section.row("abrade", of.abrade)


def _in_use(section: Section, of: FinishClass, sources: Sources, units: Units) -> None:
    for name, hours in (("wipe off after", of.wipe_off_h), ("pot life", of.pot_life_h)):
        if hours:
            figure_row(section, name, hours, hours_at, sources)
    for name, found, written in _ranges(of, units):
        if found:
            figure_row(section, name, found, written, sources)


def _ranges(of: FinishClass, units: Units) -> tuple[tuple[str, Range | None, Words], ...]:
    covers = f"{sign(units.area)}/{sign(units.volume)}"
    spread = _in(covers, to_base(1, units.area) / to_base(1, units.volume))
    film = _in(sign(units.film), to_base(1, units.film))
    return (
        ("keeps, opened", of.shelf_opened_d, _in("d")),
        ("hardener", of.hardener_pct, _in("%")),
        ("covers", of.spread_m2_per_l, spread),
        ("wet film", of.wet_film_um, film),
        ("dry film at most", of.dry_film_limit_um, film),
        ("a coat at most", of.most_at_once_um, film),
        ("coats a day", of.daily_coats, _in("")),
        ("coats in all", of.most_coats, _in("")),
        ("solids by volume", of.solids_vol_pct, _in("%")),
        ("solids by weight", of.solids_wt_pct, _in("%")),
    )


def _in(unit: str, size: float = 1.0) -> Words:
    """Write a range in a unit: as it is held, or converted, to two digits."""

    def words(of: Range) -> str:
        ends = (of.low, of.high) if size == 1.0 else (_two(of.low / size), _two(of.high / size))
        low, high = (f"{end:g}" for end in ends)
        return (low if low == high else f"{low} to {high}") + f" {unit}".rstrip()

    return words


def _two(value: float) -> float:
    return float(f"{value:.2g}")
