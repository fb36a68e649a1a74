"""The moisture of wood: how wet it may be, what it settles at in air, and how far it moves.

Moisture content is % of the weight of the dry wood.
"""

from __future__ import annotations

from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import Limit, Published, Range

_COLDEST_LISTED_C = -1.1


class WeightFigures(Published, frozen=True):
    """When the weights of a piece stand still.

    `still_share`: so near each other, as a share; `still_d`: for so many days; `creeps_share`: each
    below the one before and in all by so much, they still fall.
    """

    still_share: Limit
    still_d: Limit
    creeps_share: Limit


class MoistureFigures(Published, frozen=True):
    """Figures of wood moisture, each with its source.

    `at_most_pct`: before a finish goes on; `over_air_pct`: so far (points) may wood be above what
    the room's air would make it; `air_rh_pct`, `air_least_c`, `air_most_c`: the air that
    `settles_pct` is published for; `moves_pct`: between these `moves_mm` holds; `saturated_pct`:
    wetter wood moves no more; `meter_pct`: what a meter can be trusted to show;
    `reading_holds_d`: days that a reading tells of; `apart_pct`: so far (points) may the parts of
    a joint be apart; `still_pct`: nearer readings stand still; `settle_d`: days in the shop's air
    for wood that comes from other air; `weighed`: of a scale.
    """

    at_most_pct: Limit
    over_air_pct: Limit
    air_rh_pct: Range
    air_least_c: Limit
    air_most_c: Limit
    moves_pct: Range
    saturated_pct: Limit
    meter_pct: Range
    reading_holds_d: Limit
    apart_pct: Limit
    still_pct: Limit
    settle_d: Limit
    weighed: WeightFigures

    def lists(self, air: Air) -> bool:
        """Tell whether the published table of moisture in air covers an air."""
        return (
            self.air_rh_pct.low <= air.humidity_pct <= self.air_rh_pct.high
            and self.air_least_c.value <= air.temperature_c <= self.air_most_c.value
        )


def settles_pct(air: Air) -> float:
    """Return the moisture content (%) that wood settles at in an air (°C, % RH).

    USDA Wood Handbook, FPL-GTR-282 (2021), chapter 4, equation 4-5, in its °C form. Its table 4-2
    covers -1.1 to 132 °C (30 to 270 °F) and 5 to 95 % RH; outside it is an extrapolation, but
    colder air counts as the coldest listed: there the table stands still, and the equation would
    fall below nothing. It stems from one softwood: good for a trend, not for a tenth.
    """
    t, h = max(air.temperature_c, _COLDEST_LISTED_C), air.humidity_pct / 100
    w = 349 + 1.29 * t + 0.0135 * t**2
    k = 0.805 + 0.000736 * t - 0.00000273 * t**2
    k1 = 6.27 - 0.00938 * t - 0.000303 * t**2
    k2 = 1.91 + 0.0407 * t - 0.000293 * t**2
    kh = k * h
    bound = (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2)
    return 1800 / w * (kh / (1 - kh) + bound)


def moves_mm(width_mm: float, per_pct: float, start_pct: float, end_pct: float) -> float:
    """Return by how much a width (mm) changes between two moisture contents (%); + is wider.

    USDA Wood Handbook, FPL-GTR-190 (2010), chapter 13, equation 13-2; `per_pct` from its table
    13-5 (tangential of flat-sawn, radial of quarter-sawn wood). Holds from 6 to 14 %; outside it
    is an extrapolation. Boards are rarely quite flat- or quarter-sawn: it says rather too much.
    """
    return width_mm * per_pct * (end_pct - start_pct)
