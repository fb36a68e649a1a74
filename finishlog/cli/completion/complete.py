"""Complete a command that is being typed: commands, options, and the names on record.

What a word names is told by its metavar (PART, ROOM, CLASS, NAME in a group) or, of an option,
by its own name, so that a new command needs nothing here.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterable
from pathlib import Path
from typing import Any

from finishlog.cli.completion.line import fitting, for_bash, taken_apart
from finishlog.paths import database_path

FILE_WANTED = 1

_GLOBAL = ("--db", "--help", "--version", "--completion")
_FILES = frozenset({"file", "dir", "path"})
_ALSO_CALLED = {"of": "member"}


def complete(arguments: list[str], commands: Collection[str], line_of: Callable[[str], Any]) -> int:
    """Print what may stand at the cursor, one a line; return FILE_WANTED when that is a file.

    The arguments are the shell, the line up to the cursor and, of bash, what it breaks words at.
    `line_of` builds the command line with one of the commands. Nothing that goes wrong may disturb
    what a person types: then there is nothing to offer.
    """
    try:
        shell, line, breaks, *_ = *arguments, "", "", ""
        typed = taken_apart(line)
        found = Completion(typed.words, typed.word, commands, line_of).candidates()
    except Exception:
        return 0
    if found is None:
        return FILE_WANTED
    fit = fitting(typed, found)
    for each in for_bash(typed, fit, breaks) if shell == "bash" else fit:
        print(each)
    return 0


class Completion:
    """The words before the cursor and the word at it, against the commands there are."""

    def __init__(
        self,
        words: tuple[str, ...],
        word: str,
        commands: Collection[str],
        line_of: Callable[[str], Any],
    ) -> None:
        self._words = list(words)
        self._word = word
        self._commands = commands
        self._line_of = line_of
        self._database: Path | None = None

    def candidates(self) -> list[str] | None:
        """Return what may stand at the cursor, fitting or not; None when that is a file."""
        words = self._words
        while words and words[0].startswith("-"):
            if words.pop(0) == "--db":
                if not words:
                    return None
                self._database = Path(words.pop(0)).expanduser()
        if not words:
            return list(_GLOBAL if self._at_an_option else self._commands)
        if words[0] not in self._commands:
            return []
        return self._of_command(self._line_of(words[0]).commands[words[0]], words)

    @property
    def _at_an_option(self) -> bool:
        return self._word.startswith("-")

    def _of_command(self, command: Any, words: list[str]) -> list[str] | None:  # noqa: ANN401
        """Go down the groups to the command that was typed."""
        group, *rest = words
        while hasattr(command, "commands"):
            if not rest:
                return ["--help"] if self._at_an_option else list(command.commands)
            command, *rest = command.commands.get(rest[0]), *rest[1:]
        if command is None:
            return []
        # What is new has no name yet.
        group = "" if self._words[1:2] == ["new"] else group
        return self._of_parameters(command.params, group, rest)

    def _of_parameters(self, params: list[Any], group: str, words: list[str]) -> list[str] | None:
        """Complete the value of an option, an option, or the argument whose turn it is."""
        options = {name: p for p in params for name in (*p.opts, *p.secondary_opts)}
        before: list[str] = []
        waiting: Any = None
        for word in words:
            if waiting is not None:
                waiting = None
            elif word in options and word.startswith("-"):
                waiting = None if options[word].is_flag else options[word]
            else:
                before.append(word)
        if waiting is not None:
            return self._values(waiting, _kinds_of_option(waiting), group, before)
        if self._at_an_option:
            return ["--help", *(name for name in options if name.startswith("--"))]
        argument = _argument_at(params, len(before))
        if argument is None:
            return []
        metavar = argument.metavar or argument.name
        if argument.nargs == -1 and not before:
            # `PART... [WHAT]`: the first word is a part.
            metavar = metavar.split()[0]
        return self._values(argument, _kinds(metavar), group, before)

    def _values(
        self,
        parameter: Any,  # noqa: ANN401
        kinds: list[str],
        group: str,
        before: list[str],
    ) -> list[str] | None:
        from finishlog.cli.completion.names import NamesToComplete

        if choices := getattr(parameter.type, "choices", None):
            return [str(getattr(choice, "value", choice)) for choice in choices]
        if _FILES & set(kinds):
            return None
        names = NamesToComplete(self._database or database_path(), self._word, tuple(before))
        return [name for kind in kinds for name in names.of_kind(kind, group)]


def _kinds(metavar: str) -> list[str]:
    """Take a metavar apart: `PART... [WHAT]` asks for a part, then what."""
    return [kind.lower() for kind in re.findall(r"[A-Za-z]+(?:[-/_][A-Za-z]+)*", metavar)]


def _kinds_of_option(option: Any) -> list[str]:  # noqa: ANN401
    """Tell what an option wants by its metavar, else by its own name: `--room`, `--class`."""
    named = max(option.opts, key=len).removeprefix("--")
    return _kinds(option.metavar) if option.metavar else [_ALSO_CALLED.get(named, named)]


def _argument_at(params: Iterable[Any], count: int) -> Any:  # noqa: ANN401
    """Find the argument that takes the next word, after `count` words that are no options."""
    for argument in (p for p in params if p.param_type_name == "argument"):
        if argument.nargs == -1 or count < argument.nargs:
            return argument
        count -= argument.nargs
    return None
