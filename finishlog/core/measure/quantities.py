"""A measured quantity inside a sentence: carried in SI, worded in a person's units at the edge.

A sentence of the core, the acts, the asks and the facts holds it as `⟨13 °C⟩`: its value, its unit
inside (°C; between two temperatures `Δ°C`; as it is typed `C`; m, µm, ml, of a limit `ml down`, g,
g/L; of air m³, m³/h and m/s, of vapour `L vapour`) and, where the value is finer than it is meant,
to how many digits: `⟨12.777778 °C to 0⟩`. `worded` puts a whole text into a person's units; it is
asked where an answer is printed, and nowhere else.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping

from finishlog.core.measure.units import (
    Area,
    Cut,
    Film,
    Length,
    Temperature,
    Unit,
    Units,
    Volume,
    Weight,
    difference_from_base,
    from_base,
    sign,
)

# Begins a quantity in a text.
OPENS = "⟨"
_OF = "°C|C|Δ°C|m|µm|ml|ml down|g|gw|g/L|m³|m³/h|m/s|L vapour"
_QUANTITY = re.compile(rf"⟨(-?\d+(?:\.\d+)?) ({_OF})(?: to (\d))?⟩")
# What a measuring cup is marked in, for less than a litre, or than a quart.
_SMALL = {
    Volume.LITRE: Volume.MILLILITRE,
    Volume.US_QUART: Volume.US_FLUID_OUNCE,
    Volume.US_GALLON: Volume.US_FLUID_OUNCE,
}


# From here on it is no coat of a brush.
_POURED_UM = 1000.0


def celsius(value_c: float, digits: int = 0) -> str:
    """Write a temperature (°C) into a sentence, meant to so many digits."""
    return _quantity(value_c, "°C", digits)


def typed_celsius(value_c: float) -> str:
    """Write a temperature (°C) as a person types it into the words of a command: `17C`, `63F`."""
    return _quantity(value_c, "C")


def apart(difference_c: float, digits: int = 0) -> str:
    """Write how far two temperatures (°C) are apart into a sentence, to so many digits."""
    return _quantity(difference_c, "Δ°C", digits)


def micrometres(value_um: float) -> str:
    """Write the thickness of a film (µm) into a sentence."""
    return _quantity(value_um, "µm")


def millilitres(value_ml: float) -> str:
    """Write a volume (ml) into a sentence."""
    return _quantity(value_ml, "ml")


def at_most_millilitres(value_ml: float) -> str:
    """Write a volume (ml) into a sentence from which on a limit is passed: never rounded up."""
    return _quantity(value_ml, "ml down")


def litres_of_vapour(value_l: float) -> str:
    """Write a volume of vapour (L) into a sentence."""
    return _quantity(value_l, "L vapour")


def cubic_metres(value_m3: float) -> str:
    """Write a volume of air (m³) into a sentence."""
    return _quantity(value_m3, "m³")


def metres_a_second(value_m_s: float) -> str:
    """Write a speed of air (m/s) into a sentence."""
    return _quantity(value_m_s, "m/s")


def cubic_metres_an_hour(value_m3_h: float) -> str:
    """Write a flow of air (m³/h) into a sentence."""
    return _quantity(value_m3_h, "m³/h")


def grams(value_g: float) -> str:
    """Write a weight (g) into a sentence."""
    return _quantity(value_g, "g")


def weighed(value_g: float) -> str:
    """Write what a piece of wood weighs (g): to four figures, since the last of them tells."""
    return _quantity(value_g, "gw")


def grams_per_litre(cut_g_per_l: float) -> str:
    """Write a shellac cut (g of flakes to a litre of alcohol) into a sentence."""
    return _quantity(cut_g_per_l, "g/L")


def _quantity(value: float, unit: str, digits: int = 0) -> str:
    exact, meant = round(value, 6) + 0.0, round(value, digits) + 0.0
    if exact == meant:
        return f"⟨{exact:.{digits}f} {unit}⟩"
    return f"⟨{exact:.6f} {unit} to {digits}⟩"


def worded(text: str, units: Units) -> str:
    """Return a text with every quantity in it as the person reads it."""
    if OPENS not in text:
        return text
    return _QUANTITY.sub(lambda found: _in_units(found, units), text)


def _in_units(found: re.Match[str], units: Units) -> str:
    figure, unit, to = found.groups()
    digits = len(figure.partition(".")[2]) if to is None else int(to)
    return _WORDS[unit](float(figure), digits, units)


def _temperature(value: float, digits: int, units: Units) -> str:
    return _rounded(from_base(value, units.temperature), digits, units.temperature)


def _typed(value: float, digits: int, units: Units) -> str:
    return _temperature(value, digits, units).replace(
        f" {sign(units.temperature)}", units.temperature
    )


def _difference(value: float, digits: int, units: Units) -> str:
    unit = units.temperature
    finer = digits if unit is Temperature.CELSIUS else max(digits, 1)
    return _rounded(difference_from_base(value, unit), finer, unit)


def _film(value: float, digits: int, units: Units) -> str:
    """Say how thick a film is; what is poured in millimetres, or in inches."""
    if value >= _POURED_UM:
        metric = units.film is Film.MICROMETRE
        thick, to = (Length.MILLIMETRE, 1) if metric else (Length.INCH, 2)
        return _rounded(from_base(value / 1000, thick), to, thick)
    finer = digits if units.film is Film.MICROMETRE else digits + 1
    return _rounded(from_base(value, units.film), finer, units.film)


def _distance(value: float, digits: int, units: Units) -> str:
    """Say a distance in the length that the person's area is made of."""
    unit = Length.FOOT if units.area is Area.SQUARE_FOOT else Length.METRE
    return _rounded(from_base(1000 * value, unit), digits, unit)


def _rounded(value: float, digits: int, unit: Unit) -> str:
    return f"{round(value, digits) + 0.0:g} {sign(unit)}"


def _volume(value: float, _: int, units: Units) -> str:
    return _about(value / 1000, _volume_unit(value, units))


def _volume_unit(value: float, units: Units) -> Volume:
    """Return what a volume (ml) is said in: what is less than a litre, or a quart, in small."""
    unit = units.volume
    # To the three figures that are shown: a quart that was poured is a quart.
    whole = Volume.LITRE if unit is Volume.LITRE else Volume.US_QUART
    small = float(f"{from_base(value / 1000, whole):.3g}") < 1
    return _SMALL.get(unit, unit) if small else unit


def _volume_down(value: float, _: int, units: Units) -> str:
    """Say a volume to two figures, the rest left off: it is an estimate, and a limit."""
    unit = _volume_unit(value, units)
    shown = from_base(value / 1000, unit)
    step = 10.0 ** (math.floor(math.log10(shown)) - 1) if shown > 0 else 1.0
    return f"{float(f'{math.floor(shown / step + 1e-9) * step:.2g}'):.12g} {sign(unit)}"


def _weight(value: float, _: int, units: Units) -> str:
    return _about(value, units.weight)


def _weighed(value: float, _: int, units: Units) -> str:
    return _about(value, units.weight, figures=4)


def _cut(value: float, _: int, units: Units) -> str:
    """Say a cut; who weighs by the gram is told the grams beside the trade's pounds."""
    in_grams = _about(value, Cut.GRAM_PER_LITRE)
    if units.cut is Cut.GRAM_PER_LITRE:
        return in_grams
    pounds = f"{from_base(value, units.cut):.2g} {sign(units.cut)}"
    return f"{pounds}, {in_grams}" if units.weight in {Weight.GRAM, Weight.KILOGRAM} else pounds


_FT3_M3 = 0.3048**3


def _air(value: float, _: int, units: Units) -> str:
    return _whole(value / _FT3_M3, "ft³") if _in_feet(units) else _whole(value, "m³")


def _flow(value: float, _: int, units: Units) -> str:
    in_feet = _in_feet(units)
    return _whole(value / _FT3_M3 / 60, "ft³/min") if in_feet else _whole(value, "m³/h")


def _speed(value: float, _: int, units: Units) -> str:
    return _whole(value / 0.3048 * 60, "ft/min") if _in_feet(units) else _whole(value, "m/s")


def _vapour(value: float, _: int, units: Units) -> str:
    return _whole(value / 1000 / _FT3_M3, "ft³") if _in_feet(units) else _whole(value, "L")


def _in_feet(units: Units) -> bool:
    """Tell whether air is measured as the person's wood is."""
    return units.area is Area.SQUARE_FOOT


def _whole(value: float, sign: str) -> str:
    """Show air to two figures where it is little, else to the whole: it is an average."""
    shown = f"{value:.2g}" if value < 10 else f"{float(f'{value:.3g}'):.0f}"
    return f"{shown} {sign}"


def _about(value: float, unit: Unit, figures: int = 3) -> str:
    """Show an amount to three figures: nobody weighs or pours more exactly."""
    return f"{float(f'{from_base(value, unit):.{figures}g}'):.12g} {sign(unit)}"


_WORDS: Mapping[str, Callable[[float, int, Units], str]] = {
    "°C": _temperature,
    "C": _typed,
    "Δ°C": _difference,
    "m": _distance,
    "µm": _film,
    "ml": _volume,
    "ml down": _volume_down,
    "g": _weight,
    "gw": _weighed,
    "g/L": _cut,
    "m³": _air,
    "m³/h": _flow,
    "m/s": _speed,
    "L vapour": _vapour,
}
