"""Whoever is told to warm something is told in the same breath with what not: common practice."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import finishlog
from finishlog.core.findings import NO_FLAME
from tests.rows import every_row

PACKAGE = Path(finishlog.__file__).parent
# "Warm the room", "warm it", "in a warm room", "dry warm air"; not a cause, "warm air closed it".
TELLS = re.compile(
    r"(?<!how )\bwarm (?:it|the|up the)\b|\bkeep it warm\b|\bin (?:a |dry |moving, )*warm\b"
)
NOT_WITH = re.compile(r"no (?:open )?flame|NO_FLAME|flame, pilot light or glowing wire|put it out")


def sentences() -> Iterator[tuple[str, str]]:
    """Every line of facts and code that tells somebody to warm something, and the next line."""
    for file in sorted([*PACKAGE.rglob("*.toml"), *PACKAGE.rglob("*.py")]):
        lines = file.read_text("utf-8").splitlines()
        for number, line in enumerate(lines):
            if line.startswith("note = "):  # what a figure rests on, no advice
                continue
            said = "".join(re.findall(r'"(?!"")[^"]*"', line))
            if TELLS.search(said):
                yield f"{file.name}:{number + 1}", " ".join(lines[number : number + 2])


@every_row(("where", "said"), [*sentences()])
def test_no_advice_to_warm_stands_alone(where: str, said: str):
    assert NOT_WITH.search(said), where


def test_advice_to_warm_is_found():
    assert len(list(sentences())) >= 6
    assert NOT_WITH.search(NO_FLAME)
