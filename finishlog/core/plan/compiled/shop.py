"""A shop with its log, compiled for the search: by story, never zone by zone."""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from datetime import datetime, timedelta
from math import ceil

from msgspec import Struct, field

from finishlog.core.findings import Finding
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Work
from finishlog.core.plan.compiled.air_ahead import AirAhead
from finishlog.core.plan.compiled.alike import Alike, alike, standing_for_all
from finishlog.core.plan.compiled.cast import Cast, Doing
from finishlog.core.plan.compiled.clocks import Clocks
from finishlog.core.plan.compiled.lags import Days, Quarters, quarters
from finishlog.core.plan.compiled.minutes import Origin, origin_of
from finishlog.core.plan.compiled.story import Story, told, without_hands
from finishlog.core.plan.compiled.tasks import StoryTasks
from finishlog.core.plan.compiled.waits_for import Asks
from finishlog.core.plan.forward import HORIZON
from finishlog.core.plan.jobs import DUSTY
from finishlog.core.plan.jobs_that_fit import Hands, minutes
from finishlog.core.plan.results import Unplanned
from finishlog.core.plan.search.shop import (
    NEVER,
    CompiledShop,
    Lag,
    Product,
    Settling,
    Span,
    Task,
)
from finishlog.core.plan.shop_ahead import ShopAhead, families
from finishlog.core.published.facts import Facts
from finishlog.core.shop.hours import intervals, open_minutes
from finishlog.core.shop.things import Part
from finishlog.core.zone.state import ZoneState

# What a plan takes longer than its longest story and its work: evenings that do not fit, ours.
_SPARE = timedelta(days=14)
_DAY = timedelta(days=1)


class Compiled(Struct, frozen=True):
    """What the search is handed, who is who in it, and what no task was made of.

    `doings`: of each task; `products`: by their ids their numbers. `once`: the rules that no clock
    tells of, with the task that each held.
    """

    shop: CompiledShop
    doings: tuple[Doing, ...]
    origin: Origin
    left: tuple[Unplanned, ...]
    products: Mapping[int, int]
    once: tuple[tuple[int, Finding], ...] = ()


def compiled(
    ahead: ShopAhead, due: Mapping[int, datetime], longest: timedelta = HORIZON
) -> Compiled:
    """Compile what is open; `due`: until when the parts of a project are to be packed.

    `longest`: how far ahead anything is looked at.
    """
    return _Compiler(ahead, due, longest).shop()


class _Player(Struct, frozen=True):
    """A story and who plays it."""

    story: Story
    cast: Cast


class _Compiler(Struct, dict=True):
    ahead: ShopAhead
    due: Mapping[int, datetime]
    longest: timedelta
    tasks: list[Task] = field(default_factory=list)
    doings: list[Doing] = field(default_factory=list)
    left: list[Unplanned] = field(default_factory=list)
    once: list[tuple[int, Finding]] = field(default_factory=list)
    _told: dict[Hashable, tuple[Story, Part]] = field(default_factory=dict)
    _days: dict[int | None, Days] = field(default_factory=dict)
    _lags: dict[Hashable, tuple[int, Lag]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Tell every story; how far to look follows from how long they are."""
        shop = self.ahead.shop
        self.hands = Hands(shop, self.ahead.facts)
        self.idle: Facts = without_hands(self.ahead.facts)
        opens = intervals(shop.hours, self.ahead.now, self.ahead.now + self.longest)[:1]
        self.since = opens[0][0] if opens else self.ahead.now
        found = families(shop.parts)
        boards_first = sorted(found, key=lambda f: not any(p.is_board for p in f))
        self.players = [self._player(family) for family in boards_first]
        origin = self.origin = origin_of(self.ahead.now, self._horizon())
        spans = [
            (origin.up(opens), origin.down(closes))
            for opens, closes in intervals(shop.hours, self.ahead.now, origin.ends)
        ]
        self.openings: tuple[Span, ...] = tuple(s for s in spans if s[0] < s[1])
        self.longest_min = max((b - a for a, b in self.openings), default=0)
        self.at: Quarters = quarters(self.openings, origin)
        self.air = AirAhead(self.ahead.facts.drying, self.openings)
        self.products = {product: n for n, product in enumerate(sorted(shop.products))}
        rooms = dict.fromkeys(zone.room.id for zone in self.ahead.zones)
        self.rooms = {room: n for n, room in enumerate(rooms)}
        self.boards = self._boards()

    def _horizon(self) -> timedelta:
        """Return how far ahead a plan may go: the longest story, the work of all, some spare."""
        now, hours = self.ahead.now, self.ahead.shop.hours
        ends = [deed.task.end for player in self.players for deed in player.story.deeds]
        work = sum(map(self._work_min, self.players))
        a_week = open_minutes(hours, now + _SPARE, now + _SPARE + 7 * _DAY)
        weeks = 2 * work / a_week if a_week else 0.0
        far = max(ends, default=now) - now + timedelta(weeks=weeks) + _SPARE
        return min(far, self.longest)

    def _work_min(self, player: _Player) -> float:
        """Return about how long the hands are busy with a story: by zones, set-up left out."""
        figures, minutes = self.hands.facts.hands_on, 0.0
        for deed in player.story.deeds:
            each = figures.each(deed.operation, self.hands.method(deed.task.product))
            minutes += each.each_min.high * len(player.cast.of(deed.on))
        return minutes

    def shop(self) -> Compiled:
        """Tell every story, make its tasks."""
        for player in self.players:
            self._play(player)
        figures = self.ahead.facts.hands_on
        shop = CompiledShop(
            openings=self.openings,
            products=tuple(self._product(product) for product in self.products),
            tasks=tuple(self.tasks),
            rooms=tuple(self._settling()),
            vacuum=ceil(figures.vacuum_min.high),
            settle=ceil(figures.settle_min.high),
        )
        return Compiled(
            shop, tuple(self.doings), self.origin, tuple(self.left), self.products, tuple(self.once)
        )

    def _product(self, product: int) -> Product:
        of = self.hands.product_class(product)
        pot_life = of.pot_life_h if of else None
        return Product(
            ceil(self.hands.set_up(product)),
            ceil(self.hands.clean_up(product)),
            None if pot_life is None else int(60 * pot_life.low_h),
        )

    def _play(self, player: _Player) -> None:
        """Make the tasks of a story for who plays it."""
        story, origin = player.story, self.origin
        self.left += story.left
        made = StoryTasks(
            Clocks(story, self.ahead.shop, origin, self.at, self._days, self._lags),
            player.cast,
            self.hands,
            self.air,
            len(self.tasks),
            self.products,
            self.rooms,
            self.longest_min,
            {project: origin.down(moment) for project, moment in self.due.items()},
            self.ahead,
            self.boards,
        )
        made.make()
        self.tasks += made.tasks
        self.once += made.once
        self.doings += made.doings

    def _boards(self) -> dict[tuple[int, int], Asks]:
        """Return until when the boards that have had their coat cannot be judged yet."""
        found: dict[tuple[int, int], Asks] = {}
        for zone in self.ahead.zones:
            touch = zone.stages.get(Stage.TOUCH) if zone.part.is_board else None
            if touch is not None and touch.high is not None and zone.top is not None:
                key = zone.part.project, zone.top.coat.product
                found.setdefault(key, Asks()).until(max(0, self.origin.up(touch.high)))
        return found

    def _player(self, family: Sequence[Part]) -> _Player:
        """Return who plays which story: their own, or that of a part just like theirs."""
        if len(family) > 1 or family[0].needs:
            own = Cast(
                {part.id: part for part in family},
                {piece.id: (piece.id,) for part in family for piece in part.pieces},
            )
            return _Player(told(family, self.ahead, self.idle, self.since), own)
        part = family[0]
        zones = [z for z in self.ahead.zones if part.id in {z.member.id, z.part.id}]
        groups = alike(part, zones)
        key = _white(part, groups, zones)
        if key is not None and key in self._told:
            story, known = self._told[key]
            return _Player(story, _as(known, part, groups))
        reps = standing_for_all(part, groups)
        story = told((reps,), self.ahead, self.idle, self.since)
        if key is not None:
            self._told[key] = story, reps
        return _Player(story, _own(part, groups))

    def _settling(self) -> list[Settling]:
        """Return what the rooms are like now: the dust of what was done lately, wet films."""
        near = self.ahead.around(self.ahead.now)
        room_of = {z.target: z.room.id for z in self.ahead.zones}
        down: dict[int | None, int] = {}
        for entry in self.ahead.log.entries:
            if isinstance(entry, Work) and entry.operation in DUSTY:
                lies = entry.when.latest + minutes(self.hands.dust())
                for room in {room_of[t] for t in entry.targets if t in room_of}:
                    down[room] = max(down.get(room, 0), self.origin.up(lies))
        found = []
        for room, number in self.rooms.items():
            until = [u for _, u in near.wet_films.get(room, ())]
            wet = max((NEVER if u is None else self.origin.up(u) for u in until), default=0)
            found.append(Settling(number, dust_down=max(0, down.get(room, 0)), wet_until=wet))
        return found


def _white(part: Part, groups: Sequence[Alike], zones: Sequence[ZoneState]) -> Hashable | None:
    """Return what makes two parts play one story; None: this one has one of its own."""
    if len(groups) != 1 or any(z.entries for z in zones) or part.behind is not None:
        return None
    mine = [z for z in zones if z.member_piece.id == groups[0].pieces[0].id]
    faces = tuple(
        (f.name, f.kind, f.meets, tuple((z.name, z.species) for z in f.zones)) for f in part.faces
    )
    return (
        part.species,
        faces,
        part.steps,
        part.is_board,
        part.old_finish,
        tuple(tuple((s.since, s.air.id) for s in z.stays) for z in mine),
        mine[0].used_for if mine else None,
    )


def _own(part: Part, groups: Sequence[Alike]) -> Cast:
    return Cast({part.id: part}, {g.pieces[0].id: tuple(p.id for p in g.pieces) for g in groups})


def _as(known: Part, part: Part, groups: Sequence[Alike]) -> Cast:
    """Cast the pieces of a part in the story of one just like it."""
    names = zip(known.faces, part.faces, strict=True)
    zones = {a.id: b.id for f, g in names for a, b in zip(f.zones, g.zones, strict=True)}
    pieces = tuple(p.id for p in groups[0].pieces)
    return Cast({known.id: part}, {known.pieces[0].id: pieces}, zones)
