"""Compiled shops drawn at random, with everything that a shop can have; invented."""

from __future__ import annotations

import random

from finishlog.core.plan.search.shop import (
    After,
    CompiledShop,
    Held,
    Lag,
    Product,
    Rack,
    Settling,
    Span,
    Task,
    Window,
)

DAY = 24 * 60
QUARTERS = 60 * 96


def any_shop(seed: int) -> CompiledShop:
    """Draw a shop: chains of coats and handwork on few parts; the same seed, the same shop."""
    draw = random.Random(seed)
    products = tuple(
        Product(draw.choice((0, 10, 15)), draw.choice((0, 10, 20)), draw.choice((None, 60, 240)))
        for _ in range(draw.randint(1, 4))
    )
    racks = tuple(draw.randint(2, 6) for _ in range(draw.randint(0, 3)))
    has_dust = draw.random() < 0.5
    tasks: list[Task] = []
    ends: list[int] = []
    for part in range(draw.randint(1, 7)):
        first = len(tasks)
        for n in range(draw.randint(1, 6)):
            tasks.append(_task(draw, part, len(tasks), n > 0, products, racks, has_dust))
        ends.append(len(tasks) - 1)
        if first and draw.random() < 0.2:
            joined = tuple(After(e, 0) for e in ends[-3:])
            due = draw.choice((None, draw.randint(2, 20) * DAY))
            tasks.append(Task(30, part, after=joined, due=due, packs=draw.choice((0, 600))))
    return CompiledShop(
        openings=_openings(draw),
        products=products,
        tasks=tuple(tasks),
        racks=racks,
        held=tuple(Held(k, 1, draw.randint(0, 3 * DAY)) for k in range(len(racks))),
        rooms=(Settling(0, draw.random() < 0.5, draw.randint(0, 1200), draw.randint(0, 1500)),)
        if has_dust
        else (),
        vacuum=draw.choice((5, 10)) if has_dust else 0,
        settle=draw.choice((0, 30)) if has_dust else 0,
        patience=draw.choice((None, 60)),
        worth=60,
    )


def _task(
    draw: random.Random,
    part: int,
    number: int,
    follows: bool,
    products: tuple[Product, ...],
    racks: tuple[int, ...],
    has_dust: bool,
) -> Task:
    """Draw a coat or work by hand, behind the task before it."""
    ready = _lag(draw) if follows else 0
    is_coat = draw.random() < 0.65
    after = (After(number - 1, ready),) if follows else ()
    held = [k for k in range(len(racks)) if is_coat and draw.random() < 0.5]
    return Task(
        minutes=draw.randint(1, 9) * 5 if is_coat else draw.randint(1, 60),
        part=part,
        product=draw.randrange(len(products)) if is_coat else None,
        after=after,
        window=_window(draw, number, ready, has_dust) if is_coat and draw.random() < 0.6 else None,
        racks=tuple(Rack(k, draw.randint(1, 2), _lag(draw)) for k in held),
        not_before=draw.choice((0, 0, draw.randint(0, 4 * DAY))),
        blocked=_blocks(draw),
        is_show=is_coat and draw.random() < 0.5,
        room=draw.randint(0, 1) if has_dust else 0,
        is_dusty=has_dust and not is_coat and draw.random() < 0.7,
        wet_until=_lag(draw) if has_dust and is_coat else 0,
    )


def _window(draw: random.Random, number: int, ready: Lag, has_dust: bool) -> Window:
    """Draw a window on what the task before left, or on what lies there already."""
    dusty = has_dust and draw.random() < 0.5
    if number == 0 or draw.random() < 0.2:
        return Window(None, draw.randint(0, 3 * DAY), draw.randint(0, 3 * DAY), 15, dusty)
    closes = draw.randint(12, 96) * 60
    if draw.random() < 0.4:
        return Window(number - 1, _table(draw, closes), ready, 15, dusty)
    return Window(number - 1, closes, ready, 15, dusty)


def _lag(draw: random.Random) -> Lag:
    """Draw a lag that never changes, or one that is longer by night."""
    minutes = draw.choice((0, 0, 120, 360, 960, draw.randint(1, 1800)))
    return _table(draw, minutes) if draw.random() < 0.3 else minutes


def _table(draw: random.Random, minutes: int) -> tuple[int, ...]:
    """Return when something is reached from each quarter hour: later is never sooner."""
    slow, found, last = draw.randint(0, 240), [], 0
    for quarter in range(QUARTERS):
        night = slow if quarter % 96 < 32 else 0
        last = max(last, quarter * 15 + minutes + night)
        found.append(last)
    return tuple(found)


def _blocks(draw: random.Random) -> tuple[Span, ...]:
    """Draw spans that are too cold, damp or loud for it."""
    if draw.random() < 0.7:
        return ()
    first = draw.randint(0, 3 * DAY)
    return ((first, first + 700), (first + DAY, first + DAY + draw.randint(1, 900)))


def _openings(draw: random.Random) -> tuple[Span, ...]:
    """Draw evenings and Saturdays; now and then a day is left out."""
    found = []
    for day in range(60):
        if day % 7 == 6 or draw.random() < 0.1:
            continue
        first, length = (9 * 60, 8 * 60) if day % 7 == 5 else (18 * 60, draw.randint(100, 200))
        found.append((day * DAY + first, day * DAY + first + length))
    return tuple(found)
