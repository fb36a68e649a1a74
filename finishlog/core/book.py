"""What the reasoning asks of the published facts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from finishlog.core.clock import Carrier
from finishlog.core.finishes import FinishClass
from finishlog.core.overcoat import OvercoatRule
from finishlog.core.safety_notes import RagsFigures
from finishlog.core.species import Species, WoodRule


@dataclass(frozen=True, slots=True)
class DryingFigures:
    """Figures of the drying clock and of coating limits that hold for every class.

    Hours, °C; `factor_per_10c` is the factor on the pace of oxidation and cross-linking.
    """

    factor_per_10c: float
    dew_margin_c: float
    dew_margin_source: str
    slow_after_h: float
    slow_source: str


class Book(Protocol):
    """The facts, as finishlog.facts.load gives them."""

    def finish_class(self, key: str) -> FinishClass:
        """Return one class; KeyError when there is none."""

    def carrier(self, key: str) -> Carrier | None:
        """Return the vapour pressure of what leaves a film; None for water or nothing."""

    def species_named(self, name: str) -> Species | None:
        """Return what is published of a species, by name or alias."""

    @property
    def overcoats(self) -> Sequence[OvercoatRule]:
        """Return the rules of what may go over what."""

    @property
    def wood_rules(self) -> Sequence[WoodRule]:
        """Return the rules of what a wood does to a coat on it."""

    @property
    def drying(self) -> DryingFigures:
        """Return the figures that hold for every class."""

    @property
    def rags(self) -> RagsFigures:
        """Return the figures for oily rags."""
