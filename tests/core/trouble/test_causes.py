"""Likely causes, in the order a finisher looks: what the log shows first, what it rules out never.

Common practice where no other source stands beside a test.
"""

from __future__ import annotations

from finishlog.core.log.words import FaultKind, Operation
from finishlog.core.trouble.causes import as_found, looked_into
from finishlog.core.trouble.suspect import Suspect
from tests.shop_of import FACTS, LACQUER, SHELLAC, STAIN, VARNISH
from tests.trouble_of import Trouble, door
from tests.worded_in import in_si, sentence


def of_the_fault(story: Trouble, hour: float) -> tuple[Suspect, ...]:
    state = story.state(hour)
    (fault,) = state.faults
    return looked_into(fault, state, story.log(hour), story.look(hour).zones, FACTS)[0]


def shown(story: Trouble, hour: float) -> list[str]:
    return [sentence(f) for f in as_found(c for c in of_the_fault(story, hour) if c.is_shown)]


def possible(story: Trouble, hour: float) -> list[str]:
    return [sentence(f) for f in as_found(c for c in of_the_fault(story, hour) if not c.is_shown)]


def test_what_the_log_shows_comes_first():
    story = Trouble()
    story.part("top", LACQUER)
    story.steady(21, 80, since=-12)
    story.coat(0, STAIN)
    story.coat(14, LACQUER)
    story.fault(15, FaultKind.BLUSH)
    order = [c.stands for c in of_the_fault(story, 16)]
    assert order == sorted(order)


def test_blush_in_damp_air_over_a_young_stain():
    """Moisture, or stain solvent still coming out: the air first, the stain second."""
    story = Trouble()
    story.part("top", LACQUER)
    story.steady(21, 80, since=-12)
    story.coat(0, STAIN)
    story.coat(14, LACQUER)
    story.fault(15, FaultKind.BLUSH)
    damp, stain = shown(story, 16)[:2]
    assert "80 % RH" in damp
    assert "our wiping-stain went on 14 h before" in stain
    assert "is usual" in stain


def test_dry_air_is_ruled_out():
    story = door(LACQUER)
    story.coat(0, LACQUER)
    story.fault(1, FaultKind.BLUSH)
    assert not any("% RH" in words for words in shown(story, 2) + possible(story, 2))


def test_air_that_nobody_read_is_said_to_be_unknown():
    story = Trouble()
    story.part("door", LACQUER)
    story.coat(0, LACQUER)
    story.fault(1, FaultKind.BLUSH)
    assert any("not logged: the air" in words for words in possible(story, 2))


def test_a_wrinkle_asks_how_old_the_coat_below_was():
    """20 h is normally enough; in the cold it was dry on top only."""
    story = Trouble()
    story.part("floor", VARNISH, VARNISH)
    story.steady(10, 60, since=-12)
    story.coat(0, VARNISH)
    story.coat(50, VARNISH)
    story.fault(56, FaultKind.WRINKLE)
    young, cold = shown(story, 57)[:2]
    assert "our alkyd-varnish went on 50 h before; 48 h is usual, in that air more" in young
    assert "10 °C" in in_si(cold)


def test_the_whole_interval_counts_not_only_the_evening_of_the_coat():
    """Warm when the first coat went on; then it fell, and the second coat wrinkled."""
    story = Trouble()
    story.part("floor", VARNISH, VARNISH)
    story.steady(23, 50, since=-12, days=0.75)
    story.coat(0, VARNISH)
    story.steady(12, 60, since=8, days=4)
    story.coat(48, VARNISH)
    story.fault(54, FaultKind.WRINKLE)
    assert any("down to 12 °C" in in_si(words) for words in shown(story, 55))


def test_a_print_asks_what_was_done_to_it_early():
    story = door(SHELLAC)
    story.coat(0, SHELLAC)
    story.work(3, Operation.STACK)
    story.fault(20, FaultKind.PRINT_MARK)
    assert any("stack after 3 h, before stack" in words for words in shown(story, 21))


def test_what_no_log_can_show_stays_possible():
    story = door(VARNISH)
    story.coat(0, VARNISH)
    story.fault(1, FaultKind.FISHEYE)
    assert any("silicone" in words for words in possible(story, 2))


def test_a_blotching_wood_is_named():
    story = Trouble()
    story.part("top", STAIN, species="cherry")
    story.steady(since=-12)
    story.coat(0, STAIN)
    story.fault(1, FaultKind.BLOTCH)
    assert any("cherry" in words for words in shown(story, 2))


def test_a_panel_that_cups_shows_its_faces():
    story = door(VARNISH, faces=("front", "back"))
    story.coat(0, VARNISH, face="front")
    story.coat(60, VARNISH, face="front")
    story.fault(200, FaultKind.CUPPED, face="front")
    assert any("front 2, back 0" in words for words in shown(story, 201))


def test_every_cause_of_every_fault_can_be_asked():
    for kind in FaultKind:
        story = door(VARNISH, VARNISH, species="oak")
        story.coat(0, VARNISH)
        story.coat(30, VARNISH)
        story.fault(40, kind)
        for found in as_found(of_the_fault(story, 41)):
            assert sentence(found)
