"""Read a data logger's export into the air of a room: text in, readings and remarks out.

Nothing is taken in silently: what was skipped, clamped, came twice or is missing is counted and
told with its lines. Sources of the forms: RFC 4180 (comma-separated values), ISO 8601 (times).
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta, tzinfo
from enum import StrEnum
from itertools import pairwise

from finishlog.core.air import Air
from finishlog.core.logger_table import Chosen, Table, UnreadableFile, find_table, unit_named
from finishlog.core.logger_times import Stamp, placed, reader_of, runs_backwards
from finishlog.core.units import Temperature, to_base

# What air of a shop can be: beyond it, a sensor was unplugged or wet. Our own limits.
POSSIBLE_C = (-30.0, 60.0)
# Capacitive sensors show a little over 100 % in dew; more than that is a fault (common practice).
SATURATED_PCT = 105.0
# Two readings further apart than this leave the time between them to be supposed.
GAP = timedelta(hours=2)
_SHOWN = 3
_ORDINARY_C = (-20.0, 45.0)
_FIGURE = re.compile(r"([-+−]?\d{1,5}(?:[.,]\d+)?)\s*(?:[°º]?\s*[CFcf]?|%?\s*(?:rh|RH|rF)?)")


class Why(StrEnum):
    """Why a line was left out."""

    UNREADABLE = "cannot be read"
    IMPOSSIBLE = "no air of a shop"
    TO_COME = "still to come"
    SKIPPED_HOUR = "in the hour that the clocks skipped"


@dataclass(frozen=True, slots=True)
class Skipped:
    """How many lines were left out for one reason, and the first of them."""

    why: Why
    count: int
    lines: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Gap:
    """Two neighbouring readings more than two hours apart."""

    start: datetime
    end: datetime


@dataclass(frozen=True, slots=True)
class HowToRead:
    """What the person said of a file, and what holds where neither they nor the file say it.

    `zone`: of times without an offset. `usual_unit`: of temperatures without a unit.
    """

    now: datetime
    zone: tzinfo
    usual_unit: Temperature = Temperature.CELSIUS
    unit: Temperature | None = None
    columns: Chosen = field(default_factory=Chosen)
    day_first: bool | None = None


@dataclass(frozen=True, slots=True)
class LoggerFile:
    """What a file holds: readings in order of time, one an instant, and what to know of them.

    `clamped`: a little over 100 %, taken as 100. `repeated`: the same again; `changed`: two
    values for one instant, the later line holds. `own_offsets`: its times are instants.
    """

    readings: tuple[tuple[datetime, Air], ...]
    columns: Mapping[str, str]
    unit: Temperature
    unit_is: str
    own_offsets: bool
    skipped: tuple[Skipped, ...] = ()
    clamped: int = 0
    repeated: int = 0
    changed: int = 0
    out_of_order: int = 0
    newest_first: bool = False
    gaps: tuple[Gap, ...] = ()


@dataclass(slots=True)
class _Counts:
    """What is counted on the way."""

    lines: dict[Why, list[int]] = field(default_factory=lambda: defaultdict(list))
    clamped: int = 0
    repeated: int = 0
    changed: int = 0
    out_of_order: int = 0

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


@dataclass(frozen=True, slots=True)
class _Row:
    """One line's time, temperature (in the file's unit) and humidity (%)."""

    line: int
    when: str
    warm: float
    damp: float


def read_logger_file(text: str, how: HowToRead) -> LoggerFile:
    """Read an export; UnreadableFile says what is wrong, in which line, and what to type."""
    table = find_table(text, how.columns)
    counts = _Counts()
    rows, of_values = _rows(table, counts)
    unit, unit_is = _unit(table, of_values, how)
    _plausible(rows, unit, unit_is)
    stamps, newest_first = _stamps(rows, how, counts)
    found = _placed(rows, stamps, unit, how, counts)
    readings = tuple(sorted(found.items(), key=lambda each: each[0]))
    if not readings:
        raise _nothing(counts)
    return LoggerFile(
        readings=readings,
        columns=dict(table.names),
        unit=unit,
        unit_is=unit_is,
        own_offsets=all(stamp.at.tzinfo is not None for stamp in stamps),
        skipped=counts.skipped(),
        clamped=counts.clamped,
        repeated=counts.repeated,
        changed=counts.changed,
        out_of_order=counts.out_of_order,
        newest_first=newest_first,
        gaps=tuple(Gap(a, b) for (a, _), (b, _) in pairwise(readings) if b - a > GAP),
    )


def _rows(table: Table, counts: _Counts) -> tuple[list[_Row], Temperature | None]:
    """Read the figures of every line; and the unit that stands behind them, if one does."""
    rows: list[_Row] = []
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
        rows.append(_Row(line, " ".join(cells[n].strip() for n in table.when), warm, damp))
    if not rows:
        raise _nothing(counts)
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
    found = _FIGURE.fullmatch(cell.strip())
    return float(found[1].replace(",", ".").replace("−", "-")) if found else None


def _unit(table: Table, of_values: Temperature | None, how: HowToRead) -> tuple[Temperature, str]:
    """Tell the unit of the temperatures, and how it is known."""
    if how.unit is not None:
        return how.unit, "as you said"
    said = table.unit or of_values
    return (said, "as the file says") if said else (how.usual_unit, "assumed, yours")


def _plausible(rows: Sequence[_Row], unit: Temperature, unit_is: str) -> None:
    """Refuse an assumed unit that the middle reading contradicts, and humidities of 0 to 1."""
    middle = sorted(to_base(row.warm, unit) for row in rows)[len(rows) // 2]
    if "assumed" in unit_is and not _ORDINARY_C[0] <= middle <= _ORDINARY_C[1]:
        other = next(each for each in Temperature if each is not unit)
        raise UnreadableFile(
            f"its temperatures are about {_said(rows)}, which is no shop's in °{unit}",
            f"add --unit {other} or --unit {unit}",
        )
    if all(0 <= row.damp <= 1 for row in rows):
        raise UnreadableFile(
            f"line {rows[0].line}: its humidities go from 0 to 1, not to 100",
            "export them in per cent, or name the column: --humidity COLUMN",
        )


def _said(rows: Sequence[_Row]) -> str:
    return f"{sorted(row.warm for row in rows)[len(rows) // 2]:g}"


def _stamps(rows: list[_Row], how: HowToRead, counts: _Counts) -> tuple[list[Stamp], bool]:
    """Read the times, oldest first where the file runs backwards."""
    read = reader_of([(row.line, row.when) for row in rows], how.day_first)
    stamps = []
    for row in rows:
        at = read(row.when)
        if at is None:
            counts.skip(Why.UNREADABLE, row.line)
        else:
            stamps.append(Stamp(row.line, at))
    backwards = runs_backwards(stamps)
    return (stamps[::-1] if backwards else stamps), backwards


def _placed(
    rows: Sequence[_Row],
    stamps: Sequence[Stamp],
    unit: Temperature,
    how: HowToRead,
    counts: _Counts,
) -> dict[datetime, Air]:
    """Put the readings at their instants; where two lines share one, the later line holds."""
    by_line = {row.line: row for row in rows}
    found: dict[datetime, Air] = {}
    line_of: dict[datetime, int] = {}
    newest: datetime | None = None
    for each in placed(stamps, how.zone):
        if each.at is None:
            counts.skip(Why.SKIPPED_HOUR, each.line)
        elif each.at > how.now:
            counts.skip(Why.TO_COME, each.line)
        elif (air := _air(by_line[each.line], unit, counts)) is None:
            counts.skip(Why.IMPOSSIBLE, each.line)
        else:
            counts.out_of_order += newest is not None and each.at < newest
            newest = max(newest or each.at, each.at)
            _keep(found, line_of, each.at, each.line, air, counts)
    return found


def _keep(
    found: dict[datetime, Air],
    line_of: dict[datetime, int],
    at: datetime,
    line: int,
    air: Air,
    counts: _Counts,
) -> None:
    if at in found:
        same = found[at] == air
        counts.repeated += same
        counts.changed += not same
        if line < line_of[at]:
            return
    found[at], line_of[at] = air, line


def _air(row: _Row, unit: Temperature, counts: _Counts) -> Air | None:
    """Return the air of a line; None for what no air of a shop can be."""
    celsius = round(to_base(row.warm, unit), 3)
    if not POSSIBLE_C[0] <= celsius <= POSSIBLE_C[1] or not 0 < row.damp <= SATURATED_PCT:
        return None
    counts.clamped += row.damp > 100
    return Air(celsius, min(100.0, row.damp))


def _nothing(counts: _Counts) -> UnreadableFile:
    reasons = ", ".join(
        f"{each.count} {each.why.value} (line {each.lines[0]} first)" for each in counts.skipped()
    )
    return UnreadableFile(
        f"it holds no reading to keep: {reasons or 'no line below its header'}",
        "name its columns: --time, --temperature, --humidity",
    )
