"""What the safety data sheet of a product says, where it was read: it outranks the class."""

from __future__ import annotations

from msgspec import Struct

from finishlog.core.finish.hazard import Hazard

YOUR_SHEET = "your sheet"

# What a sheet may say is not in the can, though its class has it.
MAY_BE_FREE_OF = (
    Hazard.ISOCYANATE,
    Hazard.FORMALDEHYDE,
    Hazard.AMINE,
    Hazard.METHANOL,
    Hazard.SELF_HEATING,
    Hazard.FLAMMABLE,
    Hazard.NITROCELLULOSE,
    Hazard.NUT_OIL,
)
# What it may say is in it, though neither its class nor its name tells.
MAY_HOLD = (
    *MAY_BE_FREE_OF,
    Hazard.VAPOUR,
    Hazard.CHLORINATED,
    Hazard.ORGANIC_PEROXIDE,
    Hazard.OXIDIZER,
    Hazard.ACID,
    Hazard.CAUSTIC,
    Hazard.AMMONIA,
)


class Sheet(Struct, frozen=True):
    """What the sheet says. Where it is silent (None, or not named) the class speaks.

    `lel_pct`: lower explosive limit, % of the air; `day_ppm`, `short_ppm`: the lowest exposure
    limits on it, of a day and of 15 minutes; `flash_c`: flash point (°C, closed cup);
    `solvent_g_per_l`: what leaves a litre of it as vapour; `density`: g/ml; `carrier`: what leaves
    it, as classes name theirs.
    """

    free_of: frozenset[Hazard] = frozenset()
    holds: frozenset[Hazard] = frozenset()
    lel_pct: float | None = None
    day_ppm: float | None = None
    short_ppm: float | None = None
    flash_c: float | None = None
    solvent_g_per_l: float | None = None
    density: float | None = None
    carrier: str = ""

    @property
    def tells_of_air(self) -> bool:
        """Tell whether it says anything of what leaves, or of a limit."""
        return bool(self.carrier) or any(
            figure is not None
            for figure in (self.lel_pct, self.day_ppm, self.short_ppm, self.solvent_g_per_l)
        )


NO_SHEET = Sheet()
