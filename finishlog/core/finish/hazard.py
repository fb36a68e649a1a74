"""What can hurt whoever works with a thing, or lives beside it: a closed set of words."""

from __future__ import annotations

from enum import StrEnum


class Hazard(StrEnum):
    """One way to be hurt; its notes stand in facts/data/notes.toml, in the order of danger."""

    # What is in a can, a mix, a wood or a film.
    BLEACH = "bleach"
    CHLORINE_BLEACH = "chlorine-bleach"
    OXALIC_ACID = "oxalic-acid"
    PEROXIDE_BLEACH = "peroxide-bleach"
    AMMONIA = "ammonia"
    CHROMATE = "chromate"
    OXIDIZER = "oxidizer"
    ACID = "acid"
    CAUSTIC = "caustic"
    ORGANIC_PEROXIDE = "organic-peroxide"
    CHLORINATED = "chlorinated"
    ISOCYANATE = "isocyanate"
    FORMALDEHYDE = "formaldehyde"
    AMINE = "amine"
    HOT_POT = "hot-pot"
    METHANOL = "methanol"
    SELF_HEATING = "self-heating"
    FLAMMABLE = "flammable"
    VAPOUR = "vapour"
    NITROCELLULOSE = "nitrocellulose"
    WATERBORNE = "waterborne"
    NUT_OIL = "nut-oil"
    NON_DRYING_OIL = "non-drying-oil"
    # What comes off.
    LEAD = "lead"
    OLD_FINISH = "old-finish"
    SCRAPINGS = "scrapings"
    YOUNG_FILM = "young-film"
    OVERSPRAY_HEATS = "overspray-heats"
    OAK_OR_BEECH_DUST = "oak-or-beech-dust"
    CEDAR_DUST = "cedar-dust"
    SENSITISING_DUST = "sensitising-dust"
    DUST = "dust"
    # What is done.
    STRIPPER = "stripper"
    SPRAY = "spray"
    HEATER = "heater"
    HEAT = "heat"
    # Who will use it.
    CHILDREN = "children"
    FOOD = "food"
    # Whatever is done.
    EMERGENCY = "emergency"
    GENERAL = "general"
