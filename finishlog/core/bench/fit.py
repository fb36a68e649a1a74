"""What fits into an evening's minutes: dust first, like coats together, with set-up and clean-up.

The minutes are those of core.published.hands_on at their longer end: what is said to fit does.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec import Struct

from finishlog.core.finish.classes import Method
from finishlog.core.log.words import Operation
from finishlog.core.published.hands_on import HandsOn, minutes_at_it

# Work that makes dust; before a coat in the same visit the room is vacuumed and left to settle.
DUSTY = frozenset({Operation.SCUFF, Operation.DENIB, Operation.SAND, Operation.STEEL_WOOL})


class Chore(Struct, frozen=True):
    """One thing that may be done now. `number` is its place in the caller's list."""

    number: int
    operation: Operation
    product: str = ""
    method: Method | None = None
    pieces: int = 1
    faces: int = 1
    scuff_first: bool = False

    @property
    def dusty(self) -> bool:
        """Tell whether it makes dust."""
        return self.scuff_first or self.operation in DUSTY


class Visit(Struct, frozen=True):
    """The chores that fit, in the order to do them, and how many minutes they take together."""

    chosen: tuple[Chore, ...]
    left_out: tuple[Chore, ...]
    takes_min: float


def fit(chores: Iterable[Chore], minutes: float, figures: HandsOn) -> Visit:
    """Choose chores, the most urgent first, as long as all of them fit into the minutes.

    A chore that needs too long is left out; a later, shorter one may still fit.
    """
    chosen: list[Chore] = []
    left_out: list[Chore] = []
    for chore in chores:
        fits = takes_min([*chosen, chore], figures) <= minutes
        (chosen if fits else left_out).append(chore)
    return Visit(tuple(in_order(chosen)), tuple(left_out), takes_min(chosen, figures))


def in_order(chores: Sequence[Chore]) -> list[Chore]:
    """Put dusty work first, then like coats together in the order their product first comes."""
    products = list(dict.fromkeys(c.product for c in chores))
    return sorted(
        chores,
        key=lambda c: (
            c.operation not in DUSTY,
            not c.scuff_first,
            products.index(c.product),
            c.number,
        ),
    )


def takes_min(chores: Sequence[Chore], figures: HandsOn) -> float:
    """Return how many minutes chores take in one visit, from stirring the can to a clean brush."""
    coats = [c for c in chores if c.operation is Operation.COAT]
    at_it = sum(_at_it(c, figures) for c in chores)
    kits = {(c.product, c.method or Method.BRUSH) for c in coats}
    kit = sum(
        figures.methods[m].set_up_min.high + figures.methods[m].clean_up_min.high for _, m in kits
    )
    dust = coats and any(c.dusty for c in chores)
    return at_it + kit + (figures.vacuum_min.high + figures.settle_min.high if dust else 0.0)


def _at_it(chore: Chore, figures: HandsOn) -> float:
    minutes = minutes_at_it(figures, chore.operation, chore.method, chore.pieces, chore.faces)
    if chore.scuff_first and chore.operation is Operation.COAT:
        minutes += minutes_at_it(figures, Operation.SCUFF, None, chore.pieces, chore.faces)
    return minutes
