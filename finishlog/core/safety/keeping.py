"""How much of what burns is kept: its flash point, the category of that, and the rule's amounts.

29 CFR 1910.106 as figures; what a home may keep, and what is so elsewhere, the fire code says.
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from finishlog.core.published.vapours import FlashCategory, Solvent, StorageLimit

# °C: 73.4, 140 and 199.4 °F; a liquid that boils at 35 °C (95 °F) or below is of the first.
_COLD, _WARM, _HOT, _BOILS = 23.0, 60.0, 93.0, 35.0


class Kept(Struct, frozen=True):
    """What burns in a finish is of a category: `limits` are those of it.

    `flash_c`: the lowest flash point (°C, closed cup) of its solvents, which is that of `solvent`.
    """

    flash_c: float
    solvent: str
    category: FlashCategory
    limits: tuple[StorageLimit, ...]


def flash_category(flash_c: float, boils_c: float) -> FlashCategory | None:
    """Return the category of a flash and a boiling point (°C); None: over the fourth."""
    if flash_c < _COLD:
        return FlashCategory.FIRST if boils_c <= _BOILS else FlashCategory.SECOND
    if flash_c <= _WARM:
        return FlashCategory.THIRD
    return FlashCategory.FOURTH if flash_c <= _HOT else None


def how_kept(solvents: Iterable[Solvent], limits: Iterable[StorageLimit]) -> Kept | None:
    """Return how a finish is kept by the solvent that burns first; None: none of them burns so.

    A mixture is taken for its worst part: its safety data sheet has its own flash point.
    """
    first = min(solvents, key=lambda each: each.flash_c, default=None)
    category = flash_category(first.flash_c, first.boils_c) if first is not None else None
    if first is None or category is None:
        return None
    mine = tuple(limit for limit in limits if category in limit.categories)
    return Kept(first.flash_c, first.name, category, mine)
