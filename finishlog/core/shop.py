"""What there is: projects, parts, pieces, faces, zones, steps, products, rooms, as values."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum

from finishlog.core.finishes import Figure, RecoatWindow
from finishlog.core.records import AnyEntry, Operation, Target
from finishlog.core.shop_hours import ShopHours
from finishlog.core.stages import Stage


class FaceKind(StrEnum):
    """What a face is for."""

    SHOW = "show"
    HIDDEN = "hidden"
    JOINT = "joint"


@dataclass(frozen=True, slots=True)
class Zone:
    """An area of a face with its own wood or treatment; most faces have one, named ''."""

    id: int
    name: str = ""
    species: str | None = None


@dataclass(frozen=True, slots=True)
class Face:
    """A side that is coated by itself."""

    id: int
    name: str
    kind: FaceKind
    zones: tuple[Zone, ...]


@dataclass(frozen=True, slots=True)
class Piece:
    """One object of a part."""

    id: int
    number: int


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a part's finishing schedule. `faces` empty: every face that is finished."""

    position: int
    operation: Operation
    product: int | None = None
    faces: tuple[str, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True)
class Need:
    """One piece of an assembly is made of `count` pieces of `part`."""

    part: int
    count: int


@dataclass(frozen=True, slots=True)
class Part:
    """Something finished as one kind."""

    id: int
    project: int
    project_name: str
    name: str
    species: str | None
    pieces: tuple[Piece, ...]
    faces: tuple[Face, ...]
    steps: tuple[Step, ...] = ()
    steps_name: str = ""
    needs: tuple[Need, ...] = ()
    room: int | None = None
    is_board: bool = False

    @property
    def path(self) -> str:
        """Name the part with its project: `cabinet/doors`."""
        return f"{self.project_name}/{self.name}"


@dataclass(frozen=True, slots=True)
class Project:
    """A piece of furniture or a set."""

    id: int
    name: str
    due: datetime | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Product:
    """A finish as the person knows it, with the figures on its label that hold now."""

    id: int
    name: str
    class_key: str
    label: Mapping[Stage, Figure] = field(default_factory=dict)
    label_window: RecoatWindow | None = None


@dataclass(frozen=True, slots=True)
class Room:
    """A room, and how cold its nights usually get (°C) when the person said so."""

    id: int
    name: str
    coldest_night_c: float | None = None


@dataclass(frozen=True, slots=True)
class Shop:
    """Everything there is that a question needs."""

    projects: tuple[Project, ...]
    parts: tuple[Part, ...]
    products: Mapping[int, Product]
    rooms: Mapping[int, Room]
    hours: ShopHours


@dataclass(frozen=True, slots=True)
class Log:
    """The entries in force (not withdrawn, not superseded), in the order of the work."""

    entries: tuple[AnyEntry, ...]

    def reaching(self, target: Target) -> tuple[AnyEntry, ...]:
        """Select what reached one zone of one piece."""
        return tuple(entry for entry in self.entries if target in entry.targets)
