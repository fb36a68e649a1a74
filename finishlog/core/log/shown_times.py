"""How times are shown to people: never a wait too short, never a closing too late.

No source is exact to the minute, so waits are rounded up and closings down to the half hour, and
beyond three days to the day. Rounding is elapsed time, so a clock change cannot turn it round.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from finishlog.core.log.when import Sureness, When

# Two dates nearer together than this are shown as one.
SHOWN_TO = timedelta(minutes=30)
_DAY = timedelta(days=1)
_IN_DAYS_BEYOND = timedelta(days=3)
# Further than this a date is shown with its year.
_YEAR_BEYOND = timedelta(days=180)


def wait_until(moment: datetime, now: datetime, zone: ZoneInfo) -> str:
    """Show when a wait is over, not earlier: `23:00`, `Wed 14:30`, `Sat 5 Dec`, or `now`.

    A date means from the start of that day.
    """
    wait = _elapsed(now, moment)
    if wait <= timedelta():
        return "now"
    if wait > _IN_DAYS_BEYOND:
        return _date_words(_first_whole_day_after(moment, zone), now, zone)
    return clock_words(half_hour_up(moment, zone), now, zone)


def closes_at(moment: datetime, now: datetime, zone: ZoneInfo, by: str = "") -> str:
    """Show when a window closes, not later: `23:30`, `Wed 21:00`, `Fri 4 Dec`.

    A date means to the end of that day. Less than the rounding away: `within the half hour`; `by`
    stands before any other.
    """
    left = _elapsed(now, moment)
    if left > _IN_DAYS_BEYOND:
        return by + _date_words(_last_whole_day_before(moment, zone), now, zone)
    rounded = _half_hour_down(moment, zone)
    if left > timedelta() >= _elapsed(now, rounded):
        return "within the half hour"
    return by + clock_words(rounded, now, zone)


def due_words(moment: datetime, now: datetime, zone: ZoneInfo) -> str:
    """Show until when a thing is due: `Sat 5 Dec`; the end of a day needs no minutes."""
    day = _day_words(moment, now, zone)
    local = moment.astimezone(zone)
    return day if day and (local.hour, local.minute) == (23, 59) else clock_words(moment, now, zone)


def happened(when: When, now: datetime, zone: ZoneInfo) -> str:
    """Show the time of the work as it was understood: `19:30`, `Mon 18:00 to 22:00`."""
    first = clock_words(when.earliest, now, zone)
    if when.earliest == when.latest:
        return first
    day, last_day = _on(when.earliest, zone), _on(when.latest, zone)
    if day + _DAY == last_day and _is_midnight(when.earliest, when.latest, zone):
        near = abs(day - _on(now, zone)) < timedelta(days=7)
        return f"some time on {f'{day:%a}' if near else _date_words(day, now, zone)}"
    last = _time_words(when.latest, zone)
    if day != last_day:
        last = f"{last_day:%a} {last}"
    about = "about " if when.sureness is Sureness.ABOUT else ""
    return f"{about}{first} to {last}"


def clock_words(moment: datetime, now: datetime, zone: ZoneInfo) -> str:
    """Show a time to the minute, unrounded, with as much of its day as it needs."""
    return f"{_day_words(moment, now, zone)} {_time_words(moment, zone)}".lstrip()


def _day_words(moment: datetime, now: datetime, zone: ZoneInfo) -> str:
    """Say as much of a day as it needs, nothing of today."""
    day, today = _on(moment, zone), _on(now, zone)
    if day == today:
        return ""
    return f"{day:%a}" if abs(day - today) < timedelta(days=7) else _date_words(day, now, zone)


def day_of(moment: datetime, zone: ZoneInfo) -> str:
    """Show the day of a moment for paper, with its year: `Sat 5 Dec 2026`."""
    return _dated(_on(moment, zone))


def first_day_after(moment: datetime, zone: ZoneInfo) -> str:
    """Show the first whole day after a moment for paper, with its year: never too early."""
    return _dated(_first_whole_day_after(moment, zone))


def _dated(day: date) -> str:
    return f"{day:%a} {day.day} {day:%b} {day.year}"


def wait_words(wait: timedelta) -> str:
    """Say how long still to wait, rounded up: `0.5 h`, `3 h`, `2 d`; beyond 3 d whole days."""
    step = _DAY if wait > _IN_DAYS_BEYOND else SHOWN_TO
    return length_words(max(-(-wait // step), 0) * step)


def length_words(length: timedelta) -> str:
    """Say a length of time as it is, to the minute: `45 min`, `1.5 h`, `1 h 45 min`, `2 d`."""
    minutes = round(length / timedelta(minutes=1))
    if minutes >= 48 * 60 and minutes % (24 * 60) == 0:
        return f"{minutes // (24 * 60)} d"
    if minutes % 30 == 0 and minutes != 30:
        return f"{minutes / 60:g} h"
    hours, rest = divmod(minutes, 60)
    return f"{hours} h {rest} min" if hours else f"{rest} min"


def is_ambiguous(moment: datetime, zone: ZoneInfo) -> bool:
    """Say whether the wall time of a moment occurs twice, at the end of summer time."""
    local = moment.astimezone(zone)
    return local.replace(fold=0).utcoffset() != local.replace(fold=1).utcoffset()


def _elapsed(start: datetime, end: datetime) -> timedelta:
    # Subtraction within one zone is wall arithmetic, so in UTC.
    return end.astimezone(UTC) - start.astimezone(UTC)


def _half_hour_down(moment: datetime, zone: ZoneInfo) -> datetime:
    local = moment.astimezone(zone)
    past = timedelta(
        minutes=local.minute % 30, seconds=local.second, microseconds=local.microsecond
    )
    return moment.astimezone(UTC) - past


def half_hour_up(moment: datetime, zone: ZoneInfo) -> datetime:
    """Round a moment up to the half hour of the clock on the wall."""
    down = _half_hour_down(moment, zone)
    return down if down == moment else down + SHOWN_TO


def _first_whole_day_after(moment: datetime, zone: ZoneInfo) -> date:
    return _on(moment.astimezone(UTC) - timedelta.resolution, zone) + _DAY


def _last_whole_day_before(moment: datetime, zone: ZoneInfo) -> date:
    return _on(moment, zone) - _DAY


def _on(moment: datetime, zone: ZoneInfo) -> date:
    return moment.astimezone(zone).date()


def _is_midnight(first: datetime, second: datetime, zone: ZoneInfo) -> bool:
    return all(moment.astimezone(zone).time() == time() for moment in (first, second))


def _time_words(moment: datetime, zone: ZoneInfo) -> str:
    local = moment.astimezone(zone)
    if not is_ambiguous(moment, zone):
        return f"{local:%H:%M}"
    offset = f"{local:%z}"
    return f"{local:%H:%M}{offset[:3]}:{offset[3:5]}"


def _date_words(day: date, now: datetime, zone: ZoneInfo) -> str:
    year = f" {day.year}" if abs(day - _on(now, zone)) > _YEAR_BEYOND else ""
    return f"{day:%a} {day.day} {day:%b}{year}"
