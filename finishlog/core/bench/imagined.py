"""May one finish go over another? The bench itself, asked of a board that nobody coated yet."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, timedelta, tzinfo

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint
from finishlog.core.bench.state import BenchState, bench_state
from finishlog.core.film.layers import Layer
from finishlog.core.film.lessons import Lessons
from finishlog.core.finish.classes import Method, judged_by
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Coat, Target, Work
from finishlog.core.log.when import at
from finishlog.core.log.words import Operation
from finishlog.core.published.facts import Facts
from finishlog.core.rules.all import findings_of
from finishlog.core.safety.whats_in import in_product
from finishlog.core.shop.hours import ShopHours
from finishlog.core.shop.things import Face, FaceKind, Log, Part, Piece, Product, Shop, Zone
from finishlog.core.verdict.fold import fold
from finishlog.core.zone.asked import coat_asked
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Verdict

# Standard air of the trade, where the air of no room is known. ISO 3270
_STANDARD = Air(23.0, 50.0)
_TARGET = Target(1, 1)
# What the air, the heater and the wood's warmth say of a coat is asked on its evening.
_OF_THE_EVENING = frozenset({"air", "heater", "wood-warms-up", "warms-under-film"})
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


class Board(Struct, frozen=True):
    """A board in one room: its air as it is to be expected, or standard air where none is known."""

    room: RoomAir
    products: Mapping[int, Product]
    lessons: Lessons
    facts: Facts
    zone: tzinfo
    now: datetime

    def asked(self, of: Laid) -> Imagined:
        """Answer what may go over what."""
        first, state = self._at(of, self.now)
        if of.under is None:
            return Imagined(first)
        hard = state.stages.get(Stage.CURED)
        hard_at = hard.high if hard else None
        return Imagined(
            self._at(of, first.high)[0] if first.high else first,
            first.high,
            self._at(of, hard_at)[0] if hard_at else None,
            hard_at,
            state.top,
        )

    def _at(self, of: Laid, moment: datetime) -> tuple[Verdict, ZoneState]:
        """Return what is said at a moment."""
        bench = self._bench(of, moment)
        (state,) = bench.zones
        over = self.facts.finish_class(of.over.class_key)
        asked = coat_asked(over, of.method, in_product(of.over), done=True, product=of.over.id)
        found = findings_of(state, asked, bench.around(self.facts), but=_OF_THE_EVENING)
        return fold(found, asked), state

    def _bench(self, of: Laid, moment: datetime) -> BenchState:
        piece, zone = Piece(_TARGET.piece, 1), Zone(_TARGET.zone)
        face = Face(1, "front", FaceKind.SHOW, (zone,))
        board = Part(1, 1, "", "board", of.wood, (piece,), (face,), room=self.room.id)
        shop = Shop((), (board,), self.products, {}, ShopHours((), "UTC"))
        rooms = {self.room.id: self._air(moment)} if self.room.id is not None else {}
        log = Log(tuple(self._coat(of.under)) if of.under else ())
        return bench_state(shop, log, self.facts, moment, self.zone, rooms, lessons=self.lessons)

    def _coat(self, under: Product) -> list[AnyEntry]:
        """Return a coat that went on now, as it should: wiped off where it is."""
        of = self.facts.finish_class(under.class_key)
        targets = frozenset({_TARGET})
        coat = Coat(
            id=1,
            act=1,
            when=at(self.now),
            typed_at=self.now,
            targets=targets,
            product=under.id,
            product_name=under.name,
            figures=judged_by(of, under.label, under.label_window, ""),
        )
        wiped = at(self.now + _SOON)
        wipe = Work(
            id=2, act=2, when=wiped, typed_at=self.now, targets=targets, operation=Operation.WIPE
        )
        return [coat, wipe] if of.wipe_off_h is not None else [coat]

    def _air(self, moment: datetime) -> RoomAir:
        """Return the air of the room, read again and again as it is to be expected."""
        known = self.room.readings[-1].air if self.room.readings else _STANDARD
        times = [self.now]
        while times[-1] < moment:
            times.append(min(times[-1] + _READ_EVERY, moment))
        airs = ((time, self.room.expected_at(time) or known) for time in times)
        read = (AirPoint(time, air.temperature_c, air.humidity_pct) for time, air in airs)
        return replace(self.room, readings=(*self.room.readings, *read))
