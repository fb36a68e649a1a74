"""Sentences are for people: nothing is decided by one, and none spells a command below the edge."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from finishlog.cli.app import MODULES as COMMANDS
from tests.rows import every_row
from tests.sources import nodes_of, tree_of

PACKAGE = Path(__file__).parents[1] / "finishlog"
FILES = sorted(PACKAGE.rglob("*.py"))

# Said of the program itself, and no command: `install finishlog again`.
TYPED = re.compile(rf"\bfinishlog (?:{'|'.join(COMMANDS)})\b|(?<![\w-])--[a-z]")

# Fields that hold words for a person, and fields whose values are of a closed set.
SHOWN = {"sentence", "because", "remedy", "question", "called", "label", "why", "reason", "means"}
CLOSED = {
    "answer",
    "deed",
    "found",
    "how",
    "kind",
    "level",
    "operation",
    "outlives",
    "rule",
    "state",
    "what",
}
TAKES_APART = {
    "startswith", "endswith", "split", "rsplit", "partition", "rpartition", "removeprefix",
    "removesuffix", "replace", "find", "index", "count",
}  # fmt: skip
COMPARES = (ast.Eq, ast.NotEq, ast.In, ast.NotIn)


def _trees() -> Iterator[tuple[str, ast.Module]]:
    for file in FILES:
        yield str(file.relative_to(PACKAGE)), tree_of(file)


def test_only_the_command_line_spells_a_command():
    """Below the edge it is data (`core/commands`), so that renaming one touches `cli` alone."""
    wrong = [
        f"{file}:{line}"
        for file, tree in _trees()
        if not file.startswith(("cli/", "__main__"))
        for line in _spells_a_command(tree)
    ]
    assert wrong == []


@pytest.mark.parametrize("line", ['"type finishlog undo 3"', 'f"add --face {face}"', '"(--sure)"'])
def test_a_command_in_a_sentence_is_seen(line):
    assert list(_spells_a_command(ast.parse(f"said = {line}"))) == [1]


@pytest.mark.parametrize("line", ['"install finishlog again"', "Do.UNDO(3)", '"two-part -- not"'])
def test_what_is_no_command_is_none(line):
    assert list(_spells_a_command(ast.parse(f"said = {line}"))) == []


def _spells_a_command(tree: ast.Module) -> Iterator[int]:
    docstrings = {id(node.value) for node in nodes_of(tree) if isinstance(node, ast.Expr)}
    for node in nodes_of(tree):
        said = node.value if isinstance(node, ast.Constant) and id(node) not in docstrings else ""
        if TYPED.search(str(said)):
            yield node.lineno


def test_nothing_is_decided_by_a_sentence():
    wrong = [f"{file}:{line}" for file, tree in _trees() for line in _decides_by_words(tree)]
    assert wrong == []


@every_row(
    "line",
    [
        "f.sentence == verdict.because",
        "'cold' in finding.sentence",
        "f.remedy.replace('ACT', act)",
        "line.label.partition(' x')[0]",
        "label.startswith(f'{project}/')",
        "fault.name not in why",
        "verdict.deed == 'wipe off'",
        "line.how in {'open', 'closed'}",
    ],
)
def test_a_decision_by_words_is_seen(line):
    assert list(_decides_by_words(ast.parse(line))) == [1]


def _decides_by_words(tree: ast.Module) -> Iterator[int]:
    """Yield where words for a person are compared or taken apart, or a closed set is spelt."""
    for node in nodes_of(tree):
        if isinstance(node, ast.Compare):
            sides = [node.left, *node.comparators]
            shown = any(_shown(side) for side in sides)
            spelt = any(_named(side) in CLOSED for side in sides) and any(map(_literal, sides))
            if (shown or spelt) and isinstance(node.ops[0], COMPARES):
                yield node.lineno
        elif _named(node) in TAKES_APART and _shown(getattr(node, "value", node)):
            yield node.lineno


def _named(node: ast.AST) -> str:
    return node.attr if isinstance(node, ast.Attribute) else ""


def _shown(node: ast.AST) -> bool:
    """Tell whether a node is words for a person: in a field, or in a variable called so."""
    return (node.id if isinstance(node, ast.Name) else _named(node)) in SHOWN


def _literal(node: ast.AST) -> bool:
    """Tell whether a node is a word, or a collection of words, written there."""
    if isinstance(node, ast.Set | ast.Tuple | ast.List):
        return any(map(_literal, node.elts))
    return isinstance(node, ast.Constant) and isinstance(node.value, str) and bool(node.value)
