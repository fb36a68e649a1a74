"""Half-typed commands are completed: by the program, and by bash at a real terminal."""

from __future__ import annotations

import shutil
import sqlite3
import sys
from contextlib import closing
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from run import Finishlog, furnished
from terminal_session import TerminalSession

from finishlog import errors
from finishlog.cli.app import MODULES
from finishlog.cli.completion.complete import FILE_WANTED
from finishlog.cli.completion.line import for_bash, taken_apart
from tests.rows import every_row

BREAKS = " \t\n\"'@><=;|&(:"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


def offered(shop: Finishlog, line: str, shell: str = "fish") -> list[str]:
    answer = shop("--complete", shell, line, BREAKS)
    assert (answer.code, answer.err) == (0, "")
    return answer.out.splitlines()


@pytest.mark.parametrize("name", ["finishlog", "fl", "bin/finishlog"])
def test_every_command_is_offered_by_every_name_of_the_program(shop: Finishlog, name: str):
    assert offered(shop, f"{name} ") == list(MODULES)
    assert offered(shop, f"{name} lo") == ["log", "look"]


@every_row(
    ("line", "wanted"),
    [
        ("part sh", ["show"]),
        ("log cabinet/ca", ["cabinet/case"]),
        ("log cabinet/do", ["cabinet/doors", "cabinet/door-stop"]),
        ("log CAB", ["cabinet/case", "cabinet/doors", "cabinet/door-stop"]),
        ("log ca", ["cabinet/case", "cabinet/doors", "cabinet/door-stop", "case"]),
        ("log seat:", ["seat:1", "seat:2", "seat:3", "seat:4"]),
        ("log doors@", ["doors@back", "doors@front"]),
        ("log doors@back,f", ["doors@back,front"]),
        ("log doors top", ["topcoat"]),
        ("log doors sc", ["scuff"]),
        ("log doors --face ", ["back", "front"]),
        ("log doors --method sp", ["spray"]),
        ("log doors --sc", ["--scuffed"]),
        ("when cabinet/ca", ["cabinet/case"]),
        ("check case no-", ["no-print", "no-smell", "no-lead"]),
        ("rags st", ["stiff"]),
        ("fault case fishe", ["fisheye"]),
        ("review case goo", ["good"]),
        ("air 17C 58% --room ", ["finishing"]),
        ("room show ", ["finishing"]),
        ("product show ", ["sealer", "topcoat", "oil"]),
        ("product new new --class waterborne-c", ["waterborne-clear"]),
        ("class show oil-po", ["oil-polyurethane"]),
        ("steps show ", ["clear"]),
        ("steps new oiled o", ["oil"]),
        ("part new cab", ["cabinet/"]),
        ("part new cabinet/x --of le", ["leg:"]),
        ("part new cabinet/x --steps ", ["clear"]),
        ("past che", ["cherry"]),
        ("past ash waterborne-c", ["waterborne-clear"]),
        ("amend 20 --on cabinet/ca", ["cabinet/case"]),
        ("amend 20 --product t", ["topcoat"]),
        # What is new has no name yet, and what is unknown has nothing to offer.
        ("room new ", []),
        ("project new ", []),
        ("frobnicate ", []),
        ("part frobnicate ", []),
        ("log zzz", []),
    ],
)
def test_what_is_offered(shop: Finishlog, line: str, wanted: list[str]):
    assert offered(shop, f"finishlog {line}") == wanted


def test_the_first_word_of_log_is_a_part_and_the_next_may_be_a_product(shop: Finishlog):
    assert "topcoat" not in offered(shop, "finishlog log ")
    assert {"topcoat", "sand", "stools/seat"} <= set(offered(shop, "finishlog log seat "))


def test_another_database_of_the_same_line_is_asked(shop: Finishlog, tmp_path: Path):
    empty = tmp_path / "empty.db"
    assert offered(shop, f"finishlog --db {empty} log ") == []
    assert offered(shop, f"finishlog --db {shop.database} log cabinet/ca") == ["cabinet/case"]
    assert not empty.exists()


def test_where_a_file_is_wanted_the_shell_is_told(shop: Finishlog):
    answer = shop("--complete", "bash", "finishlog --db ", BREAKS)
    assert (answer.code, answer.out, answer.err) == (FILE_WANTED, "", "")


def test_a_name_that_was_put_away_is_not_offered(shop: Finishlog):
    shop.did("part", "archive", "door-stop")
    assert offered(shop, "finishlog log cabinet/do") == ["cabinet/doors"]


@every_row("line", ["", " ", "finishlog", "finishlog 'cab", 'finishlog log "cab', "\\"])
@every_row("shell", ["bash", "zsh", "fish", "frob"])
def test_a_line_that_is_hardly_one_disturbs_nobody(shop: Finishlog, line: str, shell: str):
    answer = shop("--complete", shell, line)
    assert answer.code in {0, FILE_WANTED}
    assert answer.err == ""


def test_a_locked_or_damaged_database_disturbs_nobody(shop: Finishlog):
    with closing(sqlite3.connect(shop.database, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        assert offered(shop, "finishlog log ca") == []
    shop.database.write_bytes(b"a shopping list\n" * 100)
    assert offered(shop, "finishlog log ca") == []
    shop.environment = {"FINISHLOG_DB": "~nobody-of-that-name/shop.db"}
    assert offered(shop, "finishlog log ca") == []
    assert offered(shop, "finishlog lo") == ["log", "look"]


def test_an_open_command_is_never_run_by_a_key_press(shop: Finishlog):
    before = shop.database.read_bytes()
    offered(shop, "finishlog undo ")
    offered(shop, "finishlog log leg oil ")
    offered(shop, "finishlog --completion ba")
    assert shop.database.read_bytes() == before


@given(
    st.lists(st.text("ab '\"\\$@:/-é", max_size=6), max_size=3), st.text("ab '\"\\$é", max_size=6)
)
def test_a_line_is_split_as_a_shell_splits_it(words, word):
    import shlex

    line = shlex.join(["finishlog", *words, word])
    assert taken_apart(line).words == tuple(words)
    assert taken_apart(line).word == word


@given(st.text("ab '\"\\$*;&@:=é", min_size=1, max_size=8))
def test_what_bash_is_given_is_read_back_as_the_name(name):
    import shlex

    [written] = for_bash(taken_apart("finishlog log "), [name], BREAKS)
    assert shlex.split(written) == [name]


def test_bash_is_given_what_follows_the_last_break_in_the_word(shop: Finishlog):
    assert offered(shop, "finishlog log doors@ba", "bash") == ["@back"]
    assert offered(shop, "finishlog log seat:", "bash") == ["1", "2", "3", "4"]
    assert offered(shop, "finishlog log seat@a", "bash") == ["@all\\ round"]
    unbroken = for_bash(taken_apart("finishlog log doors@ba"), ["doors@back"], " \t\n")
    assert unbroken == ["doors@back"]


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_the_script_of_a_shell_is_printed(shop: Finishlog, shell: str):
    answer = shop.process("--completion", shell)
    assert (answer.code, answer.err) == (0, "")
    assert f"--complete {shell}" in answer.out
    assert all(name in answer.out for name in ("finishlog", "fl"))


def test_a_shell_that_we_do_not_know(shop: Finishlog):
    answer = shop("--completion", "tcsh")
    assert answer.code == errors.USAGE
    assert answer.err == "finishlog: no completion for 'tcsh'; type one of: bash, zsh, fish\n"


BASH = shutil.which("bash") or ""


@pytest.fixture
def at_a_bash(shop: Finishlog) -> TerminalSession:
    """Open a bash with the completion turned on, as README says; both names are on the path."""
    folder = shop.folder / "bin"
    folder.mkdir()
    for name in ("finishlog", "fl"):
        program = folder / name
        program.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m finishlog "$@"\n')
        program.chmod(0o755)
    start = shop.folder / "start"
    start.write_text(
        f'PATH="{folder}:$PATH"\nPS1="ready> "\n'
        "bind 'set enable-bracketed-paste off'\nbind 'set bell-style none'\n"
        'eval "$(finishlog --completion bash)"\n'
    )
    return TerminalSession(
        shop, "--noprofile", "--rcfile", str(start), "-i", run=[BASH], PATH=_path()
    )


def _path() -> str:
    import os

    return os.environ["PATH"]


TYPED = [
    ("finishlog che\t", "finishlog check "),
    ("fl log cabinet/ca\t", "cabinet/case "),
    ("finishlog log doors@ba\t", "doors@back "),
    ("fl when leg:12\t", "leg:12 "),
    ("finishlog log seat@a\t", "seat@all\\ round "),
    ("finishlog room show f\t", "show finishing "),
    ("finishlog log 'cabinet/ca\t", "'cabinet/case' "),
    ("finishlog part new cab\t", "new cabinet/"),
    ("finishlog --db ./bi\t", "--db ./bin/"),
]


def test_bash_completes_at_a_real_terminal(at_a_bash: TerminalSession):
    assert BASH, "bash is needed to see it complete"
    with at_a_bash as session:
        session.press("", "ready> ")
        for keys, shown in TYPED:
            session.press(keys, shown)
            # Ctrl-U: nothing of it is run.
            session.press("\x15echo next\n", "ready> ")
        session.press("exit\n", "exit")
    assert session.code == 0
