"""Complete a command that is being typed: commands, options, and the names on record.

A person waits at the key, so neither the parser nor the database library is loaded: what may
stand where was written down from the commands themselves (`tests/golden` keeps it true).
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import TypedDict

from finishlog.cli.completion.line import HalfTyped, fitting, for_bash, taken_apart
from finishlog.paths import database_path

FILE_WANTED = 1
# Stands among the words where a file may.
A_FILE = "<file>"

_COMMANDS = Path(__file__).with_name("commands.json")
_GLOBAL = ("--db", "--help", "--version", "--completion")

# What may stand somewhere: words, and in <> what has its name on record.
Words = list[str]


class Command(TypedDict, total=False):
    """What may follow a command, as `commands.json` has it.

    `commands` of a group; `options` and the words that each waits for, None for a switch; what
    stands first, second, …; what stands from there on.
    """

    commands: dict[str, Command]
    options: dict[str, Words | None]
    first: list[Words]
    then: Words


def complete(arguments: list[str]) -> int:
    """Print what may stand at the cursor, one a line; return FILE_WANTED when that is a file.

    The arguments are the shell, the line up to the cursor and, of bash, what it breaks words at.
    Nothing that goes wrong may disturb what a person types: then there is nothing to offer.
    """
    try:
        shell, line, breaks, *_ = *arguments, "", "", ""
        typed = taken_apart(line)
        found = candidates(typed)
    except Exception:
        return 0
    if found is None:
        return FILE_WANTED
    fit = fitting(typed, found)
    for each in for_bash(typed, fit, breaks) if shell == "bash" else fit:
        print(each)
    return 0


def candidates(typed: HalfTyped) -> Words | None:
    """Return what may stand at the cursor, fitting or not; None when that is a file."""
    words = list(typed.words)
    database: Path | None = None
    while words and words[0].startswith("-"):
        if words.pop(0) == "--db":
            if not words:
                return None
            database = Path(words.pop(0)).expanduser()
    at_an_option = typed.word.startswith("-")
    if at_an_option and not words:
        return list(_GLOBAL)
    command: Command = json.loads(_COMMANDS.read_text(encoding="utf-8"))
    while "commands" in command:
        if not words:
            return ["--help"] if at_an_option else list(command["commands"])
        if words[0] not in command["commands"]:
            return []
        command = command["commands"][words.pop(0)]
    before, waiting = _taken(command["options"], words)
    if waiting is None and at_an_option:
        return ["--help", *(name for name in command["options"] if name.startswith("--"))]
    here = [*command["first"][len(before) :], command["then"]][0]
    return _named(here if waiting is None else waiting, database, typed.word, before)


def _taken(options: dict[str, Words | None], words: Words) -> tuple[Words, Words | None]:
    """Tell words that are no options, and what the last option still waits for, from the rest."""
    before: Words = []
    waiting: Words | None = None
    for word in words:
        if waiting is not None:
            waiting = None
        elif word in options and word.startswith("-"):
            waiting = options[word]
        else:
            before.append(word)
    return before, waiting


def _named(wanted: Words, database: Path | None, word: str, before: Words) -> Words | None:
    """Put names on record in the place of `<part>`, `<room>`; None where a file is wanted."""
    if A_FILE in wanted:
        return None
    from finishlog.cli.completion.names import NamesToComplete

    names = NamesToComplete(database or database_path(), word, tuple(before))
    return [name for each in wanted for name in names.meant_by(each)]
