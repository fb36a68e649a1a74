"""Sentences as a person reads them: in SI, and in the units of a shop that measures by the foot."""

from __future__ import annotations

from finishlog.cli.terminal.spelling import spelt
from finishlog.core.measure.units import Area, Film, Temperature, Units, Volume, Weight

BY_THE_FOOT = Units(
    temperature=Temperature.FAHRENHEIT,
    area=Area.SQUARE_FOOT,
    volume=Volume.US_QUART,
    weight=Weight.OUNCE,
    film=Film.MIL,
)


def in_si(text: str) -> str:
    """Word a text in °C, m², L, g and µm."""
    return spelt(text)


def by_the_foot(text: str) -> str:
    """Word a text in °F, ft², quarts, ounces and mils."""
    return spelt(text, BY_THE_FOOT)
