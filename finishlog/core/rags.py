"""Oily rags: one item an evening and product, opened by the work, closed only by an act.

No published time proves a pile of oily rags safe, so nothing here closes an item by itself.
Cautions only: the safety data sheet and local fire and waste rules come first.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta, tzinfo
from enum import StrEnum

from finishlog.core.book import Book
from finishlog.core.oily_waste import SOFT_FILM, Waste, Wetting, what_wets
from finishlog.core.records import AnyEntry, RagsDeed, RagsEvent, Target

# An evening at the bench runs past midnight.
_EVENING_ENDS = timedelta(hours=4)


class RagsState(StrEnum):
    """Where the rags of one evening are."""

    OPEN = "open"
    SPREAD = "spread flat"
    WATER = "under water"
    CAN = "in the listed can"
    GONE = "gone"


@dataclass(frozen=True, slots=True)
class RagsItem:
    """Everything wet with one self-heating finish on one evening.

    `entries` are the coats, sandings and strippings behind it; `since` when the present state
    began; `remarks` what was logged but did not change the state, and why.
    """

    entries: frozenset[int]
    product: str
    targets: frozenset[Target]
    evening: date
    opened: datetime
    state: RagsState
    since: datetime
    made_of: frozenset[Waste] = frozenset({Waste.RAGS})
    remarks: tuple[str, ...] = ()
    thick: bool = False

    @property
    def id(self) -> int:
        """Name the item by its first entry."""
        return min(self.entries)

    @property
    def from_dust(self) -> bool:
        """Tell whether it is sanding dust alone."""
        return self.made_of == {Waste.DUST}

    @property
    def is_open(self) -> bool:
        """Tell whether anybody must still do something about it."""
        return self.state is not RagsState.GONE


def evening_of(moment: datetime, zone: tzinfo) -> date:
    """Return the evening that a moment belongs to: until 04:00 it is still the day before."""
    return (moment.astimezone(zone) - _EVENING_ENDS).date()


def rags_items(entries: Sequence[AnyEntry], book: Book, zone: tzinfo) -> tuple[RagsItem, ...]:
    """Return every rags item, oldest first, with the state that the log leaves it in.

    `entries` in the order of the work.
    """
    wet = list(what_wets(entries, book))
    deeds = [e for e in entries if isinstance(e, RagsEvent)]
    items: dict[tuple[date, str], RagsItem] = {}
    happened: list[Wetting | RagsEvent] = [*wet, *deeds]
    for entry in sorted(happened, key=_moment):
        if isinstance(entry, Wetting):
            evening = evening_of(entry.moment, zone)
            wetted = (evening, entry.product)
            items[wetted] = _wetted(items.get(wetted), entry, evening)
            continue
        for key, item in items.items():
            if _concerns(entry, item):
                items[key] = _dealt_with(item, entry, book)
    return tuple(sorted(items.values(), key=lambda i: i.opened))


def overdue(item: RagsItem, now: datetime, book: Book, zone: tzinfo) -> bool:
    """Tell whether the rags are past the time at which they should be dealt with."""
    if item.state is RagsState.OPEN:
        return now - item.since >= timedelta(hours=book.rags.overdue_after_h.value)
    if item.state is RagsState.CAN:
        return evening_of(now, zone) > evening_of(item.since, zone)
    return False


def stiff_from(item: RagsItem, book: Book) -> datetime | None:
    """Return from when spread rags may be tested for stiffness; None when they are not spread."""
    if item.state is not RagsState.SPREAD:
        return None
    return item.since + _stiff_after(item, book)


def _stiff_after(item: RagsItem, book: Book) -> timedelta:
    """Return how long rags lie spread before stiff counts: pastes longer."""
    rags = book.rags
    return timedelta(hours=(rags.stiff_after_thick_h if item.thick else rags.stiff_after_h).value)


def _concerns(deed: RagsEvent, item: RagsItem) -> bool:
    """Tell whether a deed is about an item: named by it, or open and such that it can be done."""
    if deed.item is not None:
        return deed.item in item.entries
    return item.state is RagsState.WATER if deed.deed is RagsDeed.LIFTED else item.is_open


def _moment(entry: Wetting | RagsEvent) -> tuple[datetime, int]:
    # A deed deals with what was wet before it for certain; at one instant the coat comes first.
    return (entry.latest, 0) if isinstance(entry, Wetting) else (entry.when.latest, 1)


def _wetted(item: RagsItem | None, by: Wetting, evening: date) -> RagsItem:
    """Open an item, or add fresh rags to it: whatever was done before, these are wet."""
    if item is None:
        return RagsItem(
            frozenset({by.entry}),
            by.product,
            by.targets,
            evening,
            by.moment,
            RagsState.OPEN,
            by.moment,
            frozenset({by.waste}),
            (SOFT_FILM,) if by.soft else (),
            by.thick,
        )
    since = item.since if item.state is RagsState.OPEN else by.moment
    return replace(
        item,
        entries=item.entries | {by.entry},
        targets=item.targets | by.targets,
        state=RagsState.OPEN,
        since=since,
        made_of=item.made_of | {by.waste},
        thick=item.thick or by.thick,
        remarks=tuple(dict.fromkeys((*item.remarks, *((SOFT_FILM,) if by.soft else ())))),
    )


def _dealt_with(item: RagsItem, by: RagsEvent, book: Book) -> RagsItem:
    moment = by.when.latest
    match by.deed:
        case RagsDeed.SPREAD:
            return replace(item, state=RagsState.SPREAD, since=moment)
        case RagsDeed.WATER:
            return replace(item, state=RagsState.WATER, since=moment)
        case RagsDeed.CAN:
            return replace(item, state=RagsState.CAN, since=moment)
        case RagsDeed.LIFTED:
            return replace(item, state=RagsState.OPEN, since=by.when.earliest)
        case RagsDeed.GONE:
            return replace(item, state=RagsState.GONE, since=moment)
        case RagsDeed.STIFF:
            return _found_stiff(item, by, book)


def _found_stiff(item: RagsItem, by: RagsEvent, book: Book) -> RagsItem:
    """Close only rags that lay spread for the whole time; else keep the words, stay open."""
    if item.state is not RagsState.SPREAD:
        return _remarked(item, "found stiff, but not on record as spread: still open")
    needed = _stiff_after(item, book)
    if by.when.earliest - item.since < needed:
        hours = needed / timedelta(hours=1)
        return _remarked(item, f"found stiff before {hours:.0f} h: recorded, still open")
    return replace(item, state=RagsState.GONE, since=by.when.latest)


def _remarked(item: RagsItem, remark: str) -> RagsItem:
    """Add a remark, the newest last; what was said before is not said twice."""
    said = (*(r for r in item.remarks if r != remark), remark)
    return replace(item, remarks=said)
