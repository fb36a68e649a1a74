"""Figures of the drying clock, of coating limits, and of how far shops lie from a label."""

from __future__ import annotations

from typing import Annotated

import msgspec

from finishlog.core.finish.classes import Limit, Published

Above0 = Annotated[float, msgspec.Meta(gt=0)]


class Rate(Published, frozen=True):
    """A factor on a pace for each 10 °C. `assumed`: the source prints it for something else."""

    factor_per_10c: Above0
    source: str
    assumed: bool
    basis: str


class DryingFigures(Published, frozen=True):
    """Figures of drying and of coating limits that hold for every class; hours, °C.

    `dew_margin_c`: surface over dew point; `slow_after_h`: a film still tacky then is slow;
    `solvent_wipe_h`: how long a solvent wipe of oily wood is good for; `hot_c`: in hotter air a
    film skins over what is soft below it.
    """

    dew_margin_c: Limit
    slow_after_h: Limit
    solvent_wipe_h: Limit
    hot_c: Limit


class PaceFigures(Published, frozen=True):
    """The prior of ln f is normal about 0 with sd `spread`; one coat scatters by sd `scatter`.

    `basis`: what they rest on, in words.
    """

    spread: Above0 = msgspec.field(name="spread_ln")
    scatter: Above0 = msgspec.field(name="scatter_ln")
    basis: tuple[str, ...] = ()
