"""One line for many pieces: `doors 4-9 same as 3 but 7 sanded back`, taken apart.

Numbers behind a name are pieces of it; behind `same as` and `but` they are pieces of the same part.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from msgspec import Struct

_NUMBERS = re.compile(r"[0-9][0-9,\-–]*")
_SAME = frozenset({"same", "like", "ditto"})
_AS = frozenset({"as", "like", "to", "with"})
_BUT = frozenset({"but", "except", "without", "excepting"})
_FILLED = frozenset({"not", "for", "only", "and", "was", "were", "got"})


class SameAs(Struct, frozen=True):
    """What was typed: on these parts what `like` got last; `but` is left out, `instead` done there.

    All are selectors as `log` takes them; `instead` is words, empty: nothing was said.
    """

    parts: tuple[str, ...]
    like: str
    but: tuple[str, ...] = ()
    instead: str = ""

    def of_parts(self, parts: tuple[str, ...]) -> SameAs:
        """Return the same of parts that were settled: pieces of the first are of that one."""
        old, new = (each[0].partition(":")[0] for each in (self.parts, parts))

        def settled(selector: str) -> str:
            name, colon, pieces = selector.partition(":")
            return f"{new}{colon}{pieces}" if name == old else selector

        but = tuple(map(settled, self.but))
        return SameAs(parts, settled(self.like), but, self.instead)


def same_as(words: Sequence[str]) -> SameAs | None:
    """Read such a line; None: it is none."""
    told = " ".join(words).split()
    at = next((n for n, word in enumerate(told) if n and word.casefold() in _SAME), None)
    if at is None:
        return None
    parts = _selectors(told[:at])
    rest = told[at + 1 :]
    rest = rest[1:] if rest and rest[0].casefold() in _AS else rest
    cut = next((n for n, word in enumerate(rest) if word.casefold() in _BUT), len(rest))
    like = _selectors(rest[:cut], parts)
    if len(like) != 1 or not parts:
        return None
    left = [word for word in rest[cut + 1 :] if word.casefold() not in _FILLED]
    named = next((n for n, word in enumerate(left) if not _is_named(word)), len(left))
    but = _selectors(left[:named], parts)
    return SameAs(parts, like[0], but, " ".join(left[named:]) if but else "")


def _is_named(word: str) -> bool:
    """Tell whether a word behind `but` is a piece: `7`, `7,8`, `doors:7`."""
    return _NUMBERS.fullmatch(word) is not None or ":" in word


def _selectors(words: Sequence[str], of: Sequence[str] = ()) -> tuple[str, ...]:
    """Put numbers behind the name before them, or behind the name of the first part."""
    found: list[str] = []
    name = of[0].partition(":")[0] if of else ""
    for word in words:
        if _NUMBERS.fullmatch(word) is None:
            found.append(word)
            continue
        numbers = word.replace("–", "-").strip(",")
        if found and ":" not in found[-1]:
            found[-1] = f"{found[-1]}:{numbers}"
        elif found:
            found[-1] = f"{found[-1]},{numbers}"
        elif name:
            found.append(f"{name}:{numbers}")
    return tuple(found)
