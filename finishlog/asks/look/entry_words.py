"""What an entry of the log records, in words: `coat topcoat, sprayed`, `thumbnail: prints`."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from msgspec import Struct, field

from finishlog.asks.look.went_wrong import went_wrong_words
from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import Method
from finishlog.core.log.entries import (
    AirImported,
    AnyEntry,
    Away,
    Check,
    Coat,
    Fault,
    HandedOver,
    Heated,
    Joined,
    Moved,
    Note,
    Photo,
    PieceReading,
    RagsEvent,
    Reading,
    Resumed,
    Review,
    SetAside,
    Stripped,
    Stripping,
    Target,
    Work,
)
from finishlog.core.measure.quantities import celsius
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import FaceKind, Part, Shop, zone_name
from finishlog.core.zone.grouping import describe, with_project

PUT_ON = {Method.BRUSH: "brushed", Method.WIPE: "wiped on", Method.SPRAY: "sprayed"}
TAKEN_OFF = {
    Stripping.STRIP: "stripped",
    Stripping.SAND_THROUGH: "sanded off",
    Stripping.SCRAPE: "scraped off",
    Stripping.WASH: "washed off",
}


class Words(Struct, frozen=True):
    """Puts entries into words. `coats` names the product of coat entries by their ids."""

    shop: Shop
    facts: Facts
    coats: Mapping[int, str] = field(default_factory=dict)

    def of(self, entry: AnyEntry) -> str:
        """Say what an entry records; empty where the words typed say it better."""
        match entry:
            case Coat():
                return self._coat(entry)
            case Work():
                return _join(entry.operation.value, entry.grit, entry.note)
            case Check():
                return _join(f"check {entry.test.value}: {entry.found.value}", entry.note)
            case Fault():
                return _join(f"fault {went_wrong_words(entry, self.facts)}", entry.remedy)
            case Stripped():
                return self._stripped(entry)
            case Joined():
                glue = f"glued with {entry.glue}" if entry.glue else ""
                return _join("glued up", glue)
            case Moved():
                room = self.shop.rooms.get(entry.room)
                return f"moved to {room.name if room else 'another room'}"
            case Reading() | AirImported() | Heated():
                return self._of_room(entry)
            case PieceReading():
                return self._piece_reading(entry)
            case _:
                return said_words(entry)

    def _coat(self, entry: Coat) -> str:
        container = self.shop.containers.get(entry.container or 0)
        return _join(
            f"coat {entry.product_name}",
            PUT_ON[entry.method] if entry.method else "",
            {True: "scuffed before", False: "not scuffed", None: ""}[entry.scuffed_before],
            f"from {container.name}" if container else "",
            entry.note,
        )

    def _stripped(self, entry: Stripped) -> str:
        down_to = "to bare wood"
        if entry.survives is not None:
            down_to = f"down to {self.coats.get(entry.survives, 'a coat')}"
        return _join(f"taken off {down_to}, {TAKEN_OFF[entry.operation]}", entry.note)

    def _of_room(self, entry: Reading | AirImported | Heated) -> str:
        room = self.shop.rooms.get(entry.room)
        name = room.name if room else "a room"
        match entry:
            case Reading():
                supposed = " supposed" if entry.humidity_supposed else ""
                return f"air of {name}: {self.air(entry.air)}{supposed}"
            case AirImported():
                count = f"{entry.count} reading{'' if entry.count == 1 else 's'}"
                return f"air of {name}: {count} of {entry.file_name}"
            case Heated():
                to = "" if entry.temperature_c is None else celsius(entry.temperature_c, 1)
                return f"heater in {name}" + (f" to {to}" if to else "")

    def _piece_reading(self, entry: PieceReading) -> str:
        warm, moist = entry.temperature_c, entry.moisture_pct
        return _join(
            "" if warm is None else f"surface {celsius(warm, 1)}",
            "" if moist is None else f"wood at {moist:.3g} % moisture",
        )

    def air(self, air: Air) -> str:
        """Say an air."""
        return f"{celsius(air.temperature_c, 1)}, {air.humidity_pct:.3g} %"


def said_words(entry: AnyEntry) -> str:
    """Say what needs no shop to say it: notes, reviews, photos, rags, comings and goings."""
    match entry:
        case RagsEvent():
            return f"rags: {entry.deed.value}"
        case Away():
            return _join("away", entry.reason)
        case SetAside():
            return _join("set aside", f"next: {entry.reason}" if entry.reason else "")
        case Resumed():
            return "taken up again"
        case HandedOver():
            return _join("handed over", entry.note)
        case Review():
            return _join(f"came out {entry.outcome.value}", entry.text)
        case Note():
            return f"{'outcome' if entry.outcome else 'note'}: {entry.text}"
        case Photo():
            return _join(f"photo {entry.path}", entry.note)
        case _:
            return ""


def _join(*bits: str) -> str:
    return ", ".join(bit for bit in bits if bit)


class Named:
    """Names pieces and zones of many entries: `cabinet/doors ×2, back`."""

    def __init__(self, shop: Shop) -> None:
        self._part: dict[int, Part] = {p.id: part for part in shop.parts for p in part.pieces}
        self._number = {p.id: p.number for part in shop.parts for p in part.pieces}

    def zones(self, targets: Iterable[Target]) -> tuple[str, ...]:
        """Name the parts that zones belong to, with pieces and faces where they are not all."""
        zones: dict[int, set[int]] = {}
        pieces: dict[int, set[int]] = {}
        for target in sorted(targets):
            part = self._part.get(target.piece)
            if part is not None:
                zones.setdefault(part.id, set()).add(target.zone)
                pieces.setdefault(part.id, set()).add(target.piece)
        return tuple(
            self._name(self._part[min(found)], found, zones[part]) for part, found in pieces.items()
        )

    def pieces(self, pieces: Iterable[int]) -> tuple[str, ...]:
        """Name the parts that pieces belong to."""
        by_part: dict[int, set[int]] = {}
        for piece in sorted(pieces):
            if piece in self._part:
                by_part.setdefault(self._part[piece].id, set()).add(piece)
        return tuple(self._name(self._part[min(f)], f, None) for f in by_part.values())

    def _name(self, part: Part, pieces: Iterable[int], zones: set[int] | None) -> str:
        numbers = sorted(self._number[piece] for piece in pieces)
        faces = () if zones is None else _faces(part, zones)
        return with_project(part.path, describe(part, numbers, faces))


def _faces(part: Part, zones: set[int]) -> tuple[str, ...]:
    """Name the faces that are meant; empty when that is every face that is finished."""
    finished = [f for f in part.faces if f.kind in {FaceKind.SHOW, FaceKind.HIDDEN}]
    if finished and all(z.id in zones for f in finished for z in f.zones):
        return ()
    named: list[str] = []
    for face in part.faces:
        here = [z for z in face.zones if z.id in zones]
        whole = len(here) == len(face.zones)
        named += [face.name] if whole else [zone_name(face, z) for z in here]
    edges = {f.name for f in part.faces if f.kind is FaceKind.EDGE}
    return tuple(n for n in named if n not in edges) or tuple(named)
