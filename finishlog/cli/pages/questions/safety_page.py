"""The page of safety notes, the worst first: at the terminal, and to be printed for the wall."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape
from itertools import groupby
from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.vapour_page import people_rows
from finishlog.cli.pages.evening.words import title_of
from finishlog.cli.pages.questions.ventilation_page import air_rows, place_rows
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.words.finding_lines import warn
from finishlog.core.finish.sheet import YOUR_SHEET
from finishlog.core.measure.quantities import celsius, millilitres

if TYPE_CHECKING:
    from finishlog.asks.things.safety import SafetyShown, SheetShown
    from finishlog.asks.things.safety_sources import Rests
    from finishlog.context import Context
    from finishlog.core.published.facts import Facts
    from finishlog.core.safety.keeping import Kept

_FROM_MEMORY = "from memory, nobody saw the source"

# One sheet of paper, black on white, readable from a step away.
_SHEET = """<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>{title}</title><style>
@page {{ margin: 14mm }}
body {{ font: 12pt/1.35 sans-serif; color: #000; background: #fff; max-width: 46em }}
h1 {{ font-size: 18pt }} h2 {{ font-size: 12pt; margin: 1em 0 .2em; break-after: avoid }}
p {{ margin: .15em 0 .15em 1em; break-inside: avoid }} .danger {{ font-weight: bold }}
</style></head><body><h1>{title}</h1>
{body}</body></html>
"""


def safety_page(answer: SafetyShown, context: Context, *, verbose: bool) -> Page:
    """List what must be kept apart, then the notes, hazard by hazard."""
    page, facts = Page(), context.facts
    warn(page, answer.lit)
    if answer.apart:
        section = page.section("KEEP APART", tone=Tone.DANGER)
        for each in answer.apart:
            section.row(each.kept_from, each.reason + _basis(each.source, facts, verbose))
    if answer.sheet is not None:
        _sheet_rows(page.section("YOUR SHEET"), answer.sheet)
    if answer.place is not None:
        section = page.section(f"AIR OF {answer.about.upper()}")
        place_rows(section, answer.place)
        section.each(("people", words) for words in people_rows(answer.people, context.clock))
        for takes in answer.air:
            air_rows(section, takes)
    if not (answer.air or answer.lit or answer.apart or answer.notes):
        page.line("by its class nothing leaves it that is reckoned with: air it, read its sheet")
    for hazard, notes in groupby(answer.notes, key=lambda note: note.applies_to):
        section = page.section(hazard.replace("-", " ").upper())
        section.each((note.text + _basis(note.source, facts, verbose),) for note in notes)
    if answer.kept is not None:
        _kept_rows(page.section("HOW IT IS KEPT"), answer.kept, facts, verbose)
    return page


def _kept_rows(section: Section, kept: Kept, facts: Facts, verbose: bool) -> None:
    """Say at what warmth it takes fire from a spark, and how much of such is kept."""
    section.row(
        "flash point",
        f"about {celsius(kept.flash_c)}, by {kept.solvent} in it: its sheet has its own; a cloth "
        "or a mist of it burns in the cold too",
    )
    for limit in kept.limits:
        several = ", ".join(sorted(limit.categories))
        together = f"categories {several} together, this is {kept.category}"
        of = together if len(limit.categories) > 1 else f"category {several}"
        section.row(
            limit.where.value,
            f"at most {millilitres(1000 * limit.most_l)} at a US workplace ({of})"
            + _basis(limit.source, facts, verbose),
        )
    section.row("at home", "far less, and elsewhere other rules: your fire code says how much")


def _sheet_rows(section: Section, sheet: SheetShown) -> None:
    if sheet.file:
        gone = "" if sheet.is_there else " (nothing lies there now: look for it)"
        section.row("file", f"{sheet.file}{gone}")
    section.each(("says", each.removeprefix(f"{YOUR_SHEET}: ")) for each in sheet.says)
    if sheet.less:
        section.row("so", f"{', '.join(sheet.less)} of its class: left out, by your sheet alone")


def sources_page(rests: Iterable[Rests]) -> Page:
    """List what is said and what it rests on; what nobody saw is marked."""
    page = Page()
    for kind, rows in groupby(rests, key=lambda each: each.kind):
        section = page.section(kind.upper())
        for each in rows:
            basis = _FROM_MEMORY if each.from_memory else each.basis
            section.row(each.what, f"{each.title}: {basis}" if each.title else basis)
    return page


def safety_sheet(page: Page, about: str) -> str:
    """Return the same page as one sheet of HTML that needs nothing beside it."""
    rows = []
    for section in page.sections:
        if section.title:
            rows.append(f"<h2>{escape(section.title)}</h2>")
        danger = ' class="danger"' if section.tone is Tone.DANGER else ""
        rows += (f"<p{danger}>{escape(': '.join(row.cells))}</p>" for row in section.rows)
    title = escape(f"Safety: {about}" if about else "Safety")
    return _SHEET.format(title=title, body="\n".join(rows))


def _basis(source: str, facts: Facts, verbose: bool) -> str:
    return f" [{title_of(source, facts.sources)}]" if verbose else ""
