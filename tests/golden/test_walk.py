"""Whole pieces in the terminal, line by line: each walk holds what is typed and what comes back.

`FINISHLOG_WRITE_GOLDEN=1 pytest tests/golden` writes the answers anew; read the difference.
"""

from __future__ import annotations

import os
import shlex
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from finishlog.cli.app import run
from tests.kept_open import KeptOpen

HERE = Path(__file__).parent
SAMPLE_DATA = HERE.parents[1] / "sample_data"
ZONE = "Europe/Berlin"


@dataclass
class Block:
    """Prose, a time or a command, with the answer that follows it."""

    line: str
    answer: list[str] = field(default_factory=list)


def blocks(text: str) -> Iterator[Block]:
    block = Block("")
    for line in text.splitlines():
        if line[:2] in {"# ", "@ ", "$ "} or not line:
            yield block
            block = Block(line)
        else:
            block.answer.append(line)
    yield block


def walk(text: str, shop: Path, capsys: pytest.CaptureFixture[str], env: pytest.MonkeyPatch) -> str:
    """Type every command at its time; return the text with what came back."""
    env.setenv("FINISHLOG_DB", str(shop))
    env.setenv("FINISHLOG_ZONE", ZONE)
    env.chdir(SAMPLE_DATA)
    said: list[str] = []
    for block in list(blocks(text))[1:]:
        said.append(block.line)
        if block.line.startswith("@ "):
            env.setenv("FINISHLOG_NOW", block.line.split()[-1])
        if block.line.startswith("$ "):
            code = run(shlex.split(block.line[2:]))
            out, err = capsys.readouterr()
            heard = err.replace(str(shop), "shop.db").splitlines()
            # A blank line of an answer would read as one between two chapters of the walk.
            said += [line for line in out.splitlines() if line.strip()]
            said += [f"! {line}" for line in heard]
            said += [f"exit {code}"] if code else []
    return "\n".join(said) + "\n"


@pytest.mark.parametrize(
    "name",
    [
        # From an empty database to a piece that may be packed.
        "walk",
        # From project files to hand-over, with a blush, a strip, a pause and a joint that opened.
        pytest.param("to_handover", marks=pytest.mark.thorough),
    ],
)
def test_what_is_typed_brings_what_is_written(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
):
    file = HERE / f"{name}.txt"
    text = file.read_text(encoding="utf-8")
    with closing(KeptOpen()) as kept_open, kept_open.serves():
        walked = walk(text, tmp_path / "shop.db", capsys, monkeypatch)
    if os.environ.get("FINISHLOG_WRITE_GOLDEN"):
        file.write_text(walked, encoding="utf-8")
    assert walked.splitlines() == text.splitlines()
