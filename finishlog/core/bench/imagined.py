"""May one finish go over another, does a schedule go through? The bench, asked of a bare board."""

from __future__ import annotations

from collections.abc import Collection, Hashable, Iterable, Iterator, Mapping, Sequence
from datetime import datetime, timedelta, tzinfo
from itertools import count

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint
from finishlog.core.bench.state import BenchState, bench_state
from finishlog.core.film.layers import Layer
from finishlog.core.film.lessons import Lessons
from finishlog.core.film.progress import steps_for
from finishlog.core.findings import AT_HOME, FLAME, PLACE_UNTOLD, Answer, Finding
from finishlog.core.finish.classes import Method, judged_by
from finishlog.core.finish.stage_time import StageTime
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Coat, Target, Work
from finishlog.core.log.when import at
from finishlog.core.log.words import Operation
from finishlog.core.published.facts import Facts
from finishlog.core.rules.all import RULES, findings_of
from finishlog.core.safety.whats_in import in_product
from finishlog.core.shop.hours import ShopHours
from finishlog.core.shop.things import (
    Face,
    FaceKind,
    Log,
    Part,
    Piece,
    Product,
    Shop,
    Step,
    Zone,
    zone_name,
)
from finishlog.core.verdict.fold import fold
from finishlog.core.zone.asked import Asked, coat_asked, work_asked
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT, Verdict

# Standard air of the trade, where the air of no room is known. ISO 3270
_STANDARD = Air(23.0, 50.0)
_PIECE = Piece(1, 1)
_ONE_FACE = (Face(1, "front", FaceKind.SHOW, (Zone(1),)),)
_OTHER_FACES = "other faces"
_TAPE = frozenset({Operation.MASK, Operation.UNTAPE})
# What is wrong with the lower coat itself is not asked of what goes over it.
_OF_THE_LOWER = frozenset({"wrong-below", "suspect", "perhaps-cold", "not-proved-through"})
# What the air, the heater and the wood's warmth say of a coat is asked on its evening; and on
# which face it lies: what hangs or stands on points is coated all round. Common practice
_OF_THE_PLACE = frozenset({"heater", FLAME, AT_HOME, PLACE_UNTOLD})
_OF_THE_EVENING = _OF_THE_PLACE | {"air", "wood-warms-up", "warms-under-film", "other-face"}
_BESIDE_THE_EVENING = frozenset(rule.id for rule in RULES) - _OF_THE_EVENING
_NOT_ITS_AIR = _BESIDE_THE_EVENING | {PLACE_UNTOLD}
# Whose clock is that of another face.
_NOT_BELOW = "dust-on-wet"
_SOON, _READ_EVERY = timedelta(minutes=10), timedelta(hours=3)


class Laid(Struct, frozen=True):
    """What is laid over what, on which wood; `under` None: on bare wood."""

    over: Product
    under: Product | None = None
    wood: str | None = None
    method: Method | None = None


class Imagined(Struct, frozen=True):
    """What the bench says if the lower coat went on now: once its clock is over, once it is hard.

    `dry_at`, `hard_at`: UTC; None: no date in this air. `dry`: what binds where there is none.
    """

    dry: Verdict
    dry_at: datetime | None = None
    hard: Verdict | None = None
    hard_at: datetime | None = None
    # The lower coat.
    under: Layer | None = None


class Walked(Struct, frozen=True):
    """One step as it was walked through: what the bench said, and when it was done (UTC).

    `at` None: no date lets it be done, and no step was walked after it. `held_by`: the clock that
    it waited for last; None: it could be done at once. `faces`: those that it is said of, where
    the step names them or they differ; empty: all that it reaches.
    """

    step: Step
    verdict: Verdict
    at: datetime | None
    held_by: StageTime | None = None
    faces: tuple[str, ...] = ()

    @property
    def seen(self) -> Hashable:
        """What faces that are told one thing have in common; their hours may differ."""
        told, may = self.verdict, self.verdict.answer in {Answer.GO, Answer.SCUFF}
        return told.answer, told.scuff_first, told.findings, None if may else told.binds


class Board(Struct, frozen=True):
    """A board in one room: its air as it is to be expected, or standard air where none is known."""

    room: RoomAir
    products: Mapping[int, Product]
    lessons: Lessons
    facts: Facts
    zone: tzinfo
    now: datetime

    def over(self, of: Laid) -> Imagined:
        """Answer what may go over what."""
        asked = self._asked(of.over, of.method)
        laid = self._coat(of.under, self.now, 1) if of.under else []
        first, state = self._verdict(laid, of.wood, asked, self.now)
        if of.under is None:
            return Imagined(first)
        hard = state.stages.get(Stage.CURED)
        hard_at = hard.high if hard else None
        dry_at = first.high
        return Imagined(
            self._verdict(laid, of.wood, asked, dry_at)[0] if dry_at else first,
            dry_at,
            self._verdict(laid, of.wood, asked, hard_at)[0] if hard_at else None,
            hard_at,
            state.top,
        )

    def in_its_air(self, of: Laid) -> tuple[Finding, ...]:
        """Return what the room, as it was read, says to the upper coat now and tonight."""
        bench = self._bench((), of.wood, self.room, self.now)
        asked, around = self._asked(of.over, of.method), bench.around(self.facts)
        every = findings_of(bench.zones[0], asked, around, but=_NOT_ITS_AIR)
        return tuple(replace(found, room=self.room.name) for found in every)

    def walk(self, steps: Sequence[Step], wood: str | None) -> tuple[Walked, ...]:
        """Do the steps one after the other, each as soon as the bench lets it be done.

        A step goes on once every face that it reaches is ready. What faces are told apart is told
        of each; of a step that no date lets be done, of those that stop it.
        """
        done: list[AnyEntry] = []
        faces, walked = _faces_of(steps), list[Walked]()
        moment = self.now
        for n, step in enumerate(steps):
            reached = _reached(faces, step)
            product = self.products[step.product] if step.product is not None else None
            behind = (
                s for s in steps[n:] if s.product and _reached(faces, s).keys() & reached.keys()
            )
            then = next((s.product for s in behind), None)
            work = work_asked(step.operation, grit=step.note, then=then)
            asked = self._asked(product) if product else work
            said, held, moment = self._as_soon_as_they_may(
                done, wood, asked, faces, reached, moment
            )
            stops = [z for z in said if said[z].answer not in MAY_ACT]
            at_last = None if stops else moment
            each = {z: Walked(step, said[z], at_last, held.get(z)) for z in stops or said}
            walked += _told_apart(each, reached)
            if stops:
                break
            scuffed = [z for z in said if said[z].scuff_first]
            if scuffed:
                done.append(self._work(Operation.SCUFF, moment, len(done) + 1, scuffed))
            done += (
                self._coat(product, moment, len(done) + 1, reached)
                if product
                else [self._work(step.operation, moment, len(done) + 1, reached)]
            )
            moment += 2 * _SOON
        return tuple(walked)

    def _as_soon_as_they_may(
        self,
        done: Sequence[AnyEntry],
        wood: str | None,
        asked: Asked,
        faces: tuple[Face, ...],
        reached: Mapping[int, str],
        moment: datetime,
    ) -> tuple[dict[int, Verdict], dict[int, StageTime | None], datetime]:
        """Return what each zone that is reached is told, the clocks waited for last, and when."""
        held: dict[int, StageTime | None] = {}
        # What ends may let something else bind; four of a face end in turn at the most.
        for left in range(4 * len(reached), -1, -1):
            told = self._verdicts(done, wood, asked, moment, faces=faces)
            said = {z: verdict for z, (verdict, _) in told.items() if z in reached}
            ends = {z: v.high for z, v in said.items() if v.high and v.high > moment}
            if not ends or not left:
                break
            moment = max(ends.values())
            last = [z for z, high in ends.items() if high == moment]
            held = {z: said[z].wait for z in last if said[z].binds.rule != _NOT_BELOW}
        return said, held, moment

    def _asked(self, over: Product, method: Method | None = None) -> Asked:
        of = self.facts.finish_class(over.class_key)
        return coat_asked(of, method, in_product(over), done=True, product=over.id)

    def _verdict(
        self, laid: Sequence[AnyEntry], wood: str | None, asked: Asked, moment: datetime
    ) -> tuple[Verdict, ZoneState]:
        """Return what is said at a moment of what goes over the lower coat."""
        (told,) = self._verdicts(laid, wood, asked, moment, _OF_THE_LOWER).values()
        return told

    def _verdicts(
        self,
        laid: Sequence[AnyEntry],
        wood: str | None,
        asked: Asked,
        moment: datetime,
        but: frozenset[str] = frozenset(),
        faces: tuple[Face, ...] = _ONE_FACE,
    ) -> dict[int, tuple[Verdict, ZoneState]]:
        """Return what is said at a moment of each zone, by its id."""
        bench = self._bench(laid, wood, self._air(moment), moment, faces)
        around, but = bench.around(self.facts), _OF_THE_EVENING | but
        return {
            state.zone.id: (fold(findings_of(state, asked, around, but=but), asked), state)
            for state in bench.zones
        }

    def _bench(
        self,
        laid: Sequence[AnyEntry],
        wood: str | None,
        air: RoomAir,
        moment: datetime,
        faces: tuple[Face, ...] = _ONE_FACE,
    ) -> BenchState:
        board = Part(1, 1, "", "board", wood, (_PIECE,), faces, room=self.room.id)
        shop = Shop((), (board,), self.products, {}, ShopHours((), "UTC"))
        rooms = {self.room.id: air} if self.room.id is not None else {}
        log = Log(tuple(laid))
        return bench_state(shop, log, self.facts, moment, self.zone, rooms, lessons=self.lessons)

    def _coat(
        self, product: Product, moment: datetime, number: int, on: Collection[int] = (1,)
    ) -> list[AnyEntry]:
        """Return a coat as it should go on: wiped off where it is."""
        of = self.facts.finish_class(product.class_key)
        coat = Coat(
            id=number,
            # Not done, so mixed as it should be; and its number is that of no act on record.
            act=-number,
            when=at(moment),
            typed_at=moment,
            targets=_targets(on),
            product=product.id,
            product_name=product.name,
            figures=judged_by(of, product.label, product.label_window, ""),
        )
        if of.wipe_off_h is None:
            return [coat]
        in_time = moment + timedelta(hours=of.wipe_off_h.low_h) / 2
        return [coat, self._work(Operation.WIPE, in_time, number + 1, on)]

    def _work(
        self, operation: Operation, moment: datetime, number: int, on: Collection[int]
    ) -> AnyEntry:
        return Work(
            id=number,
            act=-number,
            when=at(moment),
            typed_at=moment,
            targets=_targets(on),
            operation=operation,
        )

    def _air(self, moment: datetime) -> RoomAir:
        """Return the air of the room, read again and again as it is to be expected."""
        known = self.room.readings[-1].air if self.room.readings else _STANDARD
        times = [self.now]
        while times[-1] < moment:
            times.append(min(times[-1] + _READ_EVERY, moment))
        airs = ((time, self.room.expected_at(time) or known) for time in times)
        read = (AirPoint(time, air.temperature_c, air.humidity_pct) for time, air in airs)
        return replace(self.room, readings=(*self.room.readings, *read))


def _targets(on: Iterable[int]) -> frozenset[Target]:
    return frozenset(Target(_PIECE.id, zone) for zone in on)


def _faces_of(steps: Sequence[Step]) -> tuple[Face, ...]:
    """Return the faces and zones that steps name; what is only taped is kept bare.

    One that is named alone has others beside it where a coat reaches them all: why name it else?
    """
    named = {name.casefold(): name for step in steps for name in step.faces}
    done = {f.casefold() for s in steps if s.operation not in _TAPE for f in s.faces}
    zones: dict[str, list[str]] = {}
    for name in named:
        face, _, zone = name.partition("/")
        zones.setdefault(face, []).extend([zone] if zone else [])
    faces = list[Face]()
    numbers = count(1)
    for face, own in zones.items():
        rest = [""] if not own or (len(own) == 1 and face in named) else []
        kept_bare = done.isdisjoint({face, *(f"{face}/{zone}" for zone in own)})
        kind = FaceKind.JOINT if kept_bare else FaceKind.SHOW
        areas = tuple(Zone(next(numbers), zone) for zone in (*own, *rest))
        faces.append(Face(len(faces) + 1, face, kind, areas))
    all_over = any(s.product is not None and not s.faces for s in steps)
    if named and (not done or (len(done) == 1 and all_over)):
        other = (Zone(next(numbers)),)
        faces.append(Face(len(faces) + 1, _OTHER_FACES, FaceKind.SHOW, other))
    return tuple(faces) or _ONE_FACE


def _reached(faces: Sequence[Face], step: Step) -> dict[int, str]:
    """Return the names of the zones that a step reaches, by their ids."""
    here = ((face, zone) for face in faces for zone in face.zones)
    return {z.id: zone_name(f, z) for f, z in here if steps_for(f, (step,), z)}


def _told_apart(each: Mapping[int, Walked], reached: Mapping[int, str]) -> Iterator[Walked]:
    """Yield what the zones of a step are told, once where they are told the same."""
    alike: dict[Hashable, list[int]] = {}
    for zone, walked in each.items():
        alike.setdefault(walked.seen, []).append(zone)
    for zones in alike.values():
        told = next((each[z] for z in zones if each[z].held_by), each[zones[0]])
        whole = len(zones) == len(reached)
        yield replace(told, faces=told.step.faces if whole else tuple(reached[z] for z in zones))
