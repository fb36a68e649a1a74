"""One page of answers: plain and unwrapped in a pipe, wrapped and toned at a terminal.

A tone only helps the eye; the words carry the meaning. Text from a person is never markup.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from enum import StrEnum

from msgspec import Struct, field

# Signs that move the cursor or call the terminal, and those that turn the direction of a line, so
# that it reads as another; a row is one line whatever a person typed.
_BLANK = dict.fromkeys((*range(0x09, 0x0E), 0x85, 0x2028, 0x2029), " ")
_TURN = (0x061C, 0x200E, 0x200F, *range(0x202A, 0x202F), *range(0x2066, 0x206A))
OBEYED = (*range(0x20), *range(0x7F, 0xA0), 0x2028, 0x2029, *_TURN)
_SHOWN_AS = dict.fromkeys(OBEYED, "\N{REPLACEMENT CHARACTER}") | _BLANK

GUTTER = 2
INDENT = 2


def one_line(text: str) -> str:
    """Return a text on one line, with nothing in it that a terminal would obey."""
    # Whatever it obeys is not printable, and almost every text is.
    return text if text.isprintable() else text.translate(_SHOWN_AS)


class Tone(StrEnum):
    """How a row is toned at a terminal; the values are styles that read on dark and light."""

    PLAIN = ""
    HEAD = "bold"
    DANGER = "bold red"
    GO = "green"
    FAINT = "dim"


class Row(Struct, frozen=True):
    """Cells in columns; the last one may wrap."""

    cells: tuple[str, ...]
    tone: Tone = Tone.PLAIN


class Section(Struct):
    """A title and its rows; shown only when there are rows."""

    title: str
    rows: list[Row] = field(default_factory=list)
    tone: Tone = Tone.HEAD

    def row(self, *cells: str, tone: Tone = Tone.PLAIN) -> None:
        """Add a row."""
        self.rows.append(Row(tuple(one_line(cell) for cell in cells), tone))

    def each(self, rows: Iterable[Sequence[str]], tone: Tone = Tone.PLAIN) -> None:
        """Add rows, given by their cells."""
        for cells in rows:
            self.row(*cells, tone=tone)

    def said(self, head: str, words: str, tone: Tone = Tone.PLAIN) -> None:
        """Add a row under a head where there is something to say."""
        if words:
            self.row(head, words, tone=tone)


class Page(Struct):
    """Sections one after another. A section without a title stands at the margin."""

    sections: list[Section] = field(default_factory=list)

    def section(self, title: str = "", tone: Tone = Tone.HEAD) -> Section:
        """Start a section."""
        made = Section(one_line(title), tone=tone)
        self.sections.append(made)
        return made

    @classmethod
    def listed(cls, rows: Iterable[Sequence[str]], nothing: str = "", title: str = "") -> Page:
        """Return a page of one list, or what to say where there is nothing."""
        page = cls()
        section = page.section(title)
        section.each(rows)
        return page if section.rows else page.lines([nothing])

    def mapped(self, change: Callable[[str], str]) -> Page:
        """Return the page with every title and cell changed so."""
        changed = Page()
        for section in self.sections:
            made = changed.section(change(section.title), section.tone)
            for row in section.rows:
                made.row(*map(change, row.cells), tone=row.tone)
        return changed

    def line(self, text: str, tone: Tone = Tone.PLAIN) -> Page:
        """Add one line at the margin."""
        self.section().row(text, tone=tone)
        return self

    def lines(self, texts: Iterable[str], tone: Tone = Tone.PLAIN) -> Page:
        """Add a line for each text that says something."""
        for text in filter(None, texts):
            self.line(text, tone)
        return self


def widths(rows: Sequence[Row]) -> list[int]:
    """Return the width of each column but the last of each row."""
    found: list[int] = []
    for row in rows:
        for n, cell in enumerate(row.cells[:-1]):
            found.extend([0] * (n + 1 - len(found)))
            found[n] = max(found[n], len(cell))
    return found


def layout(row: Row, columns: Sequence[int], indent: int) -> tuple[str, str]:
    """Return a row's padded beginning and its last cell."""
    begin = "".join(cell.ljust(columns[n] + GUTTER) for n, cell in enumerate(row.cells[:-1]))
    return " " * indent + begin, row.cells[-1] if row.cells else ""


def plain(page: Page) -> str:
    """Write a page without wrapping, tone or trailing blanks."""
    lines: list[str] = []
    for section in page.sections:
        if not section.rows:
            continue
        indent = INDENT if section.title else 0
        if section.title:
            lines.append(section.title)
        columns = widths(section.rows)
        lines += ["".join(layout(row, columns, indent)).rstrip() for row in section.rows]
    return "".join(f"{line}\n" for line in lines)
