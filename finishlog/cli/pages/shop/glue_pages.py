"""The pages of the glues."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from finishlog.cli.pages.shop.figure_rows import (
    basis,
    figure_row,
    hour_words,
    hours_at,
    named_sources,
)
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.typed.figures.measures import show_air
from finishlog.core.air.psychrometrics import STANDARD_AIR
from finishlog.core.measure.quantities import apart, celsius
from finishlog.core.published.glues import Glue

if TYPE_CHECKING:
    from finishlog.cli.pages.shop.figure_rows import Sources


def glues_page(glues: Sequence[Glue]) -> Page:
    """List the glues by what each promises."""
    hours = ((g.name, g.open.low_h, g.clamp.high_h, g.before_finish.high_h) for g in glues)
    return Page.listed(
        ((name, *map(hour_words, each)) for name, *each in hours),
        title="CLOSE THE JOINT WITHIN, CLAMPS ON FOR, FINISH AFTER",
    )


def glue_page(glue: Glue, sources: Sources) -> Page:
    """Show one glue: every figure with its range, its basis and its source."""
    page = Page().line(f"{glue.name} ({glue.key})", Tone.HEAD)
    page.section().said("also called", ", ".join(glue.aliases))
    standard = show_air(STANDARD_AIR)
    section = page.section(f"HOURS AT {standard} UNLESS SAID")
    for name, figure in (
        ("open", glue.open),
        ("in clamps", glue.clamp),
        ("sand, finish", glue.before_finish),
        ("level a joint", glue.level),
        ("full strength", glue.cure),
    ):
        if figure is not None:
            figure_row(section, name, figure, hours_at, sources)
    section.row("promised", "of open time the short end, of the others the long one")
    _warmth(page.section("WARMTH"), glue, sources)
    page.section("NOTES").each(("-", note) for note in glue.notes)
    figures = (glue.open, glue.clamp, glue.before_finish, glue.cure, glue.level)
    named_sources(page, (*glue.notes, *(each.note for each in figures if each)), sources)
    return page


def _warmth(section: Section, glue: Glue, sources: Sources) -> None:
    for name, limit in (("not colder than", glue.min_c), ("wood at", glue.wood_c)):
        if limit is not None:
            section.row(name, celsius(limit.value, 1), basis(limit.source, sources))
    section.row("colder air", "longer", f"half the pace for each {apart(10)}: an assumption")
