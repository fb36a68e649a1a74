"""Vapour pressures of carriers against frozen points of a reference library.

The points are Pa from the DIPPR 101 correlations of Perry's Chemical Engineers' Handbook, 8th
edition, table 2-8, as the library `chemicals` 1.5 holds them; test_carriers_reference.py makes
them again.
"""

from __future__ import annotations

import pytest

from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
LABEL_C = 23

# °C: Pa
PERRY = {
    "ethanol": {
        5: 2259.02,
        10: 3151.70,
        15: 4338.94,
        20: 5898.66,
        23: 7051.36,
        30: 10525.42,
        35: 13832.02,
    },
    "butyl-acetate": {
        5: 402.21,
        10: 570.62,
        15: 797.36,
        20: 1098.36,
        23: 1322.41,
        30: 2003.03,
        35: 2655.71,
    },
    "mineral-spirits": {
        5: 39.84,
        10: 59.61,
        15: 87.69,
        20: 126.94,
        23: 157.33,
        30: 254.43,
        35: 352.82,
    },
    "xylene": {
        5: 319.43,
        10: 445.78,
        15: 613.71,
        20: 834.12,
        23: 996.88,
        30: 1486.76,
        35: 1952.25,
    },
}
# How far the ratio to 23 °C may be off: decane's coefficients were fitted above 58 °C.
WITHIN = {"ethanol": 0.01, "butyl-acetate": 0.01, "mineral-spirits": 0.06, "xylene": 0.02}
POINTS = [(key, t) for key, points in PERRY.items() for t in points]


def pace(key: str, temperature_c: float) -> float:
    carrier = FACTS.carrier(key)
    assert carrier is not None
    return carrier.pressure(temperature_c) / carrier.pressure(LABEL_C)


@every_row(("key", "t"), POINTS)
def test_the_ratio_to_label_air_agrees_with_perry(key, t):
    assert pace(key, t) == pytest.approx(PERRY[key][t] / PERRY[key][LABEL_C], rel=WITHIN[key])


@pytest.mark.parametrize(("key", "t"), [p for p in POINTS if p[0] == "mineral-spirits"])
def test_where_decane_is_off_it_is_off_on_the_cautious_side(key, t):
    """Slower in the cold lengthens a wait; quicker in the warm shortens a window."""
    perry = PERRY[key][t] / PERRY[key][LABEL_C]
    assert pace(key, t) <= perry if t <= LABEL_C else pace(key, t) >= perry


@pytest.mark.parametrize("key", PERRY)
def test_pressures_are_in_pascal(key):
    carrier = FACTS.carrier(key)
    assert carrier is not None
    assert carrier.pressure(20) == pytest.approx(PERRY[key][20], rel=0.06)


@pytest.mark.parametrize("key", PERRY)
def test_a_carrier_from_memory_says_so(key):
    carrier = FACTS.carrier(key)
    assert carrier is not None
    assert carrier.source == "from memory"


def test_water_and_nothing_have_no_curve_and_a_wrong_name_is_an_error():
    assert FACTS.carrier("water") is None
    assert FACTS.carrier("none") is None
    with pytest.raises(KeyError):
        FACTS.carrier("naphtha")
