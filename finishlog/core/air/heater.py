"""What warms a room, and what of it burns or glows."""

from __future__ import annotations

from enum import StrEnum


class HeaterKind(StrEnum):
    """What warms a room. `sealed`: hot water or a sealed oil radiator, nothing glows in it."""

    SEALED = "sealed"
    FAN = "fan"
    GLOW = "glow"
    FLAME = "flame"


WHAT = {
    HeaterKind.SEALED: "a sealed heater",
    HeaterKind.FAN: "a hot coil with a fan",
    HeaterKind.GLOW: "a glowing wire",
    HeaterKind.FLAME: "a flame or pilot light",
}
