"""A word that a person says, read as the one of ours that it means, or one clear refusal."""

from __future__ import annotations

from enum import StrEnum
from typing import TypeVar

from finishlog.core.log.words import Operation
from finishlog.core.shop.trade_words import SAID_AS, goes_under, meant, plain_word
from finishlog.errors import Ambiguous, UsageFault

Ours = TypeVar("Ours", bound=StrEnum)


def one_meant(kind: type[Ours], typed: str, message: str) -> Ours:
    """Read a word; Ambiguous when it may be several of ours, UsageFault (`message`) when none."""
    found = meant(kind, typed)
    if len(found) == 1:
        return kind(found[0])
    names = tuple(each.value for each in found)
    if found:
        raise Ambiguous(
            f"{typed!r} may be {' or '.join(names)}",
            f"type one of: {', '.join(names)}",
            typed,
            names,
        )
    near = near_words(kind, typed)
    hint = f"type one of: {', '.join(each.value for each in kind)}"
    if deed := goes_under(typed, kind):
        hint = f"it goes with {deed('PART')}; {hint}"
    raise UsageFault(message, f"did you mean {' or '.join(near)}? {hint}" if near else hint)


def near_words(kind: type[StrEnum], typed: str) -> tuple[str, ...]:
    """Return those of ours whose name, or what people say for it, is nearly so."""
    from difflib import get_close_matches

    said = SAID_AS[kind]
    ours = {each.value: (each,) for each in kind if each.value != Operation.COAT.value}
    known = {**said, **ours}
    near = get_close_matches(plain_word(typed), known, n=3, cutoff=0.75)
    return tuple(dict.fromkeys(each.value for word in near for each in known[word]))
