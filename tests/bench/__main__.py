"""Measure a start of the program against the least it could be: `python -m tests.bench`.

`python -m tests.bench --plans FILE [--out FILE]` plans the shops of a file instead (`plans.py`),
`--spike` holds the shop that is compiled for the search against the bench (`spike.py`).

CPU seconds (user and system), medians of runs that take turns, so that a busy machine spoils all
alike. Nothing is asserted: figures to hold stand beside what was measured.
"""

from __future__ import annotations

import argparse
import os
import resource
import shutil
import sqlite3
import statistics
import subprocess
import sys
import tempfile
from collections import Counter
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path

import finishlog
from tests.bench import plans, spike

HERE = Path(__file__).parent
RUNS = 5
NOW = "2026-11-24T21:05:00+00:00"
FLOOR = (sys.executable, str(HERE / "floor.py"))
STATEMENTS = (sys.executable, str(HERE / "statements.py"))
PROGRAM = (sys.executable, "-m", "finishlog")
COMPLETE = ("--complete", "bash", "finishlog log piece0/", ":=@")


@dataclass
class Case:
    """Words typed in a shop (none: the floor); CPU seconds of each run, peak memory (MB)."""

    words: tuple[str, ...]
    shop: Path
    taken: list[float] = field(default_factory=list)
    memory_mb: float = 0

    @property
    def asks(self) -> bool:
        """Tell whether it is a command that asks the database."""
        return bool(self.words) and not self.words[0].startswith("-")

    @property
    def logs(self) -> bool:
        """Tell whether something is put on record."""
        return self.words[:1] == ("log",)

    @property
    def seconds(self) -> float:
        return statistics.median(self.taken)


def main() -> None:
    """Do what is asked for."""
    asked = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    asked.add_argument("--plans", type=Path, metavar="FILE", help="plan the shops of a file")
    asked.add_argument("--out", type=Path, metavar="FILE", help="write the plans there")
    asked.add_argument("--spike", action="store_true", help="hold the compile step to the bench")
    words = asked.parse_args()
    if words.spike:
        spike.main()
    elif words.plans is not None:
        plans.run(words.plans, words.out)
    else:
        measure()


def measure() -> None:
    """Build the shops, measure, print."""
    with tempfile.TemporaryDirectory() as name:
        bench = Bench(Path(name))
        cases = bench.cases()
        counted = {name: bench.statements(case) for name, case in cases.items() if case.asks}
        print(f"medians of {RUNS} runs, CPU")
        bench.measure(cases)
    _print(cases, counted)
    _print_lines()


class Bench:
    """A folder of shops, and what runs in them: each in a process of its own."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def cases(self) -> dict[str, Case]:
        """Build the shops and say what is measured in which."""
        young, old, demo, read = (
            self._folder / f"{n}.db" for n in ("young", "old", "demo", "read")
        )
        self._build(f"build({str(young)!r})")
        self._build(f"build({str(old)!r}, ten_years=True)")
        self._run((*PROGRAM, "--db", str(demo), "demo"), demo)
        shutil.copy(demo, read)
        self._build(f"read_by_a_logger({str(read)!r})")
        print(f"40 open parts; behind them in ten years: {_scale(old)}")
        log = ("log", "piece0/part0", "topcoat")
        return {
            "floor": Case((), young),
            "--version": Case(("--version",), young),
            "completion": Case(COMPLETE, young),
            "completion, ten years": Case(COMPLETE, old),
            "ready, demo": Case(("ready",), demo),
            "ready, demo, logger": Case(("ready",), read),
            "ready": Case(("ready",), young),
            "ready, ten years": Case(("ready",), old),
            "log, demo": Case(("log", "cabinet/drawer", "topcoat"), demo),
            "log": Case(log, young),
            "log, ten years": Case(log, old),
            "history, ten years": Case(("history", "piece0/part0"), old),
            "past, ten years": Case(("past", "ash"), old),
        }

    def measure(self, cases: dict[str, Case]) -> None:
        """Run every case in turn, again and again; the first round only warms the disk."""
        for turn in range(RUNS + 1):
            for case in cases.values():
                command = (*PROGRAM, *case.words) if case.words else FLOOR
                used = self._run(command, self._as_it_was(case))
                case.memory_mb = max(case.memory_mb, _megabytes(used))
                if turn:
                    case.taken.append(used.ru_utime + used.ru_stime)

    def statements(self, case: Case) -> int:
        """Count the statements that SQLite runs for a command."""
        done = subprocess.run(
            [*STATEMENTS, *case.words],
            env=self._environment(self._as_it_was(case)),
            stdin=subprocess.DEVNULL,
            capture_output=True,
            text=True,
            check=True,
        )
        return int(done.stderr.splitlines()[-1])

    def _build(self, call: str) -> None:
        """Build elsewhere: a child's peak memory counts what it was forked from."""
        subprocess.run(
            [sys.executable, "-c", f"from tests.bench import shop; shop.{call}"], check=True
        )

    def _run(self, command: tuple[str, ...], shop: Path) -> resource.struct_rusage:
        with subprocess.Popen(
            command,
            env=self._environment(shop),
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        ) as program:
            _, status, used = os.wait4(program.pid, 0)
            program.returncode = os.waitstatus_to_exitcode(status)
        assert program.returncode == 0, command
        return used

    def _environment(self, shop: Path) -> dict[str, str]:
        """Build what a child sees: bytecode as an installed program has it, kept out of here."""
        kept = {name: of for name, of in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
        return {
            **kept,
            "PYTHONPYCACHEPREFIX": str(self._folder / "bytecode"),
            "FINISHLOG_DB": str(shop),
            "FINISHLOG_NOW": NOW,
            "FINISHLOG_ZONE": "UTC",
        }

    def _as_it_was(self, case: Case) -> Path:
        """Hand out the shop; a copy where something is logged, for every run finds it the same."""
        return shutil.copy(case.shop, self._folder / "logged.db") if case.logs else case.shop


def _scale(shop: Path) -> str:
    with closing(sqlite3.connect(shop)) as connection:
        put_away = "SELECT count(*) FROM {} WHERE archived_at IS NOT NULL"
        projects = connection.execute(put_away.format("project")).fetchone()[0]
        parts = connection.execute(put_away.format("part")).fetchone()[0]
        coats = connection.execute("SELECT count(*) FROM coat").fetchone()[0]
    return f"{projects} projects, {parts} parts, {coats} coats"


def _megabytes(used: resource.struct_rusage) -> float:
    """Linux counts peak memory in kilobytes, macOS in bytes."""
    return used.ru_maxrss / (1 << 20 if sys.platform == "darwin" else 1 << 10)


def _print(cases: dict[str, Case], counted: dict[str, int]) -> None:
    floor = cases["floor"].seconds
    for name, each in cases.items():
        statements = f"{counted[name]:5} statements" if name in counted else ""
        print(
            f"  {name:<22} {each.seconds * 1000:6.0f} ms  {each.seconds / floor:5.2f} × floor"
            f"  {each.memory_mb:5.0f} MB {statements}"
        )
    for name, of, most in TO_HOLD:
        ratio = cases[name].seconds / cases[of].seconds
        print(f"  {f'{name} / {of}':<42} {ratio:5.2f}   to hold: {most}")
    daily = max(c.memory_mb for name, c in cases.items() if name.startswith(("ready", "log")))
    most = max(n for name, n in counted.items() if name.startswith("log"))
    print(f"  {'statements of a log':<42} {most:5}   to hold: 80")
    print(f"  {'peak memory of ready and log, MB':<42} {daily:5.0f}   to hold: 100")


# What is divided by what, and the most that it may be.
TO_HOLD = (
    ("ready, demo", "floor", 1.8),
    ("ready", "floor", 1.8),
    ("log, demo", "floor", 2.2),
    ("log", "floor", 2.2),
    ("ready, ten years", "ready", 1.15),
    ("ready, demo, logger", "ready, demo", 1.15),
    ("log, ten years", "log", 1.15),
    ("completion", "--version", 1.3),
    ("completion, ten years", "--version", 1.3),
)


def _print_lines() -> None:
    """Count the lines of Python, package by package."""
    package = Path(finishlog.__file__).parent
    lines: Counter[str] = Counter()
    for file in package.rglob("*.py"):
        room = "/".join(file.relative_to(package).parts[:-1][:2]) or "."
        lines[room] += len(file.read_text(encoding="utf-8").splitlines())
    print(f"lines of Python: {lines.total():,}   to hold: 34,000")
    for room, count in sorted(lines.items()):
        print(f"  {room:<22} {count:6,}")


if __name__ == "__main__":
    main()
