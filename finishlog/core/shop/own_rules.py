"""What the person says of a product beyond hours: their own rules, and what they overrule.

On the cautious side their word outranks the class; on the other only with a reason, which every
answer repeats that it changes.
"""

from __future__ import annotations

from collections.abc import Iterable
from enum import StrEnum

from msgspec import Struct

from finishlog.core.finish.classes import YOUR_CAN, Figure, FinishClass, Range
from finishlog.core.finish.overcoat import named_by


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


class OwnRule(Struct, frozen=True):
    """One thing that the person says of a product.

    `of`: over what, as rules name classes (keys, families, `any-film`, `any`), woods or their
    traits, or the id of a published row; empty: whatever it is. `product`: over that one alone.
    `between`: the classes of which one must lie between. `wait`: since the lower coat. `count`:
    coats. `thickest_um`: one coat, wet. `act`: what wrote it; None: it came with the product.
    `because`: the person's reason.
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
