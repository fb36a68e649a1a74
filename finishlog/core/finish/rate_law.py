"""How air changes the pace of drying: k, equivalent hours an hour, by what makes the film dry."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from itertools import pairwise
from typing import NamedTuple, Protocol

import msgspec
from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.psychrometrics import Air, saturation_pa, vapour_deficit_pa
from finishlog.core.finish.classes import (
    YOUR_CAN,
    Figure,
    Limit,
    Limits,
    Mechanism,
    Published,
)
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


class Slower(NamedTuple):
    """How many times the hours at the reference air a can asks for at a colder one, °C."""

    temperature_c: float
    times: float


class RateLaw(Struct, frozen=True):
    """How air changes the pace of drying, relative to the reference air.

    `slower`: what the can itself says of colder air, from the warmer to the colder.
    `damp_from_pct`: own coats of an oil film were slow in air so damp; what is damper slows it by
    how much water the air can still take up, our own assumption; 0: damp says nothing.
    """

    mechanism: Mechanism
    reference: Air
    factor_per_10c: float = 2.0
    carrier: Carrier | None = None
    slower: tuple[Slower, ...] = ()
    damp_from_pct: float = 0.0

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
        Between the temperatures that a can gives hours for the can decides, straight in the log
        of the hours, as all these laws nearly are; below the coldest the law goes on from there.
        """
        k = self._in_any_damp()
        dry = 100 - self.damp_from_pct
        if not self.damp_from_pct or self.mechanism is not Mechanism.OXIDATION or dry <= 0:
            return k
        return lambda t, rh: k(t, rh) * min(1.0, (100 - rh) / dry)

    def _in_any_damp(self) -> RateAt:
        if not self.slower:
            return self._k_from(self.reference.temperature_c)
        rows = (Slower(self.reference.temperature_c, 1.0), *self.slower)
        coldest, times = rows[-1]
        beyond = self._k_from(coldest)
        damp = self._damp()

        def k(t: float, rh: float) -> float:
            if t < coldest:
                return beyond(t, rh) / times
            return damp(t, rh) / _times_between(rows, t)

        return k

    def _k_from(self, reference: float) -> RateAt:
        """Return k by the law alone, 1 at a temperature and the humidity of the reference."""
        match self.mechanism:
            case Mechanism.OXIDATION | Mechanism.CROSS_LINKING:
                factor = self.factor_per_10c
                return lambda t, _rh: float(factor ** ((t - reference) / 10))
            case Mechanism.WATER:
                thirst = vapour_deficit_pa(replace(self.reference, temperature_c=reference))
                return lambda t, rh: saturation_pa(t) * (1 - rh / 100) / thirst
            case Mechanism.ALCOHOL | Mechanism.SOLVENT:
                vapour = self.carrier.pressure if self.carrier else saturation_pa
                at_reference = vapour(reference)
                return lambda t, _rh: vapour(t) / at_reference
            case Mechanism.SOAKING:
                return lambda _t, _rh: 1.0

    def _damp(self) -> RateAt:
        """Return what damp alone takes off the pace of water: by how much the air still holds."""
        if self.mechanism is not Mechanism.WATER:
            return lambda _t, _rh: 1.0
        dry = 100 - self.reference.humidity_pct
        return lambda _t, rh: (100 - rh) / dry


def dries_in(limits: Limits, figure: Figure) -> Limits:
    """Return the air outside of which a film stands still: no less cold than its can speaks of."""
    coldest = figure.at_c[-1]
    if figure.source != YOUR_CAN or limits.min_c is None or limits.min_c.value <= coldest:
        return limits
    return replace(limits, min_c=Limit(coldest, YOUR_CAN))


def slower_by(figure: Figure) -> tuple[Slower, ...]:
    """Return how many times the hours at its warmest air a figure asks for in colder air."""
    if not figure.high_h:
        return ()
    return tuple(Slower(row.temperature_c, row.high_h / figure.high_h) for row in figure.colder)


class Printed(Struct, frozen=True):
    """The hours that a can gives for its airs and nothing else: in colder air those of its last."""

    reference: Air
    slower: tuple[Slower, ...]

    def is_its_air(self, air: Air) -> bool:
        """Tell whether some air is the can's warmest, as far as both were written."""
        return says_the_same(air.temperature_c, self.reference.temperature_c)

    def k(self) -> RateAt:
        """Return k as a function of °C and % RH."""
        rows = (Slower(self.reference.temperature_c, 1.0), *self.slower)
        coldest = rows[-1].temperature_c
        return lambda t, _rh: 1 / _times_between(rows, max(t, coldest))


def _times_between(rows: Sequence[Slower], temperature_c: float) -> float:
    """Return the factor on the hours at a temperature no colder than the coldest row."""
    for warm, cold in pairwise(rows):
        if temperature_c == cold.temperature_c:
            return cold.times
        if cold.temperature_c < temperature_c < warm.temperature_c:
            share = (warm.temperature_c - temperature_c) / (warm.temperature_c - cold.temperature_c)
            return float(warm.times * (cold.times / warm.times) ** share)
    return rows[0].times


def rate(law: Law, air: Air) -> float:
    """Return k in some air, uncapped, never below 0."""
    return max(0.0, law.k()(air.temperature_c, air.humidity_pct))
