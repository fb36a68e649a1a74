"""Equivalent hours by general-purpose libraries, apart from the project's own clock.

`scipy.integrate.quad` adds up, told of every knot and of every place where the pace bends (found
by `scipy.optimize.brentq`); `psychrolib` gives the pressure of water; the readings are joined by
`numpy.interp`. `python -m tests.reference.equivalent_hours` writes
tests/core/clock/equivalent_hours.csv.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise, product
from pathlib import Path

from finishlog.core.clock.counting import SLOWEST, Clock
from finishlog.core.finish.classes import Mechanism
from tests.air_of import SERIES, Row, law

FROZEN = Path(__file__).parents[1] / "core" / "clock" / "equivalent_hours.csv"
SAYS = """\
# Frozen output of scipy 1.17.1 (integrate.quad with the knots and bends as points) and psychrolib
# 2.5.0: equivalent hours over each series of tests/air_of.py, at the label's 23 C and 50 %, by
# mechanism and clock; "limits": a wait that stands still below 10 C, above 32.2 C and above 75 %.
# Made by "python -m tests.reference.equivalent_hours", re-proved live by
# tests/reference/test_equivalent_hours_live.py.
"""
LEAST_C, MOST_C, MOST_PCT = 10.0, 32.2, 75.0
WAYS = [(Clock.WAIT, False), (Clock.WAIT, True), (Clock.WINDOW, False)]

Of = Callable[[float], float]


# What only soaks in never dries: no law of the air is about it.
DRIES_BY = tuple(each for each in Mechanism if each is not Mechanism.SOAKING)


def pace(mechanism: Mechanism) -> Callable[[float, float], float]:
    """Return k at °C and % RH, uncapped, as the sources print it."""
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    pressure = psychrolib.GetSatVapPres
    match mechanism:
        case Mechanism.OXIDATION | Mechanism.CROSS_LINKING:
            return lambda t, _rh: 2.0 ** ((t - 23) / 10)
        case Mechanism.WATER:
            return lambda t, rh: pressure(t) * (100 - rh) / (pressure(23.0) * 50)
        case Mechanism.ALCOHOL | Mechanism.SOLVENT:
            of = law(mechanism).carrier
            assert of is not None
            # Antoine, log10 P = a - b / (c + T), relative to 23 °C.
            return lambda t, _rh: 10 ** (of.b / (of.c + 23) - of.b / (of.c + t))


def equivalent_h(rows: Sequence[Row], mechanism: Mechanism, clock: Clock, limits: bool) -> float:
    """Integrate the capped pace over a series of readings."""
    import numpy
    from scipy.integrate import quad

    hours, celsius, humidity = (numpy.array(column) for column in zip(*rows, strict=True))
    k = pace(mechanism)

    def t(x: float) -> float:
        return float(numpy.interp(x, hours, celsius))

    def rh(x: float) -> float:
        return float(numpy.interp(x, hours, humidity))

    def counted(x: float) -> float:
        if limits and (t(x) < LEAST_C or t(x) > MOST_C or rh(x) > MOST_PCT):
            return 0.0
        uncapped = k(t(x), rh(x))
        return min(1.0, max(SLOWEST, uncapped)) if clock is Clock.WAIT else max(1.0, uncapped)

    bends: list[Of] = [lambda x: k(t(x), rh(x)) - 1, lambda x: t(x) - 0.01]
    bends += [lambda x: k(t(x), rh(x)) - SLOWEST] if clock is Clock.WAIT else []
    if limits:
        bends += [lambda x: t(x) - LEAST_C, lambda x: t(x) - MOST_C, lambda x: rh(x) - MOST_PCT]
    knots = [float(hour) for hour in hours]
    marks = sorted({*knots[1:-1], *(x for step in pairwise(knots) for x in _zeros(bends, *step))})
    found = quad(
        counted, knots[0], knots[-1], points=marks, limit=20 * len(marks), epsabs=1e-11, epsrel=0
    )
    return float(found[0])


def _zeros(bends: Sequence[Of], start: float, end: float) -> Iterator[float]:
    from scipy.optimize import brentq

    inset = (end - start) * 1e-12
    for bend in bends:
        fine = [start + inset + (end - start - 2 * inset) * n / 60 for n in range(61)]
        for (a, at_a), (b, at_b) in pairwise([(x, bend(x)) for x in fine]):
            if at_a * at_b < 0:
                yield brentq(bend, a, b, xtol=1e-15)


def cases() -> Iterator[tuple[str, Mechanism, Clock, bool]]:
    """Yield every series, mechanism and way of counting."""
    for name, mechanism, (clock, limits) in product(SERIES, DRIES_BY, WAYS):
        yield name, mechanism, clock, limits


def main() -> None:
    """Write the frozen table anew."""
    with FROZEN.open("w", encoding="utf-8", newline="") as file:
        file.write(SAYS)
        table = csv.writer(file, lineterminator="\n")
        table.writerow(["series", "mechanism", "clock", "limits", "equivalent_h"])
        for name, mechanism, clock, limits in cases():
            found = equivalent_h(SERIES[name], mechanism, clock, limits)
            row = [name, mechanism.value, clock.value, "limits" if limits else "", f"{found:.12f}"]
            table.writerow(row)


if __name__ == "__main__":
    main()
