"""Echo what a command put on record."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.cli.desk import Desk
from finishlog.cli.json_answer import show_json
from finishlog.cli.screen import Page, show

if TYPE_CHECKING:
    from finishlog.acts.things import Made


def show_made(here: Desk, command: str, made: Made, json: bool) -> None:
    """Print it as one line or one document."""
    if json:
        show_json(command, here.clock.now, made)
        return
    page = Page()
    page.line(f"on record: {made.kind} {made.name}" + (f" ({made.detail})" if made.detail else ""))
    show(page)
