"""What can go wrong, and the exit code each one ends with.

One place turns these into a line on stderr (cli.app). The message says what was wrong, the hint
what to type.
"""

from __future__ import annotations

from typing import Any

ANSWER_IS_BAD = 1
USAGE = 2
NO_SUCH_THING = 3
BAD_DATA = 4
DATABASE = 5
OUR_FAULT = 70
NOT_WRITTEN = 74
INTERRUPTED = 130


class FinishlogError(Exception):
    """A fault that a person can read and mend."""

    exit_code = OUR_FAULT

    def __init__(self, message: str, hint: str = "") -> None:
        super().__init__(message)
        self.message = message
        self.hint = hint


class UsageFault(FinishlogError):
    """What was typed cannot be read or is missing."""

    exit_code = USAGE


class NotFound(FinishlogError):
    """No such thing, or more than one."""

    exit_code = NO_SUCH_THING


class Ambiguous(NotFound):
    """A name that fits several things: asked at a terminal, refused in a script.

    `typed` is the word at fault, `candidates` what may be typed instead.
    """

    def __init__(self, message: str, hint: str, typed: str, candidates: tuple[str, ...]) -> None:
        super().__init__(message, hint)
        self.typed = typed
        self.candidates = candidates


class Doubtful(UsageFault):
    """What was typed is hardly meant: `doubts`, findings, are asked of who is there.

    An act that is `sure` records it with a caution instead: so does every script.
    """

    def __init__(self, doubts: tuple[Any, ...]) -> None:
        super().__init__("nothing was recorded")
        self.doubts = doubts


class MisnamedPart(NotFound):
    """A part that is not on record, where others, `near`, are called nearly so.

    `name` is what was typed.
    """

    def __init__(self, message: str, hint: str, name: str, near: tuple[str, ...] = ()) -> None:
        super().__init__(message, hint)
        self.name = name
        self.near = near


class Unknown(NotFound):
    """What is not on record but could be put there at once.

    `name` is what was typed, `near` what may have been meant; `make` holds the exact command.
    """

    def __init__(self, message: str, make: str, name: str, near: tuple[str, ...] = ()) -> None:
        super().__init__(
            message, f"did you mean {' or '.join(near)}? else {make}" if near else make
        )
        self.make = make
        self.name = name
        self.near = near


class UnknownPart(Unknown):
    """A part that is not on record."""


class UnknownProduct(Unknown):
    """A product that is not on record."""


class BadData(FinishlogError):
    """A file holds what it should not."""

    exit_code = BAD_DATA


class DatabaseFault(FinishlogError):
    """The database is locked, newer than the program, damaged, or not ours."""

    exit_code = DATABASE
