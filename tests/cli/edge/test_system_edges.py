"""What the system does to a command at its edges: full disks, closed streams, odd files."""

from __future__ import annotations

import ast
import json
import os
import sqlite3
import stat
import subprocess
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

import finishlog
from tests.cli.run import PROGRAM, Finishlog, furnished
from tests.sources import nodes_of, tree_of


def _thorough(line: str) -> Any:
    return pytest.param(line, marks=pytest.mark.thorough)


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


def in_shell(shop: Finishlog, line: str) -> tuple[int, str]:
    """Run a line of a shell in which `$F` is the program; return how it ended and its stderr."""
    done = subprocess.run(
        ["bash", "-c", line],
        env=shop.variables({"F": " ".join(PROGRAM)}),
        cwd=shop.folder,
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    return done.returncode, done.stderr


@pytest.mark.parametrize(
    "elsewhere", [">&-", _thorough(">/dev/full"), _thorough(">/dev/full --json")]
)
def test_what_was_recorded_is_said_to_be_when_its_answer_finds_no_place(shop, elsewhere):
    before = len(shop.did("history", "--json").document["answer"])
    code, said = in_shell(shop, f"$F log doors sealer {elsewhere}")
    assert code == 74
    assert "recorded, but the answer could not be written" in said
    assert "Traceback" not in said
    assert len(shop.did("history", "--json").document["answer"]) == before + 1


@pytest.mark.parametrize("elsewhere", [_thorough(">&-"), ">/dev/full"])
def test_a_question_whose_answer_finds_no_place_says_so(shop, elsewhere):
    code, said = in_shell(shop, f"$F ready {elsewhere}")
    assert code == 74
    assert "recorded" not in said
    assert "the answer could not be written" in said


def test_a_question_into_a_pipe_that_closes_stays_quiet(shop):
    assert in_shell(shop, "$F history | true; exit ${PIPESTATUS[0]}") == (0, "")


@pytest.mark.parametrize("closed", [_thorough("<&-"), _thorough("2>&-"), "<&- 2>&-"])
def test_nobody_at_the_keyboard_and_no_place_for_messages_hinder_no_act(shop, closed):
    assert in_shell(shop, f"$F log doors sealer {closed}")[0] == 0
    assert in_shell(shop, f"$F log nothing-like-it sealer {closed}")[0] == 3


def test_a_question_makes_no_database_and_the_first_act_does(tmp_path: Path):
    program = Finishlog(tmp_path)
    for question in ("ready", "leave", "plan", "history", "past ash", "rags", "part list", "can"):
        answer = program(*question.split())
        assert answer.code in {0, 2, 3}, answer
        assert "made" not in answer.err
    assert list(tmp_path.iterdir()) == []
    assert "a new, empty database was made" in program.did("room", "new", "shop").err
    assert program.database.is_file()


@pytest.mark.parametrize("mask", [0o000, 0o022, 0o077])
def test_the_database_is_for_nobody_else_whatever_the_umask(tmp_path: Path, mask: int):
    program = Finishlog(tmp_path / "home")
    program.folder.mkdir()
    data = program.folder / "data"
    where = {"FINISHLOG_DB": None, "XDG_DATA_HOME": str(data)}
    assert program.apart("room", "new", "shop", umask=mask, **where).code == 0
    file = data / "finishlog" / "shop.db"
    assert stat.S_IMODE(file.stat().st_mode) == 0o600
    assert stat.S_IMODE(file.parent.stat().st_mode) == 0o700


def test_an_empty_home_is_no_home(tmp_path: Path):
    """The system knows one; never the folder that one happens to stand in."""
    nowhere = {"FINISHLOG_DB": None, "HOME": ""}
    assert Finishlog(tmp_path).apart("ready", **nowhere).code == 0
    assert list(tmp_path.iterdir()) == []


def test_a_database_that_was_begun_in_a_place_named_by_half_is_still_found(tmp_path: Path):
    """The XDG specification passes over a relative XDG_DATA_HOME; what was kept there stays."""
    program = Finishlog(tmp_path)
    (tmp_path / "data" / "finishlog").mkdir(parents=True)
    begun = {"FINISHLOG_DB": "data/finishlog/shop.db"}
    assert program.apart("room", "new", "attic", **begun).code == 0
    found = {"FINISHLOG_DB": None, "XDG_DATA_HOME": "data"}
    assert program.apart("room", "show", "attic", **found).code == 0


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("project load p", 3),
        ("air import p", 3),
        ("--db p ready", 5),
        ("photo case p", 0),
    ],
)
def test_a_pipe_in_place_of_a_file_is_not_waited_for(shop, line: str, code: int):
    os.mkfifo(shop.folder / "p")
    answer = shop.apart(*line.split())
    refused_as_usual(answer.code, answer.err, code)


LONG, NINES = "x" * 300, "9" * 5000


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("--db /dev/null ready", 5),
        ("--db . ready", 5),
        (f"--db {LONG} ready", 5),
        (f"--db {LONG} room new shop", 5),
        (f"photo case {LONG}", 0),
        (f"project load {LONG}", 3),
        ("product new gloss² --class shellac-2lb", 0),
        ("part new a/b --count ²", 2),
        (f"part new a/b -n {NINES}", 2),
        ("steps new s topcoat*²", 2),
        (f"steps new s topcoat*{NINES}", 2),
        ("rags water ²", 3),
        ("off case --to ²", 3),
        ("part new stools/x --of seat:²", 2),
    ],
    ids=lambda value: str(value)[:40],
)
def test_an_odd_place_or_figure_is_an_ordinary_refusal(shop, line: str, code: int):
    answer = shop(*line.split())
    refused_as_usual(answer.code, answer.err, code)


@pytest.mark.parametrize(
    "text",
    [
        f"a = {'[' * 5000}",
        f"a = {NINES}",
        'project = "x"\ndue = 9999-12-31T23:59:59-12:00',
    ],
    ids=["deep", "long", "late"],
)
def test_an_odd_project_file_is_an_ordinary_refusal(shop, text: str):
    file = shop.folder / "p"
    file.write_text(text, encoding="utf-8")
    answer = shop("project", "load", str(file))
    refused_as_usual(answer.code, answer.err, 4)


def refused_as_usual(ended: int, said: str, code: int) -> None:
    assert ended == code, said
    assert "Traceback" not in said
    assert "fault of ours" not in said


def test_a_digit_that_is_no_figure_is_never_read_as_one():
    """`²` is a digit to `isdigit` and none to `int`: `whole_number` reads what people type."""
    found = [
        f"{file.name}:{node.lineno}"
        for file in Path(finishlog.__file__).parent.rglob("*.py")
        if ".isdigit()" in file.read_text(encoding="utf-8")
        for node in nodes_of(tree_of(file))
        if isinstance(node, ast.If | ast.IfExp)
        and ".isdigit()" in ast.unparse(node.test)
        and "int(" in ast.unparse(node)
    ]
    assert found == []


def spoil(shop: Finishlog, statement: str) -> None:
    """Change what the program itself never would, past its triggers and checks."""
    with closing(sqlite3.connect(shop.database)) as connection:
        connection.execute("PRAGMA ignore_check_constraints = ON")
        triggers = "SELECT name FROM sqlite_master WHERE type = 'trigger'"
        for (name,) in connection.execute(triggers).fetchall():
            connection.execute(f"DROP TRIGGER {name}")
        connection.execute(statement)
        connection.commit()


@pytest.mark.parametrize(
    "statement",
    [
        "DROP TABLE alembic_version",
        "DELETE FROM alembic_version",
        "DROP TABLE coat",
        "UPDATE entry SET latest_at = 'soon'",
        "UPDATE entry SET latest_at = 7",
        "UPDATE entry SET kind = 'dance'",
        "UPDATE film_check SET found = 'purple'",
        "UPDATE reading SET temperature_c = 'mild'",
    ],
)
def test_a_damaged_cell_is_called_damage(shop, statement: str):
    spoil(shop, statement)
    answers = [shop(*line.split()) for line in ("ready", "history", "past ash", "log doors sealer")]
    assert {answer.code for answer in answers} <= {0, 5}
    assert any(answer.code == 5 for answer in answers)
    for answer in answers:
        assert "fault of ours" not in answer.err
        assert answer.code == 0 or "damaged" in answer.err


CONTROLS = "a\x1b[31m\x7f\x9b2J\u202eb\u2066c\u200fd\u061ce"


def test_what_a_terminal_would_obey_reaches_no_screen_and_no_document(shop):
    shop.did("note", "case", "-t", CONTROLS)
    for line in ("history case", "history case --json", "on case", "on case --json"):
        out = shop.did(*line.split()).out
        assert not set(out) & (set(CONTROLS) - set("abcde[312mJ")), line
    kept = json.dumps(shop.did("history", "case", "--json").document)
    assert json.dumps(CONTROLS)[1:-1] in kept


def test_a_kept_database_that_another_uses_is_waited_for_ten_seconds():
    from finishlog.store.database import open_database

    assert open_database.__kwdefaults__ is not None
    assert open_database.__kwdefaults__["patience_s"] == 10.0
