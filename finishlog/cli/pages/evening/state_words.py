"""How a piece stands while nothing is coated: its preparation, how it is kept, when to look."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.cli.words.beside import kept_words
from finishlog.cli.words.wood import prepared_words

if TYPE_CHECKING:
    from finishlog.asks.look.standing import Standing
    from finishlog.clock import Clock


def prepared_rows(line: Standing, clock: Clock) -> list[tuple[str, str]]:
    """Say how bare wood was prepared, and until when that is good."""
    was = line.prepared
    if was is None:
        return []
    done = f"{prepared_words(was.deed, was.grit)} {clock.words(was.since)}"
    over = was.until <= clock.now
    until = clock.words(was.until) if over else clock.closes_at(was.until)
    return [("prepared", f"{done}: {'was good' if over else 'good'} until {until} (act {was.act})")]


def kept_row(line: Standing, clock: Clock) -> str:
    """Say how parts are kept, since when and where, and when to look at them; empty: they are not.

    What is overdue says for what.
    """
    at = line.kept
    if at is None:
        return ""
    rooms = f", in {' and '.join(at.rooms)}" if any(at.rooms) else ""
    words = f"{kept_words(at.deed, at.how)} since {clock.words(at.since)}{rooms}"
    if at.look_by is None:
        return words
    due = at.look_by <= clock.now
    when = "now" if due else f"by {clock.words(at.look_by)}"
    return f"{words}; look at it {when}{f': {at.look_for}' if due else ''}"
