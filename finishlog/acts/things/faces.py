"""Read faces and zones as a person types them: `front`, `back:hidden`, `top=field,inlay:walnut`.

After the colon of a face stands what it is for, and whether it slides or shuts against another
(`sides:slides`, `edges:edge:shuts`), after the colon of a zone its wood. Zones are all
named: `front=left,right` divides a whole face.
"""

from __future__ import annotations

from collections.abc import Sequence

from finishlog.acts.answers.made import a_name
from finishlog.acts.meant.said import one_meant
from finishlog.core.shop.things import Face, FaceKind, Meets
from finishlog.errors import UsageFault
from finishlog.store.things.add import NewFace, NewZone

ALL_ROUND = NewFace("all round")
_HOW = "write front, back:hidden, tenon:joint, edges:edge, sides:slides or 'top=field,inlay:walnut'"


def read_faces(typed: Sequence[str], *, zones_too: bool = False) -> tuple[NewFace, ...]:
    """Read faces; UsageFault when one is named twice or cannot be read.

    `zones_too`: also a zone that is divided, `front/left=top,bottom`.
    """
    faces = tuple(_face(text, zones_too=zones_too) for text in typed)
    _once([face.name for face in faces], "face")
    return faces


def _face(text: str, *, zones_too: bool) -> NewFace:
    said, equals, zones = text.partition("=")
    name, colon, kind = (bit.strip() for bit in said.partition(":"))
    whole, slash, zone = name.partition("/")
    if zones_too and slash:
        if colon or not equals:
            raise UsageFault(f"{said!r} is a zone: it is only divided", f"write {name}=left,right")
        face = f"{a_name(whole, 'face')}/{a_name(zone, 'zone')}"
    else:
        face = a_name(name, "face")
    of, meets = _what_for(kind) if colon else (FaceKind.SHOW, None)
    return NewFace(face, of, _zones(face, zones) if equals else (NewZone(),), meets)


def _what_for(typed: str) -> tuple[FaceKind, Meets | None]:
    """Read what stands behind the colon: what a face is for, and whether it slides or shuts."""
    kind, meets = FaceKind.SHOW, None
    for word in (each.strip() for each in typed.split(":")):
        known = next((m for m in Meets if m.value == word.casefold()), None)
        kind, meets = (kind, known) if known else (_kind(word), meets)
    return kind, meets


def _kind(word: str) -> FaceKind:
    try:
        return one_meant(FaceKind, word, f"{word!r} is no kind of face")
    except UsageFault as fault:
        raise UsageFault(fault.message, f"{fault.hint}; {_HOW}") from None


def _zones(face: str, typed: str) -> tuple[NewZone, ...]:
    zones = []
    for text in typed.split(","):
        name, colon, species = (bit.strip() for bit in text.partition(":"))
        if not name or (colon and not species):
            raise UsageFault(f"{typed!r} does not name the zones of {face}", _HOW)
        zones.append(NewZone(a_name(name, "zone"), species or None))
    _once([zone.name for zone in zones], "zone")
    return tuple(zones)


def _once(names: Sequence[str], what: str) -> None:
    low = [name.casefold() for name in names]
    twice = next((name for name in low if low.count(name) > 1), None)
    if twice is not None:
        raise UsageFault(f"the {what} {twice!r} is named twice", f"name each {what} once")


def copied(faces: Sequence[Face]) -> tuple[NewFace, ...]:
    """Return faces like those of another part."""
    return tuple(
        NewFace(
            face.name, face.kind, tuple(NewZone(z.name, z.species) for z in face.zones), face.meets
        )
        for face in faces
    )
