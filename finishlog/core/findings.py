"""A finding: one thing that a person should know before acting, with its remedy and source."""

from __future__ import annotations

from enum import StrEnum

from msgspec import Struct

# Comes with every advice to warm something: solvent vapour finds a flame or a motor.
NO_FLAME = "no flame, glowing wire or blower in the vapour"


class Level(StrEnum):
    """How much a finding weighs."""

    NOTE = "note"
    CAUTION = "caution"
    STOP = "stop"


class Rule(StrEnum):
    """Which rule found it, for the few that another one asks after."""

    NONE = ""
    AIR = "air"
    BLUSH = "blush"
    NIGHT_UNTOLD = "night not told"
    OILY_WOOD = "oily wood"
    POT_LIFE = "pot life"
    HEATER = "heater"
    HEATER_UNTOLD = "heater not told"


class Finding(Struct, frozen=True):
    """One sentence, what to do about it, and where it comes from.

    `on` names the parts that it is about, where an act named several things or one.
    """

    level: Level
    sentence: str
    remedy: str = ""
    source: str = ""
    # Whoever stands there leaves before reading on.
    get_out: bool = False
    on: tuple[str, ...] = ()
    rule: Rule = Rule.NONE
