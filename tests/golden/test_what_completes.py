"""What completion may offer was written down from the commands, and is still what they say.

`FINISHLOG_WRITE_GOLDEN=1 pytest tests/golden` writes it anew. What a word names is told by its
metavar (PART, ROOM, CLASS, NAME in a group) or, of an option, by its own name.
"""

from __future__ import annotations

import json
import os
import re
from collections.abc import Iterator
from enum import StrEnum
from pathlib import Path
from typing import Any

from typer.main import get_command

import finishlog
from finishlog.cli.app import command_line
from finishlog.cli.completion.complete import A_FILE
from finishlog.core.air.heater import HeaterKind
from finishlog.core.air.place import Fixture, Lives, PlaceKind
from finishlog.core.finish.sheet import MAY_HOLD
from finishlog.core.log.words import FaultKind, Found, Operation, Outcome, RagsDeed
from finishlog.facts.load import load_facts

KEPT = Path(finishlog.__file__).parent / "cli" / "completion" / "commands.json"


def _words(of: type[StrEnum]) -> list[str]:
    return [word.value for word in of]


WORK = [word for word in _words(Operation) if word != Operation.COAT]
CLASSES = list(load_facts().classes)
ROWS = [row.id for row in (*load_facts().overcoats, *load_facts().wood_rules)]
FILE = [A_FILE]
KINDS = {
    **{kind: [f"<{kind}>"] for kind in ("project", "part", "face", "product", "room", "steps")},
    **{kind: [f"<{kind}>"] for kind in ("can", "species")},
    "project/name": ["<project/>"],
    "member": ["<member:>"],
    "what": ["<product>", *WORK],
    "step": ["<product>", *WORK],
    "class": CLASSES,
    "row": ROWS,
    # What past finishes are looked up by.
    "word": ["<species>", "<product>", *CLASSES, "<steps>", "<project>"],
    "hazard": [hazard.value for hazard in MAY_HOLD],
    "found": _words(Found),
    "kind": _words(FaultKind),
    "thing": _words(Fixture),
    "place": _words(PlaceKind),
    "heater": _words(HeaterKind),
    "who": _words(Lives),
    "outcome": _words(Outcome),
    "deed": _words(RagsDeed),
    **dict.fromkeys(("file", "dir", "path"), FILE),
}
ALSO_CALLED = {"of": "member"}


def what_follows(command: Any, path: tuple[str, ...] = ()) -> dict[str, Any]:
    """Tell what may follow a command, in the form of `commands.json`."""
    if hasattr(command, "commands"):
        below = {n: what_follows(c, (*path, n)) for n, c in command.commands.items()}
        if not path:
            below = {name: below[name] for name in command.list_commands(None)}
        return {"commands": below}
    arguments = [p for p in command.params if p.param_type_name == "argument"]
    options = [p for p in command.params if p.param_type_name == "option"]
    return {
        "options": {
            name: None if option.is_flag else _values(option, _kinds_of_option(option), path)
            for option in options
            for name in (*option.opts, *option.secondary_opts)
        },
        "first": list(_first(arguments, path)),
        "then": next((_values(a, _kinds_of(a), path) for a in arguments if a.nargs == -1), []),
    }


def _first(arguments: list[Any], path: tuple[str, ...]) -> Iterator[list[str]]:
    for number, argument in enumerate(arguments):
        if argument.nargs != -1:
            yield from [_values(argument, _kinds_of(argument), path)] * argument.nargs
            continue
        if number == 0:
            # `PART... [WHAT]`: the first word is a part.
            yield _values(argument, _kinds((argument.metavar or argument.name).split()[0]), path)
        return


def _values(parameter: Any, kinds: list[str], path: tuple[str, ...]) -> list[str]:
    if choices := getattr(parameter.type, "choices", None):
        return [str(getattr(choice, "value", choice)) for choice in choices]
    # In the group of rooms NAME is the name of a room; what is new has no name yet.
    named = "" if path[1:2] == ("new",) else path[0]
    wanted = [w for kind in kinds for w in KINDS.get(named if kind == "name" else kind, ())]
    return FILE if A_FILE in wanted else wanted


def _kinds_of(argument: Any) -> list[str]:
    return _kinds(argument.metavar or argument.name)


def _kinds(metavar: str) -> list[str]:
    """Take a metavar apart: `PART... [WHAT]` asks for a part, then what."""
    return [kind.lower() for kind in re.findall(r"[A-Za-z]+(?:[-/_][A-Za-z]+)*", metavar)]


def _kinds_of_option(option: Any) -> list[str]:
    named = max(option.opts, key=len).removeprefix("--")
    return _kinds(option.metavar) if option.metavar else [ALSO_CALLED.get(named, named)]


def test_what_completion_knows_is_what_the_commands_say():
    found = what_follows(get_command(command_line()))
    if os.environ.get("FINISHLOG_WRITE_GOLDEN"):
        lines = (f"{json.dumps(n)}: {json.dumps(c)}" for n, c in found["commands"].items())
        KEPT.write_text('{"commands": {\n' + ",\n".join(lines) + "\n}}\n", encoding="utf-8")
    # As text: what is offered first is the order of it.
    assert json.dumps(json.loads(KEPT.read_text(encoding="utf-8"))) == json.dumps(found)
