"""A compiled shop laid out for decoding: one list for each thing that is asked of a task."""

from __future__ import annotations

from finishlog.core.plan.search.shop import NEVER, QUARTER, CompiledShop, Lag, Span

# The product of work by hand.
BY_HAND = -1


class Tables:
    """What a decode reads, by the number of a task; shared by all of them, never changed."""

    def __init__(self, shop: CompiledShop) -> None:
        """Lay out a shop."""
        tasks = shop.tasks
        self.shop = shop
        self.size = len(tasks)
        self.minutes = [t.minutes for t in tasks]
        self.product = [BY_HAND if t.product is None else t.product for t in tasks]
        self.after = [tuple((a.task, a.ready) for a in t.after) for t in tasks]
        self.before: list[list[tuple[int, Lag]]] = [[] for _ in tasks]
        for number, each in enumerate(self.after):
            for first, lag in each:
                self.before[first].append((number, lag))
        self.window = [t.window for t in tasks]
        # Whose windows a coat opens.
        self.opens_window: list[list[int]] = [[] for _ in tasks]
        for number, task in enumerate(tasks):
            if task.window is not None and task.window.task is not None:
                self.opens_window[task.window.task].append(number)
        self.racks = [tuple((r.kind, r.places, r.until) for r in t.racks) for t in tasks]
        self.places = shop.racks
        self.blocked = [t.blocked for t in tasks]
        self.has_blocks = any(self.blocked)
        self.room = [t.room for t in tasks]
        self.is_dusty = [t.is_dusty for t in tasks]
        self.has_dust = bool(shop.rooms) or any(
            t.is_dusty or (t.window is not None and t.window.is_dusty) for t in tasks
        )
        self.is_show = [t.is_show for t in tasks]
        self.has_faces = any(self.is_show)
        self.part = [t.part for t in tasks]
        self.of_part: dict[int, list[int]] = {}
        for number, part in enumerate(self.part):
            self.of_part.setdefault(part, []).append(number)
        self.due = [t.due for t in tasks]
        self.set_up = [p.set_up for p in shop.products]
        self.clean_up = [p.clean_up for p in shop.products]
        self.pot_life = [NEVER if p.pot_life is None else p.pot_life for p in shop.products]
        self.hands = sum(self.minutes)
        self.tail = self._tails()

    def _tails(self) -> list[int]:
        """Return the minutes from the start of each task to the end of all behind it, no shop."""
        tail = [0] * self.size
        for number in reversed(range(self.size)):
            behind = [usual(lag) + tail[n] for n, lag in self.before[number]]
            tail[number] = self.minutes[number] + max(behind, default=0)
        return tail


def usual(lag: Lag) -> int:
    """Return a lag as a length; of a table the mean one over what it covers."""
    if isinstance(lag, int):
        return lag
    lengths = [at - q * QUARTER for q, at in enumerate(lag) if at < NEVER]
    return sum(lengths) // len(lengths) if lengths else 0


def allowed(blocked: tuple[Span, ...], start: int) -> int:
    """Return the first minute from a start on at which no block lies; blocks ascend."""
    for since, until in blocked:
        if since <= start < until:
            start = until
    return start
