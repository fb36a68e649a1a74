"""Set how things are typed and shown, and where the shop is."""

from __future__ import annotations

from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from finishlog.acts.answers.made import Made
from finishlog.asks.look.settings import SETTINGS, UNITS
from finishlog.context import Context
from finishlog.core.measure.units import OUNCE, OUNCES, WORDS, Unit
from finishlog.errors import NotFound, UsageFault
from finishlog.store.things.usual import TIME_ZONE, put_setting


def put(context: Context, name: str, typed: str) -> Made:
    """Set one setting; NotFound for a name that is none, UsageFault for a value that is none."""
    name = name.strip().casefold()
    if name not in SETTINGS:
        raise NotFound(f"there is no setting {name!r}", f"there are: {', '.join(SETTINGS)}")
    key, value = (TIME_ZONE, _zone(typed)) if name == "zone" else (name, _unit(name, typed))
    with context.writing("settings") as ledger:
        put_setting(ledger.connection, key, value)
    return Made("setting", name, value)


def _unit(name: str, typed: str) -> str:
    of: type[Unit] = UNITS[name]
    word = " ".join(typed.strip().lstrip("°").casefold().split()).rstrip(".")
    found = next((unit for unit in of if word in WORDS[unit].split("|")), None)
    if found is None and word in OUNCES:
        found = OUNCE.get(of)
    if found is None:
        signs = " or ".join(unit.value for unit in of)
        raise UsageFault(f"{typed!r} is no unit of {name}", f"type {signs}")
    return str(found.value)


def _zone(typed: str) -> str:
    try:
        return ZoneInfo(typed.strip()).key
    except (ZoneInfoNotFoundError, ValueError, IsADirectoryError, PermissionError):
        raise UsageFault(
            f"no time zone is called {typed!r}", "type one like Europe/Berlin"
        ) from None
