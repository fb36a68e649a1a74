"""How air changes the pace of drying: k, equivalent hours an hour, by what makes the film dry."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from typing import Protocol

import msgspec
from msgspec import Struct

from finishlog.core.air.psychrometrics import Air, saturation_pa, vapour_deficit_pa
from finishlog.core.finish.classes import Mechanism, Published
from finishlog.core.measure.as_written import says_the_same

# °C and % RH in, k out.
RateAt = Callable[[float, float], float]


class Law(Hashable, Protocol):
    """What a clock counts by; hashable, since the sums of a room are kept by it."""

    def k(self) -> RateAt:
        """Return k as a function of °C and % RH, uncapped."""
        ...

    def is_its_air(self, air: Air) -> bool:
        """Tell whether some air is the label's, as far as both were written."""
        ...


class Carrier(Published, frozen=True):
    """The liquid that leaves a film: Antoine's log10 P = a - b / (c + T), P and T as in facts."""

    key: str
    name: str
    a: float = msgspec.field(name="a_log10_pa")
    b: float = msgspec.field(name="b_c")
    c: float = msgspec.field(name="c_c")
    source: str
    note: str = ""

    def pressure(self, temperature_c: float) -> float:
        """Return the vapour pressure at a temperature (only ratios are used)."""
        return float(10 ** (self.a - self.b / (self.c + temperature_c)))


class RateLaw(Struct, frozen=True):
    """How air changes the pace of drying, relative to the reference air."""

    mechanism: Mechanism
    reference: Air
    factor_per_10c: float = 2.0
    carrier: Carrier | None = None

    def is_its_air(self, air: Air) -> bool:
        """Tell whether some air is the label's, as far as both were written.

        Of water the humidity has to be the label's too, or less.
        """
        dry = self.mechanism is not Mechanism.WATER or air.humidity_pct <= (
            self.reference.humidity_pct
        )
        return dry and says_the_same(air.temperature_c, self.reference.temperature_c)

    def k(self) -> RateAt:
        """Return k as a function of °C and % RH, uncapped; below 0 in more than saturated air.

        Oxidation and cross-linking: a factor (2) per 10 °C, published for pot life (UFGS-09971),
        an assumption for oil varnish. Water: ratio of vapour-pressure deficits; alcohol and
        solvent: ratio of the carrier's vapour pressures; both estimates. What only soaks in: 1.
        """
        reference = self.reference.temperature_c
        match self.mechanism:
            case Mechanism.OXIDATION | Mechanism.CROSS_LINKING:
                factor = self.factor_per_10c
                return lambda t, _rh: float(factor ** ((t - reference) / 10))
            case Mechanism.WATER:
                thirst = vapour_deficit_pa(self.reference)
                return lambda t, rh: saturation_pa(t) * (1 - rh / 100) / thirst
            case Mechanism.ALCOHOL | Mechanism.SOLVENT:
                vapour = self.carrier.pressure if self.carrier else saturation_pa
                at_reference = vapour(reference)
                return lambda t, _rh: vapour(t) / at_reference
            case Mechanism.SOAKING:
                return lambda _t, _rh: 1.0


def rate(law: Law, air: Air) -> float:
    """Return k in some air, uncapped, never below 0."""
    return max(0.0, law.k()(air.temperature_c, air.humidity_pct))
