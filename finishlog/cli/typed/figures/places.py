"""Read what a room is: how big, how it is aired, what stands in it, who lives there, what it joins.

Sizes come out in m³, measured exhaust in m³/h. A window or a door is no exhaust that was measured.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from enum import StrEnum
from typing import TypeVar

from finishlog.cli.typed.figures.numbers import NUMBER, check_thousands, number, plain
from finishlog.core.air.place import Fixture, Lives, Opening, PlaceKind
from finishlog.errors import UsageFault

_Word = TypeVar("_Word", bound=StrEnum)

_FT_M = 0.3048
_METRES = {"m": 1.0, "metre": 1.0, "metres": 1.0, "meter": 1.0, "meters": 1.0, "cm": 0.01,
           "ft": _FT_M, "foot": _FT_M, "feet": _FT_M, "'": _FT_M, "′": _FT_M}  # fmt: skip
_CUBES = {"m3": 1.0, "m³": 1.0, "cubic metres": 1.0, "cubic meters": 1.0, "cubic metre": 1.0,
          "ft3": _FT_M**3, "ft³": _FT_M**3, "cu ft": _FT_M**3, "cubic feet": _FT_M**3}  # fmt: skip
_HOURLY = {"m3/h": 1.0, "m³/h": 1.0, "m3/hr": 1.0, "m3 h": 1.0, "l/s": 3.6,
           "cfm": 60 * _FT_M**3, "ft3/min": 60 * _FT_M**3, "ft³/min": 60 * _FT_M**3}  # fmt: skip
# A broom cupboard, a factory hall; a bathroom fan, a booth of its own.
_ROOM_M3 = (3.0, 20e3)
_EXHAUST_M3_H = (5.0, 100e3)
NONE = frozenset({"none", "no", "nothing", "-", "0"})
_NOT_MEASURED = NONE | {"a window", "window", "windows", "open window", "a door", "door",
                        "not measured", "unknown", "a fan", "fan"}  # fmt: skip
_SIZE = "type 60m3, 2100ft3, 6x4x2.5m or 20x24x9ft"
_FLOW = "type 300m3/h, 180ft3/min, or none: a window is none that was measured"

_FIXTURES: Mapping[Fixture, tuple[str, ...]] = {
    Fixture.PILOT: ("pilot light", "boiler", "furnace", "water heater", "gas water heater",
                    "gas boiler", "gas dryer", "geyser"),
    Fixture.STOVE: ("wood stove", "woodstove", "fireplace", "open fire", "cooker", "gas cooker",
                    "gas stove", "range", "oven", "candle", "candles"),
    Fixture.FLAME: ("gas", "gas heater", "propane", "propane heater", "paraffin",
                    "paraffin heater", "kerosene", "kerosene heater", "torch", "oil burner"),
    Fixture.GLOW: ("glowing wire", "radiant", "radiant heater", "infrared", "infrared heater",
                   "quartz", "quartz heater", "halogen heater", "electric fire", "toaster",
                   "hot plate"),
    Fixture.FAN: ("fan heater", "hot coil", "coil", "convector", "blower"),
    Fixture.SEALED: ("radiator", "oil radiator", "hot water", "water heated", "underfloor",
                     "heat pump"),
    Fixture.HEATER: ("heaters", "heating", "space heater", "electric heater"),
    Fixture.MOTOR: ("motors", "switch", "switches", "compressor", "fridge", "freezer", "saw",
                    "table saw", "dust collector", "vacuum", "dryer", "fan motor", "charger"),
}  # fmt: skip
_KINDS: Mapping[PlaceKind, tuple[str, ...]] = {
    PlaceKind.BASEMENT: ("cellar", "cellar room"),
    PlaceKind.GARAGE: ("detached garage", "shed", "barn", "workshop", "shop"),
    PlaceKind.ATTACHED: ("attached garage", "garage attached"),
    PlaceKind.DWELLING: ("house", "home", "flat", "apartment", "room", "kitchen", "living room"),
    PlaceKind.OUTDOORS: ("outside", "outdoor", "yard", "open air", "carport"),
}
_LIVES: Mapping[Lives, tuple[str, ...]] = {
    Lives.CHILD: ("children", "kids", "kid", "baby", "toddler"),
    Lives.PREGNANT: ("pregnancy", "expecting"),
    Lives.BIRD: ("birds", "parrot", "budgie", "canary"),
    Lives.ASTHMA: ("asthmatic", "asthmatics"),
}


def room_size(text: str) -> float:
    """Read a room's volume, or its length, width and height, as m³."""
    words = plain(text).replace("×", "x").replace("*", "x").replace(" by ", "x")
    check_thousands(words)
    sides = [side.strip() for side in words.split("x")]
    if len(sides) == 3:
        found = [re.fullmatch(rf"({NUMBER}) ?(\D*)", side) for side in sides]
        units = [each[2].strip() for each in found if each]
        last = units[-1] if units else ""
        if None not in found and all((unit or last) in _METRES for unit in units):
            size = 1.0
            for each, unit in zip(found, units, strict=True):
                size *= number(each[1]) * _METRES[unit or last] if each else 1.0
            return _within(size, _ROOM_M3, f"{text!r} is no size of a room", _SIZE)
    if (one := re.fullmatch(rf"({NUMBER}) ?(\D.*)", words)) and one[2] in _CUBES:
        size = number(one[1]) * _CUBES[one[2]]
        return _within(size, _ROOM_M3, f"{text!r} is no size of a room", _SIZE)
    raise UsageFault(f"{text!r} is no size of a room with its unit", _SIZE)


def exhaust(text: str) -> float:
    """Read a measured exhaust as m³/h; 0: none that was measured."""
    words = plain(text)
    if words in _NOT_MEASURED:
        return 0.0
    check_thousands(words)
    one = re.fullmatch(rf"({NUMBER}) ?(\D.*)", words)
    if one is None or one[2] not in _HOURLY:
        raise UsageFault(f"{text!r} is no measured exhaust with its unit", _FLOW)
    flow = number(one[1]) * _HOURLY[one[2]]
    return _within(flow, _EXHAUST_M3_H, f"{text!r} is no exhaust of a shop", _FLOW)


def mixing(text: str) -> float:
    """Read how badly a room's air mixes: 1, perfectly, to 10, hardly."""
    words = plain(text)
    if not re.fullmatch(NUMBER, words) or not 1 <= number(words) <= 10:
        raise UsageFault(f"{text!r} is no mixing factor", "type 1 (mixed perfectly) to 10 (hardly)")
    return number(words)


def fixtures(text: str) -> tuple[Fixture, ...]:
    """Read what stands in a room, with commas between; `none`: nothing that burns or sparks."""
    return _several(text, _FIXTURES, "nothing known here that burns, glows or sparks")


def lives(text: str) -> tuple[Lives, ...]:
    """Read who lives there, with commas between; `none`: nobody who bears less."""
    return _several(text, _LIVES, "nobody who is known here to bear less vapour")


def place_kind(text: str) -> PlaceKind:
    """Read what kind of place a room is."""
    return _one(plain(text), _KINDS, f"{text!r} is no kind of place known here")


def joined(text: str) -> tuple[tuple[str, Opening], ...]:
    """Read the rooms that one leads to, `boiler room:door,house:gap`; `none`: to none."""
    if plain(text) in NONE:
        return ()
    found = []
    for each in text.split(","):
        name, _, by = each.strip().rpartition(":") if ":" in each else (each.strip(), "", "door")
        if by.strip().casefold() not in {opening.value for opening in Opening} or not name:
            kinds = ", ".join(opening.value for opening in Opening)
            raise UsageFault(f"{each.strip()!r}: {kinds}?", "type 'boiler room:door,house:gap'")
        found.append((name.strip(), Opening(by.strip().casefold())))
    return tuple(found)


def _several(text: str, known: Mapping[_Word, tuple[str, ...]], nothing: str) -> tuple[_Word, ...]:
    if plain(text) in NONE:
        return ()
    words = [each for each in map(plain, text.split(",")) if each]
    return tuple(dict.fromkeys(_one(word, known, f"{word!r} is {nothing}") for word in words))


def _one(word: str, known: Mapping[_Word, tuple[str, ...]], refused: str) -> _Word:
    said = word.replace("-", " ")
    for each, called in known.items():
        if said in {each.value, *called}:
            return each
    there_are = "; ".join(f"{each}: {', '.join(called[:3])}" for each, called in known.items())
    raise UsageFault(refused, there_are)


def _within(value: float, bounds: tuple[float, float], refused: str, example: str) -> float:
    if not bounds[0] <= value <= bounds[1]:
        raise UsageFault(refused, example)
    return value
