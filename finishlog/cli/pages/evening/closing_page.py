"""Echo a hand-over, a review, a picture."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.care_page import care_page
from finishlog.cli.pages.evening.words import echo
from finishlog.cli.terminal.page import Page, Tone
from finishlog.cli.words.finding_lines import warn

if TYPE_CHECKING:
    from finishlog.acts.pieces.handover import Handover
    from finishlog.acts.pieces.photo import Pictured
    from finishlog.acts.pieces.review import Reviewed
    from finishlog.clock import Clock
    from finishlog.context import Context


def handover_page(answer: Handover, context: Context, *, verbose: bool) -> Page:
    """Say what left, what was open all the same, and print the card."""
    note = f" ({answer.note})" if answer.note else ""
    page = echo(context.clock, answer.at, answer.labels, f"handed over{note}")
    warn(page, answer.warnings)
    page.line(f"act {answer.act}", Tone.FAINT)
    if answer.boards:
        page.line(
            f"{', '.join(answer.boards)} stays in the shop and asks for nothing; "
            "to find it: finishlog part list",
            Tone.FAINT,
        )
    for name in answer.whole_projects:
        page.line(
            f"nothing of {name} is left in the shop; say how it came out when you see it again: "
            f"finishlog review PART good; to put it away: finishlog project archive {name}",
            Tone.FAINT,
        )
    page.line("")
    page.sections += care_page(answer.card, context, verbose=verbose).sections
    return page


def review_page(answer: Reviewed, clock: Clock) -> Page:
    """Echo a review, and what was said before."""
    words = f", {answer.text}" if answer.text else ""
    page = echo(clock, answer.at, answer.labels, f"came out {answer.outcome.value}{words}")
    if answer.no_finish:
        page.line("caution: there is no finish on record there")
    if answer.before:
        page.line(f"said before: {', '.join(o.value for o in answer.before)}; all of it stays")
    return page.line(f"act {answer.act}", Tone.FAINT)


def photo_page(answer: Pictured, clock: Clock) -> Page:
    """Echo where a picture lies."""
    words = f", {answer.text}" if answer.text else ""
    page = echo(clock, answer.at, answer.labels, f"photo {answer.path}{words}")
    if not answer.is_there:
        page.line("caution: no file is there now; only the path is kept, never the picture")
    return page.line(f"act {answer.act}", Tone.FAINT)
