"""Read the temperatures, humidities and lengths of time that a person types.

What cannot be meant is refused with one line; a number without a unit takes the person's own.
"""

from __future__ import annotations

import re
from datetime import timedelta
from typing import NamedTuple

from finishlog.core.air import Air
from finishlog.core.shown_times import length_words
from finishlog.core.units import Temperature, from_base, sign, to_base
from finishlog.errors import UsageFault

COLDEST_C, WARMEST_C = -20.0, 50.0
LONGEST = timedelta(days=366)

_NUMBER = r"[+-]?\d{1,5}(?:[.,]\d{1,4})?"
_LENGTH = r"(\d{1,5}(?:[.,]\d{1,4})?) ?([a-z]+)"

_MINUTE, _HOUR, _DAY = timedelta(minutes=1), timedelta(hours=1), timedelta(days=1)
_UNITS: dict[str, timedelta] = {
    # `m` is minutes: a finish is never logged in months.
    **dict.fromkeys(("m", "min", "mins", "minute", "minutes"), _MINUTE),
    **dict.fromkeys(("h", "hr", "hrs", "hour", "hours"), _HOUR),
    **dict.fromkeys(("d", "day", "days"), _DAY),
    **dict.fromkeys(("w", "wk", "wks", "week", "weeks"), 7 * _DAY),
}
_TOO_VAGUE = frozenset({"mo", "mos", "month", "months", "y", "yr", "yrs", "year", "years"})

COUNTS = {"half a": "0.5", "half an": "0.5", "a": "1", "an": "1", "one": "1"} | {
    word: str(n) for n, word in enumerate(("two", "three", "four", "five", "six"), start=2)
}

_SCALES = {
    **dict.fromkeys(("c", "celsius"), Temperature.CELSIUS),
    **dict.fromkeys(("f", "fahrenheit"), Temperature.FAHRENHEIT),
}
_HUMIDITY_WORDS = frozenset({"%", "rh", "%rh"})


class Hours(NamedTuple):
    """A length of time in hours, from low to high; equal when one figure was typed."""

    low_h: float
    high_h: float


class _Typed(NamedTuple):
    value: float
    unit: str


def temperature(text: str, unit: Temperature) -> float:
    """Read `17.2C`, `63 °F` or a bare number in `unit`, as °C; UsageFault outside -20 to 50 °C."""
    typed = _typed(text)
    if typed is None or (typed.unit and typed.unit not in _SCALES):
        raise UsageFault(f"cannot read {text!r} as a temperature", "type 17.2C or 63F")
    return _plausible_c(typed.value, _SCALES.get(typed.unit, unit))


def humidity(text: str) -> float:
    """Read `58%` or `58` as % RH; UsageFault outside 1 to 100."""
    typed = _typed(text)
    if typed is None or (typed.unit and typed.unit not in _HUMIDITY_WORDS):
        raise UsageFault(f"cannot read {text!r} as a relative humidity", "type 58%")
    return _plausible_pct(typed.value)


def air(text: str, unit: Temperature) -> Air:
    """Read `17.2C 58%`, in either order; two bare numbers are temperature, then humidity."""
    measure = rf"{_NUMBER} ?[°%]? ?[a-z]*"
    # A comma between two digits is a decimal comma: `17,2` is one number.
    between = r"(?: ?[;/] ?|,? |(?<=[a-z%°]),)"
    pair = re.fullmatch(f"({measure}){between}({measure})", _plain(text))
    if pair is None:
        raise UsageFault(
            f"cannot read {text!r} as a temperature and a humidity", "type both: 17.2C 58%"
        )
    first, second = pair.groups()
    if _is_humidity(first) or _is_temperature(second):
        first, second = second, first
    return Air(temperature(first, unit), humidity(second))


def hours(text: str) -> Hours:
    """Read `4h`, `30min`, `2d`, `4-6h` or `24h-48h` as hours; `30m` is 30 minutes.

    UsageFault for months, a missing unit, nothing at all, or more than a year.
    """
    low, dash, high = re.sub(r" ?(?:[-–]|\bto\b) ?", "-", _plain(text)).partition("-")
    if not dash:
        only = _one_length(text, low) / _HOUR
        return Hours(only, only)
    if not re.search(r"[a-z]", low):
        low += "".join(re.findall(r"[a-z]+", high)[-1:])
    span = Hours(_one_length(text, low) / _HOUR, _one_length(text, high) / _HOUR)
    if span.low_h > span.high_h:
        raise UsageFault(f"{text!r} runs from long to short", "type the shorter first: 4-6h")
    return span


def length(text: str) -> timedelta | None:
    """Read `1.5h`, `1h30`, `90 minutes`, `an hour` as a length of time; None when it is none.

    UsageFault for months and years, which have no one length.
    """
    words = re.sub(r"^(?:half )?[a-z]+(?= )", lambda m: COUNTS.get(m[0], m[0]), _plain(text))
    if re.fullmatch(r"\d{1,2} ?h ?\d{1,2}", words):
        words += "min"
    if not re.fullmatch(rf"(?:{_LENGTH} ?)+", words):
        return None
    pairs = re.findall(_LENGTH, words)
    if any(unit in _TOO_VAGUE for _, unit in pairs):
        raise UsageFault(f"{text!r}: months and years have no one length", "type days: 30d")
    if any(unit not in _UNITS for _, unit in pairs):
        return None
    return sum((_number(value) * _UNITS[unit] for value, unit in pairs), timedelta())


def show_temperature(celsius: float, unit: Temperature) -> str:
    """Show a temperature to a tenth in the person's unit: `17.2 °C`, `63 °F`."""
    return f"{round(from_base(celsius, unit), 1) + 0.0:g} {sign(unit)}"


def show_humidity(pct: float) -> str:
    """Show a relative humidity to one per cent: `58 %`."""
    return f"{pct:.0f} %"


def show_air(shown: Air, unit: Temperature) -> str:
    """Show the air of a room: `17.2 °C, 58 %`."""
    return f"{show_temperature(shown.temperature_c, unit)}, {show_humidity(shown.humidity_pct)}"


def show_hours(span: Hours) -> str:
    """Echo a length of time with its unit spelled: `30 min`, `4 h to 6 h`."""
    low, high = (length_words(end * _HOUR) for end in span)
    return low if low == high else f"{low} to {high}"


def _typed(text: str) -> _Typed | None:
    words = _plain(text).replace("−", "-")
    found = re.fullmatch(rf"({_NUMBER}) ?(?:°|deg(?:rees)?)? ?([a-z%]*(?: rh)?)", words)
    if found is None:
        return None
    return _Typed(_number(found[1]), found[2].replace(" ", ""))


def _is_humidity(measure: str) -> bool:
    typed = _typed(measure)
    return typed is not None and typed.unit in _HUMIDITY_WORDS


def _is_temperature(measure: str) -> bool:
    typed = _typed(measure)
    return typed is not None and typed.unit in _SCALES


def _plausible_c(value: float, unit: Temperature) -> float:
    celsius = to_base(value, unit)
    if COLDEST_C <= celsius <= WARMEST_C:
        return celsius
    other = next(scale for scale in Temperature if scale is not unit)
    hint = "type the temperature of the room, such as 17.2C or 63F"
    if COLDEST_C <= to_base(value, other) <= WARMEST_C:
        hint = f"if you meant {sign(other)} type {value:g}{other}"
    raise UsageFault(f"{value:g} {sign(unit)} is no temperature of a shop", hint)


def _plausible_pct(value: float) -> float:
    if 1 <= value <= 100:
        return value
    hint = f"type {value * 100:g}%" if 0.01 <= value < 1 else "humidity is 1 to 100 %: type 58%"
    raise UsageFault(f"{value:g} % is no humidity of a shop", hint)


def _one_length(whole: str, words: str) -> timedelta:
    found = length(words)
    if found is None:
        raise UsageFault(f"cannot read {whole!r} as a length of time", "type 4h, 30min, 2d or 4-6h")
    if not timedelta() < found <= LONGEST:
        raise UsageFault(f"{whole!r} is no time that a finish takes", "type 4h, 30min, 2d or 4-6h")
    return found


def _plain(text: str) -> str:
    return " ".join(text.casefold().split())


def _number(text: str) -> float:
    return float(text.replace(",", "."))
