"""The table of questions is true: answered means asked by a test, waiting means that none asks."""

from __future__ import annotations

import ast
from functools import cache
from importlib import import_module
from pathlib import Path
from types import ModuleType

from tests.cases.question import Question, set_up, untied
from tests.cases.table import CAPABILITIES, CASES, Case
from tests.rows import every_row

HERE = Path(__file__).parent


@cache
def asked() -> dict[str, tuple[ast.FunctionDef, ModuleType]]:
    """Find the tests that ask a question, `test_fc001_...` of `FC001`, by the question."""
    found: dict[str, tuple[ast.FunctionDef, ModuleType]] = {}
    for file in sorted(HERE.glob("test_*.py")):
        for test in ast.parse(file.read_text("utf-8")).body:
            if not (isinstance(test, ast.FunctionDef) and test.name.startswith("test_fc")):
                continue
            name = test.name.removeprefix("test_")[:5].upper()
            assert name not in found, f"{name} is asked twice"
            found[name] = test, import_module(f"tests.cases.{file.stem}")
    return found


def test_all_ninety_stand_in_the_table_once():
    assert len(CASES) == len({case.id for case in CASES}) == 90


@every_row("case", CASES, ids=lambda case: case.id)
def test_the_table_is_true(case: Case):
    answered = not case.waits_for
    assert answered == (case.id in asked())
    wanted = case.capabilities.split()
    assert wanted
    assert set(wanted) <= CAPABILITIES.keys()
    assert answered or case.waits_for in wanted


@every_row("name", sorted(asked()))
def test_every_line_of_an_answered_question_and_its_trap_are_asserted(name: str):
    test, file = asked()[name]
    question: Question = getattr(file, name)
    assert question.shows
    assert untied(test, name, len(question.shows)) == []


@every_row("case", [c for c in CASES if not c.waits_for], ids=lambda case: case.id)
def test_nothing_is_typed_that_the_question_does_not_say(case: Case):
    test, file = asked()[case.id]
    assert set_up(test, vars(file)) == set(case.said.split())


def test_what_the_question_does_not_say_is_named():
    (test,) = ast.parse(
        "def test_fc000_x(finisher):\n"
        "    finisher.types('now', OIL, 'part new a/b --species oak', 'log b oil --method spray')\n"
        "    assert 'oil' in finisher.reads('now', 'ready')\n"
    ).body
    assert isinstance(test, ast.FunctionDef)
    oil = {"OIL": "product new oil --class tung-oil --recoat 4h"}
    assert set_up(test, oil) == {"oak", "tung-oil", "method", "recoat"}


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
