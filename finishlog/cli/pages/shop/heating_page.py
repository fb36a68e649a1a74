"""Echo what heaters do."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.whereabouts_page import span_words
from finishlog.cli.pages.evening.words import warn
from finishlog.cli.terminal.page import Page, Tone
from finishlog.core.measure.quantities import celsius

if TYPE_CHECKING:
    from finishlog.acts.air.heat import HeatLogged
    from finishlog.asks.bench.heaters import HeatLine
    from finishlog.clock import Clock
    from finishlog.core.published.safety_notes import SafetyNote


def heat_page(answer: HeatLogged, clock: Clock) -> Page:
    """Echo a heater, and what never to do with it."""
    page = Page()
    warm = "" if answer.how_warm_unknown else f", {_warm(answer.temperature_c)}"
    page.line(f"{answer.room}: heated {span_words(answer.span, clock)}{warm}")
    if answer.room_is_new:
        page.line(f"a room called {answer.room!r} was put on record; parts stand in it")
    if answer.how_warm_unknown:
        page.line("how warm it gets is not on record, so nothing dries sooner by it: add 18C")
    page.lines(_beside(answer, line, clock) for line in answer.beside)
    warn(page, answer.warnings)
    cautions(page, answer.caution, answer.notes)
    return page.line(f"act {answer.act}", Tone.FAINT)


def _beside(answer: HeatLogged, line: HeatLine, clock: Clock) -> str:
    """Say what a heater on record for the same time makes of it."""
    span = f"act {line.act}, {span_words(line.span, clock)}"
    if line.temperature_c == answer.temperature_c:
        return f"on record already ({span}): the two are one heat"
    return f"at once with {span}, {_warm(line.temperature_c)}: the warmer counts"


def heat_ahead_page(lines: Sequence[HeatLine], clock: Clock) -> Page:
    """List the heaters that run or are to run."""
    nothing = "no heater is on record from now on: finishlog heat tonight 16 till 23 18C"
    return Page.listed((_row(line, clock) for line in lines), nothing, "HEATED")


def _row(line: HeatLine, clock: Clock) -> tuple[str, ...]:
    acts = ", ".join(f"act {act}" for act in (line.act, *line.also))
    return line.room, span_words(line.span, clock), _warm(line.temperature_c), acts


def cautions(page: Page, caution: str, notes: Iterable[SafetyNote]) -> None:
    """Say what comes with every advice to warm something."""
    page.line(f"caution: {caution}", Tone.HEAD)
    page.lines(f"safety: {note.text}" for note in notes)


def _warm(to_c: float | None) -> str:
    return "as warm as usual" if to_c is None else f"to {celsius(to_c, 1)}"
