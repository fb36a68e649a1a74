"""The names on record that may stand where a command asks for a part, a room, a can."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property
from pathlib import Path

from finishlog.asks.look.names import Names, PartNames, names_on_record, species_on_record
from finishlog.core.shop.names import PathName


class NamesToComplete:
    """The names on record, read once and only when a name is wanted."""

    def __init__(self, database: Path, word: str, before: tuple[str, ...] = ()) -> None:
        self._database = database
        self._word = word
        self._before = before

    def meant_by(self, wanted: str) -> Iterable[str]:
        """Return the names of a kind (`<part>`, `<room>`); any other word is its own name."""
        if not wanted.startswith("<"):
            return (wanted,)
        if wanted == "<species>":
            return species_on_record(self._database)
        names = self._names
        found: dict[str, Iterable[str]] = {
            "<project>": names.projects,
            "<project/>": (f"{project}/" for project in names.projects),
            "<part>": _part_words(self._word, names.parts),
            "<member:>": (f"{_name(part)}:" for part in names.parts),
            "<face>": _faces(self._before, names.parts),
            "<product>": names.products,
            "<room>": names.rooms,
            "<steps>": names.steps,
            "<can>": names.containers,
        }
        return found[wanted]

    @cached_property
    def _names(self) -> Names:
        return names_on_record(self._database)


def _part_words(word: str, parts: tuple[PartNames, ...]) -> list[str]:
    """Return paths, names that only one part has, and behind @ and : faces and pieces."""
    selector, at, faces = word.partition("@")
    if at:
        chosen = f"{selector}@{faces[: faces.rfind(',') + 1]}"
        return [f"{chosen}{face}" for part in _meant(selector, parts) for face in part.faces]
    selector, colon, _ = word.partition(":")
    if colon:
        return [f"{selector}:{n}" for part in _meant(selector, parts) for n in part.pieces]
    names = [_name(part) for part in parts] if word else []
    return [*(part.path for part in parts), *(n for n in names if names.count(n) == 1)]


def _meant(selector: str, parts: tuple[PartNames, ...]) -> list[PartNames]:
    """Return the parts that a selector begins to name, the whole name before beginnings."""
    low = selector.partition(":")[0].casefold()
    named = [(part, {part.path.casefold(), _name(part).casefold()}) for part in parts]
    whole = [part for part, names in named if low in names]
    return whole or [p for p, names in named if any(name.startswith(low) for name in names)]


def _faces(before: tuple[str, ...], parts: tuple[PartNames, ...]) -> list[str]:
    """Return the faces of the parts typed before; of all parts when none was."""
    typed = [part for word in before for part in _meant(word, parts)]
    return [face for part in typed or parts for face in part.faces]


def _name(part: PartNames) -> str:
    return PathName.read(part.path).name
