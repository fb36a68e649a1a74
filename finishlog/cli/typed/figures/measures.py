"""Read and show the temperatures and humidities that a person types.

What cannot be meant is refused with one line; a number without a unit takes the person's own.
What is possible but unlikely is asked, or insisted on with a `!` behind it.
"""

from __future__ import annotations

import re
from collections.abc import Container
from typing import NamedTuple

from finishlog.cli.typed.figures.numbers import NUMBER, number, plain
from finishlog.cli.typed.figures.unclear import INSIST, Unclear, asked, insisted
from finishlog.core.air.psychrometrics import Air, humidity_from_wet_bulb
from finishlog.core.measure import quantities
from finishlog.core.measure.units import Temperature, from_base, sign, to_base
from finishlog.errors import UsageFault

# What air in a shop can be, what it is likely to be, and what it is when people work in it.
POSSIBLE_C = (-60.0, 80.0)
LIKELY_C = (-20.0, 50.0)
ORDINARY_C = (0.0, 40.0)
COMFORT_C = (5.0, 35.0)
# Wood that is worked: drier or wetter than this a meter shows something else.
LIKELY_MOISTURE_PCT = (3.0, 60.0)
MOST_MOISTURE_PCT = 200.0
# What an answer shows to be typed.
_WARM = quantities.typed_celsius(17)
# Air is never without water: a gauge that shows less than this is mostly below its range.
LIKELY_PCT = 5.0

_SIGNED = rf"[+-]?{NUMBER}"

_SCALES = {
    **dict.fromkeys(("c", "celsius"), Temperature.CELSIUS),
    **dict.fromkeys(("f", "fahrenheit"), Temperature.FAHRENHEIT),
}
_HUMIDITY_WORDS = frozenset({"%", "rh", "%rh"})


class _Typed(NamedTuple):
    value: float
    unit: str


@asked
def temperature(text: str, unit: Temperature) -> float:
    """Read `17.2C`, `63 °F` or a bare number in `unit`, as °C.

    Unclear, unless a `!` insists, outside -20 to 50 °C, and for a bare number that is no
    ordinary temperature in `unit` but would be one in the other; UsageFault when impossible.
    """
    typed, sure = _figure(text, {"", *_SCALES}, "a temperature", "type 17.2C or 63F")
    said = _SCALES.get(typed.unit, unit)
    celsius = to_base(typed.value, said)
    if not sure:
        _check_likely(typed, said, celsius)
    if not _within(celsius, POSSIBLE_C):
        raise UsageFault(_no_temperature(typed.value, said), "type it like 17.2C or 63F")
    return celsius


@asked
def humidity(text: str) -> float:
    """Read `58%` or `58` as % RH; UsageFault outside 0 to 100, Unclear below 5 unless insisted."""
    typed, sure = _figure(text, {"", *_HUMIDITY_WORDS}, "a relative humidity", "type 58%")
    value = typed.value
    said = f"{value:g} % is no humidity of a shop"
    if not 0 < value <= 100:
        raise UsageFault(said, "no air is without water, none holds more than 100 %: type 58%")
    if value < LIKELY_PCT and not sure:
        choices = {f"{value:g} %, as the gauge shows": f"{value:g}%!"}
        if 0.05 <= value < 1:
            choices = {f"{value * 100:g} %": f"{value * 100:g}%"} | choices
        raise Unclear(said, choices)
    return value


@asked
def moisture(text: str) -> float:
    """Read `11%` or `11` as % of the weight of dry wood; Unclear below 3 and above 60."""
    words = {"", "%", "mc", "%mc"}
    typed, sure = _figure(text, words, "the moisture of wood", "type 11%")
    value, (least, most) = typed.value, LIKELY_MOISTURE_PCT
    said = f"{value:g} % is no moisture of wood in a shop"
    if not 0 <= value <= MOST_MOISTURE_PCT:
        raise UsageFault(said, "type 11%")
    if not sure and not least <= value <= most:
        raise Unclear(said, {f"{value:g} %, as the meter shows": f"{value:g}%!"})
    return value


def moisture_or_air(text: str, unit: Temperature) -> float | Air:
    """Read `8%`, wood's own moisture, or the air that it stands in: `20C 35%`."""
    if _typed(insisted(text)[0]) is not None:
        return moisture(text)
    try:
        return air(text, unit)
    except Unclear:
        raise
    except UsageFault as fault:
        raise UsageFault(
            f"cannot read {text!r} as a moisture, nor as an air", "type 8%, or '20C 35%'"
        ) from fault


def air(text: str, unit: Temperature) -> Air:
    """Read `17.2C 58%`, in either order; two bare numbers are temperature, then humidity."""
    measure = rf"{_SIGNED} ?[°%]? ?[a-z]* ?!?"
    # A comma between two digits is a decimal comma: `17,2` is one number.
    between = r"(?: ?[;/] ?|,? |(?<=[a-z%°!]),)"
    # `RH 50` says first what it is.
    words = re.sub(rf"\b(?:rh|humidity):? ?({NUMBER}) ?%?", r"\1%", plain(text))
    pair = re.fullmatch(f"({measure}){between}({measure})", words)
    if pair is None:
        raise UsageFault(
            f"cannot read {text!r} as a temperature and a humidity",
            f"type both: {_WARM} 58%, or with its unit the temperature alone: {_WARM}",
        )
    first, second = pair.groups()
    if _says(first, _HUMIDITY_WORDS) or _says(second, _SCALES):
        first, second = second, first
    return Air(temperature(first, unit), humidity(second))


def temperature_alone(text: str, unit: Temperature) -> float | None:
    """Read a temperature that says its unit and stands by itself, as °C; None: it is no such."""
    return temperature(text, unit) if _says(text, _SCALES) else None


def show_temperature(celsius: float, unit: Temperature) -> str:
    """Show a temperature to a tenth in the person's unit: `17.2 °C`, `63 °F`."""
    return f"{round(from_base(celsius, unit), 1) + 0.0:g} {sign(unit)}"


def show_humidity(pct: float) -> str:
    """Show a relative humidity to one per cent: `58 %`."""
    return f"{pct:.0f} %"


def show_air(shown: Air) -> str:
    """Write the air of a room into a page: `17.2 °C, 58 %`."""
    return f"{quantities.celsius(shown.temperature_c, 1)}, {show_humidity(shown.humidity_pct)}"


def _typed(text: str) -> _Typed | None:
    words = plain(text).replace("−", "-")
    found = re.fullmatch(rf"({_SIGNED}) ?(?:°|deg(?:rees)?)? ?([a-z%]*(?: rh)?)", words)
    if found is None:
        return None
    return _Typed(number(found[1]), found[2].replace(" ", ""))


def _figure(text: str, units: Container[str], what: str, hint: str) -> tuple[_Typed, bool]:
    """Read a figure in one of the units, and whether it is insisted on."""
    bare, sure = insisted(text)
    typed = _typed(bare)
    if typed is None or typed.unit not in units:
        raise UsageFault(f"cannot read {text!r} as {what}", hint)
    return typed, sure


def _says(text: str, units: Container[str]) -> bool:
    """Tell whether a figure says one of the units."""
    typed = _typed(insisted(text)[0])
    return typed is not None and typed.unit in units


def _check_likely(typed: _Typed, said: Temperature, celsius: float) -> None:
    """Ask where the other scale is the likelier, or where neither is likely."""
    other = next(scale for scale in Temperature if scale is not said)
    in_other_c = to_base(typed.value, other)
    clear = typed.unit or _within(celsius, ORDINARY_C) or not _within(in_other_c, COMFORT_C)
    if clear and _within(celsius, LIKELY_C):
        return
    choices, instead = {}, "type it like 17.2C or 63F"
    if _within(in_other_c, LIKELY_C):
        choices[f"{typed.value:g} {sign(other)}"] = f"{typed.value:g}{other}"
        instead = f"type {typed.value:g}{other} if you meant {sign(other)}"
    if _within(celsius, POSSIBLE_C):
        choices[f"{typed.value:g} {sign(said)}, as typed"] = f"{typed.value:g}{said}{INSIST}"
        instead += f", or {typed.value:g}{said}{INSIST} if it is so"
    raise Unclear(_no_temperature(typed.value, said), choices, instead)


def _no_temperature(value: float, said: Temperature) -> str:
    return f"{value:g} {sign(said)} is no temperature of a shop"


def _within(value: float, range_: tuple[float, float]) -> bool:
    return range_[0] <= value <= range_[1]


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
