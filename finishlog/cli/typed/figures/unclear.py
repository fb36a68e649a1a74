"""What was typed has two meanings, or is hardly meant: asked at a terminal, refused in a script.

A value that is possible but unlikely is insisted on with a `!` behind it: `4min!`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar

from finishlog.cli.terminal.talk import at_a_terminal, choose
from finishlog.errors import UsageFault

INSIST = "!"

Read = TypeVar("Read")
More = ParamSpec("More")


class Unclear(UsageFault):
    """`choices` are the meanings in words, each with what to type for it."""

    def __init__(self, message: str, choices: Mapping[str, str], hint: str | None = None) -> None:
        super().__init__(message, f"type {' or '.join(choices.values())}" if hint is None else hint)
        self.choices = dict(choices)


def asked(
    read: Callable[Concatenate[str, More], Read],
) -> Callable[Concatenate[str, More], Read]:
    """Let a reader of typed text ask the person where there is one, and read the choice."""

    @wraps(read)
    def reading(text: str, /, *more: More.args, **named: More.kwargs) -> Read:
        while True:
            try:
                return read(text, *more, **named)
            except Unclear as fault:
                if not at_a_terminal():
                    raise
                chosen = choose(f"{fault.message}. Which?", tuple(fault.choices))
                if chosen is None:
                    raise
                text = fault.choices[chosen]

    return reading


def insisted(text: str) -> tuple[str, bool]:
    """Take the `!` off what was typed, and tell whether it was there."""
    bare = text.rstrip()
    return (bare[:-1].rstrip(), True) if bare.endswith(INSIST) else (text, False)
