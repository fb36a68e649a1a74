"""How an oil went on: flooded and left it is a thick film, wiped off or thin it is a usual one.

That a thick film dries by the square of its thickness, and that a flooded one is twice as thick as
usual, are assumptions of our own; that surplus left on stays soft is common practice.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from finishlog.core.film.layers import Layer
from finishlog.core.log.words import Found, Operation
from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.trouble.causes import looked_into
from finishlog.core.trouble.scene import Missing
from finishlog.core.trouble.suspect import Suspect
from tests.rows import every_row
from tests.shop_of import FACTS, Story
from tests.worded_in import sentence


def oiled(
    of: str = "tung-oil",
    *,
    flooded: bool | None = None,
    um: float | None = None,
    wiped_h: float | None = None,
) -> Story:
    story = Story()
    story.part("top", of, of, species="ash")
    story.steady(since=-12.0)
    coat = story.coat(0, of)
    story.entries[-1] = replace(coat, flooded=flooded, wet_film_um=um)
    if wiped_h is not None:
        story.work(wiped_h, Operation.WIPE)
    return story


def film(**how: float | bool | str | None) -> Layer:
    top = oiled(**how).state(5).top  # type: ignore[arg-type]
    assert top is not None
    return top


def thin_um(of: str = "tung-oil") -> float:
    usual = FACTS.finish_class(of).wet_film_um
    assert usual is not None
    return usual.high


@every_row(
    ("how", "factor"),
    [
        ({"flooded": True}, 4),
        ({"flooded": True, "wiped_h": 0.3}, 1),
        ({"flooded": False}, 1),
        ({}, 1),
        # What was measured counts where it is more, and says nothing of what is wiped off again.
        ({"flooded": True, "um": 3 * thin_um()}, 9),
        ({"flooded": True, "um": thin_um()}, 4),
        ({"um": 3 * thin_um()}, 9),
        ({"um": 3 * thin_um(), "wiped_h": 0.3}, 1),
        # A varnish that is flooded on is never wiped off: nothing of it is surplus.
        ({"of": "alkyd-varnish", "flooded": True}, 1),
    ],
    ids=str,
)
def test_what_stands_there_multiplies_the_wait(how: dict[str, float | bool | str], factor: float):
    assert film(**how).factor == pytest.approx(factor)


def test_the_causes_of_a_soft_oil_hear_how_it_went_on():
    def causes(story: Story) -> dict[Evidence, Suspect]:
        check = story.check(24 * 40, Found.TACKY)
        state = story.state(24 * 40 + 1)
        found, _ = looked_into(check, state, story.log(24 * 40 + 1), [state], FACTS)
        return {each.cause.evidence: each for each in found}

    surplus, heavy = Evidence.NOT_WIPED, Evidence.THICK
    left = causes(oiled(flooded=True))[surplus]
    assert left.shows is not None
    assert sentence(left.shows) == "flooded on, and no wipe is on record"
    assert causes(oiled())[surplus].missing is Missing.WIPING
    assert not {surplus, heavy} & causes(oiled(flooded=True, wiped_h=0.3)).keys()
    assert heavy not in causes(oiled(flooded=False))
