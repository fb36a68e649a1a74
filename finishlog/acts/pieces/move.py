"""Carry parts into another room: the air that they meet from then on is that room's."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.asks.look.look import look
from finishlog.asks.look.standing import Standing, standings
from finishlog.context import Context
from finishlog.core.air.room import RoomAir
from finishlog.core.log.entries import Moved
from finishlog.core.log.when import When
from finishlog.core.zone.state import ZoneState
from finishlog.errors import UsageFault
from finishlog.picking import pick_room, pick_zones

# Less of a step is no cold wood. Our own rule.
_COLDER_C = 5.0


class Carried(Struct, frozen=True):
    """A move as recorded. `air_known`: the room was read lately. `was_there`: nothing moved."""

    act: int
    at: When
    room: str
    labels: tuple[str, ...]
    air_known: bool
    was_there: bool
    # The room that it came from as read, °C, where that is much colder.
    from_cold_c: float | None
    standings: tuple[Standing, ...]


def move(context: Context, *, parts: Sequence[str], room: str, at: When) -> Carried:
    """Record that pieces were carried into a room; an assembly takes its members along."""
    with context.writing("move") as ledger:
        before = look(context, ledger.connection)
        picked = pick_zones(before.shop, before.bench, parts, None, joints_too=True)
        if picked.face_named:
            raise UsageFault("a face is not moved by itself", "name the part or its pieces")
        into = pick_room(before.shop, room)
        mine = [z for z in before.bench.zones if z.target in picked.targets]
        was_there = bool(mine) and all(z.room.id == into.id for z in mine)
        # What is not glued up yet is carried as the parts that it will be made of.
        carried = picked.pieces | {z.piece.id for z in mine if not z.joined}
        ledger.record(Moved(when=at, pieces=carried, room=into.id))
        after = before.after(ledger)
        states = [z for z in after.bench.zones if z.target in picked.targets]
        return Carried(
            act=ledger.act_id,
            at=at,
            room=into.name,
            labels=picked.labels,
            air_known=after.bench.rooms[into.id].read_lately(context.clock.now) is not None,
            was_there=was_there,
            from_cold_c=_from_cold(mine, after.bench.rooms[into.id], at),
            standings=standings([s for s in states if s.layers or s.progress.next], after),
        )


def _from_cold(moved: Sequence[ZoneState], into: RoomAir, at: When) -> float | None:
    """Return how cold the wood comes into a warmer room, by the readings of both; else None."""
    there = into.measured_at(at.latest)
    left = [r.temperature_c for z in moved if (r := z.room.measured_at(at.latest)) is not None]
    if there is None or not left or there.temperature_c - min(left) < _COLDER_C:
        return None
    return min(left)
