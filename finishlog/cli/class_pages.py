"""The pages of the published classes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from finishlog.cli.screen import Page, Tone
from finishlog.cli.shop_pages import figures, limits, span
from finishlog.core.finishes import FinishClass
from finishlog.core.units import Temperature

if TYPE_CHECKING:
    from finishlog.asks.classes import ClassLine
    from finishlog.facts.load import Facts


def classes_page(lines: Sequence[ClassLine]) -> Page:
    """List the classes."""
    page = Page()
    section = page.section()
    for line in lines:
        section.row(line.key, line.name, "oily rags self-heat" if line.self_heating else "")
    return page


def class_page(of: FinishClass, facts: Facts) -> Page:
    """Show one class, its readings that are no stage of ours included."""
    page = Page()
    page.line(f"{of.name} ({of.key}), {of.family}", Tone.HEAD)
    figures(page, dict(of.stages), of.window, facts, Temperature.CELSIUS)
    readings = page.section("PUBLISHED BESIDE THESE")
    for name, figure in of.readings.items():
        source = facts.sources.get(figure.source)
        readings.row(name, span(figure), source.title if source else figure.source)
    limits(page, of, Temperature.CELSIUS)
    return page
