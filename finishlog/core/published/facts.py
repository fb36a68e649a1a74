"""What the reasoning asks of the published facts."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from msgspec import Struct

from finishlog.core.clock.pace_posterior import PaceFigures
from finishlog.core.finish.classes import FinishClass
from finishlog.core.finish.overcoat import OvercoatRule
from finishlog.core.finish.rate_law import Carrier
from finishlog.core.log.entries import FaultKind
from finishlog.core.mixing.chemistry import Chemistry
from finishlog.core.mixing.keeping import KeepingFigures
from finishlog.core.mixing.mixes import MixingFigures
from finishlog.core.published.fault_kinds import Cause, KnownFault
from finishlog.core.published.glues import Glue
from finishlog.core.published.hands_on import HandsOn
from finishlog.core.published.removal import Removal
from finishlog.core.published.safety_notes import RagsFigures
from finishlog.core.wood.moisture import MoistureFigures
from finishlog.core.wood.species import Species, WoodRule


class DryingFigures(Struct, frozen=True):
    """Figures of the drying clock and of coating limits that hold for every class.

    Hours, °C; `factor_per_10c` is the factor on the pace of oxidation and cross-linking.
    """

    factor_per_10c: float
    dew_margin_c: float
    dew_margin_source: str
    slow_after_h: float
    slow_source: str
    # How long a solvent wipe of oily wood is good for.
    solvent_wipe_h: float
    solvent_wipe_source: str
    # In hotter air a film skins over what is soft below it.
    hot_c: float
    hot_source: str


class Book(Protocol):
    """The facts, as finishlog.facts.load gives them."""

    def finish_class(self, key: str) -> FinishClass:
        """Return one class; KeyError when there is none."""

    @property
    def chemistry(self) -> Chemistry:
        """Return what names tell of a thing, and what must never meet what."""

    def carrier(self, key: str) -> Carrier | None:
        """Return the vapour pressure of what leaves a film; None for water or nothing."""

    def species_named(self, name: str) -> Species | None:
        """Return what is published of a species, by name or alias."""

    def glue_named(self, name: str) -> Glue | None:
        """Return what is published of a glue, by key, name or alias."""

    @property
    def stall_causes(self) -> Sequence[Cause]:
        """Return why a film stays soft long after its time, in the order to look."""

    @property
    def removals(self) -> Sequence[Removal]:
        """Return how films of a family come off."""

    def fault_known(self, kind: FaultKind) -> KnownFault:
        """Return what is known of a kind of fault."""

    def overcoats_between(self, under: FinishClass, over: FinishClass) -> Sequence[OvercoatRule]:
        """Return the rules that speak of one class over another."""

    @property
    def overcoats_on_bare_wood(self) -> Sequence[OvercoatRule]:
        """Return the rules of what goes on bare wood."""

    @property
    def wood_rules(self) -> Sequence[WoodRule]:
        """Return the rules of what a wood does to a coat on it."""

    @property
    def drying(self) -> DryingFigures:
        """Return the figures that hold for every class."""

    @property
    def pace(self) -> PaceFigures:
        """Return how far a shop's pace may lie from a label's hours."""

    @property
    def moisture(self) -> MoistureFigures:
        """Return how wet wood may be, and between what it moves evenly."""

    @property
    def hands_on(self) -> HandsOn:
        """Return how long work keeps the hands busy."""

    @property
    def rags(self) -> RagsFigures:
        """Return the figures for oily rags."""

    @property
    def mixing(self) -> MixingFigures:
        """Return the figures of mixing."""

    @property
    def keeping(self) -> KeepingFigures:
        """Return how finishes keep and are tested."""
