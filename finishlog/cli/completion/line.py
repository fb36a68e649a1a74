"""Take a half-typed line apart as a shell would, and write candidates as the shell wants them."""

from __future__ import annotations

import re
import shlex
from collections.abc import Iterable
from typing import NamedTuple

# Stands for the cursor; no one types it.
_CURSOR = "\N{SYMBOL FOR UNIT SEPARATOR}"
_MUST_BE_QUOTED = re.compile(r"([\s\\'\"`$&|;<>(){}\[\]*?!#~])")
_NOT_PRINTED = re.compile(r"[\x00-\x1f\x7f]")


class HalfTyped(NamedTuple):
    """The words before the cursor, after the program's name, and the word at it.

    `quote` is the quotation mark that stands open, if any.
    """

    words: tuple[str, ...]
    word: str
    quote: str = ""


def taken_apart(line: str) -> HalfTyped:
    """Split a line up to the cursor; what cannot be split has no words."""
    for quote in ("", "'", '"'):
        try:
            _, *words, last = shlex.split(f"{line}{_CURSOR}{quote}")
        except ValueError:
            continue
        return HalfTyped(tuple(words), last.removesuffix(_CURSOR), quote)
    return HalfTyped((), "")


def fitting(typed: HalfTyped, candidates: Iterable[str]) -> list[str]:
    """Keep the candidates that begin as the word at the cursor, in capitals or not."""
    low = typed.word.casefold()
    fit = (c for c in candidates if c.casefold().startswith(low) and not _NOT_PRINTED.search(c))
    return list(dict.fromkeys(fit))


def for_bash(typed: HalfTyped, candidates: Iterable[str], breaks: str) -> list[str]:
    """Write candidates for bash, which replaces only what follows the last break in a word.

    `breaks` are the signs that bash breaks words at, COMP_WORDBREAKS; an @ that breaks a word
    stays with what follows. Inside quotation marks nothing is broken or quoted again.
    """
    if typed.quote:
        return list(candidates)
    begins = [typed.word.rfind(sign) + (sign != "@") for sign in ":=@" if sign in breaks]
    kept = max([0, *begins])
    return [_MUST_BE_QUOTED.sub(r"\\\1", candidate[kept:]) for candidate in candidates]
