"""The rooms that pieces stood in, and the air of them, as the log tells."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import UTC, datetime, tzinfo

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.met import Stay
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint
from finishlog.core.air.supposed import Heat, one_heat
from finishlog.core.log.entries import AnyEntry, Heated, Joined, Moved, Reading, Target
from finishlog.core.shop.things import Log, Part, Piece, Shop

# Before everything that is on record.
ALWAYS = datetime(1970, 1, 1, tzinfo=UTC)


class LogIndex(Struct, frozen=True):
    """The log sorted by what it is about."""

    by_target: Mapping[Target, Sequence[AnyEntry]]
    joined: Mapping[int, Joined]
    # By member: when it first became part of the assembly, though a joint was glued again since.
    first_joined: Mapping[int, Joined]
    moves: Mapping[int, Sequence[Moved]]


def index_of(log: Log) -> LogIndex:
    """Sort a log by what its entries are about."""
    by_target: dict[Target, list[AnyEntry]] = defaultdict(list)
    joined: dict[int, Joined] = {}
    first: dict[int, Joined] = {}
    moves: dict[int, list[Moved]] = defaultdict(list)
    for entry in log.entries:
        for target in entry.targets:
            by_target[target].append(entry)
        if isinstance(entry, Joined):
            again = {m for m in entry.members if m in first and first[m].into == entry.into}
            joined.update(dict.fromkeys(entry.members, entry))
            first.update(dict.fromkeys(entry.members - again, entry))
        if isinstance(entry, Moved):
            for piece in entry.pieces:
                moves[piece].append(entry)
    return LogIndex(by_target, joined, first, moves)


def rooms_air(shop: Shop, log: Log, zone: tzinfo = UTC) -> dict[int, RoomAir]:
    """Return what is known of each room's air."""
    read: dict[int, list[AirPoint]] = defaultdict(list)
    heats: dict[int, list[Heat]] = defaultdict(list)
    for room, points in log.logged_air.items():
        read[room] += points
    for entry in log.entries:
        if isinstance(entry, Reading):
            supposed = bool(entry.humidity_supposed)
            point = AirPoint(entry.when.latest, *_figures(entry.air), entry.act, supposed)
            read[entry.room].append(point)
        if isinstance(entry, Heated):
            heat = Heat(entry.when.earliest, entry.when.latest, entry.temperature_c)
            heats[entry.room].append(heat)
    alone = {
        room.id: RoomAir(
            tuple(sorted(read[room.id], key=_moment)),
            room.coldest_night_c,
            room.id,
            room.usual,
            tuple(one_heat(heats[room.id])),
            zone,
            room.name,
            room.heater,
            place=room.place,
        )
        for room in shop.rooms.values()
    }
    leads = {
        room: tuple((join.by, alone[join.room]) for join in air.place.joins if join.room in alone)
        for room, air in alone.items()
    }
    return {n: replace(air, near=leads[n]) if leads[n] else air for n, air in alone.items()}


def _figures(air: Air) -> tuple[float, float]:
    return air.temperature_c, air.humidity_pct


def _moment(point: AirPoint) -> datetime:
    return point.at


def stays_of(
    part: Part, piece: Piece, index: LogIndex, rooms: Mapping[int, RoomAir]
) -> tuple[Stay, ...]:
    """Return the rooms a piece stood in; a part with no room stands in the first there is."""
    room = part.room if part.room is not None else min(rooms, default=None)
    first = [Stay(ALWAYS, rooms[room])] if room is not None and room in rooms else []
    moved = [
        Stay(m.when.latest, rooms[m.room]) for m in _carried(piece.id, index) if m.room in rooms
    ]
    return (*first, *moved)


def _carried(piece: int, index: LogIndex) -> list[Moved]:
    """Return the moves of a piece and of the assemblies that it became part of, in their order."""
    found, seen = list(index.moves.get(piece, ())), {piece}
    while (join := index.joined.get(piece)) and join.into not in seen:
        piece = join.into
        seen.add(piece)
        found += index.moves.get(piece, ())
    return sorted(found, key=lambda m: m.when.order)


def rooms_of_pieces(shop: Shop, log: Log, zone: tzinfo = UTC) -> dict[int, tuple[Stay, ...]]:
    """Return the rooms that every piece stood in, one after the other, by its id."""
    index, rooms = index_of(log), rooms_air(shop, log, zone)
    return {
        piece.id: stays_of(part, piece, index, rooms)
        for part in shop.parts
        for piece in part.pieces
    }
