"""Drying stages, after ASTM D1640 with the trade's milestones, and the order they come in.

The stages are not one line. Handling runs touch ... cured; `recoat` and `sand` stand beside it
(sprayed lacquer may be recoated before it may be sanded, shellac may be handled before it may be
recoated); closing, light use and rubbing out come off it near the end. A test holds the facts to
that partial order (tests/stage_order.py); nothing else is assumed of every finish.
"""

from __future__ import annotations

from collections.abc import Iterable
from enum import StrEnum
from itertools import pairwise


class Stage(StrEnum):
    """A state that a film reaches, in the words used everywhere in finishlog."""

    TOUCH = "touch"
    DUST_FREE = "dust-free"
    TACK_FREE = "tack-free"
    TURN = "turn"
    CLAMP = "clamp"
    STACK = "stack"
    PACK = "pack"
    CURED = "cured"
    RECOAT = "recoat"
    SAND = "sand"
    CLOSE = "close"
    LIGHT_USE = "light-use"
    RUB = "rub"


SHOWN_AS = {Stage.CURED: "fully hard", Stage.LIGHT_USE: "light use"}

HANDLING = (
    Stage.TOUCH,
    Stage.DUST_FREE,
    Stage.TACK_FREE,
    Stage.TURN,
    Stage.CLAMP,
    Stage.STACK,
    Stage.PACK,
    Stage.CURED,
)

# (earlier, later): the earlier is never reached after the later, whatever the finish.
ORDER: frozenset[tuple[Stage, Stage]] = frozenset(
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

# What a can speaks of beside the end of its recoat window, in the order it is asked and shown.
ON_A_LABEL = (
    *(Stage.RECOAT, Stage.SAND, Stage.TOUCH, Stage.TACK_FREE),
    *(Stage.CLAMP, Stage.STACK, Stage.PACK, Stage.LIGHT_USE, Stage.CURED),
)


def with_later(stages: Iterable[Stage]) -> frozenset[Stage]:
    """Return stages, and every one that a finish reaches only after one of them."""
    found = frozenset(stages)
    more = found | {late for early, late in ORDER if early in found}
    return found if more == found else with_later(more)


def shown(stage: Stage) -> str:
    """Name a stage as a person reads it."""
    return SHOWN_AS.get(stage, stage.value)
