"""The page of safety notes, the worst first."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.words import title_of
from finishlog.cli.pages.questions.ventilation_page import air_rows, place_rows
from finishlog.cli.terminal.page import Page, Tone

if TYPE_CHECKING:
    from finishlog.asks.things.safety import SafetyShown
    from finishlog.core.published.facts import Facts


def safety_page(answer: SafetyShown, facts: Facts, *, verbose: bool) -> Page:
    """List what must be kept apart, then the notes, hazard by hazard."""
    page = Page()
    if answer.apart:
        section = page.section("KEEP APART", tone=Tone.DANGER)
        for each in answer.apart:
            section.row(each.kept_from, each.reason + _basis(each.source, facts, verbose))
    if answer.place is not None:
        section = page.section(f"AIR OF {answer.about.upper()}")
        place_rows(section, answer.place)
        for takes in answer.air:
            air_rows(section, takes)
    for hazard, notes in groupby(answer.notes, key=lambda note: note.applies_to):
        section = page.section(hazard.replace("-", " ").upper())
        section.each((note.text + _basis(note.source, facts, verbose),) for note in notes)
    return page


def _basis(source: str, facts: Facts, verbose: bool) -> str:
    return f" [{title_of(source, facts.sources)}]" if verbose else ""
