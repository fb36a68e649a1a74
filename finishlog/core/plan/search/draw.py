"""Numbers drawn from a seed: the same seed, the same numbers, on every machine and Python.

A linear congruential generator with the multiplier and the increment of Knuth's MMIX (The Art of
Computer Programming, volume 2, 3.3.4, table 1; from memory), of which the high half is used.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

T = TypeVar("T")

_MULTIPLIER = 6364136223846793005
_INCREMENT = 1442695040888963407
_MASK = (1 << 64) - 1
_HALF = 1 << 32


class Draw:
    """A row of drawn numbers."""

    __slots__ = ("_state",)

    def __init__(self, seed: int) -> None:
        """Begin a row; near seeds are stirred apart."""
        self._state = (seed * 2 + 1) * _MULTIPLIER & _MASK
        for _ in range(4):
            self._high()

    def _high(self) -> int:
        self._state = (self._state * _MULTIPLIER + _INCREMENT) & _MASK
        return self._state >> 32

    def share(self) -> float:
        """Draw from 0 to below 1, all alike likely."""
        return self._high() / _HALF

    def below(self, many: int) -> int:
        """Draw a whole number from 0 to below so many."""
        return self._high() * many >> 32

    def of(self, among: Sequence[T]) -> T:
        """Draw one of some."""
        return among[self._high() * len(among) >> 32]

    def bell(self) -> float:
        """Draw about 0 with a spread of 1: four even draws added up."""
        total = self._high() + self._high() + self._high() + self._high()
        return (total / _HALF - 2.0) * 1.7320508075688772
