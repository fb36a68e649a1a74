"""What an entry of the log records, in words: `coat topcoat, sprayed`, `thumbnail: prints`."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from datetime import timedelta
from enum import StrEnum
from typing import Any

from msgspec import Struct, field

from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import Method
from finishlog.core.log.entries import (
    AirImported,
    AnyEntry,
    Away,
    Check,
    Cleaned,
    Coat,
    ContainerEvent,
    Entry,
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
    Respirator,
    Resumed,
    Review,
    SetAside,
    Stripped,
    Target,
    Work,
)
from finishlog.core.log.fields import Declared, fields_of
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.words import ContainerDeed, FaultKind, Stripping
from finishlog.core.measure.quantities import celsius, millilitres, weighed
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import FaceKind, Part, Shop, zone_name
from finishlog.core.zone.grouping import describe

STIRRED = ("not stirred", "stirred")
FLOODED = ("thin", "flooded on")
PUT_ON = {Method.BRUSH: "brushed", Method.WIPE: "wiped on", Method.SPRAY: "sprayed"}
TAKEN_OFF = {
    Stripping.STRIP: "stripped",
    Stripping.SAND_THROUGH: "sanded off",
    Stripping.SCRAPE: "scraped off",
    Stripping.WASH: "washed off",
}


def deed_words(deed: ContainerDeed) -> str:
    """Say what was done with a container, or what befell it."""
    said = {
        ContainerDeed.TESTED: "tested, and good",
        ContainerDeed.CONDEMNED: "do not use",
        ContainerDeed.UNSTIRRED: "poured from, not stirred",
    }
    return said.get(deed, deed.value.replace("-", " "))


# One wording a kind: its bits, one after the other with commas. A bit whose fields say nothing
# falls away; what stands behind a colon is said around a value (`_`) only where there is one.
WORDINGS: dict[type[Entry], tuple[str, ...]] = {
    Coat: (
        "coat {product_name}{stopped: broken off (_)}",
        "{method}",
        "{flooded}",
        "{scuffed_before}",
        "{container:from _}",
        "{stirred}",
        "{tool:with _}",
        "{amount_ml:_ of it}",
        "{note}",
    ),
    Work: ("{operation}{place: (_)}", "{grit}", "{kept}", "{note}"),
    Check: ("check {test}: {found}{place: (_)}", "{only_now}", "{note}"),
    Fault: ("fault {what}{place: (_)}", "{remedy}"),
    Stripped: ("taken off {survives}", "{operation}", "{note}"),
    Joined: ("glued up", "{glue:glued with _}"),
    Moved: ("moved to {room}",),
    Reading: ("air of {room}: {air}{humidity_supposed: _}",),
    AirImported: ("air of {room}: {count} of {file_name}",),
    PieceReading: (
        "{temperature_c:surface _}",
        "{moisture_pct:wood at _ moisture}",
        "{weight_g:weighs _}",
    ),
    Heated: ("heater in {room}{temperature_c: to _}",),
    ContainerEvent: ("{deed}",),
    Cleaned: ("{tool} cleaned", "{note}"),
    RagsEvent: ("rags: {deed}",),
    Respirator: ("{name} {deed}", "{holds}", "{worn_min:worn _}", "{kept:kept _}", "{note}"),
    Away: ("away", "{reason}"),
    HandedOver: ("handed over", "{note}"),
    SetAside: ("set aside", "{reason:next: _}"),
    Resumed: ("taken up again",),
    Review: ("came out {outcome}", "{text}"),
    Note: ("{outcome}: {text}", "{next_time}"),
    Photo: ("photo {path}", "{note}"),
}

# How values are said that are not said as they are.
NO_AND_YES = {
    "flooded": FLOODED,
    "stirred": STIRRED,
    "scuffed_before": ("not scuffed", "scuffed before"),
    "humidity_supposed": ("", "supposed"),
    "outcome": ("note", "outcome"),
    "next_time": ("", "for next time"),
    "only_now": ("so for some time", "only now"),
}
_OF_A_SET: dict[type, Callable[[Any], str]] = {
    Method: PUT_ON.__getitem__,
    Stripping: TAKEN_OFF.__getitem__,
    ContainerDeed: deed_words,
}
_BY_UNIT: dict[str, Callable[[float], str]] = {
    "c": lambda warm: celsius(warm, 1),
    "pct": lambda share: f"{share:.3g} %",
    "g": weighed,
    "ml": millilitres,
    "min": lambda worn: length_words(timedelta(minutes=worn)),
    "reading": lambda count: f"{count} reading{'' if count == 1 else 's'}",
}


class _Value(str):
    """A value in words. Its format is what is said around it, if it says anything."""

    __slots__ = ()

    def __format__(self, around: str) -> str:
        return around.replace("_", self) if self and around else str(self)


class Words(Struct, frozen=True):
    """Puts entries into words. `coats` names the product of coat entries by their ids."""

    shop: Shop
    facts: Facts
    coats: Mapping[int, str] = field(default_factory=dict)

    def of(self, entry: AnyEntry, wording: tuple[str, ...] = ()) -> str:
        """Say what an entry records, in the wording of its kind or another."""
        values = {
            each.name: _Value(self._said(each, getattr(entry, each.name)))
            for each in fields_of(type(entry))
        }
        bits = (bit.format_map(values) for bit in wording or WORDINGS[type(entry)])
        return ", ".join(bit for bit in bits if bit)

    def _said(self, of: Declared, value: Any) -> str:  # noqa: ANN401
        if of.means.of:
            return self._named(of.means.of, value)
        match value:
            case None:
                return ""
            case bool():
                return NO_AND_YES[of.name][value]
            case FaultKind():
                return self.facts.fault_known(value).name
            case StrEnum():
                return _OF_A_SET.get(type(value), str)(value)
            case Air():
                return f"{celsius(value.temperature_c, 1)}, {value.humidity_pct:.3g} %"
            case _:
                return _BY_UNIT.get(of.means.unit, str)(value)

    def _named(self, of: str, number: int | None) -> str:
        """Name a thing by its id."""
        match of:
            case "room":
                room = self.shop.rooms.get(number or 0)
                return room.name if room else "a room"
            case "container":
                container = self.shop.containers.get(number or 0)
                return container.name if container else ""
            case "entry":
                below = self.coats.get(number or 0, "a coat")
                return "to bare wood" if number is None else f"down to {below}"
            case _:
                return ""


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
        return describe(part, numbers, faces).full


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
