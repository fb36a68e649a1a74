"""How commands, quantities and sources in a text are typed and read by who gets it."""

from __future__ import annotations

import re
import shlex
from collections.abc import Iterator, Mapping

from msgspec.json import decode

from finishlog.core.commands import TYPES, Do, Option, Said
from finishlog.core.measure.quantities import OPENS, worded
from finishlog.core.measure.units import Units
from finishlog.core.published.sources import CITES, by_ids

# A command is typed as it is called, but for these; an option too.
_TYPED = {Do.CAN_THROWN_OUT: "can thrown-out"}
_COMMAND = re.compile(r'⟦(\[(?:"(?:[^"\\]|\\.)*"|[^"⟦⟧])*\])⟧')
_SI = Units()


def needs_units(text: str) -> bool:
    """Tell whether a text holds a quantity."""
    return OPENS in text


def spelt(text: str, units: Units = _SI) -> str:
    """Return a text with all that it carries as the person reads and types it."""
    if CITES in text:
        text = by_ids(text)
    if TYPES in text:
        text = _COMMAND.sub(lambda found: _command(found, units), text)
    return worded(text, units)


def called(do: Do) -> str:
    """Return the words that a command is called by."""
    return _TYPED.get(do, do.name.lower().replace("_", " "))


def _command(found: re.Match[str], units: Units) -> str:
    try:
        said, name, words, options = decode(found[1])
        begins = {Said.WHOLE: f"finishlog {called(Do[name])}", Said.WORDS: called(Do[name])}
        typed = shlex.join(worded(word, units) for word in (*words, *_options(options)))
    except (KeyError, TypeError, ValueError):
        # A person wrote so.
        return found[0]
    return " ".join(bit for bit in (begins.get(said, ""), typed) if bit)


def _options(options: Mapping[str, Option]) -> Iterator[str]:
    for name, value in options.items():
        for each in value if isinstance(value, list) else [value]:
            yield f"--{name.replace('_', '-')}"
            if each is not True:
                yield str(each)
