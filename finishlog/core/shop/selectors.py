"""Find the parts that a person means: `cabinet/case`, `cab/ca`, `doors@back`, `legs:1-3`, `cab/*`.

After @ stand faces, or zones of a face: `board@front/left`, `table@top/inlay`.

An exact name wins over a beginning, in the project and in the part; capitals do not matter. What
fits several parts is never guessed.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.shop.names import PathName, fitting

ANY = "*"


class PieceRange(NamedTuple):
    """Pieces by number, both ends included."""

    first: int
    last: int


class Selector(Struct, frozen=True):
    """What was typed, taken apart. No project: any; no pieces: all; no faces: not said."""

    text: str
    project: str
    part: str
    pieces: tuple[PieceRange, ...] = ()
    faces: tuple[str, ...] = ()


class Known(Struct, frozen=True):
    """A part that there is: `project/part`, its pieces by number, its faces and zones by name."""

    path: str
    pieces: tuple[int, ...]
    faces: tuple[str, ...]
    # As they are typed: `front/left`.
    zones: tuple[str, ...] = ()


class Chosen(Struct, frozen=True):
    """One part that is meant, with the pieces meant; its faces or zones. None: none were said."""

    path: str
    pieces: tuple[int, ...]
    faces: tuple[str, ...]
    # The name it had before, when it was typed by that.
    once: str = ""


class Picked(Struct, frozen=True):
    """What a selector means, in the order of the known parts."""

    found: tuple[Chosen, ...]


class NoSuch(Struct, frozen=True):
    """Nothing fits `wanted`; `near` are selectors that might have been meant."""

    wanted: str
    near: tuple[str, ...]


class Several(Struct, frozen=True):
    """Too much fits `wanted`; each candidate is a selector that means one thing."""

    wanted: str
    candidates: tuple[str, ...]


Resolved = Picked | NoSuch | Several


def parse(text: str) -> Selector:
    """Take a selector apart; ValueError says what is wrong with it."""
    named, at, faces = text.strip().partition("@")
    path, colon, pieces = named.partition(":")
    project, slash, part = path.rpartition("/")
    if not part or (slash and not project) or "/" in project:
        piece, of, name = project.partition("/")
        if part and piece and of and name and "/" not in name and not at:
            raise ValueError(f"{text!r} names no part; a face is told by @: {project}@{part}")
        raise ValueError(f"{text!r} names no part: project/part, such as cabinet/doors")
    if any(ANY in name and name != ANY for name in (project, part)):
        raise ValueError(f"{text!r}: * stands for every name, such as cabinet/*")
    names = tuple(face.strip() for face in faces.split(",")) if at else ()
    if at and not all(names):
        raise ValueError(f"{text!r} names no face after @, such as doors@back")
    return Selector(text.strip(), project, part, _ranges(pieces, text) if colon else (), names)


def resolve(selector: Selector, known: Sequence[Known]) -> Resolved:
    """Find the parts, pieces and faces that a selector means."""
    parts = _parts(selector, known)
    if not parts:
        return NoSuch(selector.text, _near(selector, known))
    if len(parts) > 1 and ANY not in (selector.project, selector.part):
        return Several(selector.text, tuple(_full(part, selector) for part in parts))
    return _chosen(selector, parts)


def _parts(selector: Selector, known: Sequence[Known]) -> list[Known]:
    among = list(known)
    if selector.project:
        among = _best(selector.project, among, lambda part: PathName.read(part.path).within)
    return _best(selector.part, among, lambda part: PathName.read(part.path).name)


def _best(typed: str, among: list[Known], name: Callable[[Known], str]) -> list[Known]:
    return among if typed == ANY else fitting(typed, among, name)


def said_in_full(selector: Selector, path: str) -> bool:
    """Tell whether a selector names a part by its whole name, in any project or its own."""
    project, name = PathName.read(path.casefold())
    return selector.part.casefold() in {ANY, name} and selector.project.casefold() in {
        "",
        ANY,
        project,
    }


def resolve_with_old(
    selector: Selector, known: Sequence[Known], old: Sequence[tuple[Known, str]]
) -> Resolved:
    """Find what a selector means, also by the paths that parts had before.

    `old` holds such a path and the one that the part has now. A name that a living part has wins;
    an old name beside mere beginnings of others is not guessed.
    """
    found = resolve(selector, known)
    whole = isinstance(found, Picked) and all(said_in_full(selector, c.path) for c in found.found)
    meant = [(k, path) for k, path in old if said_in_full(selector, k.path)]
    if whole or not meant:
        return found
    if len({path for _, path in meant}) == 1:
        # Renamed twice, itself or its project: whichever of its old names fits, it is this part.
        meant = meant[-1:]
    before = resolve(selector, [k for k, _ in meant])
    now = {k.path: path for k, path in meant}
    if isinstance(before, NoSuch):
        return found if isinstance(found, Picked) else before
    if isinstance(before, Picked) and isinstance(found, NoSuch):
        chosen = [replace(c, path=now[c.path], once=c.path) for c in before.found]
        return Picked(tuple(chosen))
    paths = dict.fromkeys([*now.values(), *_paths(found)])
    if len(paths) == 1 and isinstance(found, Picked):
        return found
    return Several(selector.text, tuple(paths))


def _paths(found: Resolved) -> list[str]:
    if isinstance(found, Picked):
        return [chosen.path for chosen in found.found]
    return list(found.candidates) if isinstance(found, Several) else []


def _chosen(selector: Selector, parts: list[Known]) -> Resolved:
    if ANY in (selector.project, selector.part):
        # `cabinet/*@back` is every part that has a back.
        parts = [p for p in parts if all(faces_meant(f, p) for f in selector.faces)] or parts
    found = []
    for part in parts:
        if not all(_has(part, wanted) for wanted in selector.pieces):
            return NoSuch(selector.text, (f"{part.path}:{_shown(part.pieces)}",))
        faces = []
        for typed in selector.faces:
            fitting = faces_meant(typed, part)
            if len(fitting) != 1:
                near = tuple(f"{part.path}@{face}" for face in fitting or faces_near(typed, part))
                return (Several if fitting else NoSuch)(selector.text, near)
            faces += fitting
        pieces = tuple(
            number
            for number in part.pieces
            if not selector.pieces or any(a <= number <= b for a, b in selector.pieces)
        )
        found.append(Chosen(part.path, pieces, tuple(dict.fromkeys(faces))))
    return Picked(tuple(found))


def faces_meant(typed: str, part: Known) -> list[str]:
    """Return the faces or zones of a part that fit: `ba`, `front/left`, `fr/le`, `inlay`.

    A zone by its own name alone is found when no face is called so.
    """
    face, zone = PathName.read(typed)
    if face:
        return fitting(zone, _zones_on(face, part), _own_name)
    return fitting(typed, part.faces, str) or fitting(typed, part.zones, _own_name)


def faces_near(typed: str, part: Known) -> tuple[str, ...]:
    """Return what might be typed instead: the zones of the face that was named, or the faces."""
    face, zone = PathName.read(typed)
    return tuple(_zones_on(face or zone, part)) or part.faces


def _zones_on(face: str, part: Known) -> list[str]:
    faces = fitting(face, part.faces, str)
    return [zone for zone in part.zones if PathName.read(zone).within in faces]


def _own_name(zone: str) -> str:
    return PathName.read(zone).name


def _near(selector: Selector, known: Sequence[Known]) -> tuple[str, ...]:
    """Suggest parts whose name resembles the typed one, or a project typed as a part."""
    low = selector.part.casefold()
    projects = dict.fromkeys(PathName.read(part.path).within for part in known)
    whole = [f"{name}/{ANY}" for name in projects if name.casefold().startswith(low)]
    by_name: dict[str, list[str]] = {}
    for part in known:
        by_name.setdefault(PathName.read(part.path).name.casefold(), []).append(part.path)
    from difflib import get_close_matches

    alike = get_close_matches(low, by_name, n=3)
    alike += [name for name in by_name if low in name and name not in alike]
    if selector.project:
        whole = []
    return tuple([*whole, *(path for name in alike for path in by_name[name])][:5])


def _ranges(typed: str, text: str) -> tuple[PieceRange, ...]:
    ranges = []
    for bit in typed.split(","):
        found = re.fullmatch(r"\s*(\d{1,6})(?:\s*-\s*(\d{1,6}))?\s*", bit)
        if found is None:
            raise ValueError(f"{text!r}: pieces are numbers, such as legs:1-3 or legs:2,5")
        first, last = int(found[1]), int(found[2] or found[1])
        if first > last:
            raise ValueError(f"{text!r}: {first}-{last} runs backwards: type {last}-{first}")
        ranges.append(PieceRange(first, last))
    return tuple(ranges)


def _has(part: Known, wanted: PieceRange) -> bool:
    inside = sum(wanted.first <= number <= wanted.last for number in part.pieces)
    return inside == wanted.last - wanted.first + 1


def _shown(pieces: tuple[int, ...]) -> str:
    """Write piece numbers as a selector takes them: `1-3,7`."""
    runs: list[list[int]] = []
    for number in sorted(pieces):
        if runs and number == runs[-1][1] + 1:
            runs[-1][1] = number
        else:
            runs.append([number, number])
    return ",".join(f"{a}-{b}" if a < b else f"{a}" for a, b in runs)


def _full(part: Known, selector: Selector) -> str:
    """Write the typed selector with the whole path of one part."""
    at = selector.text.find(":") if ":" in selector.text else selector.text.find("@")
    return part.path + (selector.text[at:] if at >= 0 else "")
