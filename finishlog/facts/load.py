"""The published facts, each file read when it is first asked for.

Start-up time counts, so a class reads its own file only, and the readers are imported with the
first file that needs them.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING

from msgspec import Struct

if TYPE_CHECKING:
    from finishlog.core.bench.balance import BalanceFigures
    from finishlog.core.bench.care_facts import CareFigures
    from finishlog.core.clock.pace_posterior import PaceFigures
    from finishlog.core.finish.classes import FinishClass
    from finishlog.core.finish.overcoat import OvercoatRule
    from finishlog.core.finish.rate_law import Carrier
    from finishlog.core.log.entries import FaultKind
    from finishlog.core.mixing.chemistry import Chemistry
    from finishlog.core.mixing.keeping import KeepingFigures
    from finishlog.core.mixing.mixes import MixingFigures
    from finishlog.core.published.facts import DryingFigures
    from finishlog.core.published.fault_kinds import Cause, KnownFault
    from finishlog.core.published.glues import Glue
    from finishlog.core.published.hands_on import HandsOn
    from finishlog.core.published.removal import Removal
    from finishlog.core.published.safety_notes import RagsFigures, SafetyNote
    from finishlog.core.wood.moisture import MoistureFigures
    from finishlog.core.wood.species import Species, WoodRule
    from finishlog.facts.find import ClassNames
    from finishlog.facts.rate_files import Rate
    from finishlog.facts.source_file import Source

HERE = os.path.dirname(__file__)

# Nothing but these needs no curve: water has its own (core.air.psychrometrics), and nothing leaves.
NO_CURVE = ("water", "none")


class Facts(Struct, frozen=True):
    """The facts in one folder. Unknown keys raise KeyError, bad data ValueError."""

    folder: str = HERE

    @property
    def version(self) -> str:
        """The edition of the facts; a coat keeps the edition that it was judged by."""
        return _version(self.folder)

    def class_keys(self) -> tuple[str, ...]:
        """Return the keys of all finish classes, in order."""
        return _class_keys(self.folder)

    def finish_class(self, key: str) -> FinishClass:
        """Return one finish class; KeyError when there is none."""
        return _class(self.folder, key)

    def classes(self) -> tuple[FinishClass, ...]:
        """Return all finish classes, in order of their keys."""
        return tuple(self.finish_class(key) for key in self.class_keys())

    def class_names(self) -> tuple[ClassNames, ...]:
        """Return what every class is called, for `find_class`."""
        return _class_names(self.folder)

    def find_class(self, text: str) -> tuple[str, ...]:
        """Return the keys that `text` may mean, as `find.find_class` does; a key reads no file."""
        from finishlog.facts.find import find_class

        return (text,) if text in self.class_keys() else find_class(text, self.class_names())

    @property
    def overcoats(self) -> tuple[OvercoatRule, ...]:
        """What may go over what."""
        return _overcoats(self.folder)

    def overcoats_between(self, under: FinishClass, over: FinishClass) -> tuple[OvercoatRule, ...]:
        """Return the rules that speak of one class over another; only those are read."""
        from finishlog.core.finish.overcoat import words_for
        from finishlog.facts.rule_files import read_overcoats_naming

        path = f"{self.folder}/overcoats.toml"
        return read_overcoats_naming(path, words_for(under), words_for(over))

    @property
    def overcoats_on_bare_wood(self) -> tuple[OvercoatRule, ...]:
        """What goes on bare wood; only those rules are read."""
        from finishlog.core.finish.overcoat import BARE_WOOD
        from finishlog.facts.rule_files import read_overcoats_naming

        return read_overcoats_naming(f"{self.folder}/overcoats.toml", (BARE_WOOD,))

    @property
    def species(self) -> tuple[Species, ...]:
        """The woods."""
        return _species(self.folder)

    @property
    def wood_rules(self) -> tuple[WoodRule, ...]:
        """What a wood does to a coat on it."""
        return _wood_rules(self.folder)

    def species_named(self, name: str) -> Species | None:
        """Return a wood by key, name or alias, of a sheet the wood of its face; None: unknown."""
        return _species_named(self.folder, name)

    @property
    def glues(self) -> tuple[Glue, ...]:
        """The glues."""
        return _glues(self.folder)

    def glue_named(self, name: str) -> Glue | None:
        """Return a glue by key, name or alias; None when nothing is published of it."""
        return _glue_named(self.folder, name)

    @property
    def balance(self) -> BalanceFigures:
        """What is said of faces that carry unequal coats."""
        return _balance(self.folder)

    @property
    def care(self) -> CareFigures:
        """What goes on a care card."""
        return _care(self.folder)

    @property
    def chemistry(self) -> Chemistry:
        """What names tell of a thing, and what must never meet what."""
        return _chemistry(self.folder)

    @property
    def faults(self) -> Mapping[FaultKind, KnownFault]:
        """What is known of every kind of fault."""
        return _faults(self.folder)

    @property
    def stall_causes(self) -> tuple[Cause, ...]:
        """Why a film stays soft long after its time, in the order to look."""
        return _stall_causes(self.folder)

    @property
    def removals(self) -> tuple[Removal, ...]:
        """How films of a family come off."""
        return _removals(self.folder)

    def fault_known(self, kind: FaultKind) -> KnownFault:
        """Return what is known of a kind of fault."""
        return self.faults[kind]

    @property
    def sources(self) -> Mapping[str, Source]:
        """Where figures come from, by source id."""
        return _sources(self.folder)

    @property
    def notes(self) -> tuple[SafetyNote, ...]:
        """The safety notes."""
        return _notes(self.folder)

    @property
    def rags(self) -> RagsFigures:
        """The figures for oily rags."""
        return _rags(self.folder)

    def carrier(self, key: str) -> Carrier | None:
        """Return a carrier's vapour pressure; None for water and for nothing that leaves."""
        return None if key in NO_CURVE else _carriers(self.folder)[key]

    @property
    def rates(self) -> Mapping[str, Rate]:
        """Factors for each 10 °C, by mechanism or by what they are for."""
        return _rates(self.folder)

    @property
    def hands_on(self) -> HandsOn:
        """How long work keeps the hands busy."""
        return _hands_on(self.folder)

    @property
    def drying(self) -> DryingFigures:
        """The figures of drying that hold for every class."""
        return _drying(self.folder)

    @property
    def pace(self) -> PaceFigures:
        """How far a shop's pace may lie from a label's hours."""
        return _pace(self.folder)

    @property
    def moisture(self) -> MoistureFigures:
        """How wet wood may be, and between what it moves evenly."""
        return _moisture(self.folder)

    @property
    def mixing(self) -> MixingFigures:
        """The figures of mixing."""
        return _mixing(self.folder)

    @property
    def keeping(self) -> KeepingFigures:
        """How finishes keep, and how they are tested."""
        return _keeping(self.folder)


@cache
def _version(folder: str) -> str:
    from finishlog.facts.table import read

    return read(f"{folder}/version.toml").text("version")


@cache
def _class_keys(folder: str) -> tuple[str, ...]:
    names = os.listdir(f"{folder}/classes")
    return tuple(sorted(n.removesuffix(".toml") for n in names if n.endswith(".toml")))


@cache
def _class(folder: str, key: str) -> FinishClass:
    from finishlog.facts.class_file import read_class

    if key not in _class_keys(folder):
        raise KeyError(key)
    return read_class(f"{folder}/classes/{key}.toml", key)


@cache
def _class_names(folder: str) -> tuple[ClassNames, ...]:
    from finishlog.facts.class_file import read_names

    return tuple(read_names(f"{folder}/classes/{key}.toml", key) for key in _class_keys(folder))


@cache
def _overcoats(folder: str) -> tuple[OvercoatRule, ...]:
    from finishlog.facts.rule_files import read_overcoats

    return read_overcoats(f"{folder}/overcoats.toml")


@cache
def _species(folder: str) -> tuple[Species, ...]:
    from finishlog.facts.rule_files import read_species

    return read_species(f"{folder}/species.toml")


@cache
def _species_named(folder: str, name: str) -> Species | None:
    from finishlog.core.wood.species import face_wood
    from finishlog.facts.rule_files import read_species_named

    path = f"{folder}/species.toml"
    return read_species_named(path, name) or read_species_named(path, face_wood(name))


@cache
def _wood_rules(folder: str) -> tuple[WoodRule, ...]:
    from finishlog.facts.rule_files import read_wood_rules

    return read_wood_rules(f"{folder}/wood_rules.toml")


@cache
def _glues(folder: str) -> tuple[Glue, ...]:
    from finishlog.facts.glue_file import read_glues

    return read_glues(f"{folder}/glues.toml")


@cache
def _balance(folder: str) -> BalanceFigures:
    from finishlog.facts.balance_file import read_balance

    return read_balance(f"{folder}/balance.toml")


@cache
def _care(folder: str) -> CareFigures:
    from finishlog.facts.care_file import read_care

    return read_care(f"{folder}/care.toml")


@cache
def _chemistry(folder: str) -> Chemistry:
    from finishlog.facts.chemistry_file import read_chemistry

    return read_chemistry(f"{folder}/chemistry.toml")


@cache
def _removals(folder: str) -> tuple[Removal, ...]:
    from finishlog.facts.removal_file import read_removals

    return read_removals(f"{folder}/removal.toml")


@cache
def _stall_causes(folder: str) -> tuple[Cause, ...]:
    from finishlog.facts.fault_file import read_stall_causes

    return read_stall_causes(f"{folder}/faults.toml")


@cache
def _faults(folder: str) -> Mapping[FaultKind, KnownFault]:
    from finishlog.facts.fault_file import read_faults

    return read_faults(f"{folder}/faults.toml")


@cache
def _glue_named(folder: str, name: str) -> Glue | None:
    from finishlog.facts.glue_file import read_glue_named

    return read_glue_named(f"{folder}/glues.toml", name)


@cache
def _sources(folder: str) -> Mapping[str, Source]:
    from finishlog.facts.source_file import read_sources

    return read_sources(f"{folder}/sources.toml")


@cache
def _notes(folder: str) -> tuple[SafetyNote, ...]:
    from finishlog.facts.safety_files import read_notes

    return read_notes(f"{folder}/safety_notes.toml")


@cache
def _rags(folder: str) -> RagsFigures:
    from finishlog.facts.safety_files import read_rags

    return read_rags(f"{folder}/rags.toml")


@cache
def _carriers(folder: str) -> Mapping[str, Carrier]:
    from finishlog.facts.rate_files import read_carriers

    return read_carriers(f"{folder}/carriers.toml")


@cache
def _hands_on(folder: str) -> HandsOn:
    from finishlog.facts.hands_on_file import read_hands_on

    return read_hands_on(f"{folder}/hands_on.toml")


@cache
def _rates(folder: str) -> Mapping[str, Rate]:
    from finishlog.facts.rate_files import read_rates

    return read_rates(f"{folder}/rates.toml")


@cache
def _drying(folder: str) -> DryingFigures:
    from finishlog.facts.rate_files import read_drying

    return read_drying(f"{folder}/rates.toml")


@cache
def _pace(folder: str) -> PaceFigures:
    from finishlog.facts.pace_file import read_pace

    return read_pace(f"{folder}/pace.toml")


@cache
def _moisture(folder: str) -> MoistureFigures:
    from finishlog.facts.moisture_file import read_moisture

    return read_moisture(f"{folder}/moisture.toml")


@cache
def _mixing(folder: str) -> MixingFigures:
    from finishlog.facts.mixing_file import read_mixing

    return read_mixing(f"{folder}/mixing.toml", _rates(folder)["pot-life"])


@cache
def _keeping(folder: str) -> KeepingFigures:
    from finishlog.facts.mixing_file import read_keeping

    return read_keeping(f"{folder}/mixing.toml")
