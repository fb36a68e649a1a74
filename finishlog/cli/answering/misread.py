"""What the parser refuses, in one line: what was wrong, and the line to type instead.

The line is made of what was typed. A word too many goes to the option that is missing or that it
names; what is missing stands there in capitals, as in the help.
"""

from __future__ import annotations

import re
import shlex
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from difflib import get_close_matches
from typing import Any

from finishlog.errors import UsageFault

# What people say for an option; the first that the command has is meant.
SAID_FOR = {
    "time": "at",
    "when": "at",
    "date": "at due",
    "by": "due",
    "until": "due",
    "wood": "species",
    "timber": "species",
    "faces": "face",
    "side": "face",
    "pieces": "count",
    "number": "count",
    "steps": "as",
    "schedule": "as steps",
    "how": "method",
    "flood": "flooded",
    "thick": "film",
    "comment": "note",
    "text": "note",
    "reason": "because",
    "why": "because",
    "can": "from",
    "dry": "recoat",
    "sand": "sanded",
    "size": "amount",
}
# Options that take nothing that stands too many on a line.
_ASIDE = frozenset({"--help", "--json", "--note", "--verbose", "--archived"})


# Said between a thing and what is to become of it.
_FILL = frozenset({"to", "as", "into"})
_TIME = re.compile(
    r"\d{1,2}[:.]\d{2}|\d{4}-\d\d-\d\d|now|today|tonight|tomorrow|yesterday|noon|midnight|ago"
    r"|(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*",
    re.IGNORECASE,
)


def is_a_time(word: str) -> bool:
    """Tell whether a word can hardly be anything but a time."""
    return _TIME.fullmatch(word) is not None


class Typed:
    """One command line, taken apart by the command that it is for."""

    def __init__(self, words: Sequence[str], top: Any, context: Any = None) -> None:  # noqa: ANN401
        """Find the command from the top of the tree, which a command may be itself."""
        rest = list(words[2:] if words[:1] == ["--db"] else words)
        self.command, self.context, self.path = top, context, ["finishlog"]
        while rest and rest[0] in getattr(self.command, "commands", {}):
            self.command = self.command.commands[rest[0]]
            self.path.append(rest.pop(0))
        self.words = rest

    @property
    def name(self) -> str:
        """The command, without the program before it."""
        return " ".join(self.path[1:])

    @property
    def options(self) -> dict[str, Any]:
        """Its options by their long names."""
        return {
            name: each
            for each in self.command.params
            for name in (*each.opts, *each.secondary_opts)
            if name.startswith("--")
        }

    @property
    def arguments(self) -> list[Any]:
        """What it takes without a name, in its order."""
        return [each for each in self.command.params if not each.opts[0].startswith("-")]

    def parsed(self) -> tuple[dict[str, Any], list[str]]:
        """Return what was said, by name, and the words too many."""
        said, extra, _ = self.command.make_parser(self.context).parse_args(list(self.words))
        return {name: value for name, value in said.items() if value not in (None, ())}, extra

    def first_of(self, *names: str) -> str | None:
        """Return the first of these options that it has."""
        return next((name for name in names if name in self.options), None)

    def options_of(self, said: Mapping[str, Any]) -> Iterator[str]:
        """Yield the options as they were typed."""
        for name, each in self.options.items():
            value = said.get(each.name)
            if value is not None and name in self.words:
                yield name
                if isinstance(value, str):
                    yield value

    def line(self, words: Iterable[str]) -> str:
        """Write a line of this command; what stands in capitals as it is."""
        return " ".join(
            (*self.path, *(w if w.isupper() or "..." in w else shlex.quote(w) for w in words))
        )

    def with_(self, word: str, instead: str) -> str:
        """Write the line with another word for one of its own."""
        return self.line(instead if each == word else each for each in self.words)


def refusal(
    fault: Any,  # noqa: ANN401
    words: Sequence[str],
    top: Any,  # noqa: ANN401
    commands: Collection[str],
) -> UsageFault:
    """Say what the parser refused, and what to type. `commands`: all there are, by name."""
    typed = Typed(words, top, getattr(fault, "ctx", None))
    match type(fault).__name__:
        case "MissingParameter":
            return _missing(typed)
        case "NoSuchOption":
            return _no_such_option(typed, fault.option_name)
        case "BadOptionUsage":
            return _no_value(typed, fault)
        case "BadParameter":
            return _no_such_value(typed, fault)
        case _ if hasattr(typed.command, "commands"):
            return _no_such_command(typed, commands)
        case _:
            return _too_many(typed)


def _missing(typed: Typed) -> UsageFault:
    """Say what is missing; words too many, or the last of many parts, may be what it wants."""
    said, extra = typed.parsed()
    missing = [each for each in typed.command.params if each.required and each.name not in said]
    options = [each for each in missing if each.opts[0].startswith("--")]
    first = [*_in_place(typed, said)]
    many = next((a for a in typed.arguments if a.nargs == -1), None)
    if not extra and many is not None and options and len(said.get(many.name, ())) > len(options):
        first, extra = first[: -len(options)], first[-len(options) :]
    values = (*extra, *(_shown(each) for each in options[len(extra) :]))
    named = [word for o, value in zip(options, values, strict=False) for word in (o.opts[0], value)]
    what = " and ".join(each.opts[0] if each in options else f"{_shown(each)}" for each in missing)
    verb = "is" if len(missing) == 1 else "are"
    return UsageFault(
        f"{what} {verb} missing", typed.line([*first, *named, *typed.options_of(said)])
    )


def _in_place(typed: Typed, said: dict[str, Any]) -> Iterator[str]:
    """Yield what stands without a name in its order, and what should."""
    for each in typed.arguments:
        value = said.get(each.name)
        if value is None:
            if each.required:
                yield from _shown(each).split(" ")
        elif isinstance(value, tuple | list):
            yield from value
        else:
            yield value


def _shown(param: Any) -> str:  # noqa: ANN401
    """Name what is missing as the help does; where there are two ways, the first."""
    return str(param.metavar or param.name.upper()).partition(" | ")[0]


def _too_many(typed: Typed) -> UsageFault:
    """Say which word is too many, and where it belongs."""
    said, extra = typed.parsed()
    first, word = [*_in_place(typed, said)], extra[0]
    rest = [*typed.options_of(said)]
    too_many = f"{word!r} is too many here"
    fill = next((each for each in first if each in _FILL), None)
    if fill is not None:
        words = [each for each in (*first, *extra) if each != fill]
        return UsageFault(f"{fill!r} is no word of it", typed.line([*words, *rest]))
    if first and _shown(typed.arguments[-1]) == "NEW-NAME":
        whole = " ".join((first[-1], *extra))
        line = typed.line([*first[:-1], whole, *rest])
        return UsageFault("a name is one word to the shell", line)
    if f"--{word}" in typed.options:
        return UsageFault(
            f"{word!r} is an option", typed.line([*first, f"--{word}", *extra[1:], *rest])
        )
    if len(extra) == 1 and first and "/" in _shown(typed.arguments[-1]) and "/" not in first[-1]:
        return UsageFault(too_many, typed.line([*first[:-1], f"{first[-1]}/{word}", *rest]))
    if is_a_time(word):
        name = typed.first_of("--at", "--due")
        if name is not None:
            when = " ".join(extra)
            return UsageFault(f"a time goes with {name}", typed.line([*first, name, when, *rest]))
    numbers = [name for name, each in typed.options.items() if each.type.name in {"int", "integer"}]
    if word.isdigit() and len(numbers) == 1:
        return UsageFault(too_many, typed.line([*first, numbers[0], word, *rest]))
    others = [n for n, each in typed.options.items() if n not in _ASIDE and not each.is_flag]
    if others:
        return UsageFault(too_many, f"say by an option what it is: {', '.join(others)}")
    return UsageFault(too_many, typed.line([*first, *rest]))


def _no_such_option(typed: Typed, name: str) -> UsageFault:
    meant = [f"--{each}" for each in SAID_FOR.get(name.strip("-"), "").split()]
    near = [each for each in meant if each in typed.options][:1]
    near = near or get_close_matches(name, typed.options, n=1, cutoff=0.75)
    none = f"{typed.name} has no {name}"
    if near:
        return UsageFault(none, typed.with_(name, near[0]))
    there = [each for each in typed.options if each not in _ASIDE - {"--note"}]
    return UsageFault(
        none, f"it has {', '.join(there)}" if there else f"type finishlog {typed.name}"
    )


def _no_value(typed: Typed, fault: Any) -> UsageFault:  # noqa: ANN401
    each = typed.options.get(fault.option_name)
    if each is None or each.help is None:
        return UsageFault(fault.message.rstrip("."), f"type finishlog {typed.name} --help")
    words = [word for word in typed.words if word != fault.option_name]
    line = typed.line([*words, fault.option_name, _shown(each)])
    return UsageFault(f"{fault.option_name} wants a value", f"{line} ({each.help.rstrip('.')})")


def _no_such_value(typed: Typed, fault: Any) -> UsageFault:  # noqa: ANN401
    """Name the words of a closed set, or say where a number stands."""
    choices = getattr(fault.param.type, "choices", None)
    wrong = next((word for word in typed.words if repr(word) in fault.message), "")
    name, shown = fault.param.opts[0], _shown(fault.param).strip("[]")
    if choices:
        listed = ", ".join(map(str, choices))
        return UsageFault(f"{name} takes no {wrong!r}", f"type one of: {listed}")
    what = f"{wrong!r} is no number"
    if name.startswith("-"):
        return UsageFault(what, typed.with_(wrong, "2"))
    return UsageFault(what, f"{typed.with_(wrong, shown)} ({(fault.param.help or '').rstrip('.')})")


def _no_such_command(typed: Typed, commands: Collection[str]) -> UsageFault:
    """Name what a group of commands has, and what was nearly said."""
    there, word = typed.command.commands, typed.words[0]
    none = f"{typed.name} has no {word!r}"
    near = get_close_matches(word, there, n=1, cutoff=0.7)
    if near:
        return UsageFault(none, typed.line([near[0], *typed.words[1:]]))
    if word in commands:
        return UsageFault(none, shlex.join(["finishlog", *typed.words]))
    listed = ", ".join(there)
    if "show" in there:
        shown = typed.line(["show", word])
        return UsageFault(none, f"{shown}, or one of: {listed}")
    return UsageFault(none, f"type one of: {listed}")
