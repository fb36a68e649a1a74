"""Oily rags: an item an evening, product and kind, opened by the work, closed only by an act.

No published time proves a pile of oily rags safe, so nothing here closes an item by itself.
Cautions only: the safety data sheet and local fire and waste rules come first.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime, time, timedelta, tzinfo
from enum import StrEnum

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.met import Stay
from finishlog.core.air.room import RoomAir
from finishlog.core.log.entries import AnyEntry, RagsEvent, Target
from finishlog.core.log.when import When
from finishlog.core.log.words import RagsDeed
from finishlog.core.measure.compared import Compared
from finishlog.core.published.facts import Facts
from finishlog.core.safety.oily_waste import HANDLED, Handling, Stiffens, Waste, Wetting, what_wets
from finishlog.core.safety.rags_clock import overdue_from, stiff_from
from finishlog.core.shop.things import Shop

# An evening at the bench runs past midnight.
_EVENING_ENDS = timedelta(hours=4)
_CLOCKS_DIFFER = timedelta(minutes=5)


class RagsState(StrEnum):
    """Where the rags of one evening are."""

    OPEN = "open"
    SPREAD = "spread flat"
    WATER = "under water"
    CAN = "in the listed can"
    # They heat no more, and burn as any paper does.
    STIFF = "stiff"
    GONE = "gone"


class Severity(StrEnum):
    """How much an item is to be feared: what heads a screen, what is one line, what is silent."""

    # Nobody said where they are, or they lie in a heap, or they are overdue.
    DANGER = "danger"
    # Spread, or under water for so long that they are asked for.
    WATCH = "watch"
    QUIET = "quiet"


class NotCounted(StrEnum):
    """Why a deed that is on record left an item as it was."""

    EARLY = "found stiff before its time: recorded, still open"
    NOT_SPREAD = "found stiff, but not on record as spread: recorded, still open"
    NEVER_STIFF = "pads, wool, dust and pastes never count as stiff: into water"
    NEVER_SPREAD = "dust and scrapings are a heap, spread or not: into water, or the listed can"


class Dealt(Struct, frozen=True):
    """One thing that was done with an item; `not_counted`: why it changed nothing."""

    deed: RagsDeed
    at: When
    act: int
    not_counted: NotCounted | None = None


class RagsItem(Compared, frozen=True):
    """Everything of one kind wet with one self-heating finish on one evening.

    `entries` are the acts on a film behind it; `since` when the present state began; `wet_until`
    when the last of it was wetted at the latest; `history` what was done with it. `near` is the
    air of the rooms that were worked in, `around` that of every room.
    """

    # The air it lies in is what dates are worked out from.
    aside = frozenset({"near", "around"})
    entries: frozenset[int]
    product: str
    targets: frozenset[Target]
    evening: date
    opened: datetime
    state: RagsState
    since: datetime
    handling: Handling
    made_of: frozenset[Waste]
    stiffens: Stiffens
    wet_until: datetime
    soft: bool = False
    history: tuple[Dealt, ...] = ()
    near: tuple[RoomAir, ...] = ()
    around: tuple[RoomAir, ...] = ()

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
        return self.state not in {RagsState.GONE, RagsState.STIFF}

    @property
    def remarks(self) -> tuple[NotCounted, ...]:
        """Say what was logged and did not count, the newest last, each once."""
        said = [each.not_counted for each in reversed(self.history) if each.not_counted]
        return tuple(reversed(dict.fromkeys(said)))


def evening_of(moment: datetime, zone: tzinfo) -> date:
    """Return the evening that a moment belongs to: until 04:00 it is still the day before."""
    return (moment.astimezone(zone) - _EVENING_ENDS).date()


def evening_began(moment: datetime, zone: tzinfo) -> datetime:
    """Return when the evening of a moment began."""
    return datetime.combine(evening_of(moment, zone), time(), zone) + _EVENING_ENDS


def rags_items(
    entries: Sequence[AnyEntry],
    facts: Facts,
    zone: tzinfo,
    shop: Shop | None = None,
    stood: Mapping[int, Sequence[Stay]] | None = None,
    rooms: Iterable[RoomAir] = (),
) -> tuple[RagsItem, ...]:
    """Return every rags item, oldest first, with the state that the log leaves it in.

    `entries` in the order of the work; `shop` tells what is in a mix, `stood` where each piece
    stood, `rooms` the air of every room.
    """
    around = tuple(rooms)
    deeds = [e for e in entries if isinstance(e, RagsEvent)]
    wet = [w for w in what_wets(entries, facts, shop) if not w.by_hand]
    items: dict[tuple[date, str, Handling], RagsItem] = {}
    happened: list[Wetting | RagsEvent] = [*wet, *deeds]
    for entry in sorted(happened, key=_moment):
        if isinstance(entry, Wetting):
            evening = evening_of(entry.moment, zone)
            key = (evening, entry.product, HANDLED[entry.waste])
            there = items.get(key)
            near = _rooms_of(entry, stood or {})
            items[key] = (
                _wetted(there, entry, near, facts)
                if there is not None
                else _opened(entry, evening, near, around)
            )
            continue
        for key, item in items.items():
            if _concerns(entry, item):
                items[key] = _dealt_with(item, entry, facts)
    return tuple(sorted(items.values(), key=lambda i: (i.opened, i.id)))


def overdue(item: RagsItem, now: datetime, facts: Facts, zone: tzinfo) -> bool:
    """Tell whether the rags are past the time at which they should be dealt with.

    A clock that was set back to before they were wet cannot tell: then they are.
    """
    if item.state is RagsState.OPEN:
        asleep = item.since - now > _CLOCKS_DIFFER
        return asleep or now >= overdue_from(item.since, item.near, facts.rags)
    if item.state is RagsState.CAN:
        return evening_of(now, zone) > evening_of(item.since, zone)
    return False


def severity(item: RagsItem, now: datetime, facts: Facts, zone: tzinfo) -> Severity:
    """Return how much an item is to be feared at a moment."""
    if item.state is RagsState.OPEN or overdue(item, now, facts, zone):
        return Severity.DANGER
    if item.state is RagsState.SPREAD or asked_for(item, now, facts):
        return Severity.WATCH
    return Severity.QUIET


def asked_for(item: RagsItem, now: datetime, facts: Facts) -> bool:
    """Tell whether rags under water are to be asked for: once a week, until somebody looked."""
    week = timedelta(days=facts.rags.ask_under_water_d.value)
    return item.state is RagsState.WATER and now - item.since >= week


def may_be_stiff_from(item: RagsItem, facts: Facts) -> datetime | None:
    """Return from when spread rags may be tested for stiffness; None: not spread, or no date."""
    if item.state is not RagsState.SPREAD:
        return None
    return stiff_from(item.since, item.stiffens, (*item.near, *item.around), facts.rags)


def _concerns(deed: RagsEvent, item: RagsItem) -> bool:
    """Tell whether a deed is about an item: named by it, or open and such that it can be done."""
    if deed.item is not None:
        return deed.item in item.entries
    return item.state is RagsState.WATER if deed.deed is RagsDeed.LIFTED else item.is_open


def _moment(entry: Wetting | RagsEvent) -> tuple[datetime, int]:
    # A deed deals with what was wet before it for certain; at one instant the coat comes first.
    return (entry.latest, 0) if isinstance(entry, Wetting) else (entry.when.latest, 1)


def _rooms_of(wet: Wetting, stood: Mapping[int, Sequence[Stay]]) -> tuple[RoomAir, ...]:
    """Return the rooms in which the pieces stood when it happened."""
    found = []
    for piece in {target.piece for target in wet.targets}:
        found += [s.air for s in stood.get(piece, ()) if s.since <= wet.moment][-1:]
    return tuple(dict.fromkeys(found))


def _opened(
    by: Wetting, evening: date, near: tuple[RoomAir, ...], around: tuple[RoomAir, ...]
) -> RagsItem:
    return RagsItem(
        entries=frozenset({by.entry}),
        product=by.product,
        targets=by.targets,
        evening=evening,
        opened=by.moment,
        state=RagsState.OPEN,
        since=by.moment,
        handling=HANDLED[by.waste],
        made_of=frozenset({by.waste}),
        stiffens=by.stiffens,
        wet_until=by.latest,
        soft=by.soft,
        near=near,
        around=around,
    )


_SLOWER = {Stiffens.IN_DAYS: 0, Stiffens.LATER: 1, Stiffens.NEVER: 2}


def _wetted(item: RagsItem, by: Wetting, near: tuple[RoomAir, ...], facts: Facts) -> RagsItem:
    """Add what is freshly wet: whatever was done before, this is open.

    A cloth in the hand is no heap: each use restarts its hour, as long as that was not over.
    """
    since = by.moment
    if item.state is RagsState.OPEN:
        in_hand = item.handling is not Handling.HEAP
        due = overdue_from(item.since, item.near, facts.rags)
        since = max(since, item.since) if in_hand and by.moment < due else item.since
    return replace(
        item,
        entries=item.entries | {by.entry},
        targets=item.targets | by.targets,
        opened=min(item.opened, by.moment),
        state=RagsState.OPEN,
        since=since,
        made_of=item.made_of | {by.waste},
        stiffens=max(item.stiffens, by.stiffens, key=lambda s: _SLOWER[s]),
        soft=item.soft or by.soft,
        wet_until=max(item.wet_until, by.latest),
        near=tuple(dict.fromkeys((*item.near, *near))),
    )


_BECOMES = {
    RagsDeed.SPREAD: RagsState.SPREAD,
    RagsDeed.WATER: RagsState.WATER,
    RagsDeed.CAN: RagsState.CAN,
    RagsDeed.LIFTED: RagsState.OPEN,
    RagsDeed.STIFF: RagsState.STIFF,
    RagsDeed.GONE: RagsState.GONE,
}


def _dealt_with(item: RagsItem, by: RagsEvent, facts: Facts) -> RagsItem:
    """Record a deed in the item's history, and what it makes of the item."""
    why_not = _not_counted(item, by, facts)
    # Without its place among what was typed: that is of the log, and says nothing of the rags.
    done = Dealt(by.deed, replace(by.when, tie=0), by.act, why_not)
    history = (*item.history, done)
    if why_not is NotCounted.NEVER_SPREAD and item.state is not RagsState.OPEN:
        # It was taken out of what held it, and lies in a heap.
        return replace(item, state=RagsState.OPEN, since=by.when.earliest, history=history)
    if why_not is not None:
        return replace(item, history=history)
    # What is lifted out may have begun to dry at the earliest moment; all else holds from the last.
    since = by.when.earliest if by.deed is RagsDeed.LIFTED else by.when.latest
    return replace(item, state=_BECOMES[by.deed], since=since, history=history)


def _not_counted(item: RagsItem, by: RagsEvent, facts: Facts) -> NotCounted | None:
    """Return why a deed leaves an item as it is; None when it counts."""
    if by.deed is RagsDeed.SPREAD and item.handling is Handling.HEAP:
        return NotCounted.NEVER_SPREAD
    if by.deed is not RagsDeed.STIFF or item.state is RagsState.STIFF:
        return None
    if item.stiffens is Stiffens.NEVER:
        return NotCounted.NEVER_STIFF
    if item.state is not RagsState.SPREAD:
        return NotCounted.NOT_SPREAD
    ripe = may_be_stiff_from(item, facts)
    return None if ripe is not None and by.when.earliest >= ripe else NotCounted.EARLY
