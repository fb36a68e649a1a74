"""The tasks of one story, for every piece that it is told of: what each waits for, and how long."""

from __future__ import annotations

from collections.abc import Mapping
from math import ceil

from msgspec import Struct, field

from finishlog.core.findings import Finding
from finishlog.core.finish.classes import FinishClass
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Target, Work
from finishlog.core.log.words import Operation
from finishlog.core.plan.compiled.air_ahead import AirAhead
from finishlog.core.plan.compiled.at_it import AtIt
from finishlog.core.plan.compiled.cast import Cast, Doing
from finishlog.core.plan.compiled.clocks import Clocks
from finishlog.core.plan.compiled.lag_sums import begun_before, later_of, less
from finishlog.core.plan.compiled.story import Deed
from finishlog.core.plan.compiled.waits_for import Asks, WaitsFor
from finishlog.core.plan.compiled.windows import Bound, Windows
from finishlog.core.plan.jobs import DUSTY
from finishlog.core.plan.jobs_that_fit import Hands
from finishlog.core.plan.search.shop import After, Lag, Task, Window
from finishlog.core.plan.shop_ahead import ShopAhead
from finishlog.core.shop.things import FaceKind, Part
from finishlog.core.zone.state import ZoneState


class StoryTasks(Struct, dict=True):
    """Makes the tasks of one story; their numbers begin at `first`."""

    clocks: Clocks
    cast: Cast
    hands: Hands
    air: AirAhead
    first: int
    products: Mapping[int, int]
    rooms: Mapping[int | None, int]
    longest_min: int
    due: Mapping[int, int]
    ahead: ShopAhead
    # By project and product: what the sample boards have to have had before.
    boards: dict[tuple[int, int], Asks]
    tasks: list[Task] = field(default_factory=list)
    doings: list[Doing] = field(default_factory=list)
    once: list[tuple[int, Finding]] = field(default_factory=list)
    # By deed: its tasks, and the pieces of each.
    _of: dict[int, list[tuple[int, frozenset[int]]]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Lay out what is asked of each task."""
        self.at_it = AtIt(self.clocks.story, self.cast, self.hands, self.longest_min)
        self.waits_for = WaitsFor(self.clocks, self.ahead, self.numbers)
        self.windows = Windows(self.clocks, self.hands, self.ahead.now)

    def make(self) -> None:
        """Make them, in the order of the story."""
        for deed in self.clocks.story.deeds:
            asks, window = self.waits_for.of(deed), self.windows.of(deed)
            packs = self._packs(deed)
            for on in self.at_it.batches(deed):
                self._add(deed, on, asks, window, packs)
        self._tell_of_boards()
        for once, found in self.waits_for.once:
            self.once += [(number, found) for number, _ in self._of[once]]

    def numbers(self, deed: Deed) -> list[int]:
        """Return the tasks of a deed."""
        return [number for number, _ in self._of.get(deed.number, ())]

    def _add(
        self,
        deed: Deed,
        on: frozenset[Target],
        asks: Asks,
        window: Bound | None,
        packs: Lag | None,
    ) -> None:
        pieces = frozenset(t.piece for t in on)
        mine = {
            n
            for each in self._of.values()
            for n, others in each
            if deed.operation is Operation.GLUE_UP or others & pieces or not others
        }
        minutes, wipes = self.at_it.minutes(deed, on), self.at_it.wipe_off(deed, on)
        number = self.first + len(self.tasks)
        state, board = self._state(deed), self._board(deed)
        self.tasks.append(
            Task(
                minutes=minutes,
                part=self._part(deed).id,
                product=None if deed.task.product is None else self.products[deed.task.product],
                after=(
                    *(After(n, lag) for n, lag in sorted(board.after.items())),
                    *(
                        After(n, self._counted(n, lag))
                        for n, lag in sorted(asks.after.items())
                        if n in mine
                    ),
                ),
                window=self._window_of(deed, on, window, mine),
                not_before=max(asks.not_before, board.not_before),
                blocked=self._blocked(deed, state),
                is_show=any(self._zone(deed, t).face.kind is FaceKind.SHOW for t in deed.on),
                room=self.rooms[state.room.id],
                is_dusty=deed.operation in DUSTY,
                wet_until=begun_before(self._wet(deed), wipes),
                due=None if packs is None else self.due[self._part(deed).project],
                packs=begun_before(packs, wipes) if packs is not None else 0,
            )
        )
        self.doings.append(Doing(deed, self._part(deed), on))
        joins = deed.operation is Operation.GLUE_UP
        self._of.setdefault(deed.number, []).append((number, frozenset() if joins else pieces))

    def _board(self, deed: Deed) -> Asks:
        """Return what the boards have to have had before the first coat of a product."""
        part, product = self._part(deed), deed.task.product
        if product is None or part.is_board or deed.task.coat[0] > 1:
            return Asks()
        return self.boards.get((part.project, product), Asks())

    def _tell_of_boards(self) -> None:
        """Note when the last coat of each product on a board may be judged: others wait for it."""
        last = {d.task.product: d for d in self.clocks.story.deeds if d.is_coat}
        for product, deed in last.items():
            if product is not None and self._part(deed).is_board:
                asks = self.boards.setdefault((self._part(deed).project, product), Asks())
                for target in deed.on:
                    touch = self.clocks.reached(target, deed, Stage.TOUCH)
                    asks.wait(self.numbers(deed), touch)

    def _counted(self, task: int, lag: Lag) -> Lag:
        """Return a lag by the end of a task: a film dries while its surplus is wiped off behind."""
        doing = self.doings[task - self.first]
        return begun_before(lag, self.at_it.wipe_off(doing.deed, doing.on))

    def _window_of(
        self, deed: Deed, on: frozenset[Target], window: Bound | None, mine: set[int]
    ) -> Window | None:
        if window is None:
            return None
        coat, closes, sands = window
        scuff = self.hands.facts.hands_on.each(Operation.SCUFF)
        count = self.at_it.count(deed, on, per_piece=scuff.per_piece)
        minutes = ceil(scuff.each_min.high * count)
        # It closes for the last piece of a batch as for the first.
        closes = less(closes, self.at_it.until_last_piece(deed, on))
        if coat is None:
            return Window(None, closes, sands, minutes, is_dusty=True)
        task = min(n for n in self.numbers(coat) if n in mine)
        doing = self.doings[task - self.first]
        long = self.tasks[task - self.first].minutes
        return Window(
            task,
            begun_before(closes, long, is_window=True),
            begun_before(sands, self.at_it.wipe_off(doing.deed, doing.on)),
            minutes,
            is_dusty=True,
        )

    def _packs(self, deed: Deed) -> Lag | None:
        """Return when what is done last on some zones is packed after it; None: more is to come.

        Whatever is done to it by hand since: its last coat packs when it does.
        """
        after = self.clocks.story.deeds[deed.number + 1 :]
        coats = [each for each in after if each.is_coat] if deed.is_coat else after
        last = [t for t in deed.on if not any(t in each.reached for each in coats)]
        due = self.due.get(self._part(deed).project)
        if not last or self._part(deed).is_board or due is None:
            return None
        if not deed.is_coat:
            return 0
        lags = [self.clocks.reached(t, deed, Stage.PACK) for t in last]
        found = lags[0]
        for lag in lags[1:]:
            found = later_of(found, lag)
        return found

    def _wet(self, deed: Deed) -> Lag:
        of = self._class(deed)
        if of is None or not of.builds_film:
            return 0
        found: Lag = 0
        for target in deed.on:
            found = later_of(found, self.clocks.dust_free(target, deed))
        return found

    def _blocked(self, deed: Deed, state: ZoneState) -> tuple[tuple[int, int], ...]:
        of = self._class(deed)
        if of is None:
            return ()
        return self.air.forbids(of, None, self.clocks.days_of(state))

    def _zone(self, deed: Deed, target: Target) -> ZoneState:
        return self.clocks.story.zones.first[target]

    def _state(self, deed: Deed) -> ZoneState:
        return self._zone(deed, min(deed.reached))

    def _part(self, deed: Deed) -> Part:
        assert deed.task.part is not None
        return self.cast.parts[deed.task.part.id]

    def _class(self, deed: Deed) -> FinishClass | None:
        return self.hands.product_class(deed.task.product)


def _count(on: frozenset[Target], *, per_piece: bool) -> int:
    return len({t.piece for t in on}) if per_piece else len(on)


def _is_wiped_first(deed: Deed) -> bool:
    first = deed.entries[0]
    return isinstance(first, Work) and first.operation is Operation.SOLVENT_WIPE and deed.is_coat
