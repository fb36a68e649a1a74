"""A question, what its answer must show line by line, and the trap: each tied to assertions.

    FC000 = Question("which coat is next", shows=("the coat", "its hour"), trap="a bare number")

    with FC000.line(1):
        assert "coat 2" in screen
    with FC000.trap:
        assert "2\n" not in screen

`untied` reads a test and names the lines, and the trap, that no assertion is tied to; `set_up`
names what it types of finish, wood, label and use, which the question must have said.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Mapping
from dataclasses import dataclass
from types import TracebackType

# What a question has to have said before it is typed: which finish, wood, user; which figures.
_NAMED = re.compile(r"--(?:class|species|old-finish|glue|for) ([\w-]+)")
_FIGURE = re.compile(r"--(recoat|window|label-air|film|method|due|made|flooded|thin)\b")


@dataclass(frozen=True)
class Point:
    """One thing that is shown, or the trap that is not walked into; a failure names it."""

    words: str

    def __enter__(self) -> None:
        """Begin the assertions of this point."""

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if error is not None:
            error.add_note(f"is not shown: {self.words}")


class Question:
    """What is asked, the lines that an answer must show, and the trap beside it."""

    def __init__(self, asked: str, *, shows: tuple[str, ...], trap: str) -> None:
        self.asked = asked
        self.shows = shows
        self.trap = Point(f"the trap is avoided: {trap}")

    def line(self, number: int) -> Point:
        """Return line 1, 2, ...; IndexError when the question has no such line."""
        if number < 1:
            raise IndexError(number)
        return Point(f"{number}. {self.shows[number - 1]}")


def untied(test: ast.FunctionDef, name: str, lines: int) -> list[str]:
    """Name the lines of question `name` that the test never asserts, and its trap if so."""
    points = [*(f"{name}.line({number})" for number in range(1, lines + 1)), f"{name}.trap"]
    tied = {
        ast.unparse(item.context_expr)
        for block in ast.walk(test)
        if isinstance(block, ast.With) and any(map(_asserts, block.body))
        for item in block.items
    }
    return [point for point in points if point not in tied]


def set_up(test: ast.FunctionDef, constants: Mapping[str, object]) -> set[str]:
    """Return the words of a test's lines that only the question can have said."""
    lines = [
        constants.get(part.id) if isinstance(part, ast.Name) else part.value
        for part in ast.walk(test)
        if isinstance(part, ast.Name | ast.Constant)
    ]
    typed = "\n".join(line for line in lines if isinstance(line, str))
    return {*_NAMED.findall(typed), *_FIGURE.findall(typed)}


def _asserts(statement: ast.stmt) -> bool:
    """Tell whether a statement asserts something that is not constant."""
    return any(
        isinstance(found, ast.Assert)
        and any(isinstance(part, ast.Compare | ast.Call) for part in ast.walk(found.test))
        for found in ast.walk(statement)
    )
