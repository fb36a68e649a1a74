"""Read a data logger's export into the air of a room: text in, readings and remarks out.

Nothing is guessed and nothing is taken in silently: what was left out, clamped, came twice or is
missing is counted and told with its lines. Times are of ISO 8601, or as the person says.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from datetime import UTC, datetime, timedelta, tzinfo
from enum import StrEnum
from itertools import pairwise

from msgspec import Struct, field

from finishlog.core.air.psychrometrics import Air
from finishlog.core.commands import Do
from finishlog.core.log.when import OUR_YEARS
from finishlog.core.logger.table import KINDS, Table, UnreadableFile, find_table
from finishlog.core.measure.units import Temperature, sign, to_base

# Two readings further apart than this leave the time between them to be supposed.
GAP = timedelta(hours=2)
# What air of a shop can be: beyond it, a sensor was unplugged or wet. Our own limits.
_POSSIBLE_C, _ORDINARY_C = (-30.0, 60.0), (-20.0, 45.0)
# Capacitive sensors show a little over 100 % in dew; more than that is a fault (common practice).
_SATURATED_PCT = 105.0
_TEMPERATURE = Do.AIR.option(temperature="COLUMN")
_HUMIDITY = Do.AIR.option(humidity="COLUMN")
_WRITTEN_HOW = {
    "time": f"say how it is written: {Do.AIR.option(time_format='%d.%m.%Y %H:%M')}, "
    "or '%m/%d/%Y %I:%M:%S %p'",
    "temperature": f"export bare figures, or name another column: {_TEMPERATURE}",
    "humidity": f"export bare figures, or name another column: {_HUMIDITY}",
}


class Why(StrEnum):
    """Why a line was left out."""

    UNREADABLE = "cannot be read"
    IMPOSSIBLE = "no air of a shop"
    NOT_OURS = "of another age"
    TO_COME = "still to come"
    SKIPPED_HOUR = "in the hour that the clocks skipped"


class UnitIs(StrEnum):
    """How the unit of the temperatures is known."""

    SAID = "as you said"
    IN_THE_FILE = "as the file says"
    ASSUMED = "assumed, yours"


class Skipped(Struct, frozen=True):
    """How many lines were left out for one reason, and the first of them."""

    why: Why
    count: int
    lines: Sequence[int]


class Gap(Struct, frozen=True):
    """Two neighbouring readings more than two hours apart."""

    start: datetime
    end: datetime


class HowToRead(Struct, frozen=True):
    """What the person said of a file, and what holds where neither they nor the file say it.

    `zone`: of times without an offset. `usual_unit`: of temperatures without a unit. `columns`:
    headings by what they hold. `time_format`: for `strptime`; None is ISO 8601.
    """

    now: datetime
    zone: tzinfo
    usual_unit: Temperature = Temperature.CELSIUS
    unit: Temperature | None = None
    columns: Mapping[str, str] = field(default_factory=dict)
    time_format: str | None = None


class ReadAs(Struct, frozen=True):
    """How a file was read, and what to know of it.

    `zone`: of the clock that its times are of; empty: each has its offset. `clamped`: a little
    over 100 %, taken as 100. `hour_twice`: lines of the hour that the clocks show twice, placed by
    their order. `repeated`: the same again; `changed`: two values for one instant, of
    which the later line holds.
    """

    columns: Mapping[str, str]
    unit: Temperature
    unit_is: UnitIs
    zone: str
    skipped: Sequence[Skipped]
    clamped: int
    repeated: int
    changed: int
    out_of_order: int
    newest_first: bool
    gaps: Sequence[Gap]
    hour_twice: int


class LoggerFile(Struct, frozen=True):
    """The readings of a file, in order of time, one an instant; and how it was read."""

    readings: Sequence[tuple[datetime, Air]]
    read_as: ReadAs


class _Line(Struct, frozen=True):
    """A time, aware or of a clock on some wall, and the figures as written."""

    number: int
    wall: datetime
    warm: float
    damp: float


def read_logger_file(text: str, how: HowToRead) -> LoggerFile:
    """Read an export; UnreadableFile says what is wrong, in which line, and what to type."""
    table = find_table(text, how.columns)
    left_out: dict[Why, list[int]] = {why: [] for why in Why}
    lines = _lines(table, how.time_format, left_out)
    unit, unit_is = _unit(table.names["temperature"], lines, how)
    newest_first = lines[0].wall.replace(tzinfo=None) > lines[-1].wall.replace(tzinfo=None)
    counts: Counter[str] = Counter()
    kept: dict[datetime, tuple[int, Air]] = {}
    latest = datetime.min.replace(tzinfo=UTC)
    for line, at, twice in _placed(lines[::-1] if newest_first else lines, how.zone):
        air = _air(line, unit)
        if at is None or at > how.now or air is None:
            why = Why.IMPOSSIBLE if at and at <= how.now else Why.TO_COME
            left_out[why if at else Why.SKIPPED_HOUR].append(line.number)
            continue
        number, before = kept.get(at, (0, None))
        counts["again" if before == air else "changed"] += before is not None
        counts["clamped"] += line.damp > air.humidity_pct
        counts["twice"] += twice
        counts["out of order"] += at < latest
        latest = max(latest, at)
        if line.number > number:
            kept[at] = line.number, air
    if not kept:
        raise _nothing_kept(left_out)
    readings = sorted((at, air) for at, (_, air) in kept.items())
    read_as = ReadAs(
        columns=table.names,
        unit=unit,
        unit_is=unit_is,
        zone="" if all(line.wall.tzinfo for line in lines) else str(how.zone),
        skipped=_skipped(left_out),
        clamped=counts["clamped"],
        repeated=counts["again"],
        changed=counts["changed"],
        out_of_order=counts["out of order"],
        newest_first=newest_first,
        gaps=[Gap(a, b) for (a, _), (b, _) in pairwise(readings) if b - a > GAP],
        hour_twice=counts["twice"],
    )
    return LoggerFile(readings, read_as)


def _lines(table: Table, form: str | None, left_out: Mapping[Why, list[int]]) -> list[_Line]:
    found, unread = [], None
    for number, cells in table.lines():
        time, warm, damp = (cells[kind] for kind in KINDS)
        read = _time(time, form), _figure(warm), _figure(damp)
        if read[0] is None or read[1] is None or read[2] is None:
            # A line of units, or a last word, does not show how the times are written.
            if unread is None or not all(unread[2].values()):
                unread = number, KINDS[read.index(None)], cells
            left_out[Why.UNREADABLE].append(number)
        elif read[0].year not in OUR_YEARS:
            left_out[Why.NOT_OURS].append(number)
        else:
            found.append(_Line(number, read[0], read[1], read[2]))
    if not found and unread:
        number, kind, cells = unread
        message = f"line {number}: cannot read {cells[kind]!r} as a {kind}"
        raise UnreadableFile(message, _WRITTEN_HOW[kind])
    if not found:
        raise _nothing_kept(left_out)
    return found


def _time(cell: str, form: str | None) -> datetime | None:
    try:
        if form:
            # Of the clock on some wall, unless it has an offset: `_placed` puts it into its zone.
            return datetime.strptime(cell, form)  # noqa: DTZ007
        return datetime.fromisoformat(cell) if ":" in cell or "T" in cell else None
    except ValueError:
        return None


def _figure(cell: str) -> float | None:
    try:
        return float(cell.replace(",", "."))
    except ValueError:
        return None


def _unit(heading: str, lines: Sequence[_Line], how: HowToRead) -> tuple[Temperature, UnitIs]:
    """Tell the unit, and how it is known; one that the middle reading contradicts is refused."""
    if all(0 <= line.damp <= 1 for line in lines):
        message = f"line {lines[0].number}: its humidities go from 0 to 1, not to 100"
        raise UnreadableFile(message, f"export per cent, or name another: {_HUMIDITY}")
    if how.unit:
        return how.unit, UnitIs.SAID
    words = re.split(r"[^a-z]+", heading.casefold())
    said = {
        unit for unit in Temperature if {unit.value.casefold(), unit.name.casefold()} & {*words}
    }
    if len(said) == 1:
        return said.pop(), UnitIs.IN_THE_FILE
    middle = sorted(line.warm for line in lines)[len(lines) // 2]
    if not _ORDINARY_C[0] <= to_base(middle, how.usual_unit) <= _ORDINARY_C[1]:
        message = f"its temperatures are about {middle:g}, which is no shop's in "
        raise UnreadableFile(
            message + sign(how.usual_unit),
            f"type {Do.AIR.option(unit='C')} or {Do.AIR.option(unit='F')}",
        )
    return how.usual_unit, UnitIs.ASSUMED


def _placed(lines: Sequence[_Line], zone: tzinfo) -> Iterator[tuple[_Line, datetime | None, bool]]:
    """Place times of the clock in `zone`, oldest first; None: it skipped that time.

    In the hour that it shows twice (told), a time not later than the one before is of the second
    pass.
    """
    before: datetime | None = None
    for line in lines:
        in_zone = line.wall if line.wall.tzinfo else line.wall.replace(tzinfo=zone)
        early, late = (in_zone.replace(fold=fold).astimezone(UTC) for fold in (0, 1))
        second = early < late and before is not None and early <= before
        at = None if early > late else late if second else early
        yield line, at, early < late
        before = at or before


def _air(line: _Line, unit: Temperature) -> Air | None:
    celsius = round(to_base(line.warm, unit), 3)
    warm, damp = _POSSIBLE_C[0] <= celsius <= _POSSIBLE_C[1], 0 < line.damp <= _SATURATED_PCT
    return Air(celsius, min(100.0, line.damp)) if warm and damp else None


def _skipped(left_out: Mapping[Why, Sequence[int]]) -> list[Skipped]:
    some = ((why, sorted(lines)) for why, lines in left_out.items() if lines)
    return [Skipped(why, len(lines), lines[:3]) for why, lines in some]


def _nothing_kept(left_out: Mapping[Why, Sequence[int]]) -> UnreadableFile:
    reasons = [f"{s.count} {s.why} (line {s.lines[0]} first)" for s in _skipped(left_out)]
    return UnreadableFile(
        f"it holds no reading to keep: {', '.join(reasons) or 'no line below its headings'}",
        f"if other columns are meant: {Do.AIR.options('time', 'temperature')}, {_HUMIDITY}",
    )
