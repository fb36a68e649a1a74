"""What lies below a film counts when it is stacked and packed, though it is no topcoat.

At least 48 h to stack and pack, longer when glazed or filled (finishing-education page).
"""

from __future__ import annotations

from finishlog.core.finish.stages import Stage
from tests.shop_of import FACTS, LACQUER, Story, figure, hours_until

GLAZE = "glaze"
SHORT = {Stage.STACK: figure(24), Stage.PACK: figure(24)}


def packed(*glazed: str) -> float:
    """Return when lacquer is packed that its can would pack after a day; a glaze went on before."""
    story = Story()
    story.part("door", *glazed, LACQUER)
    for hour in range(0, 200, 12):
        story.read(hour, 23, 50)
    for each in glazed:
        story.coat(0, each)
    story.coat(24, LACQUER, label=SHORT)
    return hours_until(story.state(25).stages[Stage.PACK].high)


def test_a_glaze_below_makes_packing_later():
    stacked = FACTS.finish_class(GLAZE).stages[Stage.STACK].high_h
    assert packed() == 48
    assert packed(GLAZE) == stacked > 48
