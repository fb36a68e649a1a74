"""Answer a command: one page for a person, or one document for a script."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from msgspec import Struct

from finishlog.cli.answering.json_answer import show_json
from finishlog.cli.answering.run import Run
from finishlog.cli.terminal.page import Page
from finishlog.cli.terminal.show import show
from finishlog.cli.terminal.spelling import needs_units, spelt
from finishlog.core.measure.units import Units

if TYPE_CHECKING:
    from finishlog.acts.answers.made import Made


class Answered(Struct, frozen=True):
    """An answer, its page for a person, and the exit code that goes with it.

    `called`: what a document calls the command, where that is not what was declared.
    """

    answer: object
    page: Callable[[], Page]
    code: int = 0
    called: str = ""


def recorded(made: Made) -> Answered:
    """Answer with what a command put on record."""
    return Answered(made, lambda: _made_page(made))


def show_answer(here: Run, command: str, found: Answered, *, json: bool) -> None:
    """Print an answer; the page is laid out only when it is wanted."""
    if json:
        show_json(found.called or command, here.clock.now, found.answer)
    else:
        show(_in_units(found.page(), here))


def _in_units(page: Page, here: Run) -> Page:
    """Spell what a page carries; the person's units are asked for when there is a quantity."""
    return page.mapped(lambda text: spelt(text, here.units if needs_units(text) else Units()))


def _made_page(made: Made) -> Page:
    from finishlog.acts.answers.made import Shelved
    from finishlog.cli.words.finding_lines import chosen_lines, warn

    page = Page()
    done = "" if isinstance(made, Shelved) else "on record: "
    page.line(f"{done}{made.kind} {made.name}" + (f" ({made.detail})" if made.detail else ""))
    warn(page, made.warnings)
    page.lines(chosen_lines(made.before, made.people))
    for note in made.notes:
        page.line(f"safety: {note.text}")
    return page
