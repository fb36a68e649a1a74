"""The drying clock: equivalent hours at the label's air.

A label says "recoat after 4 h" at its reference air. In other air the film gains k equivalent
hours an hour, and a stage is reached when they add up to the label's hours: the maturity method
of ASTM C1074 carried to films. k comes from a rate law, which is a value, so that adding up is
tested apart from the chemistry.

Two clocks never mix. A wait is never shortened (k <= 1); a window is never lengthened (k >= 1).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import lru_cache

from finishlog.core.air import Air, saturation_pa, vapour_deficit_pa
from finishlog.core.finishes import Mechanism
from finishlog.core.room_air import AirSpan

# An assumption that keeps dates finite in air so damp that the estimate would say "never".
SLOWEST = 0.05


@dataclass(frozen=True, slots=True)
class Carrier:
    """The liquid that leaves a film: Antoine's log10 P = a - b / (c + T), P and T as in facts."""

    key: str
    name: str
    a: float
    b: float
    c: float
    source: str

    def pressure(self, temperature_c: float) -> float:
        """Return the vapour pressure at a temperature (only ratios are used)."""
        return float(10 ** (self.a - self.b / (self.c + temperature_c)))


@dataclass(frozen=True, slots=True)
class RateLaw:
    """How air changes the pace of drying, relative to the reference air."""

    mechanism: Mechanism
    reference: Air
    factor_per_10c: float = 2.0
    carrier: Carrier | None = None


@lru_cache(maxsize=4096)
def rate(law: RateLaw, air: Air) -> float:
    """Return k, equivalent hours an hour, uncapped.

    Oxidation and cross-linking: a factor (2) per 10 °C, published for pot life (UFGS-09971), an
    assumption for oil varnish. Water: ratio of vapour-pressure deficits; alcohol and solvent:
    ratio of the carrier's vapour pressures; both estimates.
    """
    match law.mechanism:
        case Mechanism.OXIDATION | Mechanism.CROSS_LINKING:
            warmer = air.temperature_c - law.reference.temperature_c
            return float(law.factor_per_10c ** (warmer / 10))
        case Mechanism.WATER:
            return max(0.0, vapour_deficit_pa(air) / vapour_deficit_pa(law.reference))
        case Mechanism.ALCOHOL | Mechanism.SOLVENT:
            vapour = law.carrier.pressure if law.carrier else saturation_pa
            return vapour(air.temperature_c) / vapour(law.reference.temperature_c)


@dataclass(frozen=True, slots=True)
class Reached:
    """When a clock reaches its hours; `moment` None: not in this air.

    The real hours on the way: `measured_h` are covered by a reading, `unmeasured_h` are not, and of
    those `unread_h` have no reading near them at all.
    """

    moment: datetime | None
    measured_h: float = 0.0
    unmeasured_h: float = 0.0
    unread_h: float = 0.0


Stops = Callable[[AirSpan, float], bool]


def never_stops(_span: AirSpan, _done_h: float) -> bool:
    """Tell that nothing stops this clock."""
    return False


def wait_rate(law: RateLaw, span: AirSpan) -> float:
    """Return the pace of a wait in one span: the slowest air it may have met, never above 1.

    A room that was never read counts label time; whoever asks must then test before coating.
    """
    if not span.airs:
        return 1.0
    return min(1.0, max(SLOWEST, min(rate(law, air) for air in span.airs)))


def window_rate(law: RateLaw, span: AirSpan) -> float:
    """Return the pace of a window in one span: the fastest air it may have met, never below 1."""
    return max([1.0, *(rate(law, air) for air in span.airs)])


def reach(
    hours: float,
    spans: Iterable[AirSpan],
    pace: Callable[[AirSpan], float],
    stops: Stops = never_stops,
) -> Reached:
    """Add up equivalent hours over consecutive spans until there are `hours` of them.

    `spans` start at the end of the coat; the last has no end. `stops` may halt the clock in a
    span, given the hours gained so far.
    """
    left = max(hours, 0.0)
    passed: list[tuple[AirSpan, float]] = []
    for span in spans:
        k = 0.0 if stops(span, hours - left) else pace(span)
        length = span.length_h
        needed = left / k if k > 0 else None
        if needed is not None and (length is None or needed <= length):
            return _reached(span.start + timedelta(hours=needed), [*passed, (span, needed)])
        if length is None:
            return _reached(None, passed)
        left -= length * k
        passed.append((span, length))
    raise ValueError("the last span of air must have no end")


def _reached(moment: datetime | None, passed: Iterable[tuple[AirSpan, float]]) -> Reached:
    """Sum up the real hours by what is known of their air."""
    measured = unmeasured = unread = 0.0
    for span, hours in passed:
        measured += hours if span.measured else 0.0
        unmeasured += 0.0 if span.measured else hours
        unread += 0.0 if span.airs else hours
    return Reached(moment, measured, unmeasured, unread)


def gained(
    until: datetime,
    spans: Iterable[AirSpan],
    pace: Callable[[AirSpan], float],
    stops: Stops = never_stops,
) -> float:
    """Return the equivalent hours gained up to `until`."""
    done = 0.0
    for span in spans:
        if span.start >= until:
            break
        end = until if span.end is None else min(until, span.end)
        k = 0.0 if stops(span, done) else pace(span)
        done += k * (end - span.start) / timedelta(hours=1)
    return done
