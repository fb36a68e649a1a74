"""The only place that reads the time and the shop's time zone."""

from __future__ import annotations

import os
from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from msgspec import Struct

from finishlog.core.log import shown_times
from finishlog.core.log.when import OUR_YEARS, When
from finishlog.errors import UsageFault

NOW = "FINISHLOG_NOW"
ZONE = "FINISHLOG_ZONE"


class Clock(Struct, frozen=True):
    """The present instant (UTC) and the shop's zone: what acts and asks are handed."""

    now: datetime
    zone: ZoneInfo

    def words(self, moment: datetime) -> str:
        """Show a time to the minute, as seen from now."""
        return shown_times.clock_words(moment, self.now, self.zone)

    def day(self, moment: datetime) -> str:
        """Show the day of a moment among others of its year: `2 Nov`."""
        local = moment.astimezone(self.zone)
        return f"{local.day} {local:%b}"

    def day_of(self, moment: datetime) -> str:
        """Show the day of a moment with its year: `Tue 10 Jun 2025`."""
        return shown_times.day_of(moment, self.zone)

    def happened(self, when: When) -> str:
        """Show the time of the work as it was understood."""
        return shown_times.happened(when, self.now, self.zone)

    def wait_until(self, moment: datetime) -> str:
        """Show when a wait is over, never too early."""
        return shown_times.wait_until(moment, self.now, self.zone)

    def closes_at(self, moment: datetime, by: str = "") -> str:
        """Show when a window closes, never too late."""
        return shown_times.closes_at(moment, self.now, self.zone, by)


def now() -> datetime:
    """Return the present instant in UTC; FINISHLOG_NOW (ISO 8601 with offset) sets it."""
    text = os.environ.get(NOW)
    if not text:
        return datetime.now(UTC)  # noqa: TID251  (this is the one place)
    try:
        moment = datetime.fromisoformat(text)
    except ValueError:
        moment = None
    if moment is None or moment.tzinfo is None or moment.year not in OUR_YEARS:
        raise UsageFault(
            f"{NOW} is {text!r}, not a moment with its offset",
            "set it like 2026-11-24T21:05+00:00, or unset it",
        )
    return moment.astimezone(UTC)


def is_set_by_hand() -> bool:
    """Tell whether FINISHLOG_NOW stands in for the real clock."""
    return bool(os.environ.get(NOW))


def zone_is_given() -> bool:
    """Tell whether FINISHLOG_ZONE names the zone, whatever was set before."""
    return bool(os.environ.get(ZONE))


def shop_zone(kept: str | None = None) -> ZoneInfo:
    """Return the shop's time zone: FINISHLOG_ZONE, the one kept, TZ, the machine's, else UTC."""
    named = os.environ.get(ZONE)
    name = named or kept or os.environ.get("TZ", "").lstrip(":") or _machine_zone()
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, IsADirectoryError):
        if named:
            raise UsageFault(
                f"no time zone is called {named!r}", f"set {ZONE} like Europe/Berlin"
            ) from None
        return ZoneInfo("UTC")


def _machine_zone() -> str:
    link = Path("/etc/localtime")
    if link.is_symlink():
        _, found, name = str(link.resolve()).partition("zoneinfo/")
        if found:
            return name
    stated = Path("/etc/timezone")
    return stated.read_text().strip() if stated.is_file() else "UTC"
