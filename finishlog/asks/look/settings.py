"""How the person wants things typed and shown."""

from __future__ import annotations

from msgspec import Struct

from finishlog.context import Context
from finishlog.core.measure.units import Unit, Units
from finishlog.store.database import Database
from finishlog.store.things.usual import TIME_ZONE, read_settings

UNITS: dict[str, type[Unit]] = {
    each: type(getattr(Units(), each)) for each in Units.__struct_fields__
}

# Every setting there is, in the order in which they are shown.
SETTINGS = (*UNITS, "zone")


class Setting(Struct, frozen=True):
    """One setting as it holds; not `by_hand`: nobody set it, it is the usual one."""

    name: str
    value: str
    by_hand: bool


def kept(database: Database) -> tuple[Units, str | None]:
    """Return the units, the usual ones where nothing was set, and the zone that was set, if any."""
    with database.glancing() as connection:
        known = read_settings(connection)
    units = {name: of(known[name]) for name, of in UNITS.items() if name in known}
    return Units(**units), known.get(TIME_ZONE)  # type: ignore[arg-type]


def settings(context: Context) -> tuple[Setting, ...]:
    """List every setting, with what holds where none was set."""
    with context.reading() as connection:
        known = read_settings(connection)
    usual = Units()
    lines = [
        Setting(name, known.get(name, getattr(usual, name).value), name in known) for name in UNITS
    ]
    zone = known.get(TIME_ZONE, context.clock.zone.key)
    return (*lines, Setting("zone", zone, TIME_ZONE in known))
