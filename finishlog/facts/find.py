"""Find a finish class by what a person calls it."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct


class ClassNames(Struct, frozen=True):
    """What one class is called."""

    key: str
    name: str
    aliases: tuple[str, ...] = ()


def find_class(text: str, known: Iterable[ClassNames]) -> tuple[str, ...]:
    """Return the keys that `text` may mean: one when it is clear, several to choose from, none.

    A whole key, name or alias is clear at once. Otherwise every word typed must begin a word of
    the class's names.
    """
    classes = tuple(known)
    typed = _plain(text)
    if not typed:
        return ()
    whole = tuple(c.key for c in classes if typed in {_plain(word) for word in _all_names(c)})
    return whole or tuple(c.key for c in classes if _begins(typed, c))


def _all_names(of: ClassNames) -> tuple[str, ...]:
    return (of.key, of.name, *of.aliases)


def _plain(text: str) -> str:
    return " ".join(text.casefold().replace("-", " ").replace(",", " ").split())


def _begins(typed: str, of: ClassNames) -> bool:
    words = {word for name in _all_names(of) for word in _plain(name).split()}
    return all(any(word.startswith(part) for word in words) for part in typed.split())
