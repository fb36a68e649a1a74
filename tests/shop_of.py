"""A shop, its log and a look at it in a few words, for tests of the reasoning.

Hours are counted from Monday 18:00; every part, product and hour here is invented. A story writes
down what happened and is then looked at as of an hour; what comes later has not happened yet.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta, tzinfo
from itertools import count
from typing import Any, TypeVar

from msgspec.structs import replace

from finishlog.core.air.psychrometrics import STANDARD_AIR, Air
from finishlog.core.air.usual_day import UsualDay
from finishlog.core.bench.state import BenchState, bench_state, verdict_on, verdict_on_work
from finishlog.core.film.checks import test_that_finds
from finishlog.core.film.lessons import Finished
from finishlog.core.finish.classes import (
    YOUR_CAN,
    Figure,
    FigureSet,
    Method,
    RecoatWindow,
    WindowKind,
    judged_by,
)
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import (
    AnyEntry,
    Check,
    Coat,
    ContainerEvent,
    HandedOver,
    Heated,
    Joined,
    Moved,
    PieceReading,
    RagsEvent,
    Reading,
    Resumed,
    SetAside,
    Target,
    Work,
)
from finishlog.core.log.when import Sureness, When
from finishlog.core.log.words import ContainerDeed, Found, Operation, RagsDeed
from finishlog.core.mixing.came_from import needs_hardener
from finishlog.core.mixing.containers import Container, ContainerKind, MixPart
from finishlog.core.published.care import UsedFor
from finishlog.core.shop.hours import ShopHours
from finishlog.core.shop.things import (
    Face,
    FaceKind,
    Log,
    Need,
    Part,
    Piece,
    Product,
    Project,
    Room,
    Shop,
    Step,
    Zone,
)
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Verdict
from finishlog.facts.load import load_facts

FACTS = load_facts()
START = datetime(2026, 11, 23, 18, 0, tzinfo=UTC)  # a Monday

SHELLAC = "shellac-2lb"
WATERBORNE = "waterborne-clear"
VARNISH = "alkyd-varnish"
LACQUER = "lacquer-sprayed"
LINSEED = "boiled-linseed-oil"
BLEND = "oil-varnish-blend"
STAIN = "wiping-stain"
FILLER = "paste-filler"
WAX = "paste-wax"

E = TypeVar("E", bound=AnyEntry)

# Its nights were told: no colder than it was read, so that no story is asked about them.
NIGHTS_TOLD = Room(1, "finishing room", coldest_night_c=60.0)

# An hour, or the earliest and the latest hour of a time that is only roughly known.
Hour = float | tuple[float, float]
# A step: the class of a coat, or work by hand; with faces: only on these.
Doing = str | Operation


def at(hours: float) -> datetime:
    """Return the instant so many hours after Monday 18:00."""
    return START + timedelta(hours=hours)


def hours_until(moment: datetime | None) -> float:
    """Return the hours from Monday 18:00 to an instant that must exist."""
    assert moment is not None
    return (moment - START) / timedelta(hours=1)


def when(hour: Hour, tie: int = 0) -> When:
    """Build the time of the work: exact, or a span."""
    if isinstance(hour, tuple):
        return When(at(hour[0]), at(hour[1]), Sureness.PART_OF_DAY, tie)
    return When(at(hour), at(hour), Sureness.EXACT, tie)


def figure(hours: float, high: float | None = None, air: Air = STANDARD_AIR) -> Figure:
    """Build a label's figure: so many hours, or a range."""
    return Figure(hours, hours, hours if high is None else high, YOUR_CAN, air)


def closing(hours: float, air: Air = STANDARD_AIR) -> RecoatWindow:
    """Build a label's recoat window that closes after so many hours."""
    return RecoatWindow(WindowKind.CLOSES, YOUR_CAN, figure(hours, air=air))


def within_limits(class_key: str, celsius: float) -> float:
    """Return the temperature nearest to one at which a class may go on."""
    limits = FACTS.finish_class(class_key).limits
    assert limits.min_c is not None
    assert limits.max_c is not None
    return min(max(celsius, limits.min_c.value), limits.max_c.value)


def whole_part(part: Part) -> frozenset[Target]:
    """Return every zone of every piece of a part, joint faces left bare."""
    return frozenset(
        Target(piece.id, zone.id)
        for piece in part.pieces
        for face in part.faces
        if face.kind is not FaceKind.JOINT
        for zone in face.zones
    )


@dataclass(repr=False)
class Story:
    """What there is and what happened, written down as it is told.

    Without `on`, coats, work and checks reach the first part, all round.
    """

    parts: list[Part] = field(default_factory=list)
    used_for: UsedFor | None = None
    rooms: dict[int, Room] = field(default_factory=lambda: {1: NIGHTS_TOLD})
    products: dict[int, Product] = field(default_factory=dict)
    entries: list[AnyEntry] = field(default_factory=list)
    zone: tzinfo = UTC
    containers: dict[int, Container] = field(default_factory=dict)
    _ids: count[int] = field(default_factory=lambda: count(100))

    def __repr__(self) -> str:
        """Tell it in a few lines, for a test that failed."""
        told = [
            f"{p.name} x{len(p.pieces)}: {[s.operation.value for s in p.steps]}" for p in self.parts
        ]
        for entry in sorted(self.entries, key=lambda e: e.when.order):
            what = {
                name: getattr(entry, name)
                for name in ("product_name", "operation", "found", "air", "deed")
                if hasattr(entry, name)
            }
            reached = sorted(tuple(t) for t in entry.targets)
            told.append(f"{hours_until(entry.when.latest):.3f} h {what} {reached}")
        return "\n  ".join(["", *told, ""])

    def part(
        self,
        name: str = "door",
        *steps: Doing | tuple[Doing, str],
        pieces: int = 1,
        faces: Iterable[str] = ("all round",),
        joints: Iterable[str] = (),
        edges: Iterable[str] = (),
        zones: Mapping[str, Iterable[Zone]] | None = None,
        species: str | None = None,
        needs: Mapping[str, int] | None = None,
        room: int | None = None,
    ) -> Part:
        """Add a part with its steps."""
        kinds = [
            *((f, FaceKind.SHOW) for f in faces),
            *((j, FaceKind.JOINT) for j in joints),
            *((e, FaceKind.EDGE) for e in edges),
        ]
        made = Part(
            id=next(self._ids),
            project=1,
            project_name="cabinet",
            name=name,
            species=species,
            pieces=tuple(Piece(next(self._ids), n) for n in range(1, pieces + 1)),
            faces=tuple(
                Face(
                    next(self._ids),
                    face,
                    kind,
                    tuple((zones or {}).get(face, ())) or (Zone(next(self._ids)),),
                )
                for face, kind in kinds
            ),
            steps=tuple(self._step(n, step) for n, step in enumerate(steps, 1)),
            needs=tuple(Need(self.named(n).id, c) for n, c in (needs or {}).items()),
            room=room,
        )
        self.parts.append(made)
        return made

    def _step(self, position: int, step: Doing | tuple[Doing, str]) -> Step:
        doing, faces = (step[0], (step[1],)) if isinstance(step, tuple) else (step, ())
        if isinstance(doing, Operation):
            return Step(position, doing, None, faces)
        return Step(position, Operation.COAT, self.product(doing), faces)

    def product(self, class_key: str) -> int:
        """Return the product of a class; the first time it is bought."""
        for known in self.products.values():
            if known.class_key == class_key:
                return known.id
        bought = Product(next(self._ids), f"our {class_key}", class_key)
        self.products[bought.id] = bought
        return bought.id

    def named(self, name: str) -> Part:
        """Return a part by its name."""
        return next(p for p in self.parts if p.name == name)

    def another_room(self, name: str = "attic", coldest_night_c: float | None = None) -> int:
        """Add a room."""
        made = Room(max(self.rooms) + 1, name, coldest_night_c)
        self.rooms[made.id] = made
        return made.id

    def cold_nights(self, celsius: float | None, room: int = 1) -> None:
        """Say how cold the nights get in a room; None: nobody told."""
        self.rooms[room] = replace(self.rooms[room], coldest_night_c=celsius)

    def usual(self, *days: UsualDay, room: int = 1) -> None:
        """Say what a room is like on a usual day, by season."""
        self.rooms[room] = replace(self.rooms[room], usual=days)

    def coat(
        self,
        hour: Hour,
        class_key: str,
        on: Part | None = None,
        *,
        face: str | None = None,
        pieces: Iterable[int] | None = None,
        label: Mapping[Stage, Figure] | None = None,
        window: RecoatWindow | None = None,
        method: Method | None = None,
        container: int | None = None,
        mixed: bool = True,
    ) -> Coat:
        """Put on a coat; what needs a hardener is mixed for it, unless `mixed` is false."""
        product, of = self.products[self.product(class_key)], FACTS.finish_class(class_key)
        if mixed and container is None and needs_hardener(of):
            pct = of.hardener_pct
            share = min(max(10.0, pct.low), pct.high) / 10 if pct else 1.0
            container = self.mix(hour, class_key, {"base": 10.0, "hardener": share})
        return self._happened(
            Coat(
                **self._head(hour, self._reach(on, face, pieces)),
                product=product.id,
                product_name=product.name,
                figures=self.figures(class_key, label, window),
                method=method,
                container=container,
            )
        )

    def mix(
        self, hour: Hour, class_key: str, parts: Mapping[str, float], name: str = "", **also: Any
    ) -> int:
        """Mix a finish out of so many parts of each; return its container."""
        made = when(hour).earliest
        mixed = self.can(
            class_key,
            name or f"mix-{len(self.containers) + 1}",
            kind=ContainerKind.MIX,
            made_at=made,
            parts=tuple(MixPart(part, share) for part, share in parts.items()),
            **also,
        )
        self.befalls(hour, mixed, ContainerDeed.MIXED)
        return mixed

    def can(self, class_key: str, name: str = "tin", **also: Any) -> int:
        """Put a can on record."""
        made = next(self._ids)
        also = {"kind": ContainerKind.CAN} | also
        self.containers[made] = Container(made, name, product=self.product(class_key), **also)
        return made

    def befalls(self, hour: Hour, container: int, deed: ContainerDeed) -> ContainerEvent:
        """Do something with a container, or let it befall it."""
        return self._happened(ContainerEvent(**self._head(hour), container=container, deed=deed))

    def figures(
        self,
        class_key: str,
        label: Mapping[Stage, Figure] | None = None,
        window: RecoatWindow | None = None,
    ) -> FigureSet:
        """Return what a coat of a class is judged by."""
        return judged_by(FACTS.finish_class(class_key), label or {}, window, FACTS.version)

    def work(
        self,
        hour: Hour,
        operation: Operation,
        on: Part | None = None,
        *,
        face: str | None = None,
        place: str = "",
    ) -> Work:
        """Work on a part by hand."""
        head = self._head(hour, self._reach(on, face, None))
        return self._happened(Work(**head, operation=operation, place=place))

    def check(
        self,
        hour: Hour,
        found: Found,
        on: Part | None = None,
        *,
        face: str | None = None,
        place: str = "",
    ) -> Check:
        """Test a film."""
        head = self._head(hour, self._reach(on, face, None))
        return self._happened(Check(**head, test=test_that_finds(found), found=found, place=place))

    def read(self, hour: Hour, celsius: float, rh: float, room: int = 1) -> Reading:
        """Read the air of a room."""
        return self._happened(Reading(**self._head(hour), room=room, air=Air(celsius, rh)))

    def steady(
        self,
        celsius: float = 23.0,
        rh: float = 50.0,
        *,
        since: float = 0.0,
        days: float = 60.0,
        room: int = 1,
    ) -> Story:
        """Read the same air every six hours from an hour on: known, and fresh, all the time."""
        for reading in range(int(days * 4) + 1):
            self.read(since + 6 * reading, celsius, rh, room)
        return self

    def heat(
        self, since: float, until: float, celsius: float | None = None, room: int = 1
    ) -> Heated:
        """Run a heater for once; told of when it is switched on."""
        head = self._head((since, until)) | {"typed_at": at(since)}
        return self._happened(Heated(**head, room=room, temperature_c=celsius))

    def surface(self, hour: Hour, celsius: float, on: Part | None = None) -> PieceReading:
        """Lay a thermometer on the wood of a part."""
        head = self._head(hour, self._reach(on, None, None))
        return self._happened(PieceReading(**head, temperature_c=celsius))

    def rags(self, hour: Hour, deed: RagsDeed, item: int | None = None) -> RagsEvent:
        """Do something with oily rags."""
        return self._happened(RagsEvent(**self._head(hour), deed=deed, item=item))

    def join(self, hour: Hour, into: Piece, members: Iterable[Piece], glue: str = "") -> Joined:
        """Glue pieces up into one piece of an assembly."""
        ids = frozenset(piece.id for piece in members)
        return self._happened(Joined(**self._head(hour), into=into.id, members=ids, glue=glue))

    def move(self, hour: Hour, on: Part, room: int) -> Moved:
        """Carry the pieces of a part into a room."""
        pieces = frozenset(piece.id for piece in on.pieces)
        return self._happened(Moved(**self._head(hour), pieces=pieces, room=room))

    def set_aside(self, hour: Hour, on: Part | None = None) -> SetAside:
        """Stop work on a part on purpose."""
        return self._happened(SetAside(**self._head(hour, self._reach(on, None, None))))

    def hand_over(self, hour: Hour, on: Part | None = None) -> HandedOver:
        """Let a part leave the shop."""
        return self._happened(HandedOver(**self._head(hour, self._reach(on, None, None))))

    def resume(self, hour: Hour, on: Part | None = None) -> Resumed:
        """Go on with it."""
        return self._happened(Resumed(**self._head(hour, self._reach(on, None, None))))

    def _reach(
        self, on: Part | None, face: str | None, pieces: Iterable[int] | None
    ) -> frozenset[Target]:
        part = on or self.parts[0]
        if face is None and pieces is None:
            return whole_part(part)
        numbers = set(pieces) if pieces is not None else {p.number for p in part.pieces}
        return frozenset(
            Target(p.id, z.id)
            for p in part.pieces
            for f in part.faces
            for z in f.zones
            if p.number in numbers and (f.name == face if face else f.kind is not FaceKind.JOINT)
        )

    def _head(self, hour: Hour, targets: frozenset[Target] = frozenset()) -> dict[str, Any]:
        number = next(self._ids)
        done = when(hour, number)
        return {
            "id": number,
            "act": number,
            "when": done,
            "typed_at": done.latest,
            "targets": targets,
        }

    def _happened(self, entry: E) -> E:
        self.entries.append(entry)
        return entry

    @property
    def shop(self) -> Shop:
        """What there is."""
        return Shop(
            (Project(1, "cabinet", used_for=self.used_for),),
            tuple(self.parts),
            self.products,
            self.rooms,
            ShopHours((), "UTC"),
            containers=self.containers,
        )

    def log(self, hour: float) -> Log:
        """What has happened by an hour, in the order of the work."""
        whole = Log(tuple(sorted(self.entries, key=lambda e: e.when.order)))
        return whole.as_of(at(hour))

    def finished(self, hour: float) -> Iterator[Finished]:
        """Return what reached each zone by an hour, for what is learnt of it."""
        log = self.log(hour)
        for part in self.parts:
            for target in sorted(whole_part(part)):
                zones = (zone for face in part.faces for zone in face.zones)
                species = next(z.species for z in zones if z.id == target.zone)
                yield Finished(
                    species or part.species,
                    part.is_board,
                    part.old_finish,
                    log.reaching(target),
                )

    def look(self, hour: float) -> BenchState:
        """Look at the shop as of an hour."""
        return bench_state(self.shop, self.log(hour), FACTS, at(hour), self.zone)

    def state(self, hour: float, on: Part | None = None, face: str | None = None) -> ZoneState:
        """Return the first zone of a part."""
        part = on or self.parts[0]
        return next(
            z
            for z in self.look(hour).zones
            if z.member.id == part.id and face in {None, z.face.name}
        )

    def verdict(self, hour: float, on: Part | None = None, face: str | None = None) -> Verdict:
        """Ask whether the next step may be done."""
        return self.state(hour, on, face).verdict

    def may(
        self, class_key: str, hour: float, method: Method | None = None, on: Part | None = None
    ) -> Verdict:
        """Ask whether a coat of a class may go on, whatever the steps say."""
        over = FACTS.finish_class(class_key)
        return verdict_on(self.state(hour, on), self.look(hour), over, method, FACTS)

    def may_work(self, operation: Operation, hour: float, on: Part | None = None) -> Verdict:
        """Ask whether a piece of work may be done, whatever the steps say."""
        return verdict_on_work(self.state(hour, on), self.look(hour), operation, FACTS)


def one_coat(
    class_key: str, hour: Hour = 0.0, celsius: float = 23.0, rh: float = 50.0, days: float = 60.0
) -> Story:
    """Tell of one part with one coat in steady air that is read all the time."""
    story = Story()
    story.part()
    story.coat(hour, class_key)
    return story.steady(celsius, rh, since=-12.0, days=days)
