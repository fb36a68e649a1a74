"""The figures that a coat is judged by: the class's, with the can's laid over them.

Common practice where no other source stands beside a test.
"""

from __future__ import annotations

from finishlog.core.finish.classes import YOUR_CAN, Figure, RecoatWindow, WindowKind, judged_by
from finishlog.core.finish.stages import Stage
from tests.shop_of import FACTS

OIL_POLYURETHANE = FACTS.finish_class("oil-polyurethane")


def can(hours: float) -> Figure:
    return Figure(hours, hours, hours, YOUR_CAN)


def sand_of(key: str, **label: float) -> Figure:
    said = {Stage(stage): can(hours) for stage, hours in label.items()}
    return judged_by(FACTS.finish_class(key), said, None, "").stages[Stage.SAND]


def test_what_is_always_scuffed_may_be_tried_from_the_recoat_of_a_can_that_tells_no_sanding():
    """Cans print a recoat of 4 to 6 h and no hours to sand: a spot that powders may be scuffed."""
    own = OIL_POLYURETHANE.stages[Stage.SAND]
    tried = sand_of("oil-polyurethane", recoat=6)
    assert (tried.low_h, tried.high_h) == (6, own.high_h)
    assert sand_of("alkyd-varnish", recoat=8).low_h == 8


def test_the_promise_stays_that_of_the_class_and_no_coat_is_sooner_than_the_can_says():
    judged = judged_by(OIL_POLYURETHANE, {Stage.RECOAT: can(6)}, None, "")
    assert judged.stages[Stage.RECOAT] == can(6)
    assert judged.stages[Stage.SAND].high_h == OIL_POLYURETHANE.stages[Stage.SAND].high_h


def test_a_can_that_tells_when_to_sand_is_the_can():
    assert sand_of("oil-polyurethane", recoat=6, sand=12) == can(12)
    assert sand_of("oil-polyurethane", recoat=36) == OIL_POLYURETHANE.stages[Stage.SAND]


def test_within_a_window_nothing_is_scuffed_and_the_hours_to_sand_stay():
    """What melts in, or bonds by itself within a window that the can prints, needs no tooth."""
    window = RecoatWindow(WindowKind.CLOSES, YOUR_CAN, closes=can(24))
    judged = judged_by(OIL_POLYURETHANE, {Stage.RECOAT: can(6)}, window, "")
    assert judged.stages[Stage.SAND] == OIL_POLYURETHANE.stages[Stage.SAND]
    shellac = FACTS.finish_class("shellac-2lb")
    assert sand_of("shellac-2lb", recoat=0.5) == shellac.stages[Stage.SAND]
