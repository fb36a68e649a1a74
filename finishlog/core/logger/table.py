"""The table in a data logger's export: where it begins, how it is divided, what its columns are.

Exports are RFC 4180 at best. Around that they put lines about the instrument before the header,
divide by semicolon or tab where the comma is the decimal sign, and put units into the header, into
a line below it, or behind every figure.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import islice

from msgspec import Struct

from finishlog.core.measure.units import Temperature

DELIMITERS = ("\t", ";", ",")
_HEADER_WITHIN = 200

_DATE = r"\b(?:date|datum)\b"
_TIME = r"\b(?:time|timestamp|datetime|recorded at|measured at)\b|zeit(?!zone)"
_NOT_OF_THE_AIR = r"dew|taupunkt|wet|feuchtkugel|absol|surface|probe|battery"
_WARM = r"temp(?!late)|\bt\b|^[^a-z]*(?:celsius|fahrenheit|[°º] ?[cf])[^a-z]*$"
_DAMP = r"humid|feucht|\brh\b|\br\.h|\bhum\b"
_UNIT = r"(?:^|[^a-z])(?:(c|celsius)|(f|fahrenheit))(?:[^a-z]|$)"


class UnreadableFile(ValueError):
    """A file that cannot be taken as a logger's: what is wrong, where, and what to type."""

    def __init__(self, message: str, hint: str) -> None:
        super().__init__(message)
        self.message = message
        self.hint = hint


class Chosen(Struct, frozen=True):
    """Columns that the person named, by their header or by their number; None: to be found."""

    time: str | None = None
    temperature: str | None = None
    humidity: str | None = None

    @property
    def by_kind(self) -> Mapping[str, str | None]:
        """What was named, by what it holds."""
        return {"time": self.time, "temperature": self.temperature, "humidity": self.humidity}


class Table(Struct, frozen=True):
    """A table whose columns are known. `when`: one column of date and time, or two.

    `lines` are what stands below `header`, each with its line number in the file.
    """

    header: tuple[str, ...]
    when: tuple[int, ...]
    temperature: int
    humidity: int
    unit: Temperature | None
    delimiter: str
    lines: Iterable[tuple[int, Sequence[str]]]

    @property
    def names(self) -> Mapping[str, str]:
        """What the columns are called, by what they hold."""
        return {
            "time": " + ".join(self.header[n] for n in self.when),
            "temperature": self.header[self.temperature],
            "humidity": self.header[self.humidity],
        }


def find_table(text: str, chosen: Chosen) -> Table:
    """Find the header and the columns; UnreadableFile names the columns that there are."""
    lines = text.removeprefix("\ufeff").splitlines()
    if not any(line.strip() for line in lines):
        raise UnreadableFile("nothing is in it", "name a file that a data logger wrote")
    likeliest: _Found | None = None
    for delimiter in DELIMITERS:
        for number, cells in islice(_rows(lines, delimiter), _HEADER_WITHIN):
            found = _columns(cells, chosen)
            if found.is_whole:
                return _table(lines, delimiter, number, cells, found)
            if len(cells) > 1 and (likeliest is None or found.weight > likeliest.weight):
                likeliest = found
    raise _unknown(likeliest, chosen)


def _rows(
    lines: Sequence[str], delimiter: str, start: int = 0
) -> Iterator[tuple[int, Sequence[str]]]:
    reader = csv.reader(lines[start:], delimiter=delimiter, skipinitialspace=True)
    try:
        for cells in reader:
            if any(cell.strip() for cell in cells):
                yield start + reader.line_num, cells
    except csv.Error as fault:
        number = start + reader.line_num
        raise UnreadableFile(f"line {number}: {fault}", "export it as plain CSV") from None


class _Found(Struct, frozen=True):
    """The columns that a line seems to name, each kind with the places it could stand at."""

    cells: tuple[str, ...]
    when: tuple[int, ...]
    temperature: tuple[int, ...]
    humidity: tuple[int, ...]

    @property
    def is_whole(self) -> bool:
        places = (*self.when, *self.temperature, *self.humidity)
        alone = len(self.temperature) == 1 and len(self.humidity) == 1
        return bool(self.when) and alone and len(set(places)) == len(places)

    @property
    def weight(self) -> int:
        return sum(bool(each) for each in (self.when, self.temperature, self.humidity))


def _columns(cells: Sequence[str], chosen: Chosen) -> _Found:
    names = tuple(cell.strip() for cell in cells)
    plain = [re.sub(r"[_/]", " ", name.casefold()) for name in names]
    found = _Found(
        names,
        _when(plain) if chosen.time is None else _named(names, chosen.time),
        _places(plain, _WARM) if chosen.temperature is None else _named(names, chosen.temperature),
        _places(plain, _DAMP) if chosen.humidity is None else _named(names, chosen.humidity),
    )
    # A line of figures is no header, unless the columns were told by their numbers.
    told = all(named is not None and named.isdecimal() for named in chosen.by_kind.values())
    figures = [name for name in names if re.fullmatch(r"[-+]?[\d.,:]+", name)]
    return _Found(names, (), (), ()) if figures and not told else found


def _named(names: Sequence[str], typed: str) -> tuple[int, ...]:
    """Find a column by its header, by a unique part of it, or by its number from 1 on."""
    if typed.isdecimal():
        return (int(typed) - 1,) if 0 < int(typed) <= len(names) else ()
    wanted = typed.strip().casefold()
    whole = [n for n, name in enumerate(names) if name.casefold() == wanted]
    part = [n for n, name in enumerate(names) if wanted in name.casefold()]
    found = whole or part
    return tuple(found) if len(found) == 1 else ()


def _when(plain: Sequence[str]) -> tuple[int, ...]:
    dates = _places(plain, _DATE, "")
    times = _places(plain, _TIME, "")
    both = [n for n in times if n in dates or re.search("stamp|datetime|stempel", plain[n])]
    if both:
        return (both[0],)
    if dates and times:
        return (dates[0], times[0])
    return tuple(times[:1] or dates[:1])


def _places(plain: Sequence[str], what: str, but: str = _NOT_OF_THE_AIR) -> tuple[int, ...]:
    return tuple(
        n
        for n, name in enumerate(plain)
        if re.search(what, name) and not (but and re.search(but, name))
    )


def _table(
    lines: Sequence[str], delimiter: str, number: int, cells: Sequence[str], found: _Found
) -> Table:
    header = found.cells
    start = number
    unit = unit_named(header[found.temperature[0]])
    figures = re.fullmatch(r"[-+]?[\d.,]+\D{0,3}", header[found.humidity[0]])
    if figures:
        # Told by their numbers, and there is no header: the first line is a reading already.
        header, start = tuple(f"column {n}" for n in range(1, len(cells) + 1)), 0
        unit = None
    else:
        start, unit = _line_of_units(lines, delimiter, number, found, unit)
    preamble = " ".join(lines[: number - 1])
    return Table(
        header,
        found.when,
        found.temperature[0],
        found.humidity[0],
        unit or _unit_before(preamble),
        delimiter,
        _rows(lines, delimiter, start),
    )


def _line_of_units(
    lines: Sequence[str], delimiter: str, number: int, found: _Found, unit: Temperature | None
) -> tuple[int, Temperature | None]:
    """Pass over a line of units below the header; return the line that it ends with."""
    below, cells = next(_rows(lines, delimiter, number), (number, []))
    at = found.temperature[0]
    if at < len(cells) and not re.search(r"\d", "".join(cells)):
        return below, unit or unit_named(cells[at])
    return number, unit


def unit_named(words: str) -> Temperature | None:
    """Find °C or °F in words: `Temp (°F)`, `temperature_c`, `17.2 °C`; None when neither is."""
    found = re.findall(_UNIT, words.casefold())
    scales = {Temperature.CELSIUS if c else Temperature.FAHRENHEIT for c, _ in found}
    return scales.pop() if len(scales) == 1 else None


def _unit_before(preamble: str) -> Temperature | None:
    """Find a unit in the lines about the instrument, where only one is named with its degrees."""
    found = set(re.findall(r"[°º] ?([CF])\b|\b(celsius|fahrenheit)\b", preamble, re.IGNORECASE))
    scales = {Temperature((short or long)[0].upper()) for short, long in found}
    return scales.pop() if len(scales) == 1 else None


def _unknown(found: _Found | None, chosen: Chosen) -> UnreadableFile:
    if found is None:
        return UnreadableFile(
            "no line of it has columns", "export it as CSV, with commas, semicolons or tabs"
        )
    columns = ", ".join(repr(name) for name in found.cells if name) or "without names"
    kinds = {"time": found.when, "temperature": found.temperature, "humidity": found.humidity}
    for kind, typed in chosen.by_kind.items():
        if typed is not None and not kinds[kind]:
            return UnreadableFile(
                f"no one column is {typed!r}; the columns are {columns}",
                f"type --{kind} with one of them, or its number from 1 on",
            )
    wrong = [kind for kind, places in kinds.items() if len(places) != 1 and kind != "time"]
    wrong = ([] if found.when else ["time"]) + wrong
    options = " ".join(f"--{kind} COLUMN" for kind in wrong)
    return UnreadableFile(
        f"cannot tell which column is the {' and the '.join(wrong)}; the columns are {columns}",
        f"type {options}, with its name or number",
    )
