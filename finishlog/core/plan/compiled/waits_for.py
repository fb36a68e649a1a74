"""What a task of a story waits for: its own film and joint, edges, other faces, a rule's date."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from msgspec import Struct, field

from finishlog.core.film.layers import ABRADES
from finishlog.core.findings import Finding
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Target
from finishlog.core.log.words import Operation
from finishlog.core.plan.compiled.asked_once import held_by
from finishlog.core.plan.compiled.clocks import (
    OF_A_FILM,
    OF_A_JOINT,
    Clocks,
    last_coat,
    last_glued,
)
from finishlog.core.plan.compiled.lag_sums import later_of
from finishlog.core.plan.compiled.story import Deed
from finishlog.core.plan.search.shop import NEVER, Lag, waits
from finishlog.core.plan.shop_ahead import ShopAhead
from finishlog.core.shop.things import FaceKind
from finishlog.core.zone.state import ZoneState

# Hands that take no time are still one after the other, a minute each: some minutes are nothing.
_BUSY = 5


class Asks(Struct):
    """What a task waits for, gathered: by the task before it, and a minute."""

    after: dict[int, Lag] = field(default_factory=dict)
    not_before: int = 0

    def wait(self, tasks: Iterable[int], lag: Lag) -> None:
        """Wait for a lag after some tasks."""
        for task in tasks:
            known = self.after.get(task)
            self.after[task] = lag if known is None else later_of(known, lag)

    def until(self, minute: int) -> None:
        """Wait for a minute."""
        self.not_before = max(self.not_before, minute)


class WaitsFor(Struct):
    """Gathers it. `numbers`: the tasks made of a deed; `once`: by deed, what no clock told."""

    clocks: Clocks
    ahead: ShopAhead
    numbers: Callable[[Deed], Sequence[int]]
    once: list[tuple[int, Finding]] = field(default_factory=list)

    def of(self, deed: Deed) -> Asks:
        """Return what a task waits for."""
        asks, clocks = Asks(), self.clocks
        for target in deed.on:
            self._own(deed, target, asks)
            self._beside(deed, target, asks)
        for target in deed.reached - deed.on if self._minds_edges(deed) else ():
            coat = last_coat(clocks.story.before(deed, target), target)
            if coat is not None:
                asks.wait(self.numbers(coat), clocks.edge(deed, target, coat))
            else:
                self._logged(deed, target, asks, of_edge=True)
        self._asked_once(deed, asks)
        return asks

    def _asked_once(self, deed: Deed, asks: Asks) -> None:
        """Wait for what held a task up, as its story was told, when its clocks were over.

        A scuffing that no step asks for waited there for all that its coat does.
        """
        origin, deeds = self.clocks.origin, self.clocks.story.deeds
        if deed.is_price:
            return
        asked = [each for each in deeds if not each.is_price]
        ends = {n: origin.up(each.task.end) for each in asked for n in self.numbers(each)}
        clocks = [waits(lag, ends[n]) for n, lag in asks.after.items() if n in ends]
        ready, begun = max([0, asks.not_before, *clocks]), origin.up(deed.task.start)
        if begun - ready <= _BUSY + len(deeds):
            return
        found = held_by(self.clocks.story, self.ahead, deed, origin.at(ready))
        if found is None:
            return
        self.once.append((deed.number, found.because))
        until = begun if found.until is None else min(begun, origin.up(found.until))
        last = self.clocks.story.before(deed, min(deed.on))[-1:]
        of_it = any(act < 0 for act in found.because.acts)
        if last and of_it:
            # It counts from what was planned: as long behind that, whenever that is.
            asks.wait(self.numbers(last[0]), until - origin.up(last[0].task.end))
        asks.until(until)

    def _minds_edges(self, deed: Deed) -> bool:
        """Tell whether the edges are asked: not by a scuffing that only a coat asks for."""
        return deed.operation is not Operation.GLUE_UP and not deed.is_price

    def _own(self, deed: Deed, target: Target, asks: Asks) -> None:
        """Wait for the film of a zone, its joint, and what is done to it before."""
        clocks = self.clocks
        before = clocks.story.before(deed, target)
        for each in before[-1:]:
            asks.wait(self.numbers(each), 0)
        coat, glued = last_coat(before, target), last_glued(before, target)
        if coat is not None:
            asks.wait(self.numbers(coat), clocks.film(deed, target, coat))
        else:
            self._logged(deed, target, asks)
        if glued is not None:
            asks.wait(self.numbers(glued), clocks.joint(deed, target, glued))

    def _logged(self, deed: Deed, target: Target, asks: Asks, *, of_edge: bool = False) -> None:
        """Wait for the film that lies on a zone already."""
        clocks = self.clocks
        state = clocks.story.zones.then(target, clocks.story.planned(deed, target))
        rules = (*OF_A_FILM, *OF_A_JOINT)
        if any(deed.operation is Operation.GLUE_UP for deed in clocks.story.before(deed, target)):
            rules = OF_A_FILM
        asked = clocks.asked(deed, state)
        ready = clocks.ready(state, asked, self.ahead.now, rules, of_edge=of_edge)
        asks.until(clocks.origin.up(ready) if ready is not None else NEVER)

    def _beside(self, deed: Deed, target: Target, asks: Asks) -> None:
        """Wait until the other faces of its piece bear lying on points."""
        if not deed.is_coat and deed.operation not in ABRADES:
            return
        story = self.clocks.story
        mine = story.zones.first[target]
        own = last_coat(story.before(deed, target), target)
        for other, state in story.zones.first.items():
            if other.piece != target.piece or state.face.id == mine.face.id:
                continue
            coat = last_coat(story.before(deed, other), other)
            if coat is not None:
                if own is None or coat.number > own.number:
                    asks.wait(self.numbers(coat), self.clocks.turned(other, coat))
            elif state.top is not None and own is None:
                self._turned_already(state, mine, asks)

    def _turned_already(self, other: ZoneState, mine: ZoneState, asks: Asks) -> None:
        top = other.top
        if top is None or (mine.top is not None and mine.top.put_on >= top.put_on):
            return
        turn = other.stages.get(Stage.TURN)
        if turn is None:
            return
        wait = turn.from_its_low_end if other.face.kind is FaceKind.HIDDEN else turn
        asks.until(self.clocks.origin.up(wait.high) if wait.high is not None else NEVER)
