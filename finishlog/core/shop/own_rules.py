"""What the person says of a product beyond hours: own rules, what they overrule, its sheet.

On the cautious side their word outranks the class; on the other only with a reason, which every
answer repeats that it changes.
"""

from __future__ import annotations

from collections.abc import Iterable
from enum import StrEnum

from msgspec import Struct

from finishlog.core.finish.classes import YOUR_CAN, Figure, FinishClass, Range
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.overcoat import named_by
from finishlog.core.finish.sheet import NO_SHEET, Sheet


class Own(StrEnum):
    """What a rule of a product is about."""

    NOT_OVER = "not-over"
    NEEDS = "needs"
    WAIT = "wait"
    WINDOW = "window"
    COATS_A_DAY = "coats-a-day"
    MOST_COATS = "most-coats"
    NOT_ON = "not-on"
    OVERRULE = "overrule"
    THICKEST = "thickest"
    # Its safety data sheet.
    FREE_OF = "free-of"
    HOLDS = "holds"
    LEL = "lel"
    DAY_LIMIT = "day-limit"
    SHORT_LIMIT = "short-limit"
    FLASH = "flash"
    SOLVENT = "solvent"
    DENSITY = "density"
    CARRIER = "carrier"


# How a figure of the sheet is called there (`Sheet`).
_FIGURES = {
    Own.LEL: "lel_pct",
    Own.DAY_LIMIT: "day_ppm",
    Own.SHORT_LIMIT: "short_ppm",
    Own.FLASH: "flash_c",
    Own.SOLVENT: "solvent_g_per_l",
    Own.DENSITY: "density",
}
# What is in it, and what is not.
_IN_IT = frozenset({Own.FREE_OF, Own.HOLDS})
OF_A_SHEET = frozenset({*_IN_IT, Own.CARRIER, *_FIGURES})


class OwnRule(Struct, frozen=True):
    """One thing that the person says of a product.

    `of`: over what, as rules name classes (keys, families, `any-film`, `any`), woods or their
    traits, the id of a published row, or what a sheet names; empty: whatever it is. `product`: over
    that one alone.
    `between`: the classes of which one must lie between. `wait`: since the lower coat. `count`:
    coats. `thickest_um`: one coat, wet. `figure`: of a sheet, in the unit of its `Sheet`. `act`:
    what wrote it; None: it came with the product. `because`: the person's reason.
    """

    own: Own
    of: tuple[str, ...] = ()
    product: int | None = None
    between: tuple[str, ...] = ()
    wait: Figure | None = None
    count: int | None = None
    because: str = ""
    act: int | None = None
    thickest_um: float | None = None
    figure: float | None = None

    @property
    def acts(self) -> tuple[int, ...]:
        """What it rests on."""
        return () if self.act is None else (self.act,)

    @property
    def is_over_all(self) -> bool:
        """Tell whether it does not say over what."""
        return not self.of and self.product is None

    def is_over(self, below: FinishClass, product: int) -> bool:
        """Tell whether it speaks of a coat of a class and product below."""
        if self.product is not None:
            return self.product == product
        return not self.of or named_by(self.of, below) is not None


def most_at_once_um(of: FinishClass, rules: Iterable[OwnRule]) -> Range | None:
    """Return how thick one coat may go on wet (µm): by the person's word, else by its class."""
    said = [r.thickest_um for r in rules if r.own is Own.THICKEST and r.thickest_um is not None]
    return Range(said[-1], said[-1], YOUR_CAN) if said else of.most_at_once_um


def said_of_sheet(rules: Iterable[OwnRule]) -> tuple[OwnRule, ...]:
    """Return what holds of what was said of a safety data sheet: of each thing the last word."""
    said: dict[tuple[Own, tuple[str, ...]], OwnRule] = {}
    for rule in rules:
        if rule.own in _IN_IT:
            said.pop((Own.HOLDS, rule.of), None)
            said[Own.HOLDS, rule.of] = rule
        elif rule.own in OF_A_SHEET:
            said[rule.own, ()] = rule
    return tuple(said.values())


def sheet_of(rules: Iterable[OwnRule]) -> Sheet:
    """Join what was said of a product's safety data sheet."""
    said = said_of_sheet(rules)
    if not said:
        return NO_SHEET
    free_of, holds = (
        frozenset(Hazard(word) for rule in said if rule.own is own for word in rule.of)
        for own in (Own.FREE_OF, Own.HOLDS)
    )
    figures = {_FIGURES[rule.own]: rule.figure for rule in said if rule.own in _FIGURES}
    carrier = next((rule.of[0] for rule in said if rule.own is Own.CARRIER), "")
    return Sheet(free_of, holds, carrier=carrier, **figures)
