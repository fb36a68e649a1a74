"""Words stand at the edge: no value of the core says a sentence; each rule has words."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

from finishlog.cli.words.finding_words import WORDS
from finishlog.core import findings
from tests.sources import nodes_of, tree_of

PACKAGE = Path(__file__).parents[1] / "finishlog"
FILES = [file for floor in ("core", "acts", "asks") for file in (PACKAGE / floor).rglob("*.py")]

# What a sentence for a person would be called.
SAYS = {
    "advice", "because", "caution", "means", "question", "reason", "remedies", "remedy",
    "sentence", "text", "warning", "why", "words",
}  # fmt: skip
# Published words travel with their source.
WORDED = ("core/published/",)
MAY = {
    "Cell.why": "a row of facts/data/unread.toml",
    "OvercoatRule.reason": "a published row, with its source",
    "OvercoatRule.remedy": "a published row, with its source",
    "OwnRule.because": "the reason that the person gave",
    "Way.reason": "a published row, with its source",
    "Promise.text": "what the person typed",
    "Selector.text": "what the person typed",
}


@cache
def _trees() -> dict[str, ast.Module]:
    return {str(file.relative_to(PACKAGE)): tree_of(file) for file in sorted(FILES)}


def test_no_value_of_the_core_carries_a_sentence():
    core = ((f, tree) for f, tree in _trees().items() if f.startswith("core/"))
    found = [each for f, tree in core if not f.startswith(WORDED) for each in _texts(tree)]
    assert sorted(found) == sorted(MAY)


def test_a_field_that_carries_a_sentence_is_seen():
    lines = "class Seen:\n remedy: str = ''\n why: tuple[str, ...]\n because: Finding\n name: str"
    assert list(_texts(ast.parse(lines))) == ["Seen.remedy", "Seen.why"]


def _texts(tree: ast.Module) -> Iterator[str]:
    """Name each field of a class that holds text and is called as a sentence would be."""
    for of in (node for node in nodes_of(tree) if isinstance(node, ast.ClassDef)):
        for field in (node for node in of.body if isinstance(node, ast.AnnAssign)):
            name = ast.unparse(field.target)
            if name in SAYS and re.search(r"\bstr\b", ast.unparse(field.annotation)):
                yield f"{of.name}.{name}"


# The ids that are looked up in a row: no call spells them.
IN_ROWS = {
    "core/rules/near/joint.py": {"in-cauls", "joint-swollen", "no-stress-yet"},
}


def test_every_rule_has_words_and_no_words_are_left_over():
    assert sorted(ids_below_the_edge()) == sorted(WORDS)


def ids_below_the_edge(under: str = "") -> set[str]:
    """Return the id of every finding that may be made in a room; none named: below the edge."""
    every = BUILDS
    # What is handed an id may hand it on.
    for _ in range(2):
        own = {file: _makers(tree, every) for file, tree in _trees().items()}
        every = {name: at for makers in own.values() for name, at in makers.items()}
    found: set[str] = set()
    for file, tree in _trees().items():
        brought = {a.name for n in nodes_of(tree) if isinstance(n, ast.ImportFrom) for a in n.names}
        makers = own[file] | {name: at for name, at in every.items() if name in brought}
        for call in _calls(tree, makers) if file.startswith(under) else ():
            found |= _spelt(call, file, tree, makers)
    return found


BUILDS = {"finding": 0, "plainly": 0}


def _makers(tree: ast.Module, known: Mapping[str, int]) -> dict[str, int]:
    """Return the functions that are handed the id of what they find, and as which argument."""
    makers = dict(BUILDS)
    for of in (node for node in nodes_of(tree) if isinstance(node, ast.FunctionDef)):
        takes = [each.arg for each in of.args.args]
        for call in _calls(of, known):
            if isinstance(call.args[0], ast.Name) and call.args[0].id in takes:
                makers[of.name] = takes.index(call.args[0].id)
    return makers


def _calls(tree: ast.AST, makers: Mapping[str, int]) -> Iterator[ast.Call]:
    calls = (node for node in nodes_of(tree) if isinstance(node, ast.Call))
    for call in calls:
        at = makers.get(call.func.id) if isinstance(call.func, ast.Name) else None
        if at is not None and len(call.args) > at:
            yield call


def _spelt(call: ast.Call, file: str, tree: ast.Module, makers: Mapping[str, int]) -> set[str]:
    assert isinstance(call.func, ast.Name)
    said = call.args[makers[call.func.id]]
    if isinstance(said, ast.Name):
        constant = getattr(findings, said.id, None)
        if isinstance(constant, str):
            return {constant}
        if _is_handed_on(said, tree):
            return set()
        values = [node.value for node in nodes_of(tree) if _sets(node, said.id)]
    else:
        values = [said]
    return {id_ for value in values for id_ in _branches(value)} or IN_ROWS[file]


def _is_handed_on(name: ast.Name, tree: ast.Module) -> bool:
    """Tell whether a name is an argument of a maker: what calls that spells it."""
    for of in nodes_of(tree):
        if isinstance(of, ast.FunctionDef) and name in nodes_of(of):
            return name.id in [each.arg for each in of.args.args]
    return False


def _sets(node: ast.AST, name: str) -> bool:
    return isinstance(node, ast.Assign) and ast.unparse(node.targets[0]) == name


def _branches(value: ast.expr) -> Iterator[str]:
    """Yield a text, or the texts of which one is chosen."""
    if isinstance(value, ast.IfExp):
        yield from _branches(value.body)
        yield from _branches(value.orelse)
    elif isinstance(value, ast.Name) and isinstance(getattr(findings, value.id, None), str):
        yield getattr(findings, value.id)
    elif isinstance(value, ast.Constant) and isinstance(value.value, str):
        yield value.value
