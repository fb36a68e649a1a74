"""What there is: projects, parts, pieces, faces, zones, steps, products, rooms, as values."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from datetime import datetime
from enum import StrEnum
from typing import NamedTuple

from msgspec import Struct, field

from finishlog.core.air.heater import HeaterKind
from finishlog.core.air.place import Place
from finishlog.core.air.span import AirPoint
from finishlog.core.air.usual_day import UsualDay
from finishlog.core.finish.classes import Figure, RecoatWindow, Sheen
from finishlog.core.finish.sheet import NO_SHEET, Sheet
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Heated, Target
from finishlog.core.log.words import Operation
from finishlog.core.mixing.containers import Container
from finishlog.core.published.care import UsedFor
from finishlog.core.shop.hours import ShopHours
from finishlog.core.shop.own_rules import OwnRule, sheet_of


class ThingKind(StrEnum):
    """The kinds of things that have names, and keep their old ones."""

    PROJECT = "project"
    PART = "part"
    PRODUCT = "product"
    ROOM = "room"
    STEPS = "steps"
    CONTAINER = "container"


class Alias(Struct, frozen=True):
    """A name that a thing had before."""

    kind: ThingKind
    old_name: str
    thing: int


class OldFinish(StrEnum):
    """What lies on a piece that came in finished; its age is not known."""

    VARNISH = "varnish"
    PAINT = "paint"
    WAX = "wax"
    UNKNOWN = "unknown"


class FaceKind(StrEnum):
    """What a face is for."""

    SHOW = "show"
    HIDDEN = "hidden"
    JOINT = "joint"
    # Gets the coats of both faces beside it.
    EDGE = "edge"


class Meets(StrEnum):
    """What a face does that touches another one for good."""

    # In a runner or a groove: a drawer's sides and bottom edges, a lid in its rails.
    SLIDES = "slides"
    # Against a frame, a stop or another door.
    SHUTS = "shuts"


class Zone(Struct, frozen=True):
    """An area of a face with its own wood or treatment; most faces have one, named ''."""

    id: int
    name: str = ""
    species: str | None = None


class Face(Struct, frozen=True):
    """A side that is coated by itself."""

    id: int
    name: str
    kind: FaceKind
    zones: tuple[Zone, ...]
    meets: Meets | None = None


def zone_name(face: Face, zone: Zone) -> str:
    """Name a zone as it is typed: `front/left`; a face of one zone by the face alone."""
    return f"{face.name}/{zone.name}" if zone.name else face.name


def zone_among(face: Face, zone: Zone, here: Collection[int]) -> str:
    """Name a zone as it is typed, or its whole face when all zones of that are here."""
    whole = all(each.id in here for each in face.zones)
    return face.name if whole else zone_name(face, zone)


def face_words(face: Face) -> str:
    """Write a face as it is typed: `back:hidden`, `top=field,inlay:walnut`."""
    kind = "" if face.kind is FaceKind.SHOW else f":{face.kind.value}"
    said = f"{face.name}{kind}{f':{face.meets.value}' if face.meets else ''}"
    zones = [f"{z.name}:{z.species}" if z.species else z.name for z in face.zones if z.name]
    return f"{said}={','.join(zones)}" if zones else said


class Piece(Struct, frozen=True):
    """One object of a part."""

    id: int
    number: int


class Step(Struct, frozen=True):
    """One step of a part's finishing schedule.

    `faces` are faces or zones (`front`, `front/left`); empty: every face that is finished.
    """

    position: int
    operation: Operation
    product: int | None = None
    faces: tuple[str, ...] = ()
    note: str = ""


class Behind(NamedTuple):
    """What lies behind the steps of a part: what was done by then, and on record by that act."""

    at: datetime
    act: int

    def holds(self, entry: AnyEntry) -> bool:
        """Tell whether it was done by then; at that very moment: whether it was typed by then."""
        return (entry.when.latest, entry.act) <= self


class Need(Struct, frozen=True):
    """One piece of an assembly is made of `count` pieces of `part`."""

    part: int
    count: int


class Part(Struct, frozen=True):
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
    note: str = ""
    # What was on it when it came in (core.film.old_finish); None: bare wood.
    old_finish: OldFinish | None = None
    # Another part beside it, in another project, has the same name.
    has_namesake: bool = False
    # Its steps go over a finish that was on it by then: they credit nothing from before.
    behind: Behind | None = None

    @property
    def called(self) -> str:
        """Name the part so that it is told from every other: with its project where need be."""
        return self.path if self.has_namesake else self.name

    @property
    def path(self) -> str:
        """Name the part with its project: `cabinet/doors`."""
        return f"{self.project_name}/{self.name}"


class Project(Struct, frozen=True):
    """A piece of furniture or a set."""

    id: int
    name: str
    due: datetime | None = None
    note: str = ""
    # Who will use it, where that decides how hard it must be: food, a child.
    used_for: UsedFor | None = None


class Product(Struct, frozen=True):
    """A finish as the person knows it, with the figures on its label that hold now."""

    id: int
    name: str
    class_key: str
    label: Mapping[Stage, Figure] = field(default_factory=dict)
    label_window: RecoatWindow | None = None
    note: str = ""
    # Put away: found again by its coats, no longer offered.
    archived: bool = False
    # How it shines, where that was said.
    sheen: Sheen | None = None
    # What the person says of it beyond hours, the oldest first.
    own_rules: tuple[OwnRule, ...] = ()
    # Where its safety data sheet lies, as a whole path; empty: nobody said.
    sds: str = ""

    @property
    def sheet(self) -> Sheet:
        """What its safety data sheet says."""
        return sheet_of(self.own_rules) if self.own_rules else NO_SHEET


class Room(Struct, frozen=True):
    """A room, and how cold its nights usually get (°C) when the person said so."""

    id: int
    name: str
    coldest_night_c: float | None = None
    note: str = ""
    # What it is like on a usual day, by season; a later one of the same season replaces an earlier.
    usual: tuple[UsualDay, ...] = ()
    heater: HeaterKind | None = None
    # What kind of place it is, and what stands in it.
    place: Place = Place()


class Schedule(Struct, frozen=True):
    """A finishing schedule under a name."""

    id: int
    name: str
    steps: tuple[Step, ...]
    note: str = ""


class Shop(Struct, frozen=True):
    """Everything there is that a question needs."""

    projects: tuple[Project, ...]
    parts: tuple[Part, ...]
    products: Mapping[int, Product]
    rooms: Mapping[int, Room]
    hours: ShopHours
    aliases: tuple[Alias, ...] = ()
    # Those in use, and those that coats in the log came from.
    containers: Mapping[int, Container] = field(default_factory=dict)


class Log(Struct, frozen=True):
    """The entries in force (not withdrawn, not superseded), in the order of the work."""

    entries: tuple[AnyEntry, ...]
    # By room: what loggers read, in order of time. Too many to be entries.
    logged_air: Mapping[int, Sequence[AirPoint]] = field(default_factory=dict)

    def as_of(self, moment: datetime) -> Log:
        """Return what had happened by a moment; a heater that was on its way then stays."""
        return Log(
            tuple(e for e in self.entries if _by(e) <= moment),
            {
                room: [point for point in points if point.at <= moment]
                for room, points in self.logged_air.items()
            },
        )

    def only(self, keep: Callable[[AnyEntry], bool]) -> Log:
        """Return the log with some of its entries; what loggers read stays."""
        return Log(tuple(e for e in self.entries if keep(e)), self.logged_air)

    def reaching(self, target: Target) -> tuple[AnyEntry, ...]:
        """Select what reached one zone of one piece."""
        return tuple(entry for entry in self.entries if target in entry.targets)


def _by(entry: AnyEntry) -> datetime:
    """Return when an entry counts as happened: a heater is told of before it runs."""
    happened = entry.when.latest
    return min(entry.typed_at, happened) if isinstance(entry, Heated) else happened
