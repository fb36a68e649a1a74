"""Take in a data logger's file: one act, one entry, all its readings."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime

from msgspec import Struct

from finishlog.acts.air.air import FIRST_ROOM, room_or_first
from finishlog.asks.look.which_room import which_room
from finishlog.clock import Clock
from finishlog.core.air.psychrometrics import Air
from finishlog.core.log.entries import Sureness, When
from finishlog.core.logger.file import LoggerFile, ReadAs
from finishlog.core.shop.things import Room
from finishlog.store.database import Database
from finishlog.store.log.logged_air import known_air
from finishlog.store.things.read_shop import read_shop


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
    database: Database,
    clock: Clock,
    words: str,
    *,
    file: LoggerFile,
    file_name: str,
    room: str | None,
    only_try: bool = False,
) -> AirTakenIn:
    """Record the readings that no earlier import of the room holds; nothing when there are none."""
    with database.reading() as connection:
        shop = read_shop(connection, clock.now)
        new_room = not shop.rooms and room is None
        found = Room(0, FIRST_ROOM) if new_room else which_room(connection, shop, room)
        known = known_air(connection, found.id, file.readings[0][0], file.readings[-1][0])
    if only_try or all(at in known for at, _ in file.readings):
        return _taken(None, found, new_room, known, file, file_name, only_tried=only_try)
    with database.writing("air import", words, clock.now, clock.zone.key) as ledger:
        found, new_room = room_or_first(ledger, clock, room)
        known = known_air(ledger.connection, found.id, file.readings[0][0], file.readings[-1][0])
        new = [(at, air) for at, air in file.readings if at not in known]
        if new:
            when = When(new[0][0], new[-1][0], Sureness.EXACT)
            ledger.air_imported(when, room=found.id, file_name=file_name, readings=new)
        return _taken(ledger.act_id, found, new_room, known, file, file_name)


def _taken(
    act: int | None,
    room: Room,
    room_is_new: bool,
    known: Mapping[datetime, Air],
    file: LoggerFile,
    file_name: str,
    *,
    only_tried: bool = False,
) -> AirTakenIn:
    there = [(at, air) for at, air in file.readings if at in known]
    warm = [air.temperature_c for _, air in file.readings]
    return AirTakenIn(
        act=act,
        only_tried=only_tried,
        file_name=file_name,
        room=room.name,
        room_is_new=room_is_new,
        kept=len(file.readings) - len(there),
        known=len(there),
        known_otherwise=sum(known[at] != air for at, air in there),
        first=file.readings[0][0],
        last=file.readings[-1][0],
        coldest_c=min(warm),
        warmest_c=max(warm),
        read_as=file.read_as,
    )
