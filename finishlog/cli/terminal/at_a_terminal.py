"""A page at a terminal: wrapped to its width under the last column, toned where it helps."""

from __future__ import annotations

import re

# This module is loaded only when stdout is a terminal.
from rich.cells import cell_len  # noqa: TID253
from rich.console import Console  # noqa: TID253
from rich.text import Text  # noqa: TID253

from finishlog.cli.terminal.page import INDENT, Page, Row, Section, layout, widths

# Narrower than this the last cell goes on a line of its own.
_LEAST = 24
# The blank in `17.2 °C`, `Wed 21:00`, `act 19`, and a private sign that stands for it meanwhile.
_HELD = re.compile(
    r"(?<=\d) (?=(?:°[CF]|%|h|d|min|ml|L|qt|oz wt|g|µm|mil)(?!\w))|(?<=\bact) (?=\d)|"
    r"(?<=\b(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun)) (?=\d)"
)
_HOLD = "\ue000"


def show_at_terminal(page: Page) -> None:
    """Print a page on a terminal; NO_COLOR and the terminal's own wishes are kept."""
    console = Console(highlight=False, markup=False, emoji=False, soft_wrap=True)
    for section in page.sections:
        if section.rows:
            _show_section(console, section)


def _show_section(console: Console, section: Section) -> None:
    indent = INDENT if section.title else 0
    if section.title:
        head, *rest = _cut(console, section.title, console.width)
        under = [x for line in rest for x in _cut(console, line, console.width - 4)]
        for line in (head, *(f"    {x}" for x in under)):
            console.print(Text(line, style=section.tone.value))
    columns = widths(section.rows)
    for row in section.rows:
        for line in _wrapped(console, row, columns, indent):
            console.print(Text(line, style=row.tone.value))


def _wrapped(console: Console, row: Row, columns: list[int], indent: int) -> list[str]:
    begin, last = layout(row, columns, indent)
    room = console.width - cell_len(begin)
    if cell_len(begin + last) <= console.width:
        return [(begin + last).rstrip()]
    hang = cell_len(begin)
    if room < _LEAST and begin.strip():
        hang = indent + 4
        lines = _cut(console, begin.rstrip(), console.width - indent - 4)
        head = [lines[0], *[" " * hang + x.strip() for x in lines[1:]]]
        return [*head, *(" " * hang + x for x in _cut(console, last, console.width - hang))]
    first, *rest = _cut(console, last, max(room, 1)) or [""]
    return [begin + first, *(" " * hang + line for line in rest)]


def _cut(console: Console, text: str, width: int) -> list[str]:
    """Cut a text to a width between words; a figure stays with its unit, a day with its time."""
    held = _HELD.sub(_HOLD, text)
    lines = Text(held).wrap(console, max(width, 1))
    return [line.plain.rstrip().replace(_HOLD, " ") for line in lines]
