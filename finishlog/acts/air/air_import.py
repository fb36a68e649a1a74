"""Take in a data logger's file: one act, one entry, all its readings."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from msgspec import Struct

from finishlog.acts.air.air import FIRST_ROOM, room_or_first
from finishlog.asks.look.which_room import which_room
from finishlog.context import Context
from finishlog.core.air.psychrometrics import Air
from finishlog.core.log.entries import AirImported
from finishlog.core.log.when import Sureness, When
from finishlog.core.logger.file import LoggerFile, ReadAs
from finishlog.core.shop.things import Room
from finishlog.store.log.read_log import read_log
from finishlog.store.things.read_shop import read_shop

if TYPE_CHECKING:
    from sqlalchemy import Connection


class AirTakenIn(Struct, frozen=True):
    """A file as it was taken in; `act` None: nothing was recorded.

    `kept`: readings that are new. `known`: an earlier import holds them; `known_otherwise`: it
    holds other figures for those instants, and they stay.
    """

    act: int | None
    only_tried: bool
    file_name: str
    room: str
    room_is_new: bool
    kept: int
    known: int
    known_otherwise: int
    first: datetime
    last: datetime
    coldest_c: float
    warmest_c: float
    read_as: ReadAs


def take_in_air(
    context: Context, *, file: LoggerFile, file_name: str, room: str | None, only_try: bool = False
) -> AirTakenIn:
    """Record the readings that no earlier import of the room holds; nothing when there are none."""
    first, last = file.readings[0][0], file.readings[-1][0]
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now)
        is_new = not shop.rooms and room is None
        found = Room(0, FIRST_ROOM) if is_new else which_room(connection, shop, room)
        known = _known(connection, found, file)
    act = None
    if not only_try and any(at not in known for at, _ in file.readings):
        with context.writing("air import") as ledger:
            act = ledger.act_id
            shop = read_shop(ledger.connection, context.clock.now)
            found, is_new = room_or_first(ledger, shop, room)
            known = _known(ledger.connection, found, file)
            if new := [(at, air) for at, air in file.readings if at not in known]:
                when = When(new[0][0], new[-1][0], Sureness.EXACT)
                entry = AirImported(when=when, room=found.id, file_name=file_name, count=len(new))
                ledger.record_air(entry, new)
    warm = [air.temperature_c for _, air in file.readings]
    return AirTakenIn(
        act=act,
        only_tried=only_try,
        file_name=file_name,
        room=found.name,
        room_is_new=is_new,
        kept=sum(at not in known for at, _ in file.readings),
        known=sum(at in known for at, _ in file.readings),
        known_otherwise=sum(known.get(at, air) != air for at, air in file.readings),
        first=first,
        last=last,
        coldest_c=min(warm),
        warmest_c=max(warm),
        read_as=file.read_as,
    )


def _known(connection: Connection, room: Room, file: LoggerFile) -> dict[datetime, Air]:
    """Read what earlier imports hold of the time of a file."""
    log = read_log(connection, (), [(file.readings[0][0], file.readings[-1][0])])
    return {point.at: point.air for point in log.logged_air.get(room.id, ())}
