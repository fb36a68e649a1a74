"""Every command as a person sees it: frozen, within 80 columns, and whole.

`FINISHLOG_WRITE_GOLDEN=1 pytest tests/golden` writes the screens anew; read the difference.
"""

from __future__ import annotations

import os
import re
import shlex
from pathlib import Path

import pytest
from frozen import (
    AFTER_THE_DEMO,
    COLUMNS,
    DEMO,
    SCREENS,
    SECOND,
    WIDE,
    frozen,
    group_of,
    lines,
    on_paper,
    seen,
    seen_after_the_demo,
    the_demo,
)
from run import furnished
from terminal_session import shown
from test_json_contract import _commands

from tests.rows import every_row

TONE = re.compile(r"\x1b\[[0-9;]*m")
# Bold and dim are no colour; 30-37, 38, 40-47, 48, 90-107 are.
COLOUR = re.compile(r"\x1b\[(?:\d+;)*(?:3[0-8]|4[0-8]|9\d|10[0-7])(?:;\d+)*m")
GROUPS = tuple(dict.fromkeys(group_of(line) for line in lines()))
ASKED = [*((seen, line) for line in lines()), *((seen_after_the_demo, x) for x in AFTER_THE_DEMO)]
every_screen = every_row("asked", ASKED, ids=[f"{ask.__name__}: {line}" for ask, line in ASKED])


def _same_as_kept(name: str, found: str) -> None:
    kept = SCREENS / f"{name}.txt"
    if os.environ.get("FINISHLOG_WRITE_GOLDEN"):
        kept.write_text(found, encoding="utf-8")
    assert found.splitlines() == kept.read_text(encoding="utf-8").splitlines()


@pytest.mark.parametrize("group", GROUPS)
def test_the_screens_are_as_they_were_read(group: str):
    found = [frozen(seen(line)) for line in lines() if group_of(line) == group]
    _same_as_kept(group, "\n".join(found))


def test_the_demo_and_the_shop_it_leaves_are_as_they_were_read():
    screen = "\n".join([f"$ finishlog {DEMO}", "-- at a terminal", *on_paper(the_demo()[0])])
    after = [frozen(seen_after_the_demo(line)) for line in AFTER_THE_DEMO]
    _same_as_kept("demo", "\n".join([screen + "\n", *after]))


def test_the_evening_after_is_as_it_was_read():
    shown = on_paper(the_demo(SECOND)[0])
    screen = "\n".join([f"$ finishlog {SECOND}", "-- at a terminal", *shown])
    _same_as_kept("second_evening", screen + "\n")


def test_no_command_is_missing_and_no_file_is_left_over():
    typed = [" ".join(line.split()[:2]) + " " for line in lines()]
    missing = [c for c in _commands() if not any(t.startswith(f"{c} ") for t in typed)]
    assert missing == ["demo"]
    evenings = ("demo", "second_evening")
    assert sorted(path.stem for path in SCREENS.iterdir()) == sorted([*GROUPS, *evenings])


@every_screen
def test_it_ends_well_and_says_nothing_beside(asked):
    ask, line = asked
    assert (ask(line).code, ask(line).beside) == (0, "")


@every_screen
def test_a_pipe_gets_plain_lines_without_trailing_blanks(asked):
    ask, line = asked
    assert "\x1b" not in ask(line).pipe
    assert [x for x in ask(line).pipe.splitlines() if x != x.rstrip()] == []
    assert ask(line).pipe.endswith("\n")


@every_screen
def test_at_a_terminal_no_line_is_wider_and_no_word_is_lost(asked):
    ask, line = asked
    for screen, columns in ((ask(line).screen, COLUMNS), (ask(line).wide, WIDE)):
        rows = TONE.sub("", screen).splitlines()
        assert [row for row in rows if len(row) > columns] == []
        assert "".join(rows).split() or rows == []
        assert _words(rows) == _words(ask(line).pipe.splitlines())


def _words(rows: list[str]) -> str:
    """Return the signs in their order; wrapping only adds blanks."""
    return "".join("".join(rows).split())


@every_screen
def test_without_colour_the_words_are_the_same(asked):
    ask, line = asked
    assert not COLOUR.search(ask(line).without_colour)
    assert TONE.sub("", ask(line).without_colour) == TONE.sub("", ask(line).screen)


def test_the_demo_fits_the_terminal_too():
    assert [x for x in TONE.sub("", the_demo()[0]).splitlines() if len(x) > COLUMNS] == []


@pytest.mark.parametrize("line", ["ready", "log case topcoat", "class show shellac", "past ash"])
def test_a_real_terminal_shows_the_same(tmp_path: Path, line: str):
    shop = furnished(tmp_path)
    shop.environment = {"FINISHLOG_DB": shop.database.name}
    session = shown(shop, *shlex.split(line))
    assert session.code == 0
    assert session.screen.replace("\r\n", "\n") == seen(line).screen


def test_a_real_pipe_gets_the_same(tmp_path: Path):
    assert furnished(tmp_path).apart("ready", COLUMNS="20").out == seen("ready").pipe
