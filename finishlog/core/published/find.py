"""Find what is published by what a person calls it."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Protocol

# What a finish is based on, as people say it, by the carriers that this may mean.
_BASED = re.compile(r"\b(oil|solvent|water)[ -]?(?:based?|borne)\b")
_CARRIERS = {
    "oil": frozenset({"mineral-spirits", "none"}),
    "solvent": frozenset({"mineral-spirits", "ethanol", "butyl-acetate", "xylene"}),
    "water": frozenset({"water"}),
}


class Called(Protocol):
    """Anything published that a person may name: a finish class, a wood, a glue."""

    @property
    def key(self) -> str:
        """Its key among the facts."""

    @property
    def name(self) -> str:
        """Its name."""

    @property
    def aliases(self) -> tuple[str, ...]:
        """What people call it beside its name."""


def names_of(of: Called) -> tuple[str, ...]:
    """Return all that it is called."""
    return (of.key, of.name, *of.aliases)


def plain(text: str) -> str:
    """Return a name as it is compared: without capitals, hyphens and commas."""
    return " ".join(text.casefold().replace("-", " ").replace(",", " ").split())


def said_carriers(text: str) -> frozenset[str] | None:
    """Return the carriers that a name speaks of: `oil-based`, `waterborne`; None: of none."""
    said = _BASED.search(text.casefold())
    return _CARRIERS[said[1]] if said else None


def without_carrier(text: str) -> str:
    """Return a name without the words of what it is based on."""
    return " ".join(_BASED.sub(" ", text.casefold()).split())


def find_called(text: str, known: Iterable[Called]) -> tuple[str, ...]:
    """Return the keys that `text` may mean: one when it is clear, several to choose from, none.

    A whole key, name or alias is clear at once. Otherwise every word typed must begin a word of
    the class's names.
    """
    among = tuple(known)
    typed = plain(text)
    if not typed:
        return ()
    whole = tuple(c.key for c in among if typed in {plain(word) for word in names_of(c)})
    return whole or tuple(c.key for c in among if _begins(typed, c))


def _begins(typed: str, of: Called) -> bool:
    words = {word for name in names_of(of) for word in plain(name).split()}
    return all(any(word.startswith(part) for word in words) for part in typed.split())
