"""Random command lines, round after round: each round a shop of its own, and its own draw."""

from __future__ import annotations

import contextlib
import json
import os
import shlex
import shutil
import signal
import sqlite3
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cache
from pathlib import Path
from random import Random
from types import FrameType
from typing import Any

from typer.main import get_command

from finishlog import errors
from finishlog.cli.app import command_line
from tests.cli.run import NOW, Answer, Finishlog, furnished
from tests.fuzz.words import harmed, meant, row

LINES_A_ROUND = 250
SECONDS_A_LINE = 30
ZONES = ("Europe/London", "America/New_York", "Australia/Lord_Howe", "Pacific/Apia", "UTC")
ALLOWED = {
    *(0, errors.ANSWER_IS_BAD, errors.USAGE, errors.NO_SUCH_THING, errors.BAD_DATA),
    *(errors.DATABASE, errors.NOT_WRITTEN),
}
# What the invented shop wants besides, so that most lines find what they name.
BESIDES = (
    "product new shellac --class shellac-2lb",
    "product new wax --class paste-wax",
    "product new poly --class oil-polyurethane",
    "product new lacquer --class lacquer-postcatalysed",
    "can new tin --product oil --opened 2024-01-01",
    "can new jar-1 --product sealer --amount 250ml",
    "mix lacquer base:1L hardener:100ml --name mixed",
    "room new barn --night -3C",
    "room new yard",
    "steps new bright sand poly*3 wax",
    "part new desk/lid --species padauk --steps bright --room barn",
    "part new desk/top --species oak --face back:hidden --face front=left,right --steps bright",
    "shop hours 'mon-sun 8:00-22:00'",
)
CONTROLS = {*map(chr, range(32)), *map(chr, range(0x7F, 0xA0))} - {"\n"}
DIRECTIONS = {*"\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"}


class TooLong(BaseException):
    """A command did not end in time; no handler of ordinary exceptions swallows it."""


@dataclass(frozen=True)
class Find:
    """What is wrong, where: a round of a seed and a line in it, and how it was typed."""

    wrong: str
    where: str
    words: tuple[str, ...]

    def __str__(self) -> str:
        return f"{self.wrong}\n    {self.where}: finishlog {' '.join(map(ascii, self.words))}"


def play(seed: int, round_: int, lines: int = LINES_A_ROUND) -> Iterator[Find]:
    """Play one round, the same for the same seed; yield what goes wrong.

    A round has its shop, its files and its clock, which mostly goes on and now and then back.
    """
    draw = Random(f"{seed}/{round_}")
    with tempfile.TemporaryDirectory() as name, _in_folder(Path(name)) as folder:
        shop = furnished(folder)
        _put_files(folder)
        for line in BESIDES:
            shop.did(*shlex.split(line))
        shop.environment["FINISHLOG_ZONE"] = draw.choice(ZONES)
        now = datetime.fromisoformat(NOW)
        for line in range(lines):
            now += timedelta(minutes=draw.choice((1, 5, 45, 600, 3000, -30, -5000)))
            words = line_of(draw)
            for wrong in _play_line(shop, words, now):
                yield Find(wrong, f"seed {seed}, round {round_}, line {line}", words)
        with contextlib.closing(sqlite3.connect(shop.database)) as kept:
            if kept.execute("PRAGMA integrity_check").fetchall() != [("ok",)]:
                yield Find("the database is damaged", f"seed {seed}, round {round_}", ())


def line_of(draw: Random) -> tuple[str, ...]:
    """Draw one command line: a command, words for it, and some of its options.

    Most lines are meant well, some have a spoilt word, a few are hostile throughout.
    """
    name, command = draw.choice(_commands())
    harm = draw.choice((0.0, 0.0, 0.0, 0.15, 0.5))
    words: list[str] = []
    for parameter in command.params:
        if parameter.param_type_name == "argument":
            said = [meant(draw, name, parameter.name)]
            words += row(draw, name, parameter.name) if parameter.nargs == -1 else said
        elif parameter.required or draw.random() < _likely(parameter):
            words.append(parameter.opts[0])
            if not parameter.is_flag:
                words.append(_of_option(draw, name, parameter))
    return (*name.split(), *(harmed(draw, word, harm) for word in words))


def _likely(option: Any) -> float:
    return {"help": 0.02, "json": 0.3, "at": 0.3}.get(option.name, 0.15)


def _of_option(draw: Random, command: str, option: Any) -> str:
    choices = getattr(option.type, "choices", None)
    if choices:
        chosen = draw.choice(list(choices))
        return str(getattr(chosen, "value", chosen))
    return meant(draw, command, option.name)


@cache
def _commands() -> tuple[tuple[str, Any], ...]:
    """Find every command by its name, `steps new` among them."""

    def walk(name: str, command: Any) -> Iterator[tuple[str, Any]]:
        below = getattr(command, "commands", {})
        for word, each in below.items():
            yield from walk(f"{name} {word}".strip(), each)
        # The demo plays an evening of its own and tells nothing new about a line.
        if not below and name != "demo":
            yield name, command

    return tuple(walk("", get_command(command_line())))


def _play_line(shop: Finishlog, words: tuple[str, ...], now: datetime) -> Iterator[str]:
    try:
        with _in_time():
            answer = shop(*words, now=now.isoformat())
    except TooLong:
        yield f"not ended after {SECONDS_A_LINE} s"
        return
    yield from wrong_with(answer, as_json="--json" in words)


def wrong_with(answer: Answer, *, as_json: bool) -> Iterator[str]:
    """Say what no answer may be: a fault of ours, a traceback, a sign that acts on a terminal."""
    told = answer.out + answer.err
    if answer.code not in ALLOWED:
        yield f"exit {answer.code}: {answer.err.strip()}"
    if "Traceback" in told:
        yield "a traceback"
    if answer.code > errors.ANSWER_IS_BAD and not answer.err.startswith("finishlog: "):
        yield f"exit {answer.code} without a line that says why: {answer.err!r}"
    found = {*told} & (CONTROLS if as_json else CONTROLS | DIRECTIONS)
    if found:
        yield f"signs that act on a terminal: {sorted(map(ascii, found))}"
    if as_json and answer.code == 0 and answer.out.startswith("{"):
        try:
            json.loads(answer.out)
        except ValueError as fault:
            yield f"no JSON document: {fault}"


@contextlib.contextmanager
def _in_time() -> Iterator[None]:
    def end(number: int, frame: FrameType | None) -> None:
        raise TooLong

    before = signal.signal(signal.SIGALRM, end)
    signal.setitimer(signal.ITIMER_REAL, SECONDS_A_LINE)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)


@contextlib.contextmanager
def _in_folder(folder: Path) -> Iterator[Path]:
    before = Path.cwd()
    os.chdir(folder)
    try:
        yield folder
    finally:
        os.chdir(before)


def _put_files(folder: Path) -> None:
    here = Path(__file__).parent.parent
    shutil.copy(here / "cli" / "air" / "logger.csv", folder)
    (folder / "project.toml").write_text('[project]\nname = "desk"\n[[part]]\nname = "lid"\n')
    (folder / "deep.toml").write_text("a = " + "[" * 5000 + "]" * 5000)
    (folder / "noise.bin").write_bytes(bytes(Random(0).randbytes(4000)))
    os.mkfifo(folder / "pipe")
