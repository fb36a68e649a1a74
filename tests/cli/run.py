"""Run finishlog as a person does: in a process of its own, or, for many cases, in this one."""

from __future__ import annotations

import contextlib
import io
import json
import multiprocessing
import os
import re
import shlex
import signal
import subprocess
import sys
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryFile
from typing import Any, Self
from unittest import mock
from weakref import finalize

from finishlog.__main__ import main, run
from tests.kept_open import KeptOpen
from tests.once import made_once

NOW = "2026-11-24T21:05:00+00:00"
ZONE = "Europe/London"
PROGRAM = (sys.executable, "-m", "finishlog")

# What a terminal, a shell or a build service may have set; every test says what it wants.
NOT_INHERITED = (
    "COLUMNS", "LINES", "NO_COLOR", "FORCE_COLOR", "CLICOLOR_FORCE", "TTY_COMPATIBLE",
    "TTY_INTERACTIVE", "TERM", "COLORTERM", "GITHUB_ACTIONS", "PY_COLORS", "TERMINAL_WIDTH",
    "FINISHLOG_DB", "FINISHLOG_NOW", "FINISHLOG_ZONE", "XDG_DATA_HOME", "TZ",
    "PYTHONUNBUFFERED",
)  # fmt: skip

_TONE = re.compile(r"\x1b\[[0-9;]*m")

# An invented shop, one command a line, each typed at its own time. No figure here is published.
SHOP = """
2026-11-20T18:00 room new finishing --night 13C
2026-11-20T18:00 product new sealer --class shellac-2lb
2026-11-20T18:00 product new topcoat --class waterborne-clear --recoat 3h --window 24h
2026-11-20T18:00 product new oil --class hardwax-oil --recoat 12h
2026-11-20T18:00 steps new clear sand sealer scuff topcoat*3
2026-11-20T18:00 project new cabinet --due "Sat 5 Dec"
2026-11-20T18:00 part new cabinet/case --species ash --steps clear --room finishing
2026-11-20T18:00 part new cabinet/doors -n 2 --species ash --face back:hidden --face front
2026-11-20T18:00 part new cabinet/door-stop --species ash
2026-11-20T18:00 part new stools/seat -n 4 --species cherry --face "all round" --face socket:joint
2026-11-20T18:00 part new stools/leg -n 12 --species cherry
2026-11-20T18:00 part new stools/stool -n 4 --of seat:1 --of leg:3
2026-11-20T18:00 part steps doors door-stop --as clear
2026-11-21T09:00 air 18C 55%
2026-11-21T09:10 log cabinet/case sand --grit P220
2026-11-21T09:30 log cabinet/case sealer
2026-11-21T12:00 log cabinet/case scuff
2026-11-24T18:00 air 17.2C 58%
2026-11-24T18:20 log cabinet/case topcoat
2026-11-24T19:40 log seat oil
2026-11-24T20:50 check case prints
2026-11-24T20:55 note case --outcome -t "even, no runs"
"""


@dataclass(frozen=True)
class Answer:
    """What the program said, where, and how it ended."""

    code: int
    out: str
    err: str

    @property
    def document(self) -> Any:
        """The one JSON document on stdout."""
        return json.loads(self.out)


@dataclass
class Finishlog:
    """One person's finishlog in a folder of its own, at a time that is set."""

    folder: Path
    now: str = NOW
    environment: dict[str, str] = field(default_factory=dict)
    kept_open: KeptOpen = field(default_factory=KeptOpen, repr=False, compare=False)

    def __post_init__(self) -> None:
        finalize(self, self.kept_open.close)

    @property
    def database(self) -> Path:
        return self.folder / "shop.db"

    def variables(self, more: Mapping[str, str | None] | None = None) -> dict[str, str]:
        """Build the environment that the program sees; None: without that variable."""
        kept = {k: v for k, v in os.environ.items() if k not in NOT_INHERITED}
        wanted = {**kept, **self._own_variables(more)}
        return {name: value for name, value in wanted.items() if value is not None}

    def _own_variables(self, more: Mapping[str, str | None] | None) -> dict[str, str | None]:
        return {
            "HOME": str(self.folder),
            "FINISHLOG_DB": str(self.database),
            "FINISHLOG_NOW": self.now,
            "FINISHLOG_ZONE": ZONE,
            "PYTHONUTF8": "1",
            **self.environment,
            **(more or {}),
        }

    def __call__(self, *words: str, now: str | None = None) -> Answer:
        """Run one command in this process: quick, through the same entry."""
        out, err = io.StringIO(), io.StringIO()
        with (
            _environment(self._own_variables({"FINISHLOG_NOW": now} if now else None)),
            mock.patch.object(sys, "stdin", io.StringIO()),
            contextlib.redirect_stdout(out),
            contextlib.redirect_stderr(err),
            made_once(),
            self.kept_open.serves(),
        ):
            code = run(list(words))
        return Answer(code, out.getvalue(), err.getvalue())

    def did(self, *words: str, now: str | None = None) -> Answer:
        """Run a command that must end well."""
        answer = self(*words, now=now)
        assert answer.code == 0, answer
        return answer

    def screen(self, *words: str, now: str | None = None, columns: int = 80) -> list[str]:
        """Run a command that must end well; return the rows that a terminal shows, untoned."""
        shown = Terminal()
        with (
            on_screen(
                self, shown, columns, NO_COLOR="1", **({"FINISHLOG_NOW": now} if now else {})
            ),
            mock.patch.object(sys, "stdin", io.StringIO()),
            contextlib.redirect_stderr(io.StringIO()) as err,
            made_once(),
            self.kept_open.serves(),
        ):
            code = run(list(words))
        assert code == 0, (words, shown.getvalue(), err.getvalue())
        return _TONE.sub("", shown.getvalue()).splitlines()

    def played(self, story: str, now: str | None = None) -> Self:
        """Type a story that must end well, a command a line; what was played before is copied.

        `now`: the time of all its lines, or, with `{}` in it, what is made a time by the first
        word of each. For what is recorded only: neither answers nor other files are kept.
        """
        now = now or self.now
        before = self.database.read_bytes() if self.database.exists() else b""
        key = (sha256(before).digest(), story, now, *sorted(self.environment.items()))
        if key not in _PLAYED:
            for words in filter(None, map(shlex.split, story.splitlines())):
                self.did(*words["{}" in now :], now=now.format(words[0]))
            _PLAYED[key] = self.database.read_bytes()
            return self
        self.kept_open.drop()
        self.database.write_bytes(_PLAYED[key])
        return self

    def apart(self, *words: str, umask: int | None = None, **variables: str | None) -> Answer:
        """Run one command in a process of its own, forked from this warm one, into a pipe."""
        reading, writing = os.pipe()
        with open(os.devnull) as nobody, TemporaryFile() as beside, open(reading, "rb") as pipe:
            streams = (nobody.fileno(), writing, beside.fileno())
            child = multiprocessing.get_context("fork").Process(
                target=become, args=(words, None, self.variables(variables), self.folder, streams)
            )
            before = os.umask(umask) if umask is not None else None
            child.start()
            if before is not None:
                os.umask(before)
            os.close(writing)
            out = pipe.read().decode()
            child.join(60)
            assert child.exitcode is not None
            beside.seek(0)
            return Answer(child.exitcode, out, beside.read().decode())

    def process(self, *words: str, **variables: str) -> Answer:
        """Run one command in a process that was started, with nobody at its stdin.

        For what only a start shows: it takes as long as thirty commands.
        """
        done = subprocess.run(
            [*PROGRAM, *words],
            env=self.variables(variables),
            cwd=self.folder,
            stdin=subprocess.DEVNULL,
            capture_output=True,
            text=True,
            timeout=60,
            check=False,
        )
        return Answer(done.returncode, done.stdout, done.stderr)


class Terminal(io.StringIO):
    """A text that says it is a terminal."""

    encoding = "utf-8"

    def isatty(self) -> bool:
        return True


@contextlib.contextmanager
def on_screen(
    program: Finishlog, screen: Terminal, columns: int, **more: str
) -> Iterator[Terminal]:
    """Let this process see a terminal of so many columns in place of stdout."""
    variables = program.variables({"TERM": "xterm-256color", "COLUMNS": str(columns), **more})
    with (
        mock.patch.dict(os.environ, variables, clear=True),
        contextlib.redirect_stdout(screen),
    ):
        yield screen


@contextlib.contextmanager
def _environment(wanted: Mapping[str, str | None]) -> Iterator[None]:
    """Let this process see what a program would; only what differs is changed, and put back."""
    named = {*NOT_INHERITED, *wanted}
    before = {name: os.environ.get(name) for name in named}
    _set(before, {name: wanted.get(name) for name in named})
    try:
        yield
    finally:
        _set({name: os.environ.get(name) for name in named}, before)


def _set(now: Mapping[str, str | None], then: Mapping[str, str | None]) -> None:
    for name, value in then.items():
        if value is None and now[name] is not None:
            del os.environ[name]
        elif value is not None and value != now[name]:
            os.environ[name] = value


_PLAYED: dict[tuple[object, ...], bytes] = {}


def furnished(folder: Path, before: str = "2027") -> Finishlog:
    """Hand out the invented shop as it was before a time, in place of what the folder holds."""
    program = Finishlog(folder)
    program.database.unlink(missing_ok=True)
    lines = [line for line in SHOP.strip().splitlines() if line < before]
    return program.played("\n".join(lines), now="{}:00+00:00")


def become(
    words: Sequence[str],
    run: Sequence[str] | None,
    variables: Mapping[str, str],
    folder: Path,
    streams: Sequence[int],
) -> None:
    """Become the program, or what else is `run`, in a session of its own on these streams."""
    os.setsid()
    for number, stream in enumerate(streams):
        os.dup2(stream, number)
    os.chdir(folder)
    # A shell that runs the tests in the background leaves Ctrl-C ignored.
    signal.signal(signal.SIGINT, signal.default_int_handler)
    if run is not None:
        os.closerange(3, 256)
        signal.signal(signal.SIGINT, signal.SIG_DFL)
        os.execvpe(run[0], [*run, *words], variables)
    os.environ.clear()
    os.environ.update(variables)
    sys.argv = ["finishlog", *words]
    sys.stdin, sys.stdout, sys.stderr = (
        os.fdopen(number, "r" if number == 0 else "w", encoding="utf-8") for number in range(3)
    )
    main()
