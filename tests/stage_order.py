"""The order that the stages come in, which the facts and the clock are held to.

Set-to-touch, dust-free and tack-free: ASTM D1640. What stands beside the line of handling and what
comes off it near the end: common practice.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from finishlog.core.finish.stages import HANDLING, Stage

# (earlier, later): the earlier stage is never reached after the later one.
NOT_LATER_THAN: frozenset[tuple[Stage, Stage]] = frozenset(
    [
        *pairwise(HANDLING),
        (Stage.TOUCH, Stage.RECOAT),
        (Stage.TOUCH, Stage.SAND),
        (Stage.RECOAT, Stage.CURED),
        (Stage.SAND, Stage.CURED),
        (Stage.TACK_FREE, Stage.CLOSE),
        (Stage.TACK_FREE, Stage.LIGHT_USE),
        (Stage.TACK_FREE, Stage.RUB),
        (Stage.CLOSE, Stage.CURED),
        (Stage.LIGHT_USE, Stage.CURED),
    ]
)


def implied_by(stages: Iterable[Stage]) -> frozenset[Stage]:
    """Every stage that must have come before one of `stages`."""
    found = set(stages)
    while True:
        more = {early for early, late in NOT_LATER_THAN if late in found} - found
        if not more:
            return frozenset(found)
        found |= more
