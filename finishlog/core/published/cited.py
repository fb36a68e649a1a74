"""A source that a sentence of the facts names: carried as its id, `⟪tm-43-0139⟫`."""

from __future__ import annotations

import re
from collections.abc import Iterable

# Begins a source in a text.
CITES = "⟪"
_CITED = re.compile(r"⟪([^⟪⟫]+)⟫")


def cited(texts: Iterable[str]) -> tuple[str, ...]:
    """Return the ids of the sources that texts name, each once, in their order."""
    return tuple(dict.fromkeys(id_ for text in texts for id_ in _CITED.findall(text)))


def by_ids(text: str) -> str:
    """Return a text with the ids of its sources as they are read."""
    return _CITED.sub(r"\1", text)
