"""Put rooms on record, change them, put them away; say when the shop is open."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from finishlog.acts.air.place import NOTHING_TOLD, PlaceTold, lit_now, put_place
from finishlog.acts.answers.made import Made, a_name, free_name, in_words
from finishlog.asks.look.which_room import which_room
from finishlog.clock import Clock
from finishlog.context import Context
from finishlog.core.air.heater import HeaterKind
from finishlog.core.commands import Do
from finishlog.core.shop.hours import WeeklyHours
from finishlog.core.shop.things import ThingKind
from finishlog.errors import UsageFault
from finishlog.picking import pick_room
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.add import add_room
from finishlog.store.things.changes import ADDED, changed
from finishlog.store.things.edit import set_value
from finishlog.store.things.read_shop import read_shop
from finishlog.store.things.usual import TIME_ZONE, put_setting, put_shop_hours, put_usual_day


def new_room(
    context: Context, name: str, coldest_c: float | None, note: str, told: PlaceTold | None = None
) -> Made:
    """Put a room on record, with its coldest night (°C) and what place it is when that is known."""
    with context.writing("room new") as ledger:
        made = put_room(ledger, context.clock, name, coldest_c, note)
        if told is None or told.says_nothing:
            return made
        shop = read_shop(ledger.connection, context.clock.now)
        room = pick_room(shop, made.name)
        said = put_place(context, ledger, shop, room, told)
        return replace(made, detail=in_words(*filter(None, (made.detail, *said))))


def put_room(ledger: Ledger, clock: Clock, name: str, coldest_c: float | None, note: str) -> Made:
    """Put a room on record within an act."""
    name = a_name(name, "room")
    lent = free_name(ledger, ThingKind.ROOM, name)
    room = add_room(ledger.connection, name, note=note)
    changed(ledger, ThingKind.ROOM, room, ADDED, "", name)
    if coldest_c is not None:
        put_usual_day(ledger.connection, room, clock.now, coldest_c=coldest_c)
    return Made("room", name, lent)


def coldest_night(context: Context, room: str | None, coldest_c: float) -> Made:
    """Say how cold a room's nights get from now on (°C)."""
    with context.writing("room night") as ledger:
        shop = read_shop(ledger.connection, context.clock.now)
        known = which_room(ledger.connection, shop, room)
        put_usual_day(ledger.connection, known.id, context.clock.now, coldest_c=coldest_c)
    return Made("room", known.name)


def edit_room(
    context: Context,
    typed: str,
    note: str | None,
    heater: HeaterKind | None,
    told: PlaceTold = NOTHING_TOLD,
) -> Made:
    """Change a room's note, what heats it, or what place it is."""
    if note is None and heater is None and told.says_nothing:
        options = Do.ROOM_EDIT.options("note", "heater", "has", "size", "exhaust", "kind")
        raise UsageFault("nothing to change", f"say what: {options}")
    with context.writing("room edit") as ledger:
        shop = read_shop(ledger.connection, context.clock.now)
        room = pick_room(shop, typed)
        said = []
        if note is not None:
            set_value(ledger, ThingKind.ROOM, room.id, "note", note, (room.note, note))
            said.append("note changed")
        if heater is not None:
            shown = (room.heater or "not said", heater.value)
            set_value(ledger, ThingKind.ROOM, room.id, "heater", heater.value, shown)
            said.append(f"heated by: {heater.value}")
        said += put_place(context, ledger, shop, room, told)
        may_light = told.has is not None or told.out is not None
        lit = lit_now(context, ledger, room) if may_light else ()
    return Made("room", room.name, in_words(*said), warnings=lit)


def shop_hours(context: Context, week: Sequence[WeeklyHours]) -> Made:
    """Say when the shop is open, from now on."""
    with context.writing("shop hours") as ledger:
        put_shop_hours(ledger.connection, week, context.clock.now)
        put_setting(ledger.connection, TIME_ZONE, context.clock.zone.key)
    return Made("shop", "hours")


# What people call it.
_HEATERS = {
    HeaterKind.SEALED: ("radiator", "oil radiator", "oil-filled", "water", "underfloor"),
    HeaterKind.FAN: ("fan heater", "coil", "blower", "convector"),
    HeaterKind.GLOW: ("radiant", "infrared", "quartz", "halogen", "wire", "electric fire"),
    HeaterKind.FLAME: ("gas", "propane", "paraffin", "kerosene", "wood", "stove", "wood stove",
                       "pilot", "furnace", "torch"),
}  # fmt: skip


def heater_word(typed: str) -> HeaterKind:
    """Read what heats a room; UsageFault names the kinds."""
    word = " ".join(typed.casefold().replace("-", " ").split())
    for kind, called in _HEATERS.items():
        if word in {kind.value, *(name.replace("-", " ") for name in called)}:
            return kind
    kinds = "; ".join(f"{kind}: {', '.join(called)}" for kind, called in _HEATERS.items())
    raise UsageFault(f"{typed!r} is no kind of heater known here", kinds)
