"""What leaves a film as vapour: solvents with their limits, and what a class or a thinner is of."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from enum import StrEnum
from functools import cached_property
from typing import Annotated

import msgspec

from finishlog.core.finish.classes import Published, Range
from finishlog.core.published.chemistry import Chemistry, Substance
from finishlog.core.published.find import plain

_Positive = Annotated[float, msgspec.Meta(gt=0)]


class Solvent(Published, frozen=True):
    """A liquid that leaves a film. Limits are the lowest that were found.

    `flash_c`: flash point (°C, closed cup), `boils_c`: where it begins to boil (°C, from memory).
    `lel_pct`: lower explosive limit, % of the air by volume; `older_lel_pct`: that of the older
    table. `day_ppm`: the limit of a day of eight hours, `short_ppm`: of 15 minutes, or never to be
    passed; None: none was found. `substance`: what else its name is known by.
    """

    name: str
    molar_mass: _Positive = msgspec.field(name="molar_mass_g_per_mol")
    density: _Positive = msgspec.field(name="density_g_per_ml")
    flash_c: float
    flash_source: str
    boils_c: float
    lel_pct: Annotated[float, msgspec.Meta(gt=0, lt=100)]
    day_ppm: _Positive
    source: str
    day_source: str
    short_ppm: _Positive | None = None
    short_source: str = ""
    older_lel_pct: float | None = None
    aliases: tuple[str, ...] = ()
    substance: Substance | None = None
    note: str = ""


class Share(Published, frozen=True):
    """How much of a liquid one solvent is, by volume."""

    solvent: str
    volume_share: Annotated[float, msgspec.Meta(gt=0, le=1)]


class Mixture(Published, frozen=True):
    """A liquid of several solvents; no maker's is just so, and the sheet knows better.

    `carriers`: the classes whose film it leaves, by their carrier.
    """

    name: str
    parts: tuple[Share, ...]
    source: str
    carriers: frozenset[str] = frozenset()
    aliases: tuple[str, ...] = ()
    substance: Substance | None = None
    note: str = ""

    def __post_init__(self) -> None:
        if abs(sum(part.volume_share for part in self.parts) - 1) > 1e-9:
            raise ValueError(f"the parts of {self.name} are not the whole of it")


class FlashCategory(StrEnum):
    """A liquid that burns, by its flash point: the first takes fire most easily."""

    FIRST = "1"
    SECOND = "2"
    THIRD = "3"
    FOURTH = "4"


class StoredWhere(StrEnum):
    """Where an amount is kept."""

    LOOSE = "outside a cabinet"
    CABINET = "in one cabinet"


class StorageLimit(Published, frozen=True):
    """At most so many litres of some categories of flash point together, in a workplace."""

    where: StoredWhere
    categories: frozenset[FlashCategory]
    most_l: _Positive
    source: str


# How the rows of a gun that works with air are called.
AIR_GUN = "air"


class Face(Published, frozen=True):
    """How fast (m/s) air goes through the open face of a spray booth, as built and as allowed."""

    gun: str
    crossdraught_m_per_s: float
    large: bool
    design_m_per_s: float
    range_m_per_s: Range


class Vapours(Published, frozen=True, dict=True, gc=True):
    """Everything that is known of what leaves."""

    solvents: Mapping[str, Solvent]
    mixtures: Mapping[str, Mixture]
    booths: tuple[Face, ...]
    # Free formaldehyde of acid-cured finishes, by weight, and what of them leaves.
    formaldehyde_pct: Range
    acid_cured_volatile_pct: Range

    def of_carrier(self, carrier: str) -> tuple[tuple[Solvent, float], ...]:
        """Return what leaves a film of a carrier, with shares by volume; empty: nothing known."""
        found = [m for m in self.mixtures.values() if carrier in m.carriers]
        return tuple(self._whole(found[0])) if found else ()

    def of_name(self, name: str, chemistry: Chemistry) -> tuple[tuple[Solvent, float], ...]:
        """Return what a thinner is of, by its name; empty: not known, or nothing that leaves."""
        text = f" {plain(name)} "
        for alias, what in self._called:
            if f" {alias} " in text:
                return tuple(self._whole(what))
        held = chemistry.in_name(name)
        fits = [each for each in self._known if each.substance in held]
        return tuple(self._whole(fits[0])) if len(fits) == 1 else ()

    @property
    def _known(self) -> tuple[Solvent | Mixture, ...]:
        return (*self.solvents.values(), *self.mixtures.values())

    def _whole(self, what: Solvent | Mixture) -> Iterator[tuple[Solvent, float]]:
        if isinstance(what, Solvent):
            yield what, 1.0
        else:
            yield from ((self.solvents[part.solvent], part.volume_share) for part in what.parts)

    @cached_property
    def _called(self) -> tuple[tuple[str, Solvent | Mixture], ...]:
        """What each is called; a longer name beats the words in it."""
        names = [(plain(word), each) for each in self._known for word in (each.name, *each.aliases)]
        return tuple(sorted(names, key=lambda pair: -len(pair[0])))
