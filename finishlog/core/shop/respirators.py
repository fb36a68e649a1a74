"""Which respirators are on record: what each holds back, since when it is open, how long worn.

Nothing here tells how much is left of a cartridge: no scale does. Its maker's schedule, and any
smell or taste, come before every figure.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.log.entries import AnyEntry, Respirator
from finishlog.core.log.where import same_words
from finishlog.core.log.words import Filter, MaskKept, RespiratorDeed


class Mask(Struct, frozen=True):
    """One respirator as it stands. `opened` None: nothing says when its seal was broken.

    `worn`: since then. `holds` None: nobody said what it is for.
    """

    name: str
    holds: Filter | None
    opened: datetime | None
    worn: timedelta = timedelta(0)
    act: int = 0
    # How it is kept between sessions. None: nobody said.
    kept: MaskKept | None = None

    def open_for(self, now: datetime) -> timedelta | None:
        """Return how long its cartridges stand open, used or not."""
        return now - self.opened if self.opened is not None else None


def masks_in(entries: Iterable[AnyEntry]) -> tuple[Mask, ...]:
    """Return the respirators that are there, the last opened last; `entries` in order of time."""
    there: dict[str, Mask] = {}
    for entry in entries:
        if not isinstance(entry, Respirator):
            continue
        key = same_words(entry.name)
        was = there.pop(key, Mask(entry.name, None, None))
        if entry.deed is RespiratorDeed.GONE:
            continue
        if entry.deed is RespiratorDeed.OPENED:
            holds = entry.holds or was.holds
            since = entry.when.earliest
            there[key] = Mask(entry.name, holds, since, act=entry.act, kept=entry.kept)
        else:
            worn = was.worn + timedelta(minutes=entry.worn_min or 0)
            kept = entry.kept or was.kept
            there[key] = replace(was, holds=entry.holds or was.holds, worn=worn, kept=kept)
    return tuple(there.values())
