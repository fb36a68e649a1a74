"""May one finish go over another, does a schedule go through? The bench, asked of a bare board."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta, tzinfo

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint
from finishlog.core.bench.state import BenchState, bench_state
from finishlog.core.film.layers import Layer
from finishlog.core.film.lessons import Lessons
from finishlog.core.findings import Finding
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
)
from finishlog.core.verdict.fold import fold
from finishlog.core.zone.asked import Asked, coat_asked, work_asked
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT, Verdict

# Standard air of the trade, where the air of no room is known. ISO 3270
_STANDARD = Air(23.0, 50.0)
_TARGET = Target(1, 1)
# What is wrong with the lower coat itself is not asked of what goes over it.
_OF_THE_LOWER = frozenset({"wrong-below", "suspect", "perhaps-cold", "not-proved-through"})
# What the air, the heater and the wood's warmth say of a coat is asked on its evening.
_OF_THE_EVENING = frozenset({"air", "heater", "wood-warms-up", "warms-under-film"})
_BESIDE_THE_EVENING = frozenset(rule.id for rule in RULES) - _OF_THE_EVENING
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
    it waited for last; None: it could be done at once.
    """

    step: Step
    verdict: Verdict
    at: datetime | None
    held_by: StageTime | None = None


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
        first, state = self._verdict(laid, of.wood, asked, self.now, _OF_THE_LOWER)
        if of.under is None:
            return Imagined(first)
        hard = state.stages.get(Stage.CURED)
        hard_at = hard.high if hard else None
        dry_at = first.high
        return Imagined(
            self._verdict(laid, of.wood, asked, dry_at, _OF_THE_LOWER)[0] if dry_at else first,
            dry_at,
            self._verdict(laid, of.wood, asked, hard_at, _OF_THE_LOWER)[0] if hard_at else None,
            hard_at,
            state.top,
        )

    def in_its_air(self, of: Laid) -> tuple[Finding, ...]:
        """Return what the room, as it was read, says to the upper coat now and tonight."""
        bench = self._bench((), of.wood, self.room, self.now)
        asked, around = self._asked(of.over, of.method), bench.around(self.facts)
        every = findings_of(bench.zones[0], asked, around, but=_BESIDE_THE_EVENING)
        return tuple(replace(found, room=self.room.name) for found in every)

    def walk(self, steps: Sequence[Step], wood: str | None) -> tuple[Walked, ...]:
        """Do the steps one after the other, each as soon as the bench lets it be done."""
        done: list[AnyEntry] = []
        moment, walked = self.now, []
        for n, step in enumerate(steps):
            then = next((s.product for s in steps[n:] if s.product is not None), None)
            verdict, at_last, held_by = self._as_soon_as_it_may(done, wood, step, then, moment)
            walked.append(Walked(step, verdict, at_last, held_by))
            if at_last is None:
                break
            if verdict.scuff_first:
                done.append(self._work(Operation.SCUFF, at_last, len(done) + 1))
            product = self.products[step.product] if step.product is not None else None
            done += (
                self._coat(product, at_last, len(done) + 1)
                if product
                else [self._work(step.operation, at_last, len(done) + 1)]
            )
            moment = at_last + 2 * _SOON
        return tuple(walked)

    def _as_soon_as_it_may(
        self,
        done: Sequence[AnyEntry],
        wood: str | None,
        step: Step,
        then: int | None,
        moment: datetime,
    ) -> tuple[Verdict, datetime | None, StageTime | None]:
        product = self.products[step.product] if step.product is not None else None
        work = work_asked(step.operation, grit=step.note, then=then)
        asked = self._asked(product) if product else work
        verdict, _ = self._verdict(done, wood, asked, moment)
        held_by: StageTime | None = None
        # What ends may let something else bind; four of them end in turn at the most.
        for _ in range(4):
            if verdict.high is None or verdict.high <= moment:
                break
            moment, held_by = verdict.high, verdict.wait
            verdict, _ = self._verdict(done, wood, asked, moment)
        return verdict, moment if verdict.answer in MAY_ACT else None, held_by

    def _asked(self, over: Product, method: Method | None = None) -> Asked:
        of = self.facts.finish_class(over.class_key)
        return coat_asked(of, method, in_product(over), done=True, product=over.id)

    def _verdict(
        self,
        laid: Sequence[AnyEntry],
        wood: str | None,
        asked: Asked,
        moment: datetime,
        but: frozenset[str] = frozenset(),
    ) -> tuple[Verdict, ZoneState]:
        """Return what is said at a moment."""
        bench = self._bench(laid, wood, self._air(moment), moment)
        (state,) = bench.zones
        found = findings_of(state, asked, bench.around(self.facts), but=_OF_THE_EVENING | but)
        return fold(found, asked), state

    def _bench(
        self, laid: Sequence[AnyEntry], wood: str | None, air: RoomAir, moment: datetime
    ) -> BenchState:
        piece, zone = Piece(_TARGET.piece, 1), Zone(_TARGET.zone)
        face = Face(1, "front", FaceKind.SHOW, (zone,))
        board = Part(1, 1, "", "board", wood, (piece,), (face,), room=self.room.id)
        shop = Shop((), (board,), self.products, {}, ShopHours((), "UTC"))
        rooms = {self.room.id: air} if self.room.id is not None else {}
        log = Log(tuple(laid))
        return bench_state(shop, log, self.facts, moment, self.zone, rooms, lessons=self.lessons)

    def _coat(self, product: Product, moment: datetime, number: int) -> list[AnyEntry]:
        """Return a coat as it should go on: wiped off where it is."""
        of = self.facts.finish_class(product.class_key)
        coat = Coat(
            id=number,
            # Not done, so mixed as it should be; and its number is that of no act on record.
            act=-number,
            when=at(moment),
            typed_at=moment,
            targets=frozenset({_TARGET}),
            product=product.id,
            product_name=product.name,
            figures=judged_by(of, product.label, product.label_window, ""),
        )
        if of.wipe_off_h is None:
            return [coat]
        in_time = moment + timedelta(hours=of.wipe_off_h.low_h) / 2
        return [coat, self._work(Operation.WIPE, in_time, number + 1)]

    def _work(self, operation: Operation, moment: datetime, number: int) -> AnyEntry:
        return Work(
            id=number,
            act=-number,
            when=at(moment),
            typed_at=moment,
            targets=frozenset({_TARGET}),
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
