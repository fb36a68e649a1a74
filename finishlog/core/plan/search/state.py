"""How far a plan has come: what is done, what is ready when, what stands on the racks."""

from __future__ import annotations

from bisect import bisect_right, insort

from finishlog.core.plan.search.shop import NEVER, closes, waits
from finishlog.core.plan.search.tables import Tables, allowed

NOT_DONE = -1
# From here on places that came free again are forgotten.
LONG = 24


class State:
    """A plan up to a moment; one opening after another goes on from a copy of it.

    `starts` by task, -1 while it is not done; `missing`: how many tasks it waits for; `ready_at`
    and `closes_at`: what is known of it so far; `ready`: tasks that wait for no other one.
    """

    __slots__ = (
        "abrades",
        "closes_at",
        "dirty",
        "down",
        "finish",
        "hands",
        "held_since",
        "late",
        "left",
        "missing",
        "racks",
        "ready",
        "ready_at",
        "sessions",
        "starts",
        "vacuums",
        "wet",
    )

    starts: list[int]
    missing: list[int]
    ready_at: list[int]
    closes_at: list[int]
    ready: list[int]
    abrades: dict[int, int]
    sessions: list[tuple[int, int, int]]
    vacuums: list[tuple[int, int]]
    racks: list[list[int]]
    held_since: dict[int, int]
    dirty: set[int]
    down: dict[int, int]
    wet: dict[int, int]
    left: int
    hands: int
    finish: int
    late: int

    def copy(self) -> State:
        """Return a state that goes its own way."""
        of = State()
        of.starts = self.starts[:]
        of.missing = self.missing[:]
        of.ready_at = self.ready_at[:]
        of.closes_at = self.closes_at[:]
        of.ready = self.ready[:]
        of.abrades = self.abrades.copy()
        of.sessions = self.sessions[:]
        of.vacuums = self.vacuums[:]
        of.racks = [held[:] for held in self.racks]
        of.held_since = self.held_since.copy()
        of.dirty = self.dirty.copy()
        of.down = self.down.copy()
        of.wet = self.wet.copy()
        of.left = self.left
        of.hands = self.hands
        of.finish = self.finish
        of.late = self.late
        return of


def begin(tables: Tables) -> State:
    """Return the state in which nothing is done."""
    shop = tables.shop
    of = State()
    of.starts = [NOT_DONE] * tables.size
    of.missing = [len(after) for after in tables.after]
    of.ready_at = [task.not_before for task in shop.tasks]
    of.closes_at = [
        closes(window.closes, 0) if window is not None and window.task is None else NEVER
        for window in tables.window
    ]
    of.ready = [number for number, missing in enumerate(of.missing) if missing == 0]
    of.abrades, of.sessions, of.vacuums = {}, [], []
    of.racks = [
        sorted(h.until for h in shop.held if h.kind == kind for _ in range(h.places))
        for kind in range(len(shop.racks))
    ]
    of.held_since = {}
    of.dirty = {room.room for room in shop.rooms if room.is_dirty}
    of.down = {room.room: room.dust_down for room in shop.rooms}
    of.wet = {room.room: room.wet_until for room in shop.rooms}
    of.left, of.hands = tables.size, tables.hands
    of.finish = of.late = 0
    return of


def sands_at(tables: Tables, state: State, number: int) -> int:
    """Return when the film under a coat may be abraded, all that it waits for being done.

    Never before the coat itself may begin at the earliest.
    """
    window, below = tables.window[number], 0
    assert window is not None
    if window.task is not None:
        below = state.starts[window.task] + tables.minutes[window.task]
    return max(waits(window.sands, below), tables.shop.tasks[number].not_before)


def fits(tables: Tables, state: State, number: int, end: int) -> bool:
    """Tell whether the racks have places for a coat that ends then."""
    for kind, places, _ in tables.racks[number]:
        held = state.racks[kind]
        over = len(held) + places - tables.places[kind]
        if over > 0 and held[over - 1] > end:
            return False
    return True


def clear_at(tables: Tables, state: State, number: int, now: int) -> int:
    """Return when a coat may begin for dust and blocks, from now on; NEVER where dust lies."""
    if tables.has_dust:
        room = tables.room[number]
        if room in state.dirty:
            return NEVER
        now = max(now, state.down.get(room, 0))
    return allowed(tables.blocked[number], now) if tables.has_blocks else now


def carry(tables: Tables, state: State, number: int, end: int) -> list[int]:
    """Carry what is done to what waits for it; return what now waits for no other task."""
    state.left -= 1
    state.hands -= tables.minutes[number]
    state.finish = end
    for kind, places, until in tables.racks[number]:
        held = state.racks[kind]
        free = end + until if until.__class__ is int else waits(until, end)
        for _ in range(places):
            insort(held, free)
        if len(held) > LONG:
            del held[: bisect_right(held, end)]
    for opened in tables.opens_window[number]:
        window = tables.window[opened]
        assert window is not None
        state.closes_at[opened] = closes(window.closes, end)
    due = tables.due[number]
    if due is not None:
        packed = waits(tables.shop.tasks[number].packs, end)
        state.late += tables.shop.days_late(packed, due)
    ready_at, missing, free_now = state.ready_at, state.missing, []
    for behind, lag in tables.before[number]:
        at = end + lag if lag.__class__ is int else waits(lag, end)
        ready_at[behind] = at if at > ready_at[behind] else ready_at[behind]
        missing[behind] -= 1
        if missing[behind] == 0:
            free_now.append(behind)
    return free_now
