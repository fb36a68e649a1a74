"""Air in a few words, for tests: read, joined by a logger, drawn stretch by stretch, and its laws.

Hours are counted from Monday 18:00, as everywhere in the tests; every reading here is invented.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property
from math import sin, tau

from finishlog.core.air.course import Course
from finishlog.core.air.met import AirMet, Leg
from finishlog.core.air.psychrometrics import STANDARD_AIR, Air
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint, AirSpan, Known
from finishlog.core.finish.classes import Mechanism
from finishlog.core.finish.rate_law import RateLaw
from tests.shop_of import FACTS, at

# So near does the clock come to exact integration over three days, in hours of the label.
ONE_MINUTE_H = 1 / 60
# (hour, °C, % RH)
Row = tuple[float, float, float]


def point(hour: float, celsius: float, rh: float) -> AirPoint:
    """Read the air at an hour."""
    return AirPoint(at(hour), celsius, rh, round(hour * 1000) + 10_000_000)


def read_room(*rows: Row, coldest: float | None = None, **told) -> RoomAir:
    """Build a room from its readings; `told`: its usual days, heaters and zone."""
    return RoomAir(tuple(point(*row) for row in rows), coldest, 1, **told)


def span(
    start: float,
    end: float | None,
    *airs: Air,
    known: Known = Known.MEASURED,
    ends: Iterable[Air] = (),
) -> AirSpan:
    """Build a stretch of air by its hours; `ends`: what each of its airs runs to."""
    return AirSpan(at(start), None if end is None else at(end), airs, known, tuple(ends))


class DrawnAir(RoomAir, frozen=True, eq=False, dict=True):
    """A room whose air a test draws itself, stretch by stretch."""

    spans: tuple[AirSpan, ...] = ()

    @cached_property
    def course(self) -> Course:
        """The stretches as they were drawn."""
        return Course(self.spans)


def drawn(*spans: AirSpan) -> AirMet:
    """Return the air of a piece that stood in these stretches, one after the other."""
    return standing(DrawnAir(spans=spans), spans[0])


def standing(room: RoomAir, since: AirSpan | None = None, hour: float = 0.0) -> AirMet:
    """Return the air of a piece that stands in one room for good."""
    return AirMet((Leg(room, since.start if since else at(hour), None),))


# --- what a clock counts by -------------------------------------------------------------------


def law(mechanism: Mechanism, reference: Air = STANDARD_AIR) -> RateLaw:
    """Return our rate law of a mechanism."""
    carriers = {Mechanism.ALCOHOL: "ethanol", Mechanism.SOLVENT: "butyl-acetate"}
    key = carriers.get(mechanism)
    return RateLaw(mechanism, reference, 2.0, FACTS.carrier(key) if key else None)


LAWS = [law(mechanism) for mechanism in Mechanism]


@dataclass(frozen=True)
class OwnLaw:
    """A rate law of a test's own, so that adding up is tested apart from the chemistry."""

    rate: Callable[[float, float], float]

    def k(self) -> Callable[[float, float], float]:
        """Return k as a function of °C and % RH."""
        return self.rate

    def is_its_air(self, air: Air) -> bool:
        """Tell nothing of any label."""
        return False


# --- three days of a logger -------------------------------------------------------------------

THREE_DAYS_H = 72


def noisy(seed: int, celsius: tuple[float, float], rh: tuple[float, float]) -> list[Row]:
    """Return three days of hourly readings, each anywhere between two bounds."""
    chance = random.Random(seed)
    return [
        (float(hour), _between(chance, *celsius), _between(chance, *rh))
        for hour in range(THREE_DAYS_H + 1)
    ]


def wandering(seed: int, step_c: float, step_pct: float) -> list[Row]:
    """Return three days of readings every ten minutes, each a little off the one before."""
    chance, t, rh, rows = random.Random(seed), 20.0, 60.0, []
    for n in range(6 * THREE_DAYS_H + 1):
        rows.append((n / 6, t, rh))
        t = min(38.0, max(-5.0, t + _between(chance, -step_c, step_c)))
        rh = min(99.0, max(20.0, rh + _between(chance, -step_pct, step_pct)))
    return rows


def nights(seed: int, mean_c: float, swing_c: float, every_h: float) -> list[Row]:
    """Return three days that are coldest and dampest at six, with a little unrest."""
    chance, rows = random.Random(seed), []
    for n in range(round(THREE_DAYS_H / every_h) + 1):
        turn = sin((n * every_h + 6) / 24 * tau)
        t = mean_c + swing_c * turn + _between(chance, -0.3, 0.3)
        rows.append((n * every_h, round(t, 1), round(62 - 18 * turn + _between(chance, -2, 2), 1)))
    return rows


def _between(chance: random.Random, low: float, high: float) -> float:
    return low + (high - low) * chance.random()


SERIES: dict[str, list[Row]] = {
    "frost to heat": noisy(1, (-5, 38), (30, 99)),
    "a shop": noisy(2, (12, 26), (40, 80)),
    "damp": noisy(3, (5, 25), (85, 99)),
    "heated shop, every ten minutes": wandering(4, 0.6, 3),
    "shed, every ten minutes": wandering(5, 3, 10),
    # Every night it gets too cold and too damp, every afternoon of the last too hot.
    "cold nights": nights(6, 13, 6, 1),
    "cold nights, every half hour": nights(7, 11.5, 4, 0.5),
    "hot days, every ten minutes": nights(8, 27, 7.5, 1 / 6),
    "long ramps": [(0, 20, 50), (2, 10, 80), (4, 30, 40), (6, -5, 95), (8, 38, 99), (10, -5, 30)],
    # A hump of vapour deficit between two readings that are equal in it, and round figures that
    # meet the label's temperature exactly in the middle of a step.
    "turning": [(0, 32.762, 71.908), (1, 35.666, 75.934), (2, 21, 50), (3, 25, 50), (4, 18, 60)],
}
