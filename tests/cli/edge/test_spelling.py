"""A command in a sentence is carried as data; it is spelt at the edge, and there is such a one."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from typer.main import get_command

from finishlog.cli.app import command_line
from finishlog.cli.terminal.spelling import called, spelt
from finishlog.core.commands import Do
from finishlog.core.finish.stages import Stage
from finishlog.core.measure.quantities import typed_celsius
from finishlog.core.measure.units import Temperature, Units
from tests.rows import every_row
from tests.sources import nodes_of, tree_of

PACKAGE = Path(__file__).parents[3] / "finishlog"
# Where sentences carry commands as data: below the terminal, and in the words of the rules.
BELOW = [
    file
    for file in PACKAGE.rglob("*.py")
    if "cli" not in (parts := file.relative_to(PACKAGE).parts) or "words" in parts
    if "Do" in file.read_text(encoding="utf-8")
]


@cache
def _all() -> Any:
    return get_command(command_line())


def _typer(do: Do) -> Any:
    """Find the command that is typed so; KeyError when there is none."""
    found = _all()
    for word in called(do).split():
        found = found.commands[word]
    return found


def _calls() -> Iterator[tuple[str, Do, int, dict[str, bool]]]:
    """Yield every command in a sentence: where, which, how many words, which options have values.

    Those that are not named where they are written (`deed("PART")`) say no option.
    """
    for file in BELOW:
        for node in nodes_of(tree_of(file)):
            if isinstance(node, ast.Call) and ast.unparse(node.func).startswith("Do."):
                _, name, *how = ast.unparse(node.func).split(".")
                where = f"{file.relative_to(PACKAGE)}:{node.lineno}"
                if how == ["options"]:
                    names = [ast.literal_eval(each) for each in node.args]
                    yield where, Do[name], 0, dict.fromkeys(names, False)
                else:
                    options = {
                        each.arg: ast.unparse(each.value) != "True"
                        for each in node.keywords
                        if each.arg
                    }
                    yield where, Do[name], len(node.args), options


@every_row("do", Do, ids=lambda do: do.name)
def test_everything_that_may_be_told_is_a_command(do):
    assert _typer(do).name == called(do).split()[-1]


def test_nothing_may_be_told_that_no_sentence_tells():
    named = {
        node.attr
        for file in BELOW
        for node in nodes_of(tree_of(file))
        if isinstance(node, ast.Attribute) and ast.unparse(node.value) == "Do"
    }
    assert named == {do.name for do in Do}


@every_row(("where", "do", "words", "options"), _calls)
def test_a_command_in_a_sentence_is_read_by_the_command_that_it_names(where, do, words, options):
    parser = _typer(do).make_parser(_typer(do).context_class(_typer(do)))
    known = {
        name for option in _typer(do).params for name in (*option.opts, *option.secondary_opts)
    }
    whole = do(*["X"] * words, **{name: "X" for name, value in options.items() if value})
    typed = spelt(whole).removeprefix(f"finishlog {called(do)}").split()
    _, left, _ = parser.parse_args(typed)
    assert left == []
    assert {spelt(do.option(**{name: True})) for name in options} <= known | {"--help"}


@pytest.mark.parametrize("stage", [Stage.RECOAT, Stage.TACK_FREE, Stage.LIGHT_USE])
def test_what_a_label_says_is_an_option_of_its_stage(stage):
    known = {name for option in _typer(Do.PRODUCT_LABEL).params for name in option.opts}
    assert spelt(Do.PRODUCT_LABEL.option(**{stage.value: True})) in known


@every_row(
    ("told", "read"),
    [
        (Do.UNDO(12), "finishlog undo 12"),
        (Do.PRODUCT_LABEL.words(), "product label"),
        (Do.LOG.words(from_=True), "log --from"),
        (Do.LOG.option(face="top"), "--face top"),
        (Do.PROJECT_EDIT.options("due", "no_due"), "--due, --no-due"),
        (
            Do.PART_NEW("set/table", of=["leg:4", "top:1"]),
            "finishlog part new set/table --of leg:4 --of top:1",
        ),
        (
            Do.CAN_OPENED("old varnish", at="2 weeks ago"),
            "finishlog can opened 'old varnish' --at '2 weeks ago'",
        ),
        (Do.ROOM_EDIT("attic", note=""), "finishlog room edit attic --note ''"),
        (Do.CAN_THROWN_OUT('a⟧ "b"'), "finishlog can thrown-out 'a⟧ \"b\"'"),
    ],
)
def test_a_command_is_typed_as_a_shell_reads_it(told, read):
    assert spelt(f"first: {told}, then go on") == f"first: {read}, then go on"


def test_a_quantity_in_a_command_is_typed_in_the_units_of_the_shop():
    told = Do.AIR(typed_celsius(20), "58%")
    assert spelt(told) == "finishlog air 20C 58%"
    assert spelt(told, Units(temperature=Temperature.FAHRENHEIT)) == "finishlog air 68F 58%"


@pytest.mark.parametrize("text", ["⟦", "⟦[1]⟧", '⟦["whole", "FLY", [], {}]⟧', "⟦[⟦]⟧"])
def test_what_a_person_wrote_so_stays(text):
    assert spelt(f"a note: {text}") == f"a note: {text}"
