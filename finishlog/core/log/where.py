"""Where on a face something was found or done, in the person's words: `left edge`."""

from __future__ import annotations

import re

_ARTICLES = frozenset({"a", "an", "the"})


def same_words(place: str) -> str:
    """Return a place so that it is itself again however it was typed: `The left-edge `."""
    words = re.split(r"[\s\-]+", place.casefold().strip())
    return " ".join(word for word in words if word not in _ARTICLES)


def reaches(done_at: str, place: str) -> bool:
    """Tell whether what was done at a place tells of another; without a place it was done all over.

    What was found without a place may be anywhere: only what was done all over tells of it.
    """
    return not done_at or same_words(done_at) == same_words(place)


def in_brackets(place: str) -> str:
    """Write a place behind what it is of: ` (left edge)`; nothing where there is none."""
    return f" ({place})" if place else ""
