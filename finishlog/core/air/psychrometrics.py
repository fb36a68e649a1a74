"""The air of a room: saturation pressure, dew point, wet bulb, vapour-pressure deficit.

Temperatures are °C, humidity % RH, pressures Pa.
"""

from __future__ import annotations

import math
from functools import lru_cache

import msgspec


class Air(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """Air temperature and relative humidity."""

    temperature_c: float
    humidity_pct: float


# ASTM D3924 standard atmosphere for conditioning and testing coatings: 23 ± 2 °C, 50 ± 5 % RH.
STANDARD_AIR = Air(23.0, 50.0)

_ICE_POINT_K = 273.15
# Standard atmosphere at sea level, and water to dry air by molar mass (ASHRAE as below).
_SEA_LEVEL_PA = 101_325.0
_WATER_TO_AIR = 0.621945


def saturation_pa(temperature_c: float) -> float:
    """Saturation pressure of water vapour in Pa, for -100 to 200 °C.

    ASHRAE Handbook - Fundamentals (2017) chapter 1, equations 5 (over ice) and 6 (over water).
    """
    kelvin = temperature_c + _ICE_POINT_K
    if temperature_c <= 0.01:
        ln_p = (
            -5.6745359e03 / kelvin
            + 6.3925247
            - 9.677843e-03 * kelvin
            + 6.2215701e-07 * kelvin**2
            + 2.0747825e-09 * kelvin**3
            - 9.484024e-13 * kelvin**4
            + 4.1635019 * math.log(kelvin)
        )
    else:
        ln_p = (
            -5.8002206e03 / kelvin
            + 1.3914993
            - 4.8640239e-02 * kelvin
            + 4.1764768e-05 * kelvin**2
            - 1.4452093e-08 * kelvin**3
            + 6.5459673 * math.log(kelvin)
        )
    return math.exp(ln_p)


# Every zone of a room asks of the same few readings.
@lru_cache(maxsize=1024)
def dew_point_c(air: Air) -> float:
    """Dew point in °C: the temperature whose saturation pressure is the air's vapour pressure.

    By bisection on `saturation_pa`; ValueError when the air holds no vapour.
    """
    if air.humidity_pct <= 0:
        raise ValueError("dry air has no dew point")
    wanted = saturation_pa(air.temperature_c) * air.humidity_pct / 100
    low, high = -100.0, max(air.temperature_c, 0.0) + 5.0
    for _ in range(60):
        middle = (low + high) / 2
        if saturation_pa(middle) < wanted:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def humidity_from_wet_bulb(dry_c: float, wet_c: float) -> float:
    """Relative humidity in % from a dry and a wet bulb (°C), at 101.325 kPa.

    ASHRAE Handbook - Fundamentals (2017) chapter 1, equations 33 (wet bulb of water) and 35 (of
    ice, below 0 °C). ValueError when the wet bulb is the warmer, or colder than any air makes it.
    """
    if wet_c > dry_c:
        raise ValueError("a wet bulb is not warmer than the dry one")
    pressed = saturation_pa(wet_c)
    saturated = _WATER_TO_AIR * pressed / (_SEA_LEVEL_PA - pressed)
    if wet_c >= 0:
        heat = (2501 - 2.326 * wet_c) * saturated - 1.006 * (dry_c - wet_c)
        ratio = heat / (2501 + 1.86 * dry_c - 4.186 * wet_c)
    else:
        heat = (2830 - 0.24 * wet_c) * saturated - 1.006 * (dry_c - wet_c)
        ratio = heat / (2830 + 1.86 * dry_c - 2.1 * wet_c)
    if ratio < 0:
        raise ValueError("no air is so dry that it makes a wet bulb so cold")
    vapour = _SEA_LEVEL_PA * ratio / (_WATER_TO_AIR + ratio)
    return min(100.0, 100 * vapour / saturation_pa(dry_c))


def vapour_deficit_pa(air: Air) -> float:
    """How much more water vapour the air would take, in Pa."""
    return saturation_pa(air.temperature_c) * (1 - air.humidity_pct / 100)


def cooled(air: Air, temperature_c: float) -> Air:
    """Cool or warm air (°C) without adding or taking water: at most 100 % RH, the rest is dew."""
    vapour = saturation_pa(air.temperature_c) * air.humidity_pct / 100
    return Air(temperature_c, min(100.0, 100 * vapour / saturation_pa(temperature_c)))
