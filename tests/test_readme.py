"""README says what the program does: its evening is the demo's, its commands are real."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest
from the_demo import HOURS, the_demo

from tests.cli.run import Finishlog

README = Path(__file__).parents[1] / "README.md"
NOW = "2026-11-24T21:05+01:00"


def fenced() -> list[str]:
    return re.findall(r"(?ms)^```\n(.*?)^```$", README.read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def evening(tmp_path_factory: pytest.TempPathFactory) -> str:
    """What `finishlog demo` prints at the time that README shows."""
    folder = tmp_path_factory.mktemp("demo")
    program = Finishlog(folder, NOW, {"FINISHLOG_ZONE": "Europe/Berlin"})
    return program.did("--db", str(folder / "demo.db"), "demo").out


@pytest.mark.thorough
@pytest.mark.parametrize("hour", HOURS)
def test_the_demo_plays_at_any_hour(for_all_workers: Path, hour: str):
    """An evening ends at four in the morning; the number of a heap must not depend on the hour."""
    done = the_demo(for_all_workers, hour).answer
    assert (done.code, done.err) == (0, "")


def test_the_first_paragraph_tells_the_job():
    title, job = README.read_text(encoding="utf-8").split("\n\n")[:2]
    assert title == "# finishlog"
    assert "may take its next coat now" in job


def test_the_two_commands_stand_as_they_are_run():
    assert fenced()[:2] == [
        "python3 -m venv .venv && .venv/bin/pip install -q . && .venv/bin/finishlog demo\n",
        "python3 -m venv .venv && .venv/bin/pip install -q -e '.[test]' && .venv/bin/pytest -q\n",
    ]


def test_the_evening_is_what_the_demo_prints(evening: str):
    shown = [block for block in fenced() if block.startswith("$ ")]
    assert len(shown) >= 6
    missing = [block for block in shown if block.rstrip("\n") not in evening]
    assert missing == []


def test_the_commands_to_begin_with_work(tmp_path: Path):
    lines = next(block for block in fenced() if block.startswith("finishlog room")).splitlines()
    program = Finishlog(tmp_path)
    for line in lines:
        program.did(*shlex.split(line, comments=True)[1:])
