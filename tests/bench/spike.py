"""What the compile step says of each task against the bench, rule by rule, and what it costs.

`python -m tests.bench --spike`: the demo with opening hours, shops drawn by a number, half of their
parts done; then CPU of one compile at growing sizes, over a start that asks one query.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterable
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from finishlog.asks.look.look import look
from finishlog.clock import Clock
from finishlog.context import Context
from finishlog.core.measure.units import Units
from finishlog.facts.load import load_facts
from finishlog.store.database import open_database
from tests.compiled_plan import Made, Told, laid_out, told_of
from tests.shops_at_random import shop_at_random

NOW = datetime(2026, 11, 24, 21, 5, tzinfo=ZoneInfo("Europe/Berlin"))
OPEN = "mon-fri 18:00-21:30, sat 9:00-17:00"
DRAWN, SIZES = (1, 2, 3, 4), (5, 12, 30, 60, 100)
DICE = range(3)


def main() -> None:
    """Print what disagrees, by rule, and what a compile costs."""
    _held_against_the_bench("demo", the_demo())
    for number in DRAWN:
        _held_against_the_bench(f"30 parts, drawn by {number}", shop_at_random(number, 30))
    floor = _floor()
    for parts in SIZES:
        costs = [_cpu(shop_at_random(number, parts)) for number in DRAWN[:2]]
        each = ", ".join(f"{cpu:.2f} s ({tasks} tasks)" for cpu, tasks in costs)
        mean = sum(cpu for cpu, _ in costs) / len(costs) / floor
        print(f"compile {parts:>3} parts: {each}; {mean:.1f} × floor ({floor:.2f} s)")


def _held_against_the_bench(name: str, made: Made) -> None:
    shop = made.compiled()
    told = [t for dice in DICE for t in told_of(made, shop, laid_out(shop.shop, dice))]
    sooner = [t for t in told if t.against is not None]
    late = [t for t in told if t.is_late]
    share = 100 * len({*map(id, sooner), *map(id, late)}) / max(1, len(told))
    print(f"{name}: {len(told)} tasks begun, {share:.1f} % disagree; {len(shop.left)} left out")
    _print("too soon for", (t.against.because.rule for t in sooner if t.against))
    _print("a quarter hour or more late, held by", (_last(t) for t in late))
    _print("asked once", (found.rule for _, found in shop.once))
    _print("held up on the way by", (rule for t in told for rule in dict.fromkeys(t.by)))


def _last(told: Told) -> str:
    return told.by[-1] if told.by else "nothing"


def _print(what: str, rules: Iterable[str]) -> None:
    counted = Counter(rules).most_common()
    if counted:
        print(f"  {what}: " + ", ".join(f"{rule} {n}" for rule, n in counted))


def _cpu(made: Made) -> tuple[float, int]:
    begun = time.process_time()
    shop = made.compiled()
    return time.process_time() - begun, len(shop.shop.tasks)


def _floor() -> float:
    """Return the CPU seconds of a start that asks one query of an empty shop."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "shop.db"
        open_database(path, NOW)
        child = Path(__file__).parent / "floor.py"
        before = os.times()
        for _ in range(3):
            subprocess.run(
                [sys.executable, str(child)],
                env={**os.environ, "FINISHLOG_DB": str(path)},
                stdout=subprocess.DEVNULL,
                check=True,
            )
        after = os.times()
    used = after.children_user + after.children_system
    return (used - before.children_user - before.children_system) / 3


def the_demo() -> Made:
    """Play the demo and give its shop opening hours."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "demo.db"
        words = {"FINISHLOG_NOW": NOW.isoformat(), "FINISHLOG_ZONE": "Europe/Berlin"}
        for command in (["demo"], ["shop", "hours", OPEN]):
            subprocess.run(
                [sys.executable, "-m", "finishlog", "--db", str(path), *command],
                env={**os.environ, **words},
                stdout=subprocess.DEVNULL,
                check=True,
            )
        clock = Clock(NOW, ZoneInfo("Europe/Berlin"))
        context = Context(open_database(path, NOW), load_facts(), clock, "", Units())
        with context.reading() as connection:
            seen = look(context, connection)
    return Made(
        seen.shop,
        seen.log,
        context.facts,
        clock.now,
        clock.zone,
        seen.paces,
        seen.bench.lessons,
    )
