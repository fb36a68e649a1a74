"""Cans, jars and mixes: what finish is kept in, and how each one stands.

A mix begins to react when it is mixed. Its end runs on the window's clock: heat shortens it and
cold never lengthens it, counted from the earliest moment that it may have been mixed.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime, timedelta
from enum import StrEnum

from msgspec import Struct

from finishlog.core.air.met import AirMet, Leg
from finishlog.core.air.psychrometrics import STANDARD_AIR
from finishlog.core.air.room import RoomAir
from finishlog.core.clock.counting import Clock, Counting
from finishlog.core.clock.reach import reach
from finishlog.core.finish.classes import Figure, FinishClass, Mechanism
from finishlog.core.finish.rate_law import RateLaw
from finishlog.core.log.entries import AnyEntry, ContainerEvent
from finishlog.core.log.words import ContainerDeed
from finishlog.core.mixing.chemistry import gasses, hardens
from finishlog.core.published.chemistry import NOTHING, Substances

ENDED = frozenset({ContainerDeed.EMPTIED, ContainerDeed.THROWN_OUT})
_FILLED = frozenset({ContainerDeed.MIXED, ContainerDeed.TOPPED_UP})


class ContainerKind(StrEnum):
    """What finish is kept in."""

    CAN = "can"
    MIX = "mix"
    JAR = "jar"


class Lid(StrEnum):
    """How what stands in a can or mix may be closed."""

    CLOSED = "close it"
    # What hardens may grow hot, and isocyanate gives off gas with damp.
    NOT_TIGHT = "do not close it tight"
    # Bleach goes on giving off gas: a closed can bursts.
    NEVER = "never close it"


class MixPart(Struct, frozen=True):
    """One part of a mix: `parts` is its share, the amounts are in ml and g.

    A part with both is a solution: so many ml, with so many g of dry flakes in them. `product`
    None: none of the person's finishes.
    """

    name: str
    parts: float
    product: int | None = None
    volume_ml: float | None = None
    weight_g: float | None = None


class Container(Struct, frozen=True):
    """A can, jar or mix. `made_at`: filled, bought or mixed; `amount_ml`: what it held then.

    `use_by_at` is the end of a mix by its label or by the person; `drawn_from` names the can or
    jar that a mix came from.
    """

    id: int
    name: str
    kind: ContainerKind
    product: int
    made_at: datetime | None = None
    use_by_at: datetime | None = None
    amount_ml: float | None = None
    batch: str = ""
    note: str = ""
    parts: tuple[MixPart, ...] = ()
    drawn_from: str = ""
    archived: bool = False

    @property
    def own_pot_life_h(self) -> float | None:
        """Return the hours that a label or the person gave a mix; None: the class's count."""
        if self.use_by_at is None or self.made_at is None:
            return None
        return (self.use_by_at - self.made_at) / timedelta(hours=1)


class ContainerState(Struct, frozen=True):
    """One container as the log leaves it. Times are UTC; None: not on record, or no such time.

    `made`, `opened`: the earliest moment that it may have been; `use_by`: the end of a mix.
    `holds`: what is in it; `pot_life`: of its class, or of a finish that went into it.
    """

    container: Container
    of: FinishClass
    made: datetime | None
    opened: datetime | None
    use_by: datetime | None
    events: tuple[ContainerEvent, ...] = ()
    holds: Substances = NOTHING
    pot_life: Figure | None = None

    def last(self, *deeds: ContainerDeed) -> ContainerEvent | None:
        """Return the newest event of these kinds."""
        return next((e for e in reversed(self.events) if e.deed in deeds), None)

    @property
    def was_made(self) -> bool:
        """Tell whether it exists: a mix whose mixing was undone never did."""
        mixing = any(e.deed in _FILLED for e in self.events)
        return self.container.kind is not ContainerKind.MIX or mixing or self.container.archived

    @property
    def ended(self) -> ContainerEvent | None:
        """Return what emptied it for good; None while there is something in it."""
        last = self.last(*ENDED, *_FILLED)
        return last if last and last.deed in ENDED else None

    @property
    def is_open_mix(self) -> bool:
        """Tell whether it is a mix that is still standing there."""
        mix = self.container.kind is ContainerKind.MIX
        return mix and self.was_made and not self.ended and not self.container.archived

    @property
    def reacts(self) -> bool:
        """Tell whether it hardens in the pot: a mix of a class or of parts that do."""
        return self.container.kind is ContainerKind.MIX and (
            self.container.use_by_at is not None or self.pot_life is not None or hardens(self.holds)
        )

    @property
    def lid(self) -> Lid:
        """Tell how it may be closed. A can as it was bought closes as its maker meant it to."""
        if self.container.kind is not ContainerKind.MIX:
            return Lid.CLOSED
        if gasses(self.holds):
            return Lid.NEVER
        return Lid.NOT_TIGHT if self.reacts else Lid.CLOSED

    def age_at(self, moment: datetime) -> timedelta | None:
        """Return how long it had been mixed at a moment; None when that is not on record."""
        return moment - self.made if self.made else None


def events_by_container(entries: Iterable[AnyEntry]) -> dict[int, list[ContainerEvent]]:
    """Sort the events of a log by the container that they befell."""
    found: dict[int, list[ContainerEvent]] = defaultdict(list)
    for entry in entries:
        if isinstance(entry, ContainerEvent):
            found[entry.container].append(entry)
    return found


def container_state(
    container: Container,
    events: Sequence[ContainerEvent],
    of: FinishClass,
    rooms: Mapping[int, RoomAir],
    factor_per_10c: float,
    *,
    holds: Substances = NOTHING,
    pot_life: Figure | None = None,
) -> ContainerState:
    """Work out how one container stands; `events` are its own, in the order of the work.

    `pot_life`: of what went into it; None: its class's.
    """
    pot_life = pot_life or of.pot_life_h
    made = container.made_at
    opened = [e.when.earliest for e in events if e.deed is ContainerDeed.OPENED]
    mixed = [e.when.earliest for e in events if e.deed is ContainerDeed.MIXED]
    if container.kind is ContainerKind.MIX:
        made = min(mixed, default=made)
    return ContainerState(
        container=container,
        of=of,
        made=made,
        opened=min(opened, default=None),
        use_by=_use_by(container, pot_life, made, rooms, factor_per_10c),
        events=tuple(events),
        holds=holds,
        pot_life=pot_life,
    )


def _use_by(
    container: Container,
    figure: Figure | None,
    made: datetime | None,
    rooms: Mapping[int, RoomAir],
    factor_per_10c: float,
) -> datetime | None:
    """Return the end of a mix: by the hours of its label or the low end of its class."""
    own = container.own_pot_life_h
    hours = own if own is not None else (figure.low_h if figure else None)
    if container.kind is not ContainerKind.MIX or made is None or hours is None:
        return None
    end = pot_life_ends(hours, figure, made, rooms.values(), factor_per_10c)
    return min(end, container.use_by_at) if container.use_by_at else end


def pot_life_ends(
    hours: float,
    figure: Figure | None,
    mixed: datetime,
    rooms: Iterable[RoomAir],
    factor_per_10c: float,
) -> datetime:
    """Return when `hours` of pot life are over, in the warmest air that the rooms may have had.

    Nobody says where a mix stands, so the room in which it ends soonest decides.
    """
    law = RateLaw(Mechanism.CROSS_LINKING, figure.at if figure else STANDARD_AIR, factor_per_10c)
    counting = Counting(law, Clock.WINDOW)
    stood = (AirMet((Leg(room, mixed, None),)) for room in rooms)
    ends = [reach(hours, met, counting).moment for met in stood]
    return min([mixed + timedelta(hours=hours), *(end for end in ends if end is not None)])
