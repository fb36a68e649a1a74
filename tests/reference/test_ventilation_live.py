"""The air of a room against scipy's ODE solver and quadrature."""

from __future__ import annotations

from itertools import pairwise

import pytest

from finishlog.core.safety import ventilation as v
from finishlog.facts.load import load_facts

pytestmark = pytest.mark.reference

SOLVENTS = load_facts().vapours.solvents
ROOMS = [v.Vented(60, 300, 10), v.Vented(40), v.Vented(25, 900, 2), v.Vented(300, 15, 1)]
# Litres of vapour: how much, from which hour, within how long.
EVENINGS = [
    [(36.0, 0.0, 1.0)],
    [(12.0, 0.0, 0.5), (12.0, 1.5, 0.5), (20.0, 2.0, 3.0)],
    [(5.0, 0.0, 8.0), (40.0, 6.0, 0.25)],
]


def released(evening: list[tuple[float, float, float]]) -> list[v.Release]:
    toluene = SOLVENTS["toluene"]
    a_litre_ml = 1 / v.Leaves(toluene, 1.0).vapour_l
    return [v.Release((v.Leaves(toluene, a_litre_ml * litres),), s, h) for litres, s, h in evening]


def ppm_at(releases, room, hour: float) -> float:
    """Vapour of all releases, as a share of the air."""
    return 1e3 * v.at_hour([(r, v.all_vapour_l(r.leaves)) for r in releases], room, hour)


@pytest.mark.parametrize("room", ROOMS, ids=str)
@pytest.mark.parametrize("evening", EVENINGS, ids=str)
def test_build_up_and_decay(room, evening):
    """V dC/dt = G - (Q / K) C, solved over the day, piece by piece where a release turns."""
    import numpy
    from scipy.integrate import quad, solve_ivp

    releases = released(evening)
    turns = sorted({0.0, v.DAY_H, *(t for _, s, h in evening for t in (s, min(s + h, v.DAY_H)))})

    def rate(t: float, c: numpy.ndarray) -> numpy.ndarray:
        g = sum(litres / h for litres, s, h in evening if s <= t < s + h)
        return (g * 1e3 - (room.exhaust_m3_h or 0.0) / room.mixing * c) / room.volume_m3

    c, highest = numpy.zeros(1), 0.0
    for since, until in pairwise(turns):
        middle = (since + until) / 2
        solved = solve_ivp(
            lambda t, y, at=middle: rate(at, y), (since, until), c, rtol=1e-10, atol=1e-10
        )
        c = solved.y[:, -1]
        highest = max(highest, float(solved.y.max()))
        assert ppm_at(releases, room, until) == pytest.approx(float(c[0]), rel=1e-6, abs=1e-6)
    amounts = [litres for litres, _, _ in evening]
    within = [r for r in releases if r.start_h + r.hours <= v.DAY_H]
    if len(within) == len(releases):
        assert 1e3 * v.highest(releases, room, amounts) == pytest.approx(highest, rel=1e-6)
    area = sum(quad(lambda t: ppm_at(releases, room, t), a, b)[0] for a, b in pairwise(turns))
    assert 1e3 * v.day_average(releases, room, amounts) == pytest.approx(area / v.DAY_H, rel=1e-6)
