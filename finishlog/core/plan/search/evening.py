"""One opening of the shop, filled by a policy: what is taken next, and when a product is opened."""

from __future__ import annotations

from bisect import bisect_right, insort
from collections.abc import Iterator, Sequence
from heapq import heapify, heappop, heappush
from typing import NamedTuple

from finishlog.core.plan.search.offers import Offer, Ranked, offered
from finishlog.core.plan.search.policy import COAT, PREPARE, URGENT, Policy
from finishlog.core.plan.search.shop import NEVER, waits
from finishlog.core.plan.search.state import State, carry, clear_at, fits, sands_at
from finishlog.core.plan.search.tables import BY_HAND, Tables, allowed


class Openable(NamedTuple):
    """What could be coated now: the product to open, its worth, minutes of all, until when."""

    product: int
    worth: float
    busy: int
    until: int
    scuffs: list[Ranked]


class Evening:
    """An opening being filled; the state given is changed."""

    __slots__ = (
        "barred",
        "by_hand",
        "closing",
        "coats",
        "done",
        "following",
        "later",
        "latest",
        "now",
        "number",
        "offers",
        "openable",
        "policy",
        "rank",
        "state",
        "tables",
        "urgent",
    )

    def __init__(
        self,
        tables: Tables,
        state: State,
        number: int,
        policy: Policy,
        rank: Sequence[float],
        latest: Sequence[int],
    ) -> None:
        """Begin the opening of a number; the task of the lowest `rank` goes first.

        `latest`: starts that are aimed at.
        """
        openings = tables.shop.openings
        self.tables, self.state, self.number = tables, state, number
        self.policy, self.rank, self.latest = policy, rank, latest
        self.now, self.closing = openings[number]
        self.following = openings[number + 1][0] if number + 1 < len(openings) else NEVER
        self.by_hand: list[Ranked] = []
        self.coats: dict[int, list[Ranked]] = {}
        self.urgent: set[int] = set()
        self.barred: set[int] = set()
        self.later: list[tuple[int, int]] = []
        self.offers: dict[int, Offer] = {}
        self.openable: Openable | None = None
        self.done: list[int] = []

    def run(self) -> None:
        """Fill the opening until it ends or nothing more can be done in it."""
        state, coats, rank = self.state, self.coats, self.rank
        now, closing, ready_at = self.now, self.closing, state.ready_at
        product, closes_at, set_up = self.tables.product, state.closes_at, self.tables.set_up
        ready, state.ready = state.ready, []
        for number in ready:
            at, of = ready_at[number], product[number]
            if at >= closing:
                state.ready.append(number)
                continue
            if of != BY_HAND:
                at -= set_up[of]
            if at > now:
                self.later.append((at, number))
            elif of == BY_HAND:
                self.by_hand.append((rank[number], number))
            else:
                coats.setdefault(of, []).append((rank[number], number))
                if closes_at[number] < self.following + set_up[of]:
                    self.urgent.add(of)
        self.by_hand.sort()
        for waiting in coats.values():
            waiting.sort()
        heapify(self.later)
        while self._next():
            pass
        state.ready += [n for _, n in self.later]
        state.ready += [n for _, n in self.by_hand]
        for waiting in self.coats.values():
            state.ready += [n for _, n in waiting]

    def _take_in(self, number: int) -> None:
        """Put a task that is ready now where it is looked for."""
        product = self.tables.product[number]
        if product == BY_HAND:
            insort(self.by_hand, (self.rank[number], number))
            return
        insort(self.coats.setdefault(product, []), (self.rank[number], number))
        self.offers.pop(product, None)
        self.openable = None
        if self.state.closes_at[number] < self.following + self.tables.set_up[product]:
            self.urgent.add(product)

    def _next(self) -> bool:
        """Do one thing; False when nothing more can be done."""
        now, later = self.now, self.later
        while later and later[0][0] <= now:
            self._take_in(heappop(later)[1])
        openable = self.openable
        if openable is None or openable.until <= now:
            self.openable = openable = self._openable()
        hand = self._hand(openable.scuffs)
        product = openable.product
        if hand is not None and product != BY_HAND:
            first = self.policy.first
            if first == PREPARE:
                waits_for_coats = now + hand[2] + openable.busy > self.closing
            else:
                waits_for_coats = first == COAT or openable.worth >= -hand[0]
            if waits_for_coats:
                hand = None
        if hand is not None:
            self._work(hand)
            return True
        if product != BY_HAND:
            self._session(product)
            return True
        return self._wait()

    def _hand(self, scuffs: list[Ranked]) -> tuple[float, int, int, bool] | None:
        """Return the first work by hand that fits: rank, task, minutes, whether it is abrading."""
        now, closing, tables = self.now, self.closing, self.tables
        minutes, found = tables.minutes, None
        for rank, number in self.by_hand:
            if now + minutes[number] <= closing and self._free(number):
                found = (rank, number, minutes[number], False)
                break
        for rank, number in scuffs:
            if found is None or rank < found[0]:
                window = tables.window[number]
                assert window is not None
                if now + window.abrade <= closing and self._may_abrade(number):
                    found = (rank, number, window.abrade, True)
        return found

    def _free(self, number: int) -> bool:
        """Tell whether work by hand may be done now: no block, and no dust on a wet film."""
        tables = self.tables
        if tables.has_blocks and allowed(tables.blocked[number], self.now) > self.now:
            return False
        if tables.has_dust and tables.is_dusty[number]:
            return self.state.wet.get(tables.room[number], 0) <= self.now
        return True

    def _may_abrade(self, number: int) -> bool:
        tables, state = self.tables, self.state
        window = tables.window[number]
        assert window is not None
        if window.is_dusty and state.wet.get(tables.room[number], 0) > self.now:
            return False
        return sands_at(tables, state, number) <= self.now

    def _openable(self) -> Openable:
        """Find the product to open now, and what wants abrading."""
        best, best_worth, busy, until = BY_HAND, -1e300, 0, self.closing
        scuffs: list[Ranked] = []
        tables, now, offers = self.tables, self.now, self.offers
        for product, waiting in self.coats.items():
            if not waiting or product in self.barred:
                continue
            offer = offers.get(product)
            if offer is None or offer.until <= now:
                offers[product] = offer = self._offer(product, waiting)
            until = offer.until if offer.until < until else until
            if offer.scuffs:
                scuffs += offer.scuffs
            if not offer.coats or not self._opens(product, offer.coats, waiting):
                continue
            if self._has_places(product, now + tables.set_up[product]):
                busy += offer.busy
                if offer.worth > best_worth:
                    best, best_worth = product, offer.worth
        return Openable(best, best_worth, busy, until, scuffs)

    def _offer(self, product: int, waiting: list[Ranked]) -> Offer:
        urgent = self.policy.first == URGENT
        last = self.closing - self.tables.clean_up[product]
        closes_at, following = self.state.closes_at, self.following
        return offered(
            self.tables, product, waiting, closes_at, (self.now, last, following), urgent=urgent
        )

    def _opens(self, product: int, count: int, waiting: list[Ranked]) -> bool:
        """Tell whether a product is opened for so many coats, or held back."""
        if product in self.urgent:
            return True
        policy, state = self.policy, self.state
        if policy.slack is not None:
            until = self.following + self.tables.set_up[product] + policy.slack
            return any(self.latest[number] < until for _, number in waiting)
        if count >= policy.batch or state.held_since.get(product, self.number) < self.number:
            return True
        state.held_since.setdefault(product, self.number)
        return False

    def _has_places(self, product: int, wet: int) -> bool:
        """Tell whether a coat of a product would find places."""
        tables, state = self.tables, self.state
        return any(
            fits(tables, state, number, wet + tables.minutes[number])
            for _, number in self.coats[product]
        )

    def _work(self, hand: tuple[float, int, int, bool]) -> None:
        """Do what is done by hand."""
        rank, number, length, is_abrading = hand
        state, tables = self.state, self.tables
        end = self.now + length
        if is_abrading:
            window = tables.window[number]
            assert window is not None
            state.abrades[number] = self.now
            state.closes_at[number] = NEVER
            self.offers.pop(tables.product[number], None)
            self.openable = None
            if window.is_dusty:
                state.dirty.add(tables.room[number])
        else:
            self.by_hand.remove((rank, number))
            state.starts[number] = self.now
            self._done(number, end)
            if tables.is_dusty[number]:
                state.dirty.add(tables.room[number])
        self.now = end

    def _session(self, product: int) -> None:
        """Open a product, coat what fits, and clean up."""
        tables, state, later = self.tables, self.state, self.later
        self.offers.pop(product, None)
        self.openable = None
        begun, cleaning = self.now, tables.clean_up[product]
        down = state.down.copy()
        vacuumed = self._vacuum(product) if state.dirty else []
        self.now += tables.set_up[product]
        until = self.closing - cleaning
        first, count, patience = self.now, 0, max(cleaning, tables.shop.settle)
        while count < self.policy.most:
            while later and later[0][0] <= self.now:
                self._take_in(heappop(later)[1])
            number = self._coat(product, until, patience)
            if number is None:
                break
            if not count:
                first, patience = state.starts[number], cleaning
                until = min(self.closing - cleaning, first + tables.pot_life[product])
            count += 1
        if not count:
            self.barred.add(product)
            self._step_back(begun)
            state.down = down
            state.dirty.update(room for room, _ in vacuumed)
            return
        self.now += cleaning
        state.vacuums += vacuumed
        state.sessions.append((product, first - tables.set_up[product], self.now))
        state.held_since.pop(product, None)

    def _step_back(self, now: int) -> None:
        """Take back the time of a session without a coat, and what came of it."""
        self.now = now
        self.offers.clear()
        for waiting in (self.by_hand, *self.coats.values()):
            for each in [each for each in waiting if self._noticed(each[1]) > now]:
                waiting.remove(each)
                heappush(self.later, (self._noticed(each[1]), each[1]))

    def _vacuum(self, product: int) -> list[tuple[int, int]]:
        """Take up the dust in the rooms where a product is to be put on."""
        tables, state, found = self.tables, self.state, []
        rooms = {tables.room[number] for _, number in self.coats[product]}
        for room in sorted(rooms & state.dirty):
            found.append((room, self.now))
            self.now += tables.shop.vacuum
            state.down[room] = max(state.down.get(room, 0), self.now + tables.shop.settle)
            state.dirty.discard(room)
        return found

    def _coat(self, product: int, until: int, patience: int) -> int | None:
        """Put on the first coat that may be soon enough, and return it; None: there is none."""
        state, tables = self.state, self.tables
        minutes, closes_at = tables.minutes, state.closes_at
        waiting = self.coats[product]
        in_turn: Sequence[int] = range(len(waiting))
        if tables.has_faces:
            in_turn = sorted(in_turn, key=lambda place: tables.is_show[waiting[place][1]])
        found, first = -1, self.now + patience + 1
        for place in in_turn:
            number = waiting[place][1]
            start = max(state.ready_at[number], clear_at(tables, state, number, self.now))
            if tables.has_blocks:
                start = allowed(tables.blocked[number], start)
            end = start + minutes[number]
            if start >= first or end > until or start > closes_at[number]:
                continue
            if fits(tables, state, number, end):
                found, first = place, start
                if start <= self.now:
                    break
        if found < 0:
            return None
        _, number = waiting.pop(found)
        self._put_on(number, first)
        return number

    def _put_on(self, number: int, start: int) -> None:
        """Put a coat on; its film takes dust for a while."""
        state, tables = self.state, self.tables
        state.starts[number] = start
        self.now = end = start + tables.minutes[number]
        if tables.has_dust:
            room = tables.room[number]
            wet = waits(tables.shop.tasks[number].wet_until, end)
            state.wet[room] = max(wet, state.wet.get(room, 0))
        self._done(number, end)

    def _done(self, number: int, end: int) -> None:
        """Carry what is done to what waits for it."""
        self.done.append(number)
        state = self.state
        for behind in carry(self.tables, state, number, end):
            if state.ready_at[behind] >= self.closing:
                state.ready.append(behind)
            else:
                heappush(self.later, (self._noticed(behind), behind))

    def _noticed(self, number: int) -> int:
        """Return from when on a task is looked at: set-up ends when a film is ready."""
        at, product = self.state.ready_at[number], self.tables.product[number]
        return at if product == BY_HAND else at - self.tables.set_up[product]

    def _wait(self) -> bool:
        """Wait for what comes ready or for a place; False when there is nothing to wait for."""
        soon = self.later[0][0] if self.later else self.closing
        if self.tables.has_dust or self.tables.has_blocks:
            soon = min([soon, *(at for at in self._clears() if at > self.now)])
        if any(self.coats.values()):
            for held in self.state.racks:
                place = bisect_right(held, self.now)
                if place < len(held) and held[place] < soon:
                    soon = held[place]
        if soon >= self.closing or not self._stays(soon):
            return False
        self.now = max(self.now + 1, soon)
        self.barred.clear()
        self.openable = None
        return True

    def _clears(self) -> Iterator[int]:
        """Yield when blocks end, dust is down and films take no more of it."""
        tables, state = self.tables, self.state
        yield from state.down.values()
        yield from state.wet.values()
        for waiting in (self.by_hand, *self.coats.values()):
            for _, number in waiting:
                early = self._noticed(number) - self.state.ready_at[number]
                yield from (until + early for _, until in tables.blocked[number])

    def _stays(self, soon: int) -> bool:
        """Tell whether it is worth standing by, or coming back, until then."""
        tables, state, shop = self.tables, self.state, self.tables.shop
        if shop.patience is None or soon - self.now <= shop.patience:
            return True
        coming = [number for _, number in self.later]
        coming += [number for waiting in self.coats.values() for _, number in waiting]
        if sum(tables.minutes[number] for number in coming) >= shop.worth:
            return True
        return any(
            state.closes_at[number] < self.following + tables.set_up[tables.product[number]]
            or self.latest[number] < self.following
            for number in coming
            if tables.product[number] != BY_HAND
        )
