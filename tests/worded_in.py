"""Sentences as a person reads them: in SI, and in the units of a shop that measures by the foot."""

from __future__ import annotations

from finishlog.cli.terminal.spelling import spelt
from finishlog.cli.words import finding_words
from finishlog.cli.words.finding_words import remedy, sentence, short
from finishlog.core.measure.units import Area, Film, Temperature, Units, Volume, Weight
from finishlog.core.zone.verdict import Verdict

__all__ = ["because", "by_the_foot", "in_si", "remedy", "sentence", "waits_for"]

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


def because(verdict: Verdict) -> str:
    """Say in a few words what binds."""
    return short(verdict.binds)


def waits_for(verdict: Verdict) -> str:
    """Name what a verdict waits for; empty: nothing but time."""
    return finding_words.waits_for(verdict.binds)
