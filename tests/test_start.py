"""A start loads only what its command needs: the libraries cost more than the work."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

import finishlog
from tests.cli.run import Finishlog, furnished

# Runs the program as its console script does and reports, last on stderr, what was loaded.
RUN_AND_TELL = """
import json, sys
from finishlog.__main__ import run
code = run(sys.argv[1:])
print(json.dumps([code, sorted(sys.modules)]), file=sys.stderr)
"""

LIBRARIES = {
    "sqlalchemy", "alembic", "typer", "rich", "dateutil", "msgspec", "platformdirs", "pydantic",
}  # fmt: skip


def _thorough(*words: str) -> Any:
    return pytest.param(list(words), marks=pytest.mark.thorough)


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    """A shop whose database is there and of this program's schema."""
    return furnished(tmp_path)


@pytest.fixture
def nothing(tmp_path: Path) -> Finishlog:
    """A place without a database."""
    return Finishlog(tmp_path)


def loaded(shop: Finishlog, *words: str) -> set[str]:
    """Run a command that ends well, its stdout a pipe, and return the modules that it loaded."""
    done = subprocess.run(
        [sys.executable, "-c", RUN_AND_TELL, *words],
        env=shop.variables(),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
    )
    code, names = json.loads(done.stderr.splitlines()[-1])
    assert code == 0, done.stderr.splitlines()[:-1]
    assert done.stdout
    return set(names)


@pytest.mark.parametrize(
    "words", [["--help"], ["--version"], _thorough("log", "--help"), _thorough("part", "--help")]
)
def test_help_and_version_load_no_library_but_the_parser(nothing: Finishlog, words: list[str]):
    names = loaded(nothing, *words)
    assert not names & {"sqlalchemy", "alembic", "rich", "dateutil", "sqlite3", "pydantic"}
    assert not nothing.database.exists()


@pytest.mark.parametrize(
    "words",
    [
        ["ready"],
        ["log", "seat", "topcoat"],
        _thorough("when", "seat"),
        _thorough("why", "seat"),
        _thorough("history"),
    ],
)
def test_a_daily_command_in_a_pipe_loads_the_parser_and_the_database_and_no_more(
    shop: Finishlog, words: list[str]
):
    names = loaded(shop, *words)
    assert names & LIBRARIES == {"typer", "sqlalchemy", "msgspec"}
    # Neither what maps objects to rows, nor what reads the facts as they are written.
    assert not names & {"sqlalchemy.orm", "tomllib", "finishlog.facts.read"}
    # What only asks finds its questions in SQL, and declares no table.
    assert (words[0] == "log") == ("finishlog.store.schema.log" in names)


def test_published_figures_are_shown_without_a_database(nothing: Finishlog):
    names = loaded(nothing, "class", "list")
    assert not names & {"sqlalchemy", "alembic", "sqlite3", "dateutil", "rich"}
    assert not nothing.database.exists()


# A person waits at the key for it, so that what it may load is written out.
COMPLETION = {
    "finishlog", "finishlog.__main__", "finishlog.asks", "finishlog.asks.look",
    "finishlog.asks.look.names", "finishlog.cli", "finishlog.cli.completion",
    "finishlog.cli.completion.complete", "finishlog.cli.completion.line",
    "finishlog.cli.completion.names", "finishlog.core", "finishlog.core.shop",
    "finishlog.core.shop.names", "finishlog.errors", "finishlog.paths", "finishlog.store",
    "finishlog.store.names_sqlite",
}  # fmt: skip


@pytest.mark.parametrize("line", ["lo", "log ", "log sea", "part show ", "product new x --class "])
def test_completion_loads_no_library_and_next_to_nothing_of_ours(shop: Finishlog, line: str):
    names = loaded(shop, "--complete", "bash", f"finishlog {line}", ":=@")
    assert {name for name in names if name.startswith("finishlog")} <= COMPLETION
    assert not names & LIBRARIES
    assert not names & {"dataclasses", "inspect", "tomllib", "asyncio", "email"}


def test_the_script_for_a_shell_loads_no_library_but_the_parser(nothing: Finishlog):
    names = loaded(nothing, "--completion", "bash")
    assert not names & {"sqlalchemy", "alembic", "rich", "dateutil", "sqlite3", "pydantic"}
    assert not nothing.database.exists()


def test_no_class_of_ours_is_made_by_dataclass():
    package = Path(finishlog.__file__).parent
    assert [f for f in package.rglob("*.py") if "dataclass" in f.read_text(encoding="utf-8")] == []
