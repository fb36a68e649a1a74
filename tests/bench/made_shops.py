"""Invented shops to plan, read from a file or drawn from a seed, as the search takes them.

A file holds shop hours, what a session costs, rack places and instances: parts, their operations in
minutes from Monday 00:00, what each comes after, until when it wants no abrading, and how long it
holds a place. The seeded ones are of the same form, so that either may be told as the other.
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from finishlog.core.plan.search.shop import (
    After,
    CompiledShop,
    Product,
    Rack,
    Span,
    Task,
    Window,
)

DAY = 24 * 60
# Far enough for the slowest list of a hundred parts.
DAYS = 420
_WEEK = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_HOURS = re.compile(r"(\w{3})(?:-(\w{3}))? (\d\d):(\d\d)-(\d\d):(\d\d)")

Instance = Mapping[str, Any]


def openings(hours: str, days: int = DAYS) -> tuple[Span, ...]:
    """Read `Mon-Fri 18:00-21:00, Sat 09:00-17:00` into minutes from the first Monday."""
    week: list[Span] = []
    for first, last, *clock in _HOURS.findall(hours):
        a, b, c, d = map(int, clock)
        of_days = range(_WEEK.index(first), _WEEK.index(last or first) + 1)
        week += [(day * DAY + a * 60 + b, day * DAY + c * 60 + d) for day in of_days]
    weeks = range(days // 7)
    return tuple((n * 7 * DAY + a, n * 7 * DAY + b) for n in weeks for a, b in sorted(week))


def products_of(one: Instance) -> tuple[str, ...]:
    """Name the products of an instance, in the order of their numbers."""
    return tuple(sorted({x["product"] for x in one["operations"] if x["product"] is not None}))


def compiled(file: Instance, one: Instance, *, racks: bool = True) -> CompiledShop:
    """Compile one instance of a file; without `racks` there is room for everything."""
    number = {name: n for n, name in enumerate(products_of(one))}
    due = _due(one)
    places = int(file["rack_places"])

    def task(x: Instance) -> Task:
        window = x["window"]
        lag = {a["op"]: int(a["min_lag_minutes"]) for a in x["after"]}
        held = int(x["rack_minutes"])
        return Task(
            minutes=int(x["minutes"]),
            part=int(x["part"]),
            product=None if x["product"] is None else number[x["product"]],
            after=tuple(After(p, ready) for p, ready in lag.items()),
            window=Window(
                window["op"],
                closes=int(window["max_lag_minutes"]),
                sands=lag[window["op"]],
                abrade=int(file["abrade_minutes"]),
            )
            if window
            else None,
            racks=(Rack(0, 1, held),) if held and racks else (),
            not_before=int(x["not_before_minutes"]),
            due=due.get(int(x["id"])),
        )

    session = Product(
        int(file["setup_minutes"]), int(file["cleanup_minutes"]), int(file["pot_life_minutes"])
    )
    return CompiledShop(
        openings=openings(file["shop_hours"]),
        products=(session,) * len(number),
        tasks=tuple(task(x) for x in one["operations"]),
        racks=(places,) if racks else (),
    )


def _due(one: Instance) -> dict[int, int]:
    """Return when operations are due: each its own, or the last of a part that has a date."""
    by_part = one.get("due_minutes") or {}
    if not isinstance(by_part, Mapping):
        by_part = dict(enumerate(by_part))
    of_part = {int(part): int(due) for part, due in by_part.items() if due is not None}
    last = {x["part"]: x["id"] for x in one["operations"]}
    own = {x["id"]: int(x["due_minutes"]) for x in one["operations"] if x.get("due_minutes")}
    return {last[part]: due for part, due in of_part.items()} | own


# What the seeded shops are drawn from; invented.
HOURS = "Mon-Fri 18:00-21:00, Sat 09:00-17:00"
RULES: dict[str, Any] = {
    "shop_hours": HOURS,
    "rack_places": 10,
    "setup_minutes": 15,
    "cleanup_minutes": 15,
    "pot_life_minutes": 240,
    "abrade_minutes": 15,
}


def made(parts: int, seed: int, *, due: bool = False) -> dict[str, Any]:
    """Draw an instance of so many parts; the same seed, the same shop."""
    draw = random.Random(f"{parts} {seed}")
    dry = {
        "stain": 60 * draw.choice((2, 4, 6, 8)),
        "seal": 60 * draw.choice((2, 3, 4, 6)),
        "C": (60 * draw.choice((4, 6, 8)), 60 * draw.choice((12, 16))),
        "D": (60 * draw.choice((12, 16)), 60 * draw.choice((20, 24))),
    }
    window = {
        "stain": DAY * draw.choice((2, 3)),
        "C": DAY * draw.choice((1, 2)),
        "D": DAY * draw.choice((2, 3)),
    }
    operations: list[dict[str, Any]] = []
    rubbed: list[int] = []
    for part in range(parts):
        operations += _part(draw, part, len(operations), dry, window)
        rubbed.append(operations[-1]["id"])
        if len(rubbed) == 4 or part == parts - 1:
            glue = _operation(len(operations), part, "glue", 30, None)
            glue["after"] = [{"op": op, "min_lag_minutes": 0} for op in rubbed]
            operations.append(glue)
            rubbed = []
    one: dict[str, Any] = {"name": f"{parts}-{seed}", "parts": parts, "operations": operations}
    if due:
        one["due_minutes"] = _dates(draw, operations)
    return one


def _part(
    draw: random.Random, part: int, first: int, dry: Mapping[str, Any], window: Mapping[str, int]
) -> Iterator[dict[str, Any]]:
    """Yield sand, stain, seal, abrade, two topcoats, rub out."""

    def grid(low: int, high: int) -> int:
        return draw.randrange(low, high + 1, 5)

    top = "C" if draw.random() < 0.6 else "D"
    between, last = dry[top]
    chain = (
        ("sand", grid(20, 45), None, 0, 0, None),
        ("stain", grid(10, 20), "A", 0, dry["stain"], None),
        ("seal", grid(5, 15), "B", dry["stain"], dry["seal"], window["stain"]),
        ("abrade", grid(5, 15), None, dry["seal"], 0, None),
        ("top1", grid(5, 15), top, 0, between, None),
        ("top2", grid(5, 15), top, between, last, window[top]),
        ("rub", grid(15, 30), None, last, 0, None),
    )
    released = DAY * draw.choice((1, 2, 3, 5)) if draw.random() < 0.3 else 0
    for n, (kind, minutes, product, lag, held, closes) in enumerate(chain):
        each = _operation(first + n, part, kind, minutes, product)
        each["rack_minutes"] = held
        if n == 0:
            each["not_before_minutes"] = released
        else:
            each["after"] = [{"op": first + n - 1, "min_lag_minutes": lag}]
        if closes is not None:
            each["window"] = {"op": first + n - 1, "max_lag_minutes": closes}
        yield each


def _operation(id_: int, part: int, kind: str, minutes: int, product: str | None) -> dict[str, Any]:
    return {
        "id": id_,
        "part": part,
        "kind": kind,
        "minutes": minutes,
        "product": product,
        "after": [],
        "window": None,
        "rack_minutes": 0,
        "not_before_minutes": 0,
    }


def _dates(draw: random.Random, operations: Sequence[Instance]) -> dict[int, int]:
    """Draw a date for half of the assemblies, by which some can be glued up and some cannot."""
    glued = [x["part"] for x in operations if x["kind"] == "glue"]
    hands = sum(x["minutes"] for x in operations)
    # 1380 minutes of shop a week, a third of them set-up and clean-up.
    weeks = 1 + hands / 900
    return {
        part: DAY * (7 + draw.randrange(max(1, int(7 * weeks)))) + 21 * 60
        for part in glued
        if draw.random() < 0.5
    }
