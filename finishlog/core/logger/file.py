"""Read a data logger's export into the air of a room: text in, readings and remarks out.

Nothing is taken in silently: what was skipped, clamped, came twice or is missing is counted and
told with its lines. Sources of the forms: RFC 4180 (comma-separated values), ISO 8601 (times).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime, timedelta, tzinfo
from itertools import pairwise

from msgspec import Struct, field

from finishlog.core.air.psychrometrics import Air
from finishlog.core.log.entries import OUR_YEARS
from finishlog.core.logger.figures import (
    Counts,
    Row,
    Skipped,
    Why,
    air_of,
    check_plausible,
    nothing_kept,
    read_rows,
    unit_of,
)
from finishlog.core.logger.table import Chosen, find_table
from finishlog.core.logger.times import (
    Placed,
    Stamp,
    offset_named,
    placed,
    reader_of,
    runs_backwards,
)
from finishlog.core.measure.units import Temperature

# Two readings further apart than this leave the time between them to be supposed.
GAP = timedelta(hours=2)


class Gap(Struct, frozen=True):
    """Two neighbouring readings more than two hours apart."""

    start: datetime
    end: datetime


class HowToRead(Struct, frozen=True):
    """What the person said of a file, and what holds where neither they nor the file say it.

    `zone`: of times without an offset; `zone_told`: the person said it of this file. `usual_unit`:
    of temperatures without a unit.
    """

    now: datetime
    zone: tzinfo
    usual_unit: Temperature = Temperature.CELSIUS
    unit: Temperature | None = None
    columns: Chosen = field(default_factory=Chosen)
    day_first: bool | None = None
    zone_told: bool = False


class ReadAs(Struct, frozen=True):
    """How a file was read, and what to know of it.

    `zone`: of the clock that its times are of; empty: each has its offset. `clamped`: a little
    over 100 %, taken as 100. `hour_twice`: lines of the hour that the clocks show twice, placed by
    their order. `repeated`: the same again; `changed`: two values for one instant, of
    which the later line holds.
    """

    columns: Mapping[str, str]
    unit: Temperature
    unit_is: str
    zone: str
    skipped: tuple[Skipped, ...] = ()
    clamped: int = 0
    repeated: int = 0
    changed: int = 0
    out_of_order: int = 0
    newest_first: bool = False
    gaps: tuple[Gap, ...] = ()
    hour_twice: int = 0


class LoggerFile(Struct, frozen=True):
    """The readings of a file, in order of time, one an instant; and how it was read.

    `zone_told`: its times have offsets, or the file or the person said whose clock they are of.
    """

    readings: tuple[tuple[datetime, Air], ...]
    read_as: ReadAs
    zone_told: bool = True


def read_logger_file(text: str, how: HowToRead) -> LoggerFile:
    """Read an export; UnreadableFile says what is wrong, in which line, and what to type."""
    table = find_table(text, how.columns)
    counts = Counts()
    rows, of_values = read_rows(table, counts)
    unit, unit_is = unit_of(table, of_values, how.unit, how.usual_unit)
    check_plausible(rows, unit, unit_is)
    stamps, newest_first = _stamps(rows, how, counts)
    zone = offset_named(table.names["time"])
    found = _placed(rows, placed(stamps, zone or how.zone), unit, how.now, counts)
    readings = tuple(sorted(found.items(), key=lambda each: each[0]))
    if not readings:
        raise nothing_kept(counts)
    own_offsets = all(stamp.at.tzinfo is not None for stamp in stamps)
    read_as = ReadAs(
        columns=dict(table.names),
        unit=unit,
        unit_is=unit_is,
        zone="" if own_offsets else str(zone or how.zone),
        skipped=counts.skipped(),
        clamped=counts.clamped,
        repeated=counts.repeated,
        changed=counts.changed,
        out_of_order=counts.out_of_order,
        newest_first=newest_first,
        hour_twice=counts.twice,
        gaps=tuple(Gap(a, b) for (a, _), (b, _) in pairwise(readings) if b - a > GAP),
    )
    return LoggerFile(readings, read_as, own_offsets or zone is not None or how.zone_told)


def _stamps(rows: list[Row], how: HowToRead, counts: Counts) -> tuple[list[Stamp], bool]:
    """Read the times, oldest first where the file runs backwards."""
    read = reader_of([(row.line, row.when) for row in rows], how.day_first)
    stamps = []
    for row in rows:
        at = read(row.when)
        if at is None:
            counts.skip(Why.UNREADABLE, row.line)
        elif at.year not in OUR_YEARS:
            counts.skip(Why.NOT_OURS, row.line)
        else:
            stamps.append(Stamp(row.line, at))
    backwards = runs_backwards(stamps)
    return (stamps[::-1] if backwards else stamps), backwards


def _placed(
    rows: Sequence[Row],
    placed_at: Iterable[Placed],
    unit: Temperature,
    now: datetime,
    counts: Counts,
) -> dict[datetime, Air]:
    """Put the readings at their instants; where two lines share one, the later line holds."""
    by_line = {row.line: row for row in rows}
    found: dict[datetime, Air] = {}
    line_of: dict[datetime, int] = {}
    newest: datetime | None = None
    for each in placed_at:
        if each.at is None:
            counts.skip(Why.SKIPPED_HOUR, each.line)
        elif each.at > now:
            counts.skip(Why.TO_COME, each.line)
        elif (air := air_of(by_line[each.line], unit, counts)) is None:
            counts.skip(Why.IMPOSSIBLE, each.line)
        else:
            counts.twice += each.twice
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
    counts: Counts,
) -> None:
    if at in found:
        same = found[at] == air
        counts.repeated += same
        counts.changed += not same
        if line < line_of[at]:
            return
    found[at], line_of[at] = air, line
