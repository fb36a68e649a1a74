"""A story: what is still done to pieces that stand alike, told once on one of them.

It is planned forward by the bench itself in a shop that never shuts, by hands that take no time: so
every rule is asked of every task once, and what comes next, what never ends and what waits for a
date shows. What the clocks make of another hour is counted by the clocks alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import UTC, datetime

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.finish.classes import Range
from finishlog.core.log.entries import AnyEntry, Target
from finishlog.core.log.words import Operation
from finishlog.core.plan.compiled.zone_then import Zones
from finishlog.core.plan.forward import Forward
from finishlog.core.plan.results import Chore, PlannedTask, Unplanned
from finishlog.core.plan.shop_ahead import ShopAhead
from finishlog.core.published.facts import Facts
from finishlog.core.published.hands_on import Each
from finishlog.core.shop.hours import ShopHours, WeeklyHours
from finishlog.core.shop.things import FaceKind, Part
from finishlog.core.zone.state import ZoneState

_ALWAYS_OPEN = ShopHours(
    (
        (
            datetime(1970, 1, 1, tzinfo=UTC),
            tuple(WeeklyHours(day, 0, 24 * 60 - 1) for day in range(7)),
        ),
    ),
    "UTC",
)
# As good as none: what takes no minute at all is not done.
_NO_TIME = Range(0.0, 0.001, "")


class Deed(Struct, frozen=True):
    """One task of a story: what is done, on which faces of the pieces that stand for all.

    `on`: without the edges, that get what their faces get.
    """

    number: int
    task: PlannedTask
    on: frozenset[Target]

    @property
    def operation(self) -> Operation:
        """What is done."""
        assert self.task.operation is not None
        return self.task.operation

    @property
    def entries(self) -> tuple[AnyEntry, ...]:
        """What the log of the story holds of it."""
        return self.task.entries

    @property
    def is_coat(self) -> bool:
        """Tell whether it puts a film on."""
        return self.operation is Operation.COAT

    @property
    def is_price(self) -> bool:
        """Tell whether no step asks for a scuffing: it is the price of the coat behind it."""
        return self.operation is Operation.SCUFF and self.task.coat == (0, 0)

    @property
    def reached(self) -> frozenset[Target]:
        """Every zone that it reaches."""
        return frozenset(t for e in self.entries for t in e.targets)

    def of(self, target: Target) -> tuple[AnyEntry, ...]:
        """Return what of it reaches a zone."""
        return tuple(e for e in self.entries if target in e.targets)


class Story(Struct, frozen=True):
    """The tasks of some alike pieces in order, their zones, and what found no place.

    `parts`: with the pieces that stand for all.
    """

    parts: tuple[Part, ...]
    deeds: tuple[Deed, ...]
    zones: Zones
    left: tuple[Unplanned, ...]

    def before(self, deed: Deed, target: Target) -> Sequence[Deed]:
        """Return what was done to a zone before a task."""
        return [d for d in self.deeds[: deed.number] if target in d.reached]

    def planned(self, deed: Deed, target: Target) -> list[AnyEntry]:
        """Return what reached a zone before a task, as the story has it."""
        return [e for d in self.before(deed, target) for e in d.of(target)]


def without_hands(facts: Facts) -> Facts:
    """Return the facts by which nothing keeps hands busy."""
    figures = facts.hands_on
    return replace(
        facts,
        hands_on=replace(
            figures,
            methods={m: _no_time(each) for m, each in figures.methods.items()},
            work={o: _no_time(each) for o, each in figures.work.items()},
            vacuum_min=_NO_TIME,
            settle_min=_NO_TIME,
        ),
    )


def _no_time(each: Each) -> Each:
    names = ("face_min", "piece_min", "set_up_min", "clean_up_min")
    return replace(each, **{n: _NO_TIME for n in names if getattr(each, n, None) is not None})


def told(parts: Sequence[Part], ahead: ShopAhead, idle: Facts, since: datetime) -> Story:
    """Tell the story of some parts with the pieces that stand for all; `idle`: without hands.

    `since`: when somebody is in the shop first: what had to be done before was not.
    """
    shop = replace(ahead.shop, parts=tuple(parts), hours=_ALWAYS_OPEN)
    forward = Forward(
        shop,
        ahead.log,
        idle,
        since,
        ahead.zone,
        {},
        ahead.paces,
        ahead.lessons,
        rooms=ahead.rooms,
        cans=ahead.cans,
    )
    first = {z.target: z for z in forward.waiting.ahead.zones}
    forward.run()
    last = {z.target: z for z in forward.waiting.ahead.zones}
    tasks = [t for s in forward.sessions for t in s.tasks if t.chore is Chore.WORK]
    deeds = tuple(
        Deed(n, task, _faces(task.entries, first.values())) for n, task in enumerate(tasks)
    )
    zones = Zones(ahead.facts, ahead.paces, ahead.cans, first, last)
    return Story(tuple(parts), deeds, zones, forward.left())


def _faces(entries: Iterable[AnyEntry], zones: Iterable[ZoneState]) -> frozenset[Target]:
    reached = {t for e in entries for t in e.targets}
    edges = {z.target for z in zones if z.face.kind is FaceKind.EDGE and not z.progress.steps}
    return frozenset(reached - edges)
