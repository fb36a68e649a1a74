"""Moments as whole minutes from one origin, a quarter hour: what is waited for never too early."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from msgspec import Struct

from finishlog.core.plan.search.shop import QUARTER

_MINUTE = timedelta(minutes=1)
_QUARTER = timedelta(minutes=QUARTER)
_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)


class Origin(Struct, frozen=True):
    """The quarter hour from which minutes are counted, and how far ahead anything is."""

    moment: datetime
    minutes: int

    @property
    def ends(self) -> datetime:
        """The moment behind which nothing is planned."""
        return self.moment + self.minutes * _MINUTE

    def up(self, moment: datetime) -> int:
        """Return the first whole minute not before a moment."""
        return -((self.moment - moment) // _MINUTE)

    def down(self, moment: datetime) -> int:
        """Return the last whole minute not after a moment."""
        return (moment - self.moment) // _MINUTE

    def at(self, minute: int) -> datetime:
        """Return the moment of a minute."""
        return self.moment + minute * _MINUTE


def origin_of(now: datetime, ahead: timedelta) -> Origin:
    """Count from the last quarter hour, so far ahead."""
    return Origin(now - (now - _EPOCH) % _QUARTER, ahead // _QUARTER * QUARTER)
