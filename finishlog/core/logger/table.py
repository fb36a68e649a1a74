"""The table in a data logger's export: where it begins and what its columns are.

RFC 4180 with comma, semicolon or tab, below a line of headings; lines about the instrument may
stand before it. A column is the one that the person names, or the one whose heading says it.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import islice

from msgspec import Struct

KINDS = ("time", "temperature", "humidity")
_DELIMITERS = ("\t", ";", ",")
_HEADINGS_WITHIN = 100
_DATE, _CLOCK = re.compile(r"\bdat(?:e|um)"), re.compile(r"\btime(?!.?zone)|zeit\b")
_WARM, _DAMP = re.compile(r"temp|celsius|fahrenheit"), re.compile(r"humid|feucht|\brh\b|\bhum\b")
_NOT_OF_THE_AIR = re.compile(r"dew|taupunkt|wet|absol|surface|probe|battery")


class UnreadableFile(ValueError):
    """A file that cannot be taken as a logger's: what is wrong, where, and what to type."""

    def __init__(self, message: str, hint: str) -> None:
        super().__init__(message)
        self.message = message
        self.hint = hint


class Table(Struct, frozen=True):
    """A line of headings, where each kind may stand below it, and all lines of the file."""

    headings: Sequence[str]
    places: Mapping[str, Sequence[int]]
    delimiter: str
    number: int
    written: Sequence[str]

    @property
    def likeness(self) -> int:
        """How many kinds have a column of their own."""
        return min(len(self.headings), sum(map(bool, self.places.values())))

    @property
    def names(self) -> Mapping[str, str]:
        """What the columns are called, by what they hold."""
        return {kind: " + ".join(self.headings[n] for n in self.places[kind]) for kind in KINDS}

    def lines(self) -> Iterator[tuple[int, Mapping[str, str]]]:
        """Yield what stands below the headings, by kind, each with its line number in the file."""
        for number, cells in _rows(self.written, self.delimiter, self.number):
            if self.delimiter == "," and any(map(str.strip, cells[len(self.headings) :])):
                raise UnreadableFile(
                    f"line {number} has {len(cells)} fields under {len(self.headings)} headings",
                    "if its commas are decimal, export it with semicolons or decimal points",
                )
            wide = [*map(str.strip, cells), *[""] * (len(self.headings) - len(cells))]
            yield number, {kind: " ".join(wide[n] for n in self.places[kind]) for kind in KINDS}


def find_table(text: str, named: Mapping[str, str]) -> Table:
    """Find the headings and the columns; UnreadableFile names the headings that there are."""
    written = text.removeprefix("\ufeff").splitlines()
    tables = [
        Table(headings := [*map(str.strip, cells)], _places(headings, named), by, number, written)
        for by in _DELIMITERS
        for number, cells in islice(_rows(written, by), _HEADINGS_WITHIN)
    ]
    if not tables:
        raise UnreadableFile("nothing is in it", "name a file that a data logger wrote")
    table = max(tables, key=lambda each: (each.likeness, len(each.headings) > 1))
    unclear = [
        kind for kind, at in table.places.items() if not at or (kind != "time" and len(at) > 1)
    ]
    if unclear:
        there = ", ".join(repr(heading) for heading in table.headings if heading)
        raise UnreadableFile(
            f"cannot tell which column is the {' and the '.join(unclear)}; the headings: {there}",
            f"type {' '.join(f'--{kind} COLUMN' for kind in unclear)}",
        )
    return table


def _rows(
    written: Sequence[str], delimiter: str, start: int = 0
) -> Iterator[tuple[int, Sequence[str]]]:
    reader = csv.reader(written[start:], delimiter=delimiter, skipinitialspace=True)
    try:
        for cells in reader:
            if any(cell.strip() for cell in cells):
                yield start + reader.line_num, cells
    except csv.Error as fault:
        number = start + reader.line_num
        raise UnreadableFile(f"line {number}: {fault}", "export it as plain CSV") from None


def _places(headings: Sequence[str], named: Mapping[str, str]) -> Mapping[str, Sequence[int]]:
    plain = [re.sub(r"[_/]", " ", heading.casefold()) for heading in headings]
    dates, clocks, warm, damp = (
        [n for n, heading in enumerate(plain) if what.search(heading)]
        for what in (_DATE, _CLOCK, _WARM, _DAMP)
    )
    both = [n for n in dates if n in clocks]
    found = {"time": both[:1] or [*dates[:1], *clocks[:1]], "temperature": warm, "humidity": damp}
    for kind in ("temperature", "humidity"):
        found[kind] = [n for n in found[kind] if not _NOT_OF_THE_AIR.search(plain[n])]
    for kind, heading in named.items():
        found[kind] = [n for n, name in enumerate(headings) if name == heading.strip()]
    return found
