"""Where an answer goes decides how it looks: plain in a pipe, wrapped and toned at a terminal."""

from __future__ import annotations

import os
import re
import subprocess
from pathlib import Path

import pytest
from run import PROGRAM, Finishlog, furnished
from terminal_session import shown

COLOUR = re.compile(r"\x1b\[[0-9;]*m")
# Bold and dim are no colour; 30-37, 38, 40-47, 48, 90-107 are.
COLOURED = re.compile(r"\x1b\[(?:\d+;)*(?:3[0-8]|4[0-8]|9\d|10[0-7])(?:;\d+)*m")
TYPED = "[bold]x[/bold] [/nope] :smile: ${HOME} %s \\n end"

SCREENS = [
    ["ready"],
    ["ready", "-v"],
    ["why", "case"],
    ["why", "seat"],
    ["when", "case"],
    ["on", "case"],
    ["history"],
    ["past", "ash"],
    ["rags"],
    ["project", "list"],
    ["part", "list"],
    ["part", "show", "seat"],
    ["steps", "list"],
    ["product", "list"],
    ["product", "show", "topcoat"],
    ["room", "list"],
    ["room", "show", "finishing"],
    ["shop", "show"],
    ["species", "list"],
    ["species", "show", "cherry"],
    ["glue", "list"],
    ["glue", "show", "epoxy"],
    ["rules"],
    ["rules", "--table"],
    ["class", "list"],
    ["class", "show", "shellac"],
]


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


@pytest.mark.parametrize("words", SCREENS, ids=" ".join)
def test_a_pipe_gets_plain_lines_whatever_the_terminal_is(shop: Finishlog, words: list[str]):
    answer = shop.did(*words)
    assert "\x1b" not in answer.out
    assert all(line == line.rstrip() for line in answer.out.splitlines())
    shop.environment = {"COLUMNS": "20", "FORCE_COLOR": "1", "TERM": "xterm-256color"}
    assert shop.did(*words).out == answer.out


def test_a_real_pipe_gets_the_same(shop: Finishlog):
    narrow = shop.apart("why", "case", COLUMNS="20", FORCE_COLOR="1", TERM="xterm-256color")
    assert narrow.out == shop.did("why", "case").out
    assert max(map(len, narrow.out.splitlines())) > 80


@pytest.mark.parametrize("words", [["ready", "-v"], ["why", "seat"], ["history"]], ids=" ".join)
@pytest.mark.parametrize("columns", [40, 80])
def test_at_a_terminal_no_line_is_wider_than_it(shop: Finishlog, words: list[str], columns: int):
    session = shown(shop, *words, columns=columns)
    assert session.code == 0
    lines = [COLOUR.sub("", line) for line in session.lines]
    assert max(map(len, lines)) <= columns
    # Nothing is cut off: the words are those of the pipe.
    assert "".join("".join(lines).split()) == "".join(shop.did(*words).out.split())


def test_at_a_terminal_tones_help_and_without_colour_the_words_are_the_same(shop: Finishlog):
    toned = shown(shop, "ready")
    plain = shown(shop, "ready", NO_COLOR="1")
    dumb = shown(shop, "ready", TERM="dumb")
    assert COLOURED.search(toned.screen)
    assert not COLOURED.search(plain.screen)
    assert "\x1b" not in dumb.screen
    assert COLOUR.sub("", toned.screen) == COLOUR.sub("", plain.screen) == dumb.screen


def test_words_of_a_person_are_never_markup(shop: Finishlog):
    shop.did("note", "case", "-t", TYPED)
    assert TYPED in shop.did("past", "ash").out
    session = shown(shop, "past", "ash", columns=120)
    assert TYPED in COLOUR.sub("", session.screen)
    assert TYPED in shown(shop, "note", "seat", "-t", TYPED, columns=120).screen


def test_words_of_a_person_stay_on_their_line_and_give_no_orders(shop: Finishlog):
    shop.did("note", "case", "-t", "red \x1b[31m\x9b2J\a and\r\nBENCH NOW\tcoat")
    pipe = shop.did("past", "ash").out
    screen = shown(shop, "past", "ash", NO_COLOR="1", TERM="dumb").screen
    for said in (pipe, screen.replace("\r\n", "\n")):
        assert not set(said) & {"\x1b", "\x9b", "\a", "\r", "\t"}
        assert not [line for line in said.splitlines() if line.startswith("BENCH NOW")]
    # In the log it is as it was typed.
    notes = shop.did("past", "ash", "--json").document["answer"]["finishes"][0]["notes"]
    assert notes == ["red \x1b[31m\x9b2J\a and\r\nBENCH NOW\tcoat"]


def test_a_closed_pipe_is_quiet(shop: Finishlog):
    """More than a pipe holds, and a reader that leaves after the first line or before it."""
    for number in range(30):
        shop.did("note", "case", "-t", f"{number} " + "long words " * 400)
    for read in (True, False):
        with subprocess.Popen(
            [*PROGRAM, "history"],
            env=shop.variables(),
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
        ) as program:
            assert program.stdout is not None
            assert program.stderr is not None
            if read:
                assert program.stdout.readline()
            program.stdout.close()
            assert program.stderr.read() == b""
        assert program.returncode == 0


def test_a_small_answer_into_a_closed_pipe_is_quiet_too(shop: Finishlog):
    reading, writing = os.pipe()
    os.close(reading)
    done = subprocess.run(
        [*PROGRAM, "shop", "show"],
        env=shop.variables(),
        stdin=subprocess.DEVNULL,
        stdout=writing,
        stderr=subprocess.PIPE,
        check=False,
    )
    os.close(writing)
    assert (done.returncode, done.stderr) == (0, b"")


def test_a_reader_of_the_plainest_encoding_gets_an_answer(shop: Finishlog):
    plain = shop.process("ready", PYTHONUTF8="0", PYTHONIOENCODING="ascii")
    assert plain.code == 0
    assert "finishing" in plain.out
    document = shop.process("ready", "--json", PYTHONUTF8="0", PYTHONIOENCODING="ascii")
    assert document.document["answer"] == shop.did("ready", "--json").document["answer"]


def test_the_answer_is_on_stdout_and_what_is_said_beside_it_on_stderr(tmp_path: Path):
    program = Finishlog(tmp_path)
    first, second = program.apart("room", "new", "shop"), program.apart("ready")
    assert (first.code, second.code) == (0, 0)
    assert first.out == "on record: room shop\n"
    assert "a new, empty database was made" in first.err
    assert "finishlog log stool/seat PRODUCT" in second.out
    assert second.err == ""
