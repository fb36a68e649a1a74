"""The table of questions is true: answered means asked by a test, waiting means that none asks."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.cases.table import CAPABILITIES, CASES, Case

HERE = Path(__file__).parent


def asked() -> dict[str, str]:
    """Find the tests that ask a question: `test_fc001_...`, by the question."""
    found: dict[str, str] = {}
    for file in sorted(HERE.glob("test_*.py")):
        for number, name in re.findall(
            r"^def test_(fc\d{3})_(\w+)\(", file.read_text("utf-8"), re.M
        ):
            assert number.upper() not in found, f"{number} is asked twice"
            found[number.upper()] = name
    return found


def test_all_seventy_stand_in_the_table_once():
    assert len(CASES) == len({case.id for case in CASES}) == 70


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.id)
def test_the_table_is_true(case: Case):
    answered = not case.waits_for
    assert answered == (case.id in asked())
    wanted = case.capabilities.split()
    assert wanted
    assert set(wanted) <= CAPABILITIES.keys()
    assert answered or case.waits_for in wanted


def test_what_needs_the_log_the_parts_the_milestones_and_the_windows_alone_is_answered():
    alone = {"LOG", "PART", "MILE", "WINDOW"}
    mine = [case for case in CASES if set(case.capabilities.split()) <= alone]
    assert len(mine) == 5
    assert [case.id for case in mine if case.waits_for] == []


def test_nothing_is_asked_that_is_not_in_the_table():
    assert asked().keys() <= {case.id for case in CASES}
