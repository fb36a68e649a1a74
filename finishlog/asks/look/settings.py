"""How the person wants things typed and shown."""

from __future__ import annotations

from msgspec import Struct

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


def units(database: Database) -> Units:
    """Return the units, the usual ones where nothing was set."""
    with database.reading() as connection:
        kept = read_settings(connection)
    return Units(**{name: of(kept[name]) for name, of in UNITS.items() if name in kept})  # type: ignore[arg-type]


def kept_zone(database: Database) -> str | None:
    """Return the time zone that was set for the shop; None: none was."""
    with database.reading() as connection:
        return read_settings(connection).get(TIME_ZONE)


def settings(database: Database, zone: str) -> tuple[Setting, ...]:
    """List every setting; `zone` is the one that holds when none was set."""
    with database.reading() as connection:
        kept = read_settings(connection)
    usual = Units()
    lines = [
        Setting(name, kept.get(name, getattr(usual, name).value), name in kept) for name in UNITS
    ]
    return (*lines, Setting("zone", kept.get(TIME_ZONE, zone), TIME_ZONE in kept))
