"""Answer a command: one page for a person, or one document for a script."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from finishlog.cli.answering.context import Desk
from finishlog.cli.answering.json_answer import show_json
from finishlog.cli.terminal.page import Page
from finishlog.cli.terminal.show import show
from finishlog.cli.terminal.spelling import needs_units, spelt
from finishlog.core.measure.units import Units

if TYPE_CHECKING:
    from finishlog.acts.answers.made import Made


def show_answer(
    here: Desk, command: str, answer: object, json: bool, page: Callable[[], Page]
) -> None:
    """Print an answer; the page is laid out only when it is wanted."""
    if json:
        show_json(command, here.clock.now, answer)
    else:
        show(_in_units(page(), here))


def _in_units(page: Page, here: Desk) -> Page:
    """Spell what a page carries; the person's units are asked for when there is a quantity."""
    return page.mapped(lambda text: spelt(text, here.units if needs_units(text) else Units()))


def show_made(here: Desk, command: str, made: Made, json: bool) -> None:
    """Echo what a command put on record."""
    show_answer(here, command, made, json, lambda: _made_page(made))


def _made_page(made: Made) -> Page:
    from finishlog.acts.answers.made import Shelved

    page = Page()
    done = "" if isinstance(made, Shelved) else "on record: "
    page.line(f"{done}{made.kind} {made.name}" + (f" ({made.detail})" if made.detail else ""))
    for note in made.notes:
        page.line(f"safety: {note.text}")
    return page
