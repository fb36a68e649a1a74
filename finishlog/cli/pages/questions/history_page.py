"""The pages of history: everything typed, or one act whole."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from finishlog.cli.terminal.page import Page, Tone

if TYPE_CHECKING:
    from finishlog.asks.past.history import HistoryLine
    from finishlog.clock import Clock


def history_page(lines: Sequence[HistoryLine], clock: Clock) -> Page:
    """List acts in the order of typing: when it happened, what was recorded, what became of it."""
    page = Page()
    if not lines:
        page.line("nothing is on record")
    section = page.section()
    shown: set[tuple[str, ...]] = set()
    for line in lines:
        typed = clock.words(line.typed_at)
        when = clock.happened(line.happened) if line.happened else typed
        late = f"typed {typed}" if when != typed else ""
        cells = (str(line.act), when, _what(line, late))
        if cells not in shown:
            section.row(*cells, tone=Tone.PLAIN if line.in_force else Tone.FAINT)
        shown.add(cells)
    return page


def _what(line: HistoryLine, late: str) -> str:
    """Say what was recorded, about what, what became of it, and the words that were typed."""
    told = "; ".join(x for x in (line.said, fate_words(line), late, *line.changes) if x)
    about = ": ".join(x for x in (", ".join(line.parts), told) if x)
    return " · ".join(x for x in (about, line.words) if x)


def act_page(lines: Sequence[HistoryLine], clock: Clock) -> Page:
    """Show one act whole: the words typed, when, what it recorded, what became of it."""
    page, first = Page(), lines[0]
    section = page.section(f"act {first.act}: {first.words}")
    typed = clock.words(first.typed_at)
    section.row("typed", f"{typed} ({first.time_zone})")
    for line in lines:
        if line.happened:
            section.row("happened", clock.happened(line.happened))
        section.said("recorded", line.said)
        section.each(("on", part) for part in line.parts)
        section.said("since", fate_words(line))
    section.each(("changed", words) for words in first.changes)
    if not any(line.said for line in lines) and not first.changes:
        section.row("recorded", "it put on record what its words say; the log holds no entry of it")
    if any(line.in_force and line.kind for line in lines):
        section.row(
            "mend it",
            f"finishlog amend {first.act} ..., or take it back: finishlog undo {first.act}",
            tone=Tone.FAINT,
        )
    return page


def fate_words(line: HistoryLine) -> str:
    """Say what became of an entry; empty when nothing did."""
    if line.withdrawn_by:
        return f"UNDONE by act {line.withdrawn_by}"
    if line.amended_by:
        return f"AMENDED by act {line.amended_by}"
    return f"amends act {line.amends}" if line.amends else ""
