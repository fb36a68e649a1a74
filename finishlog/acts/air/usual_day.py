"""Say what a room is like on a usual day, and when it is heated."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta

from msgspec.structs import replace

from finishlog.acts.air.heat import WARMING
from finishlog.asks.look.which_room import which_room
from finishlog.asks.things.usual_day import RoomUsual, usual_of
from finishlog.clock import Clock
from finishlog.context import Context
from finishlog.core.air.as_read import AsRead, as_read
from finishlog.core.air.usual_day import UsualDay, UsualHour
from finishlog.core.commands import Do
from finishlog.core.findings import NO_FLAME
from finishlog.core.published.safety_notes import SafetyNote, notes_for
from finishlog.core.shop.things import Room, ThingKind
from finishlog.core.zone.stood_in import rooms_air
from finishlog.errors import NotFound
from finishlog.store.log.ledger import Ledger
from finishlog.store.log.read_log import read_log
from finishlog.store.things.changes import changed
from finishlog.store.things.read_shop import read_rooms, read_shop
from finishlog.store.things.usual import Heating, Season, put_usual_day


class UsualSet(RoomUsual, frozen=True):
    """A room's usual days as they are from now on; `taken_from`: the readings they come from."""

    act: int
    taken_from: AsRead | None = None
    caution: str = ""
    notes: tuple[SafetyNote, ...] = ()
    # The heating on further days that this one takes the place of.
    instead_of: UsualDay | None = None


def set_usual_day(
    context: Context, typed: str | None, hours: Sequence[UsualHour], season: Season | None
) -> UsualSet:
    """Say what a usual day is like from now on; no hours: that it is not known any more."""
    with context.writing("room usual") as ledger:
        room = _meant(ledger, context.clock, typed)
        put_usual_day(ledger.connection, room.id, context.clock.now, hours=hours, season=season)
        said = f"{len(hours)} points" if hours else "none"
        changed(ledger, ThingKind.ROOM, room.id, "usual day", "", said)
        room = read_rooms(ledger.connection, context.clock.now)[room.id]
        return _set(usual_of(room), ledger.act_id)


def set_usual_day_as_read(
    context: Context, typed: str | None, days: int, season: Season | None
) -> UsualSet:
    """Take a usual day from the readings of the last days; NotFound where they are too few."""
    with context.writing("room usual") as ledger:
        shop = read_shop(ledger.connection, context.clock.now)
        room = which_room(ledger.connection, shop, typed)
        air = rooms_air(shop, read_log(ledger.connection))[room.id]
        found = as_read(air.since(context.clock.now - timedelta(days=days)), context.clock.zone)
        if not found.is_enough:
            raise NotFound(
                f"{found.readings} readings of {room.name} in {days} days cover"
                f" {len(found.hours)} hours of the day: too few, or none of the night",
                f"import a logger's file, or type the points: {Do.ROOM_USUAL('ROOM', '7:12C')}",
            )
        put_usual_day(
            ledger.connection, room.id, context.clock.now, hours=found.hours, season=season
        )
        said = f"as read {found.readings} times"
        changed(ledger, ThingKind.ROOM, room.id, "usual day", "", said)
        room = read_rooms(ledger.connection, context.clock.now)[room.id]
        return _set(usual_of(room), ledger.act_id, found)


def set_heating(
    context: Context, typed: str | None, heating: Heating, season: Season | None
) -> UsualSet:
    """Say when a room is usually heated and how warm (°C) it gets, from now on."""
    with context.writing("room heating") as ledger:
        room = _meant(ledger, context.clock, typed)
        was = _heated_on_other_days(room, season, heating)
        put_usual_day(ledger.connection, room.id, context.clock.now, heated=heating, season=season)
        begins, ends, *_ = heating
        said = "none" if begins == ends else f"{begins // 60}:{begins % 60:02}"
        changed(ledger, ThingKind.ROOM, room.id, "heating", "", said)
        usual = usual_of(read_rooms(ledger.connection, context.clock.now)[room.id])
        notes = notes_for(context.facts.notes, WARMING) if begins != ends else ()
        now_is = _set(usual, ledger.act_id, caution=NO_FLAME if notes else "", notes=notes)
        return replace(now_is, instead_of=was)


def _heated_on_other_days(room: Room, season: Season | None, heating: Heating) -> UsualDay | None:
    """Return the heating that a new one of a season takes the place of, if it loses days."""
    holds = (d for d in room.usual if d.replaced_at is None and d.season == season and d.heated)
    return next((day for day in holds if set(day.heated_days) - set(heating[3])), None)


def _meant(ledger: Ledger, clock: Clock, typed: str | None) -> Room:
    return which_room(ledger.connection, read_shop(ledger.connection, clock.now), typed)


def _set(
    usual: RoomUsual,
    act: int,
    taken_from: AsRead | None = None,
    caution: str = "",
    notes: tuple[SafetyNote, ...] = (),
) -> UsualSet:
    return UsualSet(usual.room, usual.coldest_night_c, usual.days, act, taken_from, caution, notes)
