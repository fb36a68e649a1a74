"""Read what is typed off a safety data sheet."""

from __future__ import annotations

import re
from collections.abc import Mapping

from msgspec.structs import replace

from finishlog.acts.things.sheet import SheetTyped
from finishlog.cli.typed.figures.numbers import NUMBER, number
from finishlog.core.commands import Do
from finishlog.core.measure.units import Temperature, to_base
from finishlog.errors import UsageFault

_PCT = r"%|pct|percent"
_PPM = r"ppm"
_DENSITY = r"kg/?l|g/?ml|g/?cm3|g/?cm³|"
_G_PER_L = r"g/?l"
# What a figure can be at all; outside of it a digit or a unit was misread.
_OF_AIR_PCT = (0.1, 30.0)
_LIMIT_PPM = (0.0001, 5000.0)
_HEAVY = (0.6, 2.5)
_SHARE_PCT = (0.0, 100.0)
_GRAMS = (0.0, 1500.0)


def sheet_typed(said: SheetTyped, words: Mapping[str, str]) -> SheetTyped:
    """Read the figures of a sheet: `lel`, `limit`, `short-limit`, `flash`, `solvent`,
    `density`.

    UsageFault for what is no such figure, or cannot be one.
    """
    typed = {word: text for word, text in words.items() if text}
    if "lel" in typed:
        lel = _figure(typed["lel"], _PCT, _OF_AIR_PCT, "lel", "0.7%")
        said = replace(said, lel_pct=lel)
    if "limit" in typed:
        day = _figure(typed["limit"], _PPM, _LIMIT_PPM, "limit", "50ppm")
        said = replace(said, day_ppm=day)
    if "short-limit" in typed:
        short = _figure(typed["short-limit"], _PPM, _LIMIT_PPM, "short_limit", "100ppm")
        said = replace(said, short_ppm=short)
    if "flash" in typed:
        said = replace(said, flash_c=_flash(typed["flash"]))
    if "density" in typed:
        density = _figure(typed["density"], _DENSITY, _HEAVY, "density", "0.9")
        said = replace(said, density=density)
    if "solvent" in typed:
        text = typed["solvent"]
        if re.search(rf"(?:{_PCT})\s*$", text.casefold()):
            share = _figure(text, _PCT, _SHARE_PCT, "solvent", "45%")
            return replace(said, solvent_pct=share)
        grams = _figure(text, _G_PER_L, _GRAMS, "solvent", "420g/L")
        return replace(said, solvent_g_per_l=grams)
    return said


def _flash(text: str) -> float:
    """Read a flash point with its unit, as °C."""
    below = text.strip().startswith("-")
    said = text.strip().lstrip("-<>≥≤ ")
    fahrenheit = said.casefold().endswith("f")
    scale, possible = (r"°?\s*f", (0.0, 600.0)) if fahrenheit else (r"°?\s*c", (0.0, 320.0))
    value = _figure(said, scale, possible, "flash", "38C") * (-1 if below else 1)
    return to_base(value, Temperature.FAHRENHEIT if fahrenheit else Temperature.CELSIUS)


def _figure(
    text: str, units: str, possible: tuple[float, float], option: str, example: str
) -> float:
    """Read a number with its unit; UsageFault where it is none, or cannot be."""
    like = f"type it as the sheet has it: {Do.PRODUCT_SHEET.option(**{option: example})}"
    found = re.fullmatch(rf"({NUMBER})\s*(?:{units})", text.strip().casefold())
    if found is None:
        raise UsageFault(f"{text!r} is no such figure", like)
    value = number(found[1])
    if not possible[0] <= value <= possible[1]:
        least, most = (f"{end:g}" for end in possible)
        raise UsageFault(f"{text!r} cannot be: {least} to {most} is possible", like)
    return value
