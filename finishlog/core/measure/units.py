"""The units a person types and reads, and the ones kept inside: °C, m², L, g, µm, mm, g/L.

Factors: NIST Special Publication 811 (2008), appendix B. All are exact: 1 in = 25.4 mm,
1 ft = 0.3048 m, 1 US gal = 231 in³, 1 qt = 1/4 gal, 1 pt = 1/8 gal, 1 US fl oz = 1/128 gal,
1 lb = 453.59237 g, 1 oz (avoirdupois) = 1/16 lb, 1 mil = 0.001 in. A shellac cut is the weight
of dry flakes to the volume of alcohol: an n lb cut is n lb to 1 US gal (common practice).
"""

from __future__ import annotations

from enum import StrEnum

from msgspec import Struct


class Temperature(StrEnum):
    """Unit of temperature; inside °C."""

    CELSIUS = "C"
    FAHRENHEIT = "F"


class Area(StrEnum):
    """Unit of area; inside m²."""

    SQUARE_METRE = "m2"
    SQUARE_FOOT = "ft2"


class Volume(StrEnum):
    """Unit of volume; inside L."""

    LITRE = "L"
    MILLILITRE = "ml"
    US_QUART = "qt"
    US_PINT = "pt"
    US_GALLON = "gal"
    US_FLUID_OUNCE = "fl oz"


class Weight(StrEnum):
    """Unit of weight; inside g. An ounce is never written without what it measures."""

    GRAM = "g"
    KILOGRAM = "kg"
    OUNCE = "oz wt"
    POUND = "lb"


class Film(StrEnum):
    """Unit of film thickness; inside µm."""

    MICROMETRE = "um"
    MIL = "mil"


class Length(StrEnum):
    """Unit of a width or length of wood; inside mm."""

    MILLIMETRE = "mm"
    CENTIMETRE = "cm"
    METRE = "m"
    INCH = "in"
    FOOT = "ft"


class Cut(StrEnum):
    """Unit of a shellac cut, flakes to alcohol; inside g/L."""

    GRAM_PER_LITRE = "g/L"
    POUND_CUT = "lb cut"


Unit = Temperature | Area | Volume | Weight | Film | Length | Cut


class Units(Struct, frozen=True):
    """What a number without a unit is taken as, and what answers are shown in."""

    temperature: Temperature = Temperature.CELSIUS
    area: Area = Area.SQUARE_METRE
    volume: Volume = Volume.LITRE
    weight: Weight = Weight.GRAM
    film: Film = Film.MICROMETRE
    cut: Cut = Cut.POUND_CUT


# What people write for each, `|` between.
WORDS: dict[Unit, str] = {
    Temperature.CELSIUS: "c|celsius|centigrade",
    Temperature.FAHRENHEIT: "f|fahrenheit",
    Volume.LITRE: "l|litre|litres|liter|liters",
    Volume.MILLILITRE: "ml|cc|millilitre|millilitres|milliliter|milliliters",
    Volume.US_QUART: "qt|qts|quart|quarts",
    Volume.US_PINT: "pt|pts|pint|pints",
    Volume.US_GALLON: "gal|gals|gallon|gallons",
    Volume.US_FLUID_OUNCE: "fl oz|floz|fluid oz|fl ounce|fl ounces|fluid ounce|fluid ounces",
    Weight.GRAM: "g|gram|grams|gramme|grammes",
    Weight.KILOGRAM: "kg|kilo|kilos|kilogram|kilograms",
    Weight.OUNCE: "oz wt|oz weight|oz by weight|ounce by weight|ounces by weight",
    Weight.POUND: "lb|lbs|pound|pounds",
    Area.SQUARE_METRE: "m2|m²|sq m|sqm|square metre|square metres|square meter|square meters",
    Area.SQUARE_FOOT: "ft2|ft²|sq ft|sqft|square foot|square feet",
    # Both signs of micro: the Greek letter and the one that keyboards write.
    Film.MICROMETRE: "um|\u00b5m|\u03bcm|micron|microns|micrometre|micrometres",
    Film.MIL: "mil|mils|thou",
    Length.MILLIMETRE: "mm|millimetre|millimetres|millimeter|millimeters",
    Length.CENTIMETRE: "cm|centimetre|centimetres|centimeter|centimeters",
    Length.METRE: "m|metre|metres|meter|meters",
    Length.INCH: 'in|inch|inches|"|\u2033|\u201d',
    Length.FOOT: "ft|foot|feet|'|\u2032",
    Cut.GRAM_PER_LITRE: "g/l|g per l|g per litre|g per liter",
    Cut.POUND_CUT: "lb cut|lb|pound|pounds|pound cut|lb/gal|lb per gal|#|# cut",
}
# An ounce by itself, and which it is where a volume or a weight is asked for.
OUNCES = frozenset({"oz", "ounce", "ounces"})
OUNCE: dict[type[Unit], Unit] = {Volume: Volume.US_FLUID_OUNCE, Weight: Weight.OUNCE}

_INCH_M = 0.0254
_GALLON_L = 231 * _INCH_M**3 * 1000
_POUND_G = 453.59237

# How many °C (differences), m², L, g, µm, mm, g/L one unit is.
_SIZE: dict[Unit, float] = {
    Temperature.CELSIUS: 1.0,
    Temperature.FAHRENHEIT: 1 / 1.8,
    Area.SQUARE_METRE: 1.0,
    Area.SQUARE_FOOT: (12 * _INCH_M) ** 2,
    Volume.LITRE: 1.0,
    Volume.MILLILITRE: 0.001,
    Volume.US_QUART: _GALLON_L / 4,
    Volume.US_PINT: _GALLON_L / 8,
    Volume.US_GALLON: _GALLON_L,
    Volume.US_FLUID_OUNCE: _GALLON_L / 128,
    Weight.GRAM: 1.0,
    Weight.KILOGRAM: 1000.0,
    Weight.OUNCE: _POUND_G / 16,
    Weight.POUND: _POUND_G,
    Film.MICROMETRE: 1.0,
    Film.MIL: _INCH_M * 1000,
    Length.MILLIMETRE: 1.0,
    Length.CENTIMETRE: 10.0,
    Length.METRE: 1000.0,
    Length.INCH: _INCH_M * 1000,
    Length.FOOT: 12 * _INCH_M * 1000,
    Cut.GRAM_PER_LITRE: 1.0,
    Cut.POUND_CUT: _POUND_G / _GALLON_L,
}
_ZERO: dict[Unit, float] = {Temperature.FAHRENHEIT: 32.0}
_SIGN: dict[Unit, str] = {
    Temperature.CELSIUS: "°C",
    Temperature.FAHRENHEIT: "°F",
    Area.SQUARE_METRE: "m²",
    Area.SQUARE_FOOT: "ft²",
    Film.MICROMETRE: "µm",
}


def to_base(value: float, unit: Unit) -> float:
    """Convert a value in `unit` to °C, m², L, g, µm, mm or g/L."""
    return (value - _ZERO.get(unit, 0.0)) * _SIZE[unit]


def from_base(value: float, unit: Unit) -> float:
    """Convert a value in °C, m², L, g, µm, mm or g/L to `unit`."""
    return value / _SIZE[unit] + _ZERO.get(unit, 0.0)


def difference_from_base(value: float, unit: Unit) -> float:
    """Convert a difference in °C, m², L, g, µm, mm or g/L to `unit`."""
    return value / _SIZE[unit]


def sign(unit: Unit) -> str:
    """Return the unit as it is printed: `°C`, `ft²`, `qt`."""
    return _SIGN.get(unit, unit.value)
