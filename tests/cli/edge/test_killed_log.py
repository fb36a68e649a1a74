"""`finishlog log` killed at any moment: what it answered for is whole, the rest is not there.

The child is a process of its own, forked from this warm one so that a kill costs no imports; it
runs the same entry as the console script.
"""

from __future__ import annotations

import io
import json
import os
from contextlib import redirect_stdout
from itertools import cycle
from pathlib import Path

import pytest
from run import Finishlog
from typer.main import get_command

from finishlog.cli.app import command_line, run
from tests.store.killing import Acknowledge, kill_again_and_again

KILLS_A_ROUND = 20
PIECES = 2
PARTS = tuple(f"part{n}" for n in range(1))


def test_kills_of_log_lose_nothing_that_it_answered_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, kills: int
):
    # Built once for all: what is killed is the command at work, not the parser being put together.
    built = get_command(command_line())
    monkeypatch.setattr("finishlog.cli.app.parser", lambda _: built)
    acknowledged = journals = 0
    rounds = -(-kills // KILLS_A_ROUND)
    for number in range(rounds):
        folder = tmp_path / str(number)
        folder.mkdir()
        program = _shop(folder)

        def logs_coats(path: Path, acknowledge: Acknowledge) -> None:
            """Log coat after coat, each on a part of two pieces; acknowledge what is answered."""
            os.environ |= program.variables() | {"FINISHLOG_DB": str(path)}  # noqa: B023
            for part in cycle(PARTS):
                answer = io.StringIO()
                with redirect_stdout(answer):
                    code = run(["log", f"shelf/{part}", "topcoat", "--json"])
                assert code == 0
                acknowledge(json.loads(answer.getvalue())["answer"]["act"])

        toll = kill_again_and_again(
            program.database,
            logs_coats,
            kills=KILLS_A_ROUND,
            entries=1,
            targets=PIECES,
        )
        assert toll.kills == KILLS_A_ROUND
        acknowledged += len(toll.acknowledged)
        journals += toll.journals_left
        _works(program, toll.acknowledged)
    # Else nothing was tried: acts were finished, and some were cut off in the middle.
    assert acknowledged > rounds
    assert journals > 0


def _shop(folder: Path) -> Finishlog:
    program = Finishlog(folder)
    program.did("product", "new", "topcoat", "--class", "waterborne-clear")
    for part in PARTS:
        program.did("part", "new", f"shelf/{part}", "-n", str(PIECES))
    return program


def _works(program: Finishlog, acknowledged: set[int]) -> None:
    """The next evening: the screen comes up and every act that was answered for is in history."""
    ready = program.did("ready", "--json").document["answer"]
    assert {line["part"] for line in ready["drying"]} <= {f"shelf/{part}" for part in PARTS}
    history = program.did("history", "--json").document["answer"]
    assert acknowledged <= {line["act"] for line in history if line["in_force"]}
