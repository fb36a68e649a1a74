"""The table of questions is true: answered means asked by a test, waiting means that none asks."""

from __future__ import annotations

import ast
from functools import cache
from importlib import import_module
from pathlib import Path

import pytest

from tests.cases.question import Question, untied
from tests.cases.table import CAPABILITIES, CASES, Case

HERE = Path(__file__).parent


@cache
def asked() -> dict[str, tuple[ast.FunctionDef, Question]]:
    """Find the tests that ask a question, `test_fc001_...` of `FC001`, by the question."""
    found: dict[str, tuple[ast.FunctionDef, Question]] = {}
    for file in sorted(HERE.glob("test_*.py")):
        for test in ast.parse(file.read_text("utf-8")).body:
            if not (isinstance(test, ast.FunctionDef) and test.name.startswith("test_fc")):
                continue
            name = test.name.removeprefix("test_")[:5].upper()
            assert name not in found, f"{name} is asked twice"
            found[name] = test, getattr(import_module(f"tests.cases.{file.stem}"), name)
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


@pytest.mark.parametrize("name", sorted(asked()))
def test_every_line_of_an_answered_question_and_its_trap_are_asserted(name: str):
    test, question = asked()[name]
    assert question.shows
    assert untied(test, name, len(question.shows)) == []


def test_a_line_or_a_trap_that_nothing_is_tied_to_is_named():
    (test,) = ast.parse(
        "def test_fc000_x(finisher):\n"
        "    with FC000.line(1):\n"
        "        assert 'coat' in finisher.reads('now', 'ready')\n"
        "    with FC000.line(2):\n"
        "        finisher.reads('now', 'ready')\n"
        "    with FC000.line(3):\n"
        "        assert True\n"
    ).body
    assert isinstance(test, ast.FunctionDef)
    assert untied(test, "FC000", 3) == ["FC000.line(2)", "FC000.line(3)", "FC000.trap"]


def test_nothing_is_asked_that_is_not_in_the_table():
    assert asked().keys() <= {case.id for case in CASES}
