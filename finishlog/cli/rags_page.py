"""Oily rags: what is open, and what to do about it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.cli.screen import Page, Tone
from finishlog.cli.words import rags_name, rags_words
from finishlog.core.safety_notes import notes_for
from finishlog.core.shown_times import happened

if TYPE_CHECKING:
    from finishlog.acts.rags import RagsDealtWith
    from finishlog.asks.rags import RagsLine
    from finishlog.clock import Clock
    from finishlog.facts.load import Facts

# Rags are excepted from three notes at once.
_NOTES = 4

_DONE = {
    "spread": "spread flat, one layer, outdoors, clear of buildings, fences and decks: still open",
    "water": "sunk under water in a lidded metal can: held until handed over",
    "lifted": "out of the water: open again, the oil is still fresh",
    "can": "in the listed can: empty it off site the same day",
    "stiff": "found stiff",
    "gone": "handed over",
}


def rags_page(lines: tuple[RagsLine, ...], facts: Facts, clock: Clock) -> Page:
    """List what is open; nothing here closes by time."""
    page = Page()
    if not lines:
        page.line("no rags are open")
        return page
    _list(page, lines, clock)
    for note in notes_for(facts.notes, ["self-heating"], at_most=_NOTES):
        page.line(f"safety: {note.text}")
    return page


def dealt_page(answer: RagsDealtWith, clock: Clock) -> Page:
    """Echo a deed and what is left."""
    page = Page()
    when = happened(answer.at, clock.now, clock.zone)
    page.line(f"{when}  rags of {', '.join(answer.items)}: {_DONE[answer.deed.value]}")
    for remark in answer.remarks:
        page.line(f"caution: {remark}", Tone.DANGER)
    if answer.still_open:
        _list(page, answer.still_open, clock)
    else:
        page.line("no rags are open")
    page.line(f"act {answer.act}", Tone.FAINT)
    return page


def _list(page: Page, lines: tuple[RagsLine, ...], clock: Clock) -> None:
    section = page.section("OPEN RAGS", tone=Tone.DANGER)
    for line in lines:
        tone = Tone.DANGER if line.overdue else Tone.PLAIN
        section.row(str(line.number), rags_name(line), rags_words(line, clock), tone=tone)
        for remark in line.remarks:
            section.row("", "", remark, tone=Tone.FAINT)
