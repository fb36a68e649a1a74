"""A shop compiled for the search: whole minutes from one origin, tasks by number, and no names.

Every time is a whole minute counted from the same origin, which whoever compiles a shop chooses
(a quarter hour, in UTC: drying knows no calendar). Nothing here knows of woods, films or air: what
those say of a task has become minutes, lags and spans in which it may not be done.
"""

from __future__ import annotations

from bisect import bisect_left
from functools import cached_property

from msgspec import Struct

# Further ahead than any plan: never ready, never closes.
NEVER = 1 << 40
# The step of a lag that depends on the time of day.
QUARTER = 15

# How long after the end of a task something is reached. A whole number: so many minutes, whenever
# it ends. Or, at [q], the minute itself at which it is reached by a task that ends at minute
# 15 * q; never falling, as later is never sooner. Inside a quarter hour it goes straight from one
# mark to the next, to the whole minute above where something is waited for and below where it
# closes (in the cold of a night a quarter hour may be three of them later). Behind the end of the
# table nothing is ever reached.
Lag = int | tuple[int, ...]
# From the first minute, until before the second.
Span = tuple[int, int]


class Product(Struct, frozen=True):
    """What a session of one product costs the hands.

    `pot_life`: at most so long from the end of set-up to the start of clean-up; None: no limit.
    Set-up, coats and clean-up lie within one opening; set-up may begin before a film is ready.
    """

    set_up: int
    clean_up: int
    pot_life: int | None = None


class After(Struct, frozen=True):
    """A task begins once `ready` is reached of another one, which has a lower number."""

    task: int
    ready: Lag = 0


class Window(Struct, frozen=True):
    """When the film under a coat wants abrading first.

    A coat that begins by `closes` (inclusive) goes on as it is. Later it wants `abrade` minutes of
    work first, which begin once `sands` is reached and so is all that the coat waits for after
    other tasks (a piece is not turned for abrading either); the window then counts as missed.
    `task`: the coat beneath; None where it lies there already, and both lags are then minutes from
    the origin.
    """

    task: int | None
    closes: Lag
    sands: Lag
    abrade: int
    is_dusty: bool = False


class Rack(Struct, frozen=True):
    """Places of one kind that a coat holds from its end until a lag is reached."""

    kind: int
    places: int
    until: Lag


class Task(Struct, frozen=True):
    """Work that is not interrupted: a coat on the faces of some pieces, or work by hand.

    `minutes` at it with both hands, without set-up and clean-up. `part`: what it belongs to, any
    number. `product`: the coat's, None for work by hand. `not_before` and `blocked` bound the
    start. `is_show`: on a face that is seen; the hidden ones of a session come first. `room`: where
    dust falls. `wet_until`: how long the film of a coat takes dust. `due`: by then `packs` is
    reached.
    """

    minutes: int
    part: int
    product: int | None = None
    after: tuple[After, ...] = ()
    window: Window | None = None
    racks: tuple[Rack, ...] = ()
    not_before: int = 0
    blocked: tuple[Span, ...] = ()
    is_show: bool = False
    room: int = 0
    is_dusty: bool = False
    wet_until: Lag = 0
    due: int | None = None
    packs: Lag = 0


class Held(Struct, frozen=True):
    """Places that hold something already, until a minute."""

    kind: int
    places: int
    until: int


class Settling(Struct, frozen=True):
    """What a room is like when the plan begins: dust lies there, falls, or a film is wet."""

    room: int
    is_dirty: bool = False
    dust_down: int = 0
    wet_until: int = 0


class Aims(Struct, frozen=True):
    """What a plan is judged by: lateness first, then minutes.

    Cost is the minute of the last task's end, and so many minutes for every session and every
    missed window.
    """

    session: int = 15
    missed: int = 30


class CompiledShop(Struct, frozen=True, dict=True):
    """All that the search knows.

    `openings`: when work is done, ascending, apart. `tasks` are known by their place, and come
    after those that they wait for. `racks`: how many places there are of each kind, the number of a
    kind being its place here. Dust is taken up in `vacuum` minutes of work and is down `settle`
    minutes later. `patience`: who has nothing to do for longer leaves, unless so much work as
    `worth` comes free that evening, or a window would close before the next; None: who is there
    stays.
    """

    openings: tuple[Span, ...]
    products: tuple[Product, ...]
    tasks: tuple[Task, ...]
    racks: tuple[int, ...] = ()
    held: tuple[Held, ...] = ()
    rooms: tuple[Settling, ...] = ()
    vacuum: int = 0
    settle: int = 0
    patience: int | None = None
    worth: int = 0
    aims: Aims = Aims()

    @cached_property
    def opens(self) -> tuple[int, ...]:
        """When each opening begins."""
        return tuple(opens for opens, _ in self.openings)

    def days_late(self, packed: int, due: int) -> int:
        """Count the openings that begin from when it was due until it is packed; late is one."""
        if packed <= due:
            return 0
        return max(1, bisect_left(self.opens, packed) - bisect_left(self.opens, due))


class Plan(Struct, frozen=True):
    """What the search found, all in minutes.

    `starts` of every task; `sessions`: product, start of set-up, end of clean-up, in the order of
    time; `abrades`: task and when the work before it begins, where its window was missed;
    `vacuums`: room and start. `is_whole`: every task found its place.
    """

    starts: tuple[int, ...]
    sessions: tuple[tuple[int, int, int], ...]
    abrades: tuple[tuple[int, int], ...]
    vacuums: tuple[tuple[int, int], ...]
    days_late: int
    finish: int
    is_whole: bool = True


def waits(lag: Lag, end: int) -> int:
    """Return the minute at which a lag that is waited for is reached after an end."""
    if isinstance(lag, int):
        return end + lag
    quarter, over = divmod(end, QUARTER)
    if not over:
        return lag[quarter] if quarter < len(lag) else NEVER
    if quarter + 1 >= len(lag) or lag[quarter + 1] >= NEVER:
        return NEVER
    return lag[quarter] - (lag[quarter] - lag[quarter + 1]) * over // QUARTER


def closes(lag: Lag, end: int) -> int:
    """Return the minute at which a lag that closes something is reached after an end."""
    if isinstance(lag, int):
        return end + lag
    quarter, over = divmod(end, QUARTER)
    if quarter + 1 >= len(lag):
        return lag[-1]
    if lag[quarter + 1] >= NEVER:
        return lag[quarter]
    return lag[quarter] + (lag[quarter + 1] - lag[quarter]) * over // QUARTER
