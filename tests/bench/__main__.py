"""Measure a start of the program against the least it could be: `python -m tests.bench [--full]`.

Prints ratios of medians, the runs of all cases interleaved, so that a busy machine spoils them
alike. Nothing is asserted: figures to hold stand beside what was measured.
"""

from __future__ import annotations

import os
import resource
import shutil
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Mapping
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

RUNS = 9
NOW = "2026-11-24T21:05:00+00:00"
PROGRAM = (sys.executable, "-m", "finishlog")

# The least that `ready` could be: the same imports, the file opened, one line printed.
FLOOR = """
import os, sys
import typer
import finishlog.cli.app
import finishlog.asks.ready
import finishlog.cli.ready_page
import finishlog.facts.load
from pathlib import Path
from datetime import UTC, datetime
from finishlog.store.database import open_database
database = open_database(Path(os.environ["FINISHLOG_DB"]), datetime.now(UTC))
with database.reading() as connection:
    print(connection.exec_driver_sql("SELECT count(*) FROM act").scalar())
"""


@dataclass(frozen=True)
class Case:
    """A command line to time, on which database."""

    name: str
    words: tuple[str, ...]
    database: Path


@dataclass(frozen=True)
class Measured:
    """Median wall seconds and peak memory (MB) of a case."""

    seconds: float
    memory_mb: float


def main() -> None:
    """Build the shops, time the cases, print the table."""
    behind = "TEN_YEARS" if "--full" in sys.argv else "A_FIFTH"
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        young, old, demo = folder / "young.db", folder / "old.db", folder / "demo.db"
        _build(young, "None")
        _build(old, f"shop.{behind}")
        print(f"40 open parts; history: {_scale(old)}; median of {RUNS} interleaved runs")
        _demo(demo)
        read = folder / "read.db"
        shutil.copy(demo, read)
        _child(f"shop.read_by_a_logger(Path({str(read)!r}))")
        measured = measure(_cases(young, old, demo, read))
    _print(measured)


def _build(path: Path, behind: str) -> None:
    """Build a shop in another process."""
    _child(f"shop.build(Path({str(path)!r}), {behind})")


def _child(doing: str) -> None:
    """Do something in another process: a child's peak memory counts what it was forked from."""
    code = f"from pathlib import Path; from tests.bench import shop; {doing}"
    subprocess.run([sys.executable, "-c", code], check=True)


def _demo(path: Path) -> None:
    """Build the invented shop of `finishlog demo`."""
    subprocess.run(
        [*PROGRAM, "--db", str(path), "demo"],
        env={**os.environ, "FINISHLOG_NOW": NOW, "FINISHLOG_ZONE": "UTC"},
        stdout=subprocess.DEVNULL,
        check=True,
    )


def _scale(path: Path) -> str:
    """Say how much lies behind the open parts."""
    with closing(sqlite3.connect(path)) as connection:
        archived = "SELECT count(*) FROM {} WHERE archived_at IS NOT NULL"
        projects = connection.execute(archived.format("project")).fetchone()[0]
        parts = connection.execute(archived.format("part")).fetchone()[0]
        coats = connection.execute("SELECT count(*) FROM coat").fetchone()[0]
    return f"{projects} projects, {parts} parts, {coats} coats"


def _cases(young: Path, old: Path, demo: Path, read: Path) -> tuple[Case, ...]:
    log = ("log", "piece0/part0", "topcoat")
    complete = ("--complete", "bash", "finishlog log piece0/", ":=@")
    return (
        Case("floor", (sys.executable, "-c", FLOOR), young),
        Case("version", (*PROGRAM, "--version"), young),
        Case("completion", (*PROGRAM, *complete), young),
        Case("completion, ten years", (*PROGRAM, *complete), old),
        Case("floor, demo", (sys.executable, "-c", FLOOR), demo),
        Case("ready, demo", (*PROGRAM, "ready"), demo),
        Case("ready, demo, logger", (*PROGRAM, "ready"), read),
        Case("ready", (*PROGRAM, "ready"), young),
        Case("ready, ten years", (*PROGRAM, "ready"), old),
        Case("log", (*PROGRAM, *log), young),
        Case("log, ten years", (*PROGRAM, *log), old),
        Case("history of a part", (*PROGRAM, "history", "piece0/part0"), old),
        Case("past", (*PROGRAM, "past", "ash"), old),
    )


def measure(cases: tuple[Case, ...]) -> Mapping[str, Measured]:
    """Run every case in turn, again and again; the first round only warms the disk."""
    seconds: dict[str, list[float]] = {case.name: [] for case in cases}
    memory: dict[str, float] = {}
    for turn in range(RUNS + 1):
        for case in cases:
            took, peak = _run(case)
            memory[case.name] = max(peak, memory.get(case.name, 0))
            if turn:
                seconds[case.name].append(took)
        _progress(turn)
    return {
        case.name: Measured(statistics.median(seconds[case.name]), memory[case.name])
        for case in cases
    }


def _run(case: Case) -> tuple[float, float]:
    """Run one command in a process of its own; return wall seconds and peak memory in MB."""
    before = time.perf_counter()
    with subprocess.Popen(
        case.words,
        env={
            **os.environ,
            "FINISHLOG_DB": str(case.database),
            "FINISHLOG_NOW": NOW,
            "FINISHLOG_ZONE": "UTC",
        },
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
    ) as program:
        _, status, used = os.wait4(program.pid, 0)
        took = time.perf_counter() - before
        program.returncode = os.waitstatus_to_exitcode(status)
    assert program.returncode == 0, case
    return took, _megabytes(used)


def _megabytes(used: resource.struct_rusage) -> float:
    """Linux counts peak memory in kilobytes, macOS in bytes."""
    return used.ru_maxrss / (1 << 20 if sys.platform == "darwin" else 1 << 10)


def _progress(turn: int) -> None:
    if sys.stderr.isatty():
        print(f"\r{turn} of {RUNS}", end="\n" if turn == RUNS else "", file=sys.stderr)


def _print(measured: Mapping[str, Measured]) -> None:
    floor = measured["floor"].seconds
    for name, each in measured.items():
        print(
            f"  {name:<21} {each.seconds * 1000:6.0f} ms  {each.seconds / floor:5.2f} × floor"
            f"  {each.memory_mb:5.0f} MB"
        )
    ready, old = measured["ready"].seconds, measured["ready, ten years"].seconds
    daily = max(
        each.memory_mb for name, each in measured.items() if name.startswith(("ready", "log"))
    )
    demo = measured["ready, demo"].seconds / measured["floor, demo"].seconds
    print(f"  demo: ready / floor   {demo:5.2f}")
    logger = measured["ready, demo, logger"].seconds / measured["ready, demo"].seconds
    print(f"  with 100,000 readings {logger:5.2f}   to hold: 1.15")
    print(f"  ready / floor         {ready / floor:5.2f}   to hold: 1.25")
    print(f"  ready with / without  {old / ready:5.2f}   to hold: 1.15")
    print(f"  log / floor           {measured['log'].seconds / floor:5.2f}   to hold: 1.35")
    completion = measured["completion"].seconds / measured["version"].seconds
    aged = measured["completion, ten years"].seconds / measured["version"].seconds
    print(f"  completion / version  {completion:5.2f}   to hold: 1.3; ten years: {aged:.2f}")
    print(f"  peak memory, MB       {daily:5.0f}   to hold: 100")


if __name__ == "__main__":
    main()
