"""What was typed for a time, with where and when it was typed."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from typing import NoReturn
from zoneinfo import ZoneInfo

from msgspec import Struct

from finishlog.core.log.when import OUR_YEARS
from finishlog.errors import UsageFault

DAY = timedelta(days=1)
DAY_ENDS_H = 4


class TimeTyped(Struct, frozen=True):
    """`text` as typed at `now` (UTC) in `zone`; `future` admits times to come."""

    text: str
    now: datetime
    zone: ZoneInfo
    future: bool

    @property
    def today(self) -> date:
        """The calendar's day."""
        return self.now.astimezone(self.zone).date()

    @property
    def persons_day(self) -> date:
        """The day that the person is still in: until 04:00 it is yesterday's."""
        early = self.now.astimezone(self.zone).hour < DAY_ENDS_H
        return self.today - DAY if early else self.today

    def in_our_time(self, day: date) -> date:
        """Return the day; UsageFault when no shop of ours was or will be open on it."""
        if day.year not in OUR_YEARS:
            raise UsageFault(f"{self.text!r} is not of our time", f"type the year: {self.today}")
        return day

    def unreadable(self) -> NoReturn:
        """Refuse it with what can be read."""
        if self.future:
            raise UsageFault(
                f"cannot read {self.text!r} as a time to come",
                'type "Sat 5 Dec", "next fri", "in 3 weeks" or "2026-12-05 18:00"',
            )
        raise UsageFault(
            f"cannot read {self.text!r} as a time",
            'type "19:30", "yesterday 19:30", "2h ago", "mon evening" or "2026-11-24 19:30"',
        )
