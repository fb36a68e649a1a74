"""Oily rags: what is open, and what to do about it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.words import BURNABLE, echo, rags_section
from finishlog.cli.terminal.page import Page, Tone
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.words import RagsDeed
from finishlog.core.published.safety_notes import notes_for
from finishlog.core.safety.rags import RagsState

if TYPE_CHECKING:
    from finishlog.acts.film.rags import RagsDealtWith
    from finishlog.asks.bench.rags import RagsLine
    from finishlog.clock import Clock
    from finishlog.context import Context

# Rags are excepted from three notes at once.
_NOTES = 4
_SUN = "in the sun or in a vehicle? then they are overdue at once: no thermometer here sees that"

_DONE = {
    RagsDeed.SPREAD: (
        "spread flat, one layer, outdoors, clear of buildings, fences and decks: still open"
    ),
    RagsDeed.WATER: "sunk under water in a lidded metal can: held until handed over",
    RagsDeed.LIFTED: "out of the water: open again, the oil is still fresh",
    RagsDeed.CAN: "in the listed can: empty it off site the same day",
    RagsDeed.STIFF: "found stiff",
    RagsDeed.GONE: "handed over",
}


def rags_page(lines: tuple[RagsLine, ...], context: Context) -> Page:
    """List what is open; nothing here closes by time."""
    if not lines:
        return Page().line("no rags are open")
    page = Page()
    rags_section(page, lines, context.clock, whole=True)
    if any(line.state in {RagsState.OPEN, RagsState.SPREAD} for line in lines):
        page.line(_SUN, Tone.FAINT)
    notes = notes_for(context.facts.notes, [Hazard.SELF_HEATING], at_most=_NOTES)
    return page.lines(f"safety: {note.text}" for note in notes)


def dealt_page(answer: RagsDealtWith, clock: Clock) -> Page:
    """Echo a deed, on how many of the open items it was done, and what is left."""
    of = f", on {len(answer.items)} of {answer.of}" if answer.of > 1 else ""
    done = _DONE[answer.deed]
    page = echo(clock, answer.at, [f"rags of {', '.join(dict.fromkeys(answer.items))}{of}"], done)
    if answer.deed is RagsDeed.STIFF and len(answer.not_counted) < len(answer.items):
        page.line(f"closed as self-heating: {BURNABLE}")
    for product, why in answer.not_counted:
        page.line(f"caution: {product}: {why.value}", Tone.DANGER)
    if answer.before_wet:
        names = ", ".join(answer.before_wet)
        page.line(f"caution: {names}: that was before they were wet: recorded, still open")
    if answer.ask_how:
        names = ", ".join(answer.ask_how)
        page.line(
            f"how did they go ({names})? not stiff yet, they burn in any bin: handed over to the "
            f"waste service, with gloves, pads and paper? If not: finishlog undo {answer.act}",
            Tone.DANGER,
        )
    if answer.still_open:
        rags_section(page, answer.still_open, clock, whole=True)
    else:
        page.line("no rags are open")
    return page.line(f"act {answer.act}", Tone.FAINT)
