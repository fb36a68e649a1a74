"""What may stand where a command asks for a PART, a ROOM, a CLASS: by the word it asks with."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from finishlog.asks.look.names import (
    Names,
    PartNames,
    class_names,
    names_on_record,
    species_on_record,
)
from finishlog.core.log.entries import FaultKind, Found, Operation, Outcome, RagsDeed

# In these groups NAME is the name of one of the things of the group.
_GROUPS = frozenset({"project", "part", "steps", "product", "room", "class", "can"})


class NamesToComplete:
    """The names on record, read once and only when a name is wanted."""

    def __init__(self, database: Path, word: str, before: tuple[str, ...] = ()) -> None:
        self._database = database
        self._word = word
        self._before = before
        self._names: Names | None = None

    def of_kind(self, kind: str, group: str) -> tuple[str, ...]:
        """Return what is called so: `part`, `room`; `name` in a group is one of the group's."""
        if kind == "name" and group in _GROUPS:
            kind = group
        words = _WORDS.get(kind)
        if words is not None:
            return words
        if kind == "word":
            # What past finishes are looked up by.
            several = ("species", "product", "class", "steps", "project")
            return tuple(name for each in several for name in self.of_kind(each, group))
        if kind == "class":
            return class_names()
        return species_on_record(self._database) if kind == "species" else self._on_record(kind)

    def _on_record(self, kind: str) -> tuple[str, ...]:
        names = self._read()
        found: Iterable[str] = {
            "project": names.projects,
            "project/name": (f"{project}/" for project in names.projects),
            "part": _part_words(self._word, names.parts),
            "member": (f"{_name(part)}:" for part in names.parts),
            "face": _faces(self._before, names.parts),
            "product": names.products,
            "what": (*names.products, *_WORK),
            "step": (*names.products, *_WORK),
            "room": names.rooms,
            "steps": names.steps,
            "can": names.containers,
        }.get(kind, ())
        return tuple(found)

    def _read(self) -> Names:
        if self._names is None:
            self._names = names_on_record(self._database)
        return self._names


_WORK = tuple(operation.value for operation in Operation if operation is not Operation.COAT)
_WORDS = {
    "found": tuple(found.value for found in Found),
    "kind": tuple(kind.value for kind in FaultKind),
    "outcome": tuple(outcome.value for outcome in Outcome),
    "deed": tuple(deed.value for deed in RagsDeed),
}


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
    return part.path.partition("/")[2]
