"""Read a dry and a wet bulb: `21C wet 17C`, or `21C` with a wet bulb of `17C`."""

from __future__ import annotations

import re

from finishlog.cli.typed.figures.measures import show_temperature, temperature
from finishlog.core.air.psychrometrics import Air, humidity_from_wet_bulb
from finishlog.core.measure.units import Temperature
from finishlog.errors import UsageFault

_WET = r"(?i)(.+?),? +wet(?:[ -]?bulb)? +(.+)"


def wet_bulb_said(text: str, option: str | None) -> tuple[str, str] | None:
    """Part what was typed into the dry and the wet bulb; None when there is no wet bulb in it."""
    if option is not None:
        return text, option
    found = re.fullmatch(_WET, text.strip())
    return (found[1], found[2]) if found else None


def air_by_wet_bulb(dry: str, wet: str, unit: Temperature) -> tuple[Air, float]:
    """Read both bulbs and work out the humidity; UsageFault when no air is like that.

    Returns the air and the wet bulb in °C. For the pressure at sea level.
    """
    dry_c, wet_c = temperature(dry, unit), temperature(wet, unit)
    try:
        humidity = humidity_from_wet_bulb(dry_c, wet_c)
        if humidity <= 0:
            raise ValueError("no air is so dry")
    except ValueError as fault:
        said = " and ".join(show_temperature(each, unit) for each in (dry_c, wet_c))
        raise UsageFault(
            f"{said}: {fault}", "type the dry bulb first: finishlog air 21C wet 17C"
        ) from None
    return Air(dry_c, humidity), wet_c
