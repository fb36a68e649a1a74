"""Change a part: wood, room, note, pieces, faces and zones. Coats that are on stay as they are."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.answers.made import Made, in_words
from finishlog.acts.things.faces import ALL_ROUND, read_faces
from finishlog.acts.things.parts import (
    NO_OLD_FINISH,
    how_many,
    no_rules_for,
    one_part,
    read_old_finish,
)
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.film.old_finish import name_of
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import (
    Face,
    FaceKind,
    Part,
    Shop,
    ThingKind,
    Zone,
    zone_name,
)
from finishlog.core.zone.grouping import spans
from finishlog.errors import NotFound, UsageFault
from finishlog.picking import pick_room
from finishlog.store.log.ledger import Ledger
from finishlog.store.things import edit
from finishlog.store.things.add import NewFace, NewZone
from finishlog.store.things.read_shop import read_shop


class PartEdit(Struct, frozen=True):
    """What is to be different; None or nothing: as it was.

    `faces` add a face, divide one or a zone of it into zones, or say what one is for.
    """

    species: str | None = None
    room: str | None = None
    note: str | None = None
    count: int | None = None
    faces: tuple[str, ...] = ()
    board: bool | None = None
    old_finish: str | None = None


def edit_part(context: Context, typed: str, change: PartEdit) -> Made:
    """Change one part."""
    if change == PartEdit():
        raise UsageFault(
            "nothing to change",
            "say what: "
            + Do.PART_EDIT.options(
                "species", "room", "note", "count", "face", "board", "old_finish"
            ),
        )
    with context.writing("part edit") as ledger:
        shop = read_shop(ledger.connection, context.clock.now)
        part = one_part(shop, typed)
        said = [*_values(ledger, context.facts, shop, part, change)]
        if change.old_finish is not None:
            said.append(_old_finish(ledger, part, change.old_finish))
        if change.count is not None:
            said.append(_pieces(ledger, part, change.count))
        if change.faces and part.needs:
            raise UsageFault("an assembly has the faces of its members", "edit a member")
        faces = read_faces(change.faces, zones_too=True)
        for text, face in zip(change.faces, faces, strict=True):
            # What was divided just now is another.
            now = one_part(read_shop(ledger.connection, context.clock.now), part.path)
            said.append(_face(ledger, now, face, is_said=":" in text.partition("=")[0]))
    return Made("part", part.path, in_words(*said))


def _values(
    ledger: Ledger, facts: Facts, shop: Shop, part: Part, change: PartEdit
) -> Iterator[str]:
    def put(column: str, value: object, was: str, becomes: str, what: str = "") -> None:
        edit.set_value(ledger, ThingKind.PART, part.id, column, value, (was, becomes), what)

    if change.species is not None:
        put("species", change.species, part.species or "", change.species)
        yield f"{change.species}, was {part.species or 'not said'}"
        if facts.species_named(change.species) is None:
            yield no_rules_for(facts, change.species)
    if change.room is not None:
        room = pick_room(shop, change.room)
        was = shop.rooms[part.room].name if part.room is not None else ""
        put("room_id", room.id, was, room.name, "room")
        yield f"it stood in {room.name} from the start"
    if change.note is not None:
        put("note", change.note, part.note, change.note)
        yield "note changed"
    if change.board is not None:
        put("is_board", change.board, str(part.is_board), str(change.board), "sample board")
        yield "a sample board" if change.board else "no sample board"


def _old_finish(ledger: Ledger, part: Part, typed: str) -> str:
    """Say what was on a part when it came in."""
    if part.needs:
        raise UsageFault("an assembly has the finish of its members", "edit a member")
    old = read_old_finish(typed)
    was, becomes = part.old_finish or NO_OLD_FINISH, old or NO_OLD_FINISH
    edit.set_value(
        ledger, ThingKind.PART, part.id, "old_finish", old or "", (was, becomes), "old finish"
    )
    return f"{name_of(old)} was on it" if old else "no old finish was on it"


def _pieces(ledger: Ledger, part: Part, count: int) -> str:
    """Add late pieces, or take off the last ones while nothing was logged on them."""
    how_many(count)
    was = len(part.pieces)
    if count > was:
        edit.add_pieces(ledger, part.id, was, count)
        return f"×{count}; {part.called}:{spans(range(was + 1, count + 1))} in the white"
    last = [piece.id for piece in part.pieces if piece.number > count]
    if edit.pieces_on_record(ledger.connection, last):
        raise UsageFault(
            f"something was logged on {part.called}:{spans(range(count + 1, was + 1))}",
            f"it stays on record: leave {Do.PART_EDIT.option(count=was)}",
        )
    if last:
        edit.take_pieces_off(ledger, part.id, was, last)
    return f"×{count}"


def _face(ledger: Ledger, part: Part, typed: NewFace, *, is_said: bool) -> str:
    """Add a face, or say of one what it is for and what its zones are.

    `is_said`: its kind was typed; a face that is only divided stays what it is.
    """
    is_divided = any(zone.name for zone in typed.zones)
    if "/" in typed.name:
        return _of_a_zone(ledger, part, typed)
    known = next((f for f in part.faces if f.name.casefold() == typed.name.casefold()), None)
    if known is None and is_divided:
        # A zone is named by itself wherever a face may be.
        own = [zone_name(f, z) for f in part.faces for z in f.zones if _bears(z, typed.name)]
        if len(own) > 1:
            raise UsageFault(f"{typed.name!r} may be {' or '.join(own)}", "name it with its face")
        if own:
            return _of_a_zone(ledger, part, replace(typed, name=own[0]))
    if known is None:
        _beside_all_round(ledger, part, typed)
        edit.add_face(ledger, part.id, typed)
        return f"face {typed.name} added, in the white"
    said = []
    if typed.kind is not known.kind and (is_said or not is_divided):
        edit.set_face_kind(ledger, part.id, known.id, known.name, typed.kind)
        said.append(f"face {known.name}: {typed.kind.value}, was {known.kind.value}")
    if typed.meets is not known.meets and (is_said or not is_divided):
        edit.set_meets(ledger, part.id, known, typed.meets)
        said.append(f"face {known.name}: {typed.meets or 'neither slides nor shuts'}")
    if is_divided:
        said.append(_zones(ledger, part, known, typed))
    return in_words(*said) or f"face {known.name} as it was"


def _bears(zone: Zone, name: str) -> bool:
    return zone.name.casefold() == name.casefold()


def _beside_all_round(ledger: Ledger, part: Part, typed: NewFace) -> None:
    """Refuse a show or hidden face where the whole of the part has its record already."""
    whole = next((f for f in part.faces if f.name == ALL_ROUND.name), None)
    takes_its_own = typed.kind in {FaceKind.SHOW, FaceKind.HIDDEN}
    if whole and takes_its_own and edit.zones_on_record(ledger.connection, whole.id):
        if len(typed.zones) > 1:
            names = ",".join(zone.name for zone in typed.zones)
            raise UsageFault(
                f"{part.name} was finished {whole.name}, and has no {typed.name}",
                "divide what was finished: "
                + Do.PART_EDIT(part.path, face=f"{whole.name}={names}"),
            )
        raise UsageFault(
            f"{part.name} was finished {whole.name}: {typed.name} would seem to be in the white",
            "put it on record as a part of its own: "
            + Do.PART_NEW(f"{part.project_name}/NAME", like=part.path, face=typed.name),
        )


def _zones(ledger: Ledger, part: Part, face: Face, typed: NewFace) -> str:
    """Divide a face that was one whole, or add zones to one that is bare."""
    known = {zone.name.casefold() for zone in face.zones}
    new = [zone for zone in typed.zones if zone.name.casefold() not in known]
    if not new:
        return ""
    whole = next((zone for zone in face.zones if not zone.name), None)
    if whole is not None:
        return _divided(ledger, part, face, whole, new)
    if edit.zones_on_record(ledger.connection, face.id):
        of, added = face.zones[0].name, new[0].name
        raise UsageFault(
            f"{face.name} has something on record: {added} would seem to be in the white",
            "say which zone it is cut out of: "
            + Do.PART_EDIT.option(face=f"{face.name}/{of}={of},{added}"),
        )
    edit.add_zones_to(ledger, part.id, face, new)
    return f"{face.name}: {', '.join(zone.name for zone in new)} added"


def _of_a_zone(ledger: Ledger, part: Part, typed: NewFace) -> str:
    """Divide one zone of a face."""
    low = typed.name.casefold()
    zones = {zone_name(f, z).casefold(): (f, z) for f in part.faces for z in f.zones}
    if low not in zones:
        there = ", ".join(zone_name(f, z) for f, z in zones.values())
        raise NotFound(f"{part.called} has no zone {typed.name}", f"it has {there}")
    face, zone = zones[low]
    return _divided(ledger, part, face, zone, typed.zones)


def _divided(ledger: Ledger, part: Part, face: Face, zone: Zone, into: Sequence[NewZone]) -> str:
    """Divide a zone: what is on record was of all of it, and is of each of its zones."""
    others = {each.name.casefold() for each in face.zones if each is not zone}
    taken = next((each.name for each in into if each.name.casefold() in others), None)
    if taken is not None:
        raise UsageFault(f"{face.name} has a zone {taken} beside it", "name the new one otherwise")
    edit.divide_zone(ledger, part, face, zone, into)
    names = ", ".join(each.name for each in into)
    if not edit.zones_on_record(ledger.connection, face.id):
        return f"{zone_name(face, zone)}: divided into {names}"
    return f"{zone_name(face, zone)}: divided into {names}, each with all that is on record"
