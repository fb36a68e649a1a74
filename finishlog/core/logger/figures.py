"""The figures in the lines of a data logger's export, and what they are measured in."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Sequence
from enum import StrEnum
from math import isfinite

from msgspec import Struct, field

from finishlog.core.air.psychrometrics import Air
from finishlog.core.logger.table import Table, UnreadableFile, unit_named
from finishlog.core.measure.units import Temperature, sign, to_base

# What air of a shop can be: beyond it, a sensor was unplugged or wet. Our own limits.
POSSIBLE_C = (-30.0, 60.0)
# Capacitive sensors show a little over 100 % in dew; more than that is a fault (common practice).
SATURATED_PCT = 105.0
_SHOWN = 3
_ORDINARY_C = (-20.0, 45.0)
_FIGURE = re.compile(r"([-+−]?\d{1,5}(?:[.,]\d+)?)\s*(?:[°º]?\s*[CFcf]?|%?\s*(?:rh|RH|rF)?)")


class Why(StrEnum):
    """Why a line was left out."""

    UNREADABLE = "cannot be read"
    IMPOSSIBLE = "no air of a shop"
    NOT_OURS = "of another age"
    TO_COME = "still to come"
    SKIPPED_HOUR = "in the hour that the clocks skipped"


class Skipped(Struct, frozen=True):
    """How many lines were left out for one reason, and the first of them."""

    why: Why
    count: int
    lines: tuple[int, ...]


class Counts(Struct):
    """What is counted on the way."""

    lines: dict[Why, list[int]] = field(default_factory=lambda: defaultdict(list))
    clamped: int = 0
    repeated: int = 0
    changed: int = 0
    out_of_order: int = 0
    twice: int = 0

    def skip(self, why: Why, line: int) -> None:
        """Leave a line out."""
        self.lines[why].append(line)

    def skipped(self) -> tuple[Skipped, ...]:
        """Return the reasons with their counts, in a fixed order."""
        return tuple(
            Skipped(why, len(self.lines[why]), tuple(sorted(self.lines[why])[:_SHOWN]))
            for why in Why
            if self.lines[why]
        )


class Row(Struct, frozen=True):
    """One line's time, temperature (in the file's unit) and humidity (%)."""

    line: int
    when: str
    warm: float
    damp: float


def read_rows(table: Table, counts: Counts) -> tuple[list[Row], Temperature | None]:
    """Read the figures of every line; and the unit that stands behind them, if one does."""
    rows: list[Row] = []
    of_values: Temperature | None = None
    last = max(*table.when, table.temperature, table.humidity)
    for line, cells in table.lines:
        _check_width(table, line, cells)
        if last >= len(cells):
            counts.skip(Why.UNREADABLE, line)
            continue
        warm, damp = _figure(cells[table.temperature]), _figure(cells[table.humidity])
        if warm is None or damp is None:
            counts.skip(Why.UNREADABLE, line)
            continue
        if not rows:
            of_values = unit_named(cells[table.temperature])
        rows.append(Row(line, " ".join(cells[n].strip() for n in table.when), warm, damp))
    if not rows:
        raise nothing_kept(counts)
    return rows, of_values


def _check_width(table: Table, line: int, cells: Sequence[str]) -> None:
    """Refuse decimal commas between commas: which comma is which, nobody can tell."""
    extra = [cell for cell in cells[len(table.header) :] if cell.strip()]
    if table.delimiter == "," and len(extra) >= 2 and all(c.strip().isdigit() for c in extra):
        raise UnreadableFile(
            f"line {line} has {len(cells)} fields under {len(table.header)} headings: its decimal"
            " commas look like dividers",
            "export it with semicolons, or with decimal points",
        )


def _figure(cell: str) -> float | None:
    """Read a figure with a decimal point or comma, and a unit behind it; None for none."""
    try:
        figure = float(cell)
    except ValueError:
        return _figure_in_words(cell)
    return figure if isfinite(figure) else None


def _figure_in_words(cell: str) -> float | None:
    found = _FIGURE.fullmatch(cell.strip())
    return float(found[1].replace(",", ".").replace("−", "-")) if found else None


def unit_of(
    table: Table, of_values: Temperature | None, asked: Temperature | None, usual: Temperature
) -> tuple[Temperature, str]:
    """Tell the unit of the temperatures, and how it is known."""
    if asked is not None:
        return asked, "as you said"
    said = table.unit or of_values
    return (said, "as the file says") if said else (usual, "assumed, yours")


def check_plausible(rows: Sequence[Row], unit: Temperature, unit_is: str) -> None:
    """Refuse an assumed unit that the middle reading contradicts, and humidities of 0 to 1."""
    middle = sorted(to_base(row.warm, unit) for row in rows)[len(rows) // 2]
    if "assumed" in unit_is and not _ORDINARY_C[0] <= middle <= _ORDINARY_C[1]:
        other = next(each for each in Temperature if each is not unit)
        raise UnreadableFile(
            f"its temperatures are about {_said(rows)}, which is no shop's in {sign(unit)}",
            f"add --unit {other} or --unit {unit}",
        )
    if all(0 <= row.damp <= 1 for row in rows):
        raise UnreadableFile(
            f"line {rows[0].line}: its humidities go from 0 to 1, not to 100",
            "export them in per cent, or name the column: --humidity COLUMN",
        )


def _said(rows: Sequence[Row]) -> str:
    return f"{sorted(row.warm for row in rows)[len(rows) // 2]:g}"


def air_of(row: Row, unit: Temperature, counts: Counts) -> Air | None:
    """Return the air of a line; None for what no air of a shop can be."""
    celsius = round(to_base(row.warm, unit), 3)
    if not POSSIBLE_C[0] <= celsius <= POSSIBLE_C[1] or not 0 < row.damp <= SATURATED_PCT:
        return None
    counts.clamped += row.damp > 100
    return Air(celsius, min(100.0, row.damp))


def nothing_kept(counts: Counts) -> UnreadableFile:
    """Say why no line of a file gives a reading."""
    reasons = ", ".join(
        f"{each.count} {each.why.value} (line {each.lines[0]} first)" for each in counts.skipped()
    )
    return UnreadableFile(
        f"it holds no reading to keep: {reasons or 'no line below its header'}",
        "name its columns: --time, --temperature, --humidity",
    )
