"""The times in a data logger's export, as instants.

Read are ISO 8601 (with an offset or without), `24.11.2026 19:30`, `11/24/2026 7:30:00 PM`,
`24 Nov 2026 19:30` and seconds since 1970. The form is found once and holds for the whole file;
so does the order of day and month, which a day after the 12th settles.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import UTC, date, datetime, time, timedelta, timezone, tzinfo

from msgspec import Struct

from finishlog.core.logger.table import UnreadableFile

_CLOCK = (
    r"[ ,T]+(?P<h>\d{1,2}):(?P<m>\d{2})(?::(?P<s>\d{2})(?:[.,]\d+)?)?"
    r"(?: ?(?P<half>[ap])\.?m\b\.?)?(?P<utc> ?(?:GMT|UTC|Z))?"
)
_YEAR = r"(?P<y>\d{4}|\d\d)"
_FIGURES = rf"(?P<a>\d{{1,2}})(?P<by>[./-])(?P<b>\d{{1,2}})(?P=by){_YEAR}{_CLOCK}"
_YEAR_FIRST = rf"(?P<y>\d{{4}})(?P<by>[./-])(?P<a>\d{{1,2}})(?P=by)(?P<b>\d{{1,2}}){_CLOCK}"
_NAMED = rf"(?P<b>\d{{1,2}})[. -]+(?P<name>[a-z]{{3,9}})[. -]+{_YEAR}{_CLOCK}"
_FORMS = {
    name: re.compile(form, re.IGNORECASE)
    for name, form in (("figures", _FIGURES), ("year first", _YEAR_FIRST), ("named", _NAMED))
}
_EPOCH = re.compile(r"\d{10}(?:\.\d+)?|\d{13}")
_OFFSET = re.compile(r"\b(?:GMT|UTC)\b ?(?P<by>(?P<sign>[+−-])(?P<h>\d{1,2}):?(?P<m>\d{2})?)?")
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")


class Stamp(Struct, frozen=True):
    """One time as read: aware, or of a clock on some wall."""

    line: int
    at: datetime


class Placed(Struct, frozen=True):
    """The instant of a line; None: the clocks of the zone skipped that time.

    `twice`: the wall showed that time twice.
    """

    line: int
    at: datetime | None
    twice: bool = False


Reader = Callable[[str], datetime | None]


def reader_of(texts: Sequence[tuple[int, str]], day_first: bool | None) -> Reader:
    """Find how the times of a file are written, from all of them.

    `day_first`: what the person said of 10/11; None: the file must settle it. UnreadableFile
    when it does not, or when the first of them is in no form that is known.
    """
    for _, text in texts:
        if _iso(text):
            return _iso
        for name in ("year first", "named"):
            if _FORMS[name].fullmatch(text):
                return _by_form(_FORMS[name], day_first=False)
        if _FORMS["figures"].fullmatch(text):
            return _by_form(_FORMS["figures"], day_first=_settled(texts, day_first))
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
        minute, second = int(said["m"]), int(said["s"] or 0)
        # Of the clock on some wall, unless it says UTC: `placed` puts it into its zone.
        return datetime(year, month, day, hour, minute, second, tzinfo=UTC if said["utc"] else None)
    except ValueError:
        return None


def _month(name: str) -> int:
    short = name[:3].casefold()
    return _MONTHS.index(short) + 1 if short in _MONTHS else 0


def offset_named(heading: str) -> tzinfo | None:
    """Find an offset in the heading of a column: `Date Time, GMT+01:00`; None without one."""
    found = _OFFSET.search(heading.replace("_", " ").upper())
    if found is None:
        return None
    away = timedelta(hours=int(found["h"] or 0), minutes=int(found["m"] or 0))
    return timezone(away if found["sign"] in {"+", None} else -away)


def _settled(texts: Sequence[tuple[int, str]], said: bool | None) -> bool:
    """Tell whether the day stands first: as a day after the 12th shows, as said, as points are."""
    line, text = next(each for each in texts if _FORMS["figures"].fullmatch(each[1]))
    by = text.lstrip("0123456789")[0]
    pairs = [each.split(by, 2)[:2] for _, each in texts if each.count(by) == 2]
    firsts, seconds = ([p[n] for p in pairs if p[n].isdecimal() and int(p[n]) > 12] for n in (0, 1))
    shown = len(firsts) > len(seconds)
    if said is not None and (firsts or seconds) and shown is not said:
        raise UnreadableFile(
            f"line {line}: {text!r} is not written {'day' if said else 'month'} first",
            f"type --{'month' if said else 'day'}-first",
        )
    if said is not None:
        return said
    if firsts or seconds:
        return shown
    if by == ".":
        return True
    raise UnreadableFile(
        f"line {line}: {text!r} may be month/day or day/month, and no line settles it",
        "type --day-first or --month-first",
    )


def placed(stamps: Iterable[Stamp], zone: tzinfo) -> Iterator[Placed]:
    """Place the times of a clock in `zone`, in the order of the work, oldest first.

    In the hour that comes twice, a time not later than the one before it is of the second pass.
    """
    offsets = _Offsets(zone)
    before: datetime | None = None
    for stamp in stamps:
        if stamp.at.tzinfo is not None:
            at: datetime | None = stamp.at.astimezone(UTC)
            yield Placed(stamp.line, at)
        else:
            at = offsets.instant(stamp.at, before)
            yield Placed(stamp.line, at, offsets.comes_twice(stamp.at))
        before = at or before


class _Offsets:
    """The offsets of a zone, remembered for the days on which the clocks do not change."""

    def __init__(self, zone: tzinfo) -> None:
        self._zone = zone
        self._of_day: dict[date, timedelta | None] = {}

    def instant(self, wall: datetime, before: datetime | None) -> datetime | None:
        """Return the instant at which the wall shows a time; None when it never does."""
        day = wall.date()
        if day not in self._of_day:
            self._of_day[day] = self._throughout(day)
        steady = self._of_day[day]
        if steady is not None:
            return (wall - steady).replace(tzinfo=UTC)
        first, second = self._both(wall)
        if first < second:
            return None
        early = (wall - first).replace(tzinfo=UTC)
        if first == second or before is None or early > before:
            return early
        return (wall - second).replace(tzinfo=UTC)

    def comes_twice(self, wall: datetime) -> bool:
        """Tell whether the wall shows a time twice; to be asked after its instant."""
        if self._of_day[wall.date()] is not None:
            return False
        first, second = self._both(wall)
        return first > second

    def _throughout(self, day: date) -> timedelta | None:
        begins = datetime.combine(day, time())
        found = {*self._both(begins), *self._both(begins + timedelta(days=1))}
        return found.pop() if len(found) == 1 else None

    def _both(self, wall: datetime) -> tuple[timedelta, timedelta]:
        first, second = (self._zone.utcoffset(wall.replace(fold=fold)) for fold in (0, 1))
        assert first is not None
        assert second is not None
        return first, second


def runs_backwards(stamps: Sequence[Stamp]) -> bool:
    """Tell whether a file has its newest reading first."""
    kept = [stamp.at.replace(tzinfo=None) for stamp in (stamps[0], stamps[-1])] if stamps else []
    return len(kept) == 2 and kept[0] > kept[1]
