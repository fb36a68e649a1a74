"""What was done on this wood before, with its real intervals, its air and how it turned out."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from finishlog.asks.standing import product_name
from finishlog.clock import Clock
from finishlog.core.air import Air
from finishlog.core.bench import rooms_air
from finishlog.core.finishes import Figure
from finishlog.core.records import AnyEntry, Check, Coat, Note, Target, Work
from finishlog.core.room_air import RoomAir
from finishlog.core.shop import Face, FaceKind, Log, Part, Shop
from finishlog.core.stages import Stage
from finishlog.errors import NotFound
from finishlog.facts.load import Facts
from finishlog.store.database import Database
from finishlog.store.read_log import read_log
from finishlog.store.read_shop import read_shop


@dataclass(frozen=True, slots=True)
class PastCoat:
    """One coat as it went on: real hours since the one before, against what its label asked."""

    product: str
    put_on: datetime
    hours_since_last: float | None
    label_low_h: float | None
    label_high_h: float | None
    air: Air | None
    worked: tuple[str, ...]
    checks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PastFinish:
    """What one part, or one face of it, carries."""

    part: str
    faces: tuple[str, ...]
    is_board: bool
    species: str
    steps: str
    coats: tuple[PastCoat, ...]
    notes: tuple[str, ...]
    outcomes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Past:
    """Every finish on record on a wood: those with an outcome first, then the newest."""

    species: str
    finishes: tuple[PastFinish, ...]


def past(database: Database, facts: Facts, clock: Clock, species: str) -> Past:
    """Answer for a species by the name it was logged under, or any name it is known by."""
    with database.reading() as connection:
        shop = read_shop(connection, clock.now, include_archived=True)
        names = _names(species, facts)
        mine = [t.piece for part in shop.parts for _, t in _zones_of(part, names)]
        log = read_log(connection, mine)
    rooms = rooms_air(shop, log)
    found = [
        finish
        for part in shop.parts
        for faces, target in _zones_of(part, names)
        if (finish := _finish(part, faces, target, shop, log, rooms))
    ]
    if not found:
        woods = sorted({p.species for p in shop.parts if p.species})
        there = ", ".join(woods) or "none yet"
        raise NotFound(f"no finish on {species!r} is on record", f"woods on record: {there}")
    # What turned out well or badly teaches more than what is still on the racks.
    found.sort(key=lambda f: (bool(f.outcomes), f.coats[-1].put_on), reverse=True)
    return Past(species, tuple(_merged(found)))


def _names(species: str, facts: Facts) -> frozenset[str]:
    known = facts.species_named(species)
    names = {species, *((known.key, known.name, *known.aliases) if known else ())}
    return frozenset(n.casefold() for n in names)


def _zones_of(part: Part, names: frozenset[str]) -> Iterable[tuple[Face, Target]]:
    """Yield one zone for each face of this wood; a part's first piece stands for all."""
    for face in part.faces:
        for zone in face.zones:
            wood = zone.species or part.species
            if (
                wood
                and wood.casefold() in names
                and part.pieces
                and face.kind is not FaceKind.JOINT
            ):
                yield face, Target(part.pieces[0].id, zone.id)


def _finish(
    part: Part,
    face: Face,
    target: Target,
    shop: Shop,
    log: Log,
    rooms: dict[int, RoomAir],
) -> PastFinish | None:
    entries = log.reaching(target)
    coats = [n for n, e in enumerate(entries) if isinstance(e, Coat)]
    if not coats:
        return None
    room = rooms.get(part.room if part.room is not None else min(rooms, default=0))
    notes = [e for e in entries if isinstance(e, Note)]
    return PastFinish(
        part=part.path,
        faces=(face.name,),
        is_board=part.is_board,
        species=part.species or "",
        steps=part.steps_name or _planned(part, shop),
        coats=tuple(_coat(entries, n, coats, room) for n in coats),
        notes=tuple(e.text for e in notes if not e.outcome),
        outcomes=tuple(e.text for e in notes if e.outcome),
    )


def _planned(part: Part, shop: Shop) -> str:
    return ", ".join(product_name(s.product, shop) or s.operation.value for s in part.steps)


def _coat(
    entries: Sequence[AnyEntry], n: int, coats: Sequence[int], room: RoomAir | None
) -> PastCoat:
    coat = entries[n]
    assert isinstance(coat, Coat)
    before = max((m for m in coats if m < n), default=None)
    following = min((m for m in coats if m > n), default=len(entries))
    since = entries[n + 1 : following]
    last = entries[before] if before is not None else None
    figure = _recoat(last)
    reading = room.measured_at(coat.when.latest) if room else None
    return PastCoat(
        product=coat.product_name,
        put_on=coat.when.latest,
        hours_since_last=_hours(last, coat),
        label_low_h=figure.low_h if figure else None,
        label_high_h=figure.high_h if figure else None,
        air=reading.air if reading else None,
        worked=tuple(w.operation.value for w in since if isinstance(w, Work)),
        checks=tuple(f"{c.test.value}: {c.found.value}" for c in since if isinstance(c, Check)),
    )


def _recoat(under: AnyEntry | None) -> Figure | None:
    return under.figures.stages.get(Stage.RECOAT) if isinstance(under, Coat) else None


def _hours(last: AnyEntry | None, coat: Coat) -> float | None:
    if last is None:
        return None
    return round((coat.when.earliest - last.when.latest) / timedelta(hours=1), 2)


def _merged(finishes: Iterable[PastFinish]) -> Iterable[PastFinish]:
    """Put faces of one part with the same story together."""
    merged: dict[object, PastFinish] = {}
    for each in finishes:
        key = (each.part, each.coats, each.notes, each.outcomes)
        have = merged.get(key)
        faces = (*have.faces, *each.faces) if have else each.faces
        merged[key] = PastFinish(
            each.part,
            tuple(dict.fromkeys(faces)),
            each.is_board,
            each.species,
            each.steps,
            each.coats,
            each.notes,
            each.outcomes,
        )
    return merged.values()
