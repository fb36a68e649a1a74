"""How the person wants things typed and shown."""

from __future__ import annotations

from finishlog.core.units import Temperature
from finishlog.store.database import Database
from finishlog.store.usual import read_settings

TEMPERATURE = "temperature"


def temperature_unit(database: Database) -> Temperature:
    """Return the unit for temperatures, °C when nothing was set."""
    with database.reading() as connection:
        typed = read_settings(connection).get(TEMPERATURE)
    return Temperature(typed) if typed else Temperature.CELSIUS
