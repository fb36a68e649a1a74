"""The page of a project file that was loaded."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.cli.terminal.page import Page, Tone

if TYPE_CHECKING:
    from finishlog.acts.things.load import Loaded


def load_page(answer: Loaded) -> Page:
    """Say what was added, what was there, and what differs with what to type."""
    page = Page()
    if answer.added:
        page.line("would be added" if answer.only_checked else "on record", Tone.HEAD)
        page.lines(f"  {name}" for name in answer.added)
    else:
        page.line("nothing to add: it is all there")
    if answer.as_it_was:
        page.line(f"as it was: {answer.as_it_was}")
    if answer.differs:
        section = page.section("DIFFERS, left as it is")
        for each in answer.differs:
            section.row(each.what, f"is {each.now_is}", f"in {answer.file}: {each.in_file}")
            section.row("", each.to_change, tone=Tone.FAINT)
    return page
