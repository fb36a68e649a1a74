"""A panel with more coats on one face may cup; the trade disputes it, so it is a word of warning.

USDA Forest Products Laboratory, Technical Note D-12 (1952): unequal coatings on opposite faces cup
or twist a panel, so all surfaces are coated about equally. The hours are common practice.
"""

from __future__ import annotations

import pytest

from finishlog.core.bench.balance import may_cup, uneven
from finishlog.core.log.words import Operation
from finishlog.facts.load import load_facts
from tests.shop_of import SHELLAC, VARNISH, Story, at

FIGURES = load_facts().balance
GLUE_UP = Operation.GLUE_UP


def panel(**options) -> Story:
    story = Story()
    story.part("top", VARNISH, faces=("above", "below"), edges=("edges",), **options)
    return story


def warned(story: Story, hour: float) -> list[tuple[tuple[str, int], tuple[str, int]]]:
    found = uneven(story.look(hour).in_the_shop)
    return [(one.ahead, one.behind) for one in found if may_cup(one, at(hour), FIGURES)]


def test_one_face_may_be_ahead_for_a_day_and_no_longer():
    story = panel()
    story.coat(0, VARNISH, face="above")
    assert warned(story, 23.9) == []
    assert warned(story, 24) == [(("above", 1), ("below", 0))]


def test_two_coats_over_a_bare_face_are_too_many_at_once():
    story = panel()
    story.coat(0, VARNISH, face="above")
    story.coat(12, VARNISH, face="above")
    assert warned(story, 12) == [(("above", 2), ("below", 0))]


def test_where_both_carry_something_only_two_coats_more_for_a_day_count():
    story = panel()
    story.coat(0, SHELLAC, face="above")
    story.coat(1, SHELLAC, face="below")
    story.coat(2, SHELLAC, face="above")
    assert warned(story, 100) == []
    story.coat(100, SHELLAC, face="above")
    assert warned(story, 101) == [(("above", 3), ("below", 1))]


def test_it_is_ahead_since_the_coat_that_the_other_face_lacks():
    story = panel()
    story.coat(0, SHELLAC, face="above")
    story.coat(1, SHELLAC, face="below")
    story.coat(30, SHELLAC, face="above")
    (one,) = uneven(story.look(31).zones)
    assert one.since == at(30)


def test_even_faces_a_stain_and_an_edge_are_no_matter():
    story = panel()
    story.coat(0, "wiping-stain", face="above")
    story.coat(1, VARNISH, face="edges")
    assert warned(story, 100) == []
    story.coat(101, VARNISH, face="above")
    story.coat(102, VARNISH, face="below")
    assert warned(story, 300) == []


def test_what_is_set_aside_raises_no_alarm_and_a_joint_stays_bare():
    story = panel(joints=("tongue",))
    story.coat(0, VARNISH, face="above")
    story.coat(0.2, VARNISH, face="below")
    assert warned(story, 48) == []
    story.coat(48, VARNISH, face="above")
    story.coat(72, VARNISH, face="above")
    assert warned(story, 200) != []
    story.set_aside(201)
    assert warned(story, 202) == []


def test_what_is_glued_up_is_held_by_it():
    story = Story()
    side = story.part("side", VARNISH, pieces=2, faces=("in", "out"), joints=("tongue",))
    case = story.part("case", GLUE_UP, faces=(), needs={"side": 2})
    story.coat(0, VARNISH, side, face="in")
    assert len(warned(story, 100)) == 2
    story.join(101, case.pieces[0], side.pieces)
    assert warned(story, 200) == []


def test_its_figures_have_their_sources():
    sources = load_facts().sources
    assert sources[FIGURES.alike.source].tier == 1
    assert sources[FIGURES.dissent.source].tier == 3
    assert FIGURES.ahead_h.source == "common practice"


@pytest.mark.parametrize("words", [FIGURES.alike.text, FIGURES.dissent.text])
def test_it_is_said_in_a_line(words: str):
    assert 20 < len(words) < 110
