"""The published facts as one value: each field is the file of that name under facts/data."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property

from finishlog.core.finish.classes import FinishClass, Mechanism, Published
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.overcoat import BARE_WOOD, OvercoatRule, words_for
from finishlog.core.finish.rate_law import Carrier
from finishlog.core.log.words import FaultKind
from finishlog.core.published.care import BalanceFigures, CareFigures
from finishlog.core.published.chemistry import Chemistry
from finishlog.core.published.drying import DryingFigures, PaceFigures, PreparationFigures, Rate
from finishlog.core.published.fault_kinds import Cause, KnownFault
from finishlog.core.published.find import find_called, names_of, plain, said_carriers
from finishlog.core.published.glues import Glue
from finishlog.core.published.hands_on import HandsOn
from finishlog.core.published.keeping import KeepingFigures, KeptFigures, MixingFigures
from finishlog.core.published.moisture import MoistureFigures
from finishlog.core.published.removal import Removal
from finishlog.core.published.safety_notes import (
    Before,
    PeopleFigures,
    RagsFigures,
    RespiratorFigures,
    SafetyNote,
)
from finishlog.core.published.sources import Source
from finishlog.core.published.species import Species, WoodRule, face_wood
from finishlog.core.published.unread import Unread
from finishlog.core.published.vapours import StorageLimit, Vapours


class Facts(Published, frozen=True, dict=True, gc=True):
    """Everything published. `version`: the edition; a coat keeps the one it was judged by."""

    version: str
    balance: BalanceFigures
    before: tuple[Before, ...]
    care: CareFigures
    carriers: Mapping[str, Carrier]
    chemistry: Chemistry
    classes: Mapping[str, FinishClass]
    drying: DryingFigures
    faults: tuple[KnownFault, ...]
    glues: tuple[Glue, ...]
    hands_on: HandsOn
    keeping: KeepingFigures
    kept: KeptFigures
    mixing: MixingFigures
    moisture: MoistureFigures
    notes: tuple[SafetyNote, ...]
    overcoats: tuple[OvercoatRule, ...]
    pace: PaceFigures
    preparation: PreparationFigures
    rags: RagsFigures
    rates: Mapping[str, Rate]
    removals: tuple[Removal, ...]
    respirators: RespiratorFigures
    people: PeopleFigures
    sources: Mapping[str, Source]
    species: tuple[Species, ...]
    # Why a film stays soft long after its time, in the order to look.
    stall_causes: tuple[Cause, ...]
    storage: tuple[StorageLimit, ...]
    # What says nothing to an act, and why.
    unread: tuple[Unread, ...]
    vapours: Vapours
    wood_rules: tuple[WoodRule, ...]

    @cached_property
    def hazards_found(self) -> dict[object, tuple[Hazard, ...]]:
        """What hurts in the things asked of so far: rule after rule asks of the same."""
        return {}

    def finish_class(self, key: str) -> FinishClass:
        """Return one finish class; KeyError when there is none."""
        return self.classes[key]

    def find_class(self, text: str) -> tuple[str, ...]:
        """Return the keys that `text` may mean: one when it is clear, several, or none.

        What is called oil-based is never taken for waterborne, nor the other way round.
        """
        if text in self.classes:
            return (text,)
        return find_called(text, self.carried_as_said(text))

    def carried_as_said(self, text: str) -> tuple[FinishClass, ...]:
        """Return the classes with a carrier that `text` speaks of; all where it says nothing."""
        carriers = said_carriers(text)
        every = tuple(self.classes.values())
        if carriers is None:
            return every
        return tuple(of for of in every if of.carrier in carriers and not of.may_be)

    def kinds_of(self, of: FinishClass) -> tuple[FinishClass, ...]:
        """Return what a class may be where its kind was not told, else itself."""
        return tuple(self.classes[key] for key in of.may_be) or (of,)

    def overcoats_between(self, under: FinishClass, over: FinishClass) -> tuple[OvercoatRule, ...]:
        """Return the rules that speak of one class over another."""
        pair = under.key, over.key
        if pair not in self._between:
            below, above = words_for(under), words_for(over)
            self._between[pair] = tuple(
                rule
                for rule in self.overcoats
                if not (below.isdisjoint(rule.under) or above.isdisjoint(rule.over))
            )
        return self._between[pair]

    @cached_property
    def _between(self) -> dict[tuple[str, str], tuple[OvercoatRule, ...]]:
        """The pairs asked for so far: a plan asks for the same few thousands of times."""
        return {}

    @cached_property
    def overcoats_on_bare_wood(self) -> tuple[OvercoatRule, ...]:
        """What goes on bare wood."""
        return tuple(rule for rule in self.overcoats if BARE_WOOD in rule.under)

    def species_named(self, name: str) -> Species | None:
        """Return a wood by key, name or alias, of a sheet the wood of its face; None: unknown."""
        return self._woods.get(_lower(name)) or self._woods.get(face_wood(name))

    def wood_key(self, name: str | None) -> str:
        """Return what tells a wood from others: its key, else its name; empty: it was not told."""
        known = self.species_named(name) if name else None
        return known.key if known else _lower(name or "")

    @cached_property
    def _woods(self) -> Mapping[str, Species]:
        return {_lower(name): wood for wood in reversed(self.species) for name in names_of(wood)}

    def glue_named(self, name: str) -> Glue | None:
        """Return a glue by key, name or alias; None when nothing is published of it."""
        return self._glues.get(plain(name))

    @cached_property
    def _glues(self) -> Mapping[str, Glue]:
        return {plain(name): glue for glue in reversed(self.glues) for name in names_of(glue)}

    def fault_known(self, kind: FaultKind) -> KnownFault:
        """Return what is known of a kind of fault."""
        return self._faults[kind]

    @cached_property
    def _faults(self) -> Mapping[FaultKind, KnownFault]:
        return {fault.kind: fault for fault in self.faults}

    def carrier(self, key: str) -> Carrier | None:
        """Return a carrier's vapour pressure; None for water and for nothing that leaves."""
        # Water has its own formula (core.air.psychrometrics).
        return None if key in {"water", "none"} else self.carriers[key]

    @property
    def factor_per_10c(self) -> float:
        """The factor on the pace of oxidation and cross-linking for each 10 °C."""
        return self.rates[Mechanism.OXIDATION].factor_per_10c


def _lower(text: str) -> str:
    return " ".join(text.casefold().split())
