"""Figures of wood moisture: published, or said to be practice."""

from __future__ import annotations

from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.facts.load import load_facts

FIGURES = load_facts().moisture


def test_the_limit_before_finishing():
    """UFGS 09995: at most 12 %."""
    assert (FIGURES.at_most_pct.value, FIGURES.at_most_pct.source) == (12, "ufgs-09995")
    assert FIGURES.over_air_pct.source == COMMON_PRACTICE


def test_where_the_handbook_ends():
    """Wood Handbook: movement by table 13-5 from 6 to 14 %, none above 30 %; meters 4 to 30 %."""
    assert (FIGURES.moves_pct.low, FIGURES.moves_pct.high) == (6, 14)
    assert FIGURES.saturated_pct.value == 30
    assert (FIGURES.meter_pct.low, FIGURES.meter_pct.high) == (4, 30)


def test_the_air_that_the_table_lists():
    """Wood Handbook, table 4-2: 30 to 270 °F, 5 to 95 % RH."""
    assert FIGURES.lists(Air(20, 50))
    for air in (Air(-2, 50), Air(133, 50), Air(20, 4), Air(20, 96)):
        assert not FIGURES.lists(air)
