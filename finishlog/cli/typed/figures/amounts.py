"""Read how much: volumes, weights, widths, wet films and shellac cuts.

An ounce by itself is refused: fluid, it measures volume, else weight. A bare number takes the
unit that the reader was handed, and is refused where there is none. What is possible but unlikely
is asked, or insisted on with a `!` behind it.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from msgspec import Struct

from finishlog.cli.typed.figures.numbers import (
    FRACTION,
    NUMBER,
    check_thousands,
    counted,
    plain,
    quantity,
)
from finishlog.cli.typed.figures.unclear import INSIST, Unclear, asked, insisted
from finishlog.core.measure.units import (
    OUNCE,
    OUNCES,
    WORDS,
    Area,
    Cut,
    Film,
    Length,
    Unit,
    Volume,
    Weight,
    sign,
    to_base,
)
from finishlog.errors import UsageFault


class _Kind(NamedTuple):
    """What is measured: an example to type, what is likely and what is possible (in the base)."""

    name: str
    example: str
    likely: tuple[float, float]
    most: float


_KINDS: dict[type[Unit], _Kind] = {
    Volume: _Kind("a volume", "250 ml, 1 qt or 8 fl oz", (0.0005, 50.0), 1000.0),
    Weight: _Kind("a weight", "80 g, 2 lb or 8 oz wt", (0.05, 50e3), 1e6),
    Area: _Kind("an area", "3.2 m2 or 35 ft2", (0.001, 200.0), 10e3),
    Film: _Kind("the thickness of a film", "100 um or 4 mil", (5.0, 500.0), 10e3),
    Length: _Kind("a width", "300 mm or 9.15 in", (1.0, 3000.0), 30e3),
    Cut: _Kind("a shellac cut", "2 lb cut or 240 g/L", (30.0, 720.0), 1500.0),
}
# A pound of flakes by itself is a weight, where a cut is asked for it is a cut: by kind, then.
_UNITS: dict[type[Unit], dict[str, Unit]] = {
    kind: {word: unit for unit in kind for word in WORDS[unit].split("|")} for kind in _KINDS
}


# Weights and Measures Act 1985, schedule 1: an eighth of a gallon of 4.54609 L.
_IMPERIAL_PINT_ML = 568.26125
_OF_THE_US = frozenset(unit for unit in Volume if unit.name.startswith("US_"))
_SAYS_US = re.compile(r"\bus\b", re.IGNORECASE)


class Amount(Struct, frozen=True):
    """How much of something, by volume (L) or by weight (g); the other is None."""

    volume_l: float | None = None
    weight_g: float | None = None


@asked
def volume(text: str, unit: Volume | None = None) -> float:
    """Read `250 ml`, `1/2 gal`, `8 fl oz` as litres; UsageFault for a bare `oz` or a weight."""
    return _read(text, Volume, unit)


@asked
def amount(text: str, unit: Volume | Weight | None = None, home: Volume | None = None) -> Amount:
    """Read an amount by volume or by weight; UsageFault when it does not say which.

    `home`: what the shop measures volumes in.
    """
    typed = _taken_apart(text)
    word = typed.word
    if word in OUNCES and typed.number:
        raise _which_ounce(typed.number, tuple(OUNCE.values()))
    if word in _UNITS[Weight] or (not word and isinstance(unit, Weight)):
        return Amount(weight_g=_read(text, Weight, unit))
    return Amount(volume_l=_read(text, Volume, unit, home))


@asked
def weight(text: str, unit: Weight | None = None) -> float:
    """Read what something weighs, `642 g`, `1 lb 6 oz`, as g: on a scale an ounce is a weight."""
    parts = re.fullmatch(
        r"\s*(\S+ ?lbs?\b\.?)[ ,]+(\S+ ?(?:oz|ounces?)\b\.?)\s*", text, re.IGNORECASE
    )
    if parts:
        return sum(weight(part) for part in parts.groups())
    typed = _taken_apart(text)
    if typed.word in OUNCES:
        text = f"{typed.number} {Weight.OUNCE}{INSIST if typed.sure else ''}"
    return _read(text, Weight, unit)


@asked
def film(text: str, unit: Film | None = None) -> float:
    """Read the thickness of a wet film, `100 um` or `4 mil`, or of a pour, `6 mm`, as µm."""
    if _taken_apart(text).word in _UNITS[Length]:
        return depth_um(text)
    return _read(text, Film, unit)


def depth_um(text: str) -> float:
    """Read how deep a void or a pour is, `24 mm` or `1/4 in`, as µm."""
    return 1000 * _read(text, Length, None)


@asked
def width(text: str, unit: Length | None = None) -> tuple[float, Length]:
    """Read a width, `300 mm`, `9.15 in`, `9-1/4"`, as mm; and the unit that it was typed in."""
    words = re.sub(r"(?<=\d)-(?=\d+/)", " ", text)
    base = _read(words, Length, unit)
    said = _UNITS[Length].get(_taken_apart(words).word, unit)
    assert isinstance(said, Length)
    return base, said


@asked
def cut(text: str, unit: Cut | None = None) -> float:
    """Read a shellac cut, `2 lb cut` or `240 g/L`, as grams of dry flakes to a litre of alcohol."""
    return _read(text, Cut, unit)


class _Typed(NamedTuple):
    number: str
    word: str
    sure: bool


def _taken_apart(text: str) -> _Typed:
    bare, sure = insisted(text)
    words = counted(plain(bare))
    check_thousands(words)
    found = re.fullmatch(rf"({FRACTION}|{NUMBER})(?: |-)?(?:us )?(\D*[²2]?)", words)
    if found is None:
        return _Typed("", words, sure)
    return _Typed(found[1], re.sub(r"\. ?", " ", found[2]).strip(), sure)


def _read(text: str, kind: type[Unit], unit: Unit | None, home: Volume | None = None) -> float:
    """Read one amount into the base of its kind."""
    typed, of = _taken_apart(text), _KINDS[kind]
    value = quantity(typed.number)
    if typed.word in OUNCES and kind in OUNCE and value is not None:
        raise _which_ounce(typed.number, (OUNCE[kind],))
    said = _UNITS[kind].get(typed.word) if typed.word else unit
    if value is None or said is None or not isinstance(said, kind):
        raise UsageFault(f"{text!r} {_why_not(value, typed.word, of)}", f"type {of.example}")
    here = home or unit
    if said is Volume.US_PINT and not (here in _OF_THE_US or _SAYS_US.search(text)):
        raise _which_pint(typed.number, value)
    base = to_base(value, said)
    if not 0 < base <= of.most:
        raise UsageFault(f"{text!r} is not {of.name} of a shop", f"type {of.example}")
    if not typed.sure and not of.likely[0] <= base <= of.likely[1]:
        again = f"{typed.number} {said}{INSIST}"
        shown = f"{typed.number} {sign(said)}"
        how = "little" if base < of.likely[0] else "much"
        raise Unclear(f"{shown} is very {how}", {f"{shown}, as typed": again})
    return base


def _why_not(value: float | None, word: str, of: _Kind) -> str:
    if value is None:
        return f"cannot be read as {of.name}"
    if not word:
        return "has no unit"
    other = next((_KINDS[kind].name for kind, units in _UNITS.items() if word in units), "")
    return f"is {other}, not {of.name}" if other else f"cannot be read as {of.name}"


def _which_pint(number: str, value: float) -> Unclear:
    us, imperial = f"{number} US pt", f"{value * _IMPERIAL_PINT_ML:.0f} ml"
    clear = {f"{us}, {1000 * to_base(value, Volume.US_PINT):.0f} ml": us}
    said = f"{number} pt could be US or imperial pints"
    return Unclear(said, clear | {f"{number} imperial pt, {imperial}": imperial})


def _which_ounce(number: str, units: tuple[Unit, ...]) -> Unclear:
    clear = [f"{number} {unit}" for unit in units]
    said = f"{number} oz could be fluid, which is a volume, or a weight"
    return Unclear(said, {each: each for each in clear})
