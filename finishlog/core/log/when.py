"""When the work was done, as surely as it is known.

Every instant is an aware UTC datetime. A vague time ("this evening") is a span: `earliest` to
`latest`. Waits count from the latest, windows and rags from the earliest.
"""

from __future__ import annotations

from datetime import datetime
from enum import StrEnum

from msgspec import Struct

# No work of ours was or will be done outside of these years; a date there is a slip.
OUR_YEARS = range(1970, 2200)


class Sureness(StrEnum):
    """How exactly a time is known."""

    EXACT = "exact"
    ABOUT = "about"
    PART_OF_DAY = "that part of the day"


class When(Struct, frozen=True):
    """The time of the work, not of the typing."""

    earliest: datetime
    latest: datetime
    sureness: Sureness = Sureness.EXACT
    tie: int = 0

    @property
    def order(self) -> tuple[datetime, int]:
        """Sort by the time of the work; ties in the order they were typed."""
        return (self.latest, self.tie)


def at(moment: datetime, tie: int = 0) -> When:
    """Build an exactly known time."""
    return When(moment, moment, Sureness.EXACT, tie)
