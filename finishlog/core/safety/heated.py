"""Whether heat is brought to a finish or a film, as far as what was noted of it tells."""

from __future__ import annotations

import re

from finishlog.core.mixing.chemistry import Ingredient

# A lamp alone is raking light, flame birch a wood, and what is burnt through was sanded.
_HOT = re.compile(
    r"\b(torch|blow ?torch|blow ?lamp|heat ?gun|hot ?air|hair ?dr[yi]er|heat ?lamps?|ir lamps?"
    r"|infra-?red|radiant heat(er)?|burn(ed|t)?(?![ -]?(through|in\b))"
    r"|flame(?! (birch|maple|walnut|figure|grain)))\b",
    re.IGNORECASE,
)
_NOT = re.compile(r"\b(no|not|never|without)\b", re.IGNORECASE)


def is_hot(brings: Ingredient | None) -> bool:
    """Tell whether a flame, hot air or a lamp is noted as used; `no heat gun` is none."""
    said = _HOT.search(brings.note) if brings is not None else None
    return said is not None and not _NOT.search(said.string[: said.start()])
