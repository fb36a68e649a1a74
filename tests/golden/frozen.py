"""One command in the invented shop, as a pipe gets it and as a terminal shows it.

The terminal is one in name: a text that says it is a terminal, so that a hundred screens are
quick. That it shows what a real one shows is tested on a few.
"""

from __future__ import annotations

import atexit
import contextlib
import io
import re
import shlex
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest import mock

from run import Finishlog, Terminal, furnished, on_screen
from test_json_contract import ALSO, BEFORE, CABINET, CONTRACT, LOGGER

from finishlog.cli.answering import answer as answering
from finishlog.cli.app import GROUPS, run
from finishlog.cli.terminal import at_a_terminal as terminal
from finishlog.cli.terminal.page import Page

SCREENS = Path(__file__).with_name("screens")
COLUMNS = 80
WIDE = 120
DEMO = "--db demo.db demo"
SECOND = "--db second.db demo --second"
# What is asked in the shop that the demo leaves behind.
AFTER_THE_DEMO = (
    "ready -v",
    "when cabinet/drawer stools/seats stools/stool",
    "why stools/seats",
    "on cabinet/doors stools/stool",
    "leave",
    "rags",
    "plan",
    "past cherry",
    "past maple",
    "part show seats stool",
    "handover chest --card",
)
# What else a person types of an evening, and what has to be there first.
MORE = {
    "ready --for 90min": (),
    "log seat oil": (),
    "log case topcoat --at 'yesterday 19:30'": (),
    "check seat tacky": (),
    "rags stiff": ("rags spread",),
    "rags gone": (),
    "fault case mended": ("fault case run",),
    "move leg attic": ("room new attic",),
    "undo": ("log case topcoat",),
    "history": ("undo 21", "amend 19 --at '3h ago'"),
    "history --act 19": ("amend 19 --at '3h ago'",),
    "class show hardwax-oil": (),
    "species show oak": (),
}
# A picture lies where it lies; no path of the machine that runs this is on a screen.
ELSEWHERE = {
    str(CABINET): CABINET.name,
    str(LOGGER): LOGGER.name,
    " case.jpg": " /photos/case.jpg",
}

# A row at a terminal has one tone or none, from its first sign to its last.
TONED = re.compile(r"\x1b\[([0-9;]+)m(.*)\x1b\[0m")
TONES = {"1": "bold", "1;31": "bold red", "32": "green", "2": "dim"}


_FOLDER = TemporaryDirectory()
atexit.register(_FOLDER.cleanup)


@dataclass(frozen=True)
class Seen:
    """What one command said: in a pipe, beside it on stderr, and at terminals."""

    line: str
    code: int
    pipe: str
    beside: str
    screen: str
    without_colour: str
    wide: str


@cache
def lines() -> tuple[str, ...]:
    """List what is typed: a line for every command, and what else a person types."""
    found = [f"{name} {line}".strip() for name, (line, _) in (CONTRACT | ALSO).items()]
    for mine, shown in ELSEWHERE.items():
        found = [line.replace(mine, shown) for line in found]
    return tuple(dict.fromkeys([*found, *MORE]))


def group_of(line: str) -> str:
    """Name the file of a line: its command where that has commands below it, else its heading."""
    first = line.split(maxsplit=1)[0]
    heading = next(heading for heading, names in GROUPS.items() if first in names)
    below = any(name.startswith(f"{first} ") for name in CONTRACT)
    return first if below else heading.removeprefix("the ")


@cache
def seen(line: str) -> Seen:
    """Type a line into a pipe; what it shows is laid out for terminals, too."""
    with _bench() as folder:
        shop = furnished(folder)
        for file in (CABINET, LOGGER):
            Path(file.name).write_bytes(file.read_bytes())
        for before in _before(line):
            shop.did(*shlex.split(before))
        return _seen(shop, line)


@cache
def seen_after_the_demo(line: str) -> Seen:
    """Ask in the shop that the demo leaves."""
    _, left = the_demo()
    with _bench() as folder:
        shop = Finishlog(folder)
        shop.database.write_bytes(left)
        return _seen(shop, line)


@cache
def the_demo(line: str = DEMO) -> tuple[str, bytes]:
    """Run the demo once at a terminal; return what it showed, and the database it left."""
    with _bench() as folder:
        code, screen = _at_a_terminal(Finishlog(folder), line)
        assert code == 0, screen
        return screen, Path(line.split()[1]).read_bytes()


@contextlib.contextmanager
def _bench() -> Iterator[Path]:
    """Work in the one folder of these screens."""
    with contextlib.chdir(_FOLDER.name):
        yield Path(_FOLDER.name)


def _before(line: str) -> tuple[str, ...]:
    """Find what has to be there first for a command."""
    if line in MORE:
        return MORE[line]
    fits = [name for name in BEFORE if f"{line} ".startswith(f"{name} ")]
    return BEFORE[max(fits, key=len)] if fits else ()


def _seen(shop: Finishlog, line: str) -> Seen:
    shop.environment = {"FINISHLOG_DB": shop.database.name}
    pages: list[Page] = []
    shows = answering.show

    def kept(page: Page) -> None:
        pages.append(page)
        shows(page)

    with mock.patch.object(answering, "show", kept):
        answer = shop(*shlex.split(line))
    return Seen(
        line=line,
        code=answer.code,
        pipe=answer.out,
        beside=answer.err,
        screen=_rendered(shop, pages, COLUMNS),
        without_colour=_rendered(shop, pages, COLUMNS, NO_COLOR="1"),
        wide=_rendered(shop, pages, WIDE),
    )


def _at_a_terminal(shop: Finishlog, line: str) -> tuple[int, str]:
    """Run a command at a terminal with nobody at the keys."""
    with (
        on_screen(shop, Terminal(), COLUMNS) as screen,
        mock.patch.object(sys, "stdin", io.StringIO()),
        contextlib.redirect_stderr(io.StringIO()),
        shop.kept_open.serves(),
    ):
        code = run(shlex.split(line))
    return code, screen.getvalue()


def _rendered(shop: Finishlog, pages: list[Page], columns: int, **more: str) -> str:
    with on_screen(shop, Terminal(), columns, **more) as screen:
        for page in pages:
            terminal.show_at_terminal(page)
    return screen.getvalue()


def frozen(asked: Seen) -> str:
    """Write a command down: the pipe's lines, then the screen where it differs, tones named."""
    said = [f"$ finishlog {asked.line}", *asked.pipe.splitlines()]
    said += [f"! {line}" for line in asked.beside.splitlines()]
    said += [f"exit {asked.code}"] if asked.code else []
    screen = on_paper(asked.screen)
    same = screen == asked.pipe.splitlines()
    said += ["-- at a terminal: the same"] if same else ["-- at a terminal", *screen]
    return "\n".join(said) + "\n"


def on_paper(screen: str) -> list[str]:
    """Name the tone of each row at its end, where it moves nothing."""
    return [_named(line) for line in screen.splitlines()]


def _named(line: str) -> str:
    toned = TONED.fullmatch(line)
    shown = f"{toned[2]}  <{TONES[toned[1]]}>" if toned else line
    assert "\x1b" not in shown, f"a tone in the middle of a row: {line!r}"
    return shown
