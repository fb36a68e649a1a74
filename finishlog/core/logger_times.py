"""The times in a data logger's export, as instants.

Read are ISO 8601 (with an offset or without), `24.11.2026 19:30`, `11/24/2026 7:30:00 PM`,
`24 Nov 2026 19:30` and seconds since 1970. The form is found once and holds for the whole file;
so does the order of day and month, which a day after the 12th settles.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, tzinfo

from finishlog.core.logger_table import UnreadableFile

_CLOCK = (
    r"(?:[ ,T]+(?P<h>\d{1,2}):(?P<m>\d{2})(?::(?P<s>\d{2})(?:[.,]\d+)?)?(?: ?(?P<half>[AaPp])\.?[Mm]\.?)?)"
    r"(?: ?(?:GMT|UTC|Z))?"
)
_FIGURES = re.compile(
    rf"(?P<a>\d{{1,2}})(?P<by>[./-])(?P<b>\d{{1,2}})(?P=by)(?P<y>\d{{4}}|\d\d){_CLOCK}"
)
_YEAR_FIRST = re.compile(
    rf"(?P<y>\d{{4}})(?P<by>[./-])(?P<a>\d{{1,2}})(?P=by)(?P<b>\d{{1,2}}){_CLOCK}"
)
_NAMED = re.compile(
    rf"(?P<b>\d{{1,2}})[. -]+(?P<name>[A-Za-z]{{3,9}})[. -]+(?P<y>\d{{4}}|\d\d){_CLOCK}"
)
_EPOCH = re.compile(r"\d{10}(?:\.\d+)?|\d{13}")
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")


@dataclass(frozen=True, slots=True)
class Stamp:
    """One time as read: aware, or of a clock on some wall."""

    line: int
    at: datetime


@dataclass(frozen=True, slots=True)
class Placed:
    """The instant of a line; None: the clocks of the zone skipped that time."""

    line: int
    at: datetime | None


Reader = Callable[[str], datetime | None]


def reader_of(texts: Sequence[tuple[int, str]], day_first: bool | None) -> Reader:
    """Find how the times of a file are written, from all of them.

    `day_first`: what the person said of 10/11; None: the file must settle it. UnreadableFile
    when it does not, or when the first of them is in no form that is known.
    """
    for _, text in texts:
        if _iso(text):
            return _iso
        for form in (_YEAR_FIRST, _NAMED):
            if form.fullmatch(text):
                return _by_form(form, day_first=False)
        if _FIGURES.fullmatch(text):
            return _by_form(_FIGURES, day_first=_settled(texts, day_first))
        if _EPOCH.fullmatch(text):
            return _epoch
    line, text = texts[0] if texts else (0, "")
    raise UnreadableFile(
        f"line {line}: cannot read {text!r} as a time",
        "type --time COLUMN, or export with times like 2026-11-24 19:30",
    )


def _iso(text: str) -> datetime | None:
    if ":" not in text and "T" not in text:
        return None
    try:
        return datetime.fromisoformat(text)
    except ValueError:
        return None


def _epoch(text: str) -> datetime | None:
    if not _EPOCH.fullmatch(text):
        return None
    seconds = float(text) / (1000 if len(text) == 13 and "." not in text else 1)
    return datetime(1970, 1, 1, tzinfo=UTC) + timedelta(seconds=seconds)


def _by_form(form: re.Pattern[str], *, day_first: bool) -> Reader:
    def read(text: str) -> datetime | None:
        found = form.fullmatch(text)
        return _built(found, day_first) if found else None

    return read


def _built(found: re.Match[str], day_first: bool) -> datetime | None:
    said = found.groupdict()
    name = said.get("name")
    if name:
        month, day = _month(name), int(said["b"])
    else:
        month, day = int(said["a"]), int(said["b"])
    if day_first:
        month, day = day, month
    year, hour = int(said["y"]), int(said["h"])
    if half := said["half"]:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if half in "pP" else 0)
    try:
        year += 2000 if year < 100 else 0
        return datetime(year, month, day, hour, int(said["m"]), int(said["s"] or 0))
    except ValueError:
        return None


def _month(name: str) -> int:
    short = name[:3].casefold()
    return _MONTHS.index(short) + 1 if short in _MONTHS else 0


def _settled(texts: Sequence[tuple[int, str]], day_first: bool | None) -> bool:
    """Tell whether the day stands first: as said, as points are written, or as a day shows."""
    found = [(line, text, m) for line, text in texts if (m := _FIGURES.fullmatch(text))]
    day_is = {True for *_, m in found if int(m["a"]) > 12}
    day_is |= {False for *_, m in found if int(m["b"]) > 12}
    if len(day_is) > 1:
        # A few bad lines do not decide: what most lines can be read by does.
        return sum(int(m["a"]) > 12 for *_, m in found) * 2 > sum(
            int(m["a"]) > 12 or int(m["b"]) > 12 for *_, m in found
        )
    if day_first is not None:
        line, text, _ = found[0]
        if day_is and day_first not in day_is:
            raise UnreadableFile(
                f"line {line}: {text!r} is not written {'day' if day_first else 'month'} first",
                f"type --{'month' if day_first else 'day'}-first",
            )
        return day_first
    if day_is:
        return day_is.pop()
    line, text, first = found[0]
    if first["by"] == ".":
        return True
    raise UnreadableFile(
        f"line {line}: {text!r} may be month/day or day/month, and no line settles it",
        "type --day-first or --month-first",
    )


def placed(stamps: Iterable[Stamp], zone: tzinfo) -> Iterator[Placed]:
    """Place the times of a clock in `zone`, in the order of the work, oldest first.

    In the hour that comes twice, a time not later than the one before it is of the second pass.
    """
    before: datetime | None = None
    for stamp in stamps:
        at = _instant(stamp.at, zone, before)
        yield Placed(stamp.line, at)
        before = at or before


def _instant(wall: datetime, zone: tzinfo, before: datetime | None) -> datetime | None:
    if wall.tzinfo is not None:
        return wall.astimezone(UTC)
    first, second = (zone.utcoffset(wall.replace(fold=fold)) for fold in (0, 1))
    assert first is not None
    assert second is not None
    if first < second:
        return None
    early = (wall - first).replace(tzinfo=UTC)
    if first == second or before is None or early > before:
        return early
    return (wall - second).replace(tzinfo=UTC)


def runs_backwards(stamps: Sequence[Stamp]) -> bool:
    """Tell whether a file has its newest reading first."""
    kept = [stamp.at.replace(tzinfo=None) for stamp in (stamps[0], stamps[-1])] if stamps else []
    return len(kept) == 2 and kept[0] > kept[1]
