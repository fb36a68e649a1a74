"""The pages of the glues."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

from finishlog.cli.pages.shop.figure_rows import basis, hour_words, hours_row
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.typed.figures.measures import show_air
from finishlog.core.air.psychrometrics import STANDARD_AIR
from finishlog.core.measure.quantities import apart, celsius
from finishlog.core.published.glues import Glue

if TYPE_CHECKING:
    from finishlog.cli.pages.shop.figure_rows import Sources


def glues_page(glues: Sequence[Glue]) -> Page:
    """List the glues by what each promises."""
    page = Page()
    section = page.section("CLOSE THE JOINT WITHIN, CLAMPS ON FOR, FINISH AFTER")
    for glue in glues:
        section.row(
            glue.name,
            hour_words(glue.open.low_h),
            hour_words(glue.clamp.high_h),
            hour_words(glue.before_finish.high_h),
        )
    return page


def glue_page(glue: Glue, sources: Sources) -> Page:
    """Show one glue: every figure with its range, its basis and its source."""
    page = Page()
    page.line(f"{glue.name} ({glue.key})", Tone.HEAD)
    if glue.aliases:
        page.section().row("also called", ", ".join(glue.aliases))
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
            hours_row(section, name, figure, sources)
    section.row("promised", "of open time the short end, of the others the long one")
    _warmth(page.section("WARMTH"), glue, sources)
    notes = page.section("NOTES")
    for note in glue.notes:
        notes.row("-", note)
    _named_sources(page.section("SOURCES NAMED IN WORDS"), glue, sources)
    return page


def _warmth(section: Section, glue: Glue, sources: Sources) -> None:
    for name, limit in (("not colder than", glue.min_c), ("wood at", glue.wood_c)):
        if limit is not None:
            section.row(name, celsius(limit.value, 1), basis(limit.source, sources))
    section.row("colder air", "longer", f"half the pace for each {apart(10)}: an assumption")


def _named_sources(section: Section, glue: Glue, sources: Sources) -> None:
    """Give the titles of the sources that notes name by their ids."""
    figures = (glue.open, glue.clamp, glue.before_finish, glue.cure, glue.level)
    words = " ".join((*glue.notes, *(figure.note for figure in figures if figure)))
    for id_ in dict.fromkeys(re.findall(r"\(([^()]*)\)", words)):
        if source := sources.get(id_):
            section.row(id_, source.title)
