"""Where figures come from; a source that a sentence of the facts names: its id, `⟪tm-43-0139⟫`."""

from __future__ import annotations

import re
from collections.abc import Iterable
from enum import StrEnum
from typing import Literal

from finishlog.core.finish.classes import Published

# Begins a source in a text.
CITES = "⟪"
_CITED = re.compile(r"⟪([^⟪⟫]+)⟫")


class Seen(StrEnum):
    """How a source was seen by whoever copied its figures."""

    READ = "read"
    SECOND_HAND = "read second-hand"
    MEMORY = "memory"


class Source(Published, frozen=True):
    """Where a figure comes from. `seen`: how it was seen.

    `tier`: 1 government, standard or university; 2 trade book of the period; 3 trade press or page.
    """

    id: str
    tier: Literal[1, 2, 3]
    title: str
    seen: Seen
    note: str = ""


def cited(texts: Iterable[str]) -> tuple[str, ...]:
    """Return the ids of the sources that texts name, each once, in their order."""
    return tuple(dict.fromkeys(id_ for text in texts for id_ in _CITED.findall(text)))


def by_ids(text: str) -> str:
    """Return a text with the ids of its sources as they are read."""
    return _CITED.sub(r"\1", text)
