"""Answer a command: one page for a person, or one document for a script."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from finishlog.cli.answering.context import Desk
from finishlog.cli.answering.json_answer import show_json
from finishlog.cli.terminal.page import Page
from finishlog.cli.terminal.show import show
from finishlog.core.measure.quantities import OPENS, worded

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
    """Word the quantities in a page; the person's units are asked for when there is one."""
    return page.mapped(lambda text: worded(text, here.units) if OPENS in text else text)


def show_made(here: Desk, command: str, made: Made, json: bool) -> None:
    """Echo what a command put on record."""
    show_answer(here, command, made, json, lambda: _made_page(made))


def _made_page(made: Made) -> Page:
    page = Page()
    # `put away: part` and `back: part` say themselves what was done.
    done = "" if ":" in made.kind else "on record: "
    page.line(f"{done}{made.kind} {made.name}" + (f" ({made.detail})" if made.detail else ""))
    for note in made.notes:
        page.line(f"safety: {note.text}")
    return page
