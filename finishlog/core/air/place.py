"""What kind of place a room is, what stands in it that lights vapour, who lives there, how it airs.

All of it was told by the person; what was not told is None, and is said to be unknown.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from enum import StrEnum

from msgspec import Struct

from finishlog.core.air.heater import HeaterKind


class Fixture(StrEnum):
    """What stands in a room and burns, glows or sparks."""

    PILOT = "pilot"
    STOVE = "stove"
    FLAME = "flame"
    GLOW = "glow"
    FAN = "fan"
    SEALED = "sealed"
    # Of a kind that nobody told.
    HEATER = "heater"
    MOTOR = "motor"


# What burns or glows, and what only makes sparks or moves vapour over a hot coil.
BURNS = frozenset({Fixture.PILOT, Fixture.STOVE, Fixture.FLAME, Fixture.GLOW})
MAY_SPARK = frozenset({Fixture.FAN, Fixture.MOTOR})
CALLED = {
    Fixture.PILOT: "a pilot light",
    Fixture.STOVE: "a stove",
    Fixture.FLAME: "a heater with a flame",
    Fixture.GLOW: "a glowing wire",
    Fixture.FAN: "a hot coil with a fan",
    Fixture.SEALED: "a sealed heater",
    Fixture.HEATER: "a heater of a kind not told",
    Fixture.MOTOR: "a motor or switch",
}
_OF_KIND = {
    HeaterKind.SEALED: Fixture.SEALED,
    HeaterKind.FAN: Fixture.FAN,
    HeaterKind.GLOW: Fixture.GLOW,
    HeaterKind.FLAME: Fixture.FLAME,
}
# Our own rule: what was put out for an evening counts as burning again after it.
OUT_FOR = timedelta(hours=12)


class PlaceKind(StrEnum):
    """Where a room is. `garage` stands by itself, `attached` is one that leads into a house."""

    BASEMENT = "basement"
    GARAGE = "garage"
    ATTACHED = "attached"
    DWELLING = "dwelling"
    OUTDOORS = "outdoors"


# Where vapour goes to the people of a house.
AT_HOME = frozenset({PlaceKind.BASEMENT, PlaceKind.ATTACHED, PlaceKind.DWELLING})


class Lives(StrEnum):
    """Who lives where the vapour goes, and bears less of it."""

    CHILD = "child"
    PREGNANT = "pregnant"
    BIRD = "bird"
    ASTHMA = "asthma"


class Opening(StrEnum):
    """What joins two rooms."""

    DOOR = "door"
    GAP = "gap"
    DUCT = "duct"


class Join(Struct, frozen=True):
    """Another room, by its id, and what leads there."""

    room: int
    by: Opening


class Place(Struct, frozen=True):
    """A room as a place. Volume m³, measured exhaust m³/h, mixing 1 to 10 (how badly it mixes).

    `has`: None, nobody told; empty: nothing that burns, glows or sparks. `exhaust_m3_h` 0: none
    that was measured. `out`: what was put out at `out_at`, for that evening.
    """

    has: tuple[Fixture, ...] | None = None
    kind: PlaceKind | None = None
    volume_m3: float | None = None
    exhaust_m3_h: float | None = None
    mixing: float | None = None
    lives: tuple[Lives, ...] = ()
    joins: tuple[Join, ...] = ()
    out: tuple[Fixture, ...] = ()
    out_at: datetime | None = None

    def out_now(self, moment: datetime) -> tuple[Fixture, ...]:
        """Return what was put out, and does not count as lit again yet."""
        is_out = self.out_at is not None and moment - self.out_at < OUT_FOR
        return self.out if is_out else ()

    def lit_at(self, moment: datetime, heater: HeaterKind | None) -> tuple[Fixture, ...]:
        """Return what stands there and is not out; a heater is of the kind that was told."""
        out = self.out_now(moment)
        there = (f for f in self.has or () if f not in out)
        return tuple(
            dict.fromkeys(
                _OF_KIND[heater] if f is Fixture.HEATER and heater is not None else f for f in there
            )
        )
