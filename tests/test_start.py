"""A start loads only what its command needs: the libraries cost more than the work."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.cli.run import Finishlog

# Runs the program as its console script does and reports, last on stderr, what was loaded.
RUN_AND_TELL = """
import json, sys
from finishlog.__main__ import run
code = run(sys.argv[1:])
print(json.dumps([code, sorted(sys.modules)]), file=sys.stderr)
"""

SHOP = """
air 17C 58%
product new topcoat --class waterborne-clear
part new stool/seat
"""
LIBRARIES = {"sqlalchemy", "alembic", "typer", "rich", "dateutil", "msgspec", "pydantic"}


@pytest.fixture(scope="module")
def database(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A database that is there and of this program's schema."""
    return Finishlog(tmp_path_factory.mktemp("shop")).played(SHOP).database


@pytest.fixture(scope="module")
def of_ready(database: Path) -> set[str]:
    """What `ready` loads, its stdout a pipe."""
    return loaded(database, "ready")


def loaded(database: Path, *words: str) -> set[str]:
    """Run a command that ends well, its stdout a pipe, and return the modules that it loaded."""
    done = subprocess.run(
        [sys.executable, "-c", RUN_AND_TELL, *words],
        env={**os.environ, "FINISHLOG_DB": str(database), "FORCE_COLOR": ""},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
    )
    code, names = json.loads(done.stderr.splitlines()[-1])
    assert code == 0, done.stderr
    assert done.stdout
    return set(names)


@pytest.mark.parametrize(
    "words", [["--help"], ["--version"], ["log", "--help"], ["part", "--help"]]
)
def test_help_and_version_load_no_library_but_the_parser(tmp_path: Path, words: list[str]):
    names = loaded(tmp_path / "none.db", *words)
    assert not names & {"sqlalchemy", "alembic", "rich", "dateutil", "sqlite3", "pydantic"}
    assert not (tmp_path / "none.db").exists()


def test_ready_on_a_database_that_is_there_loads_no_migrations(of_ready: set[str]):
    assert "alembic" not in of_ready


def test_ready_in_a_pipe_loads_nothing_for_a_terminal(of_ready: set[str]):
    assert "sqlalchemy" in of_ready
    assert not of_ready & {"rich", "dateutil", "pydantic"}


def test_a_log_without_a_time_loads_no_date_parser(database: Path):
    assert not loaded(database, "log", "seat", "topcoat") & {"dateutil", "alembic", "rich"}


def test_published_figures_are_shown_without_a_database(tmp_path: Path):
    names = loaded(tmp_path / "none.db", "class", "list")
    assert not names & {"sqlalchemy", "alembic", "sqlite3", "dateutil", "rich"}
    assert not (tmp_path / "none.db").exists()


# A person waits at the key for it, so that what it may load is written out.
COMPLETION = {
    "finishlog", "finishlog.__main__", "finishlog.asks", "finishlog.asks.look",
    "finishlog.asks.look.names", "finishlog.cli", "finishlog.cli.completion",
    "finishlog.cli.completion.complete", "finishlog.cli.completion.line",
    "finishlog.cli.completion.names", "finishlog.errors", "finishlog.paths", "finishlog.store",
    "finishlog.store.names_sqlite",
}  # fmt: skip


@pytest.mark.parametrize("line", ["lo", "log ", "log sea", "part show ", "product new x --class "])
def test_completion_loads_no_library_and_next_to_nothing_of_ours(database: Path, line: str):
    names = loaded(database, "--complete", "bash", f"finishlog {line}", ":=@")
    assert {name for name in names if name.startswith("finishlog")} <= COMPLETION
    assert not names & LIBRARIES
    assert not names & {"dataclasses", "inspect", "tomllib", "asyncio", "email"}


def test_the_script_for_a_shell_loads_no_library_but_the_parser(tmp_path: Path):
    names = loaded(tmp_path / "none.db", "--completion", "bash")
    assert not names & {"sqlalchemy", "alembic", "rich", "dateutil", "sqlite3", "pydantic"}
    assert not (tmp_path / "none.db").exists()


def test_no_command_loads_the_orm(of_ready: set[str]):
    assert "sqlalchemy.orm" not in of_ready
